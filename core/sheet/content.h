#pragma once

#include <string>

#include "core/chain/solution.h"
#include "core/part/job.h"
#include "core/plan/pictured.h"
#include "core/plan/table.h"
#include "core/sheet/style.h"
#include "core/sheet/tape_up.h"

namespace inchwright {

/// Everything the blocks of a sheet draw on. Holds references only: the owner outlives it.
struct SheetContent {
  const Job& job;
  const Part& part;
  const Solution& solution;
  const SetupTable& table;
  const PartPicture* picture = nullptr;  ///< null when there is none to draw
  const SheetOptions& options;
  Style style{options.readingDistance};
  std::string number = {};  ///< of the sheet (`sheetNumber`); composeSheet fills it in
};

/// The sheet of one setup with its picture already at hand: what `tapeUpSheet` does after it has
/// pictured the part.
std::vector<Page> composeSheet(const SheetContent& content);

}  // namespace inchwright
