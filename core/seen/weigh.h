#pragma once

#include <vector>

#include "core/seen/figures_of_spans.h"
#include "core/seen/offer.h"

namespace inchwright::seen {

/// A distance on the picture as evidence: a standard deviation of 0.010 in on the sheet.
struct Drawn {
  double distance = 0;  ///< inches of the face, or degrees
  double sigma = 0;     ///< likewise
};

/// What was made of the lettering near a line.
struct Weighed {
  std::vector<Candidate> candidates;  ///< the likeliest first, at most six
  Witnesses witnesses;                ///< of the first
  Box box;                            ///< where the first is lettered
  double far = 0;  ///< how far that is from where it should be, inches of the sheet
};

/// Weighs what the lettering near a line says against its drawn distance. Where glyphs are plain
/// they come first even when the distance speaks against them, so that a misprint is never put
/// right here. `closing` are the lengths that would close with what has been confirmed.
Weighed weigh(const std::vector<NearFigure>& near, const Drawn& drawn, bool angle, Unit unit,
              const std::vector<Length>& closing);

}  // namespace inchwright::seen
