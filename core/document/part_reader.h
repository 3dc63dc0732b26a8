#pragma once

#include "core/document/object_reader.h"
#include "core/part/job.h"

namespace inchwright {

/// Reads one entry of `parts`. Bare figures are in `unit`. What `checkPart` looks at is not
/// checked here.
Part readPart(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);

}  // namespace inchwright
