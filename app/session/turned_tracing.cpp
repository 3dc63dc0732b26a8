// Tracing turned work from a side view: one click on the line of a surface says between which two
// shoulders it lies and how thick it is drawn; two clicks straight across say where its axis is.

#include <algorithm>
#include <cmath>

#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "core/measure/writing.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

/// Where each edge across X of the part is drawn, from left to right.
std::vector<std::pair<double, Id>> shouldersOf(const Hands& hands) {
  std::vector<std::pair<double, Id>> all;
  if (!hands.desk.hasPart()) return all;
  const Part& part = hands.part();
  const auto inches = [](const Position& at) {
    return at.ticks.toDouble() / static_cast<double>(Length::kTicksPerInch);
  };
  // On bare paper what is placed has settled about the first that was traced.
  std::optional<double> anchor;
  for (const Feature& feature : part.features) {
    const auto traced = tracedAlong(feature, Axis::x);
    const Position* at = hands.desk.solution().position(feature.id, Axis::x);
    if (traced && at != nullptr && at->group == 0 && !anchor) anchor = *traced - inches(*at);
  }
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || edge->axis != Axis::x) continue;
    const auto traced = tracedAlong(feature, Axis::x);
    const Position* at = hands.desk.solution().position(feature.id, Axis::x);
    const bool settled = !hands.drawnToScale() && at != nullptr && at->group == 0;
    if (settled) {
      all.emplace_back(anchor.value_or(0) + inches(*at), feature.id);
    } else if (traced) {
      all.emplace_back(*traced, feature.id);
    }
  }
  std::sort(all.begin(), all.end());
  return all;
}

bool isAtOneEdge(FeatureKind kind) {
  return kind == FeatureKind::chamfer || kind == FeatureKind::centreDrill;
}

class TurnedTracing : public Activity {
 public:
  TurnedTracing(Hands& hands, FeatureKind kind) : Activity(hands), kind_(kind) {}

  Doing doing() const override { return Doing::tracing; }

  QString prompt() const override {
    const QString what = wordFor(kind_);
    if (!at_) {
      return isAtOneEdge(kind_)
                 ? tr("%1: point at the end or shoulder it is on, or type all of it").arg(what)
                 : tr("%1: point at its line between two shoulders, or type all of it").arg(what);
    }
    return tr("%1, %2: %3").arg(what, whereWords(), QString::fromUtf8(example()));
  }

  QString offer() const override {
    return at_ && kind_ == FeatureKind::knurl ? QStringLiteral("diamond") : QString();
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    Echo echo;
    const auto read = featureFor(text);
    if (!read.ok()) {
      const Echo line = echoLine(hands_, text);
      if (!line.refused) return line;
      echo.text = QString::fromStdString(read.error().text);
      echo.refused = true;
      return echo;
    }
    echo.text = wordFor(kind_) + QLatin1Char(' ') + QString::fromStdString(read->feature.id);
    if (at_) echo.text += QStringLiteral(", ") + whereWords();
    if (const std::optional<Lettered>& figure = diameterOf(read->feature)) {
      const Echo said = echoFigure(QString::fromStdString(figure->text), hands_.desk.job().unit);
      echo.text += QStringLiteral(": ") + said.text;
      echo.doubtful = said.doubtful;
      object(*figure, echo);
    }
    addTurned(read->feature, echo);
    return echo;
  }

  void point(const Pointed& pointed) override { at_ = pointed.at; }

  bool enter(const QString& typed) override {
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return false;
    auto read = featureFor(text);
    if (!read.ok()) {
      const auto line = hands_.line(text);
      if (line.ok()) return hands_.apply(line);
      emit hands_.desk.refused(QString::fromStdString(read.error().text));
      return false;
    }
    Feature& feature = read->feature;
    if (at_) feature.traced = {tracedText(at_->x()), tracedText(at_->y())};
    const QString id = QString::fromStdString(feature.id);
    Part next = turnedPart(hands_.part());
    next.features.push_back(std::move(feature));
    if (!hands_.apply(std::move(next), tr("Trace %1 %2").arg(wordFor(kind_), id))) return false;
    at_.reset();
    return true;
  }

  bool back() override {
    if (!at_) return false;
    at_.reset();
    return true;
  }

  std::optional<QPointF> pending() const override { return at_; }

 private:
  const char* example() const {
    switch (kind_) {
      case FeatureKind::taper:
        return "large 1/2 small 3/8";
      case FeatureKind::screwed:
        return "1/4-20 UNC";
      case FeatureKind::knurl:
        return "diamond 1/32";
      case FeatureKind::chamfer:
        return "1/32 x 45°";
      case FeatureKind::centreDrill:
        return "#2";
      case FeatureKind::groove:
        return "the diameter at its floor, 5/16";
      default:
        return "its diameter, 3/8 or .3742/.3747";
    }
  }

  /// The edges that were pointed at: the two about the click, or the one nearest to it.
  std::vector<Id> edges() const {
    const auto shoulders = shouldersOf(hands_);
    if (!at_ || shoulders.empty()) return {};
    const auto above = std::find_if(shoulders.begin(), shoulders.end(),
                                    [&](const auto& one) { return one.first > at_->x(); });
    if (!isAtOneEdge(kind_)) {
      if (above == shoulders.begin() || above == shoulders.end()) return {};
      return {std::prev(above)->second, above->second};
    }
    const auto nearest =
        std::min_element(shoulders.begin(), shoulders.end(), [&](const auto& a, const auto& b) {
          return std::abs(a.first - at_->x()) < std::abs(b.first - at_->x());
        });
    return {nearest->second};
  }

  QString whereWords() const {
    const std::vector<Id> found = edges();
    if (found.empty()) return tr("not between two shoulders: trace those first");
    const QString first = QString::fromStdString(found.front());
    return found.size() == 1 ? tr("at %1").arg(first)
                             : tr("%1 to %2").arg(first, QString::fromStdString(found.back()));
  }

  /// Whether its edges are edges of the part.
  bool standsOnEdges(const Feature& feature) const {
    const auto isEdge = [&](const Id& id) {
      const Feature* edge = hands_.part().feature(id);
      return edge != nullptr && edge->is<kind::Edge>();
    };
    if (const auto* chamfer = feature.as<kind::Chamfer>()) return isEdge(chamfer->at);
    if (const auto* drill = feature.as<kind::CentreDrill>()) return isEdge(drill->at);
    const std::vector<Id>* between = betweenOf(feature);
    return between != nullptr && std::all_of(between->begin(), between->end(), isEdge);
  }

  /// All of it as typed (`J L M 3/8`), else what was typed between the edges pointed at.
  Result<FeatureLine> featureFor(const QString& text) const {
    const LineContext context = hands_.context();
    auto whole = readFeatureLine(hands_.part(), kind_, text.toStdString(), context);
    if (whole.ok() && standsOnEdges(whole->feature)) return whole;
    const std::vector<Id> found = edges();
    if (found.empty()) {
      if (!whole.ok()) return whole;
      return Error{ErrorCode::badText, tr("name the shoulders it lies between").toStdString(), {}};
    }
    std::string line = nextFeatureId(hands_.part());
    for (const Id& edge : found) line += " " + edge;
    return readFeatureLine(hands_.part(), kind_, line + " " + text.toStdString(), context);
  }

  /// What the tracing says against a diameter: twice how far from the axis the click fell.
  void object(const Lettered& figure, Echo& echo) const {
    const Feature* axis = hands_.part().feature(centreLine().id);
    if (!at_ || axis == nullptr || axis->traced.size() != 2 || !hands_.drawnToScale()) return;
    const auto middle = tracedAlong(*axis, axesIn(hands_.desk.face())[1]);
    if (!middle) return;
    const double drawn = 2 * std::abs(at_->y() - *middle);
    const double off = std::abs(drawn - figure.value.toInches());
    if (off <= std::max(1.0 / 16, 0.1 * drawn) + 2 * hands_.squaringError) return;
    const auto sixtyFourths = static_cast<std::int64_t>(std::llround(drawn * 64));
    const Length about = Length::ticks(sixtyFourths * (Length::kTicksPerInch / 64));
    echo.text += tr("   look again: the tracing says about %1")
                     .arg(QString::fromStdString(writePlain(about, hands_.desk.job().unit)));
    echo.doubtful = true;
  }

  FeatureKind kind_;
  std::optional<QPointF> at_;
};

class CentreLineTracing : public Activity {
 public:
  using Activity::Activity;

  Doing doing() const override { return Doing::tracing; }

  QString prompt() const override {
    return first_ ? tr("centre line: now the same surface at the other side, straight across")
                  : tr("centre line: point at the line of a surface at one side of the axis");
  }

  void point(const Pointed& pointed) override {
    if (axesIn(hands_.desk.face())[0] != Axis::x) {
      emit hands_.desk.refused(tr("turn to a face along which the part lies, such as the top"));
      return;
    }
    if (!first_) {
      first_ = pointed.at;
      return;
    }
    const QPointF middle = (*first_ + pointed.at) / 2;
    first_.reset();
    const Part part = turnedPart(hands_.part());
    // The axis is a point of the face across it; a side view tells one of its two figures.
    const Feature& axis = *part.feature(centreLine().id);
    std::vector<std::string> traced = axis.traced;
    traced.resize(2, tracedText(0));
    const Axis told = axesIn(hands_.desk.face())[1];
    traced[told == axesIn(axis.face)[0] ? 0 : 1] = tracedText(middle.y());
    const auto next = moveTrace(part, axis.id, traced);
    if (!next.ok()) {
      emit hands_.desk.refused(QString::fromStdString(next.error().text));
      return;
    }
    over_ = hands_.apply(*next, tr("Put the centre line"));
  }

  bool enter(const QString& text) override { return hands_.apply(hands_.line(text)); }

  bool back() override {
    if (!first_) return false;
    first_.reset();
    return true;
  }

  std::optional<QPointF> pending() const override { return first_; }
  bool over() const override { return over_; }

 private:
  std::optional<QPointF> first_;
  bool over_ = false;
};

}  // namespace

std::unique_ptr<Activity> tracingTurned(Hands& hands, FeatureKind kind) {
  return std::make_unique<TurnedTracing>(hands, kind);
}

std::unique_ptr<Activity> tracingCentreLine(Hands& hands) {
  return std::make_unique<CentreLineTracing>(hands);
}

}  // namespace inchwright::app
