#include "core/plan/closeness.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/plan/budget_from_zero.h"
#include "core/plan/order_of_work.h"
#include "core/tolerance/budget.h"

namespace inchwright {
namespace {

/// Down to whole steps: what is shown must be safe to use up.
std::int64_t stepsDown(std::int64_t ticks, const Step& step) {
  return ticks / step.size.ticks() * step.size.ticks();
}

/// A limit of a reading at the step, rounded so that keeping to it keeps the reading.
Result<Coordinate> limitInwards(std::int64_t ticks, bool isLow, const Step& step) {
  const Int128 size = step.size.ticks();
  const Rational steps = *Rational::of(ticks, size);
  const Int128 whole = (isLow ? steps.ceiling() : steps.floor()) * size;
  return coordinateOf(Rational(static_cast<std::int64_t>(whole)), true, step);
}

void asPeopleCount(std::vector<Id>& ids) {
  std::sort(ids.begin(), ids.end(), [](const Id& a, const Id& b) { return standsBefore(a, b); });
}

/// One axis of the table at work.
class ClosenessAlong {
 public:
  ClosenessAlong(const Part& part, const TableAxis& axis, const SetupTable& table,
                 const std::set<Id>& shown)
      : part_(part), axis_(axis), table_(table), shown_(shown) {}

  Result<Done> add(const BudgetRequest& request, const BudgetNetwork& all, Closeness& closeness) {
    const ToleranceNetwork& network = all.network;
    const Result<Budget> budget = budgetOf(part_, network, request);
    if (!budget) return budget.error();
    const Result<Done> aimed = addBands(*budget, closeness);
    if (!aimed) return aimed;
    std::vector<Source> direct = budget->notGuaranteed;
    direct.insert(direct.end(), all.notShared.begin(), all.notShared.end());
    for (const Source& reading : direct) {
      const auto isTold = [&](const DirectCheck& one) { return one.reading == reading; };
      // A slanted one is measured straight, once.
      if (isSlanted(reading) &&
          std::any_of(closeness.directChecks.begin(), closeness.directChecks.end(), isTold)) {
        continue;
      }
      Result<DirectCheck> check = directCheck(network, reading);
      if (!check) return check.error();
      closeness.directChecks.push_back(*std::move(check));
    }
    return addAdvice(request, network, *budget, closeness);
  }

 private:
  /// What may still be used up once the target is dialled.
  std::int64_t leftOf(const PlaceBudget& one) const {
    const Shown dialled = showAtStep(Rational(one.target), table_.step);
    return stepsDown(leftAfterRounding(*one.plusMinus, one.target, dialled.value.ticks()),
                     table_.step);
  }

  bool counts(const PlaceBudget& one) const {
    return one.plusMinus && !one.isZero && shown_.count(one.id) != 0;
  }

  Result<Done> addBands(const Budget& budget, Closeness& all) {
    std::map<std::int64_t, std::vector<Id>> bands;
    for (const PlaceBudget& one : budget.places) {
      if (!counts(one)) continue;
      bands[leftOf(one)].push_back(one.id);
      if (showAtStep(Rational(one.target), table_.step).value ==
          showAtStep(Rational(one.printed), table_.step).value) {
        continue;
      }
      const Rational counted(one.target * axis_.part.sign * axis_.counts);
      const Result<Coordinate> at = coordinateOf(counted, true, table_.step);
      if (!at) return at.error();
      all.aims.push_back({one.id, axis_.machine, *at});
    }
    for (auto& [plusMinus, places] : bands) {
      asPeopleCount(places);
      all.bands.push_back({axis_.machine, Length::ticks(plusMinus), std::move(places)});
    }
    return Done{};
  }

  bool isSlanted(const Source& source) const {
    return source.kind == SourceKind::reading &&
           part_.readings[source.index].kind != ReadingKind::along;
  }

  Result<DirectCheck> directCheck(const ToleranceNetwork& network, const Source& source) const {
    DirectCheck check{source, axis_.machine, {}, {}};
    if (isSlanted(source)) {
      const Reading& reading = part_.readings[source.index];
      const auto by = toleranceOf(reading.figure, part_.general);
      if (reading.angle || !by) return check;
      const std::int64_t lettered = reading.figure.value.ticks();
      return limited(check, lettered + by->lower.ticks(), lettered + by->upper.ticks());
    }
    for (const TolerancedLink& link : network.links) {
      if (link.source != source || source.kind != SourceKind::reading) continue;
      return limited(check, link.low, link.high);
    }
    return check;
  }

  Result<DirectCheck> limited(DirectCheck check, std::int64_t low, std::int64_t high) const {
    const Result<Coordinate> least = limitInwards(low, true, table_.step);
    const Result<Coordinate> greatest = limitInwards(high, false, table_.step);
    if (!least) return least.error();
    if (!greatest) return greatest.error();
    check.least = *least;
    check.greatest = *greatest;
    return check;
  }

  /// The least that is left anywhere, and where.
  const PlaceBudget* tightest(const Budget& budget) const {
    const PlaceBudget* least = nullptr;
    for (const PlaceBudget& one : budget.places) {
      if (counts(one) && (!least || leftOf(one) < leftOf(*least))) least = &one;
    }
    return least;
  }

  Result<Done> addAdvice(const BudgetRequest& request, const ToleranceNetwork& network,
                         const Budget& budget, Closeness& all) {
    const PlaceBudget* least = tightest(budget);
    if (!least || least->heldBy.empty()) return Done{};
    std::vector<Id> places;
    for (const PlaceBudget& one : budget.places) {
      if (counts(one) && leftOf(one) == leftOf(*least) && one.heldBy == least->heldBy) {
        places.push_back(one.id);
      }
    }
    const std::set<Source> measured(least->heldBy.begin(), least->heldBy.end());
    ToleranceNetwork without = network;
    without.links.erase(std::remove_if(without.links.begin(), without.links.end(),
                                       [&](const TolerancedLink& link) {
                                         return link.toleranced &&
                                                link.source.kind == SourceKind::reading &&
                                                measured.count(link.source) != 0;
                                       }),
                        without.links.end());
    const Result<Budget> eased = budgetOf(part_, without, request);
    if (!eased) return eased.error();
    const PlaceBudget* then = tightest(*eased);
    ClosenessAdvice advice;
    advice.axis = axis_.machine;
    asPeopleCount(places);
    advice.places = std::move(places);
    advice.plusMinus = Length::ticks(leftOf(*least));
    advice.readings = least->heldBy;
    advice.eased =
        !then || (leftOf(*then) > leftOf(*least) && leftOf(*then) * 4 >= leftOf(*least) * 5);
    if (advice.eased && then) advice.then = Length::ticks(leftOf(*then));
    all.advice.push_back(std::move(advice));
    return Done{};
  }

  const Part& part_;
  const TableAxis& axis_;
  const SetupTable& table_;
  const std::set<Id>& shown_;
};

std::set<Id> shownIn(const SetupTable& table) {
  std::set<Id> ids;
  for (const TableRow& row : table.rows) ids.insert(row.id);
  for (const EdgeRow& edge : table.edges) ids.insert(edge.id);
  return ids;
}

}  // namespace

Result<Closeness> closenessOf(const WorkAt& work, const SetupTable& table) {
  const std::set<Id> shown = shownIn(table);
  Closeness all;
  for (const TableAxis* axis : {&work.x, &work.y}) {
    const Result<BudgetRequest> request = budgetRequest(work, axis->part.axis);
    if (!request) return request.error();
    const Result<BudgetNetwork> network = budgetNetwork(work, axis->part.axis);
    if (!network) return network.error();
    const Result<Done> added =
        ClosenessAlong(work.part, *axis, table, shown).add(*request, *network, all);
    if (!added) return added.error();
  }
  std::stable_sort(
      all.bands.begin(), all.bands.end(),
      [](const ClosenessBand& a, const ClosenessBand& b) { return a.plusMinus < b.plusMinus; });
  return all;
}

Result<std::optional<Closeness>> closenessOnSheet(const WorkAt& work, const SetupTable& table,
                                                  bool wanted) {
  if (!wanted && !work.machine.accuracy && !work.machine.finderError) {
    return std::optional<Closeness>();
  }
  Result<Closeness> all = closenessOf(work, table);
  if (!all) return all.error();
  if (!wanted) *all = Closeness{{}, {}, std::move(all->directChecks), {}};
  return std::optional<Closeness>(std::move(all).value());
}

}  // namespace inchwright
