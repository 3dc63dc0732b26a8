#pragma once

#include <optional>
#include <string_view>

#include "core/base/rational.h"
#include "core/shop/threads.h"

namespace inchwright {

/// What full thread takes from the outside diameter to that of the hole, in pitches: 1.299038 for
/// unified and metric threads (60°, the old basic depth, by which tap drills are customarily
/// reckoned), 1.280654 for 55° ones (BSW, BSF, ME, brass), 1.2 for British Association (47½°).
/// ASME B1.1, ISO 68-1, BS 84, BS 93. Exact as printed.
Rational fullDepthInPitches(ThreadSeries series);

/// How deep the thread of a screw is cut, on one side, in pitches: .613435 for unified and metric
/// threads (a crest of p/8 and a rounded root), .640327 for 55° ones, .6 for British Association.
/// Sources as above. 1/4-20 UNC → .0307 in.
Rational screwDepthInPitches(ThreadSeries series);

/// How much of full thread a hole of this size leaves, in hundredths of a percent, rounded: 1/4-20
/// UNC in #7 is 7544. 0 or less where the hole is as large as the screw.
int threadPercent(const Thread& thread, Length drill);

/// How a tap begins to cut. What the UK and the US call a plug tap differs, so it is not stored.
enum class TapLead { taper, second, bottoming };
std::string_view nameOf(TapLead lead);  ///< `taper`, `second`, `bottoming`
std::optional<TapLead> tapLeadNamed(std::string_view name);

/// How many threads of a tap's end do not cut full thread, at most: 10, 5, 2 (ASME B94.9, from
/// memory).
int threadsOfLead(TapLead lead);
/// The length of that, to the nearest tick.
Length leadLength(const Thread& thread, TapLead lead);

}  // namespace inchwright
