#include "core/chain/tree_paths.h"

#include <iterator>
#include <set>
#include <utility>

namespace inchwright {

std::optional<Sparse> pathsOf(const Forest& forest, const AxisNetwork& network,
                              const Sparse& relations, Sparse nodes) {
  for (const auto& [relation, factor] : relations) {
    for (const auto& [node, coefficient] : network.relations[relation].terms) {
      if (!addScaled(nodes, {{node, Rational(coefficient)}}, factor)) return std::nullopt;
    }
  }
  Sparse links;
  // Deepest first, so that all that hangs below a node is gathered before it is passed upwards.
  std::set<std::pair<std::uint32_t, std::uint32_t>> waiting;
  for (const auto& one : nodes) waiting.insert({forest.depth(one.first), one.first});
  while (!waiting.empty()) {
    const auto [depth, node] = *waiting.rbegin();
    waiting.erase(std::prev(waiting.end()));
    const auto found = nodes.find(node);
    if (depth == 0 || found == nodes.end()) continue;
    const Rational through = found->second;
    const bool forwards = forest.signAbove(node) > 0;
    links[forest.linkAbove(node)] = forwards ? through : through.negated();
    const std::uint32_t parent = forest.parent(node);
    if (!addScaled(nodes, {{parent, through}}, Rational(1))) return std::nullopt;
    waiting.insert({forest.depth(parent), parent});
  }
  return links;
}

}  // namespace inchwright
