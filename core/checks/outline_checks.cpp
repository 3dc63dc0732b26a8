#include <algorithm>
#include <cmath>
#include <limits>

#include "core/checks/checks.h"
#include "core/place/part_outline.h"

namespace inchwright {
namespace {

/// How thick the metal is between a hole's edge and a side; below 0 where it breaks out.
struct SideWall {
  Side side;
  std::int64_t finished;
  std::optional<std::int64_t> now;
};

std::vector<SideWall> wallsBeside(const CheckedWork& work, const PlannedHole& hole) {
  std::vector<SideWall> walls;
  const auto axes = axesIn(hole.face);
  const std::int64_t radius = hole.diameter.ticks() / 2;
  for (std::size_t i = 0; i < 2; ++i) {
    for (const bool upper : {false, true}) {
      const Side side = sideAt(axes[i], upper);
      const auto at = work.block.finished(side);
      if (!at) continue;
      const auto wallTo = [&](Length edge) {
        return (edge.ticks() - (*hole.centre)[i].ticks()) * (upper ? 1 : -1) - radius;
      };
      SideWall wall{side, wallTo(*at), std::nullopt};
      if (hole.face == work.setup.face) wall.now = wallTo(*work.block.now(side));
      walls.push_back(wall);
    }
  }
  return walls;
}

void addWalls(const CheckedWork& work, const PlannedHole& hole, std::vector<Finding>& findings) {
  const std::int64_t wanted = work.tools.marginWall().ticks();
  std::optional<SideWall> out, thin;
  for (const SideWall& wall : wallsBeside(work, hole)) {
    auto& worst = wall.finished < 0 ? out : thin;
    if (wall.finished >= wanted) continue;
    if (!worst || wall.finished < worst->finished) worst = wall;
  }
  for (const auto& [wall, code] :
       {std::pair{out, FindingCode::breaksOut}, {thin, FindingCode::thinWall}}) {
    if (!wall) continue;
    const bool isOut = code == FindingCode::breaksOut;
    Finding finding;
    finding.code = code;
    finding.places = {hole.id};
    finding.by = Length::ticks(isOut ? -wall->finished : wanted - wall->finished);
    finding.side = wall->side;
    finding.nowToo = wall->now && *wall->now < (isOut ? 0 : wanted);
    finding.had = Length::ticks(wall->finished);
    findings.push_back(std::move(finding));
  }
}

void addFloor(const CheckedWork& work, const PlannedHole& hole, std::vector<Finding>& findings) {
  if (hole.drilled->depth.through || !hole.drilled->depth.length) return;
  const auto thick = work.block.sizeFinished(axisAcross(hole.face));
  if (!thick) return;
  const HoleStep* deepest = nullptr;
  for (const HoleStep& step : hole.plan->steps) {
    if (!step.pointDepth) continue;
    if (!deepest || *step.pointDepth > *deepest->pointDepth) deepest = &step;
  }
  std::int64_t end = hole.drilled->depth.length->value.ticks();
  if (deepest) end = std::max(end, deepest->pointDepth->ticks() - hole.onFace.ticks());
  const std::int64_t left = thick->ticks() - end;
  const std::int64_t wanted = work.tools.marginWall().ticks();
  if (left >= wanted) return;
  Finding finding;
  finding.code = FindingCode::breaksThrough;
  finding.places = {hole.id};
  finding.by = Length::ticks(wanted - left);
  finding.tool = deepest ? deepest->tool : "";
  finding.side = oppositeOf(hole.face);
  finding.had = Length::ticks(left);
  findings.push_back(std::move(finding));
}

/// Whether a face is bounded by more than its four sides.
bool isShaped(const Part& part, Face face) {
  for (const GivenOutline& outline : part.outlines) {
    if (outline.face == face) return true;
  }
  for (const Feature& feature : part.features) {
    // Lines and arcs bound it only where an outline says so.
    if (feature.is<kind::Round>() && axesIn(feature.face) == axesIn(face)) return true;
  }
  return false;
}

Length lengthOf(double inches) {
  return Length::ticks(std::llround(inches * Length::kTicksPerInch));
}

/// How thick the metal beside a hole is by the outline; below 0 where it breaks out, also where its
/// centre lies outside. Empty where the outline does not say.
std::optional<Length> wallByOutline(const FaceOutlines& shaped, const PlannedHole& hole) {
  for (const Wall& wall : shaped.walls) {
    if (wall.place == hole.id) return lengthOf(wall.wall);
  }
  const auto at = shaped.plane.places.find(hole.id);
  if (at == shaped.plane.places.end() || shaped.outlines.empty()) return std::nullopt;
  const Outline& outer = shaped.outlines.front();
  if (!outer.isClosed || outer.isInner) return std::nullopt;
  const std::vector<PathPiece> path = outer.path();
  if (isInside(path, at->second)) return std::nullopt;
  double nearest = std::numeric_limits<double>::infinity();
  for (const PathPiece& piece : path) nearest = std::min(nearest, distanceTo(piece, at->second));
  return lengthOf(-nearest - hole.diameter.toInches() / 2);
}

void addShapedWall(const CheckedWork& work, const PlannedHole& hole, std::int64_t wall,
                   std::vector<Finding>& findings) {
  const std::int64_t wanted = work.tools.marginWall().ticks();
  // A tick of rounding is no wall too thin.
  if (wall >= wanted - 1) return;
  const bool isOut = wall < 0;
  Finding finding;
  finding.code = isOut ? FindingCode::breaksOut : FindingCode::thinWall;
  finding.places = {hole.id};
  finding.by = Length::ticks(isOut ? -wall : wanted - wall);
  finding.had = Length::ticks(wall);
  findings.push_back(std::move(finding));
}

/// Hollows of the outline, and corners of pockets, that no cutter owned goes into.
void addTightCorners(const CheckedWork& work, const FaceOutlines& shaped,
                     std::vector<Finding>& findings) {
  const auto& cutters = work.tools.cuttersFor(work.job.unit);
  if (cutters.empty()) return;
  const double least = cutters.front().size.value.toInches() / 2;
  for (const Outline& outline : shaped.outlines) {
    for (const OutlinePiece& piece : outline.pieces) {
      if (!piece.path || !piece.path->circle || piece.path->isWhole) continue;
      const bool hollow = (piece.path->sense > 0) == outline.isInner;
      const Length by = lengthOf(least - piece.path->circle->radius);
      if (!hollow || by <= Length::ticks(1)) continue;
      Finding finding;
      finding.code = FindingCode::cornerTooTight;
      finding.places = {piece.id};
      finding.by = by;
      findings.push_back(std::move(finding));
    }
  }
}

}  // namespace

std::vector<Finding> checkOutline(const CheckedWork& work, Face face) {
  std::vector<Finding> findings;
  std::optional<FaceOutlines> shaped;
  if (isShaped(work.part, face)) {
    shaped = outlinesOf(work.part, work.solution.positions, work.solution.beyond, face);
  }
  for (const PlannedHole& hole : work.holes) {
    if (hole.face != face || hole.diameter <= Length()) continue;
    if (hole.centre && !hole.drilled->breaksOut) {
      const auto wall = shaped ? wallByOutline(*shaped, hole) : std::nullopt;
      if (wall) {
        addShapedWall(work, hole, wall->ticks(), findings);
      } else {
        addWalls(work, hole, findings);
      }
    }
    addFloor(work, hole, findings);
  }
  if (shaped) addTightCorners(work, *shaped, findings);
  return findings;
}

}  // namespace inchwright
