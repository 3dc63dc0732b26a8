#pragma once

#include <string>

#include "core/base/english.h"
#include "core/solution/solution.h"

namespace inchwright {

/// `machine: xcounts is not known here; is x_counts meant?`
std::string misspeltText(const Misspelt& misspelt);

/// What stands in doubt, as a colleague would say it: `L–A–R: 3/8 + 1 3/16 makes 1 9/16, the print
/// says 1 1/2 from L to R: 1/16 too short; 1 3/16 from A to R may be 1 1/8`. Names are the user's
/// in both Englishes.
std::string doubtText(const Part& part, const Solution& solution, const Doubt& doubt,
                      English english = English::uk);
/// Of each doubt of a solution.
std::vector<std::string> doubtTexts(const Part& part, const Solution& solution,
                                    English english = English::uk);

/// What would place a loose place: `give its distance along X from L, or say what it is in line
/// with`.
std::string adviceText(const Loose& loose);

/// What joins one figure with another: `looks like 1 7/16`; empty for none.
std::string lookText(const Reason& reason);

/// Why a reading is suspected, by itself: `looks like 1 7/16; the tracing puts it at about 1 7/16`.
std::string suspicionText(const Part& part, const Suspect& suspect, English english = English::uk);

/// The same to be said right after what it would be: without naming that again.
std::string reasonText(const Part& part, const Suspect& suspect, English english = English::uk);

/// What it would be, as a change: `1 1/8`, or `from B to A` where its ends are swapped.
std::string wouldBeText(const Part& part, const Suspect& suspect);

/// Our own words in the other English; names of the part's features stay as they are.
std::string reworded(const Part& part, const std::string& text, English english);

/// A length as the print would letter it: `2 1/16`, with `mm` where it is in millimetres.
std::string spoken(const Rational& ticks, Unit unit);

}  // namespace inchwright
