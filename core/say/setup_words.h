#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/english.h"
#include "core/plan/closeness.h"
#include "core/plan/table.h"

namespace inchwright {

/// Where zero is along an axis, in one phrase: `middle of L–R (stock)`, `at F + 1/4 away`.
std::string zeroWords(const TableAxis& axis, Unit shown, English english);

/// Both at once: `X0 middle of L–R (stock) · Y0 at F`.
std::string zeroLine(const SetupTable& table, English english);

/// The tip of a finder: `0.200`, with a unit when that is not the table's.
std::string tipWords(const FinderTip& tip, Unit shown);

/// What zero is along the axis of a touch-off.
std::string aimWords(const TouchOff& touch, Unit shown, English english);

/// One instruction for finding zero, with its preset: `Touch the left side (L, 1/16 still on it)
/// with the 0.200 tip: set X -0.1625`.
std::string touchWords(const TouchOff& touch, const TouchStep& step, const SetupTable& table,
                       English english);

/// What is to be seen at a check place: `over the middle of hole A`.
std::string lookWords(const CheckPlace& check);

std::string warningWords(const SetupWarning& warning, const SetupTable& table, English english);

/// `A to C along X: 1.000 ±.002, 0.9980 to 1.0020`.
std::string directCheckWords(const DirectCheck& check, const Part& part);

/// `Hold A and C to ±0.0010 along X, or measure 1.000 (A to C) on the part and hold all to ±0.005.`
std::string adviceWords(const ClosenessAdvice& advice, const Part& part, const Step& step);

/// All that is said of a setup's table, in one English. Names and notes stay as they were given.
struct SetupWords {
  struct Row {
    std::string size;  ///< as lettered with what is made: `Ø1/4 ream, through`
    std::string note;
  };
  struct Touch {
    std::string what;
    std::vector<std::string> steps;
  };

  std::string zero;
  std::vector<Row> rows;              ///< as in the table, and so are the others
  std::vector<std::string> unplaced;  ///< what would place each
  std::vector<Touch> touchOff;
  std::vector<std::string> checks;
  std::vector<std::string> warnings;
  std::vector<std::string> curves;  ///< one paragraph a round or arc to be cut
  std::vector<std::string> milled;  ///< where the cutter goes in slots and pockets, line by line
};

/// Requires: `table` is one of this part.
SetupWords setupWords(const Part& part, const SetupTable& table, English english = English::uk);

/// `X counts up to the right, Y counts up away from you`.
std::string countsWords(const SetupTable& table, English english);

}  // namespace inchwright
