#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/plan/table.h"

namespace inchwright {

/// The widest of what the rows of a table hold: widths when figures are 1 mm high.
struct RowExtents {
  double before = 0;  ///< a coordinate, from the left of its sign to the point
  double after = 0;   ///< and from there to its last figure
  double id = 0;
  double fraction = 0;  ///< of the print, with its letter; 0 when there is none
  double tickLabel = 0;
  std::size_t steps = 1;  ///< the most of any row, one at least
};

/// The steps that have a box to tick in each row: edges are broken in one go at the end, and have
/// one box below the rows.
std::vector<const HoleStep*> tickedSteps(const HolePlan& plan);

RowExtents extentsOf(const SetupTable& table, English english);

/// The word above a tick column: `SPOT`, `C'BORE`.
std::string tickLabel(Op op, English english);

}  // namespace inchwright
