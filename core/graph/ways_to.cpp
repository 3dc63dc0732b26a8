#include "core/graph/ways_to.h"

namespace inchwright {

WaysTo::WaysTo(const Reach& reach, std::span<const DifferenceEdge> edges, bool high,
               std::size_t most)
    : reach_(reach), edges_(edges), high_(high), most_(most), ways_(reach.size()) {}

const std::vector<std::uint32_t>& WaysTo::operator()(std::uint32_t node) {
  std::vector<std::uint32_t> unknown;  // nodes from this one back
  std::uint32_t here = node;
  while (ways_[here].empty() && lastOf(here) != kNone) {
    unknown.push_back(here);
    const DifferenceEdge& edge = edges_[lastOf(here)];
    here = edge.a == here ? edge.b : edge.a;
  }
  for (; !unknown.empty(); unknown.pop_back()) {
    const std::vector<std::uint32_t>& before = ways_[here];
    here = unknown.back();
    std::vector<std::uint32_t>& way = ways_[here];
    way.reserve(before.size() + 1);
    way.assign(before.begin() + (before.size() < most_ ? 0 : 1), before.end());
    way.push_back(lastOf(here));
  }
  return ways_[node];
}

}  // namespace inchwright
