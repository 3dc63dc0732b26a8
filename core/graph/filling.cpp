#include "core/graph/filling.h"

#include <queue>

#include "core/graph/ratio_block.h"
#include "core/graph/two_connected.h"

namespace inchwright {
namespace {

/// The blocks and caps of a graph, each with the level at which it will next stop something. Levels
/// of a block only rise while rooms are settled elsewhere, so a queue of them may be out of date.
class Filler {
 public:
  Filler(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
         const std::vector<std::optional<Rational>>& given)
      : edges_(edges), filling_{given, {}}, blocksAt_(nodeCount) {
    filling_.heldBy.resize(nodeCount);
    for (std::vector<std::uint32_t>& block : twoConnectedBlocks(nodeCount, edges)) {
      blocks_.emplace_back(edges, std::move(block));
    }
    for (std::uint32_t i = 0; i < blocks_.size(); ++i) {
      for (const std::uint32_t node : blocks_[i].nodes()) blocksAt_[node].push_back(i);
    }
    limits_.resize(blocks_.size());
    stale_.assign(blocks_.size(), false);
  }

  Result<Filling> fill(const std::vector<std::optional<Rational>>& caps) {
    for (std::uint32_t node = 0; node < caps.size(); ++node) {
      if (caps[node] && !filling_.room[node]) queue_.push({*caps[node], capNumber(node)});
    }
    for (std::uint32_t i = 0; i < blocks_.size(); ++i) {
      if (const auto failed = look(i)) return *failed;
    }
    while (!queue_.empty()) {
      const auto [level, number] = queue_.top();
      queue_.pop();
      if (number >= blocks_.size()) {
        settle(static_cast<std::uint32_t>(number - blocks_.size()), level);
        continue;
      }
      const auto block = static_cast<std::uint32_t>(number);
      if (!stale_[block]) take(block);
      if (const auto failed = look(block)) return *failed;
    }
    return std::move(filling_);
  }

 private:
  using Entry = std::pair<Rational, std::size_t>;

  std::size_t capNumber(std::uint32_t node) const { return blocks_.size() + node; }

  std::optional<Error> look(std::uint32_t block) {
    Result<std::optional<RatioBlock::Limit>> limit = blocks_[block].limit(filling_.room);
    if (!limit) return limit.error();
    stale_[block] = false;
    limits_[block] = std::move(limit).value();
    if (limits_[block]) queue_.push({limits_[block]->level, block});
    return std::nullopt;
  }

  void take(std::uint32_t block) {
    const RatioBlock::Limit limit = *limits_[block];
    for (const std::uint32_t node : limit.nodes) settle(node, limit.level);
    for (const std::uint32_t edge : limit.edges) {
      for (const std::uint32_t end : {edges_[edge].a, edges_[edge].b}) {
        if (filling_.room[end] == limit.level) filling_.heldBy[end].push_back(edge);
      }
    }
  }

  void settle(std::uint32_t node, const Rational& level) {
    if (filling_.room[node]) return;
    filling_.room[node] = level;
    for (const std::uint32_t block : blocksAt_[node]) stale_[block] = true;
  }

  std::span<const DifferenceEdge> edges_;
  Filling filling_;
  std::vector<std::vector<std::uint32_t>> blocksAt_;
  std::vector<RatioBlock> blocks_;
  std::vector<std::optional<RatioBlock::Limit>> limits_;
  std::vector<bool> stale_;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue_;
};

}  // namespace

Result<Filling> fillEvenly(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges,
                           const std::vector<std::optional<Rational>>& given,
                           const std::vector<std::optional<Rational>>& caps) {
  return Filler(nodeCount, edges, given).fill(caps);
}

}  // namespace inchwright
