#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/part/job.h"
#include "core/place/placing.h"

namespace inchwright {

/// A reading that, read otherwise, would close a contradiction of placed readings: 60° that would
/// close at 30°, measured from the other axis.
struct CentreSuspect {
  std::uint32_t reading = 0;  ///< index into Part::readings
  Length wouldBe;             ///< of a distance, rounded as the print letters it where that closes
  std::optional<double> degrees;  ///< of an angle instead
  std::string wouldBeText;        ///< lettered as the print would
  std::string why;                ///< what joins the two figures; empty when nothing does
  double weight = 0;              ///< higher is likelier
  bool closesAll = false;         ///< with it every spare reading agrees

  bool operator==(const CentreSuspect&) const = default;
};

/// Ranks the readings of a contradiction, chains and centre distances and angles together,
/// likeliest first: by how well the others then agree, how easily its figure is taken for the other
/// (look-alikes, whole inch, half for full; an angle from the other axis, clockwise for
/// anticlockwise, a wrong digit), and what was traced.
std::vector<CentreSuspect> rankCentreSuspects(const Part& part, const CentresClash& clash);

}  // namespace inchwright
