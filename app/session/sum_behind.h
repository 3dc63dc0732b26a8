#pragma once

#include <QString>
#include <vector>

#include "core/base/result.h"
#include "core/part/feature.h"
#include "core/plan/machine_axes.h"

namespace inchwright::app {

class Desk;

/// One line of a sum: what is added, and what it makes so far.
struct SumLine {
  QString text;            ///< `L to A  7/16  makes 7/16`
  Id reading;              ///< empty where it is no reading
  std::vector<Id> places;  ///< that it joins
};

/// The sum behind a coordinate on my sheet, reading by reading from zero.
struct SumBehind {
  QString title;  ///< `C, X: 1.3125`
  QString zero;   ///< where it begins: `zero is half way between L and R`
  std::vector<SumLine> lines;
  QString remark;  ///< where the print says something else as well; empty when it does not
};

/// The sum behind the X or Y of a place in the current setup. Errors: `notFound` when my sheet has
/// no row of it; `unsolvable` when no readings join it to the zero.
Result<SumBehind> sumBehind(const Desk& desk, const Id& place, MachineAxis axis);

}  // namespace inchwright::app
