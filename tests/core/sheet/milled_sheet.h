#pragma once

#include "tests/core/plan/milled_plate.h"
#include "tests/core/sheet/made_sheet.h"

namespace inchwright::test {

/// The sheet of a plate with slots and pockets, solved and planned.
inline MadeSheet sheetOf(const MilledPlate& plate, double distance = 1000) {
  MadeSheet made;
  made.job = plate.job;
  made.part = plate.part;
  made.part.setups = {plate.setup};
  made.solution = solved(made.part);
  made.options.readingDistance = distance;
  made.plan();
  return made;
}

}  // namespace inchwright::test
