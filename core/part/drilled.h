#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/measure/lettered.h"

namespace inchwright {

/// How a hole gets its size.
enum class Make { drill, ream, bore, tap, counterbore, countersink, spotface };

/// How a hole's place is to be found in the shop.
enum class Locate { coordinate, mate, pair, assembly, suit };

/// Through, or so deep below the face it is cut from.
struct Depth {
  bool through = true;
  std::optional<Lettered> length;  ///< given when not through

  bool operator==(const Depth&) const = default;
};

/// What is cut at one place: a hole, or each hole of a ring or row. `1/4 ream 3/8 deep` is a
/// diameter of 1/4, made by reaming, to a depth of 3/8.
struct Drilled {
  std::optional<Lettered> diameter = {};
  Make make = Make::drill;
  Depth depth = {};
  std::string thread = {};                    ///< tapped holes: `1/4-20 UNC`, `2 BA`, `M3`
  std::optional<Lettered> seatDiameter = {};  ///< counterbore, countersink, spotface
  std::optional<Lettered> seatDepth = {};
  Locate locate = Locate::coordinate;

  bool operator==(const Drilled&) const = default;
};

std::string_view nameOf(Make make);  ///< as in the document: `drill`, `ream`, …
std::string_view nameOf(Locate locate);
std::optional<Make> makeNamed(std::string_view name);
std::optional<Locate> locateNamed(std::string_view name);

}  // namespace inchwright
