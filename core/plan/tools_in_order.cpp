#include "core/plan/tools_in_order.h"

#include <map>
#include <tuple>

namespace inchwright {

std::vector<ToolUse> toolsInOrder(const std::vector<PlannedHole>& holes, Face face) {
  // A bar is fitted for each size of hole; its cuts, all of the same tool, are one use.
  using Key = std::tuple<int, Length, std::string>;
  std::map<Key, ToolUse> uses;
  for (const PlannedHole& hole : holes) {
    if (hole.face != face) continue;
    for (const HoleStep& step : hole.plan->steps) {
      const Op rank = step.op == Op::pilot ? Op::drill : step.op;
      const bool bar = step.kind == ToolKind::bar;
      const Length size = bar ? hole.diameter : step.size.value_or(Length());
      ToolUse& use = uses[{static_cast<int>(rank), size, step.tool}];
      use.op = step.op;
      use.tool = step.tool;
      use.size = bar ? std::optional(size) : step.size;
      if (use.places.empty() || use.places.back() != hole.id) use.places.push_back(hole.id);
    }
  }
  std::vector<ToolUse> order;
  for (auto& [key, use] : uses) order.push_back(std::move(use));
  return order;
}

}  // namespace inchwright
