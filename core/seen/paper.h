#pragma once

#include "core/seen/plane.h"

namespace inchwright::seen {

/// How far ink covers each pixel, whatever the light on the paper.
struct Ink {
  Grey cover;
  bool lightOnDark = false;  ///< drawn white on blue, and turned round here
};

/// Tells ink from paper. The paper's tone at a place is the lightest near it, smoothed over about
/// half an inch of the sheet; ink is counted by how far it falls below that, the darkest tenth of
/// the ink being 255. `inch` is the sheet's inch in pixels, to within a half.
Ink inkOf(const Grey& grey, double inch, const Stop& stop = Stop());

}  // namespace inchwright::seen
