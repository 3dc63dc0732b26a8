#pragma once

#include "core/measure/sums.h"
#include "core/measure/tolerance.h"

namespace inchwright::reading {

/// What a figure comes to, in ticks.
struct Outcome {
  Length value;
  bool exact = true;
  std::optional<Tolerance> tolerance;
  Quantity nominal;  ///< in ticks, for its unit and style
};

/// Whether two limits such as `.4995/.5005` stand at the cursor: two numbers of which one at least
/// is a decimal, with a stroke between them and near to each other. Sets the fault where they
/// could be limits and could be a division.
bool limitsAhead(Cursor& cursor, const Bare& bare);

/// Reads limits, either way round; the nominal is their middle. A limit finer than a tick is
/// rounded inwards. Requires: limitsAhead.
bool readLimits(Cursor& cursor, const Bare& bare, Outcome& outcome);

/// Whether the rest is a tolerance: `±1/64`, `+.002 -.000`, `+.002/-.000`, `0/-.001`.
bool tailAhead(const Cursor& cursor);

/// Reads the tolerance behind a nominal in ticks. A deviation without unit takes that of the other
/// deviation, else that at the end of the text, else the nominal's. Deviations finer than a tick
/// are rounded inwards.
bool readTail(Cursor& cursor, const Bare& bare, Outcome& outcome);

/// Rounds the nominal to the tick, once.
bool settle(Cursor& cursor, Outcome& outcome);

}  // namespace inchwright::reading
