#include "core/chain/axis_solver.h"

#include <algorithm>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "core/chain/circuit.h"
#include "core/chain/closure.h"
#include "core/chain/elimination.h"
#include "core/chain/loops.h"
#include "core/chain/skeleton.h"
#include "core/chain/tree_paths.h"

namespace inchwright {
namespace {

// Positions stay below this, so that what is made of them fits 64 bits.
const Rational kFarthest(std::int64_t{1} << 62);

Error sumTooFar() {
  return {ErrorCode::outOfRange, "a sum of readings leaves the exact range", ""};
}

Circuit circuitOf(const Loop& loop) {
  Circuit circuit;
  for (const auto& [link, sign] : loop) circuit.links.push_back({link, Rational(sign)});
  return circuit;
}

class AxisSolver {
 public:
  AxisSolver(const Part& part, const AxisNetwork& network, Closure closure)
      : part_(part),
        network_(network),
        closure_(std::move(closure)),
        skeleton_(nodeCount(), network.links),
        rows_(network.links.size() + network.relations.size()),
        checked_(network.links.size() + network.relations.size()),
        bad_(checked_.size()),
        side_(nodeCount()),
        related_(nodeCount()) {
    std::map<Id, int> sides;
    for (const Feature& feature : part.features) {
      const auto* edge = feature.as<kind::Edge>();
      if (edge && edge->side) sides[feature.id] = outward(*edge->side);
    }
    for (std::uint32_t node = 0; node < nodeCount(); ++node) {
      const auto found = sides.find(network.places[node]);
      if (found != sides.end()) side_[node] = found->second;
    }
    for (const AxisRelation& relation : network.relations) {
      for (const auto& term : relation.terms) related_[term.first] = true;
    }
  }

  Result<AxisOutcome> run() {
    if (!closeLoops()) return sumTooFar();
    const auto taken = takeRelations();
    if (!taken) return taken.error();
    for (const std::uint32_t row : badRows_) bad_[rows_.find(row)] = true;
    if (!placeAll()) return sumTooFar();
    markDisputed();
    tellStatus();
    return std::move(outcome_);
  }

 private:
  std::uint32_t nodeCount() const { return static_cast<std::uint32_t>(network_.places.size()); }
  std::uint32_t linkCount() const { return static_cast<std::uint32_t>(network_.links.size()); }

  // All that can fail yield false when a sum leaves its range.
  bool closeLoops();
  void climb(std::uint32_t spare, std::vector<std::uint32_t>& tops);
  bool reportLoops(const std::map<std::uint32_t, std::uint32_t>& blocks);
  bool reportIfMissing(const Circuit& circuit);
  Result<Done> takeRelations();
  bool takeDependence(const Elimination::Dependence& dependence);
  std::optional<Circuit> flowOf(const Sparse& equations, const Sparse& extra) const;

  std::vector<std::vector<std::uint32_t>> groups() const;
  bool placeAll();
  bool placeGroup(int group, const std::vector<std::uint32_t>& nodes);
  std::optional<Position> offsetBetween(std::uint32_t origin, std::uint32_t node);
  bool placeComponent(std::uint32_t start, const Position& at);
  void markDisputed();
  void tellStatus();

  bool isBad(std::uint32_t row) { return bad_[rows_.find(row)]; }

  const Part& part_;
  const AxisNetwork& network_;
  Closure closure_;
  Skeleton skeleton_;
  Sets rows_;  ///< links, then relations, joined to blocks of what checks each other
  std::vector<bool> checked_;  ///< by block: it has a circuit
  std::vector<bool> bad_;      ///< by block: a circuit in it misses
  std::vector<std::uint32_t> badRows_;
  std::vector<int> side_;      ///< by node: +1 or −1 at an outer side, as it faces; else 0
  std::vector<bool> related_;  ///< by node: in a relation
  Elimination elimination_;
  std::set<std::uint32_t> clashing_;  ///< links in reported circuits
  AxisOutcome outcome_;
};

// Joins the loop that a spare link closes over the skeleton into one block. `tops` holds, by
// block, its node nearest the root: blocks are climbed whole, so that all spare links together
// cost hardly more than the tree.
void AxisSolver::climb(std::uint32_t spare, std::vector<std::uint32_t>& tops) {
  std::uint32_t a = network_.links[spare].from;
  std::uint32_t b = network_.links[spare].to;
  std::uint32_t block = spare;
  std::uint32_t top = kNone;
  while (a != b) {
    if (skeleton_.depth(a) < skeleton_.depth(b)) std::swap(a, b);
    const std::uint32_t climbed = rows_.find(skeleton_.linkAbove(a));
    a = tops[climbed];
    if (top == kNone || skeleton_.depth(a) < skeleton_.depth(top)) top = a;
    block = rows_.unite(block, climbed);
    tops[block] = top;
  }
  checked_[block] = true;
}

bool AxisSolver::closeLoops() {
  std::vector<std::uint32_t> tops(network_.links.size() + network_.relations.size(), kNone);
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    if (skeleton_.linkAbove(node) != kNone)
      tops[skeleton_.linkAbove(node)] = skeleton_.parent(node);
  }
  for (std::uint32_t link = 0; link < linkCount(); ++link) {
    if (!skeleton_.holds(link)) climb(link, tops);
  }
  std::map<std::uint32_t, std::uint32_t> blocks;  // to a spare link of theirs that misses
  for (const Miss& miss : closure_.misses) {
    const Rational allowed = allowanceOf(part_, network_, circuitOf(skeleton_.loopOver(miss.link)));
    const Rational missed(miss.miss);
    if (missed > allowed || missed < allowed.negated()) {
      blocks.emplace(rows_.find(miss.link), miss.link);
    }
  }
  return blocks.empty() || reportLoops(blocks);
}

bool AxisSolver::reportLoops(const std::map<std::uint32_t, std::uint32_t>& blocks) {
  std::map<std::uint32_t, std::vector<std::uint32_t>> members;
  for (std::uint32_t link = 0; link < linkCount(); ++link) {
    const std::uint32_t block = rows_.find(link);
    if (blocks.count(block) != 0) members[block].push_back(link);
  }
  for (const auto& one : members) {
    const std::size_t before = outcome_.clashes.size();
    for (const Loop& loop : shortLoops(network_.links, one.second)) {
      if (!reportIfMissing(circuitOf(loop))) return false;
    }
    // Short loops may each be within what rounding allows, or left out of a very large block.
    const bool silent = outcome_.clashes.size() == before;
    if (silent && !reportIfMissing(circuitOf(skeleton_.loopOver(blocks.at(one.first)))))
      return false;
  }
  return true;
}

bool AxisSolver::reportIfMissing(const Circuit& circuit) {
  const auto miss = missOf(network_, circuit);
  if (!miss) return false;
  const Rational allowed = allowanceOf(part_, network_, circuit);
  if (*miss <= allowed && *miss >= allowed.negated()) return true;
  auto clash = clashOf(part_, network_, circuit);
  if (!clash) return false;
  outcome_.clashes.push_back(std::move(*clash));
  for (const auto& member : circuit.links) {
    clashing_.insert(member.first);
    badRows_.push_back(member.first);
  }
  return true;
}

Result<Done> AxisSolver::takeRelations() {
  for (std::uint32_t i = 0; i < network_.relations.size(); ++i) {
    Sparse factors;
    Rational constant;
    for (const auto& [node, coefficient] : network_.relations[i].terms) {
      const auto known = Rational(closure_.position[node]).times(Rational(-coefficient));
      const auto sum = known ? constant.plus(*known) : std::nullopt;
      const Sparse one{{closure_.component[node], Rational(1)}};
      if (!sum || !addScaled(factors, one, Rational(coefficient))) return sumTooFar();
      constant = *sum;
    }
    const auto dependence = elimination_.add(i, factors, constant);
    if (!dependence) return dependence.error();
    if (*dependence && !takeDependence(**dependence)) return sumTooFar();
  }
  return Done{};
}

bool AxisSolver::takeDependence(const Elimination::Dependence& dependence) {
  auto circuit = flowOf(dependence.equations, {});
  if (!circuit) return false;
  std::uint32_t block = kNone;
  const auto joinRow = [&](std::uint32_t row) {
    block = block == kNone ? rows_.find(row) : rows_.unite(block, row);
  };
  for (const std::uint32_t relation : circuit->relations) joinRow(linkCount() + relation);
  for (const auto& member : circuit->links) joinRow(member.first);
  checked_[block] = true;
  return circuit->links.empty() || reportIfMissing(*circuit);
}

// Σ factor · relation + Σ extra · position(node), told in links of the skeleton. Requires that the
// factors cancel within each component.
std::optional<Circuit> AxisSolver::flowOf(const Sparse& equations, const Sparse& extra) const {
  const std::optional<Sparse> links = pathsOf(skeleton_, network_, equations, extra);
  if (!links) return std::nullopt;
  Circuit circuit;
  circuit.links.assign(links->begin(), links->end());
  for (const auto& one : equations) circuit.relations.push_back(one.first);
  return circuit;
}

// All that is fixed against each other: components whose bases come to the same free ones.
std::vector<std::vector<std::uint32_t>> AxisSolver::groups() const {
  std::map<std::uint32_t, std::size_t> byComponent;
  std::map<Sparse, std::size_t> byBase;
  std::vector<std::vector<std::uint32_t>> all;
  for (std::uint32_t node = 0; node < nodeCount(); ++node) {
    const std::uint32_t component = closure_.component[node];
    auto found = byComponent.find(component);
    if (found == byComponent.end()) {
      const auto based = byBase.emplace(elimination_.of(component).free, all.size());
      if (based.second) all.emplace_back();
      found = byComponent.emplace(component, based.first->second).first;
    }
    all[found->second].push_back(node);
  }
  return all;
}

bool AxisSolver::placeAll() {
  auto all = groups();
  const auto sidesIn = [&](const std::vector<std::uint32_t>& nodes) {
    return std::count_if(nodes.begin(), nodes.end(),
                         [&](std::uint32_t node) { return side_[node] != 0; });
  };
  std::stable_sort(all.begin(), all.end(), [&](const auto& a, const auto& b) {
    return std::tuple(sidesIn(b), b.size(), a.front()) <
           std::tuple(sidesIn(a), a.size(), b.front());
  });
  // The part itself comes first; the others by their first place.
  if (!all.empty()) std::sort(all.begin() + 1, all.end());
  outcome_.positions.resize(nodeCount());
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!placeGroup(static_cast<int>(i), all[i])) return false;
  }
  return true;
}

// The origin is a lower outer side if the group has one, else an upper one, else its first place.
bool AxisSolver::placeGroup(int group, const std::vector<std::uint32_t>& nodes) {
  std::uint32_t origin = nodes.front();
  for (const std::uint32_t node : nodes) {
    const auto rank = [&](std::uint32_t one) {
      return side_[one] < 0 ? 0 : side_[one] > 0 ? 1 : 2;
    };
    if (rank(node) < rank(origin)) origin = node;
  }
  // Each component is entered where a relation meets it, the origin's at the origin.
  std::map<std::uint32_t, std::uint32_t> entrance{{closure_.component[origin], origin}};
  for (const std::uint32_t node : nodes) {
    if (related_[node]) entrance.emplace(closure_.component[node], node);
  }
  for (const auto& one : entrance) {
    auto at = offsetBetween(origin, one.second);
    if (!at) return false;
    at->group = group;
    if (!placeComponent(one.second, *at)) return false;
  }
  return true;
}

std::optional<Position> AxisSolver::offsetBetween(std::uint32_t origin, std::uint32_t node) {
  if (node == origin) return Position{};
  Sparse equations = elimination_.of(closure_.component[origin]).equations;
  const auto there = elimination_.of(closure_.component[node]).equations;
  if (!addScaled(equations, there, Rational(-1))) return std::nullopt;
  const auto way = flowOf(equations, {{node, Rational(1)}, {origin, Rational(-1)}});
  const auto ticks = way ? missOf(network_, *way) : std::nullopt;
  if (!ticks) return std::nullopt;
  Position position;
  position.ticks = *ticks;
  for (const auto& member : way->links) {
    position.exact = position.exact && network_.links[member.first].exact;
    position.disputed = position.disputed || isBad(member.first);
  }
  for (const std::uint32_t relation : way->relations) {
    position.disputed = position.disputed || isBad(linkCount() + relation);
  }
  return position;
}

bool AxisSolver::placeComponent(std::uint32_t start, const Position& at) {
  bool fits = true;
  skeleton_.walkFrom(start, [&](std::uint32_t node, std::uint32_t from, std::uint32_t link) {
    Position& here = outcome_.positions[node];
    here = link == kNone ? at : outcome_.positions[from];
    if (link == kNone) return;
    const Int128 offset = Int128{closure_.position[node]} - closure_.position[start];
    const auto along = Rational::of(offset, 1);
    const auto ticks = along ? at.ticks.plus(*along) : std::nullopt;
    fits = fits && ticks && *ticks<kFarthest&& * ticks> kFarthest.negated();
    if (ticks) here.ticks = *ticks;
    here.exact = here.exact && network_.links[link].exact;
    here.disputed = here.disputed || isBad(link);
  });
  return fits;
}

// Until here only what lies behind a bad block is marked; now all that lies in one.
void AxisSolver::markDisputed() {
  for (std::uint32_t i = 0; i < linkCount(); ++i) {
    if (!isBad(i)) continue;
    outcome_.positions[network_.links[i].from].disputed = true;
    outcome_.positions[network_.links[i].to].disputed = true;
  }
  for (std::uint32_t i = 0; i < network_.relations.size(); ++i) {
    if (!isBad(linkCount() + i)) continue;
    for (const auto& term : network_.relations[i].terms) {
      outcome_.positions[term.first].disputed = true;
    }
  }
}

void AxisSolver::tellStatus() {
  for (std::uint32_t i = 0; i < linkCount(); ++i) {
    const Source& source = network_.links[i].source;
    if (source.kind != SourceKind::reading) continue;
    outcome_.status[source.index] = clashing_.count(i) != 0   ? ReadingStatus::clashes
                                    : checked_[rows_.find(i)] ? ReadingStatus::agrees
                                                              : ReadingStatus::alone;
  }
  std::stable_sort(outcome_.clashes.begin(), outcome_.clashes.end(),
                   [](const Clash& a, const Clash& b) { return a.loop.size() < b.loop.size(); });
}

}  // namespace

Result<AxisOutcome> solveAxis(const Part& part, const AxisNetwork& network) {
  std::vector<Link> bare;
  bare.reserve(network.links.size());
  for (const AxisLink& link : network.links) bare.push_back({link.from, link.to, link.ticks});
  auto closure = closeLinks(static_cast<std::uint32_t>(network.places.size()), bare);
  if (!closure) return closure.error();
  return AxisSolver(part, network, std::move(*closure)).run();
}

}  // namespace inchwright
