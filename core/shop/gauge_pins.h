#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/measure/length.h"

namespace inchwright {

/// How far a gauge pin of a class may lie from its size, on the one side its sign says: `ZZ` up to
/// .825 in: 0.0002 in. Exact.
///
/// Classes XX, X, Y, Z, ZZ, in either case, up to 4.510 in. Source: gaugemakers' tolerances of ASME
/// B89.1.5, from memory; the row up to .825 in agrees with a second list, but for Y.
/// Errors: `badText` for another class, `notFound` for a size beyond the table or not above 0.
Result<Length> gaugePinTolerance(std::string_view pinClass, Length size);

}  // namespace inchwright
