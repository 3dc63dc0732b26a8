// Tracing: a click puts a feature on the print, the strip names and sizes it.

#include <algorithm>
#include <cmath>

#include "app/session/activity.h"
#include "app/session/four_sides.h"
#include "app/session/picture_edits.h"
#include "core/part/edit.h"

namespace inchwright::app {
namespace {

class TracingActivity : public Activity {
 public:
  TracingActivity(Hands& hands, FeatureKind kind)
      : Activity(hands),
        kind_(kind),
        seeksSides_(kind == FeatureKind::edge && nextSide(hands.part(), hands.desk.face())) {}

  Doing doing() const override { return Doing::tracing; }

  QString prompt() const override {
    const QString what = wordFor(kind_);
    if (points_.size() < pointsWanted() && !points_.empty()) {
      return tr("%1: point at the next point of it").arg(what);
    }
    if (points_.empty() && kind_ == FeatureKind::edge && fourSides(hands_)) return fourSidesWords();
    if (points_.empty())
      return tr("%1: point at it on the print, or type its name and size").arg(what);
    const auto [one, other] = examples();
    if (one == nullptr) return tr("%1: its name and size").arg(what);
    const QString such = tr("such as %1 or %2").arg(QLatin1String(one), QLatin1String(other));
    if (kind_ == FeatureKind::row && points_.size() == 1) {
      return tr("%1: point at its last hole as well, or type what it is, %2").arg(what, such);
    }
    if (isSeveral()) return tr("%1 places: what they are, %2").arg(points_.size()).arg(such);
    if (gathers()) {
      return tr("%1: point at others alike, or type what it is, %2").arg(what, such);
    }
    return tr("%1: what it is, %2").arg(what, such);
  }

  QString offer() const override {
    if (kind_ == FeatureKind::edge && points_.empty() && fourSides(hands_)) {
      return tr("all four: L, R, F, K");
    }
    // Several at once are what is typed of them.
    if (points_.size() < pointsWanted() || isSeveral()) return {};
    if (kind_ == FeatureKind::edge) return edgeOffer();
    const QString id = QString::fromStdString(nextFeatureId(hands_.part()));
    return lastSize_.isEmpty() ? id : id + QStringLiteral(" ") + lastSize_;
  }

  Echo echo(const QString& text) const override {
    if (text.isEmpty()) return {};
    Echo echo;
    const auto read = featureFor(text);
    if (!read.ok() || isReading(text)) {
      if (isReading(text) || hands_.line(text).ok()) return echoLine(hands_, text);
      echo.text = QString::fromStdString(read.error().text);
      echo.refused = true;
      echo.at = static_cast<int>(read.error().at.value_or(0));
      return echo;
    }
    echo = echoFeature(hands_, *read);
    if (const auto* row = read->feature.as<kind::Row>()) addRowObjection(*row, echo);
    const int pointed = static_cast<int>(points_.size());
    if (isSeveral() && gathers(read->feature.kind())) {
      echo.text += QStringLiteral("; ") + tr("%1 places are pointed at").arg(pointed);
    }
    echo.doubtful = echo.doubtful || (read->alike != 0 && read->alike != std::max(1, pointed));
    return echo;
  }

  void point(const Pointed& pointed) override {
    const bool again = !points_.empty() && isNear(pointed);
    if (again || (points_.size() == pointsWelcome() && !gathers())) points_.pop_back();
    points_.push_back(pointed.at);
  }

  bool clickTakes(const QString& typed, const Pointed& pointed) const override {
    if (points_.size() < pointsWanted() || points_.empty() || isNear(pointed)) return false;
    // A name may be taken as it is offered, a size only as it is typed.
    return !typed.isEmpty() || kind_ == FeatureKind::edge || kind_ == FeatureKind::point;
  }

  bool enter(const QString& typed) override {
    if (typed.isEmpty() && points_.empty() && kind_ == FeatureKind::edge && fourSides(hands_)) {
      return traceFourSides(hands_);
    }
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return false;
    auto read = featureFor(text);
    if (!read.ok() || isReading(text)) {
      // A whole line, such as `L A 3/8`, is welcome at any time.
      if (hands_.desk.hasPart()) {
        const auto line = hands_.line(text);
        if (line.ok() || read.ok()) return hands_.apply(line);
      }
      emit hands_.desk.refused(QString::fromStdString(read.error().text));
      return false;
    }
    const int made = isSeveral() ? static_cast<int>(points_.size()) : 1;
    // Those that are still to come are not forgotten.
    if (read->alike > made && read->feature.note.empty()) read->feature.note = text.toStdString();
    if (!keep(read->feature)) return false;
    remember(text, read->feature);
    points_.clear();
    return true;
  }

  bool back() override {
    if (points_.empty()) return false;
    points_.pop_back();
    return true;
  }

  bool over() const override {
    return seeksSides_ && points_.empty() && !nextSide(hands_.part(), hands_.desk.face());
  }
  /// With all its sides there, most of what is left of a face is holes.
  std::optional<FeatureKind> next() const override { return FeatureKind::hole; }

  std::optional<QPointF> pending() const override {
    if (points_.empty()) return std::nullopt;
    return points_.back();
  }

  std::vector<QPointF> marks() const override {
    return isSeveral() ? points_ : std::vector<QPointF>();
  }

 private:
  /// Whether several that are alike may be pointed at before it is said what they are.
  static bool gathers(FeatureKind kind) {
    return kind == FeatureKind::hole || kind == FeatureKind::slot || kind == FeatureKind::round;
  }
  bool gathers() const { return gathers(kind_); }
  bool isSeveral() const { return gathers() && points_.size() > 1; }

  /// Whether a line names two places first: then it is no feature of the first one's name.
  bool isReading(const QString& text) const {
    const QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return words.size() > 2 && hands_.isPlace(words[0]) && hands_.isPlace(words[1]);
  }

  /// What two places pointed at say against the row between them.
  void addRowObjection(const kind::Row& row, Echo& echo) const {
    if (points_.size() != 2 || !row.pitch || !hands_.drawnToScale()) return;
    const QPointF apart = points_[1] - points_[0];
    const double traced = std::max(std::abs(apart.x()), std::abs(apart.y()));
    const double said = row.pitch->value.toInches() * (row.holes - 1);
    if (std::abs(traced - said) <= tracingBound(said, hands_.squaringError)) return;
    addQuestion(tr("the two places are about %1 apart: is it %2 holes, or as many spaces?")
                    .arg(QString::fromStdString(likelyFigure(traced, hands_.desk.job().unit)))
                    .arg(row.holes)
                    .toStdString(),
                echo);
  }

  bool isNear(const Pointed& pointed) const {
    const QPointF by = pointed.at - points_.back();
    return std::hypot(by.x(), by.y()) <= pointed.reach;
  }

  QString fourSidesWords() const {
    QStringList figures;
    const auto sides = fourSides(hands_);
    for (const auto& figure : sides->overall) {
      if (figure) figures << QString::fromStdString(figure->text);
    }
    if (figures.isEmpty()) {
      return tr("edge: Enter takes the four sides through the corners you named; or point at one");
    }
    return tr("edge: Enter takes the four sides through the corners you named, and reads %1 from "
              "side to side as you said; or point at one")
        .arg(figures.join(tr(" and ")));
  }

  /// Two lines as prints letter what is being traced; null where its name says all.
  std::pair<const char*, const char*> examples() const {
    switch (kind_) {
      case FeatureKind::edge:
        return {"L left", "S x"};
      case FeatureKind::hole:
        return {"1/4 ream", "B 10-32 tap deep 1/2"};
      case FeatureKind::slot:
        return {"x 1/4 by 1", "B y 3/16 by 5/8"};
      case FeatureKind::ring:
        return {"3 on 2 1/4 from 90 drill 1/8", "6 on 1 1/2 from 0 drill 3/16"};
      case FeatureKind::row:
        return {"4 holes pitch 5/8 drill 3/32", "5 spaces pitch 1/2 drill 1/8"};
      case FeatureKind::round:
        return {"3/8 about A left", "R1 1/2 about A right"};
      default:
        return {nullptr, nullptr};
    }
  }

  std::size_t pointsWanted() const {
    return kind_ == FeatureKind::line ? 2 : kind_ == FeatureKind::arc ? 3 : 1;
  }

  /// A row's last hole says which way it runs, but need not be pointed at.
  std::size_t pointsWelcome() const { return kind_ == FeatureKind::row ? 2 : pointsWanted(); }

  /// What the text says; of a row the two places say which way it runs, and no figure. What is
  /// pointed at as a hole may be said to be something else.
  Result<FeatureLine> featureFor(const QString& text) const {
    LineContext context = hands_.context();
    if (points_.size() == 2) {
      const QPointF apart = points_[1] - points_[0];
      const auto axes = axesIn(context.face);
      context.axis = std::abs(apart.x()) >= std::abs(apart.y()) ? axes[0] : axes[1];
    }
    return kind_ == FeatureKind::hole
               ? readFeatureLine(hands_.part(), text.toStdString(), context)
               : readFeatureLine(hands_.part(), kind_, text.toStdString(), context);
  }

  /// Puts down what was said, at each place pointed at: names follow by themselves.
  bool keep(const Feature& said) {
    const bool each = isSeveral() && gathers(said.kind());
    if (isSeveral() && !each && !(said.is<kind::Row>() && points_.size() == 2)) {
      emit hands_.desk.refused(
          tr("this says what one place is, and %1 are pointed at").arg(points_.size()));
      return false;
    }
    if (each && said.id != nextFeatureId(hands_.part())) {
      emit hands_.desk.refused(tr("one name for %1 places: leave it out, and names follow by "
                                  "themselves")
                                   .arg(points_.size()));
      return false;
    }
    Part next = hands_.part();
    const std::size_t count = each ? points_.size() : 1;
    Id last;
    for (std::size_t i = 0; i < count; ++i) {
      Feature feature = said;
      if (i > 0) feature.id = nextFeatureId(next);
      trace(feature, each ? std::vector{points_[i]} : points_);
      last = feature.id;
      next.features.push_back(std::move(feature));
    }
    const QString what = wordFor(said.kind()), id = QString::fromStdString(said.id);
    return hands_.apply(std::move(next),
                        count == 1
                            ? tr("Trace %1 %2").arg(what, id)
                            : tr("Trace %1 %2 to %3").arg(what, id, QString::fromStdString(last)));
  }

  /// An arc through three points is kept by its centre and radius; points in line make none.
  void traceArc(Feature& arc) const {
    const QPointF a = points_[1] - points_[0], b = points_[2] - points_[0];
    const double twice = 2 * (a.x() * b.y() - a.y() * b.x());
    const double across = QPointF::dotProduct(a, a), along = QPointF::dotProduct(b, b);
    if (std::abs(twice) < 1e-6 * (across + along)) return;
    const QPointF to((b.y() * across - a.y() * along) / twice,
                     (a.x() * along - b.x() * across) / twice);
    const QPointF centre = points_[0] + to;
    arc.traced = {tracedText(centre.x()), tracedText(centre.y()),
                  tracedText(std::hypot(to.x(), to.y()))};
  }

  void trace(Feature& feature, const std::vector<QPointF>& points) const {
    if (feature.is<kind::Arc>() && points.size() == 3) return traceArc(feature);
    const auto axes = axesIn(feature.face);
    if (const auto* row = feature.as<kind::Row>(); row != nullptr && points.size() == 2) {
      // Its first hole is the lower one, whichever was pointed at first.
      const bool isAcross = row->axis == axes[0];
      const bool turned = isAcross ? points[1].x() < points[0].x() : points[1].y() < points[0].y();
      const QPointF& at = points[turned ? 1 : 0];
      feature.traced = {tracedText(at.x()), tracedText(at.y())};
      return;
    }
    for (const QPointF& at : points) {
      if (const auto* edge = feature.as<kind::Edge>()) {
        feature.traced = {tracedText(edge->axis == axes[0] ? at.x() : at.y())};
        return;
      }
      feature.traced.push_back(tracedText(at.x()));
      feature.traced.push_back(tracedText(at.y()));
      if (!feature.is<kind::Line>()) return;
    }
  }

  /// The size is likely to come again; the name is not.
  void remember(const QString& text, const Feature& said) {
    if (!said.is<kind::Hole>()) return;
    QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.size() > 1 && words.front() == wordOf(said)) words.removeFirst();
    if (words.front().toStdString() == said.id) words.removeFirst();
    lastSize_ = words.join(QLatin1Char(' '));
  }
  static QString wordOf(const Feature& said) {
    return QString::fromStdString(std::string(nameOf(said.kind())));
  }

  QString edgeOffer() const {
    const auto side = nextSide(hands_.part(), hands_.desk.face());
    const std::string id = nextFeatureId(hands_.part(), side);
    return QString::fromStdString(id + " " +
                                  std::string(side ? nameOf(*side) : nameOf(hands_.axis)));
  }

  FeatureKind kind_;
  std::vector<QPointF> points_;
  QString lastSize_;
  bool seeksSides_;  ///< it was begun while a side was still to be traced
};

}  // namespace

std::unique_ptr<Activity> tracing(Hands& hands, FeatureKind kind) {
  if (isTurned(kind)) return tracingTurned(hands, kind);
  return std::make_unique<TracingActivity>(hands, kind);
}

}  // namespace inchwright::app
