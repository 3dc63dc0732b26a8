#include "core/plan/budget_from_zero.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/checked.h"
#include "core/tolerance/slanted_links.h"

namespace inchwright {
namespace {

// The other names of a spot that is made once: row D and its first hole, a round's centre and what
// it is struck about, the ends of a slot.
std::vector<Id> sameSpot(const Part& part, const Id& place) {
  std::vector<Id> names{place};
  const auto alike = [&](const Id& one, const Id& other) {
    if (place == one) names.push_back(other);
    if (place == other) names.push_back(one);
  };
  for (const Feature& feature : part.features) {
    if (feature.is<kind::Row>()) alike(feature.id, feature.id + "1");
    const auto* round = feature.as<kind::Round>();
    if (round && !round->about.empty()) alike(round->about, feature.id + "0");
    const auto* slot = feature.as<kind::Slot>();
    if (!slot || slot->ends.size() != 2) continue;
    alike(slot->ends[0], feature.id + "1");
    alike(slot->ends[1], feature.id + "2");
  }
  return names;
}

const PrintedPlace* printedPlace(const BudgetRequest& request, std::string_view id) {
  for (const PrintedPlace& place : request.places) {
    if (place.id == id) return &place;
  }
  return nullptr;
}

// How far a coordinate may stray, and about what.
struct Aim {
  std::int64_t target = 0;
  std::int64_t plusMinus = 0;
};

Result<Aim> aimAt(const PrintedPlace& place, const BudgetRequest& request, const Budget* budget,
                  std::optional<Length> held, const Machine& machine) {
  const auto printed = place.ticks.rounded();
  if (!printed) return Error{ErrorCode::outOfRange, "this coordinate goes too far", place.id};
  if (place.isZero) return Aim{*printed, request.finderError};
  if (held) return Aim{*printed, held->ticks()};
  if (budget) {
    for (const PlaceBudget& one : budget->places) {
      if (one.id == place.id && one.plusMinus) return Aim{one.target, *one.plusMinus};
    }
  }
  if (machine.accuracy) return Aim{*printed, machine.accuracy->value.ticks()};
  return Error{ErrorCode::badRequest,
               "no reading limits the coordinate of " + place.id +
                   " and the machine's accuracy is not known: say how closely it is held",
               place.id};
}

}  // namespace

Result<BudgetRequest> budgetRequest(const PartAt& at, Axis axis) {
  BudgetRequest request;
  if (at.machine.accuracy) request.accuracy = at.machine.accuracy->value.ticks();
  if (at.machine.finderError) request.finderError = at.machine.finderError->value.ticks();
  const Result<std::optional<FoundZero>> zero = findZero(at, axis);
  if (!zero) return zero.error();
  if (!*zero) return request;
  const std::vector<Id> zeros = sameSpot(at.part, (*zero)->asked.at);
  const auto named =
      std::find_if(at.part.features.begin(), at.part.features.end(),
                   [&](const Feature& feature) { return isNamedBy(feature, (*zero)->asked.at); });
  const Feature* owner = named == at.part.features.end() ? nullptr : &*named;
  const Positions::Along& all = at.solution.positions.along(axis);
  for (std::size_t i = 0; i < all.places.size(); ++i) {
    if (all.positions[i].group != 0) continue;
    const Id& place = all.places[i];
    const auto ticks = all.positions[i].ticks.minus((*zero)->ticks);
    if (!ticks) return Error{ErrorCode::outOfRange, "this coordinate goes too far", place};
    const bool isZero = std::find(zeros.begin(), zeros.end(), place) != zeros.end();
    const bool isBeside = !isZero && owner && isNamedBy(*owner, place);
    request.places.push_back({place, *ticks, isZero, isBeside});
  }
  return request;
}

Result<BudgetNetwork> budgetNetwork(const PartAt& at, Axis axis) {
  Result<ToleranceNetwork> network = toleranceNetworkOf(at.part, axis);
  if (!network) return network.error();
  const Result<SlantedLinks> slanted = slantedLinks(at.part, at.solution, *network);
  if (!slanted) return slanted.error();
  BudgetNetwork all{*std::move(network), {}};
  all.network.links.insert(all.network.links.end(), slanted->links.begin(), slanted->links.end());
  for (const std::uint32_t reading : slanted->others) {
    all.notShared.push_back({SourceKind::reading, reading});
  }
  return all;
}

Result<Budget> budgetAlong(const PartAt& at, Axis axis) {
  const Result<BudgetRequest> request = budgetRequest(at, axis);
  if (!request) return request.error();
  const Result<BudgetNetwork> all = budgetNetwork(at, axis);
  if (!all) return all.error();
  Result<Budget> budget = budgetOf(at.part, all->network, *request);
  if (!budget) return budget;
  auto& direct = budget->notGuaranteed;
  direct.insert(direct.end(), all->notShared.begin(), all->notShared.end());
  return budget;
}

Result<std::vector<StackMember>> membersFromZero(const PartAt& at, Axis axis, std::string_view from,
                                                 std::string_view to, std::optional<Length> held) {
  const auto axes = axesIn(at.setup.face);
  const bool inFace = std::find(axes.begin(), axes.end(), axis) != axes.end();
  const Result<BudgetRequest> request = budgetRequest(at, axis);
  if (!request) return request.error();
  if (!inFace || request->places.empty()) {
    return Error{ErrorCode::badRequest,
                 "setup " + at.setup.name + " has no zero along " + std::string(nameOf(axis)),
                 at.setup.name};
  }
  const Result<BudgetNetwork> all = budgetNetwork(at, axis);
  if (!all) return all.error();
  const ToleranceNetwork& network = all->network;
  std::optional<Budget> budget;
  if (!held) {
    Result<Budget> found = budgetOf(at.part, network, *request);
    if (!found) return found.error();
    budget = std::move(found).value();
  }
  std::vector<StackMember> members;
  for (const std::string_view id : {from, to}) {
    if (const auto node = nodeAlong(at.part, network, id); !node) return node.error();
    if (from == to) continue;
    const PrintedPlace* place = printedPlace(*request, id);
    const std::string name(id);
    if (!place) return Error{ErrorCode::unsolvable, name + " is not placed against zero", name};
    const Result<Aim> aim = aimAt(*place, *request, budget ? &*budget : nullptr, held, at.machine);
    if (!aim) return aim.error();
    const auto low = subtractChecked(aim->target, aim->plusMinus);
    const auto high = addChecked(aim->target, aim->plusMinus);
    if (!low || !high) return Error{ErrorCode::outOfRange, "this coordinate goes too far", name};
    StackMember member;
    member.what = member::FromZero{name};
    member.to = name;
    member.factor = id == from ? -1 : 1;
    member.nominal = *place->ticks.rounded();
    member.low = *low;
    member.high = *high;
    members.push_back(std::move(member));
  }
  return members;
}

Result<Stack> stackFromZero(const PartAt& at, std::optional<Axis> axis, std::string_view from,
                            std::string_view to, std::optional<Length> held, double inflation) {
  if (axis) {
    Result<std::vector<StackMember>> members = membersFromZero(at, *axis, from, to, held);
    if (!members) return members.error();
    return stackOf(std::move(members).value(), inflation);
  }
  std::array<std::vector<StackMember>, 2> along;
  std::array<double, 2> apart{};
  const auto axes = axesIn(at.setup.face);
  for (std::size_t i = 0; i < axes.size(); ++i) {
    Result<std::vector<StackMember>> members = membersFromZero(at, axes[i], from, to, held);
    if (!members) return members.error();
    along[i] = std::move(members).value();
    for (const StackMember& one : along[i]) {
      apart[i] += one.factor.toDouble() * static_cast<double>(one.nominal);
    }
  }
  const double straight = std::hypot(apart[0], apart[1]);
  if (straight < 1) {
    return Error{ErrorCode::unsolvable, "there is no distance between the two", std::string(from)};
  }
  std::vector<StackMember> members;
  std::optional<Rational> base = Rational(std::llround(straight));
  for (std::size_t i = 0; i < axes.size(); ++i) {
    for (StackMember& one : along[i]) {
      one.factor = fractionOf(one.factor.toDouble() * apart[i] / straight);
      if (one.factor.isZero()) continue;
      one.isSlanted = true;
      std::get<member::FromZero>(one.what).axis = axes[i];
      const auto adds = one.factor.times(Rational(one.nominal));
      base = base && adds ? base->minus(*adds) : std::nullopt;
      members.push_back(std::move(one));
    }
  }
  if (!base) return Error{ErrorCode::outOfRange, "the stack goes too far", std::string(from)};
  return stackOf(std::move(members), inflation, *base);
}

}  // namespace inchwright
