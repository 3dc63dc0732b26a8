#pragma once

#include "core/place/carriers.h"

namespace inchwright {

/// Whether anything the part says holds in a plane of two axes: what chains alone make of it is all
/// there is otherwise.
bool speaksOfPlanes(const Part& part);

/// Makes the rows of a plane: of the shapes of its features, of its readings (in the order of their
/// ids) and of its understandings.
void addRowsOf(Carriers& carriers);

/// How many decimal places of a degree an angle is lettered to; minutes count as two, seconds as
/// four, a fraction of a degree as none: `22 1/2°` 0, `22.5°` 1, `22° 30'` 2.
int placesOfAngle(const Reading& reading);

}  // namespace inchwright
