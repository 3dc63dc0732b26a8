#include "core/graph/two_connected.h"

#include <algorithm>

#include "core/graph/forest.h"

namespace inchwright {
namespace {

/// A depth-first walk that keeps the edges of blocks not yet closed.
class BlockWalk {
 public:
  BlockWalk(std::uint32_t nodeCount, std::span<const DifferenceEdge> edges)
      : edges_(edges), at_(nodeCount), entered_(nodeCount, kNone), lowest_(nodeCount, kNone) {
    for (std::uint32_t i = 0; i < edges.size(); ++i) {
      at_[edges[i].a].push_back(i);
      at_[edges[i].b].push_back(i);
    }
    for (std::uint32_t node = 0; node < nodeCount; ++node) {
      if (entered_[node] == kNone) walk(node);
    }
  }

  std::vector<std::vector<std::uint32_t>> take() { return std::move(blocks_); }

 private:
  struct Stop {
    std::uint32_t node;
    std::uint32_t cameBy;
    std::size_t next = 0;
  };

  void enter(std::uint32_t node, std::uint32_t edge) {
    entered_[node] = lowest_[node] = count_++;
    stops_.push_back({node, edge});
  }

  void walk(std::uint32_t root) {
    enter(root, kNone);
    while (!stops_.empty()) {
      Stop& stop = stops_.back();
      if (stop.next == at_[stop.node].size()) {
        leave();
        continue;
      }
      const std::uint32_t edge = at_[stop.node][stop.next++];
      if (edge == stop.cameBy) continue;
      const std::uint32_t other = edges_[edge].a == stop.node ? edges_[edge].b : edges_[edge].a;
      if (entered_[other] == kNone) {
        open_.push_back(edge);
        enter(other, edge);
      } else if (entered_[other] < entered_[stop.node]) {
        open_.push_back(edge);
        lowest_[stop.node] = std::min(lowest_[stop.node], entered_[other]);
      }
    }
  }

  void leave() {
    const Stop done = stops_.back();
    stops_.pop_back();
    if (stops_.empty()) return;
    const std::uint32_t parent = stops_.back().node;
    lowest_[parent] = std::min(lowest_[parent], lowest_[done.node]);
    if (lowest_[done.node] < entered_[parent]) return;
    const auto first = std::find(open_.rbegin(), open_.rend(), done.cameBy).base() - 1;
    blocks_.emplace_back(first, open_.end());
    open_.erase(first, open_.end());
  }

  std::span<const DifferenceEdge> edges_;
  std::vector<std::vector<std::uint32_t>> at_;
  std::vector<std::uint32_t> entered_, lowest_;
  std::uint32_t count_ = 0;
  std::vector<Stop> stops_;
  std::vector<std::uint32_t> open_;
  std::vector<std::vector<std::uint32_t>> blocks_;
};

}  // namespace

std::vector<std::vector<std::uint32_t>> twoConnectedBlocks(std::uint32_t nodeCount,
                                                           std::span<const DifferenceEdge> edges) {
  return BlockWalk(nodeCount, edges).take();
}

}  // namespace inchwright
