#include "core/chain/loops.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/chain/skeleton.h"

namespace inchwright {
namespace {

// Beyond so many link visits no further starting points are tried.
constexpr std::size_t kEffort = 4'000'000;

// One block with its nodes renumbered from 0, in order.
class Block {
 public:
  Block(std::span<const AxisLink> links, std::span<const std::uint32_t> block) : number_(block) {
    for (const std::uint32_t link : block) {
      nodes_.push_back(links[link].from);
      nodes_.push_back(links[link].to);
    }
    std::sort(nodes_.begin(), nodes_.end());
    nodes_.erase(std::unique(nodes_.begin(), nodes_.end()), nodes_.end());
    at_.resize(nodes_.size());
    for (const std::uint32_t link : block) {
      AxisLink local = links[link];
      local.from = renumbered(local.from);
      local.to = renumbered(local.to);
      const auto here = static_cast<std::uint32_t>(links_.size());
      at_[local.from].push_back(here);
      if (local.to != local.from) at_[local.to].push_back(here);
      links_.push_back(local);
    }
  }

  std::size_t nodeCount() const { return nodes_.size(); }
  const std::vector<AxisLink>& links() const { return links_; }
  std::uint32_t number(std::uint32_t local) const { return number_[local]; }
  const std::vector<std::uint32_t>& linksAt(std::uint32_t node) const { return at_[node]; }

 private:
  std::uint32_t renumbered(std::uint32_t node) const {
    return static_cast<std::uint32_t>(std::lower_bound(nodes_.begin(), nodes_.end(), node) -
                                      nodes_.begin());
  }

  std::span<const std::uint32_t> number_;
  std::vector<std::uint32_t> nodes_;
  std::vector<AxisLink> links_;
  std::vector<std::vector<std::uint32_t>> at_;
};

// The links from `node` up to where a walk began, `above` naming the link towards it.
Loop pathUp(const Block& block, const std::vector<std::uint32_t>& above, std::uint32_t node) {
  Loop path;
  while (above[node] != kNone) {
    const AxisLink& link = block.links()[above[node]];
    const bool forwards = link.from == node;
    path.push_back({above[node], forwards ? 1 : -1});
    node = forwards ? link.to : link.from;
  }
  return path;
}

// start → x, the link x – y, y → start.
Loop closedBy(const Block& block, const std::vector<std::uint32_t>& above, std::uint32_t link) {
  Loop loop = pathUp(block, above, block.links()[link].from);
  std::reverse(loop.begin(), loop.end());
  for (auto& step : loop) step.second = -step.second;
  loop.push_back({link, 1});
  const Loop back = pathUp(block, above, block.links()[link].to);
  loop.insert(loop.end(), back.begin(), back.end());
  return loop;
}

// All loops through `start` that are a shortest path out, one link across, a shortest path back.
void collectFrom(const Block& block, std::uint32_t start, std::vector<Loop>& loops) {
  std::vector<std::uint32_t> above(block.nodeCount(), kNone);
  std::vector<std::uint32_t> branch(block.nodeCount(), kNone);
  std::vector<std::uint32_t> queue{start};
  branch[start] = start;
  for (std::size_t i = 0; i < queue.size(); ++i) {
    const std::uint32_t node = queue[i];
    for (const std::uint32_t link : block.linksAt(node)) {
      const AxisLink& one = block.links()[link];
      const std::uint32_t next = one.from == node ? one.to : one.from;
      if (branch[next] != kNone) continue;
      branch[next] = node == start ? next : branch[node];
      above[next] = link;
      queue.push_back(next);
    }
  }
  for (std::uint32_t link = 0; link < block.links().size(); ++link) {
    const AxisLink& one = block.links()[link];
    if (above[one.from] == link || above[one.to] == link) continue;
    const bool selfLoop = one.from == one.to;
    if (selfLoop ? one.from == start : branch[one.from] != branch[one.to]) {
      loops.push_back(closedBy(block, above, link));
    }
  }
}

// The loops that the links outside the skeleton close over it: a basis, if not a short one.
void collectFundamental(const Block& block, const Skeleton& skeleton, std::vector<Loop>& loops) {
  for (std::uint32_t link = 0; link < block.links().size(); ++link) {
    if (skeleton.holds(link)) continue;
    std::uint32_t a = block.links()[link].to;
    std::uint32_t b = block.links()[link].from;
    Loop loop{{link, 1}};
    Loop tail;
    while (a != b) {
      const bool first = skeleton.depth(a) >= skeleton.depth(b);
      std::uint32_t& node = first ? a : b;
      const int sign = skeleton.signAbove(node);
      if (first) {
        loop.push_back({skeleton.linkAbove(node), -sign});
      } else {
        tail.push_back({skeleton.linkAbove(node), sign});
      }
      node = skeleton.parent(node);
    }
    loop.insert(loop.end(), tail.rbegin(), tail.rend());
    loops.push_back(std::move(loop));
  }
}

// Keeps loops that are independent of those kept before, told by the links outside the skeleton
// that they pass (over two elements, which is enough for loops of a graph).
class Independence {
 public:
  explicit Independence(const Skeleton& skeleton) : skeleton_(skeleton) {}

  bool take(const Loop& loop) {
    std::vector<std::uint32_t> spares;
    for (const auto& step : loop) {
      if (!skeleton_.holds(step.first)) spares.push_back(step.first);
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
  const Skeleton& skeleton_;
  std::map<std::uint32_t, std::vector<std::uint32_t>> byLowest_;
};

std::vector<std::uint32_t> sortedLinks(const Loop& loop) {
  std::vector<std::uint32_t> links;
  for (const auto& step : loop) links.push_back(step.first);
  std::sort(links.begin(), links.end());
  return links;
}

}  // namespace

std::vector<Loop> shortLoops(std::span<const AxisLink> links,
                             std::span<const std::uint32_t> block) {
  const Block local(links, block);
  const Skeleton skeleton(static_cast<std::uint32_t>(local.nodeCount()), local.links());
  std::vector<Loop> all;
  const std::size_t affordable = kEffort / (local.links().size() + local.nodeCount() + 1) + 1;
  const std::size_t starts = std::min(local.nodeCount(), affordable);
  for (std::uint32_t start = 0; start < starts; ++start) collectFrom(local, start, all);
  if (starts < local.nodeCount()) collectFundamental(local, skeleton, all);

  std::vector<std::pair<std::vector<std::uint32_t>, std::size_t>> order;
  for (std::size_t i = 0; i < all.size(); ++i) order.push_back({sortedLinks(all[i]), i});
  std::sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
    if (a.first.size() != b.first.size()) return a.first.size() < b.first.size();
    return a < b;
  });

  const std::size_t wanted = local.links().size() + 1 - local.nodeCount();
  Independence independence(skeleton);
  std::vector<Loop> kept;
  for (const auto& one : order) {
    if (kept.size() == wanted) break;
    Loop& loop = all[one.second];
    if (!independence.take(loop)) continue;
    for (auto& step : loop) step.first = local.number(step.first);
    kept.push_back(std::move(loop));
  }
  return kept;
}

}  // namespace inchwright
