#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/part/job.h"
#include "core/place/beyond_chains.h"
#include "core/suspect/suspect.h"

namespace inchwright {

/// What joins one angle with another that it may be taken for.
enum class AngleLook {
  none,             ///< nothing but chance
  otherAxis,        ///< measured from the other axis: 35 and 55
  otherTurn,        ///< clockwise for anticlockwise
  otherEnd,         ///< measured from the other end of the line: 35 and 145
  otherPlace,       ///< from the other of its two places: 35 and 215
  minutesAsPoints,  ///< minutes read as a decimal: 35.30 and 35 30'
  alike,            ///< one digit differs
  swapped,          ///< two digits changed places
};

/// A reading that, read otherwise, would close a contradiction of placed readings. 35 where the
/// others make 55: an angle, `degrees` 55, `otherAxis`.
struct CentreSuspect {
  std::uint32_t reading = 0;  ///< index into Part::readings
  Length wouldBe;             ///< of a distance, rounded as the print letters it where that closes
  std::optional<double> degrees;     ///< of an angle instead
  std::string wouldBeText;           ///< lettered as the print would
  Reason reason;                     ///< what joins the two lengths
  AngleLook look = AngleLook::none;  ///< what joins the two angles instead
  double weight = 0;                 ///< higher is likelier
  bool closesAll = false;            ///< with it every spare reading agrees

  bool operator==(const CentreSuspect&) const = default;
};

/// Ranks the readings of a contradiction, chains and centre distances and angles together,
/// likeliest first: by how well the others then agree, how easily its figure is taken for the other
/// (look-alikes, whole inch, half for full; an angle from the other axis, clockwise for
/// anticlockwise, a wrong digit), and what was traced.
std::vector<CentreSuspect> rankCentreSuspects(const Part& part, const CentresClash& clash);

}  // namespace inchwright
