#include "core/plan/milled_shape.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>

#include "core/geometry/inset.h"
#include "core/place/part_outline.h"
#include "core/plan/zero.h"

namespace inchwright {
namespace {

// Ends of a curved slot that lie so much unlike far from its centre are a fault of the print.
constexpr double kAlikeFar = 0.0005;

void setCurvedWay(const Part& part, const Solution& solution, const Feature& slot, PlanePoint a,
                  PlanePoint b, MilledShape& shape) {
  const auto centre = centreOfCurve(part, solution, slot);
  if (!centre) return;
  const double radius = distanceBetween(*centre, a);
  shape.offCircle = std::abs(radius - distanceBetween(*centre, b)) > kAlikeFar;
  if (shape.offCircle) return;
  const double turn =
      std::atan2(b.y - centre->y, b.x - centre->x) - std::atan2(a.y - centre->y, a.x - centre->x);
  const int sense = std::remainder(turn, 2 * std::numbers::pi) < 0 ? -1 : 1;
  shape.way = {{a, b, PlaneCircle{*centre, radius}, sense, false}};
}

/// What is to be said of the places that a shape goes by.
void tellPlaces(const Solution& solution, const std::vector<Id>& places, MilledShape& shape) {
  for (const Id& place : places) {
    for (const Axis axis : axesIn(shape.face)) {
      const Position* position = solution.position(place, axis);
      if (!position) continue;
      shape.disputed = shape.disputed || position->disputed;
      shape.assumed = shape.assumed || position->assumed;
    }
  }
}

MilledShape shapeOfSlot(const Part& part, const Solution& solution, const Feature& feature) {
  const kind::Slot& slot = *feature.as<kind::Slot>();
  MilledShape shape;
  shape.id = feature.id;
  shape.face = feature.face;
  shape.radius = slot.width->value.toInches() / 2;
  shape.meets = slot.meets;
  tellPlaces(solution, {feature.id + "1", feature.id + "2", slot.about}, shape);
  if (!slot.depth.through && slot.depth.length) shape.depth = slot.depth.length->value;
  const SeenFrame frame(feature.face);
  const auto a = frame.at(solution, feature.id + "1"), b = frame.at(solution, feature.id + "2");
  if (!a || !b) return shape;
  if (!slot.about.empty()) {
    setCurvedWay(part, solution, feature, *a, *b, shape);
  } else {
    shape.way = {{*a, *b, std::nullopt, 1, false}};
  }
  return shape;
}

/// The wall of a pocket, moved to where the part's own axes begin; empty where it does not close.
std::vector<PathPiece> wallOf(const Solution& solution, const FacePlane& plane,
                              const Outline& outline) {
  if (!outline.isClosed) return {};
  const SeenFrame frame(plane.face);
  PlanePoint from;
  for (const std::size_t k : {0U, 1U}) {
    const Position* at = placedPosition(solution, plane.from[k], frame.axes[k]);
    if (!at) return {};
    (k == 0 ? from.x : from.y) =
        frame.own[k] * at->ticks.toDouble() / static_cast<double>(Length::kTicksPerInch);
  }
  std::vector<PathPiece> wall = outline.path();
  const auto move = [&](PlanePoint& p) { p = {p.x + from.x, p.y + from.y}; };
  for (PathPiece& piece : wall) {
    move(piece.start);
    move(piece.end);
    if (piece.circle) move(piece.circle->centre);
  }
  return wall;
}

Id pocketName(const Part& part, std::size_t number) {
  Id name = number == 1 ? "pocket" : "pocket " + std::to_string(number);
  while (part.feature(name)) name += "'";
  return name;
}

void addPockets(const Part& part, const Solution& solution, std::vector<MilledShape>& shapes) {
  struct Inner {
    FacePlane plane;
    std::vector<Outline> outlines;
    std::size_t next = 0;
  };
  std::map<Face, Inner> faces;
  std::size_t number = 0;
  for (const GivenOutline& given : part.outlines) {
    if (!given.isInner) continue;
    const auto [entry, fresh] = faces.emplace(given.face, Inner());
    Inner& inner = entry->second;
    if (fresh) {
      FaceOutlines found = outlinesOf(part, solution.positions, solution.beyond, given.face);
      inner.plane = std::move(found.plane);
      inner.outlines = std::move(found.outlines);
      std::erase_if(inner.outlines, [](const Outline& one) { return !one.isInner; });
    }
    MilledShape& shape = shapes.emplace_back();
    shape.id = pocketName(part, ++number);
    shape.face = given.face;
    shape.isPocket = true;
    shape.follows = given.follows;
    shape.depthUnsaid = !given.depth;
    tellPlaces(solution, given.follows, shape);
    if (given.depth && !given.depth->through && given.depth->length) {
      shape.depth = given.depth->length->value;
    }
    shape.way = wallOf(solution, inner.plane, inner.outlines[inner.next++]);
    if (areaOf(shape.way) < 0) {
      shape.way = turnedRound(shape.way);
      std::reverse(shape.follows.begin(), shape.follows.end());
    }
  }
}

}  // namespace

std::optional<PlanePoint> SeenFrame::at(const Solution& solution, std::string_view place) const {
  std::array<double, 2> p{};
  for (const std::size_t k : {0U, 1U}) {
    const Position* position = placedPosition(solution, place, axes[k]);
    const auto tick = position ? nearestTick(position->ticks) : std::nullopt;
    if (!tick) return std::nullopt;
    p[k] = own[k] * tick->toInches();
  }
  return PlanePoint{p[0], p[1]};
}

Length SeenFrame::along(std::size_t axis, PlanePoint p) const {
  const double inches = own[axis] * (axis == 0 ? p.x : p.y);
  return Length::ticks(std::llround(inches * static_cast<double>(Length::kTicksPerInch)));
}

double MilledShape::edgeFrom(PlanePoint p) const {
  double nearest = distanceTo(way.front(), p);
  for (const PathPiece& piece : way) nearest = std::min(nearest, distanceTo(piece, p));
  return (isPocket && isInside(way, p) ? -nearest : nearest) - radius;
}

bool MilledShape::isNamedBy(const std::vector<Id>& ids) const {
  return std::any_of(ids.begin(), ids.end(), [&](const Id& one) {
    return one == id || std::find(follows.begin(), follows.end(), one) != follows.end();
  });
}

std::optional<PlanePoint> centreOfCurve(const Part& part, const Solution& solution,
                                        const Feature& slot) {
  const Id& about = slot.as<kind::Slot>()->about;
  const Feature* feature = part.feature(about);
  const bool isRound = feature && feature->is<kind::Round>();
  return SeenFrame(slot.face).at(solution, isRound ? about + "0" : about);
}

std::vector<MilledShape> milledShapes(const Part& part, const Solution& solution) {
  std::vector<MilledShape> shapes;
  for (const Feature& feature : part.features) {
    const auto* slot = feature.as<kind::Slot>();
    if (slot && slot->width && slot->width->value > Length()) {
      shapes.push_back(shapeOfSlot(part, solution, feature));
    }
  }
  addPockets(part, solution, shapes);
  return shapes;
}

}  // namespace inchwright
