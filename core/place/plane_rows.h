#pragma once

#include "core/place/carriers.h"

namespace inchwright {

/// Makes the rows of a plane: of its readings, its understandings and the shapes of its features.
void addRowsOf(Carriers& carriers);

/// How many decimal places of a degree an angle is lettered to; minutes count as two, seconds as
/// four, a fraction of a degree as none.
int placesOfAngle(const Reading& reading);

}  // namespace inchwright
