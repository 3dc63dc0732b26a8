#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/length.h"

namespace inchwright {

/// A guide to how fast tools of high-speed steel run in a material. Handbooks differ by up to
/// twice, so it is only a guide, and the source stands beside it.
struct CuttingSpeed {
  std::string material;    ///< as the table names it: `mild steel`
  int drillFeetPerMinute;  ///< a reamer about half of it (TM 1-420)
  std::string_view source;

  bool operator==(const CuttingSpeed&) const = default;
};

/// The rows, slowest first.
const std::vector<CuttingSpeed>& cuttingSpeeds();

/// The row for a material as a print names it: `brass`, `CZ121 brass`, `Aluminum`, `mild steel`,
/// `steel` (taken as mild), `silver steel`. Empty where none is known.
std::optional<CuttingSpeed> cuttingSpeedOf(std::string_view material);

/// Whole revolutions a minute at a surface speed: 12 CS/(π D), rounded. Requires: diameter > 0.
int revolutionsFor(int feetPerMinute, Length diameter);

/// The greatest of a machine's speeds that is not above the guide; the least of them where all are
/// above; the guide itself where none are named.
int nearestSpeed(int guide, const std::vector<int>& speeds);

}  // namespace inchwright
