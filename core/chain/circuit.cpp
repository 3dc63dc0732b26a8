#include "core/chain/circuit.h"

#include <algorithm>
#include <tuple>

namespace inchwright {
namespace {

const Id kNoId;

// Which member closes the circuit: smaller is better.
auto closingKey(const Part& part, const AxisNetwork& network, const Circuit& circuit,
                std::size_t i) {
  const AxisLink& link = network.links[circuit.links[i].first];
  const Lettered* figure = figureOf(part, link.source);
  const int rank = figure == nullptr ? 2 : figure->reference ? 0 : 1;
  const Rational length = link.length().magnitude();
  const Id& id = figure == nullptr ? kNoId : part.readings[link.source.index].id;
  return std::tuple(rank, length.negated(), id, circuit.links[i].first);
}

std::optional<LoopMember> memberOf(const AxisNetwork& network, std::uint32_t number,
                                   const Rational& factor) {
  const AxisLink& link = network.links[number];
  LoopMember member;
  member.source = link.source;
  member.sign = factor.sign();
  member.from = network.places[member.sign > 0 ? link.from : link.to];
  member.to = network.places[member.sign > 0 ? link.to : link.from];
  const auto step = link.length().times(factor);
  if (!step) return std::nullopt;
  member.step = *step;
  return member;
}

// Joins steps along one and the same feature or understanding.
bool mergeInto(std::vector<LoopMember>& loop, const LoopMember& next) {
  if (loop.empty() || next.source.kind == SourceKind::reading) return false;
  LoopMember& last = loop.back();
  if (!(last.source == next.source) || last.to != next.from) return false;
  const auto step = last.step.plus(next.step);
  if (!step) return false;
  last.to = next.to;
  last.step = *step;
  last.sign = last.step.sign() < 0 ? -1 : 1;
  return true;
}

void addRelations(const AxisNetwork& network, const Circuit& circuit,
                  std::vector<LoopMember>& loop) {
  for (const std::uint32_t relation : circuit.relations) {
    const AxisRelation& one = network.relations[relation];
    const auto same = [&](const LoopMember& member) { return member.source == one.source; };
    if (std::any_of(loop.begin(), loop.end(), same)) continue;
    LoopMember member;
    member.source = one.source;
    member.from = network.places[one.terms.front().first];
    member.to = network.places[one.terms.back().first];
    loop.push_back(std::move(member));
  }
}

}  // namespace

std::optional<Rational> missOf(const AxisNetwork& network, const Circuit& circuit) {
  Rational sum;
  for (const auto& [link, factor] : circuit.links) {
    const auto step = network.links[link].length().times(factor);
    const auto next = step ? sum.plus(*step) : std::nullopt;
    if (!next) return std::nullopt;
    sum = *next;
  }
  return sum;
}

Rational halfLastPlace(const Lettered& figure) {
  if (figure.lettering == Lettering::fraction) return Rational(0);
  std::int64_t place = ticksPer(figure.unit);
  for (int i = 0; i < figure.places && place > 1; ++i) place /= 10;
  return Rational::of(place, 2).value_or(Rational(0));
}

Rational lastPlacesOf(const Part& part, const AxisNetwork& network, const Circuit& circuit) {
  Rational sum;
  for (const auto& [link, factor] : circuit.links) {
    const Lettered* figure = figureOf(part, network.links[link].source);
    const auto share =
        figure == nullptr ? std::nullopt : halfLastPlace(*figure).times(factor.magnitude());
    sum = (share ? sum.plus(*share) : std::nullopt).value_or(sum);
  }
  return sum;
}

Rational allowanceOf(const Part& part, const AxisNetwork& network, const Circuit& circuit) {
  Rational allowance;
  bool shaped = false;
  const auto allow = [&](const Rational& amount, const Rational& factor) {
    const auto share = amount.times(factor.magnitude());
    allowance = (share ? allowance.plus(*share) : std::nullopt).value_or(allowance);
  };
  const Rational half = Rational::of(1, 2).value_or(Rational());
  for (const auto& [link, factor] : circuit.links) {
    if (network.links[link].exact) continue;
    allow(half, factor);
    shaped = shaped || network.links[link].source.kind == SourceKind::feature;
  }
  if (shaped) allow(lastPlacesOf(part, network, circuit), Rational(1));
  return allowance;
}

std::optional<Clash> clashOf(const Part& part, const AxisNetwork& network, const Circuit& circuit) {
  std::size_t closing = 0;
  for (std::size_t i = 1; i < circuit.links.size(); ++i) {
    if (closingKey(part, network, circuit, i) < closingKey(part, network, circuit, closing)) {
      closing = i;
    }
  }
  // Scaled so that the closing member is walked backwards, once.
  const bool walked = circuit.relations.empty();
  const Rational closingFactor = circuit.links[closing].second;
  const std::size_t count = circuit.links.size();
  const bool turned = walked && closingFactor.sign() > 0;
  Clash clash;
  clash.axis = network.axis;
  for (std::size_t i = 1; i <= count; ++i) {
    const std::size_t at = turned ? (closing + count - i) % count : (closing + i) % count;
    const auto factor = circuit.links[at].second.over(closingFactor.negated());
    const auto member = factor ? memberOf(network, circuit.links[at].first, *factor) : std::nullopt;
    if (!member) return std::nullopt;
    if (i == count) addRelations(network, circuit, clash.loop);
    if (!mergeInto(clash.loop, *member)) clash.loop.push_back(*member);
  }
  Rational running;
  for (LoopMember& member : clash.loop) {
    const auto next = running.plus(member.step);
    if (!next) return std::nullopt;
    running = *next;
    member.running = running;
  }
  clash.missesBy = running.negated();
  return clash;
}

std::vector<Id> Clash::readingIds(const Part& part) const {
  std::vector<Id> ids;
  for (const LoopMember& member : loop) {
    if (member.source.kind == SourceKind::reading) {
      ids.push_back(part.readings[member.source.index].id);
    }
  }
  return ids;
}

}  // namespace inchwright
