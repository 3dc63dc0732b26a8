#pragma once

#include <string>
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

/// What each planned sheet is drawn with: `common`, what it has to say of parts that look alike,
/// and, where wanted, how close to work. Errors: as `workAt`, `closenessOnSheet`.
Result<std::vector<SheetOptions>> optionsOf(const OpenedJob& opened,
                                            const std::vector<PlannedSetup>& planned,
                                            const SheetOptions& common, bool closeness);

/// The page for a tablet or phone, of all planned setups (HTML).
std::string tabletOf(const OpenedJob& opened, const std::vector<PlannedSetup>& planned,
                     const std::vector<SheetOptions>& options);

/// The pages asked for, one kind after another. `options` has those of each planned setup.
Result<std::vector<Page>> pagesOf(const std::vector<PageKind>& kinds, const OpenedJob& opened,
                                  const std::vector<PlannedSetup>& planned,
                                  const std::vector<SheetOptions>& options);

}  // namespace inchwright::app
