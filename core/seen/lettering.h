#pragma once

#include <vector>

#include "core/seen/parts.h"
#include "core/seen/strokes.h"

namespace inchwright::seen {

/// Parts that may be lettering and lie near one another.
struct Block {
  Box box;
  std::vector<int> parts;  ///< their indices in Lettering::parts, ascending
};

/// What on a print may be lettering.
struct Lettering {
  Grey cover;  ///< where it was looked for
  /// 1 where a long level line was taken out, 2 a plumb one; empty where none was.
  Grey ruled;
  Parts parts;
  std::vector<Block> blocks;
};

/// Looks for blocks of parts as large as characters. Small parts that lie along the `dashed`
/// lines are left out where `dashed` is not empty: they may be the dashes of those.
Lettering letteringOf(const Grey& cover, double inch, const Grey& dashed, const Stop& stop);

/// A cover without the long strokes, level and plumb, but for where something crosses them; where
/// they ran is put down in `ruled`.
Grey withoutLines(const Grey& cover, const std::vector<Stroke>& level,
                  const std::vector<Stroke>& plumb, double inch, Grey& ruled,
                  const Stop& stop = Stop());

/// The rows of a box that a line which was taken out ran along (its columns when `plumb`), counted
/// from the box's own edge: of each line its middle.
std::vector<int> rulesIn(const Lettering& from, const Box& box, bool plumb);

/// 1 where a chain of strokes longer than half an inch runs, over its gaps and a little beyond.
Grey alongLines(int width, int height, const std::vector<Chain>& level,
                const std::vector<Chain>& plumb, double inch, const Stop& stop = Stop());

/// The ink of some parts, with a pixel round them, as a cut of its own.
Grey inkOf(const Lettering& from, const std::vector<int>& parts, const Box& box);

}  // namespace inchwright::seen
