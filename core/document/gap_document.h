#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/part/gap.h"

namespace inchwright {

/// Reads one entry of `gaps`. Bare figures are in `unit`. That a member says one thing only, and
/// what its places and fits come to, is for whoever adds the gap up.
Gap readGap(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit);

/// Appends a gap as one entry of `gaps`, one member a line.
void writeGap(std::string& out, const Gap& gap, int indent);

}  // namespace inchwright
