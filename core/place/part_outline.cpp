#include "core/place/part_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

constexpr double kTicks = static_cast<double>(Length::kTicksPerInch);

class PlaneReader {
 public:
  PlaneReader(const Part& part, const Positions& positions, const BeyondChains& beyond, Face face)
      : part_(part), positions_(positions), beyond_(beyond), axes_(axesIn(face)) {
    plane_.face = face;
    own_ = ownDirections(face);
    which_ = static_cast<std::size_t>(std::find(kPlanes.begin(), kPlanes.end(), axes_) -
                                      kPlanes.begin());
  }

  FacePlane run() {
    for (const std::size_t k : {0U, 1U}) findOrigin(k);
    if (plane_.from[0].empty() || plane_.from[1].empty()) return std::move(plane_);
    readPlaces();
    for (const Feature& feature : part_.features) {
      if (!feature.is<kind::Edge>() && axesIn(feature.face) != axes_) continue;
      readLine(feature);
      readCircle(feature);
      readTrace(feature);
    }
    return std::move(plane_);
  }

 private:
  // Ticks along one of the two axes of the part, where the place is placed.
  std::optional<double> ticksOf(const Id& id, std::size_t k) const {
    const Position* position = positions_.find(id, axes_[k]);
    if (position == nullptr || position->group != 0) return std::nullopt;
    return position->ticks.toDouble();
  }
  // From ticks along the part's axis to inches as the face is seen.
  double seen(double ticks, std::size_t k) const {
    return own_[k] * (ticks - origin_[k]) / kTicks + 0.0;
  }
  PlanePoint seen(PlanePoint inches) const {
    return {seen(inches.x * kTicks, 0), seen(inches.y * kTicks, 1)};
  }
  std::optional<PlanePoint> placeAt(const Id& id) const {
    const auto u = ticksOf(id, 0), v = ticksOf(id, 1);
    if (!u || !v) return std::nullopt;
    return PlanePoint{seen(*u, 0), seen(*v, 1)};
  }

  void findOrigin(std::size_t k);
  void readPlaces();
  void readLine(const Feature& feature);
  void readCircle(const Feature& feature);
  void readTrace(const Feature& feature);
  std::optional<double> radiusOfCircle(const Feature& feature) const;

  const Part& part_;
  const Positions& positions_;
  const BeyondChains& beyond_;
  std::array<Axis, 2> axes_;
  std::array<int, 2> own_{};
  std::size_t which_ = 0;
  std::array<double, 2> origin_{};
  FacePlane plane_;
};

// The outer side at the lower end as the face is seen; without one the place that readings go out
// from, the lowest id.
void PlaneReader::findOrigin(std::size_t k) {
  std::string best;
  for (const Feature& feature : part_.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || edge->axis != axes_[k] || !edge->side) continue;
    if (outward(*edge->side) * own_[k] > 0 || !ticksOf(feature.id, k)) continue;
    if (best.empty() || feature.id < best) best = feature.id;
  }
  const auto takePlace = [&](const Id& id) {
    if (ticksOf(id, 0) && ticksOf(id, 1) && (best.empty() || id < best)) best = id;
  };
  if (best.empty()) {
    for (const Reading& reading : part_.readings) takePlace(reading.from);
  }
  if (best.empty()) {
    for (const Feature& feature : part_.features) takePlace(feature.id);
  }
  plane_.from[k] = best;
  if (!best.empty()) origin_[k] = *ticksOf(best, k);
}

void PlaneReader::readPlaces() {
  for (const Id& id : positions_.along(axes_[0]).places) {
    if (const auto at = placeAt(id)) plane_.places[id] = *at;
  }
}

void PlaneReader::readLine(const Feature& feature) {
  if (const auto* edge = feature.as<kind::Edge>()) {
    for (const std::size_t k : {0U, 1U}) {
      const auto ticks = edge->axis == axes_[k] ? ticksOf(feature.id, k) : std::nullopt;
      if (!ticks) continue;
      const double at = seen(*ticks, k);
      plane_.lines[feature.id] = k == 0 ? PlaneLine{std::numbers::pi / 2, -at} : PlaneLine{0, at};
    }
    return;
  }
  const auto found = beyond_.lines[which_].find(feature.id);
  if (!feature.is<kind::Line>() || found == beyond_.lines[which_].end()) return;
  const auto& [direction, offset] = found->second;
  const double c = std::cos(direction), s = std::sin(direction);
  const PlanePoint on = seen(PlanePoint{-s * offset, c * offset});
  PlaneLine line{std::atan2(own_[1] * s, own_[0] * c), 0};
  line.offset = leftOf(line, on);
  plane_.lines[feature.id] = line;
}

std::optional<double> PlaneReader::radiusOfCircle(const Feature& feature) const {
  const auto found = beyond_.circles[which_].find(feature.id);
  if (found != beyond_.circles[which_].end()) return found->second.radius;
  if (const auto& radius = radiusOf(feature)) return radius->value.toInches();
  if (const auto* ring = feature.as<kind::Ring>()) {
    if (ring->pitchDiameter) return ring->pitchDiameter->value.toInches() / 2;
  } else if (const auto& diameter = diameterOf(feature)) {
    return diameter->value.toInches() / 2;
  }
  for (const Reading& reading : part_.readings) {
    if (reading.from != feature.id) continue;
    if (reading.kind == ReadingKind::radius) return reading.figure.value.toInches();
    if (reading.kind == ReadingKind::diameter || reading.kind == ReadingKind::pcd) {
      return reading.figure.value.toInches() / 2;
    }
  }
  return std::nullopt;
}

void PlaneReader::readCircle(const Feature& feature) {
  const bool isCircle = feature.is<kind::Hole>() || feature.is<kind::Ring>() ||
                        feature.is<kind::Round>() || feature.is<kind::Arc>();
  if (!isCircle) return;
  const auto radius = radiusOfCircle(feature);
  const auto centre = placeAt(feature.is<kind::Round>() ? feature.id + "0" : feature.id);
  if (radius && centre) plane_.circles[feature.id] = {*centre, *radius};
}

// As it lies where the tracing counts from the part's lower corner. Only nearness is asked of it.
void PlaneReader::readTrace(const Feature& feature) {
  if (feature.traced.size() < 4) return;
  std::array<double, 4> at{};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto value = plainDecimal(feature.traced[i]);
    if (!value) return;
    at[i] = *value;
  }
  const auto shifted = [&](double value, std::size_t k) {
    // From the part's own lower side, which a mirrored view has at its upper end.
    double low = origin_[k];
    for (const Feature& other : part_.features) {
      const auto* edge = other.as<kind::Edge>();
      if (edge == nullptr || edge->axis != axes_[k] || !edge->side || outward(*edge->side) > 0) {
        continue;
      }
      low = ticksOf(other.id, k).value_or(low);
    }
    return seen(low + value * kTicks, k);
  };
  plane_.traced[feature.id] = {{shifted(at[0], 0), shifted(at[1], 1)},
                               {shifted(at[2], 0), shifted(at[3], 1)}};
}

}  // namespace

FacePlane facePlaneOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                      Face face) {
  return PlaneReader(part, positions, beyond, face).run();
}

FaceOutlines outlinesOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                        Face face) {
  FaceOutlines out;
  out.plane = facePlaneOf(part, positions, beyond, face);
  bool hasOuter = false;
  for (const GivenOutline& given : part.outlines) {
    if (given.face != face) continue;
    Outline outline = joinOutline(part, out.plane, {given.follows, given.isInner});
    if (given.isInner) {
      out.outlines.push_back(std::move(outline));
      continue;
    }
    hasOuter = true;
    out.outlines.insert(out.outlines.begin(), std::move(outline));
  }
  if (!hasOuter) {
    if (const auto request = outlineByItself(part, out.plane)) {
      Outline outline = joinOutline(part, out.plane, *request);
      outline.byItself = true;
      out.outlines.insert(out.outlines.begin(), std::move(outline));
      hasOuter = true;
    }
  }
  if (hasOuter) out.walls = wallsOf(part, out.plane, out.outlines);
  return out;
}

Outline outerOutlineOf(const Part& part, const Positions& positions, const BeyondChains& beyond,
                       Face face) {
  const FacePlane plane = facePlaneOf(part, positions, beyond, face);
  for (const GivenOutline& given : part.outlines) {
    if (given.face == face && !given.isInner) {
      return joinOutline(part, plane, {given.follows, false});
    }
  }
  if (const auto request = outlineByItself(part, plane)) return joinOutline(part, plane, *request);
  return {};
}

std::vector<Face> outlinedFaces(const Part& part) {
  std::set<Face> faces;
  for (const GivenOutline& outline : part.outlines) faces.insert(outline.face);
  for (const Feature& feature : part.features) {
    if (!feature.is<kind::Edge>()) faces.insert(feature.face);
  }
  if (faces.empty()) faces.insert(Face::top);
  return {faces.begin(), faces.end()};
}

}  // namespace inchwright
