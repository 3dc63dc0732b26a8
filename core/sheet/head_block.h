#pragma once

#include "core/sheet/content.h"
#include "core/sheet/flow.h"

namespace inchwright {

/// What stands at the head of every page: the part's name, the setup in words, the unit in a bar,
/// the print's edition, job, date, sheet and page; and a stamp while the sheet is a draft. Pages
/// count from 1; those behind the first have a smaller name. The height does not depend on the
/// page otherwise.
Piece headPiece(const SheetContent& content, double width, std::size_t page, std::size_t pages);

/// `2.1 K7QF`: the part's and the setup's number in the job, and four letters that follow from
/// every figure on the sheet: two sheets with different figures do not bear the same number.
std::string sheetNumber(const SheetContent& content);

/// What stands at the foot of every page: earlier sheets, and the usual cautions.
Piece footPiece(const SheetContent& content, double width);

}  // namespace inchwright
