#pragma once

#include <string>
#include <vector>

#include "core/kit/as_made.h"
#include "core/kit/kit_of_part.h"
#include "core/kit/ways_out.h"

namespace inchwright {

// Sentences about the whole kit, in UK English; lengths at a step, or finer where clearances ask
// for it.

/// `over` → `over size`, for a size; `cannot_tell` → `can't tell: a limit lies within the error`.
std::string verdictWords(Verdict verdict);

/// `eccentricBush` → `an eccentric bush`.
std::string wayWords(WayOut way);

/// A line a place, mate and gap, each with what was wanted and what was found.
std::vector<std::string> madeLines(const AsMade& made, const Step& step);

/// One of those lines: `Mate arbor: clearance 0.0005 to 0.0015, wanted 0.0005 to 0.0015; goes
/// together`.
std::string mateWords(const MateState& mate, const Step& step);
std::string gapWords(const GapState& gap, const Step& step);

/// Sizes found so far off that the figure is rather a slip, a line each.
/// `Plate, A: size 3.1477 to 3.1483, wanted 0.3125 to 0.3131; over size; so far off: is the …`.
std::vector<std::string> unlikelyLines(const std::vector<MadeRow>& rows, const Step& step);

/// What stands in the way of going together, a line each: what came out wrong with no way out
/// chosen, mates too tight, too loose or not to be
/// worked out, and gaps that may not keep to their limits at worst. Gaps that can't be added up are
/// told by `gapFaults`. Empty where all is well.
/// `Gap end shake: at worst -0.0110 to 0.0370, has to be 0.0015 to 0.0250; may not keep to it`.
std::vector<std::string> kitDoubtLines(const AsMade& made, const Step& step);

/// A heading a way and a line an effect. `a bush about the wanted centre (+1.0000, +0.7500): bore
/// 0.3125 to 0.3131 …`.
std::vector<std::string> waysOutLines(const Part& part, const std::vector<Way>& ways,
                                      const Step& step);

/// One thing a sheet says of the rest of the kit: a place, the size that no longer counts (struck
/// out), what counts instead, and the words to it.
struct KitLine {
  Id place;
  std::string struckOut;
  std::string instead;
  std::string words;
  bool mind = false;   ///< to be put right, or not to be had
  bool found = false;  ///< only tells what was measured, and that it is well

  bool operator==(const KitLine&) const = default;
};

/// `P: .3131/.3135 struck out, 0.3151 to 0.3155: to suit A of Click plate, which is 0.3145 to
/// 0.3151. Why: the bush was not turned yet`.
std::vector<KitLine> kitLines(const KitOfPart& kit, const Step& step);

/// That the parallels, clamps and pieces of the other hand's setup are not those of this one, where
/// that says some and this none: they can't be turned round unasked. Else empty.
std::string notCarriedOver(const Job& job, const Part& part, std::string_view setup);

/// For the cover: what came out wrong, a line each, and whether a way out was chosen.
std::vector<std::string> cameOutLines(const KitOfPart& kit, const Step& step);

}  // namespace inchwright
