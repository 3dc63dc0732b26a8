#pragma once

#include "core/base/result.h"
#include "core/seen/ends.h"
#include "core/seen/lettering.h"
#include "core/seen/squared.h"

namespace inchwright::seen {

/// A print squared up, with its ink, lines and lettering told apart.
struct LookedAt {
  Squared squared;      ///< its grey is given up once the ink is known
  double capitals = 0;  ///< their height in pixels of the raster; 0 where there is no lettering
  double inch = 0;      ///< the sheet's, in pixels of the raster
  bool lightOnDark = false;
  View level;
  View plumb;
  Lettering whole;  ///< as it stands
  Lettering bare;   ///< without long lines and dashes
};

/// Level lines of a cover; its `plumbs` are left to whoever has the other view. `inch` as in View.
View viewOf(Grey cover, double inch, const Stop& stop = Stop());

/// Looks a picture over. `capitals`: their height in inches of the face, or 0 to find it out.
/// Errors: `badRequest` as `offer`; `notFound` when stopped.
Result<LookedAt> lookAt(const GreyPicture& picture, const Homography& pixelToInches,
                        double capitals, const Nets& nets, const Stop& stop);

}  // namespace inchwright::seen
