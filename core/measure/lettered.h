#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/tolerance.h"

namespace inchwright {

/// How a figure is written on the print. It says how close the print wants it: a fraction, two
/// places and three places each take their own general tolerance.
enum class Lettering {
  fraction,     ///< `1 3/16`, also a whole number of inches such as `2`
  decimal,      ///< `.375`, with `places` figures after the point
  millimetres,  ///< any figure in millimetres
};

/// What stands before or behind the figure.
enum class SizeSymbol { none, radius, diameter };

/// Asked where a count times a size may say how many places: `2x1/2`, or `4 x 1/4` for a diameter.
inline constexpr const char* kPlacesOrProduct =
    "taken as a product: does it say how many places instead?";

/// One dimension as lettered on a print, with what it means.
struct Lettered {
  std::string text;  ///< as written, unchanged
  /// The nominal. For limits such as `.4995/.5005` it is their middle.
  Length value;
  /// False only where a division in the text did not come out at a whole tick.
  bool exact = true;
  Unit unit = Unit::inch;  ///< the unit the figure is written in
  Lettering lettering = Lettering::fraction;
  int places = 0;  ///< figures after the point when `lettering` is decimal or millimetres
  /// The tolerance lettered with the figure; empty where the title block's general one applies.
  std::optional<Tolerance> tolerance;
  bool reference = false;  ///< in brackets, or marked REF
  bool basic = false;      ///< marked BSC or BASIC: exact by intent, no general tolerance
  bool centres = false;    ///< marked CRS, C/C: from centre to centre
  SizeSymbol symbol = SizeSymbol::none;
  /// Holds a product, as `3 x 9/16`: in the place of a diameter or radius, 3 may be places.
  bool multiplied = false;
  /// What a careful reader would ask, such as a denominator that is no power of two.
  std::vector<std::string> questions;

  bool operator==(const Lettered&) const = default;
};

struct ReadingOptions {
  /// The unit of a figure that names none: the print's.
  Unit bareUnit = Unit::inch;
};

/// Reads one length as prints and people write it: fractions in every customary form (Unicode ones
/// too), decimals with point or comma, feet and inches, millimetres, thou, sums, products and
/// quotients, brackets, tolerances, limits, and the symbols for radius, diameter, reference, basic.
///
/// Exact: the value is the lettered one to the tick; where a division does not come out, it is
/// rounded once to the nearest tick, ties away from zero, and `exact` is false.
/// Errors: `badText` or `outOfRange`, with the byte offset of the fault in `at`. Never guesses.
Result<Lettered> readLength(std::string_view text, const ReadingOptions& options = {});

}  // namespace inchwright
