#pragma once

#include <string_view>
#include <vector>

#include "app/words/job_file.h"
#include "core/sheet/draw_list.h"
#include "core/sheet/tape_up.h"

namespace inchwright::app {

/// What `--pages` can name.
enum class PageKind { setup, cover, stock, tools, layout, firstOff, difference };

/// `setup,cover,stock` in the order given; each at most once. Errors: `badRequest`.
Result<std::vector<PageKind>> pageKindsNamed(std::string_view text);

/// The pages asked for, one kind after another. `options` has those of each planned setup.
Result<std::vector<Page>> pagesOf(const std::vector<PageKind>& kinds, const OpenedJob& opened,
                                  const std::vector<PlannedSetup>& planned,
                                  const std::vector<SheetOptions>& options);

}  // namespace inchwright::app
