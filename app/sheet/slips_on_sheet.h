#pragma once

#include "app/session/work.h"
#include "app/sheet/sheet_view.h"

namespace inchwright::app {

/// Lays on my sheet what is asked of it: the sum behind a figure that is pointed at, the stack
/// while one is stacking. Each slip is made when it is first wanted.
void laySlipsOn(SheetView& sheet, Work& work);

}  // namespace inchwright::app
