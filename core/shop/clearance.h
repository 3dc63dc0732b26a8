#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/shop/threads.h"

namespace inchwright {

/// The hole that a screw goes through without cutting a thread.
///
/// Sizes are those of the drill: how much a drill cuts over is not counted in. Exact.
struct ClearanceHole {
  std::string fit;  ///< `close`, `medium` …
  Thread screw;
  std::string drill;  ///< `H`, `17/64`, `3.4 mm`
  Length hole;
  std::string source;

  /// Hole less the screw's full outside diameter, on the diameter.
  Length clearance() const;

  bool operator==(const ClearanceHole&) const = default;
};

/// The clearance hole for a screw (as `threadNamed` reads it) by the name of the fit.
///
/// - Inch screws, by their outside diameter, #0 to 1 in: `close`, `normal` and `loose` of ASME
///   B18.2.8; `shop close` and `free` of a customary US shop chart, up to 1/2 in.
/// - Metric screws M1.6 to M16: `fine`, `medium` and `coarse` of ISO 273, also called `close`,
///   `normal` and `loose`.
/// - British Association 0 to 10: `clear`, by custom.
///
/// Capitals and blanks do not matter. Where a row comes from is in `source`; some of ASME's are
/// from memory and say so. Errors: as `threadNamed`; `badText` when it is no name of such a fit,
/// `notFound` when the tables lack it for this screw; the text says what there is.
Result<ClearanceHole> clearanceHole(std::string_view fit, std::string_view screw);

}  // namespace inchwright
