#include "core/sheet/tape_up.h"

#include "core/sheet/content.h"

namespace inchwright {

std::vector<Page> tapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                              const SetupTable& table, const SheetOptions& options) {
  const Setup* named = part.setup(table.setup);
  const Setup setup = named ? *named : defaultSetup(part, solution);
  const Result<PartPicture> picture = pictureOf(part, solution, setup, job.machine);
  return composeSheet(
      {job, part, solution, table, picture.ok() ? &picture.value() : nullptr, options});
}

}  // namespace inchwright
