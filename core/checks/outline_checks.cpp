#include <algorithm>

#include "core/checks/checks.h"

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
    finding.wanted = Length::ticks(isOut ? 0 : wanted);
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
  finding.wanted = Length::ticks(wanted);
  findings.push_back(std::move(finding));
}

}  // namespace

std::vector<Finding> checkOutline(const CheckedWork& work, Face face) {
  std::vector<Finding> findings;
  for (const PlannedHole& hole : work.holes) {
    if (hole.face != face || hole.diameter <= Length()) continue;
    if (hole.centre && !hole.drilled->breaksOut) addWalls(work, hole, findings);
    addFloor(work, hole, findings);
  }
  return findings;
}

}  // namespace inchwright
