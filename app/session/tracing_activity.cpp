// Tracing: a click puts a feature on the print, the strip names and sizes it.

#include <QRectF>
#include <algorithm>
#include <array>
#include <cmath>

#include "app/session/activity.h"
#include "app/session/picture_edits.h"
#include "app/session/plausible.h"
#include "core/part/edit.h"
#include "core/say/callout_words.h"

namespace inchwright::app {
namespace {

/// A traced position as the document keeps it: inches to a thousandth, which is finer than anyone
/// can point.
std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

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
    if (kind_ == FeatureKind::ring && points_.size() == 1)
      return tr("%1: point at its first hole as well, or type its name and size").arg(what);
    if (kind_ == FeatureKind::row && points_.size() == 1)
      return tr("%1: point at its last hole as well, or type its name and size").arg(what);
    return tr("%1: its name and size").arg(what);
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
        const auto line = applyLine(hands_.part(), text.toStdString(), hands_.context());
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
  std::size_t pointsWanted() const {
    return kind_ == FeatureKind::line ? 2 : kind_ == FeatureKind::arc ? 3 : 1;
  }

  /// A ring's first hole and a row's last say more of it, but need not be pointed at.
  std::size_t pointsWelcome() const {
    const bool more = kind_ == FeatureKind::ring || kind_ == FeatureKind::row;
    return more ? 2 : pointsWanted();
  }

  /// What the text says, and of a ring or row what the two places say that it leaves out.
  Result<FeatureLine> featureFor(const QString& text) const {
    LineContext context = hands_.context();
    const QPointF apart = points_.size() == 2 ? points_[1] - points_[0] : QPointF();
    if (kind_ == FeatureKind::row && !apart.isNull()) {
      const auto axes = axesIn(context.face);
      context.axis = std::abs(apart.x()) >= std::abs(apart.y()) ? axes[0] : axes[1];
    }
    auto line = readFeatureLine(hands_.part(), kind_, text.toStdString(), context);
    if (!line.ok() || apart.isNull() || !hands_.drawnToScale()) return line;
    Feature* feature = &line->feature;
    const double far = std::hypot(apart.x(), apart.y());
    if (auto* ring = feature->as<kind::Ring>()) completeRing(*ring, apart, 2 * far);
    if (auto* row = feature->as<kind::Row>(); row && !row->pitch && row->holes > 1) {
      row->pitch = likely(far / (row->holes - 1));
      if (row->pitch) row->byTrace.push_back("pitch");
    }
    return line;
  }

  std::optional<Lettered> likely(double inches) const {
    const Unit unit = hands_.desk.job().unit;
    auto figure = readLength(likelyFigure(inches, unit), {unit});
    return figure.ok() ? std::optional(*std::move(figure)) : std::nullopt;
  }

  void completeRing(kind::Ring& ring, QPointF apart, double across) const {
    constexpr double kPi = 3.14159265358979323846;
    constexpr double kEvery = 15;    // degrees: what prints letter without saying so
    constexpr double kWithin = 1.5;  // degrees a hand may be off
    if (!ring.pitchDiameter) {
      ring.pitchDiameter = likely(across);
      if (ring.pitchDiameter) ring.byTrace.push_back("pcd");
    }
    const double angle = std::atan2(apart.y(), apart.x()) * 180 / kPi;
    const double even = std::round(angle / kEvery) * kEvery;
    if (ring.firstAngle || std::abs(angle - even) > kWithin) return;
    auto lettered = readAngle(std::to_string(std::lround(even < 0 ? even + 360 : even)));
    if (!lettered.ok()) return;
    ring.firstAngle = *std::move(lettered);
    ring.byTrace.push_back("first_angle");
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

std::unique_ptr<Activity> tracing(Hands& hands, FeatureKind kind) {
  return std::make_unique<TracingActivity>(hands, kind);
}

}  // namespace inchwright::app
