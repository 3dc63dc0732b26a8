#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "app/session/desk.h"

namespace inchwright::app {

/// What is done at the machine before the first place is driven to, or after the last, one screen
/// each.
struct FirstStep {
  QString heading;
  QStringList lines;
};

/// What is milled once the holes are made: of each slot and pocket what to mind, then run by run
/// where the cutter goes. Requires: the desk has a table.
std::vector<FirstStep> milledSteps(const Desk& desk);

/// The readout as the sheet takes it, then how zero is found. Requires: the desk has a table.
std::vector<FirstStep> firstSteps(const Desk& desk);

}  // namespace inchwright::app
