#include "app/canvas/drawn_places.h"

#include <algorithm>
#include <array>

namespace inchwright::app {
namespace {

constexpr double kParkedSpacing = 0.4;  // inches between features that wait in the margin

double inchesOf(const Rational& ticks) {
  return ticks.toDouble() / static_cast<double>(Length::kTicksPerInch);
}

/// Positions along one axis of a face, in inches, from tracing and solution together.
class AlongAxis {
 public:
  AlongAxis(const Part& part, const Solution& solution, Axis axis, bool overPicture)
      : solution_(solution), axis_(axis), overPicture_(overPicture) {
    // Each group of placed features hangs at one traced member, so that tracing and solution meet.
    for (const Feature& feature : part.features) {
      const auto traced = tracedAlong(feature, axis);
      const Position* position = solution.position(feature.id, axis);
      if (!traced || position == nullptr) continue;
      anchors_.try_emplace(position->group, *traced - inchesOf(position->ticks));
    }
    if (anchors_.empty()) anchors_[0] = 0;
  }

  std::optional<double> of(const Feature& feature, const Id& place) const {
    const Position* position = solution_.position(place, axis_);
    const auto traced = tracedAlong(feature, axis_);
    const bool itself = place == feature.id;
    if (itself && traced && (overPicture_ || position == nullptr || position->group != 0)) {
      return traced;
    }
    if (!itself && traced && overPicture_) {
      const auto apart = solution_.between(feature.id, place, axis_);
      if (apart) return *traced + inchesOf(*apart);
    }
    if (position == nullptr) return traced;
    const auto anchor = anchors_.find(position->group);
    if (anchor == anchors_.end()) return traced;
    return anchor->second + inchesOf(position->ticks);
  }

 private:
  const Solution& solution_;
  Axis axis_;
  bool overPicture_;
  std::map<int, double> anchors_;
};

bool showsIn(const Feature& feature, Face face) {
  const auto axes = axesIn(face);
  if (const auto* edge = feature.as<kind::Edge>()) {
    return edge->axis == axes[0] || edge->axis == axes[1];
  }
  return feature.face == face;
}

double drawnRadius(const Feature& feature) {
  if (const auto& radius = radiusOf(feature)) return radius->value.toInches();
  if (const auto& diameter = diameterOf(feature)) return diameter->value.toInches() / 2;
  const auto* slot = feature.as<kind::Slot>();
  return slot && slot->width ? slot->width->value.toInches() / 2 : 0;
}

bool isPlaced(const Solution& solution, const Id& id, Axis axis, bool& disputed) {
  const Position* position = solution.position(id, axis);
  disputed = disputed || (position != nullptr && position->disputed);
  return position != nullptr && position->group == 0;
}

/// The run of a slot from its middle to the centre of an end, in the view.
QPointF halfOf(const Feature& feature, Face face) {
  const auto* slot = feature.as<kind::Slot>();
  if (slot == nullptr || !slot->axis || !slot->length || !slot->width) return {};
  const double half = (slot->length->value.toInches() - slot->width->value.toInches()) / 2;
  if (half <= 0) return {};
  return asViewed(*slot->axis == axesIn(face)[0] ? QPointF(half, 0) : QPointF(0, half), face);
}

/// Which way a round bulges: out of its side, or into the corner of its two edges.
void bulge(DrawnPlace& round, const Feature& feature, const DrawnFace& drawn) {
  const auto* shape = feature.as<kind::Round>();
  if (shape == nullptr) return;
  const auto axes = axesIn(drawn.face);
  if (shape->side) {
    const double way = outward(*shape->side) > 0 ? 1 : -1;
    const bool first = axisAcross(*shape->side) == axes[0];
    round.bulges = asViewed(first ? QPointF(way, 0) : QPointF(0, way), drawn.face);
    round.onRim = true;
    return;
  }
  for (const Id& id : shape->corner) {
    const DrawnPlace* edge = drawn.find(id);
    if (edge == nullptr || !edge->across) continue;
    if (edge->alongViewX) {
      round.bulges.setX(edge->at.x() > round.at.x() ? 1 : -1);
    } else {
      round.bulges.setY(edge->at.y() > round.at.y() ? 1 : -1);
    }
  }
}

QRectF spanned(const std::vector<DrawnPlace>& places) {
  double left = 0, right = 0, low = 0, high = 0;
  bool anyX = false, anyY = false;
  const auto take = [](double value, double margin, double& least, double& most, bool& any) {
    least = any ? std::min(least, value - margin) : value - margin;
    most = any ? std::max(most, value + margin) : value + margin;
    any = true;
  };
  for (const DrawnPlace& place : places) {
    if (place.parked) continue;
    if (!place.across || place.alongViewX) take(place.at.x(), place.radius, left, right, anyX);
    if (!place.across || !place.alongViewX) take(place.at.y(), place.radius, low, high, anyY);
  }
  // A sheet with nothing on it yet still has a size one can click into; a part may be small.
  constexpr double kNothing = 1.0 / 64, kSheet = 3;
  const bool isWide = right - left >= kNothing, isHigh = high - low >= kNothing;
  if (!isWide) right = left + (isHigh ? high - low : kSheet);
  if (!isHigh) high = low + (isWide ? right - left : kSheet);
  return {QPointF(left, low), QPointF(right, high)};
}

}  // namespace

const DrawnPlace* DrawnFace::find(const Id& id) const {
  const auto found = index.find(id);
  return found == index.end() ? nullptr : &places[found->second];
}

DrawnFace drawFace(const Part& part, const Solution& solution, Face face, bool overPicture) {
  DrawnFace drawn;
  drawn.face = face;
  const auto axes = axesIn(face);
  const std::array along{AlongAxis(part, solution, axes[0], overPicture),
                         AlongAxis(part, solution, axes[1], overPicture)};
  for (const Feature& feature : part.features) {
    if (part.turned && feature.id == centreLine().id && axes[0] == Axis::x) {
      // From the side the axis is a line.
      const auto at = along[1].of(feature, feature.id);
      DrawnPlace one{.id = feature.id, .feature = feature.id, .kind = feature.kind()};
      one.at = asViewed({0, at.value_or(0)}, face);
      one.across = axes[1];
      one.alongViewX = false;
      one.isAxis = one.placed = true;
      one.parked = !at;
      drawn.places.push_back(std::move(one));
      continue;
    }
    if (!showsIn(feature, face)) continue;
    if (isTurned(feature.kind())) {
      // It has no place: it lies where it was pointed at, if it was.
      const auto first = tracedAlong(feature, axes[0]), second = tracedAlong(feature, axes[1]);
      if (!first || !second) continue;
      DrawnPlace one{.id = feature.id, .feature = feature.id, .kind = feature.kind()};
      one.at = asViewed({*first, *second}, face);
      one.placed = true;
      drawn.places.push_back(std::move(one));
      continue;
    }
    for (const Place& place : placesOf(feature)) {
      // A ring's or row's own id stands for its centre or first hole; a row's would hide hole 1.
      if (feature.is<kind::Row>() && place.id == feature.id) continue;
      // A round is drawn once, at its own place.
      if (feature.is<kind::Round>() && place.id != feature.id) continue;
      DrawnPlace one{.id = place.id, .feature = feature.id, .kind = feature.kind()};
      const bool edge = feature.is<kind::Edge>();
      one.across = edge ? axisOf(feature) : std::nullopt;
      one.alongViewX = edge && one.across == axes[0];
      one.radius = drawnRadius(feature);
      const auto* ring = feature.as<kind::Ring>();
      if (ring && place.id == feature.id && ring->pitchDiameter) {
        one.radius = ring->pitchDiameter->value.toInches() / 2;
      }
      const bool wantsFirst = !edge || one.alongViewX, wantsSecond = !edge || !one.alongViewX;
      const auto first = wantsFirst ? along[0].of(feature, place.id) : 0.0;
      const auto second = wantsSecond ? along[1].of(feature, place.id) : 0.0;
      one.placed = (!wantsFirst || isPlaced(solution, place.id, axes[0], one.disputed)) &&
                   (!wantsSecond || isPlaced(solution, place.id, axes[1], one.disputed));
      one.parked = !first || !second;
      if (place.id == feature.id) one.half = halfOf(feature, face);
      one.at = asViewed({first.value_or(0), second.value_or(0)}, face);
      drawn.places.push_back(std::move(one));
    }
  }
  drawn.bounds = spanned(drawn.places);
  int waiting = 0;
  for (std::size_t i = 0; i < drawn.places.size(); ++i) {
    DrawnPlace& one = drawn.places[i];
    if (one.parked) {
      ++waiting;
      one.at = {drawn.bounds.right() + 2 * kParkedSpacing,
                drawn.bounds.bottom() - waiting * kParkedSpacing};
    }
    drawn.index.emplace(one.id, i);
  }
  for (DrawnPlace& one : drawn.places) {
    if (one.isRound()) bulge(one, *part.feature(one.feature), drawn);
  }
  return drawn;
}

}  // namespace inchwright::app
