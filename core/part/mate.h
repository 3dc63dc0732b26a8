#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/extra.h"
#include "core/part/id.h"

namespace inchwright {

/// A hole or a shaft: its size as a text (limits too: `0.2490/0.2493`), or the place of a part,
/// whose size is then the print's, and what was found there once it is measured.
using SizeOrPlace = std::variant<Lettered, PartPlace>;

/// A hole of one part and the shaft of another that have to go together.
///
/// What the clearance must be is said by a fit's name (`H7/g6`, `RC4`: at the hole's nominal size)
/// or by `least` and `greatest`; negative where it is to be tight. `places` are the holes of a
/// pattern that go on together (the four pillars of a plate): all of them count, with one float.
struct Mate {
  std::string name;
  SizeOrPlace hole;
  SizeOrPlace shaft;
  std::string fit;
  std::optional<Lettered> least;
  std::optional<Lettered> greatest;
  std::vector<Id> places;
  Extra extra;

  bool operator==(const Mate&) const = default;
};

/// How a hole that came out wrong is put right.
enum class WayOut { shaft, bush, plug, eccentricBush, nextSize, leave, openToSize };

std::string_view nameOf(WayOut way);  ///< as in the document: `shaft`, `eccentric_bush`, …
std::optional<WayOut> wayOutNamed(std::string_view name);
inline constexpr int kWaysOut = 7;

/// The figures of a way out by which it can be told whether it is another by now: those of a bush's
/// bore, of the next size, or the ends of a shaft to suit.
struct ChosenFigures {
  std::optional<Length> bore;
  std::optional<Length> least;
  std::optional<Length> greatest;
  bool exact = false;  ///< to the tick; else as a readout showed them

  bool operator==(const ChosenFigures&) const = default;
};

/// A way out that was chosen, kept with its reason.
struct Mended {
  Id place;
  std::string piece;
  WayOut way = WayOut::leave;
  std::string figures;  ///< as JSON text, the figures that stood when it was chosen; may be empty
  std::string reason;
  std::string when;
  Extra extra;
  ChosenFigures chosen = {};  ///< what of `figures` can be read; not written by itself

  bool operator==(const Mended&) const = default;
};

}  // namespace inchwright
