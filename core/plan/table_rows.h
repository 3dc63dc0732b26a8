#pragma once

#include <vector>

#include "core/plan/table.h"

namespace inchwright {

/// The rows of a setup's face in cutting order, and the places of it that have no coordinates.
struct RowsFound {
  std::vector<TableRow> rows;
  std::vector<Loose> unplaced;
};

/// Whether the places of a feature that are driven to make rows in a setup of that face.
bool makesRows(const Feature& feature, Face face);

/// A hole, each hole of a ring or row, the ends of a slot and a point make rows. Rows are grouped
/// by the run of tools of their plans; groups stand in the order of their last kind of work, then
/// by their first drill, then by the tools of the run; inside a group the way from zero is short.
/// A, drilled 1/4, and B and C, reamed 3/16: A first, then B and C as one group.
/// Errors: `outOfRange`.
Result<RowsFound> tableRows(const WorkAt& work);

}  // namespace inchwright
