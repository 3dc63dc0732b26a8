#pragma once

#include "core/part/made.h"
#include "core/plan/table.h"

namespace inchwright::app {

/// Whether what was ticked at a place was ticked at the figures that it has now. Of a document that
/// does not say at which, it counts as ticked at these.
bool tickedAsItIs(const MadePlace& made, const TableRow& row);
/// Notes the figures of now beside the ticks, in a form that no unit or step changes.
void noteTicked(MadePlace& made, const TableRow& row);
/// Whether all that is made at a place is ticked, at the figures that it has now.
bool isAllDone(const MadePlace& made, const TableRow& row);

}  // namespace inchwright::app
