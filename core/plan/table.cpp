#include "core/plan/table.h"

#include <algorithm>

#include "core/plan/check_places.h"
#include "core/plan/order_of_work.h"
#include "core/plan/setup_frame.h"
#include "core/plan/table_rows.h"
#include "core/plan/touch_off.h"

namespace inchwright {
namespace {

// A step lettered in one unit makes an odd step in the other, so a change of unit takes its own.
Result<Step> stepFor(const Machine& machine, const TableOptions& options) {
  const Unit unit = options.unit.value_or(machine.unit);
  if (options.step) return readStep(*options.step, unit);
  if (unit == machine.unit) return readStep(machine.step, unit);
  return readStep(unit == Unit::inch ? "0.0005" : "0.005", unit);
}

Result<std::vector<EdgeRow>> edgeRows(const Part& part, const Solution& solution,
                                      const Setup& setup, const SetupFrame& frame,
                                      const Step& step) {
  std::vector<EdgeRow> rows;
  for (const Feature& feature : part.features) {
    for (const TableAxis* axis : {&frame.x, &frame.y}) {
      const Axis along = axis->part.axis;
      const bool edge = feature.is(FeatureKind::edge) && axisOf(feature) == along;
      const std::optional<Side> side = outerSideOf(feature, along);
      const Position* position = placedPosition(solution, feature.id, along);
      if ((!edge && !side) || !position || !axis->zero) continue;
      const Result<Coordinate> value = coordinateOf(*axis, *position, step);
      if (!value) return value.error();
      EdgeRow row;
      row.id = feature.id;
      row.side = side;
      row.alongX = axis->alongX;
      row.value = *value;
      row.stockLeft = side ? setup.stockOn(*side) : Length();
      row.disputed = position->disputed || axis->zero->disputed;
      rows.push_back(std::move(row));
    }
  }
  std::sort(rows.begin(), rows.end(), [](const EdgeRow& a, const EdgeRow& b) {
    if (a.alongX != b.alongX) return a.alongX;
    if (a.value.value != b.value.value) return a.value.value < b.value.value;
    return standsBefore(a.id, b.id);
  });
  return rows;
}

void warnOfZero(const TableAxis& axis, const Part& part, const Setup& setup, Unit unit,
                std::vector<std::string>& warnings) {
  const std::string letter(1, axis.letter());
  if (!axis.zero) {
    warnings.push_back(letter + "0 is nowhere: nothing is placed along the part's " +
                       std::string(nameOf(axis.part.axis)));
    return;
  }
  const FoundZero& zero = *axis.zero;
  if (zero.assumed) {
    warnings.push_back("the setup gives no " + letter + "0: it is taken " + zeroPhrase(axis, unit));
  }
  if (zero.disputed) {
    warnings.push_back(letter + "0 rests on a figure in dispute, and every " + letter + " with it");
  }
  if (zero.asked.ofStock && zero.asked.middle.empty()) {
    warnings.push_back(letter + "0 is on " + zero.asked.at +
                       " as finished: `of stock` has a meaning for a middle only");
  }
  if (!zero.stockShift.isZero()) {
    const Rational shift = zero.stockShift.sign() < 0 ? zero.stockShift.negated() : zero.stockShift;
    warnings.push_back("the middle of the stock is not the middle of the part along " + letter +
                       ": " + writePlain(nearestTick(shift).value_or(Length()), unit) + " apart; " +
                       letter + "0 is the middle of the " +
                       (zero.asked.ofStock ? "stock" : "finished part"));
  }
  if (part.quantity > 1 && zero.asked.middle.size() == 2 && setup.stop &&
      axisOf(*setup.stop) == axis.part.axis) {
    warnings.push_back(letter +
                       "0 is a middle, but with a stop zero repeats from the stop: find "
                       "it anew for a piece of another length");
  }
}

std::vector<std::string> warningsOf(const SetupFrame& frame, const Part& part, const Setup& setup,
                                    const FinderTip& tip, const Step& step) {
  std::vector<std::string> warnings;
  warnOfZero(frame.x, part, setup, step.unit, warnings);
  warnOfZero(frame.y, part, setup, step.unit, warnings);
  if (tip.assumed) {
    warnings.push_back("the machine names no finder: a " + tip.text +
                       " tip is assumed in the presets");
  }
  return warnings;
}

std::string zeroLine(const SetupFrame& frame, Unit unit) {
  return "X0 " + zeroPhrase(frame.x, unit) + " · Y0 " + zeroPhrase(frame.y, unit);
}

}  // namespace

std::string signedText(const Coordinate& coordinate) {
  return coordinate.text.starts_with('-') ? coordinate.text : "+" + coordinate.text;
}

Result<SetupTable> makeTable(const Job& job, const Part& part, const Solution& solution,
                             const Setup& setup, const TableOptions& options) {
  const Result<Step> step = stepFor(job.machine, options);
  if (!step) return step.error();
  const Result<SetupFrame> frame = frameOf(part, solution, setup, job.machine);
  if (!frame) return frame.error();
  const FinderTip tip = finderTip(job.machine, step->unit);

  SetupTable table;
  table.part = part.name;
  table.setup = setup.name;
  table.face = setup.face;
  table.turn = setup.turn;
  table.step = *step;
  table.xCountsRight = job.machine.xCounts == CountsX::right;
  table.yCountsAway = job.machine.yCounts == CountsY::away;
  table.zero = zeroLine(*frame, step->unit);

  Result<RowsFound> rows = tableRows(part, solution, setup, *frame, *step, job.unit);
  if (!rows) return rows.error();
  table.rows = std::move(rows->rows);
  table.unplaced = std::move(rows->unplaced);
  Result<std::vector<EdgeRow>> edges = edgeRows(part, solution, setup, *frame, *step);
  if (!edges) return edges.error();
  table.edges = *std::move(edges);
  Result<std::vector<TouchOff>> touchOff = touchOffs(part, solution, setup, *frame, tip, *step);
  if (!touchOff) return touchOff.error();
  table.touchOff = *std::move(touchOff);
  Result<std::vector<CheckPlace>> checks =
      checkPlaces(part, solution, setup, *frame, table.rows, *step);
  if (!checks) return checks.error();
  table.checks = *std::move(checks);
  table.warnings = warningsOf(*frame, part, setup, tip, *step);
  return table;
}

Setup defaultSetup(const Part& part, const Solution& solution) {
  Setup setup;
  setup.name = "1";
  for (const Axis axis : axesIn(setup.face)) {
    if (std::optional<ZeroAlong> zero = customaryZero(part, solution, axis)) {
      setup.zero.push_back(*std::move(zero));
    }
  }
  return setup;
}

}  // namespace inchwright
