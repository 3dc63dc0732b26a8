#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/lines/lines.h"

namespace inchwright {

/// A part read from a table of lines, each as `applyLine` takes it; empty lines and lines that
/// begin with `#` are passed over.
///
/// A reading may name places the part does not have yet; they are made. `L`, `R`, `F`, `K`, `T` and
/// `U` become the outer sides they stand for where the reading's axis is that side's own; any other
/// id becomes a point of the context's face. The axis follows from the sides, else from an `x`, `y`
/// or `z` in front, else from the context.
///
/// Errors: those of `applyLine`; `place` is `line N`, and the part given is left as it was.
Result<Part> applyLines(const Part& part, std::string_view text, const LineContext& context);

}  // namespace inchwright
