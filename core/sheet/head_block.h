#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// What stands at the head of every page: the part's name, the setup in words, the unit in a bar,
/// the print's edition, job, date, sheet and page; and a stamp while the sheet is a draft. Pages
/// count from 1; those behind the first have a smaller name. The height does not depend on the
/// page otherwise.
Piece headPiece(const SheetContent& content, double width, std::size_t page, std::size_t pages);

/// What stands at the foot of every page: earlier sheets, and the usual cautions.
Piece footPiece(const SheetContent& content, double width);

}  // namespace inchwright
