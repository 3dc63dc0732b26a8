#include "core/plan/check_places.h"

#include "core/plan/order_of_work.h"

namespace inchwright {
namespace {

double squareBetween(const TableRow& a, const TableRow& b) {
  const double dx = a.x.value.toMillimetres() - b.x.value.toMillimetres();
  const double dy = a.y.value.toMillimetres() - b.y.value.toMillimetres();
  return dx * dx + dy * dy;
}

std::string rowWords(const TableRow& row) {
  return "over the middle of " + std::string(nameOf(row.kind)) + " " + row.id;
}

/// Where an outer side stands now, on one axis of the table.
struct StockSide {
  Id id;
  TableSide side = TableSide::left;
  Coordinate at;
  bool hasStock = false;
};

// The outer side of the work that lies farthest from zero along a table axis.
Result<std::optional<StockSide>> farthestSide(const Part& part, const Solution& solution,
                                              const Setup& setup, const SetupFrame& frame,
                                              const TableAxis& axis, const Step& step) {
  std::optional<StockSide> farthest;
  for (const Feature& feature : part.features) {
    const std::optional<Side> side = outerSideOf(feature, axis.part.axis);
    const Position* position =
        side ? placedPosition(solution, feature.id, axis.part.axis) : nullptr;
    const std::optional<TableSide> lies = side ? tableSideOf(*side, frame.axes) : std::nullopt;
    if (!position || !lies || !axis.zero) continue;
    const Length beyond = stockBeyond(setup, feature, axis.part.axis);
    const std::optional<Rational> now = position->ticks.plus(beyond.rational());
    const Result<Coordinate> at =
        coordinateOf(now ? axis.onReadout(*now) : std::nullopt, position->isExact(), step);
    if (!at) return at.error();
    const bool farther = !farthest || at->value.magnitude() > farthest->at.value.magnitude() ||
                         (at->value.magnitude() == farthest->at.value.magnitude() &&
                          standsBefore(feature.id, farthest->id));
    if (farther) farthest = StockSide{feature.id, *lies, *at, !beyond.isZero()};
  }
  return farthest;
}

Result<std::vector<CheckPlace>> namedPlaces(const Part& part, const Solution& solution,
                                            const Setup& setup, const SetupFrame& frame,
                                            const Step& step) {
  std::vector<CheckPlace> checks;
  for (const Id& place : setup.checks) {
    const Feature* feature = featureOfPlace(part, place);
    if (!feature) {
      return Error{
          ErrorCode::notFound, "a place to check, " + place + ", is not on the part", place, {}};
    }
    CheckPlace check;
    bool found = false;
    for (const TableAxis* axis : {&frame.x, &frame.y}) {
      const Position* position = placedPosition(solution, place, axis->part.axis);
      const Result<Coordinate> at = position && axis->zero ? coordinateOf(*axis, *position, step)
                                                           : coordinateOf(Rational(0), true, step);
      if (!at) return at.error();
      (axis->alongX ? check.x : check.y) = *at;
      found = found || (position && axis->zero);
    }
    if (!found) {
      return Error{
          ErrorCode::unsolvable, "a place to check, " + place + ", is not placed", place, {}};
    }
    const bool edge = feature->is(FeatureKind::edge);
    check.look = edge ? "spindle over the finished edge " + place
                      : "over the middle of " + std::string(nameOf(feature->kind())) + " " + place;
    checks.push_back(std::move(check));
  }
  return checks;
}

std::string zeroLook(const SetupFrame& frame) {
  const auto side = [](const TableAxis& axis) {
    return axis.zero && axis.zero->asked.middle.empty() && !axis.zero->asked.offset
               ? axis.zero->asked.at
               : Id();
  };
  const Id x = side(frame.x), y = side(frame.y);
  if (!x.empty() && x == y) return "zero: over the middle of " + x;
  if (!x.empty() && !y.empty()) return "zero: spindle over where " + x + " and " + y + " cross";
  return "zero: the readout shows 0 and 0";
}

}  // namespace

Result<std::vector<CheckPlace>> checkPlaces(const Part& part, const Solution& solution,
                                            const Setup& setup, const SetupFrame& frame,
                                            const std::vector<TableRow>& rows, const Step& step) {
  if (!setup.checks.empty()) return namedPlaces(part, solution, setup, frame, step);
  std::vector<CheckPlace> checks;
  if (!frame.x.zero || !frame.y.zero) return checks;
  const Result<Coordinate> nought = coordinateOf(Rational(0), true, step);
  if (!nought) return nought.error();
  checks.push_back({*nought, *nought, zeroLook(frame)});

  const auto x = farthestSide(part, solution, setup, frame, frame.x, step);
  const auto y = farthestSide(part, solution, setup, frame, frame.y, step);
  if (!x) return x.error();
  if (!y) return y.error();
  if (*x && *y) {
    const bool stock = (*x)->hasStock || (*y)->hasStock;
    std::string look = "spindle over the " + std::string(nameOf((*y)->side)) + " " +
                       std::string(nameOf((*x)->side)) + " corner" + (stock ? " of the stock" : "");
    checks.push_back({(*x)->at, (*y)->at, look + " (" + (*x)->id + ", " + (*y)->id + ")"});
  }

  TableRow zeroRow;
  const TableRow* first = nullptr;
  for (const TableRow& row : rows) {
    if (row.disputed || squareBetween(row, zeroRow) == 0) continue;
    if (!first || squareBetween(row, zeroRow) > squareBetween(*first, zeroRow)) first = &row;
  }
  if (!first) return checks;
  checks.push_back({first->x, first->y, rowWords(*first)});
  const TableRow* second = nullptr;
  for (const TableRow& row : rows) {
    if (row.disputed || squareBetween(row, zeroRow) == 0 || squareBetween(row, *first) == 0)
      continue;
    if (!second || squareBetween(row, *first) > squareBetween(*second, *first)) second = &row;
  }
  if (second) checks.push_back({second->x, second->y, rowWords(*second)});
  return checks;
}

}  // namespace inchwright
