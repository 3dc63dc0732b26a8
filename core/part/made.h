#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/extra.h"
#include "core/part/feature.h"

namespace inchwright {

/// How far one place has got at the machine in one setup, and what was measured there. It says
/// nothing about the print: solving takes no notice of it.
struct MadePlace {
  Id place;                        ///< as it stands in the table: `A`, `D3`
  std::string setup;               ///< the setup's name
  std::vector<std::string> ticks;  ///< the tools done there, as on the sheet: `drill 15/64`
  std::optional<Lettered> x;       ///< where it was found to be, as the readout showed it
  std::optional<Lettered> y;
  Extra extra;

  /// Whether it says anything at all.
  bool empty() const { return ticks.empty() && !x && !y && extra.empty(); }
  bool operator==(const MadePlace&) const = default;
};

}  // namespace inchwright
