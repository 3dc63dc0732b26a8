#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// What a line that leaves something out is taken to mean.
struct LineContext {
  Axis axis = Axis::x;     ///< of a reading whose ends do not settle it
  Unit unit = Unit::inch;  ///< of bare figures
  Face face = Face::top;   ///< features are cut from
  std::size_t setup = 0;   ///< `zero` and `stock` belong to; made when there is none
};

/// A feature as a line names it, and how many alike its callout speaks of (`1/8 DRILL 4 PLACES`):
/// 0 where it does not say. A ring or row holds its own number.
struct FeatureLine {
  Feature feature;
  int alike = 0;
  std::string question = {};  ///< what to look at again; it was read even so

  bool operator==(const FeatureLine&) const = default;
};

enum class LineDid { feature, reading, understanding, setup, removed, renamed, found };

struct LineOutcome {
  Part part;
  LineDid did = LineDid::reading;
  Id id;                                    ///< of the feature or reading made or changed
  std::string said;                         ///< what was understood: `r5: L to A along X, 3/8`
  std::string question = {};                ///< what to look at again; it was done even so
  std::optional<FeatureLine> feature = {};  ///< of a feature: as the line names it

  bool operator==(const LineOutcome&) const = default;
};

/// Does to a part what one line of text says; the part itself is left as it was.
///
/// A reading is its two ends and the figure: `L A 3/8`, with the axis in front where the ends do
/// not settle it (`x A B 1 3/16`), and an id of its own before that if wanted (`r7 x A B 1 3/16`);
/// Everything else begins with a word:
///
///     centres A C 5/8         angle A C 55             angle V 30
///     angle A C 55 against L clockwise                 square_off A V 3/8
///     radius M 3/8            diameter A 1/4           pcd G 2 1/2
///
///     edge L left             hole A 1/4 ream          hole B 3/16 deep 1/2
///     edge S x                hole C 10-32 tap         point P
///     slot S x 1/4 by 1       ring G 6 on 2 1/2 from 30 drill 1/8
///     row D x 5 holes pitch 9/16 drill 1/8             round U 3/8 about A left
///     in line y A B           midway y A F K           equal x A B C
///     symmetric x A B about C                          concentric A B
///     in line slanted A B C   midway both A B C        symmetric A B about V
///     equal spacing A B C     equal radius M W         tangent M W inside
///     parallel V L            square V L               on A B about V
///     way_round A B C clockwise                        beside A about V left
///     outside J L M 3/8       screwed J L M 1/4-20 UNC taper J L M large 1/2 angle 10
///     chamfer P M 1/16 x 45°  knurl J L M diamond      centre_drill P M #2
///     zero x middle L R stock                          zero y F
///     stock left 1/16         delete A                 rename A B
///     locate A mate B of Back plate                    locate A pair | assembly | suit |
///     coordinate found 1: A x 0.3752 y 0.7498 size 0.2503         (measured at the machine; see
///     found_line.h)
///
/// `stated` behind an understanding says that the print states it. Features may leave the id out,
/// and are read as prints letter them too: `hole A C'BORE 3/8 x 3/16 DEEP` (callout.h).
/// Errors: `badText` with the byte offset in `at`, `notFound`, and all that `checkPart` refuses.
Result<LineOutcome> applyLine(const Part& part, std::string_view line, const LineContext& context);

/// Whether it is one of the words above that a line may begin with: `delete`, `hole`.
bool beginsALine(std::string_view word);

/// The feature a kind's line makes, without its first word: `A 1/4 ream` for a hole, or as prints
/// letter it (`A C'BORE 3/8 x 3/16 DEEP`, see callout.h). The id is the next free one when the line
/// names none. Errors: `badText`, or `badRequest` where two meanings are equally good.
Result<FeatureLine> readFeatureLine(const Part& part, FeatureKind kind, std::string_view tail,
                                    const LineContext& context);

/// As above, of what is most likely a hole, where what it says may tell that it is something else:
/// `3 HOLES 3/32 ON 1 1/16 PCD` is a ring, `4 SPACES AT 1/2, 1/8 DRILL` a row, `3/16 SLOT 5/8 LG` a
/// slot, `R 3/8` a round, `L left` an edge. `3/16 x 5/8` stays a hole, 5/8 deep. What is none of
/// them is refused as a hole is.
Result<FeatureLine> readFeatureLine(const Part& part, std::string_view tail,
                                    const LineContext& context);

}  // namespace inchwright
