#include <algorithm>
#include <map>
#include <utility>

#include "core/base/sets.h"
#include "core/graph/difference_graph.h"
#include "core/graph/forest.h"
#include "core/graph/shortest_ways.h"
#include "core/graph/two_connected.h"
#include "core/tolerance/ranges.h"
#include "core/tolerance/relation_ranges.h"

namespace inchwright {
namespace {

// A toleranced reading of the print, and one of `among` (ascending) unless that is empty.
bool isAskedFor(const Part& part, const TolerancedLink& link, const std::vector<Id>& among) {
  if (!link.toleranced || link.source.kind != SourceKind::reading) return false;
  const Reading& reading = part.readings[link.source.index];
  if (!reading.figure.tolerance) return false;
  return among.empty() || std::binary_search(among.begin(), among.end(), reading.id);
}

/// A two-connected block as a graph of its own.
class BlockSearch {
 public:
  BlockSearch(const Part& part, const ToleranceNetwork& network, const GroupedNetwork& grouped,
              const std::vector<std::int64_t>& printed, const std::vector<std::uint32_t>& block)
      : part_(part), network_(network), scale_(grouped.scale), block_(block) {
    std::map<std::uint32_t, std::uint32_t> numberOf;
    const auto number = [&](std::uint32_t group) {
      const auto [place, isNew] =
          numberOf.emplace(group, static_cast<std::uint32_t>(numberOf.size()));
      if (isNew) positions_.push_back(printed[group]);
      return place->second;
    };
    for (const std::uint32_t edge : block) {
      const DifferenceEdge& limits = grouped.edges[edge];
      edges_.push_back({number(limits.a), number(limits.b), limits.low, limits.high});
      linkOf_.push_back(grouped.linkOf[edge]);
    }
  }

  /// What of the block is unassured, with its edge in the whole graph; false when the search had to
  /// be cut short.
  bool find(const std::vector<Id>& among, std::uint64_t& looked,
            std::vector<std::pair<std::uint32_t, Unassured>>& found) {
    const auto nodes = static_cast<std::uint32_t>(positions_.size());
    const auto feasible = DifferenceGraph(nodes, edges_).feasible(positions_);
    if (!feasible) return true;  // a contradiction, which is told as such
    positions_ = *feasible;
    ShortestWays ways(nodes, edges_, positions_);
    const std::vector<bool> closes = closing();
    for (std::uint32_t edge = 0; edge < edges_.size(); ++edge) {
      if (!closes[edge] || !isAskedFor(part_, network_.links[linkOf_[edge]], among)) continue;
      if (looked + ways.looked() > kMostLooked) return false;
      std::optional<Unassured> one = unassured(ways, edge);
      if (one) found.emplace_back(block_[edge], std::move(*one));
    }
    looked += ways.looked();
    return true;
  }

 private:
  std::int64_t lengthOf(std::uint32_t edge) const {
    const TolerancedLink& link = network_.links[linkOf_[edge]];
    const Lettered* figure = figureOf(part_, link.source);
    return figure ? figure->value.ticks() : 0;
  }

  /// By edge, whether some loop closes on it whose others are no longer. Of edges of one length
  /// that hang together all count as closing once one does.
  std::vector<bool> closing() const {
    std::vector<std::uint32_t> byLength(edges_.size());
    for (std::uint32_t i = 0; i < edges_.size(); ++i) byLength[i] = i;
    std::sort(byLength.begin(), byLength.end(), [&](std::uint32_t a, std::uint32_t b) {
      return std::pair(lengthOf(a), a) < std::pair(lengthOf(b), b);
    });
    std::vector<bool> closes(edges_.size(), false);
    Sets sets(positions_.size());
    for (std::size_t i = 0; i < byLength.size();) {
      std::size_t end = i;
      while (end < byLength.size() && lengthOf(byLength[end]) == lengthOf(byLength[i])) ++end;
      bool anyTie = false;
      for (std::size_t k = i; k < end; ++k) {
        const DifferenceEdge& edge = edges_[byLength[k]];
        closes[byLength[k]] = sets.find(edge.a) == sets.find(edge.b);
        anyTie = anyTie || closes[byLength[k]];
        sets.unite(edge.a, edge.b);
      }
      for (std::size_t k = i; k < end && anyTie; ++k) closes[byLength[k]] = true;
      i = end;
    }
    return closes;
  }

  bool isNoneLonger(const std::vector<std::uint32_t>& way, std::uint32_t edge) const {
    return std::all_of(way.begin(), way.end(),
                       [&](std::uint32_t other) { return lengthOf(other) <= lengthOf(edge); });
  }

  std::optional<Unassured> unassured(ShortestWays& ways, std::uint32_t number) const {
    const DifferenceEdge& own = edges_[number];
    const auto high = ways.between(own.a, own.b, ShortestWays::End::high, number);
    const auto low = ways.between(own.a, own.b, ShortestWays::End::low, number);
    if (!high || !low || (low->length >= own.low && high->length <= own.high)) return std::nullopt;
    if (!isNoneLonger(low->edges, number) || !isNoneLonger(high->edges, number))
      return std::nullopt;
    const TolerancedLink& link = network_.links[linkOf_[number]];
    const std::int64_t shift = link.low * scale_ - own.low;
    const auto sources = [&](const std::vector<std::uint32_t>& way) {
      std::vector<Source> all;
      for (const std::uint32_t edge : way) all.push_back(network_.links[linkOf_[edge]].source);
      return all;
    };
    return Unassured{
        part_.readings[link.source.index].id,
        {link.low, link.high},
        {ticksBelow(low->length + shift, scale_), ticksAbove(high->length + shift, scale_)},
        sources(low->edges),
        sources(high->edges)};
  }

  const Part& part_;
  const ToleranceNetwork& network_;
  std::int64_t scale_;
  const std::vector<std::uint32_t>& block_;
  std::vector<DifferenceEdge> edges_;
  std::vector<std::uint32_t> linkOf_;
  std::vector<std::int64_t> positions_;
};

}  // namespace

Result<UnassuredReadings> unassuredReadings(const Part& part, const ToleranceNetwork& network,
                                            const std::vector<Id>& asked) {
  std::vector<Id> among = asked;
  std::sort(among.begin(), among.end());
  const GroupedNetwork grouped = groupRigidly(network);
  UnassuredReadings all;
  if (!grouped.impossible.empty()) return all;
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, 0);
  std::vector<std::pair<std::uint32_t, Unassured>> byEdge;
  std::uint64_t looked = 0;
  for (const std::vector<std::uint32_t>& block :
       twoConnectedBlocks(grouped.groups, grouped.edges)) {
    if (block.size() < 2) continue;
    BlockSearch search(part, network, grouped, printed, block);
    if (!search.find(among, looked, byEdge)) all.isCutShort = true;
  }
  std::sort(byEdge.begin(), byEdge.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (auto& [edge, one] : byEdge) all.found.push_back(std::move(one));
  return all;
}

}  // namespace inchwright
