#include "core/chain/circuit.h"

#include <algorithm>
#include <tuple>

#include "core/chain/label.h"

namespace inchwright {
namespace {

// Half of the last decimal place of a lettered figure, in ticks; 0 for a fraction.
Rational halfLastPlace(const Lettered& figure) {
  if (figure.lettering == Lettering::fraction) return Rational(0);
  std::int64_t place = ticksPer(figure.unit);
  for (int i = 0; i < figure.places && place > 1; ++i) place /= 10;
  return Rational::of(place, 2).value_or(Rational(0));
}

// Which member closes the circuit: smaller is better.
auto closingKey(const Part& part, const AxisNetwork& network, const Circuit& circuit,
                std::size_t i) {
  const AxisLink& link = network.links[circuit.links[i].first];
  const Lettered* figure = figureOf(part, link.source);
  const int rank = figure == nullptr ? 2 : figure->reference ? 0 : 1;
  const Rational length = Rational(link.ticks).magnitude();
  return std::tuple(rank, length.negated(), labelOf(part, link.source), circuit.links[i].first);
}

std::optional<LoopMember> memberOf(const Part& part, const AxisNetwork& network,
                                   std::uint32_t number, const Rational& factor) {
  const AxisLink& link = network.links[number];
  LoopMember member;
  member.source = link.source;
  member.label = labelOf(part, link.source);
  if (const Lettered* figure = figureOf(part, link.source)) member.text = figure->text;
  member.sign = factor.sign();
  member.from = network.places[member.sign > 0 ? link.from : link.to];
  member.to = network.places[member.sign > 0 ? link.to : link.from];
  const auto step = Rational(link.ticks).times(factor);
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

void addRelations(const Part& part, const AxisNetwork& network, const Circuit& circuit,
                  std::vector<LoopMember>& loop) {
  for (const std::uint32_t relation : circuit.relations) {
    const AxisRelation& one = network.relations[relation];
    const auto same = [&](const LoopMember& member) { return member.source == one.source; };
    if (std::any_of(loop.begin(), loop.end(), same)) continue;
    LoopMember member;
    member.source = one.source;
    member.label = labelOf(part, one.source);
    member.from = network.places[one.terms.front().first];
    member.to = network.places[one.terms.back().first];
    loop.push_back(std::move(member));
  }
}

}  // namespace

std::optional<Rational> missOf(const AxisNetwork& network, const Circuit& circuit) {
  Rational sum;
  for (const auto& [link, factor] : circuit.links) {
    const auto step = Rational(network.links[link].ticks).times(factor);
    const auto next = step ? sum.plus(*step) : std::nullopt;
    if (!next) return std::nullopt;
    sum = *next;
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
  if (!shaped) return allowance;
  for (const auto& [link, factor] : circuit.links) {
    const Lettered* figure = figureOf(part, network.links[link].source);
    if (figure != nullptr) allow(halfLastPlace(*figure), factor);
  }
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
    const auto member =
        factor ? memberOf(part, network, circuit.links[at].first, *factor) : std::nullopt;
    if (!member) return std::nullopt;
    if (i == count) addRelations(part, network, circuit, clash.loop);
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

}  // namespace inchwright
