#include "core/plan/setup_frame.h"

namespace inchwright {
namespace {

Result<TableAxis> tableAxis(const Part& part, const Solution& solution, const Setup& setup,
                            SignedAxis along, bool alongX, int counts) {
  Result<std::optional<FoundZero>> zero = findZero(part, solution, setup, along.axis);
  if (!zero) return zero.error();
  return TableAxis{alongX, along, counts, *std::move(zero)};
}

}  // namespace

std::optional<Rational> TableAxis::onTable(const Rational& position) const {
  if (!zero) return std::nullopt;
  const std::optional<Rational> distance = position.minus(zero->ticks);
  if (!distance) return std::nullopt;
  return part.sign > 0 ? *distance : distance->negated();
}

std::optional<Rational> TableAxis::onReadout(const Rational& position) const {
  const std::optional<Rational> distance = onTable(position);
  if (!distance) return std::nullopt;
  return counts > 0 ? *distance : distance->negated();
}

const TableAxis* SetupFrame::along(Axis axis) const {
  if (x.part.axis == axis) return &x;
  if (y.part.axis == axis) return &y;
  return nullptr;
}

Result<SetupFrame> frameOf(const Part& part, const Solution& solution, const Setup& setup,
                           const Machine& machine) {
  SetupFrame frame;
  frame.axes = machineAxes(setup.face, setup.turn);
  const int xCounts = machine.xCounts == CountsX::right ? 1 : -1;
  const int yCounts = machine.yCounts == CountsY::away ? 1 : -1;
  Result<TableAxis> x = tableAxis(part, solution, setup, frame.axes.x, true, xCounts);
  if (!x) return x.error();
  Result<TableAxis> y = tableAxis(part, solution, setup, frame.axes.y, false, yCounts);
  if (!y) return y.error();
  frame.x = *std::move(x);
  frame.y = *std::move(y);
  return frame;
}

Result<Coordinate> coordinateOf(const std::optional<Rational>& ticks, bool exact,
                                const Step& step) {
  constexpr std::int64_t kLimit = std::int64_t{1} << 62;
  if (!ticks || *ticks >= Rational(kLimit) || *ticks <= Rational(-kLimit)) {
    return Error{ErrorCode::outOfRange, "a coordinate is beyond what can be held", {}, {}};
  }
  const Shown shown = showAtStep(*ticks, step);
  Coordinate coordinate;
  coordinate.text = shown.text;
  coordinate.value = nearestTick(*ticks).value_or(Length());
  coordinate.rounding = shown.error;
  coordinate.exact = exact && ticks->isWhole();
  return coordinate;
}

Result<Coordinate> coordinateOf(const TableAxis& axis, const Position& position, const Step& step) {
  const bool exact = position.isExact() && axis.zero && axis.zero->exact;
  return coordinateOf(axis.onReadout(position.ticks), exact, step);
}

}  // namespace inchwright
