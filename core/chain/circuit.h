#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/chain/axis_system.h"
#include "core/chain/clash.h"

namespace inchwright {

/// Σ factor · ticks; empty on overflow. 3/8 + 1 3/16 less an overall 1 1/2: 1/16 in, which is
/// 158 750 000 ticks.
std::optional<Rational> missOf(const AxisNetwork& network, const Circuit& circuit);

/// How far a circuit may miss because members of it are rounded to the tick, and, where it passes
/// through a ring's geometry, to the last place of its figures: 0 where all are exact.
Rational allowanceOf(const Part& part, const AxisNetwork& network, const Circuit& circuit);

/// Half of the last decimal place of a lettered figure, in ticks: 0.0005 in of `.188`; 0 for a
/// fraction such as `1 3/16`.
Rational halfLastPlace(const Lettered& figure);
/// How far it may miss because its decimals were rounded when they were lettered.
Rational lastPlacesOf(const Part& part, const AxisNetwork& network, const Circuit& circuit);

/// The circuit told as a person would: it closes with the reading best called the overall one, a
/// bracketed one if there is any and else the longest, and begins where that begins. Consecutive
/// members of one understanding or feature are told as one. Empty on overflow.
std::optional<Clash> clashOf(const Part& part, const AxisNetwork& network, const Circuit& circuit);

}  // namespace inchwright
