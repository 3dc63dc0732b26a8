#include "core/tolerance/budget_graph.h"

#include <algorithm>

#include "core/graph/forest.h"

namespace inchwright {
namespace {

constexpr std::int64_t kFarthest = std::int64_t{1} << 61;

struct Printed {
  std::vector<std::optional<std::int64_t>> ticks;  ///< by place, in parts of a tick
  std::vector<std::uint32_t> zeros;                ///< places
};

Result<Printed> printedOf(const ToleranceNetwork& network, const BudgetRequest& request,
                          std::int64_t scale) {
  Printed printed;
  printed.ticks.resize(network.places.size());
  for (const PrintedPlace& one : request.places) {
    const auto node = network.node(one.id);
    if (!node) return Error{ErrorCode::notFound, "the part has no place " + one.id, one.id};
    const auto parts = one.ticks.times(scale);
    const auto ticks = parts ? parts->rounded() : std::nullopt;
    if (!ticks || *ticks > kFarthest || *ticks < -kFarthest) {
      return Error{ErrorCode::outOfRange, "this coordinate goes too far", one.id};
    }
    printed.ticks[*node] = *ticks;
    if (one.isZero) printed.zeros.push_back(*node);
  }
  return printed;
}

// Numbers the variables: the place of zero first, then every group with a printed position.
void numberVariables(const GroupedNetwork& grouped, const Printed& printed, BudgetGraph& graph) {
  const std::size_t count = printed.ticks.size();
  graph.variable.assign(count, kNone);
  graph.offset.assign(count, 0);
  for (const std::uint32_t place : printed.zeros) {
    if (!graph.zero) {
      graph.zero = graph.variables++;
      graph.printed.push_back(*printed.ticks[place]);
    }
    graph.variable[place] = *graph.zero;
    graph.offset[place] = *printed.ticks[place] - graph.printed[*graph.zero];
  }
  std::vector<std::uint32_t> firstOf(grouped.groups, kNone);
  for (std::uint32_t place = 0; place < count; ++place) {
    if (!printed.ticks[place] || graph.variable[place] != kNone) continue;
    std::uint32_t& first = firstOf[grouped.group[place]];
    if (first == kNone) {
      first = place;
      graph.printed.push_back(*printed.ticks[place]);
      graph.variable[place] = graph.variables++;
      continue;
    }
    graph.variable[place] = graph.variable[first];
    graph.offset[place] = grouped.offset[place] - grouped.offset[first];
  }
}

}  // namespace

Result<BudgetGraph> budgetGraphOf(const ToleranceNetwork& network, const BudgetRequest& request) {
  const GroupedNetwork grouped = groupRigidly(network);
  const std::int64_t scale = grouped.scale;
  const Result<Printed> printed = printedOf(network, request, scale);
  if (!printed) return printed.error();
  BudgetGraph graph;
  graph.scale = scale;
  numberVariables(grouped, *printed, graph);

  // A reading to one place binds all that share its group: the one zero is set on, and
  // the rest; but one to zero itself binds what else its feature has only as closely as it letters.
  std::vector<std::vector<std::uint32_t>> ofGroup(grouped.groups);
  std::vector<std::int64_t> seat(graph.variables, 0);  ///< target of the group less the variable's
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const std::uint32_t variable = graph.variable[place];
    if (variable == kNone) continue;
    std::vector<std::uint32_t>& there = ofGroup[grouped.group[place]];
    if (std::find(there.begin(), there.end(), variable) != there.end()) continue;
    there.push_back(variable);
    seat[variable] = graph.offset[place] - grouped.offset[place];
  }
  std::vector<bool> beside(graph.variables, true);
  for (const PrintedPlace& one : request.places) {
    const std::uint32_t variable = graph.variable[*network.node(one.id)];
    beside[variable] = beside[variable] && one.isBesideZero;
  }
  for (std::uint32_t i = 0; i < network.links.size(); ++i) {
    const TolerancedLink& link = network.links[i];
    if (!link.toleranced) continue;
    const std::int64_t shift = grouped.offset[link.to] - grouped.offset[link.from];
    const std::int64_t low = link.low * scale;
    const std::int64_t high = link.high * scale;
    const auto isBeside = [&](std::uint32_t place, std::uint32_t variable) {
      return graph.zero && graph.variable[place] == graph.zero && variable != graph.zero &&
             beside[variable];
    };
    const std::int64_t likewise = std::max(link.width() * scale / 2, request.accuracy * scale);
    for (const std::uint32_t a : ofGroup[grouped.group[link.from]]) {
      for (const std::uint32_t b : ofGroup[grouped.group[link.to]]) {
        const std::int64_t lead = shift + seat[b] - seat[a];
        if (a == b) {
          graph.inner.push_back({a, std::min(high - lead, lead - low), i});
        } else if (isBeside(link.from, a)) {
          graph.likewise.push_back({a, likewise, i});
        } else if (isBeside(link.to, b)) {
          graph.likewise.push_back({b, likewise, i});
        } else {
          graph.edges.push_back({{a, b, low - lead, high - lead}, i});
        }
      }
    }
  }
  return graph;
}

}  // namespace inchwright
