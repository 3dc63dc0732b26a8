#include "core/plan/table.h"

#include <algorithm>

#include "core/plan/order_of_work.h"
#include "core/plan/setup_warnings.h"
#include "core/plan/table_rows.h"

namespace inchwright {
namespace {

Result<std::vector<EdgeRow>> edgeRows(const WorkAt& work) {
  std::vector<EdgeRow> rows;
  for (const Feature& feature : work.part.features) {
    for (const TableAxis* axis : {&work.x, &work.y}) {
      const Axis along = axis->part.axis;
      const bool edge = feature.is<kind::Edge>() && axisOf(feature) == along;
      const std::optional<Side> side = outerSideOf(feature, along);
      if ((!edge && !side) || !axis->zero) continue;
      const Position* position = work.position(feature.id, along);
      if (!position) continue;
      const Result<Coordinate> value = work.coordinate(*axis, *position);
      if (!value) return value.error();
      EdgeRow row;
      row.id = feature.id;
      row.side = side;
      row.axis = axis->machine;
      row.value = *value;
      if (!work.stockBeyond(feature, along).isZero()) {
        row.stock = work.setup.stockLettered(*work.sideOf(feature, along));
      }
      row.disputed = position->disputed || axis->zero->disputed;
      rows.push_back(std::move(row));
    }
  }
  std::sort(rows.begin(), rows.end(), [](const EdgeRow& a, const EdgeRow& b) {
    if (a.axis != b.axis) return a.axis < b.axis;
    if (a.value.value != b.value.value) return a.value.value < b.value.value;
    return standsBefore(a.id, b.id);
  });
  return rows;
}

}  // namespace

Result<SetupTable> tableOf(const WorkAt& work) {
  SetupTable table;
  table.part = work.part.name;
  table.setup = work.setup.name;
  table.face = work.setup.face;
  table.turn = work.setup.turn;
  table.step = work.step;
  table.x = work.x;
  table.y = work.y;
  table.tip = finderTip(work.machine, work.step.unit);

  Result<RowsFound> rows = tableRows(work);
  if (!rows) return rows.error();
  table.rows = std::move(rows->rows);
  table.unplaced = std::move(rows->unplaced);
  Result<std::vector<EdgeRow>> edges = edgeRows(work);
  if (!edges) return edges.error();
  table.edges = *std::move(edges);
  Result<std::vector<TouchOff>> touchOff = touchOffs(work, table.tip);
  if (!touchOff) return touchOff.error();
  table.touchOff = *std::move(touchOff);
  Result<std::vector<CheckPlace>> checks = checkPlaces(work, table.rows);
  if (!checks) return checks.error();
  table.checks = *std::move(checks);
  table.warnings = setupWarnings(work, table.tip);
  table.curves = curvesAt(work);
  table.milled = milledCuts(work);
  return table;
}

Result<SetupTable> makeTable(const Job& job, const Part& part, const Solution& solution,
                             const Setup& setup, const TableOptions& options) {
  const Result<WorkAt> work = workAt(job, part, solution, setup, options);
  if (!work) return work.error();
  return tableOf(*work);
}

Setup defaultSetup(const Part& part, const Solution& solution) {
  Setup setup;
  setup.name = "1";
  if (part.turned) {
    setup.chucked = Chucked{};
    return setup;
  }
  for (const Axis axis : axesIn(setup.face)) {
    if (std::optional<ZeroAlong> zero = customaryZero(part, solution, axis)) {
      setup.zero.push_back(*std::move(zero));
    }
  }
  return setup;
}

}  // namespace inchwright
