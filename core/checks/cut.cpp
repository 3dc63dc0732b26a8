#include "core/checks/cut.h"

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

std::optional<CutPlace> cutOfSlot(const CheckedWork& work, const Feature& feature,
                                  const kind::Slot& slot) {
  if (!slot.axis || !slot.width || slot.width->value <= Length()) return std::nullopt;
  CutPlace cut;
  cut.id = feature.id;
  const auto axes = axesIn(feature.face);
  std::array<Spot, 2> ends{};
  for (std::size_t end = 0; end < 2; ++end) {
    for (std::size_t i = 0; i < 2; ++i) {
      const Id place = feature.id + (end == 0 ? "1" : "2");
      const Position* position = placedPosition(work.solution, place, axes[i]);
      const auto at = position ? nearestTick(position->ticks) : std::nullopt;
      if (!at) return std::nullopt;
      ends[end][i] = at->ticks();
    }
  }
  cut.from = ends[0];
  cut.along = axes[1] == *slot.axis ? 1 : 0;
  cut.length = ends[1][cut.along] - ends[0][cut.along];
  cut.through = slot.depth.through || !slot.depth.length;
  CutPlace::Tool tool;
  tool.name = "end mill";
  tool.radius = slot.width->value.ticks() / 2;
  tool.through = cut.through;
  if (cut.through) {
    tool.below = work.tools.marginBelow();
    const auto thick = work.block.sizeNow(axisAcross(feature.face));
    if (thick) tool.end = sumOf(*thick, tool.below);
  } else {
    tool.end = sumOf(slot.depth.length->value, work.block.stock(feature.face));
  }
  cut.tools.push_back(tool);
  return cut;
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

std::vector<CutPlace> cutPlaces(const CheckedWork& work) {
  std::vector<CutPlace> cuts;
  for (const PlannedHole& hole : work.holes) {
    if (hole.face == work.setup.face && hole.centre) cuts.push_back(cutOfHole(hole));
  }
  for (const Feature& feature : work.part.features) {
    if (feature.face != work.setup.face) continue;
    const auto* slot = feature.as<kind::Slot>();
    if (!slot) continue;
    if (std::optional<CutPlace> cut = cutOfSlot(work, feature, *slot))
      cuts.push_back(*std::move(cut));
  }
  return cuts;
}

}  // namespace inchwright
