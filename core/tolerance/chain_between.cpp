#include <algorithm>
#include <queue>

#include "core/graph/edges_at.h"
#include "core/graph/elimination.h"
#include "core/graph/forest.h"
#include "core/tolerance/stack.h"

namespace inchwright {
namespace {

/// What a way costs: toleranced members first, their width next, and so that a way does not
/// wander, the members without any last. In one number, 32 bits, 64 and 32: widths together stay
/// below 2^62 (`kFarthestReach`).
using Cost = Int128;
constexpr Cost kNoWay = Cost{1} << 126;

Cost costOf(const TolerancedLink& link) {
  return Cost{link.toleranced ? 1 : 0} << 96 | Cost{link.width()} << 32 | 1;
}

EdgesAt linksByNode(const ToleranceNetwork& network) {
  return EdgesAt(static_cast<std::uint32_t>(network.places.size()), network.links.size(),
                 [&](std::uint32_t link) {
                   return std::pair(network.links[link].from, network.links[link].to);
                 });
}

std::uint32_t otherEnd(const TolerancedLink& link, std::uint32_t node) {
  return link.from == node ? link.to : link.from;
}

// The cheapest way to `goal` from all that lies nearer than `start`, and from there; of others no
// more than that it is at least as dear.
std::vector<Cost> costsTo(const ToleranceNetwork& network, const EdgesAt& at, std::uint32_t goal,
                          std::uint32_t start) {
  std::vector<Cost> cost(network.places.size(), kNoWay);
  using Stop = std::pair<Cost, std::uint32_t>;
  std::priority_queue<Stop, std::vector<Stop>, std::greater<>> queue;
  cost[goal] = 0;
  queue.push({cost[goal], goal});
  while (!queue.empty()) {
    const auto [reached, node] = queue.top();
    queue.pop();
    if (node == start) break;
    if (reached != cost[node]) continue;
    for (const std::uint32_t link : at[node]) {
      const std::uint32_t next = otherEnd(network.links[link], node);
      const Cost total = reached + costOf(network.links[link]);
      if (total < cost[next]) {
        cost[next] = total;
        queue.push({total, next});
      }
    }
  }
  return cost;
}

// Links of the chain from the lower node to the higher; empty when no links join them.
std::vector<std::uint32_t> linksBetween(const Part& part, const ToleranceNetwork& network,
                                        const EdgesAt& at, std::uint32_t from, std::uint32_t to) {
  const std::vector<Cost> cost = costsTo(network, at, to, from);
  if (cost[from] == kNoWay) return {};
  std::vector<std::uint32_t> chain;
  for (std::uint32_t node = from; node != to;) {
    std::uint32_t best = kNone;
    for (const std::uint32_t link : at[node]) {
      const std::uint32_t next = otherEnd(network.links[link], node);
      if (cost[next] == kNoWay) continue;
      if (cost[next] + costOf(network.links[link]) != cost[node]) continue;
      if (best == kNone ||
          comesFirst(part, network.links[link].source, network.links[best].source)) {
        best = link;
      }
    }
    chain.push_back(best);
    node = otherEnd(network.links[best], node);
  }
  return chain;
}

StackMember memberOf(const Part& part, const ToleranceNetwork& network, const TolerancedLink& link,
                     const Rational& factor) {
  StackMember member;
  // What is understood has no length, and never gets here.
  if (link.source.kind == SourceKind::reading) {
    member.what = member::Read{part.readings[link.source.index].id};
  } else {
    const Feature& feature = part.features[link.source.index];
    member.what = member::Shape{feature.kind(), feature.id};
  }
  if (const Lettered* figure = figureOf(part, link.source)) member.text = figure->text;
  member.from = network.places[factor.sign() < 0 ? link.to : link.from];
  member.to = network.places[factor.sign() < 0 ? link.from : link.to];
  member.factor = factor;
  member.nominal = link.nominal;
  member.low = link.low;
  member.high = link.high;
  member.rest = link.rest;
  return member;
}

bool counts(const TolerancedLink& link) {
  return link.toleranced || link.nominal != 0;
}

// Numbers of the links that span everything links join, walking outwards from both ends first, so
// that what they come to has few members.
std::vector<std::uint32_t> spanningLinks(const ToleranceNetwork& network, const EdgesAt& at,
                                         std::uint32_t from, std::uint32_t to) {
  std::vector<std::uint32_t> starts{from, to};
  for (std::uint32_t node = 0; node < network.places.size(); ++node) starts.push_back(node);
  std::vector<bool> seen(network.places.size(), false);
  std::vector<std::uint32_t> spanning;
  for (const std::uint32_t start : starts) {
    if (seen[start]) continue;
    seen[start] = true;
    std::vector<std::uint32_t> queue{start};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (const std::uint32_t link : at[queue[i]]) {
        const std::uint32_t next = otherEnd(network.links[link], queue[i]);
        if (seen[next]) continue;
        seen[next] = true;
        spanning.push_back(link);
        queue.push_back(next);
      }
    }
  }
  return spanning;
}

Error notJoined(const Id& from, const Id& to) {
  return {ErrorCode::unsolvable,
          "no toleranced readings along this axis join " + from + " and " + to, from};
}

// Where links alone do not join the two: by exact elimination, middles and equal spaces included.
Result<std::vector<StackMember>> overRelations(const Part& part, const ToleranceNetwork& network,
                                               const EdgesAt& at, std::uint32_t from,
                                               std::uint32_t to) {
  const std::vector<std::uint32_t> spanning = spanningLinks(network, at, from, to);
  Elimination elimination;
  for (const std::uint32_t i : spanning) {
    const TolerancedLink& link = network.links[i];
    const auto added =
        elimination.add(i, {{link.from, Rational(-1)}, {link.to, Rational(1)}}, link.nominal);
    if (!added) return added.error();
  }
  std::uint32_t number = static_cast<std::uint32_t>(network.links.size());
  for (const AxisRelation& relation : network.relations) {
    Sparse factors;
    for (const auto& [node, factor] : relation.terms) {
      addScaled(factors, {{node, Rational(factor)}}, Rational(1));
    }
    const auto added = elimination.add(number++, factors, Rational(0));
    if (!added) return added.error();
  }
  Elimination::Expression sum = elimination.of(to);
  const Elimination::Expression start = elimination.of(from);
  if (!addScaled(sum.free, start.free, Rational(-1)) ||
      !addScaled(sum.equations, start.equations, Rational(-1))) {
    return Error{ErrorCode::outOfRange, "the chain leads beyond the exact range", ""};
  }
  if (!sum.free.empty()) return notJoined(network.places[from], network.places[to]);
  std::vector<std::pair<const TolerancedLink*, Rational>> links;
  for (const auto& [equation, factor] : sum.equations) {
    if (equation >= network.links.size() || !counts(network.links[equation])) continue;
    links.emplace_back(&network.links[equation], factor);
  }
  std::stable_sort(links.begin(), links.end(), [&](const auto& a, const auto& b) {
    return comesFirst(part, a.first->source, b.first->source);
  });
  std::vector<StackMember> members;
  for (const auto& [link, factor] : links) {
    members.push_back(memberOf(part, network, *link, factor));
  }
  return members;
}

}  // namespace

Result<std::vector<StackMember>> chainBetween(const Part& part, const ToleranceNetwork& network,
                                              std::string_view from, std::string_view to) {
  const Result<std::uint32_t> a = nodeAlong(part, network, from);
  if (!a) return a.error();
  const Result<std::uint32_t> b = nodeAlong(part, network, to);
  if (!b) return b.error();
  if (*a == *b) return std::vector<StackMember>{};
  const EdgesAt at = linksByNode(network);
  const std::uint32_t lower = std::min(*a, *b);
  const std::uint32_t higher = std::max(*a, *b);
  const std::vector<std::uint32_t> chain = linksBetween(part, network, at, lower, higher);
  if (chain.empty()) return overRelations(part, network, at, *a, *b);

  std::vector<StackMember> members;
  members.reserve(chain.size());
  std::uint32_t node = lower;
  for (const std::uint32_t i : chain) {
    const TolerancedLink& link = network.links[i];
    const int along = (link.from == node ? 1 : -1) * (*a == lower ? 1 : -1);
    if (counts(link)) members.push_back(memberOf(part, network, link, Rational(along)));
    node = otherEnd(link, node);
  }
  if (*a != lower) std::reverse(members.begin(), members.end());
  return members;
}

}  // namespace inchwright
