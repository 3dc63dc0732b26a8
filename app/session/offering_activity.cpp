// Going through what the print offers, one at a time. A figure stands ready only where it is
// plainly lettered and nothing known speaks against it; else it is chosen or typed.

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <tuple>

#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::Put;
using seen::PutReading;
using seen::ReadingOffer;

constexpr double kNear = 0.045;   // inches: a dimension's end and the trace it belongs to
constexpr double kAside = 0.005;  // of the distance aside, by which the nearer of two is told

std::string offeredTrace(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

std::optional<FeatureKind> kindOf(OfferedFeature kind) {
  switch (kind) {
    case OfferedFeature::hole:
      return FeatureKind::hole;
    case OfferedFeature::edge:
      return FeatureKind::edge;
    case OfferedFeature::slot:
      return FeatureKind::slot;
    case OfferedFeature::ring:
      return FeatureKind::ring;
    case OfferedFeature::row:
      return FeatureKind::row;
    case OfferedFeature::round:
    case OfferedFeature::line:
    case OfferedFeature::arc:
      break;
  }
  return std::nullopt;
}

class OfferingActivity : public Activity {
 public:
  explicit OfferingActivity(Hands& hands) : Activity(hands) { goOn(); }

  Doing doing() const override { return Doing::offering; }
  bool over() const override { return !hands_.offersHere(); }

  QString prompt() const override {
    if (over()) return tr("The print offers nothing more");
    const QString rest = QStringLiteral(" ") +
                         tr("Escape drops it, Tab passes; %1 to look at").arg(offered().open());
    if (const FeatureOffer* feature = offered().feature()) {
      const QString what = wordFor(*kindOf(feature->kind));
      if (!feature->size.empty() && !feature->sizeWitnesses.ready()) {
        return tr("Is this a %1? Type what the note at it letters.").arg(what) + rest;
      }
      return tr("Is this a %1? Enter takes it, or type what it is.").arg(what) + rest;
    }
    return readingPrompt() + rest;
  }

  QString offer() const override {
    if (over()) return {};
    if (const FeatureOffer* feature = offered().feature()) return featureText(*feature);
    return QString::fromStdString(putNow().strip);
  }

  Echo echo(const QString& typed) const override {
    if (over()) return {};
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return {};
    if (const FeatureOffer* feature = offered().feature()) return featureEcho(*feature, text);
    Echo echo = echoFigure(text, hands_.desk.job().unit);
    if (echo.refused) {
      const Echo line = echoLine(hands_, text);
      return line.refused ? echo : line;
    }
    if (const auto reading = readingFor(text)) addObjection(hands_, *reading, echo);
    return echo;
  }

  /// Another place for the nearer end of the lit dimension.
  void point(const Pointed& pointed) override {
    if (over() || offered().reading() == nullptr || pointed.place.empty()) return;
    const ReadingOffer& offer = *offered().reading();
    auto [from, to] = ends();
    const QPointF at = pointed.at;
    const auto away = [&](PlanePoint end) { return std::hypot(at.x() - end.x, at.y() - end.y); };
    (away(offer.from) <= away(offer.to) ? from : to) = pointed.place;
    pointed_ = {*offered().lit(), from, to};
  }

  bool enter(const QString& typed) override {
    // Enter is deaf at first, so that nobody takes what has not been looked at.
    if (over() || !offered().hears(offeringNow())) return false;
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) {
      emit hands_.desk.refused(tr("type what is lettered there"));
      return false;
    }
    if (const FeatureOffer* feature = offered().feature()) return takeFeature(*feature, text);
    return takeReading(text);
  }

  bool choose(int number) override {
    if (over() || offered().reading() == nullptr) return false;
    const PutReading put = putNow();
    const auto index = static_cast<std::size_t>(number);
    if (put.how != Put::choice || index >= put.choices.size()) return false;
    if (offered().hears(offeringNow())) takeReading(QString::fromStdString(put.choices[index]));
    return true;
  }

  bool pass() override {
    if (over()) return false;
    hands_.offering->offered.pass(offeringNow());
    show();
    return true;
  }

  bool back() override {
    if (over()) return false;
    hands_.offering->offered.drop(offeringNow());
    goOn();
    return true;
  }

  std::vector<Id> chosen() const override {
    std::vector<Id> out;
    if (over() || offered().reading() == nullptr) return out;
    const auto [from, to] = ends();
    for (const Id& id : {from, to}) {
      if (!id.empty()) out.push_back(id);
    }
    return out;
  }

 private:
  struct PointedOut {
    std::size_t one = 0;
    Id from;
    Id to;
  };

  const seen::Offered& offered() const { return hands_.offering->offered; }
  std::array<Axis, 2> axes() const { return axesIn(hands_.desk.face()); }

  QString readingPrompt() const {
    const auto [from, to] = ends();
    const ReadingOffer& offer = *offered().reading();
    const QString open = QStringLiteral("?");
    const QString one = from.empty() ? open : QString::fromStdString(from);
    const QString other = to.empty() ? open : QString::fromStdString(to);
    const QString ends =
        offer.kind == OfferedReading::centres
            ? tr("Straight from %1 to %2:").arg(one, other)
            : tr("From %1 to %2 along %3:").arg(one, other, wordFor(axisOf(offer)));
    if (from.empty() || to.empty()) {
      return ends + QStringLiteral(" ") + tr("point at the place where it ends.");
    }
    const PutReading put = putNow();
    QString ask;
    switch (put.how) {
      case Put::ready:
        ask = tr("does the print letter this? Enter takes it.");
        break;
      case Put::choice: {
        QStringList keys;
        for (std::size_t i = 0; i < put.choices.size(); ++i) {
          keys << QStringLiteral("Alt+%1  %2")
                      .arg(i + 1)
                      .arg(QString::fromStdString(put.choices[i]));
        }
        ask = tr("which is lettered: %1? Or type it.").arg(keys.join(QStringLiteral(",  ")));
        break;
      }
      case Put::asked:
        ask = tr("it looks like %1, but something speaks against that: another line's figure, not "
                 "to scale, a misprint? Type what is lettered.")
                  .arg(QString::fromStdString(put.asked));
        break;
      case Put::typed:
        ask = put.blind ? tr("this one is asked blind: type what is lettered.")
                        : tr("type what is lettered.");
    }
    return ends + QStringLiteral(" ") + ask;
  }

  /// As witnesses give it, and only where all that is known agrees.
  PutReading putNow() const {
    PutReading put = offered().put();
    if (put.how != Put::ready) return put;
    const auto reading = readingFor(QString::fromStdString(put.strip));
    if (reading && !speaksAgainst(*reading)) return put;
    PutReading asked;
    asked.how = reading ? Put::asked : Put::typed;
    asked.asked = put.strip;
    return asked;
  }

  bool speaksAgainst(const Reading& reading) const {
    if (!hands_.evidence().objection(reading, true).empty()) return true;
    Part next = hands_.part();
    next.readings.push_back(reading);
    const auto solved = solve(next);
    return !solved.ok() || solved->clashes.size() > hands_.desk.solution().clashes.size();
  }

  Axis axisOf(const ReadingOffer& offer) const {
    return axes()[offer.kind == OfferedReading::alongY ? 1 : 0];
  }

  /// The places whose traces the dimension's ends lie at; empty where there is none.
  std::pair<Id, Id> ends() const {
    if (pointed_ && pointed_->one == offered().lit()) return {pointed_->from, pointed_->to};
    const ReadingOffer& offer = *offered().reading();
    return {endAt(offer, offer.from), endAt(offer, offer.to)};
  }

  Id endAt(const ReadingOffer& offer, PlanePoint at) const {
    const bool straight = offer.kind == OfferedReading::centres;
    const bool second = offer.kind == OfferedReading::alongY;
    const double along = second ? at.y : at.x, aside = second ? at.x : at.y;
    const double reach = kNear + hands_.squaringError;
    double best = 1e9;
    Id found;
    for (const Feature& feature : hands_.part().features) {
      const auto here = tracedAlong(feature, axisOf(offer));
      const auto there = tracedAlong(feature, axes()[second ? 0 : 1]);
      const bool edge = feature.is(FeatureKind::edge);
      if (!here || std::abs(*here - along) > reach) continue;
      if (!edge && (!there || feature.face != hands_.desk.face())) continue;
      if (straight && (edge || std::abs(*there - aside) > reach)) continue;
      const double away = std::abs(*here - along) + (edge ? 0 : kAside * std::abs(*there - aside));
      if (away >= best) continue;
      best = away;
      found = feature.id;
    }
    return found;
  }

  std::optional<Reading> readingFor(const QString& text) const {
    const auto [from, to] = ends();
    if (from.empty() || to.empty() || from == to) return std::nullopt;
    auto figure = readLength(text.toStdString(), {hands_.desk.job().unit});
    if (!figure.ok()) return std::nullopt;
    const ReadingOffer& offer = *offered().reading();
    Reading reading;
    reading.id = nextReadingId(hands_.part());
    reading.from = from;
    reading.to = to;
    if (offer.kind == OfferedReading::centres) {
      reading.kind = ReadingKind::centres;
    } else {
      reading.axis = axisOf(offer);
      std::tie(reading.from, reading.to) = hands_.ordered(from, to, reading.axis);
    }
    reading.figure = std::move(*figure);
    reading.offered = seen::Offered::offeredOf(offer, text.toStdString());
    if (offer.figure.w > 0) {
      const QPointF at = hands_.offering->inches(offer.figure).center();
      reading.place = {offeredTrace(at.x()), offeredTrace(at.y())};
    }
    return reading;
  }

  bool takeReading(const QString& text) {
    const auto reading = readingFor(text);
    if (!reading) {
      // A whole line, such as `L A 3/8`, is welcome at any time.
      const auto figure = readLength(text.toStdString(), {hands_.desk.job().unit});
      if (!figure.ok()) return hands_.apply(hands_.line(text)) && (goOn(), true);
      emit hands_.desk.refused(tr("point at the place where it ends, or type it all: L A 3/8"));
      return false;
    }
    Part next = hands_.part();
    next.readings.push_back(*reading);
    return take(
        std::move(next), reading->id, text.toStdString(),
        tr("Read %1 from %2 to %3")
            .arg(text, QString::fromStdString(reading->from), QString::fromStdString(reading->to)));
  }

  bool take(Part next, const Id& id, const std::string& text, const QString& title) {
    const std::size_t one = *offered().lit();
    if (!hands_.apply(std::move(next), title)) return false;
    hands_.offering->offered.confirm(offeringNow(), text);
    hands_.offering->taken.push_back({one, id});
    goOn();
    return true;
  }

  /// Its name, and the size where a note plainly letters it.
  QString featureText(const FeatureOffer& offer) const {
    if (offer.kind == OfferedFeature::edge) {
      const auto side = sideOffered(offer);
      const QString id = QString::fromStdString(nextFeatureId(hands_.part(), side));
      return id + QStringLiteral(" ") +
             QString::fromStdString(
                 std::string(side ? nameOf(*side) : nameOf(axes()[offer.alongX ? 0 : 1])));
    }
    if (offer.kind != OfferedFeature::hole) return {};
    const QString id = QString::fromStdString(nextFeatureId(hands_.part()));
    if (offer.size.empty()) return id;
    if (!offer.sizeWitnesses.ready()) return {};
    return id + QStringLiteral(" ") + QString::fromStdString(offer.size) +
           (offer.note.empty() ? QString()
                               : QStringLiteral(" ") + QString::fromStdString(offer.note));
  }

  /// The outermost edge each way is that side of the part, unless one is traced there already.
  std::optional<Side> sideOffered(const FeatureOffer& offer) const {
    const auto at = [](const FeatureOffer& f) { return f.alongX ? f.at.x : f.at.y; };
    bool least = true, most = true;
    for (const FeatureOffer& other : offered().offers().features) {
      if (other.kind != offer.kind || other.alongX != offer.alongX) continue;
      least = least && at(offer) <= at(other);
      most = most && at(offer) >= at(other);
    }
    if (least == most) return std::nullopt;
    for (const Side side :
         {Side::left, Side::right, Side::front, Side::back, Side::bottom, Side::top}) {
      if (axisAcross(side) != axes()[offer.alongX ? 0 : 1]) continue;
      const bool low = side == Side::left || side == Side::front || side == Side::bottom;
      if (low != least) continue;
      const auto& all = hands_.part().features;
      const bool there = std::any_of(all.begin(), all.end(), [&](const Feature& f) {
        return f.is(FeatureKind::edge) && sideOf(f) == side;
      });
      return there ? std::nullopt : std::optional(side);
    }
    return std::nullopt;
  }

  Echo featureEcho(const FeatureOffer& offer, const QString& text) const {
    const auto read =
        readFeatureLine(hands_.part(), *kindOf(offer.kind), text.toStdString(), hands_.context());
    if (!read.ok()) {
      const Echo line = echoLine(hands_, text);
      if (!line.refused) return line;
      return {QString::fromStdString(read.error().text), true,
              static_cast<int>(read.error().at.value_or(0)), false};
    }
    Echo echo;
    echo.text = wordFor(*kindOf(offer.kind)) + QStringLiteral(" ") +
                QString::fromStdString(read->feature.id);
    if (const auto& size = diameterOf(read->feature)) {
      const Echo figure = echoFigure(QString::fromStdString(size->text), hands_.desk.job().unit);
      echo.text += QStringLiteral(": ") + figure.text;
      echo.doubtful = figure.doubtful;
    }
    return echo;
  }

  bool takeFeature(const FeatureOffer& offer, const QString& text) {
    auto read =
        readFeatureLine(hands_.part(), *kindOf(offer.kind), text.toStdString(), hands_.context());
    if (!read.ok()) {
      const auto line = hands_.line(text);
      if (line.ok()) return hands_.apply(line) && (goOn(), true);
      emit hands_.desk.refused(QString::fromStdString(read.error().text));
      return false;
    }
    Feature feature = read->feature;
    const auto add = [&](PlanePoint at) {
      feature.traced.push_back(offeredTrace(at.x));
      feature.traced.push_back(offeredTrace(at.y));
    };
    if (offer.kind == OfferedFeature::edge) {
      feature.traced = {offeredTrace(offer.alongX ? offer.at.x : offer.at.y)};
    } else if (offer.kind == OfferedFeature::row) {
      add(offer.from);
    } else {
      add(offer.at);
    }
    Part next = hands_.part();
    next.features.push_back(feature);
    return take(
        std::move(next), feature.id, text.toStdString(),
        tr("Trace %1 %2").arg(wordFor(*kindOf(offer.kind)), QString::fromStdString(feature.id)));
  }

  bool isKnown(const FeatureOffer& offer) const {
    const auto& all = hands_.part().features;
    return std::any_of(all.begin(), all.end(), [&](const Feature& one) {
      if (!one.is(*kindOf(offer.kind))) return false;
      const auto near = [&](Axis axis, double at) {
        const auto traced = tracedAlong(one, axis);
        return traced && std::abs(*traced - at) <= kNear + hands_.squaringError;
      };
      if (offer.kind == OfferedFeature::edge) {
        return near(axes()[offer.alongX ? 0 : 1], offer.alongX ? offer.at.x : offer.at.y);
      }
      return one.face == hands_.desk.face() && near(axes()[0], offer.at.x) &&
             near(axes()[1], offer.at.y);
    });
  }

  /// Read already, and as far as can be seen with the same figure.
  bool isKnown(const ReadingOffer& offer) const {
    const auto [from, to] = ends();
    const auto& all = hands_.part().readings;
    return std::any_of(all.begin(), all.end(), [&, a = from, b = to](const Reading& one) {
      if ((one.kind == ReadingKind::centres) != (offer.kind == OfferedReading::centres))
        return false;
      if (one.kind == ReadingKind::along && one.axis != axisOf(offer)) return false;
      const bool these = (one.from == a && one.to == b) || (one.from == b && one.to == a);
      return these && (offer.candidates.empty() ||
                       offer.candidates.front().ticks == one.figure.value.ticks());
    });
  }

  /// Past what is there already.
  void goOn() {
    seen::Offered& all = hands_.offering->offered;
    while (!over()) {
      const FeatureOffer* feature = all.feature();
      if (feature != nullptr ? !isKnown(*feature) : !isKnown(*all.reading())) break;
      all.drop(offeringNow());
    }
    show();
  }

  void show() {
    if (!over()) hands_.showPlaces = chosen();
  }

  std::optional<PointedOut> pointed_;
};

}  // namespace

QRectF Offering::inches(const seen::PictureBox& box) const {
  QRectF out;
  for (const auto& [x, y] :
       {std::pair(box.x, box.y), std::pair(box.x + box.w, box.y), std::pair(box.x, box.y + box.h),
        std::pair(box.x + box.w, box.y + box.h)}) {
    const PlanePoint at = toInches.map({x, y});
    if (out.isNull()) out = QRectF(at.x, at.y, 1e-9, 1e-9);
    out = out.united(QRectF(at.x, at.y, 1e-9, 1e-9));
  }
  return out;
}

seen::Offered::Time offeringNow() {
  return std::chrono::duration_cast<seen::Offered::Time>(
      std::chrono::steady_clock::now().time_since_epoch());
}

seen::Offers offersOfFace(const seen::Offers& all) {
  seen::Offers out = all;
  std::erase_if(out.features, [](const FeatureOffer& f) { return f.view != 0 || !kindOf(f.kind); });
  std::erase_if(out.readings, [](const ReadingOffer& r) {
    return r.view != 0 || r.kind == OfferedReading::angle;
  });
  // Sides come before what is read from them.
  std::stable_partition(out.features.begin(), out.features.end(),
                        [](const FeatureOffer& f) { return f.kind == OfferedFeature::edge; });
  return out;
}

std::vector<seen::Confirmed> confirmedIn(const Part& part, Face face) {
  const auto axes = axesIn(face);
  std::vector<seen::Confirmed> out;
  for (const Reading& r : part.readings) {
    if (r.kind != ReadingKind::along || (r.axis != axes[0] && r.axis != axes[1])) continue;
    const Feature *from = part.feature(r.from), *to = part.feature(r.to);
    if (from == nullptr || to == nullptr) continue;
    const auto a = tracedAlong(*from, r.axis), b = tracedAlong(*to, r.axis);
    if (!a || !b) continue;
    out.push_back({r.axis == axes[0] ? OfferedReading::alongX : OfferedReading::alongY, *a, *b,
                   r.figure.value});
  }
  return out;
}

std::unique_ptr<Activity> goingThroughOffers(Hands& hands) {
  return std::make_unique<OfferingActivity>(hands);
}

}  // namespace inchwright::app
