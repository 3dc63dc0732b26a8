#include "core/plan/check_places.h"

#include "core/geometry/point.h"
#include "core/plan/order_of_work.h"
#include "core/plan/table.h"

namespace inchwright {
namespace {

PlanePoint spotOf(const TableRow& row) {
  return {row.x.value.toMillimetres(), row.y.value.toMillimetres()};
}

CheckPlace lookAt(const TableRow& row) {
  CheckPlace check{row.x, row.y, CheckPlace::Look::overMiddle, row.id};
  check.kind = row.kind;
  check.whole = row.id == row.feature;
  return check;
}

/// Where an outer side stands now, on one axis of the table.
struct StockSide {
  Id id;
  TableSide side = TableSide::left;
  Coordinate at;
  bool hasStock = false;
};

// The outer side of the work that lies farthest from zero along a table axis.
Result<std::optional<StockSide>> farthestSide(const WorkAt& work, const TableAxis& axis) {
  std::optional<StockSide> farthest;
  for (const Feature& feature : work.part.features) {
    const std::optional<Side> side = work.sideOf(feature, axis.part.axis);
    const Position* position = side ? work.position(feature.id, axis.part.axis) : nullptr;
    const std::optional<TableSide> lies = side ? tableSideOf(*side, work.axes) : std::nullopt;
    if (!position || !lies || !axis.zero) continue;
    const Length beyond = work.stockBeyond(feature, axis.part.axis);
    const std::optional<Rational> now = position->ticks.plus(beyond.rational());
    const Result<Coordinate> at =
        coordinateOf(now ? axis.onReadout(*now) : std::nullopt, position->isExact(), work.step);
    if (!at) return at.error();
    const bool farther = !farthest || at->value.magnitude() > farthest->at.value.magnitude() ||
                         (at->value.magnitude() == farthest->at.value.magnitude() &&
                          standsBefore(feature.id, farthest->id));
    if (farther) farthest = StockSide{feature.id, *lies, *at, !beyond.isZero()};
  }
  return farthest;
}

Result<std::vector<CheckPlace>> namedPlaces(const WorkAt& work, const Coordinate& nought) {
  std::vector<CheckPlace> checks;
  for (const Id& place : work.setup.checks) {
    const Feature* feature = featureOfPlace(work.part, place);
    if (!feature) {
      return Error{
          ErrorCode::notFound, "a place to check, " + place + ", is not on the part", place, {}};
    }
    CheckPlace check{nought, nought, CheckPlace::Look::overMiddle, place};
    check.kind = feature->kind();
    check.whole = feature->id == place;
    if (feature->is<kind::Edge>()) check.look = CheckPlace::Look::overEdge;
    bool found = false;
    for (const TableAxis* axis : {&work.x, &work.y}) {
      const Position* position = work.position(place, axis->part.axis);
      if (!position || !axis->zero) continue;
      const Result<Coordinate> at = work.coordinate(*axis, *position);
      if (!at) return at.error();
      (axis->machine == MachineAxis::x ? check.x : check.y) = *at;
      found = true;
    }
    if (!found) {
      return Error{
          ErrorCode::unsolvable, "a place to check, " + place + ", is not placed", place, {}};
    }
    checks.push_back(std::move(check));
  }
  return checks;
}

CheckPlace zeroCheck(const WorkAt& work, const Coordinate& nought) {
  const auto on = [](const TableAxis& axis) {
    const ZeroAlong& asked = axis.zero->asked;
    return asked.middle.empty() && !asked.offset ? asked.at : Id();
  };
  CheckPlace check{nought, nought};
  const Id x = on(work.x), y = on(work.y);
  if (x.empty() || y.empty()) return check;
  check.look = x == y ? CheckPlace::Look::overZero : CheckPlace::Look::overCrossing;
  check.place = x;
  check.other = y;
  return check;
}

// The row farthest from `from`, of those that stand neither there nor at zero.
const TableRow* farthestRow(const std::vector<TableRow>& rows, PlanePoint from) {
  const TableRow* farthest = nullptr;
  for (const TableRow& row : rows) {
    const PlanePoint at = spotOf(row);
    if (row.disputed || at == PlanePoint{} || at == from) continue;
    if (!farthest || squareBetween(at, from) > squareBetween(spotOf(*farthest), from)) {
      farthest = &row;
    }
  }
  return farthest;
}

}  // namespace

Result<std::vector<CheckPlace>> checkPlaces(const WorkAt& work, const std::vector<TableRow>& rows) {
  const Result<Coordinate> nought = coordinateOf(Rational(0), true, work.step);
  if (!nought) return nought.error();
  if (!work.setup.checks.empty()) return namedPlaces(work, *nought);
  std::vector<CheckPlace> checks;
  if (!work.x.zero || !work.y.zero) return checks;
  checks.push_back(zeroCheck(work, *nought));

  const auto x = farthestSide(work, work.x);
  const auto y = farthestSide(work, work.y);
  if (!x) return x.error();
  if (!y) return y.error();
  if (*x && *y) {
    CheckPlace corner{(*x)->at, (*y)->at, CheckPlace::Look::corner, (*x)->id, (*y)->id};
    corner.sideX = (*x)->side;
    corner.sideY = (*y)->side;
    corner.ofStock = (*x)->hasStock || (*y)->hasStock;
    checks.push_back(std::move(corner));
  }
  const TableRow* first = farthestRow(rows, {});
  if (!first) return checks;
  checks.push_back(lookAt(*first));
  if (const TableRow* second = farthestRow(rows, spotOf(*first))) checks.push_back(lookAt(*second));
  return checks;
}

}  // namespace inchwright
