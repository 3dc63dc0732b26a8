#pragma once

#include <cstdint>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/measure/length.h"

namespace inchwright {

// What a lathe hand works out on paper, by the formulas of the handbooks.

/// How much a taper of an included angle grows on the diameter for its length: 2 tan(a/2).
/// 10° → 0.17498. Requires: 0 ≤ degrees < 180.
double taperOfAngle(double includedDegrees);

/// The included angle in degrees of a taper that grows so much on the diameter for its length: 1 in
/// per foot (1/12) → 4.7719. The top slide is set to half of it.
double angleOfTaper(double growth);

/// How far the tailstock is set over for a taper between centres: half of what the taper would grow
/// over the *whole* length of the work, as it is held between its centres.
///
/// `large` − `small` on the diameter over `taperLength`; 2 1/2 to 2 over 6 in on work 9 in long →
/// 3/8. Exact. Errors: `badRequest` for a length that is not above 0; `outOfRange`.
Result<Rational> tailstockSetOver(Length large, Length small, Length taperLength,
                                  Length workLength);

/// The threads to the inch that a train of change wheels cuts: those of the lead screw times what
/// is driven over what drives. 36 drives 48, 66 drives 18 … as (driver, driven) pairs in order from
/// the spindle. Exact. Errors: `badRequest` for a wheel without teeth; `outOfRange`.
struct WheelPair {
  int driver = 0;
  int driven = 0;
};
Result<Rational> threadsPerInchOf(const std::vector<WheelPair>& train, Rational leadScrew);

/// The packing under one jaw of a three-jaw chuck that throws round work off by `throwBy`:
/// 1.5 e − r + ½ √(4 r² − 3 e²), r the radius of the work. e 1/4, r 1/2 → .32569. To the tick.
/// Errors: `badRequest` where the throw is too large to be had so (e > 2 r / √3) or not above 0.
Result<Length> threeJawPacking(Length throwBy, Length radius);

}  // namespace inchwright
