#include "core/plan/drawn_part.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/place/part_outline.h"
#include "core/plan/milled_shape.h"

namespace inchwright {
namespace {

constexpr double kMargin = 10;  // mm about what is drawn where a side is not placed

double millimetres(const Rational& ticks) {
  return ticks.toDouble() / Length::kTicksPerMillimetre;
}

double millimetres(const std::optional<Lettered>& figure) {
  return figure ? figure->value.toMillimetres() : 0;
}

constexpr double kQuarter = 1.5707963267948966;  // radians
constexpr int kCornerSteps = 8;
constexpr double kArcStep = kQuarter / 12;

/// Low and high along one axis of the table.
struct Reach {
  double low = 0;
  double high = 0;
};

class PartDrawer {
 public:
  explicit PartDrawer(const WorkAt& work) : work_(work) {}

  DrawnPart take() && {
    for (const Feature& feature : work_.part.features) {
      if (!feature.is<kind::Edge>() && feature.face == work_.setup.face) addFeature(feature);
    }
    addMilled();
    addOutlines();
    for (const Feature& feature : work_.part.features) addEdge(feature);
    if (work_.setup.jaw) picture_.jaw = tableSideOf(*work_.setup.jaw, work_.axes);
    if (work_.setup.stop) picture_.stop = tableSideOf(*work_.setup.stop, work_.axes);
    picture_.xCountsRight = work_.x.counts > 0;
    picture_.yCountsAway = work_.y.counts > 0;
    return std::move(picture_);
  }

 private:
  // Without a zero along an axis everything is drawn about 0 there.
  std::optional<double> position(const TableAxis& axis, std::string_view place,
                                 Length beyond = Length()) const {
    const Position* found = work_.position(place, axis.part.axis);
    if (!found || !axis.zero) return std::nullopt;
    const std::optional<Rational> now = found->ticks.plus(beyond.rational());
    const std::optional<Rational> distance = now ? axis.onTable(*now) : std::nullopt;
    if (!distance) return std::nullopt;
    return millimetres(*distance);
  }

  std::optional<PlanePoint> pointOf(std::string_view place) const {
    const std::optional<double> x = position(work_.x, place), y = position(work_.y, place);
    if (!x || !y) return std::nullopt;
    return PlanePoint{*x, *y};
  }

  bool disputed(std::string_view place) const {
    const auto along = [&](const TableAxis& axis) {
      const Position* position = work_.position(place, axis.part.axis);
      return position && position->disputed;
    };
    return along(work_.x) || along(work_.y);
  }

  void addFeature(const Feature& feature) {
    if (const Drilled* drilled = feature.drilled()) return addHoles(feature, *drilled);
    if (const auto* slot = feature.as<kind::Slot>()) return addSlot(feature.id, *slot);
    if (feature.is<kind::Round>()) return addRound(feature);
    if (!feature.is<kind::Point>()) return;
    if (const auto at = pointOf(feature.id)) picture_.marks.push_back({feature.id, *at});
  }

  void addHoles(const Feature& feature, const Drilled& drilled) {
    for (const Place& place : drivenPlaces(feature)) {
      const std::optional<PlanePoint> centre = pointOf(place.id);
      if (!centre) continue;
      picture_.circles.push_back({place.id, feature.id, *centre, millimetres(drilled.diameter),
                                  millimetres(drilled.seatDiameter), drilled.make == Make::tap,
                                  disputed(place.id)});
    }
  }

  void addSlot(const Id& id, const kind::Slot& slot) {
    const std::optional<PlanePoint> from = pointOf(id + "1"), to = pointOf(id + "2");
    const bool straight = slot.about.empty();
    if (from && to && straight) {
      picture_.slots.push_back({id, *from, *to, millimetres(slot.width)});
    }
  }

  /// Pockets, and slots that are curved.
  void addMilled() {
    for (const MilledShape& shape : milledShapes(work_.part, work_.solution)) {
      const bool curved = !shape.way.empty() && shape.way.front().circle.has_value();
      if (shape.face != work_.setup.face || shape.way.empty()) continue;
      if (!shape.isPocket && !curved) continue;
      const SeenFrame frame(shape.face);
      DrawnMilled drawn{shape.id, {}};
      for (const PlanePoint seen : edgeOf(shape)) {
        PlanePoint at;
        for (const std::size_t k : {0U, 1U}) {
          const TableAxis* along = work_.along(frame.axes[k]);
          if (!along || !along->zero) return;
          const auto distance = along->onTable(frame.along(k, seen).rational());
          if (!distance) return;
          (along->machine == MachineAxis::x ? at.x : at.y) = millimetres(*distance);
        }
        drawn.ring.push_back(at);
      }
      picture_.milled.push_back(std::move(drawn));
    }
  }

  /// Of a pocket its wall; of a slot along either side of its way, and round its ends.
  static std::vector<PlanePoint> edgeOf(const MilledShape& shape) {
    std::vector<PlanePoint> points;
    if (shape.isPocket) {
      for (const PathPiece& piece : shape.way) {
        const int steps =
            piece.circle ? std::max(2, static_cast<int>(sweepOf(piece) / kArcStep)) : 1;
        for (int i = 0; i < steps; ++i) {
          points.push_back(pointOn(piece, static_cast<double>(i) / steps));
        }
      }
      return points;
    }
    const PathPiece& way = shape.way.front();
    const PlanePoint centre = way.circle->centre;
    const double from = std::atan2(way.start.y - centre.y, way.start.x - centre.x);
    const int steps = std::max(2, static_cast<int>(sweepOf(way) / kArcStep));
    const auto onRing = [&](double radius, double angle) {
      points.push_back({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
    };
    const auto roundEnd = [&](PlanePoint end, double begins) {
      for (int i = 1; i < steps; ++i) {
        const double angle = begins + way.sense * std::numbers::pi * i / steps;
        points.push_back(
            {end.x + shape.radius * std::cos(angle), end.y + shape.radius * std::sin(angle)});
      }
    };
    const double to = from + way.sense * sweepOf(way);
    for (int i = 0; i <= steps; ++i) {
      onRing(way.circle->radius + shape.radius, from + (to - from) * i / steps);
    }
    roundEnd(way.end, to);
    for (int i = 0; i <= steps; ++i) {
      onRing(way.circle->radius - shape.radius, to + (from - to) * i / steps);
    }
    roundEnd(way.start, from + std::numbers::pi);
    return points;
  }

  void addRound(const Feature& feature) {
    const kind::Round& round = *feature.as<kind::Round>();
    if (!round.corner.empty()) return;
    const std::optional<PlanePoint> centre =
        pointOf(round.about.empty() ? feature.id : round.about);
    if (centre) picture_.rounds.push_back({feature.id, *centre, millimetres(round.radius)});
  }

  // The outermost placed side at one end of a table axis, with its stock when asked.
  std::optional<double> sideAt(const TableAxis& axis, bool high, bool withStock) const {
    std::optional<double> outermost;
    for (const Feature& feature : work_.part.features) {
      const std::optional<Side> side = outerSideOf(feature, axis.part.axis);
      if (!side || (outward(*side) * axis.part.sign > 0) != high) continue;
      const Length beyond = withStock ? work_.stockBeyond(feature, axis.part.axis) : Length();
      const std::optional<double> at = position(axis, feature.id, beyond);
      if (!at) continue;
      if (!outermost || (high ? *at > *outermost : *at < *outermost)) outermost = at;
    }
    return outermost;
  }

  // What is drawn so far reaches from `low` to `high` along an axis.
  Reach drawn(MachineAxis along) const {
    Reach span;
    const auto reach = [&](const PlanePoint& at, double radius) {
      const double middle = along == MachineAxis::x ? at.x : at.y;
      span.low = std::min(span.low, middle - radius);
      span.high = std::max(span.high, middle + radius);
    };
    for (const DrawnHole& circle : picture_.circles) {
      reach(circle.centre, std::max(circle.diameter, circle.seatDiameter) / 2);
    }
    for (const DrawnSlot& slot : picture_.slots) {
      reach(slot.from, slot.width / 2);
      reach(slot.to, slot.width / 2);
    }
    for (const DrawnRound& round : picture_.rounds) reach(round.centre, round.radius);
    for (const DrawnMark& mark : picture_.marks) reach(mark.at, 0);
    for (const Feature& feature : work_.part.features) {
      if (!feature.is<kind::Edge>()) continue;
      const TableAxis& axis = along == MachineAxis::x ? work_.x : work_.y;
      if (const std::optional<double> at = position(axis, feature.id)) reach({*at, *at}, 0);
    }
    return span;
  }

  Reach spanOf(const TableAxis& axis, bool withStock, std::vector<TableSide>* missing) const {
    const Reach about = drawn(axis.machine);
    const std::optional<double> low = sideAt(axis, false, withStock);
    const std::optional<double> high = sideAt(axis, true, withStock);
    if (missing && !low)
      missing->push_back(axis.machine == MachineAxis::x ? TableSide::left : TableSide::near);
    if (missing && !high)
      missing->push_back(axis.machine == MachineAxis::x ? TableSide::right : TableSide::far);
    return {low.value_or(about.low - kMargin), high.value_or(about.high + kMargin)};
  }

  static std::vector<PlanePoint> rectangle(Reach x, Reach y) {
    return {{x.low, y.low}, {x.high, y.low}, {x.high, y.high}, {x.low, y.high}};
  }

  // The radius that rounds off the corner where these two spots meet; 0 when it is square.
  double cornerRadius(double x, double y) const {
    for (const Feature& feature : work_.part.features) {
      const auto* round = feature.as<kind::Round>();
      if (!round || round->corner.size() != 2) continue;
      bool onX = false, onY = false;
      for (const Id& edge : round->corner) {
        onX = onX || position(work_.x, edge) == x;
        onY = onY || position(work_.y, edge) == y;
      }
      if (onX && onY) return millimetres(round->radius);
    }
    return 0;
  }

  // The rectangle with its rounded corners as runs of short lines, anticlockwise.
  std::vector<PlanePoint> roundedRectangle() const {
    std::vector<PlanePoint> points;
    const double most = std::min(x_.high - x_.low, y_.high - y_.low) / 2;
    const std::vector<PlanePoint> corners = rectangle(x_, y_);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const PlanePoint& corner = corners[i];
      const double radius = std::min(most, cornerRadius(corner.x, corner.y));
      if (radius <= 0) {
        points.push_back(corner);
        continue;
      }
      const PlanePoint centre{corner.x + (corner.x == x_.low ? radius : -radius),
                              corner.y + (corner.y == y_.low ? radius : -radius)};
      // The lower left corner turns from 180 to 270 degrees, each further one a quarter on.
      for (int step = 0; step <= kCornerSteps; ++step) {
        const double angle =
            (static_cast<double>(i) + 2 + static_cast<double>(step) / kCornerSteps) * kQuarter;
        points.push_back(
            {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
      }
    }
    return points;
  }

  // Whether the outline is more than four sides and their corners.
  bool isShaped() const {
    const Face face = work_.setup.face;
    return std::any_of(work_.part.outlines.begin(), work_.part.outlines.end(),
                       [&](const GivenOutline& one) { return one.face == face && !one.isInner; }) ||
           std::any_of(work_.part.features.begin(), work_.part.features.end(),
                       [&](const Feature& one) {
                         const auto* round = one.as<kind::Round>();
                         return round && one.face == face && !round->about.empty();
                       });
  }

  // The outline as it closes, arcs as runs of short lines, anticlockwise; empty where it does not.
  std::vector<PlanePoint> realOutline() const {
    if (!isShaped()) return {};
    const Outline outline = outerOutlineOf(work_.part, work_.solution.positions,
                                           work_.solution.beyond, work_.setup.face);
    if (!outline.isClosed) return {};
    const auto axes = axesIn(work_.setup.face);
    const auto own = ownDirections(work_.setup.face);
    std::array<const TableAxis*, 2> along{};
    std::array<Rational, 2> from;
    for (const std::size_t k : {0U, 1U}) {
      const Position* at = work_.position(outline.from[k], axes[k]);
      along[k] = work_.along(axes[k]);
      if (!at || !along[k] || !along[k]->zero) return {};
      from[k] = at->ticks;
    }
    std::vector<PlanePoint> points;
    for (const PathPiece& piece : outline.path()) {
      const int steps = piece.circle ? std::max(2, static_cast<int>(sweepOf(piece) / kArcStep)) : 1;
      for (int step = 0; step < steps; ++step) {
        const PlanePoint seen = pointOn(piece, static_cast<double>(step) / steps);
        PlanePoint drawn;
        for (const std::size_t k : {0U, 1U}) {
          const double off = own[k] * (k == 0 ? seen.x : seen.y) * Length::kTicksPerInch;
          const auto there = from[k].plus(Rational(std::llround(off)));
          const auto distance = there ? along[k]->onTable(*there) : std::nullopt;
          if (!distance) return {};
          (along[k]->machine == MachineAxis::x ? drawn.x : drawn.y) = millimetres(*distance);
        }
        points.push_back(drawn);
      }
    }
    return points;
  }

  // A point of a piece, `share` of the way along it.
  static PlanePoint pointOn(const PathPiece& piece, double share) {
    if (!piece.circle) return piece.start;
    const PlanePoint centre = piece.circle->centre;
    const double begun =
        piece.isWhole ? 0 : std::atan2(piece.start.y - centre.y, piece.start.x - centre.x);
    const double angle = begun + piece.sense * sweepOf(piece) * share;
    return {centre.x + piece.circle->radius * std::cos(angle),
            centre.y + piece.circle->radius * std::sin(angle)};
  }

  void addOutlines() {
    x_ = spanOf(work_.x, false, &picture_.missing);
    y_ = spanOf(work_.y, false, &picture_.missing);
    std::vector<PlanePoint> stock =
        rectangle(spanOf(work_.x, true, nullptr), spanOf(work_.y, true, nullptr));
    if (stock != rectangle(x_, y_)) picture_.stock = std::move(stock);
    picture_.outline = realOutline();
    if (picture_.outline.empty()) {
      picture_.outline = roundedRectangle();
      return;
    }
    // Nothing is guessed where the outline closes.
    picture_.missing.clear();
    const auto [left, right] =
        std::minmax_element(picture_.outline.begin(), picture_.outline.end(),
                            [](const PlanePoint& a, const PlanePoint& b) { return a.x < b.x; });
    const auto [near, far] =
        std::minmax_element(picture_.outline.begin(), picture_.outline.end(),
                            [](const PlanePoint& a, const PlanePoint& b) { return a.y < b.y; });
    x_ = {left->x, right->x};
    y_ = {near->y, far->y};
  }

  void addEdge(const Feature& feature) {
    const auto* plane = feature.as<kind::Edge>();
    if (!plane) return;
    const TableAxis* axis = work_.along(plane->axis);
    const std::optional<double> at = axis ? position(*axis, feature.id) : std::nullopt;
    if (!at) return;
    DrawnEdge edge;
    edge.id = feature.id;
    edge.axis = axis->machine;
    edge.from = edge.axis == MachineAxis::x ? PlanePoint{*at, y_.low} : PlanePoint{x_.low, *at};
    edge.to = edge.axis == MachineAxis::x ? PlanePoint{*at, y_.high} : PlanePoint{x_.high, *at};
    if (plane->side) edge.side = tableSideOf(*plane->side, work_.axes);
    picture_.edges.push_back(std::move(edge));
  }

  const WorkAt& work_;
  DrawnPart picture_;
  Reach x_;
  Reach y_;
};

}  // namespace

DrawnPart drawnPart(const WorkAt& work) {
  return PartDrawer(work).take();
}

}  // namespace inchwright
