#pragma once

#include <string_view>

#include "core/sheet/flow.h"

namespace inchwright {

struct IdExtent {
  double height = 0;   ///< mm, from the top of the row
  bool named = false;  ///< whether the id can be set there at all
};

/// What `setId` would take up.
IdExtent idExtent(std::string_view id, double baseline, double width, double height);

/// Sets an id at the left of a row: big on the baseline when it fits into `width`, else small in
/// up to three lines. The piece grows to hold it. Returns false for a longer one: then only `…`
/// stands there, and the caller puts the id among the row's words.
[[nodiscard]] bool setId(Piece& piece, std::string_view id, double left, double baseline,
                         double width, double height);

}  // namespace inchwright
