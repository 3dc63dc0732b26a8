#pragma once

#include "core/chain/network_builder.h"

namespace inchwright {

/// What the shape of a feature fixes among its own places, and against those it is built on: the
/// pitch of a row, a ring's geometry, the ends of a slot, a round inside its corner. A row D of
/// three at 3/8: D1 to D2 and D2 to D3, 3/8 each.
void addFeatureLinks(NetworkBuilder& builder, std::uint32_t feature);

/// The diameter of a ring's pitch circle: its own, else that of a reading; empty when neither.
const Lettered* pitchDiameterOf(const Part& part, const Feature& ring);

}  // namespace inchwright
