#pragma once

#include <vector>

#include "core/seen/circles.h"
#include "core/seen/ends.h"
#include "core/seen/joins.h"
#include "core/seen/offers.h"
#include "core/seen/rounds.h"
#include "core/seen/squared.h"

namespace inchwright::seen {

/// One of a print's views: a drawn outline.
struct ViewBox {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;  ///< pixels

  bool holds(double x, double y, double margin) const {
    return x >= x0 - margin && x <= x1 + margin && y >= y0 - margin && y <= y1 + margin;
  }
};

/// The outlines on a print, and the thick strokes that make them.
struct Outlines {
  std::vector<ViewBox> views;  ///< the first is the one the face's zero is nearest to
  struct Side {
    Stroke stroke;  ///< of its view: x runs down for a plumb one
    bool plumb = false;
    int view = 0;
    double whole = 0;  ///< how much of it is drawn, and as thick as an outline, 0 … 1
    /// Its first end meets another side of its outline, or a plain round, slanted or curved side
    /// between it and that.
    bool cornerFrom = false;
    bool cornerPast = false;  ///< and its last
  };
  std::vector<Side> sides;
  std::vector<Rounding> rounds;  ///< of corners; what it counts strokes by means nothing here
  std::vector<Join> joins;       ///< slanted and curved sides; likewise
};

/// Thick strokes that hang together are an outline, unless they frame the sheet or the title block,
/// are the rims of circles or no larger than lettering. An outline within another is of its view.
Outlines outlinesOf(const View& level, const View& plumb, const std::vector<Circle>& circles,
                    const Frame& frame, const Stop& stop = Stop());

/// Whether a circle is a hole: it has a centre cross, which runs out over the rim of a small one.
bool isHole(const Circle& circle, double inch);

/// Holes, edges, rounds, lines and arcs.
std::vector<FeatureOffer> featuresOf(const Outlines& outlines, const std::vector<Circle>& circles,
                                     const Frame& frame, double inch);

/// The view a place is in or nearest to.
int viewAt(const Outlines& outlines, double x, double y);

}  // namespace inchwright::seen
