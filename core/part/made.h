#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/extra.h"
#include "core/part/id.h"

namespace inchwright {

/// Which way a gauge pin's own tolerance lies: a plus pin is between its size and size + class, a
/// minus pin between size − class and its size.
enum class PinSign { plus, minus };

std::string_view nameOf(PinSign sign);  ///< `plus`, `minus`
std::optional<PinSign> pinSignNamed(std::string_view name);

/// A gauge pin that was tried in a hole: `.2500`, class ZZ, minus.
struct TriedPin {
  Lettered size;
  std::string pinClass;         ///< `X`, `Z`, `ZZ` …; empty: that of the pins owned
  std::optional<PinSign> sign;  ///< empty: that of the pins owned
  Extra extra;

  bool operator==(const TriedPin&) const = default;
};

/// What something was measured with, and by how much it may be wrong either way.
struct Instrument {
  std::string name;
  std::optional<Lettered> error;
  Extra extra;

  bool operator==(const Instrument&) const = default;
};

/// How far one place has got at the machine in one setup, and what was measured there. It says
/// nothing about the print: solving takes no notice of it.
struct MadePlace {
  Id place;                         ///< as it stands in the table: `A`, `D3`
  std::string setup;                ///< the setup's name
  std::string piece;                ///< which of several, `2`; empty where there is one
  std::vector<std::string> ticks;   ///< the tools done there, as on the sheet: `drill 15/64`
  std::optional<Lettered> tickedX;  ///< the figures it was driven to when it was ticked
  std::optional<Lettered> tickedY;
  std::optional<Lettered> x;  ///< where it was found to be, as the readout showed it
  std::optional<Lettered> y;
  std::optional<Lettered> size;  ///< its diameter (or width) as measured
  std::optional<TriedPin> go;    ///< the largest pin that goes in: no smaller than its least
  std::optional<TriedPin> noGo;  ///< the smallest that does not: no larger than its greatest
  std::optional<Instrument> with;
  std::string when;
  Extra extra;

  /// Whether anything was measured, beyond what was done.
  bool measured() const { return x || y || size || go || noGo; }
  /// Whether it says anything at all.
  bool empty() const {
    return ticks.empty() && !tickedX && !tickedY && !measured() && !with && when.empty() &&
           extra.empty();
  }
  bool operator==(const MadePlace&) const = default;
};

}  // namespace inchwright
