#include "core/plan/off_place.h"

#include <algorithm>
#include <cstdlib>

#include "core/plan/table_rows.h"

namespace inchwright {
namespace {

/// Whether a coordinate lies further off than its budget.
bool isBeyond(const Budget& budget, const TableAxis& axis, const Id& place, Length found) {
  for (const PlaceBudget& one : budget.places) {
    if (one.id != place || !one.plusMinus) continue;
    const std::int64_t target = one.target * axis.part.sign * axis.counts;
    return std::abs(found.ticks() - target) > *one.plusMinus;
  }
  return false;
}

}  // namespace

Result<const OffPlaces::SetupSaid*> OffPlaces::saidOf(const Setup& setup) {
  const auto known = said_.find(setup.name);
  if (known != said_.end()) return &known->second;
  Result<WorkAt> work = workAt(job_, part_, solution_, setup);
  if (!work) return work.error();
  SetupSaid said{*std::move(work), {}};
  for (const TableAxis* axis : {&said.work.x, &said.work.y}) {
    // Where nothing can be worked out there is no budget to be off by.
    Result<Budget> budget = budgetAlong({part_, solution_, setup, job_.machine}, axis->part.axis);
    if (budget) said.budgets.emplace(axis->part.axis, *std::move(budget));
  }
  return &said_.emplace(setup.name, std::move(said)).first->second;
}

Result<OffPlace> OffPlaces::of(const MadePlace& made) {
  OffPlace off;
  const Setup* const setup = part_.setup(made.setup);
  if (!setup || setup->chucked) return off;
  const auto feature = std::find_if(part_.features.begin(), part_.features.end(),
                                    [&](const Feature& one) { return isNamedBy(one, made.place); });
  if (feature == part_.features.end() || !makesRows(*feature, setup->face)) return off;
  const std::vector<Place> driven = drivenPlaces(*feature);
  if (std::none_of(driven.begin(), driven.end(),
                   [&](const Place& one) { return one.id == made.place; })) {
    return off;
  }
  const Result<const SetupSaid*> said = saidOf(*setup);
  if (!said) return said.error();
  const WorkAt& work = (*said)->work;
  const auto placedOn = [&](const TableAxis& axis) {
    return axis.zero ? work.position(made.place, axis.part.axis) : nullptr;
  };
  if (!placedOn(work.x) || !placedOn(work.y)) return off;
  const auto along = [&](const TableAxis& axis, const std::optional<Lettered>& found,
                         std::optional<Coordinate>& wanted,
                         std::optional<Length>& by) -> Result<Done> {
    const Result<Coordinate> at = work.coordinate(axis, *placedOn(axis));
    if (!at) return at.error();
    wanted = *at;
    if (!found) return Done{};
    by = found->value.minus(at->value);
    const auto budget = (*said)->budgets.find(axis.part.axis);
    if (budget == (*said)->budgets.end()) return Done{};
    off.beyond = off.beyond || isBeyond(budget->second, axis, made.place, found->value);
    return Done{};
  };
  if (const Result<Done> x = along(work.x, made.x, off.wantedX, off.x); !x) return x.error();
  if (const Result<Done> y = along(work.y, made.y, off.wantedY, off.y); !y) return y.error();
  return off;
}

}  // namespace inchwright
