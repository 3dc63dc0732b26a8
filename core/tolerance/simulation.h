#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/tolerance/stack.h"

namespace inchwright {

/// How a member is taken to spread between its limits.
enum class Spread {
  normal,       ///< about the middle, with the limits at three standard deviations either way
  rectangular,  ///< anywhere alike
  triangular,   ///< about the middle, nothing at the limits
};

struct SimulationOptions {
  std::uint64_t runs = 100'000;  ///< up to kMostRuns
  std::uint64_t seed = 1;
  Spread spread = Spread::normal;
  unsigned threads = 1;  ///< changes nothing in the outcome
  /// What the stack should keep to; what is outside is counted.
  std::optional<Span> required = std::nullopt;
  /// For tests and benchmarks: the plain loop even where the processor has a faster one. Changes
  /// nothing in the outcome.
  bool plainLoop = false;
};

inline constexpr std::uint64_t kMostRuns = 1'000'000'000;

/// What so many parts came to, put together from members drawn at random.
struct Simulation {
  static constexpr std::size_t kBars = 64;

  std::uint64_t runs = 0;
  std::uint64_t seed = 0;
  Spread spread = Spread::normal;
  std::int64_t mean = 0;       ///< ticks, to the nearest
  std::int64_t deviation = 0;  ///< standard deviation, ticks
  /// As named in kPercentiles; found to the width of the worst case / 14 000.
  std::array<std::int64_t, 5> percentiles{};
  std::uint64_t below = 0;  ///< runs under what is required
  std::uint64_t above = 0;
  Span range;  ///< of the histogram
  std::array<std::uint64_t, kBars>
      bars{};  ///< runs by class, over `range`; what is beyond goes to the ends

  bool operator==(const Simulation&) const = default;
};

inline constexpr std::array<double, 5> kPercentiles{0.135, 2.5, 50, 97.5, 99.865};

/// Draws every member at random and adds up, so many times.
///
/// The outcome is the same to the bit for the same members and options on any number of threads and
/// any processor: a random number depends on the seed, the run and the member alone (a counter put
/// through the finishing step of A. Appleby's MurmurHash3), and all sums are whole numbers. A
/// normal deviate is the sum of eight uniform 16-bit ones, put through a polynomial that gives it
/// the percentiles of the normal distribution: to 0.0011 of a standard deviation as far as 4.25 of
/// them, which is 1 in 93 000; it ends below seven. Members are weighed
/// to 1 part in 8 388 608 of the widest. Errors: `badRequest` for no runs or too many;
/// `outOfRange`.
Result<Simulation> simulate(const Stack& stack, const SimulationOptions& options = {});

}  // namespace inchwright
