#pragma once

#include "core/document/object_reader.h"
#include "core/part/job.h"

namespace inchwright {

/// Reads one entry of `parts`. Bare figures are in `unit`. What `checkPart` looks at is not
/// checked here.
Part readPart(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);

/// Reads an entry that is the other hand of `base`: what it does not say is that part's, mirrored.
/// A feature given by its id alone keeps the members it does not name; one that names its `kind`
/// and a reading are whole; `"absent": true` drops either.
Part readOppositePart(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit,
                      const Part& base);

}  // namespace inchwright
