#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/part/extra.h"
#include "core/part/id.h"

namespace inchwright {

/// One row as it stood on a printed sheet: the place, the two figures of the readout, and what was
/// to be made there. `A`, `+0.3750`, `+0.7500`, `1/4 ream`.
struct PrintedRow {
  Id place;
  std::string first;
  std::string second;
  std::string made;

  bool operator==(const PrintedRow&) const = default;
};

/// The last sheet of a setup that was printed, as far as whoever works to it has to know in what
/// the next one differs. All as shown.
struct PrintedSheet {
  std::string setup;
  int edition = 1;
  std::string number;   ///< of the sheet; empty where such sheets have none
  std::string when;     ///< `2026-11-29`
  std::string readout;  ///< `inches at a step of 0.0005`
  std::string zero;     ///< `X0 at L, Y0 at F`
  std::vector<PrintedRow> rows;
  Extra extra;

  bool operator==(const PrintedSheet&) const = default;
};

}  // namespace inchwright
