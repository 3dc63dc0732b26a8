#pragma once

#include "app/words/streams.h"
#include "core/plan/table.h"

namespace inchwright::app {

/// One table for people: the heading, how to find zero, and aligned rows with signed figures and
/// the print's own fractions beside them.
void printTableText(const Part& part, const SetupTable& table, const Streams& streams);

}  // namespace inchwright::app
