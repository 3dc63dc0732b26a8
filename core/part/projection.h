#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/part/axis.h"

namespace inchwright {

/// How a print lays out its views about the main one (ISO 5456-2): in third angle a view stands on
/// the side from which it is seen, in first angle on the opposite one.
enum class Projection : std::uint8_t { first, third };

std::string_view nameOf(Projection projection);  ///< `first`, `third`
std::optional<Projection> projectionNamed(std::string_view name);

}  // namespace inchwright
