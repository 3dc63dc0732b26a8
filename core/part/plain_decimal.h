#pragma once

#include <optional>
#include <string_view>

namespace inchwright {

/// The value of a plain decimal such as `0.41`, `-2` or `.5`: a minus sign at most, digits, one
/// point, at most 40 characters; no exponent, no blanks. Empty for anything else. The point is a
/// point in every locale. For traced positions, which are evidence and never a size.
std::optional<double> plainDecimal(std::string_view text);

}  // namespace inchwright
