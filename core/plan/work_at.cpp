#include "core/plan/work_at.h"

namespace inchwright {
namespace {

// A step lettered in one unit makes an odd step in the other, so a change of unit takes its own.
Result<Step> stepFor(const Machine& machine, const TableOptions& options) {
  const Unit unit = options.unit.value_or(machine.unit);
  if (options.step) return readStep(*options.step, unit);
  if (unit == machine.unit) return readStep(machine.step, unit);
  return readStep(unit == Unit::inch ? "0.0005" : "0.005", unit);
}

Result<TableAxis> tableAxis(const PartAt& at, MachineAxis machine, SignedAxis along, int counts) {
  Result<std::optional<FoundZero>> zero = findZero(at, along.axis);
  if (!zero) return zero.error();
  return TableAxis{machine, along, counts, *std::move(zero)};
}

}  // namespace

std::string signedText(const Coordinate& coordinate) {
  return coordinate.text.starts_with('-') ? coordinate.text : "+" + coordinate.text;
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

const TableAxis* WorkAt::along(Axis axis) const {
  if (x.part.axis == axis) return &x;
  if (y.part.axis == axis) return &y;
  return nullptr;
}

Result<Coordinate> WorkAt::coordinate(const TableAxis& axis, const Position& position) const {
  const bool exact = position.isExact() && axis.zero && axis.zero->exact;
  return coordinateOf(axis.onReadout(position.ticks), exact, step);
}

Result<WorkAt> workAt(const Job& job, const Part& part, const Solution& solution,
                      const Setup& setup, const TableOptions& options) {
  const Result<Step> step = stepFor(job.machine, options);
  if (!step) return step.error();
  const PartAt at{part, solution, setup, job.machine};
  const MachineAxes axes = machineAxes(setup.face, setup.turn);
  const int xCounts = job.machine.xCounts == CountsX::right ? 1 : -1;
  const int yCounts = job.machine.yCounts == CountsY::away ? 1 : -1;
  Result<TableAxis> x = tableAxis(at, MachineAxis::x, axes.x, xCounts);
  if (!x) return x.error();
  Result<TableAxis> y = tableAxis(at, MachineAxis::y, axes.y, yCounts);
  if (!y) return y.error();
  return WorkAt{at, job, *step, axes, *std::move(x), *std::move(y)};
}

}  // namespace inchwright
