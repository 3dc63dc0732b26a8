#include <algorithm>
#include <cmath>
#include <set>

#include "core/base/sets.h"
#include "core/graph/elimination.h"
#include "core/graph/forest.h"
#include "core/tolerance/adjust.h"
#include "core/tolerance/grouped_network.h"

namespace inchwright {
namespace {

/// A place's offset in its group, ticks.
double offsetOf(const GroupedNetwork& grouped, std::uint32_t place) {
  return static_cast<double>(grouped.offset[place]) / static_cast<double>(grouped.scale);
}

/// The toleranced readings as observations between groups.
Result<std::vector<Observation>> observationsOf(const Part& part, const ToleranceNetwork& network,
                                                const GroupedNetwork& grouped,
                                                const std::map<Id, double>& weights) {
  std::vector<Observation> observed;
  std::set<Id> named;
  for (const TolerancedLink& link : network.links) {
    if (!link.toleranced || link.width() == 0) continue;
    const Id& id = idOf(part, link.source);
    const auto weight = weights.find(id);
    const double times = weight == weights.end() ? 1 : weight->second;
    if (!(times > 0) || !std::isfinite(times)) {
      return Error{ErrorCode::badRequest, "a weight is a figure above 0", id};
    }
    named.insert(id);
    const double middle = (static_cast<double>(link.low) + static_cast<double>(link.high)) / 2;
    const std::int64_t shift = grouped.offset[link.to] - grouped.offset[link.from];
    observed.push_back({link.source, grouped.group[link.from], grouped.group[link.to],
                        middle - static_cast<double>(shift) / static_cast<double>(grouped.scale),
                        static_cast<double>(link.width()) / 6 / std::sqrt(times)});
  }
  for (const auto& [id, weight] : weights) {
    if (named.count(id) != 0) continue;
    return Error{ErrorCode::notFound, "no toleranced reading along this axis is called " + id, id};
  }
  return observed;
}

/// Middles and equal spaces between groups.
std::vector<Condition> conditionsOf(const ToleranceNetwork& network,
                                    const GroupedNetwork& grouped) {
  std::vector<Condition> conditions;
  for (const AxisRelation& relation : network.relations) {
    Condition one;
    std::int64_t offsets = 0;
    for (const auto& [place, factor] : relation.terms) {
      one.terms.emplace_back(grouped.group[place], factor);
      offsets += factor * grouped.offset[place];
    }
    one.sum = Rational::of(-Int128{offsets}, grouped.scale).value_or(Rational());
    conditions.push_back(std::move(one));
  }
  return conditions;
}

/// By group, whether the readings and conditions settle it once some groups are held.
Result<std::vector<bool>> settledGroups(std::uint32_t groups,
                                        const std::vector<Observation>& observed,
                                        const std::vector<Condition>& conditions,
                                        const std::vector<std::uint32_t>& held) {
  // What readings join moves as one; conditions settle such pieces against each other.
  Sets pieces(groups);
  for (const Observation& one : observed) pieces.unite(one.from, one.to);
  Elimination elimination;
  for (const std::uint32_t group : held) {
    const auto added = elimination.add(0, {{pieces.find(group), Rational(1)}}, Rational(0));
    if (!added) return added.error();
  }
  for (const Condition& one : conditions) {
    Sparse factors;
    for (const auto& [group, factor] : one.terms) {
      addScaled(factors, {{pieces.find(group), Rational(factor)}}, Rational(1));
    }
    const auto added = elimination.add(0, factors, Rational(0));
    if (!added) return added.error();
  }
  std::vector<bool> settled(groups);
  for (std::uint32_t group = 0; group < groups; ++group) {
    settled[group] = elimination.of(pieces.find(group)).free.empty();
  }
  return settled;
}

Error contradicted(const Part& part, const ToleranceNetwork& network, std::uint32_t link) {
  const Id& id = idOf(part, network.links[link].source);
  return {ErrorCode::unsolvable, "what is exact contradicts itself at " + id, id};
}

/// The first place by name that a reading meets.
std::optional<std::uint32_t> firstRead(const ToleranceNetwork& network) {
  std::optional<std::uint32_t> first;
  for (const TolerancedLink& link : network.links) {
    if (!link.toleranced) continue;
    for (const std::uint32_t place : {link.from, link.to}) {
      if (!first || network.places[place] < network.places[*first]) first = place;
    }
  }
  return first;
}

}  // namespace

Result<AdjustedAxis> adjustAxis(const Part& part, const ToleranceNetwork& network,
                                const AdjustRequest& request) {
  const GroupedNetwork grouped = groupRigidly(network, Rigid::shapesAndBasic);
  for (const std::uint32_t link : grouped.impossible) {
    if (!network.links[link].toleranced) return contradicted(part, network, link);
  }
  std::optional<std::uint32_t> from = firstRead(network);
  if (!from) return Error{ErrorCode::unsolvable, "no reading stands along this axis", ""};
  if (!request.from.empty()) {
    const Result<std::uint32_t> node = nodeAlong(part, network, request.from);
    if (!node) return node.error();
    from = *node;
  }
  // Values of groups are those of their own zero, the first place's.
  const double start = offsetOf(grouped, *from);
  std::vector<std::pair<std::uint32_t, double>> fixed{{grouped.group[*from], -start}};
  std::vector<std::uint32_t> heldGroups{grouped.group[*from]};
  for (const auto& [id, position] : request.held) {
    const Result<std::uint32_t> node = nodeAlong(part, network, id);
    if (!node) return node.error();
    heldGroups.push_back(grouped.group[*node]);
    fixed.emplace_back(heldGroups.back(), position.toDouble() - offsetOf(grouped, *node));
  }
  Result<std::vector<Observation>> all = observationsOf(part, network, grouped, request.weights);
  if (!all) return all.error();
  std::vector<Condition> conditions = conditionsOf(network, grouped);
  const auto settled = settledGroups(grouped.groups, *all, conditions, heldGroups);
  if (!settled) return settled.error();

  AdjustedAxis adjusted;
  adjusted.from = network.places[*from];
  for (Observation& one : *all) {
    if ((*settled)[one.from]) adjusted.observed.push_back(std::move(one));
  }
  std::erase_if(conditions, [&](const Condition& one) {
    return !std::all_of(one.terms.begin(), one.terms.end(),
                        [&](const auto& term) { return (*settled)[term.first]; });
  });
  if (adjusted.observed.empty()) {
    return Error{ErrorCode::unsolvable,
                 "no reading along this axis joins anything to " + adjusted.from, adjusted.from};
  }
  Result<Adjustment> result =
      adjustDifferences(grouped.groups, adjusted.observed, fixed, conditions);
  if (!result) return result.error();
  adjusted.result = std::move(result).value();
  std::vector<const Adjustment::Place*> placeOf(grouped.groups, nullptr);
  for (const Adjustment::Place& one : adjusted.result.places) placeOf[one.node] = &one;
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const Adjustment::Place* group = placeOf[grouped.group[place]];
    if (group) {
      adjusted.places.push_back(
          {network.places[place], group->value + offsetOf(grouped, place), group->deviation});
    } else {
      adjusted.notJoined.push_back(network.places[place]);
    }
  }
  return adjusted;
}

}  // namespace inchwright
