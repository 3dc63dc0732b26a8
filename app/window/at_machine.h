#pragma once

#include "app/session/desk.h"

class QWidget;

namespace inchwright::app {

/// Opens the view at the machine, mill or lathe, that the setup on the desk is of. False where
/// there is nothing to drive to yet.
bool showMachine(Desk& desk, QWidget* parent);

/// Opens the slip of what the one chosen place came out as. False where none is chosen that this
/// setup makes.
bool showMade(Desk& desk, QWidget* parent);

}  // namespace inchwright::app
