#include "core/tolerance/budget.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/graph/difference_graph.h"
#include "core/graph/filling.h"
#include "core/graph/forest.h"
#include "core/graph/kept_differences.h"
#include "core/tolerance/budget_graph.h"

namespace inchwright {
namespace {

/// What a place strays by at the least: the machine's accuracy, or for zero the finder's error.
std::vector<std::int64_t> leastRooms(const BudgetGraph& graph, const BudgetRequest& request) {
  std::vector<std::int64_t> least(graph.variables, request.accuracy * graph.scale);
  if (graph.zero) least[*graph.zero] = request.finderError * graph.scale;
  return least;
}

/// The edges with rooms taken off both limits.
std::vector<DifferenceEdge> tightened(const std::vector<BudgetGraph::Edge>& edges,
                                      const std::vector<std::int64_t>& room) {
  std::vector<DifferenceEdge> narrow;
  narrow.reserve(edges.size());
  for (const BudgetGraph::Edge& edge : edges) {
    const std::int64_t both = room[edge.limits.a] + room[edge.limits.b];
    narrow.push_back(
        {edge.limits.a, edge.limits.b, edge.limits.low + both, edge.limits.high - both});
  }
  return narrow;
}

/// Picks the readings that can't be guaranteed, and takes their edges out of the graph.
class Guarantee {
 public:
  Guarantee(const Part& part, const ToleranceNetwork& network, BudgetGraph& graph,
            std::vector<std::int64_t> least)
      : part_(part), network_(network), graph_(graph), least_(std::move(least)) {}

  std::set<std::uint32_t> dropped() {
    dropTooTight();
    dropContradicting();
    const auto out = [&](const auto& one) { return dropped_.count(one.link) != 0; };
    std::erase_if(graph_.edges, out);
    std::erase_if(graph_.inner, out);
    return dropped_;
  }

 private:
  void dropTooTight() {
    for (const BudgetGraph::Edge& edge : graph_.edges) {
      const std::int64_t both = least_[edge.limits.a] + least_[edge.limits.b];
      if (edge.limits.high - edge.limits.low < 2 * both) dropped_.insert(edge.link);
    }
    for (const BudgetGraph::Inner& inner : graph_.inner) {
      if (inner.slack < 2 * least_[inner.variable]) dropped_.insert(inner.link);
    }
  }

  // From the widest on, so that of readings that contradict each other the tightest is left.
  void dropContradicting() {
    const std::vector<DifferenceEdge> narrow = tightened(graph_.edges, least_);
    std::map<std::uint32_t, std::vector<DifferenceEdge>> edges;  // by link
    for (std::size_t i = 0; i < narrow.size(); ++i) {
      const std::uint32_t link = graph_.edges[i].link;
      if (dropped_.count(link) == 0) edges[link].push_back(narrow[i]);
    }
    std::vector<std::uint32_t> links;
    for (const auto& one : edges) links.push_back(one.first);
    std::sort(links.begin(), links.end(),
              [&](std::uint32_t a, std::uint32_t b) { return tighter(b, a); });
    KeptDifferences kept(graph_.printed);
    for (const std::uint32_t link : links) {
      if (!kept.take(edges[link])) dropped_.insert(link);
    }
  }

  bool tighter(std::uint32_t a, std::uint32_t b) const {
    const TolerancedLink& one = network_.links[a];
    const TolerancedLink& other = network_.links[b];
    if (one.width() != other.width()) return one.width() < other.width();
    return comesFirst(part_, one.source, other.source);
  }

  const Part& part_;
  const ToleranceNetwork& network_;
  BudgetGraph& graph_;
  std::vector<std::int64_t> least_;
  std::set<std::uint32_t> dropped_;
};

/// Edges between the same two variables become one; `of` keeps what each stands for.
struct Merged {
  std::vector<DifferenceEdge> edges;
  std::vector<std::vector<std::uint32_t>> links;
};

Merged merged(const BudgetGraph& graph) {
  Merged all;
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::size_t> numbers;
  for (const BudgetGraph::Edge& one : graph.edges) {
    DifferenceEdge edge = one.limits;
    if (edge.a > edge.b) edge = {edge.b, edge.a, -edge.high, -edge.low};
    const auto [found, isNew] = numbers.emplace(std::pair(edge.a, edge.b), all.edges.size());
    if (isNew) {
      all.edges.push_back(edge);
      all.links.push_back({one.link});
      continue;
    }
    DifferenceEdge& joint = all.edges[found->second];
    joint.low = std::max(joint.low, edge.low);
    joint.high = std::min(joint.high, edge.high);
    all.links[found->second].push_back(one.link);
  }
  return all;
}

std::vector<DifferenceEdge> turnedRound(std::vector<DifferenceEdge> edges) {
  for (DifferenceEdge& edge : edges) edge = {edge.a, edge.b, -edge.high, -edge.low};
  return edges;
}

// How far each target has to leave its printed position, so that the rooms fit: half way between
// the least and the greatest shifts that are no farther off than they must be.
std::vector<std::int64_t> shiftsOf(const BudgetGraph& graph,
                                   const std::vector<std::int64_t>& room) {
  std::vector<DifferenceEdge> edges = tightened(graph.edges, room);
  bool fits = true;
  for (DifferenceEdge& edge : edges) {
    const std::int64_t printed = graph.printed[edge.b] - graph.printed[edge.a];
    edge.low -= printed;
    edge.high -= printed;
    fits = fits && edge.low <= 0 && edge.high >= 0;
  }
  std::vector<std::int64_t> none(graph.variables, 0);
  if (fits) return none;
  const DifferenceGraph shifts(graph.variables, edges);
  std::vector<std::int64_t> below = none;
  std::vector<std::int64_t> above = none;
  if (graph.zero) {
    const auto start = shifts.feasible(none);
    if (!start) return none;
    const Reach reach = shifts.from(*graph.zero, *start);
    for (std::uint32_t i = 0; i < graph.variables; ++i) {
      if (!reach[i].reached()) continue;
      below[i] = std::max<std::int64_t>(0, reach[i].low);
      above[i] = std::max<std::int64_t>(0, -reach[i].high);
    }
  }
  const auto greatest = shifts.feasible(below);
  const std::vector<DifferenceEdge> turned = turnedRound(edges);
  const auto least = DifferenceGraph(graph.variables, turned).feasible(above);
  if (!greatest || !least) return none;
  for (std::uint32_t i = 0; i < graph.variables; ++i) {
    const std::int64_t sum = (*greatest)[i] - (*least)[i];
    none[i] = sum >= 0 ? sum / 2 : -((1 - sum) / 2);
  }
  return none;
}

std::vector<Source> inOrder(const Part& part, const ToleranceNetwork& network,
                            const std::set<std::uint32_t>& links) {
  std::vector<Source> sources;
  for (const std::uint32_t link : links) sources.push_back(network.links[link].source);
  std::sort(sources.begin(), sources.end(),
            [&](const Source& a, const Source& b) { return comesFirst(part, a, b); });
  sources.erase(std::unique(sources.begin(), sources.end()), sources.end());
  return sources;
}

std::vector<std::optional<Rational>> capsOf(const BudgetGraph& graph) {
  std::vector<std::optional<Rational>> caps(graph.variables);
  for (const BudgetGraph::Inner& inner : graph.inner) {
    const auto half = Rational::of(inner.slack, 2);
    auto& cap = caps[inner.variable];
    if (!cap || *half < *cap) cap = half;
  }
  for (const BudgetGraph::Likewise& one : graph.likewise) {
    auto& cap = caps[one.variable];
    if (!cap || Rational(one.room) < *cap) cap = Rational(one.room);
  }
  return caps;
}

// Rooms in whole parts of a tick, rounded down.
std::vector<std::int64_t> wholeRooms(const Filling& filling) {
  std::vector<std::int64_t> rooms;
  for (const auto& room : filling.room) {
    const Int128 whole = room ? room->numerator() / room->denominator() : 0;
    rooms.push_back(static_cast<std::int64_t>(std::max<Int128>(whole, 0)));
  }
  return rooms;
}

}  // namespace

Result<Budget> budgetOf(const Part& part, const ToleranceNetwork& network,
                        const BudgetRequest& request) {
  Result<BudgetGraph> built = budgetGraphOf(network, request);
  if (!built) return built.error();
  BudgetGraph& graph = *built;
  const std::set<std::uint32_t> dropped =
      Guarantee(part, network, graph, leastRooms(graph, request)).dropped();
  const Merged all = merged(graph);
  std::vector<std::optional<Rational>> given(graph.variables);
  if (graph.zero) given[*graph.zero] = Rational(request.finderError * graph.scale);
  const std::vector<std::optional<Rational>> caps = capsOf(graph);
  const Result<Filling> filling = fillEvenly(graph.variables, all.edges, given, caps);
  if (!filling) return filling.error();
  const std::vector<std::int64_t> rooms = wholeRooms(*filling);
  const std::vector<std::int64_t> shifts = shiftsOf(graph, rooms);

  std::vector<std::set<std::uint32_t>> holders(graph.variables);
  for (std::uint32_t i = 0; i < graph.variables; ++i) {
    for (const std::uint32_t edge : filling->heldBy[i]) {
      holders[i].insert(all.links[edge].begin(), all.links[edge].end());
    }
  }
  for (const BudgetGraph::Inner& inner : graph.inner) {
    if (filling->room[inner.variable] == Rational::of(inner.slack, 2)) {
      holders[inner.variable].insert(inner.link);
    }
  }
  for (const BudgetGraph::Likewise& one : graph.likewise) {
    if (filling->room[one.variable] == Rational(one.room)) holders[one.variable].insert(one.link);
  }
  Budget budget;
  budget.notGuaranteed = inOrder(part, network, dropped);
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const std::uint32_t variable = graph.variable[place];
    if (variable == kNone) continue;
    PlaceBudget one;
    one.id = network.places[place];
    const std::int64_t printed = graph.printed[variable] + graph.offset[place];
    const std::int64_t target = printed + shifts[variable];
    one.printed = nearestTick(printed, graph.scale);
    one.target = nearestTick(target, graph.scale);
    one.isZero = variable == graph.zero;
    if (one.isZero) {
      one.plusMinus = 0;
    } else if (filling->room[variable]) {
      // What dialling whole ticks leaves of it.
      one.plusMinus = ticksBelow(
          leftAfterRounding(rooms[variable], target, one.target * graph.scale), graph.scale);
      one.heldBy = inOrder(part, network, holders[variable]);
    }
    budget.places.push_back(std::move(one));
  }
  return budget;
}

std::int64_t leftAfterRounding(std::int64_t plusMinus, std::int64_t target, std::int64_t dialled) {
  const std::int64_t off = dialled > target ? dialled - target : target - dialled;
  return std::max<std::int64_t>(0, plusMinus - off);
}

}  // namespace inchwright
