#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/measure/length.h"

namespace inchwright {

/// The customary series of twist drills.
enum class DrillSeries { fraction, number, letter, metric };

/// One twist drill. Its size is exact: sixty-fourths, ten-thousandths of an inch as the standard
/// lists them, or tenths of a millimetre; never a rounded decimal.
struct Drill {
  std::string name;  ///< `15/64`, `#7`, `F`, `5.1 mm`
  Length diameter;
  DrillSeries series = DrillSeries::fraction;

  bool operator==(const Drill&) const = default;
};

/// Which series a choice is made from.
struct DrillSets {
  bool fraction = true;
  bool number = true;
  bool letter = true;
  bool metric = true;

  bool has(DrillSeries series) const;
  /// Fraction, number and letter drills for an inch size, metric ones for a metric size.
  static DrillSets customaryFor(Unit unit);

  bool operator==(const DrillSets&) const = default;
};

/// All drills known, smallest first; of equal ones in the order of `DrillSeries`.
const std::vector<Drill>& drills();

/// Where the sizes of a series come from.
std::string_view sourceOf(DrillSeries series);

/// The largest drill of the sets that is not larger; null when there is none.
const Drill* drillAtOrBelow(Length diameter, const DrillSets& sets = {});
/// The drill of exactly this size, the first of `DrillSeries` that the sets allow; null if none.
const Drill* drillOfSize(Length diameter, const DrillSets& sets = {});
/// By its name: `15/64`, `#7`, `F` (capital or small), `5.1 mm`, `5.1mm`; null when unknown.
const Drill* drillNamed(std::string_view name);

}  // namespace inchwright
