#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "core/place/blocks.h"
#include "core/place/equations.h"

namespace inchwright {

/// Where two circles, rays or parallels to lines cross clearly: the commonest block, one place held
/// by two readings, in closed form and polished. The variables of each crossing, in the block's
/// order; none where a ray or a side is missed.
///
/// Empty where the block is of another form, or where the two barely meet, miss or run nearly
/// alike: `conicAnswers` and a search then tell how. `at` holds all variables; those of the block
/// are moved.
std::optional<std::vector<std::array<double, 2>>> crossings(const Equations& equations,
                                                            std::span<const Row> rows,
                                                            const Block& block,
                                                            std::span<double> at);

}  // namespace inchwright
