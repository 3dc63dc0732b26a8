#include "core/plan/tools_in_order.h"

#include <map>
#include <tuple>

namespace inchwright {

std::string_view nameOf(OrderRule rule) {
  constexpr std::string_view kNames[] = {"marks", "rough_faces", "spots", "drills",   "seats",
                                         "bars",  "reamers",     "taps",  "presses",  "in_bushes",
                                         "slots", "pockets",     "edges", "elsewhere"};
  return kNames[static_cast<std::size_t>(rule)];
}

OrderRule orderOfOp(Op op) {
  switch (op) {
    case Op::press:
      return OrderRule::presses;
    case Op::mark:
      return OrderRule::marks;
    case Op::spotface:
      return OrderRule::roughFaces;
    case Op::spot:
      return OrderRule::spots;
    case Op::pilot:
    case Op::drill:
      return OrderRule::drills;
    case Op::counterbore:
    case Op::countersink:
      return OrderRule::seats;
    case Op::bore:
      return OrderRule::bars;
    case Op::ream:
      return OrderRule::reamers;
    case Op::tap:
      return OrderRule::taps;
    case Op::mill:
      return OrderRule::slots;
    case Op::deburr:
      break;
  }
  return OrderRule::edges;
}

OrderRule orderOf(const HoleStep& step) {
  return step.inBush ? OrderRule::inBushes : orderOfOp(step.op);
}

std::vector<ToolUse> toolsInOrder(const std::vector<PlannedHole>& holes,
                                  const std::vector<PlannedSlot>& slots, Face face) {
  // A bar is fitted for each size of hole. What is made elsewhere, or in a bush, has the same order
  // again there.
  using Key = std::tuple<OrderRule, OrderRule, Length, std::string>;
  std::map<Key, ToolUse> uses;
  const auto add = [&](const Id& place, const HolePlan& plan, bool isPocket) {
    for (const HoleStep* step : fittingsOf(plan)) {
      const bool elsewhere = !goesByCoordinates(plan);
      const bool inPocket = isPocket && step->op == Op::mill;
      const OrderRule rule = elsewhere  ? OrderRule::elsewhere
                             : inPocket ? OrderRule::pockets
                                        : orderOf(*step);
      ToolUse& use = uses[{rule, orderOfOp(step->op), step->size.value_or(Length()), step->tool}];
      use.elsewhere = elsewhere;
      use.rule = rule;
      use.inBush = step->inBush;
      use.op = step->op;
      use.tool = step->tool;
      use.size = step->size;
      if (use.places.empty() || use.places.back() != place) use.places.push_back(place);
    }
  };
  for (const PlannedHole& hole : holes) {
    if (hole.face == face) add(hole.id, *hole.plan, false);
  }
  for (const PlannedSlot& slot : slots) add(slot.id, *slot.steps, slot.shape.isPocket);
  std::vector<ToolUse> order;
  for (auto& [key, use] : uses) order.push_back(std::move(use));
  return order;
}

}  // namespace inchwright
