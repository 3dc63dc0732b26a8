#pragma once

#include <string_view>

#include "core/sheet/flow.h"

namespace inchwright {

/// Sets an id at the left of a row: big on the baseline when it fits into `width`, else small in
/// up to three lines. The piece grows to hold it. Returns false for a longer one: then only `…`
/// stands there, and the caller puts the id among the row's words.
[[nodiscard]] bool setId(Piece& piece, std::string_view id, double left, double baseline,
                         double width, double height);

}  // namespace inchwright
