#pragma once

#include <string>

#include "core/sheet/content.h"

namespace inchwright {

/// `2.1 K7QF-ACDE-HJLM`: the part's and the setup's number in the job, and twelve letters that
/// follow from everything the sheet says or draws but its date, paper and size of lettering. Two
/// sheets that differ in a word or a figure share them by chance once in 4 · 10^15.
/// The same in both Englishes. Requires: the part and setup of `content` are the job's; `words` and
/// `doubts` of it are filled in.
std::string sheetNumber(const SheetContent& content);

}  // namespace inchwright
