#pragma once

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

enum class LineDid { feature, reading, understanding, setup, removed, renamed };

struct LineOutcome {
  Part part;
  LineDid did = LineDid::reading;
  Id id;             ///< of the feature or reading made or changed
  std::string said;  ///< what was understood: `r5: L to A along X, 3/8`

  bool operator==(const LineOutcome&) const = default;
};

/// Does to a part what one line of text says; the part itself is left as it was.
///
/// A reading is its two ends and the figure: `L A 3/8`, with the axis in front where the ends do
/// not settle it (`x A B 1 3/16`), and an id of its own before that if wanted (`r7 x A B 1 3/16`);
/// `centres A C 5/8`, `angle A C 55`. Everything else begins with a word:
///
///     edge L left             hole A 1/4 ream          hole B 3/16 deep 1/2
///     edge S x                hole C 10-32 tap         point P
///     slot S x 1/4 by 1       ring G 6 on 2 1/2 from 30 drill 1/8
///     row D x 5 holes pitch 9/16 drill 1/8             round U 3/8 about A left
///     in line y A B           midway y A F K           equal x A B C
///     symmetric x A B about C                          concentric A B
///     zero x middle L R stock                          zero y F
///     stock left 1/16         delete A                 rename A B
///
/// `stated` behind an understanding says that the print states it. Features may leave the id out.
/// Errors: `badText` with the byte offset in `at`, `notFound`, and all that `checkPart` refuses.
Result<LineOutcome> applyLine(const Part& part, std::string_view line, const LineContext& context);

/// The features a kind's line makes, without its first word: `A 1/4 ream` for a hole. The id is the
/// next free one when the line names none.
Result<Feature> readFeatureLine(const Part& part, FeatureKind kind, std::string_view tail,
                                const LineContext& context);

}  // namespace inchwright
