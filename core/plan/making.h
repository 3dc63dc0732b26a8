#pragma once

#include <string>
#include <vector>

#include "core/measure/length.h"
#include "core/part/feature.h"
#include "core/plan/table.h"

namespace inchwright {

/// What a row's feature is, how it is made, and where that stands in the order of work.
struct Making {
  std::string size;  ///< `Ø1/4 ream, through`
  std::vector<MakingStep> steps;
  std::vector<std::string> notes;
  /// The kind of work, in the order in which it is done: marked points, drilled holes (with their
  /// seats), bored, reamed, tapped, slots. A hole is drilled all over before the first reamer is
  /// fitted, and tapped last, when the chips are out of the way.
  int rank = 0;
  /// The diameter that orders the holes of a rank: that of the first drill, smallest first.
  Length first;
  std::string run;  ///< the run of tools by name; rows with the same run are worked together
};

/// Never fails: what can't be found in the tables is made "to size" and noted. Inch holes are
/// drilled from fraction, number and letter drills, metric ones from metric drills, tapped ones as
/// the table of threads says. `shown` is the unit of the table: figures in the other unit name
/// theirs.
Making makingOf(const Feature& feature, Unit shown);

/// A figure as lettered, without a diameter sign of its own; names its unit when that is not
/// `shown`.
std::string figureText(const Lettered& figure, Unit shown);

}  // namespace inchwright
