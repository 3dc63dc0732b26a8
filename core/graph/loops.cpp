#include "core/graph/loops.h"

#include <algorithm>
#include <compare>
#include <iterator>
#include <map>
#include <utility>

namespace inchwright {
namespace {

// A block is of ordinary size when starting from each node and visiting every link stays below
// this; in a larger one as many visits and steps are spent on each part of the search.
constexpr std::size_t kEffort = 1'000'000;

// One block with its nodes renumbered from 0, in order.
class Block {
 public:
  Block(std::span<const Link> links, std::span<const std::uint32_t> block) : number_(block) {
    for (const std::uint32_t link : block) {
      nodes_.push_back(links[link].from);
      nodes_.push_back(links[link].to);
    }
    std::sort(nodes_.begin(), nodes_.end());
    nodes_.erase(std::unique(nodes_.begin(), nodes_.end()), nodes_.end());
    at_.resize(nodes_.size());
    for (const std::uint32_t link : block) {
      // How they join is all that is asked: no lengths.
      const Link local{renumbered(links[link].from), renumbered(links[link].to), 0};
      const auto here = static_cast<std::uint32_t>(links_.size());
      at_[local.from].push_back(here);
      if (local.to != local.from) at_[local.to].push_back(here);
      links_.push_back(local);
    }
  }

  std::size_t nodeCount() const { return nodes_.size(); }
  const std::vector<Link>& links() const { return links_; }
  std::uint32_t number(std::uint32_t local) const { return number_[local]; }
  const std::vector<std::uint32_t>& linksAt(std::uint32_t node) const { return at_[node]; }
  std::uint32_t otherEnd(std::uint32_t link, std::uint32_t node) const {
    return links_[link].from == node ? links_[link].to : links_[link].from;
  }

 private:
  std::uint32_t renumbered(std::uint32_t node) const {
    return static_cast<std::uint32_t>(std::lower_bound(nodes_.begin(), nodes_.end(), node) -
                                      nodes_.begin());
  }

  std::span<const std::uint32_t> number_;
  std::vector<std::uint32_t> nodes_;
  std::vector<Link> links_;
  std::vector<std::vector<std::uint32_t>> at_;
};

// Shortest ways from one node of a block, breadth first.
struct Tree {
  std::uint32_t start = 0;
  std::vector<std::uint32_t>
      above;  ///< the link towards the start; kNone there and where not reached
  std::vector<std::uint32_t> branch;  ///< the node next to the start that the way leads over
  std::vector<std::uint32_t> depth;

  explicit Tree(std::size_t nodeCount)
      : above(nodeCount, kNone), branch(nodeCount, kNone), depth(nodeCount) {}
};

Tree treeFrom(const Block& block, std::uint32_t start) {
  Tree tree(block.nodeCount());
  tree.start = start;
  tree.branch[start] = start;
  std::vector<std::uint32_t> queue{start};
  for (std::size_t i = 0; i < queue.size(); ++i) {
    const std::uint32_t node = queue[i];
    for (const std::uint32_t link : block.linksAt(node)) {
      const std::uint32_t next = block.otherEnd(link, node);
      if (tree.branch[next] != kNone) continue;
      tree.branch[next] = node == start ? next : tree.branch[node];
      tree.depth[next] = tree.depth[node] + 1;
      tree.above[next] = link;
      queue.push_back(next);
    }
  }
  return tree;
}

// The links from `node` up to where a walk began, `above` naming the link towards it.
template <class Above>
Loop pathUp(const Block& block, const Above& above, std::uint32_t node) {
  Loop path;
  for (std::uint32_t link = above(node); link != kNone; link = above(node)) {
    path.push_back({link, block.links()[link].from == node ? 1 : -1});
    node = block.otherEnd(link, node);
  }
  return path;
}

// Out to the one end of a link, across it, and back from the other.
Loop closedBy(const Block& block, const Tree& tree, std::uint32_t link) {
  const auto above = [&](std::uint32_t node) { return tree.above[node]; };
  Loop loop = pathUp(block, above, block.links()[link].from);
  std::reverse(loop.begin(), loop.end());
  for (auto& step : loop) step.second = -step.second;
  loop.push_back({link, 1});
  const Loop back = pathUp(block, above, block.links()[link].to);
  loop.insert(loop.end(), back.begin(), back.end());
  return loop;
}

// Keeps loops that are independent of those kept before, told by the links outside the forest
// that they pass (over two elements, which is enough for loops of a graph).
class Independence {
 public:
  explicit Independence(const Forest& forest) : forest_(forest) {}

  bool take(const Loop& loop) {
    std::vector<std::uint32_t> spares;
    for (const auto& step : loop) {
      if (!forest_.holds(step.first)) spares.push_back(step.first);
    }
    std::sort(spares.begin(), spares.end());
    while (!spares.empty()) {
      const auto found = byLowest_.find(spares.front());
      if (found == byLowest_.end()) {
        byLowest_.emplace(spares.front(), std::move(spares));
        return true;
      }
      std::vector<std::uint32_t> sum;
      std::set_symmetric_difference(spares.begin(), spares.end(), found->second.begin(),
                                    found->second.end(), std::back_inserter(sum));
      spares = std::move(sum);
    }
    return false;
  }

 private:
  const Forest& forest_;
  std::map<std::uint32_t, std::vector<std::uint32_t>> byLowest_;
};

// What is kept of the loops tried, until there are as many as can be independent.
class Basis {
 public:
  Basis(const Block& block, const Forest& forest)
      : block_(block),
        independence_(forest),
        wanted_(block.links().size() + 1 - block.nodeCount()) {}

  bool isFull() const { return loops_.size() == wanted_; }

  void offer(Loop loop) {
    if (isFull() || !independence_.take(loop)) return;
    for (auto& step : loop) step.first = block_.number(step.first);
    loops_.push_back(std::move(loop));
  }

  std::vector<Loop> take() { return std::move(loops_); }

 private:
  const Block& block_;
  Independence independence_;
  std::size_t wanted_;
  std::vector<Loop> loops_;
};

// Every loop that is a shortest way out, one link across and a shortest way back, from anywhere:
// among these are those of a shortest basis.
void offerAll(const Block& block, Basis& basis) {
  struct Candidate {
    std::uint32_t length, start, link;
    auto operator<=>(const Candidate&) const = default;
  };
  std::vector<Tree> trees;
  std::vector<Candidate> candidates;
  for (std::uint32_t start = 0; start < block.nodeCount(); ++start) {
    trees.push_back(treeFrom(block, start));
    const Tree& tree = trees.back();
    for (std::uint32_t link = 0; link < block.links().size(); ++link) {
      const auto [from, to] = std::pair(block.links()[link].from, block.links()[link].to);
      if (tree.above[from] == link || tree.above[to] == link) continue;
      const bool closes = from == to ? from == start : tree.branch[from] != tree.branch[to];
      if (closes) candidates.push_back({tree.depth[from] + tree.depth[to] + 1, start, link});
    }
  }
  std::sort(candidates.begin(), candidates.end());
  for (const Candidate& one : candidates) {
    if (basis.isFull()) break;
    basis.offer(closedBy(block, trees[one.start], one.link));
  }
}

// The shortest loop through one link; empty when it is not found within `effort`, which is used up.
Loop shortestThrough(const Block& block, std::uint32_t link, std::size_t& effort) {
  const std::uint32_t start = block.links()[link].to;
  const std::uint32_t end = block.links()[link].from;
  std::map<std::uint32_t, std::uint32_t> above{{start, kNone}};
  std::vector<std::uint32_t> queue{start};
  for (std::size_t i = 0; i < queue.size() && above.count(end) == 0; ++i) {
    for (const std::uint32_t next : block.linksAt(queue[i])) {
      if (effort == 0) return {};
      --effort;
      const std::uint32_t other = block.otherEnd(next, queue[i]);
      if (next != link && above.emplace(other, next).second) queue.push_back(other);
    }
  }
  if (above.count(end) == 0) return {};
  Loop loop = pathUp(
      block, [&](std::uint32_t node) { return above.at(node); }, end);
  std::reverse(loop.begin(), loop.end());
  for (auto& step : loop) step.second = -step.second;
  loop.push_back({link, 1});
  return loop;
}

// In a large block: the shortest loop through each link while the effort lasts, then whatever
// loops the forest gives.
void offerSome(const Block& block, const Forest& forest, Basis& basis) {
  std::size_t effort = kEffort;
  std::vector<Loop> found;
  for (std::uint32_t link = 0; link < block.links().size() && effort > 0; ++link) {
    Loop loop = shortestThrough(block, link, effort);
    if (!loop.empty()) found.push_back(std::move(loop));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Loop& a, const Loop& b) { return a.size() < b.size(); });
  for (Loop& loop : found) basis.offer(std::move(loop));
  std::size_t steps = 0;
  for (std::uint32_t link = 0; link < block.links().size(); ++link) {
    if (forest.holds(link) || basis.isFull() || steps > kEffort) continue;
    Loop loop = forest.loopOver(link);
    steps += loop.size();
    basis.offer(std::move(loop));
  }
}

}  // namespace

std::vector<Loop> shortLoops(std::span<const Link> links, std::span<const std::uint32_t> block) {
  const Block local(links, block);
  const auto nodeCount = static_cast<std::uint32_t>(local.nodeCount());
  const auto grown = Forest::of(nodeCount, local.links());
  if (!grown) return {};
  const Forest& forest = *grown;
  Basis basis(local, forest);
  if (nodeCount * (nodeCount + local.links().size()) <= kEffort) {
    offerAll(local, basis);
  } else {
    offerSome(local, forest, basis);
  }
  return basis.take();
}

}  // namespace inchwright
