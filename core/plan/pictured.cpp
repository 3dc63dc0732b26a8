#include "core/plan/pictured.h"

#include <algorithm>
#include <cmath>

#include "core/plan/setup_frame.h"

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

/// Low and high along one axis of the table.
struct Span {
  double low = 0;
  double high = 0;
};

class Picturer {
 public:
  Picturer(const Part& part, const Solution& solution, const Setup& setup, const SetupFrame& frame)
      : part_(part), solution_(solution), setup_(setup), frame_(frame) {}

  PartPicture take() && {
    for (const Feature& feature : part_.features) {
      if (!feature.is(FeatureKind::edge) && feature.face == setup_.face) addFeature(feature);
    }
    addOutlines();
    for (const Feature& feature : part_.features) addEdge(feature);
    if (setup_.jaw) picture_.jaw = tableSideOf(*setup_.jaw, frame_.axes);
    if (setup_.stop) picture_.stop = tableSideOf(*setup_.stop, frame_.axes);
    picture_.xCountsRight = frame_.x.counts > 0;
    picture_.yCountsAway = frame_.y.counts > 0;
    return std::move(picture_);
  }

 private:
  // Without a zero along an axis everything is drawn about 0 there.
  std::optional<double> along(const TableAxis& axis, std::string_view place,
                              Length beyond = Length()) const {
    const Position* position = placedPosition(solution_, place, axis.part.axis);
    if (!position || !axis.zero) return std::nullopt;
    const std::optional<Rational> now = position->ticks.plus(beyond.rational());
    const std::optional<Rational> distance = now ? axis.onTable(*now) : std::nullopt;
    if (!distance) return std::nullopt;
    return millimetres(*distance);
  }

  std::optional<PicturePoint> pointOf(std::string_view place) const {
    const std::optional<double> x = along(frame_.x, place), y = along(frame_.y, place);
    if (!x || !y) return std::nullopt;
    return PicturePoint{*x, *y};
  }

  bool disputed(std::string_view place) const {
    const auto along = [&](const TableAxis& axis) {
      const Position* position = placedPosition(solution_, place, axis.part.axis);
      return position && position->disputed;
    };
    return along(frame_.x) || along(frame_.y);
  }

  void addFeature(const Feature& feature) {
    switch (feature.kind()) {
      case FeatureKind::hole:
      case FeatureKind::ring:
      case FeatureKind::row:
        return addHoles(feature);
      case FeatureKind::slot:
        return addSlot(feature);
      case FeatureKind::round:
        return addRound(feature);
      case FeatureKind::point:
        if (const auto at = pointOf(feature.id)) picture_.marks.push_back({feature.id, *at});
        return;
      default:
        return;
    }
  }

  void addHoles(const Feature& feature) {
    const Drilled& drilled = *feature.drilled();
    for (const Place& place : placesOf(feature)) {
      if (place.id == feature.id && !feature.is(FeatureKind::hole)) continue;
      const std::optional<PicturePoint> centre = pointOf(place.id);
      if (!centre) continue;
      picture_.circles.push_back({place.id, feature.id, *centre, millimetres(drilled.diameter),
                                  millimetres(drilled.seatDiameter), drilled.make == Make::tap,
                                  disputed(place.id)});
    }
  }

  void addSlot(const Feature& feature) {
    const std::optional<PicturePoint> from = pointOf(feature.id + "1"),
                                      to = pointOf(feature.id + "2");
    if (from && to) {
      picture_.slots.push_back(
          {feature.id, *from, *to, millimetres(feature.as<kind::Slot>()->width)});
    }
  }

  void addRound(const Feature& feature) {
    const kind::Round& round = *feature.as<kind::Round>();
    if (!round.corner.empty()) return;
    const std::optional<PicturePoint> centre =
        pointOf(round.about.empty() ? feature.id : round.about);
    if (centre) picture_.rounds.push_back({feature.id, *centre, millimetres(round.radius)});
  }

  // The outermost placed side at one end of a table axis, with its stock when asked.
  std::optional<double> sideAt(const TableAxis& axis, bool high, bool withStock) const {
    std::optional<double> outermost;
    for (const Feature& feature : part_.features) {
      const std::optional<Side> side = outerSideOf(feature, axis.part.axis);
      if (!side || (outward(*side) * axis.part.sign > 0) != high) continue;
      const Length beyond = withStock ? stockBeyond(setup_, feature, axis.part.axis) : Length();
      const std::optional<double> at = along(axis, feature.id, beyond);
      if (!at) continue;
      if (!outermost || (high ? *at > *outermost : *at < *outermost)) outermost = at;
    }
    return outermost;
  }

  // What is drawn so far reaches from `low` to `high` along an axis.
  Span drawn(bool alongX) const {
    Span span;
    const auto reach = [&](const PicturePoint& at, double radius) {
      const double middle = alongX ? at.x : at.y;
      span.low = std::min(span.low, middle - radius);
      span.high = std::max(span.high, middle + radius);
    };
    for (const PictureCircle& circle : picture_.circles) {
      reach(circle.centre, std::max(circle.diameter, circle.seatDiameter) / 2);
    }
    for (const PictureSlot& slot : picture_.slots) {
      reach(slot.from, slot.width / 2);
      reach(slot.to, slot.width / 2);
    }
    for (const PictureRound& round : picture_.rounds) reach(round.centre, round.radius);
    for (const PictureMark& mark : picture_.marks) reach(mark.at, 0);
    for (const Feature& feature : part_.features) {
      if (!feature.is(FeatureKind::edge)) continue;
      const std::optional<double> at = along(alongX ? frame_.x : frame_.y, feature.id);
      if (at) reach({*at, *at}, 0);
    }
    return span;
  }

  Span spanOf(const TableAxis& axis, bool withStock, std::vector<TableSide>* missing) const {
    const Span about = drawn(axis.alongX);
    const std::optional<double> low = sideAt(axis, false, withStock);
    const std::optional<double> high = sideAt(axis, true, withStock);
    if (missing && !low) missing->push_back(axis.alongX ? TableSide::left : TableSide::near);
    if (missing && !high) missing->push_back(axis.alongX ? TableSide::right : TableSide::far);
    return {low.value_or(about.low - kMargin), high.value_or(about.high + kMargin)};
  }

  static std::vector<PicturePoint> rectangle(Span x, Span y) {
    return {{x.low, y.low}, {x.high, y.low}, {x.high, y.high}, {x.low, y.high}};
  }

  // The radius that rounds off the corner where these two spots meet; 0 when it is square.
  double cornerRadius(double x, double y) const {
    for (const Feature& feature : part_.features) {
      const auto* round = feature.as<kind::Round>();
      if (!round || round->corner.size() != 2) continue;
      bool onX = false, onY = false;
      for (const Id& edge : round->corner) {
        onX = onX || along(frame_.x, edge) == x;
        onY = onY || along(frame_.y, edge) == y;
      }
      if (onX && onY) return millimetres(round->radius);
    }
    return 0;
  }

  // The rectangle with its rounded corners as runs of short lines, anticlockwise.
  std::vector<PicturePoint> roundedRectangle() const {
    std::vector<PicturePoint> points;
    const double most = std::min(x_.high - x_.low, y_.high - y_.low) / 2;
    const std::vector<PicturePoint> corners = rectangle(x_, y_);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const PicturePoint& corner = corners[i];
      const double radius = std::min(most, cornerRadius(corner.x, corner.y));
      if (radius <= 0) {
        points.push_back(corner);
        continue;
      }
      const PicturePoint centre{corner.x + (corner.x == x_.low ? radius : -radius),
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

  void addOutlines() {
    x_ = spanOf(frame_.x, false, &picture_.missing);
    y_ = spanOf(frame_.y, false, &picture_.missing);
    picture_.outline = roundedRectangle();
    std::vector<PicturePoint> stock =
        rectangle(spanOf(frame_.x, true, nullptr), spanOf(frame_.y, true, nullptr));
    if (stock != rectangle(x_, y_)) picture_.stock = std::move(stock);
  }

  void addEdge(const Feature& feature) {
    const auto* plane = feature.as<kind::Edge>();
    if (!plane) return;
    const TableAxis* axis = frame_.along(plane->axis);
    const std::optional<double> at = axis ? along(*axis, feature.id) : std::nullopt;
    if (!at) return;
    PictureEdge edge;
    edge.id = feature.id;
    edge.alongX = axis->alongX;
    edge.from = edge.alongX ? PicturePoint{*at, y_.low} : PicturePoint{x_.low, *at};
    edge.to = edge.alongX ? PicturePoint{*at, y_.high} : PicturePoint{x_.high, *at};
    if (plane->side) edge.side = tableSideOf(*plane->side, frame_.axes);
    picture_.edges.push_back(std::move(edge));
  }

  const Part& part_;
  const Solution& solution_;
  const Setup& setup_;
  const SetupFrame& frame_;
  PartPicture picture_;
  Span x_;
  Span y_;
};

}  // namespace

Result<PartPicture> pictureOf(const Part& part, const Solution& solution, const Setup& setup,
                              const Machine& machine) {
  const Result<SetupFrame> frame = frameOf(part, solution, setup, machine);
  if (!frame) return frame.error();
  return Picturer(part, solution, setup, *frame).take();
}

}  // namespace inchwright
