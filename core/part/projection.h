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

/// Where the view of a face stands on the print, in steps from the main view: columns to the right
/// and rows down. The bottom's view stands beyond that of the right side.
struct ViewPlace {
  int column = 0;
  int row = 0;

  bool operator==(const ViewPlace&) const = default;
};
ViewPlace viewPlace(Face face, Projection projection);

}  // namespace inchwright
