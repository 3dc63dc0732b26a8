#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/place/blocks.h"
#include "core/place/equations.h"

namespace inchwright {

/// Solves a block whose rows can be written as polynomials of degree two in its variables with one
/// quadratic part among them (circles, lines, rays, tangents, equal distances): all but one are
/// made linear by taking them from each other, and the last is a quadratic along what is left.
///
/// Yields up to two points, not yet polished and not yet held against the rows themselves, which
/// may want a ray or a side; two alike where a quadratic just touches 0. Empty when the block is
/// not of this form. `at` holds all variables; those of the block are moved about their start and
/// put back. Requires: at most 6 variables.
std::optional<std::vector<std::vector<double>>> conicAnswers(const Equations& equations,
                                                             std::span<const Row> rows,
                                                             const Block& block,
                                                             std::span<double> at);

/// Solves for one line (a direction and its offset) that passes two fixed points or circles at
/// given distances: up to two. Empty when the block is not of this form.
std::optional<std::vector<std::vector<double>>> lineAnswers(const Equations& equations,
                                                            std::span<const Row> rows,
                                                            const Block& block,
                                                            std::span<const double> at);

}  // namespace inchwright
