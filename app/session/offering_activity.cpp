// Going through what the print offers, one at a time. A figure stands ready only where it is
// plainly lettered and nothing known speaks against it, a place only where a dimension or a note
// speaks of it; else it is chosen or typed.

#include <algorithm>
#include <cmath>
#include <tuple>

#include "app/session/activity.h"
#include "app/session/offer_walk.h"
#include "app/session/picture_edits.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

constexpr QLatin1String kNowhere("?");  // where no end of a reading lies

using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::Put;
using seen::PutReading;
using seen::ReadingOffer;

class OfferingActivity : public Activity {
 public:
  explicit OfferingActivity(Hands& hands) : Activity(hands) { goOn(); }

  Doing doing() const override { return Doing::offering; }
  bool over() const override { return !hands_.offersHere(); }

  QString prompt() const override {
    if (over()) return tr("The print offers nothing more");
    const OfferWalk walk(hands_);
    const QString rest =
        QStringLiteral(" ") +
        tr("Escape drops it, Tab passes; %1 to look at").arg(walk.waiting().size()) + notHere();
    if (const FeatureOffer* feature = offered().feature()) {
      return featurePrompt(walk, *feature) + rest;
    }
    return readingPrompt(walk) + rest;
  }

  QString offer() const override {
    if (over()) return {};
    const OfferWalk walk(hands_);
    if (offered().feature() != nullptr) {
      return walk.isCertain(lit()) ? QString::fromStdString(walk.textOf(hands_.part(), lit()))
                                   : QString();
    }
    return QString::fromStdString(putNow(walk).strip);
  }

  Echo echo(const QString& typed) const override {
    if (over()) return {};
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return {};
    if (offered().feature() != nullptr) return featureEcho(text);
    Echo echo = echoFigure(text, hands_.desk.job().unit);
    if (echo.refused) {
      const Echo line = echoLine(hands_, text);
      return line.refused ? echo : line;
    }
    if (const auto taken = readingFor(OfferWalk(hands_), text)) {
      addObjection(TracingEvidence(taken->part, hands_.squaringError), true, taken->reading, echo);
    }
    return echo;
  }

  /// Another place for the nearer end of the lit dimension.
  void point(const Pointed& pointed) override {
    if (over() || offered().reading() == nullptr || pointed.place.empty()) return;
    const ReadingOffer& offer = *offered().reading();
    auto [from, to] = ends(OfferWalk(hands_));
    const QPointF at = pointed.at;
    const auto away = [&](PlanePoint end) { return std::hypot(at.x() - end.x, at.y() - end.y); };
    (away(offer.from) <= away(offer.to) ? from : to) = {pointed.place, std::nullopt};
    pointed_ = {lit(), from, to};
  }

  bool enter(const QString& typed) override {
    // Enter is deaf at first, so that nobody takes what has not been looked at.
    if (over() || !offered().hears(hands_.clock()) || goneBy()) return false;
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) {
      emit hands_.desk.refused(askedForInstead());
      return false;
    }
    return offered().feature() != nullptr ? takeFeature(text) : takeReading(text);
  }

  bool choose(int number) override {
    if (over() || offered().reading() == nullptr || goneBy()) return false;
    const PutReading put = putNow(OfferWalk(hands_));
    const auto index = static_cast<std::size_t>(number);
    if (put.how != Put::choice || index >= put.choices.size()) return false;
    if (offered().hears(hands_.clock())) takeReading(QString::fromStdString(put.choices[index]));
    return true;
  }

  bool pass() override {
    if (over()) return false;
    next(lit());
    return true;
  }

  bool back() override {
    if (over()) return false;
    const std::size_t one = lit();
    hands_.offering->offered.drop(hands_.clock());
    next(one);
    return true;
  }

  std::vector<Id> chosen() const override {
    std::vector<Id> out;
    if (over() || offered().reading() == nullptr) return out;
    const auto [from, to] = ends(OfferWalk(hands_));
    for (const Id& id : {from.id, to.id}) {
      if (!id.empty()) out.push_back(id);
    }
    return out;
  }

  std::vector<std::size_t> alongside() const override {
    std::vector<std::size_t> out;
    if (over() || offered().reading() == nullptr) return out;
    const auto [from, to] = ends(OfferWalk(hands_));
    for (const auto& one : {from.feature, to.feature}) {
      if (one) out.push_back(*one);
    }
    return out;
  }

 private:
  /// What is left for the hand when all has been gone through.
  QString notHere() const {
    const Offering::PassedBy& by = hands_.offering->passedBy;
    QStringList what;
    if (by.angles > 0) what << tr("angles (%1)").arg(by.angles);
    if (by.onOtherViews > 0) what << tr("dimensions of other views (%1)").arg(by.onOtherViews);
    if (what.isEmpty()) return {};
    return QStringLiteral("; ") + tr("by hand: %1").arg(what.join(QStringLiteral(", ")));
  }

  struct PointedOut {
    std::size_t one = 0;
    OfferedEnd from;
    OfferedEnd to;
  };

  /// A reading with the part it makes, in which the features at its ends stand as well.
  struct Taken {
    Part part;
    Reading reading;
    std::vector<Offering::Taken> along;
  };

  const seen::Offered& offered() const { return hands_.offering->offered; }
  std::size_t lit() const { return *offered().lit(); }

  QString featurePrompt(const OfferWalk& walk, const FeatureOffer& feature) const {
    QString what = wordFor(kindOf(feature.kind));
    if (feature.kind == OfferedFeature::row) what += tr(", %1 of them").arg(feature.count);
    if (!feature.size.empty() && !feature.sizeWitnesses.ready()) {
      return tr("Offered: %1. Type what the note at it letters.").arg(what);
    }
    const QString text = QString::fromStdString(walk.textOf(hands_.part(), lit()));
    if (text.isEmpty()) return tr("Offered: %1. Type what it is.").arg(what);
    if (walk.isCertain(lit())) {
      return tr("Offered: %1. Enter takes it, or type what it is.").arg(what);
    }
    return tr("Offered: %1, unless it is a dashed line or lettering. Only if it is one, type %2.")
        .arg(what, text);
  }

  QString readingPrompt(const OfferWalk& walk) const {
    const auto [from, to] = ends(walk);
    const ReadingOffer& offer = *offered().reading();
    const auto [one, other] = namesOf(walk, from, to);
    const QString ends =
        offer.kind == OfferedReading::centres
            ? tr("Straight from %1 to %2:").arg(one, other)
            : tr("From %1 to %2 along %3:").arg(one, other, wordFor(walk.axisOf(offer)));
    // An end may be offered as something that can't be put in without being told more.
    if (one == kNowhere || other == kNowhere) {
      return ends + QStringLiteral(" ") + tr("point at the place where it ends.");
    }
    return ends + QStringLiteral(" ") + ask(putNow(walk));
  }

  /// What Enter alone doesn't answer.
  QString askedForInstead() const {
    if (offered().feature() != nullptr) return tr("is it one? Type its name, or Escape drops it");
    if (putNow(OfferWalk(hands_)).how == Put::choice) {
      return tr("which of them is for the eye to say: Alt+1, Alt+2 …, or type what is lettered");
    }
    return tr("type what is lettered there");
  }

  QString ask(const PutReading& put) const {
    switch (put.how) {
      case Put::ready:
        return tr("does the print letter this? Enter takes it.");
      case Put::choice: {
        QStringList keys;
        for (std::size_t i = 0; i < put.choices.size(); ++i) {
          keys << QStringLiteral("Alt+%1  %2")
                      .arg(i + 1)
                      .arg(QString::fromStdString(put.choices[i]));
        }
        return tr("which is lettered: %1? Or type it.").arg(keys.join(QStringLiteral(",  ")));
      }
      case Put::asked:
        return tr("it looks like %1, but something speaks against that: another line's figure, "
                  "not to scale, a misprint? Type what is lettered.")
            .arg(QString::fromStdString(put.asked));
      case Put::typed:
        break;
    }
    return put.blind ? tr("this one is asked blind: type what is lettered.")
                     : tr("type what is lettered.");
  }

  /// How the ends are called: by name, what comes with the reading as new, `?` where nothing lies.
  std::pair<QString, QString> namesOf(const OfferWalk& walk, const OfferedEnd& from,
                                      const OfferedEnd& to) const {
    Part part = hands_.part();
    const auto nameOf = [&](const OfferedEnd& end) {
      if (!end.found()) return QString(kNowhere);
      if (!end.feature) return QString::fromStdString(end.id);
      const auto feature = walk.featureOf(part, *end.feature, walk.textOf(part, *end.feature));
      if (!feature.ok()) return QString(kNowhere);
      part.features.push_back(*feature);
      return tr("%1 (new)").arg(QString::fromStdString(feature->id));
    };
    const QString one = nameOf(from);
    return {one, nameOf(to)};
  }

  /// As witnesses give it, and only where all that is known agrees.
  PutReading putNow(const OfferWalk& walk) const {
    PutReading put = offered().put();
    if (put.how != Put::ready) return put;
    const auto taken = readingFor(walk, QString::fromStdString(put.strip));
    if (taken && !speaksAgainst(*taken)) return put;
    PutReading asked;
    asked.how = taken ? Put::asked : Put::typed;
    asked.asked = put.strip;
    return asked;
  }

  bool speaksAgainst(const Taken& taken) const {
    const TracingEvidence evidence(taken.part, hands_.squaringError);
    if (!evidence.objection(taken.reading, true).empty()) return true;
    const auto solved = solve(taken.part);
    return !solved.ok() || solved->clashes.size() > hands_.desk.solution().clashes.size();
  }

  std::pair<OfferedEnd, OfferedEnd> ends(const OfferWalk& walk) const {
    if (pointed_ && pointed_->one == lit()) return {pointed_->from, pointed_->to};
    return walk.endsOf(*offered().reading());
  }

  std::optional<Taken> readingFor(const OfferWalk& walk, const QString& text) const {
    auto [from, to] = ends(walk);
    if (!from.found() || !to.found() || from == to) return std::nullopt;
    auto figure = readLength(text.toStdString(), {hands_.desk.job().unit});
    if (!figure.ok()) return std::nullopt;
    Taken out;
    out.part = hands_.part();
    for (OfferedEnd* end : {&from, &to}) {
      if (!end->feature) continue;
      auto feature = walk.featureOf(out.part, *end->feature, walk.textOf(out.part, *end->feature));
      if (!feature.ok()) return std::nullopt;
      end->id = feature->id;
      out.along.push_back({*end->feature, feature->id});
      out.part.features.push_back(*std::move(feature));
    }
    const ReadingOffer& offer = *offered().reading();
    Reading& reading = out.reading;
    reading.id = nextReadingId(out.part);
    reading.from = from.id;
    reading.to = to.id;
    if (offer.kind == OfferedReading::centres) {
      reading.kind = ReadingKind::centres;
    } else {
      reading.axis = walk.axisOf(offer);
      if (out.along.empty()) {
        std::tie(reading.from, reading.to) = hands_.ordered(from.id, to.id, reading.axis);
      }
    }
    reading.figure = std::move(*figure);
    reading.offered = seen::Offered::offeredOf(offer, text.toStdString());
    if (offer.figure.w > 0) {
      const QPointF at = hands_.offering->inches(offer.figure).center();
      reading.place = {tracedText(at.x()), tracedText(at.y())};
    }
    out.part.readings.push_back(reading);
    return out;
  }

  bool takeReading(const QString& text) {
    auto taken = readingFor(OfferWalk(hands_), text);
    if (!taken) {
      // A whole line, such as `L A 3/8`, is welcome at any time.
      const auto figure = readLength(text.toStdString(), {hands_.desk.job().unit});
      if (!figure.ok()) return hands_.apply(hands_.line(text)) && (goOn(), true);
      emit hands_.desk.refused(tr("point at the place where it ends, or type it all: L A 3/8"));
      return false;
    }
    const Reading reading = taken->reading;
    return take(
        std::move(taken->part), reading.id, text.toStdString(),
        tr("Read %1 from %2 to %3")
            .arg(text, QString::fromStdString(reading.from), QString::fromStdString(reading.to)),
        taken->along);
  }

  bool take(Part part, const Id& id, const std::string& text, const QString& title,
            const std::vector<Offering::Taken>& along = {}) {
    const std::size_t one = lit();
    if (!hands_.apply(std::move(part), title)) return false;
    for (const Offering::Taken& other : along) {
      hands_.offering->offered.confirmAlso(other.one);
      hands_.offering->taken.push_back(other);
    }
    hands_.offering->offered.confirm(hands_.clock(), text);
    hands_.offering->taken.push_back({one, id});
    next(one);
    return true;
  }

  Echo featureEcho(const QString& text) const {
    const auto read = OfferWalk(hands_).featureOf(hands_.part(), lit(), text.toStdString());
    if (!read.ok()) {
      const Echo line = echoLine(hands_, text);
      if (!line.refused) return line;
      return {QString::fromStdString(read.error().text), true,
              static_cast<int>(read.error().at.value_or(0)), false};
    }
    Echo echo;
    echo.text = wordFor(read->kind()) + QStringLiteral(" ") + QString::fromStdString(read->id);
    if (const auto& size = diameterOf(*read)) {
      const Echo figure = echoFigure(QString::fromStdString(size->text), hands_.desk.job().unit);
      echo.text += QStringLiteral(": ") + figure.text;
      echo.doubtful = figure.doubtful;
    }
    return echo;
  }

  bool takeFeature(const QString& text) {
    const auto read = OfferWalk(hands_).featureOf(hands_.part(), lit(), text.toStdString());
    if (!read.ok()) {
      const auto line = hands_.line(text);
      if (line.ok()) return hands_.apply(line) && (goOn(), true);
      emit hands_.desk.refused(QString::fromStdString(read.error().text));
      return false;
    }
    Part part = hands_.part();
    part.features.push_back(*read);
    return take(std::move(part), read->id, text.toStdString(),
                tr("Trace %1 %2").arg(wordFor(read->kind()), QString::fromStdString(read->id)));
  }

  /// Lights what comes after another one.
  void next(std::size_t one) {
    if (const auto following = OfferWalk(hands_).after(one)) {
      hands_.offering->offered.light(*following, hands_.clock());
    }
    show();
  }

  /// Stays where it is, unless that is done with.
  void goOn() {
    const OfferWalk walk(hands_);
    const auto& all = walk.waiting();
    if (!all.empty() && std::find(all.begin(), all.end(), offered().lit()) == all.end()) {
      hands_.offering->offered.light(all.front(), hands_.clock());
    }
    show();
  }

  /// Whether the lit one was put in elsewhere meanwhile; then another one is lit.
  bool goneBy() {
    const std::size_t one = lit();
    goOn();
    return lit() != one;
  }

  void show() {
    if (!over()) hands_.showPlaces = chosen();
  }

  std::optional<PointedOut> pointed_;
};

}  // namespace

std::unique_ptr<Activity> goingThroughOffers(Hands& hands) {
  return std::make_unique<OfferingActivity>(hands);
}

}  // namespace inchwright::app
