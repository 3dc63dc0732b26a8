#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/place/equations.h"

namespace inchwright {

/// Variables that follow together from as many rows, once earlier blocks are known.
struct Block {
  std::vector<std::uint32_t> variables;
  std::vector<std::uint32_t> rows;

  bool operator==(const Block&) const = default;
};

/// How a system of equations falls apart.
struct Blocks {
  std::vector<Block> inOrder;        ///< each behind those it hangs on
  std::vector<std::uint32_t> spare;  ///< rows that earlier rows already make, in the order given
  std::vector<std::uint32_t> loose;  ///< variables that the rows leave free
  std::vector<std::uint32_t> slack;  ///< rows that bear on loose variables without settling them
};

/// Divides the rows into those that settle something and those to spare, and what is settled into
/// the smallest blocks that can be solved one after another.
///
/// `rows` come in the order of trust: a row is spare when those before it fix it already, judged by
/// its slopes at `at`, which should lie near the answer or be generic. Below `threshold` of the row
/// what is left of it counts as nothing.
/// Cost: about linear for what hangs together in chains; at worst the cube of what is interwoven.
Blocks divide(const Equations& equations, std::span<const std::uint32_t> rows,
              std::span<const std::uint32_t> open, std::span<const double> at,
              double threshold = 1e-7);

/// What the least singular value of a block's slopes has to be, of the greatest.
inline constexpr double kFirm = 1e-6;

/// Whether the rows of a block fix its variables where they stand, by `kFirm`. Directions count as
/// lengths an inch away.
bool isFirm(const Equations& equations, const Block& block, std::span<const double> at);

/// How much a block multiplies an error: the farthest that one of its variables moves, in inches,
/// for an inch in one of its rows. Requires: it is firm, and of at most 60 variables; else 0.
double leverageOf(const Equations& equations, const Block& block, std::span<const double> at);

}  // namespace inchwright
