#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/apart.h"
#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/id.h"

namespace inchwright {

/// How a hole gets its size.
enum class Make { drill, ream, bore, tap, counterbore, countersink, spotface };

/// How a hole's place is to be found in the shop.
enum class Locate { coordinate, mate, pair, assembly, suit };

/// Through, or so deep below the face it is cut from.
struct Depth {
  bool through = true;
  Apart<Lettered> length;  ///< given when not through

  bool operator==(const Depth&) const = default;
};

/// What is cut at one place: a hole, or each hole of a ring or row. `1/4 ream 3/8 deep` is a
/// diameter of 1/4, made by reaming, to a depth of 3/8.
struct Drilled {
  std::optional<Lettered> diameter = {};
  /// What its size may be where the diameter does not say: a class (`H7`) or figures
  /// (`0.2490/0.2493`), as lettered. Empty for none.
  std::string limits = {};
  Make make = Make::drill;
  Depth depth = {};
  std::string thread = {};            ///< tapped holes: `1/4-20 UNC`, `2 BA`, `M3`
  Apart<Lettered> seatDiameter = {};  ///< counterbore, countersink, spotface
  Apart<Lettered> seatDepth = {};
  Apart<LetteredAngle> seatAngle = {};  ///< of a countersink, included
  Locate locate = Locate::coordinate;
  Apart<PartPlace> mate = {};  ///< the other part's hole it is drilled with or from
  bool breaksOut = false;      ///< it is meant to break out of the outline
  std::vector<Id> meets = {};  ///< holes that it is meant to run into

  bool operator==(const Drilled&) const = default;
};

std::string_view nameOf(Make make);  ///< as in the document: `drill`, `ream`, …
std::string_view nameOf(Locate locate);
std::optional<Make> makeNamed(std::string_view name);
std::optional<Locate> locateNamed(std::string_view name);

}  // namespace inchwright
