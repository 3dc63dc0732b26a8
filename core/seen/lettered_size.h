#pragma once

#include "core/seen/net.h"
#include "core/seen/plane.h"

namespace inchwright::seen {

/// Capitals are taken to be an eighth of an inch high: the sheet's inch follows from them.
inline constexpr double kCapital = 0.125;

/// How high a print's capitals and whole figures are, in pixels: the greatest height that many
/// plain letters share; the figures of fractions are smaller. 0 where there is too little
/// lettering.
double heightOfCapitals(const Grey& cover, const Net& glyphs, const Stop& stop);

}  // namespace inchwright::seen
