#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/measure/length.h"

namespace inchwright {

/// Whose seats they are: socket head screws by the handbook's inch and metric tables (ASME B18.3),
/// DIN 974-1 for ISO 4762 heads. All from memory; most inch drills agree with a public shop
/// standard.
enum class SeatStandard { inchHead, metricHead, din974 };

/// A counterbore for the head of a screw, as the table prints it.
struct SeatOfScrew {
  SeatStandard standard = SeatStandard::inchHead;
  std::string_view screw;   ///< `#10`, `1/4`, `M6`
  std::string_view close;   ///< drill of the close hole: `#5`, `6.4 mm`; empty in DIN 974
  std::string_view normal;  ///< and of the normal one
  std::string_view seat;    ///< `7/16`, `11.25 mm`

  bool operator==(const SeatOfScrew&) const = default;
};

/// The rows, each standard by size.
std::span<const SeatOfScrew> seatsOfScrews();

/// Those whose close or normal hole is of this diameter: of 17/64 -> that of a 1/4 screw, seat
/// 7/16.
std::vector<SeatOfScrew> seatsAboutHole(Length diameter);

}  // namespace inchwright
