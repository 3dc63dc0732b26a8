#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/tolerance.h"

namespace inchwright {

/// A hole and the shaft that goes into it, both of the same basic size, with their limits about it.
///
/// Exact: the tables' micrometres and hundredths of a thousandth of an inch are whole ticks.
/// To show limits in the other unit, round them inwards (`showLimitsInwards` in measure/limits.h).
struct Fit {
  std::string name;  ///< `H7/g6`, `RC4`
  Length size;       ///< basic
  Tolerance hole;
  Tolerance shaft;
  std::string source;

  /// Hole less shaft, on the diameter; negative where the shaft is the larger.
  Length leastClearance() const;
  Length greatestClearance() const;

  bool operator==(const Fit&) const = default;
};

/// A fit by its name for a basic size in either unit.
///
/// By ISO 286 as hole/shaft, such as `H7/g6` or `G7/h6`: grades 5 to 11, over 0 up to 120 mm.
/// By ANSI B4.1: `RC1` to `RC9`, `LC1` to `LC11`, `LT1` to `LT6`, `LN1` to `LN3`, `FN1` to `FN5`,
/// over 0 up to 1.19 in, RC and LC1 to LC9 up to 4.73 in, LN up to 19.69 in; capitals and a blank
/// before the number do not matter. Which rows come from where is in `source`; above 1.19 in all
/// but LN are from memory. Errors: `badText` when it is no name of a fit, `notFound` when the
/// tables lack it or do not have it for this size; the text says what there is.
Result<Fit> fitByName(std::string_view name, Length size);

/// The limits that a class of ISO 286 gives a hole (capital: `H7`) or a shaft (`g6`) of a size.
///
/// Worked out as the standard does: the fundamental deviation of the letter and the width of the
/// grade; for holes K, M, N up to grade 8 and P, R, S up to grade 7 with the difference to the next
/// finer grade. Sources: grades, and e f g h k m n p s up to 50 mm, as `iso286_grades` and
/// `iso286_limits` of ISO 286-1/-2 (three tables of grades agree; limits agree with JIS B
/// 0401:1999, keys S56 to S58); c, d, r and all sizes above 50 mm from memory. Errors: as
/// `fitByName`.
Result<Tolerance> limitsOfClass(std::string_view name, Length size);

}  // namespace inchwright
