// Tracing: a click puts a feature on the print, the strip names and sizes it.

#include <QRectF>
#include <algorithm>
#include <array>
#include <cmath>

#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "core/part/edit.h"
#include "core/say/callout_words.h"

namespace inchwright::app {
namespace {

class TracingActivity : public Activity {
 public:
  TracingActivity(Hands& hands, FeatureKind kind) : Activity(hands), kind_(kind) {}

  Doing doing() const override { return Doing::tracing; }

  QString prompt() const override {
    const QString what = wordFor(kind_);
    if (points_.size() < pointsWanted() && !points_.empty()) {
      return tr("%1: point at the next point of it").arg(what);
    }
    if (points_.empty() && kind_ == FeatureKind::edge && fourSides()) {
      return tr("edge: Enter takes the four sides through the corners you named; or point at one");
    }
    if (points_.empty())
      return tr("%1: point at it on the print, or type its name and size").arg(what);
    const auto [one, other] = examples();
    if (one == nullptr) return tr("%1: its name and size").arg(what);
    const QString such = tr("such as %1 or %2").arg(QLatin1String(one), QLatin1String(other));
    if (kind_ == FeatureKind::row && points_.size() == 1) {
      return tr("%1: point at its last hole as well, or type what it is, %2").arg(what, such);
    }
    return tr("%1: what it is, %2").arg(what, such);
  }

  QString offer() const override {
    if (kind_ == FeatureKind::edge && points_.empty() && fourSides()) {
      return tr("all four: L, R, F, K");
    }
    if (points_.size() < pointsWanted()) return {};
    if (kind_ == FeatureKind::edge) return edgeOffer();
    const QString id = QString::fromStdString(nextFeatureId(hands_.part()));
    return lastSize_.isEmpty() ? id : id + QStringLiteral(" ") + lastSize_;
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
      echo.at = static_cast<int>(read.error().at.value_or(0));
      return echo;
    }
    const Feature* feature = &read->feature;
    echo.text = wordFor(kind_) + QStringLiteral(" ") + QString::fromStdString(feature->id);
    if (const auto* ring = feature->as<kind::Ring>(); ring && ring->pitchDiameter) {
      echo.text += tr(", on %1").arg(QString::fromStdString(ring->pitchDiameter->text));
      if (ring->firstAngle) {
        echo.text += tr(" from %1°").arg(ring->firstAngle->value.toDegrees(), 0, 'g', 8);
      }
    }
    if (const auto* row = feature->as<kind::Row>(); row && row->pitch) {
      echo.text += tr(", pitch %1").arg(QString::fromStdString(row->pitch->text));
    }
    const auto* slot = feature->as<kind::Slot>();
    const std::optional<Lettered> width = slot ? slot->width : std::nullopt;
    for (const auto* size : {&diameterOf(*feature), &width, &radiusOf(*feature)}) {
      if (!*size) continue;
      const Echo figure = echoFigure(QString::fromStdString((*size)->text), hands_.desk.job().unit);
      echo.text += QStringLiteral(": ") + figure.text;
      echo.doubtful = echo.doubtful || figure.doubtful;
    }
    const std::string more = calloutWords(*read);
    if (!more.empty()) echo.text += QStringLiteral("; ") + QString::fromStdString(more);
    return echo;
  }

  void point(const Pointed& pointed) override {
    if (points_.size() == pointsWelcome()) points_.pop_back();
    points_.push_back(pointed.at);
  }

  bool enter(const QString& typed) override {
    if (typed.isEmpty() && points_.empty() && kind_ == FeatureKind::edge && fourSides()) {
      return traceFourSides();
    }
    const QString text = typed.isEmpty() ? offer() : typed;
    if (text.isEmpty()) return false;
    auto read = featureFor(text);
    if (!read.ok()) {
      // A whole line, such as `L A 3/8`, is welcome at any time.
      if (hands_.desk.hasPart()) {
        const auto line = hands_.line(text);
        if (line.ok()) return hands_.apply(line);
      }
      emit hands_.desk.refused(QString::fromStdString(read.error().text));
      return false;
    }
    Feature* feature = &read->feature;
    trace(*feature);
    Part next = hands_.part();
    next.features.push_back(*feature);
    const QString id = QString::fromStdString(feature->id);
    if (!hands_.apply(std::move(next), tr("Trace %1 %2").arg(wordFor(kind_), id))) return false;
    remember(text, id);
    points_.clear();
    return true;
  }

  bool back() override {
    if (points_.empty()) return false;
    points_.pop_back();
    return true;
  }

  std::optional<QPointF> pending() const override {
    if (points_.empty()) return std::nullopt;
    return points_.back();
  }

  FeatureKind kind() const { return kind_; }

 private:
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

  /// What the text says; of a row the two places say which way it runs, and no figure.
  Result<FeatureLine> featureFor(const QString& text) const {
    LineContext context = hands_.context();
    if (kind_ == FeatureKind::row && points_.size() == 2) {
      const QPointF apart = points_[1] - points_[0];
      const auto axes = axesIn(context.face);
      context.axis = std::abs(apart.x()) >= std::abs(apart.y()) ? axes[0] : axes[1];
    }
    return readFeatureLine(hands_.part(), kind_, text.toStdString(), context);
  }

  /// The rectangle of the four corners the picture was squared up by, in the axes of the face;
  /// empty when they make none, or a side is there already.
  std::optional<QRectF> fourSides() const {
    if (!hands_.desk.hasPart() || !hands_.drawnToScale()) return std::nullopt;
    const PictureView* view = viewOf(hands_.part(), hands_.desk.face());
    const Picture* picture = pictureUnder(hands_.desk.job(), hands_.part(), hands_.desk.face());
    const bool seenStraight = hands_.desk.face() == Face::top && view->at.empty();
    const bool fresh =
        std::none_of(hands_.part().features.begin(), hands_.part().features.end(),
                     [](const Feature& feature) { return feature.is(FeatureKind::edge); });
    if (!seenStraight || !fresh || picture->points.size() != 4) return std::nullopt;
    std::vector<Length> across, up;
    for (const SquaringPoint& one : picture->points) {
      across.push_back(one.x.value);
      up.push_back(one.y.value);
    }
    for (auto* side : {&across, &up}) {
      std::sort(side->begin(), side->end());
      if ((*side)[0] != (*side)[1] || (*side)[2] != (*side)[3] || (*side)[1] == (*side)[2]) {
        return std::nullopt;
      }
    }
    return QRectF(QPointF(across[0].toInches(), up[0].toInches()),
                  QPointF(across[3].toInches(), up[3].toInches()));
  }

  bool traceFourSides() {
    const QRectF box = *fourSides();
    Part next = hands_.part();
    const std::pair<Side, double> all[] = {{Side::left, box.left()},
                                           {Side::right, box.right()},
                                           {Side::front, box.top()},
                                           {Side::back, box.bottom()}};
    for (const auto& [side, at] : all) {
      Feature edge;
      edge.shape = kind::Edge{axisAcross(side), side};
      edge.id = nextFeatureId(next, side);
      edge.traced = {tracedText(at)};
      next.features.push_back(std::move(edge));
    }
    return hands_.apply(std::move(next), tr("Trace the four sides"));
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

  void trace(Feature& feature) const {
    if (feature.is(FeatureKind::arc) && points_.size() == 3) return traceArc(feature);
    const auto axes = axesIn(feature.face);
    for (const QPointF& at : points_) {
      if (const auto* edge = feature.as<kind::Edge>()) {
        feature.traced = {tracedText(edge->axis == axes[0] ? at.x() : at.y())};
        return;
      }
      feature.traced.push_back(tracedText(at.x()));
      feature.traced.push_back(tracedText(at.y()));
      if (pointsWelcome() > pointsWanted()) return;
    }
  }

  /// The size is likely to come again; the name is not.
  void remember(const QString& text, const QString& id) {
    if (kind_ != FeatureKind::hole) return;
    lastSize_ = text.startsWith(id + QStringLiteral(" ")) ? text.mid(id.size() + 1)
                : text == id                              ? QString()
                                                          : text;
  }

  struct SideName {
    Side side;
    const char* id;
  };

  /// The four sides of the view, as they are customarily met: left, right, then the other two.
  std::array<SideName, 4> sides() const {
    switch (hands_.desk.face()) {
      case Face::top:
      case Face::bottom:
        break;
      case Face::front:
      case Face::back:
        return {{{Side::left, "L"}, {Side::right, "R"}, {Side::bottom, "U"}, {Side::top, "T"}}};
      case Face::left:
      case Face::right:
        return {{{Side::front, "F"}, {Side::back, "K"}, {Side::bottom, "U"}, {Side::top, "T"}}};
    }
    return {{{Side::left, "L"}, {Side::right, "R"}, {Side::front, "F"}, {Side::back, "K"}}};
  }

  QString edgeOffer() const {
    for (const SideName& one : sides()) {
      const auto& features = hands_.part().features;
      const bool there = std::any_of(features.begin(), features.end(), [&](const Feature& f) {
        return f.id == one.id || (f.is(FeatureKind::edge) && sideOf(f) == one.side);
      });
      if (!there) {
        return QString::fromLatin1(one.id) + QStringLiteral(" ") +
               QString::fromStdString(std::string(nameOf(one.side)));
      }
    }
    return QString::fromStdString(nextFeatureId(hands_.part())) + QStringLiteral(" ") +
           QString::fromStdString(std::string(nameOf(hands_.axis)));
  }

  FeatureKind kind_;
  std::vector<QPointF> points_;
  QString lastSize_;
};

}  // namespace

std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

std::unique_ptr<Activity> tracing(Hands& hands, FeatureKind kind) {
  if (isTurned(kind)) return tracingTurned(hands, kind);
  return std::make_unique<TracingActivity>(hands, kind);
}

}  // namespace inchwright::app
