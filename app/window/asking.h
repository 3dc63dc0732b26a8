#pragma once

#include "app/window/desk_files.h"

namespace inchwright::app {

/// Asks by dialogs on top of `window`.
Asking askingByDialogs(QWidget* window);

}  // namespace inchwright::app
