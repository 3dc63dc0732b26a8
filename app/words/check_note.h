#pragma once

#include "app/words/streams.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::app {

/// Whether a doubt is a question to the print or the draughtsman beside the clashes, loose
/// features and unchecked figures, which have lists of their own.
bool isQuery(const Doubt& doubt);

/// What `check` says of one part, to `streams.out`, as a colleague would note it: each clash as a
/// sum in the print's own figures with its miss, its loop with the running sums and its suspects;
/// then what is loose, what to ask, and what nothing checks.
void printCheckNote(const Part& part, const Solution& solution, Unit unit, const Streams& streams);

}  // namespace inchwright::app
