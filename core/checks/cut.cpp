#include "core/checks/cut.h"

#include <algorithm>
#include <cmath>

#include "core/plan/zero.h"

namespace inchwright {
namespace {

CutPlace cutOfHole(const PlannedHole& hole) {
  CutPlace cut;
  cut.id = hole.id;
  cut.from = {(*hole.centre)[0].ticks(), (*hole.centre)[1].ticks()};
  cut.through = hole.drilled->depth.through || !hole.drilled->depth.length;
  for (const HoleStep& step : hole.plan->steps) {
    const bool seat = step.kind == ToolKind::counterbore || step.kind == ToolKind::countersink ||
                      step.op == Op::counterbore || step.op == Op::spotface;
    const std::optional<Length> size = step.size;
    if (!size) continue;
    cut.tools.push_back({step.tool, size->ticks() / 2,
                         step.pointDepth ? step.pointDepth : step.fullDepth, step.below,
                         cut.through && !seat});
  }
  if (cut.tools.empty() && hole.diameter > Length()) {
    // Nothing owned makes it; its own size still must not come into anything.
    cut.tools.push_back({"", hole.diameter.ticks() / 2, std::nullopt, Length(), cut.through});
  }
  return cut;
}

Spot spotOf(const SeenFrame& frame, PlanePoint p) {
  return {frame.along(0, p).ticks(), frame.along(1, p).ticks()};
}

/// The ends of a slot along an axis, exact.
bool setEnds(const CheckedWork& work, const Feature& feature, CutPlace& cut) {
  const kind::Slot& slot = *feature.as<kind::Slot>();
  const auto axes = axesIn(feature.face);
  std::array<Spot, 2> ends{};
  for (std::size_t end = 0; end < 2; ++end) {
    for (std::size_t i = 0; i < 2; ++i) {
      const Id place = feature.id + (end == 0 ? "1" : "2");
      const Position* position = placedPosition(work.solution, place, axes[i]);
      const auto at = position ? nearestTick(position->ticks) : std::nullopt;
      if (!at) return false;
      ends[end][i] = at->ticks();
    }
  }
  cut.from = ends[0];
  cut.along = axes[1] == *slot.axis ? 1 : 0;
  cut.length = ends[1][cut.along] - ends[0][cut.along];
  return true;
}

std::optional<CutPlace> cutOfMilled(const CheckedWork& work, const PlannedSlot& milled) {
  const MilledShape& shape = milled.shape;
  CutPlace cut;
  cut.id = milled.id;
  cut.through = !shape.depth;
  CutPlace::Tool tool;
  tool.name = "end mill";
  const Feature* feature = shape.isPocket ? nullptr : work.part.feature(milled.id);
  if (feature) tool.radius = feature->as<kind::Slot>()->width->value.ticks() / 2;
  if (!(feature && feature->as<kind::Slot>()->axis && setEnds(work, *feature, cut))) {
    if (shape.way.empty()) return std::nullopt;
    cut.shape = shape;
    cut.from = spotOf(SeenFrame(shape.face), shape.way.front().start);
  }
  tool.through = cut.through;
  if (cut.through) {
    tool.below = work.tools.marginBelow();
    const auto thick = work.block.sizeNow(axisAcross(shape.face));
    if (thick) tool.end = sumOf(*thick, tool.below);
  } else {
    tool.end = sumOf(*shape.depth, work.block.stock(shape.face));
  }
  cut.tools.push_back(tool);
  return cut;
}

PlanePoint pointAlong(const PathPiece& piece, double share) {
  if (!piece.circle) {
    return {piece.start.x + share * (piece.end.x - piece.start.x),
            piece.start.y + share * (piece.end.y - piece.start.y)};
  }
  const PlanePoint centre = piece.circle->centre;
  const double begins =
      piece.isWhole ? 0 : std::atan2(piece.start.y - centre.y, piece.start.x - centre.x);
  const double angle = begins + piece.sense * share * sweepOf(piece);
  return {centre.x + piece.circle->radius * std::cos(angle),
          centre.y + piece.circle->radius * std::sin(angle)};
}

/// The least of a distance from a rectangle along a piece. Along a straight one it falls and then
/// rises, a rectangle being convex; along a round it is looked for finely, then between.
template <class Distance>
double leastAlong(const PathPiece& piece, Distance distance) {
  const auto at = [&](double share) { return distance(pointAlong(piece, share)); };
  double low = 0, high = 1;
  if (piece.circle) {
    constexpr int kLooks = 720;
    int best = 0;
    for (int i = 1; i <= kLooks; ++i) {
      if (at(double(i) / kLooks) < at(double(best) / kLooks)) best = i;
    }
    low = std::max(0.0, (best - 1.0) / kLooks);
    high = std::min(1.0, (best + 1.0) / kLooks);
  }
  constexpr int kThirds = 80;
  for (int i = 0; i < kThirds; ++i) {
    const double third = (high - low) / 3;
    (at(low + third) < at(high - third) ? high -= third : low += third);
  }
  return std::min({at(0), at(1), at((low + high) / 2)});
}

}  // namespace

Length sumOf(Length a, Length b) {
  return a.plus(b).value_or(a);
}

const CutPlace::Tool* CutPlace::widest() const {
  const Tool* widest = nullptr;
  for (const Tool& tool : tools) {
    if (!widest || tool.radius > widest->radius) widest = &tool;
  }
  return widest;
}

std::int64_t CutPlace::distanceFrom(const Rectangle& rectangle) const {
  if (!shape) return distanceTo(grownBack(rectangle, along, length), from);
  const SeenFrame frame(shape->face);
  const auto distance = [&](PlanePoint p) {
    return Length::ticks(distanceTo(rectangle, spotOf(frame, p))).toInches();
  };
  double least = distance(shape->way.front().start);
  for (const PathPiece& piece : shape->way) {
    least = std::min(least, leastAlong(piece, distance));
  }
  // One that lies within a pocket as a whole meets no wall of it.
  if (shape->isPocket && least > 0) {
    PlanePoint corner;
    for (const std::size_t i : {0U, 1U}) {
      const auto& end = rectangle.low[i] ? rectangle.low[i] : rectangle.high[i];
      (i == 0 ? corner.x : corner.y) = frame.own[i] * Length::ticks(end.value_or(0)).toInches();
    }
    if (isInside(shape->way, corner)) least = std::min(least, shape->edgeFrom(corner));
  }
  return std::llround(least * static_cast<double>(Length::kTicksPerInch));
}

std::pair<std::int64_t, std::int64_t> CutPlace::reach(std::size_t axis) const {
  if (!shape) return {from[axis], from[axis] + (along == axis ? length : 0)};
  const auto [low, high] = extentsOf(shape->way);
  const Spot a = spotOf(SeenFrame(shape->face), low), b = spotOf(SeenFrame(shape->face), high);
  return std::minmax(a[axis], b[axis]);
}

std::vector<CutPlace> cutPlaces(const CheckedWork& work) {
  std::vector<CutPlace> cuts;
  for (const PlannedHole& hole : work.holes) {
    if (hole.face == work.setup.face && hole.centre) cuts.push_back(cutOfHole(hole));
  }
  for (const PlannedSlot& milled : work.milled) {
    if (std::optional<CutPlace> cut = cutOfMilled(work, milled)) cuts.push_back(*std::move(cut));
  }
  return cuts;
}

}  // namespace inchwright
