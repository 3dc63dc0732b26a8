#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/lettered.h"
#include "core/suspect/suspect.h"

namespace inchwright {

/// How easily a print that says one figure is read as another.
struct Resemblance {
  /// −log of the probability, in nats, up to a constant: about 1 for figures that differ by one
  /// look-alike digit, `kNoResemblance` where nothing but chance joins them.
  double cost = 0;
  Reason reason = {};  ///< none when nothing joins them
};

inline constexpr double kNoResemblance = 8.0;

/// Weighs that a figure lettered as `seen` truly says `would`. The costs are our own judgement of
/// how figures get confused (similar digits, a dropped or added figure, point or whole inch, half
/// for full, swapped figures, neighbouring denominators); no source gives frequencies. Requires:
/// `would` is above 0. Cost: some microseconds.
Resemblance resemblance(const Lettered& seen, Length would);

/// The length as this print would letter it in that reading's place: a fraction for a fraction, a
/// decimal with the same number of places (more when it needs them) for a decimal. The figure only,
/// without tolerance, brackets or symbol.
std::string letteredLike(const Lettered& seen, Length would);

/// The length in units of the last of so many decimal places; empty when it does not come out
/// there.
std::optional<std::int64_t> decimalCount(Length length, Unit unit, int places);

/// For decimals and millimetres: every length whose figure differs by one digit, by two neighbours
/// swapped or by the place of the point. Sorted, without `seen.value` itself.
std::vector<Length> decimalNeighbours(const Lettered& seen);

}  // namespace inchwright
