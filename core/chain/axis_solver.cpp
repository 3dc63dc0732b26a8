#include "core/chain/axis_solver.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/base/sets.h"
#include "core/chain/circuit.h"
#include "core/graph/branches.h"
#include "core/graph/loops.h"

namespace inchwright {
namespace {

Error circuitTooFar() {
  return {ErrorCode::outOfRange, "a sum of readings leaves the exact range", ""};
}

Circuit circuitOf(const Loop& loop) {
  Circuit circuit;
  for (const auto& [link, sign] : loop) circuit.links.push_back({link, Rational(sign)});
  return circuit;
}

class AxisSolver {
 public:
  AxisSolver(const Part& part, const AxisSystem& system)
      : part_(part),
        network_(system.network()),
        system_(system),
        forest_(system.forest()),
        rows_(network_.links.size() + network_.relations.size()),
        checked_(network_.links.size() + network_.relations.size()),
        bad_(checked_.size()) {}

  Result<AxisOutcome> run() {
    if (!closeLoops()) return circuitTooFar();
    for (const Sparse& relations : system_.spareRelations()) {
      if (!close(relations)) return circuitTooFar();
    }
    for (const std::uint32_t row : badRows_) bad_[rows_.find(row)] = true;
    outcome_.positions = system_.positions();
    markDisputed();
    tellStatus();
    return std::move(outcome_);
  }

 private:
  std::uint32_t linkCount() const { return static_cast<std::uint32_t>(network_.links.size()); }

  // All that can fail yield false when a sum leaves its range.
  bool closeLoops();
  void climb(std::uint32_t spare, std::vector<std::uint32_t>& tops);
  bool reportLoops(const std::map<std::uint32_t, std::uint32_t>& blocks);
  bool reportIfMissing(const Circuit& circuit);
  bool close(const Sparse& relations);
  void markDisputed();
  void tellStatus();

  bool isBad(std::uint32_t row) { return bad_[rows_.find(row)]; }

  const Part& part_;
  const AxisNetwork& network_;
  const AxisSystem& system_;
  const Forest& forest_;
  Sets rows_;  ///< links, then relations, joined to blocks of what checks each other
  std::vector<bool> checked_;  ///< by block: it has a circuit
  std::vector<bool> bad_;      ///< by block: a circuit in it misses
  std::vector<std::uint32_t> badRows_;
  std::set<std::uint32_t> clashing_;  ///< links in reported circuits
  AxisOutcome outcome_;
};

// Joins the loop that a spare link closes over the forest into one block. `tops` holds, by
// block, its node nearest the root: blocks are climbed whole, so that all spare links together
// cost hardly more than the tree.
void AxisSolver::climb(std::uint32_t spare, std::vector<std::uint32_t>& tops) {
  std::uint32_t a = network_.links[spare].from;
  std::uint32_t b = network_.links[spare].to;
  std::uint32_t block = spare;
  std::uint32_t top = kNone;
  while (a != b) {
    if (forest_.depth(a) < forest_.depth(b)) std::swap(a, b);
    const std::uint32_t climbed = rows_.find(forest_.linkAbove(a));
    a = tops[climbed];
    if (top == kNone || forest_.depth(a) < forest_.depth(top)) top = a;
    block = rows_.unite(block, climbed);
    tops[block] = top;
  }
  checked_[block] = true;
}

bool AxisSolver::closeLoops() {
  std::vector<std::uint32_t> tops(network_.links.size() + network_.relations.size(), kNone);
  for (std::uint32_t node = 0; node < forest_.nodeCount(); ++node) {
    if (forest_.linkAbove(node) != kNone) tops[forest_.linkAbove(node)] = forest_.parent(node);
  }
  std::vector<std::uint32_t> missing;
  for (std::uint32_t link = 0; link < linkCount(); ++link) {
    if (forest_.holds(link)) continue;
    climb(link, tops);
    if (!system_.missOf(link).isZero()) missing.push_back(link);
  }
  std::map<std::uint32_t, std::uint32_t> blocks;  // to a spare link of theirs that misses
  for (const std::uint32_t link : missing) {
    const Rational allowed = allowanceOf(part_, network_, circuitOf(forest_.loopOver(link)));
    if (system_.missOf(link).magnitude() > allowed) blocks.emplace(rows_.find(link), link);
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
    const auto told = [&] { return outcome_.clashes.size() + outcome_.roundings.size(); };
    const std::size_t before = told();
    for (const Loop& loop : shortLoops(forest_.links(), one.second)) {
      if (!reportIfMissing(circuitOf(loop))) return false;
    }
    // Short loops may each be within what rounding allows, or left out of a very large block.
    const bool silent = told() == before;
    if (silent && !reportIfMissing(circuitOf(forest_.loopOver(blocks.at(one.first))))) return false;
  }
  return true;
}

bool AxisSolver::reportIfMissing(const Circuit& circuit) {
  const auto miss = missOf(network_, circuit);
  if (!miss) return false;
  const Rational allowed = allowanceOf(part_, network_, circuit);
  if (miss->magnitude() <= allowed) return true;
  auto clash = clashOf(part_, network_, circuit);
  if (!clash) return false;
  if (miss->magnitude() <= lastPlacesOf(part_, network_, circuit)) {
    outcome_.roundings.push_back(std::move(*clash));
    return true;
  }
  outcome_.clashes.push_back(std::move(*clash));
  for (const auto& member : circuit.links) {
    clashing_.insert(member.first);
    badRows_.push_back(member.first);
  }
  return true;
}

bool AxisSolver::close(const Sparse& relations) {
  auto circuit = system_.membersOf(relations, {});
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

// All that lies in a bad block, and all that is reached through one.
void AxisSolver::markDisputed() {
  if (badRows_.empty()) return;
  std::vector<Position>& positions = outcome_.positions;
  const Branches branches(forest_);
  for (const AxisSystem::Way& way : system_.ways()) {
    const auto& [links, relations] = way.members;
    const bool disputed = std::any_of(links.begin(), links.end(),
                                      [&](const auto& one) { return isBad(one.first); }) ||
                          std::any_of(relations.begin(), relations.end(),
                                      [&](std::uint32_t one) { return isBad(linkCount() + one); });
    branches.walkFrom(way.entrance, [&](std::uint32_t node, std::uint32_t from,
                                        std::uint32_t link) {
      positions[node].disputed = link == kNone ? disputed : positions[from].disputed || isBad(link);
    });
  }
  for (std::uint32_t i = 0; i < linkCount(); ++i) {
    if (!isBad(i)) continue;
    positions[network_.links[i].from].disputed = true;
    positions[network_.links[i].to].disputed = true;
  }
  for (std::uint32_t i = 0; i < network_.relations.size(); ++i) {
    if (!isBad(linkCount() + i)) continue;
    for (const auto& term : network_.relations[i].terms) positions[term.first].disputed = true;
  }
}

void AxisSolver::tellStatus() {
  for (std::uint32_t i = 0; i < linkCount(); ++i) {
    const Source& source = network_.links[i].source;
    if (source.kind != SourceKind::reading) continue;
    outcome_.status.push_back({source.index, clashing_.count(i) != 0   ? ReadingStatus::clashes
                                             : checked_[rows_.find(i)] ? ReadingStatus::agrees
                                                                       : ReadingStatus::alone});
  }
  const auto shorter = [](const Clash& a, const Clash& b) { return a.loop.size() < b.loop.size(); };
  std::stable_sort(outcome_.clashes.begin(), outcome_.clashes.end(), shorter);
  std::stable_sort(outcome_.roundings.begin(), outcome_.roundings.end(), shorter);
}

}  // namespace

Result<AxisOutcome> solveAxis(const Part& part, const AxisSystem& system) {
  return AxisSolver(part, system).run();
}

}  // namespace inchwright
