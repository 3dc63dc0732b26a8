#pragma once

#include <string>

#include "core/base/result.h"
#include "core/measure/lettered.h"

namespace inchwright::app {

/// Reads a figure where bare ones are in one unit, for a document whose bare ones are in another:
/// `9.525` typed beside a readout in millimetres stands in a job in inches as `9.525 mm`, and so
/// means the same when the document is opened again. Errors: as readLength.
Result<Lettered> readTyped(const std::string& text, Unit typed, Unit kept);

}  // namespace inchwright::app
