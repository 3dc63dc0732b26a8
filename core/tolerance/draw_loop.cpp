#include "core/tolerance/draw_loop.h"

#include <algorithm>

#if defined(__x86_64__) && (defined(__GNUC__) || defined(__clang__))
#define INCHWRIGHT_HAS_AVX2_LOOP 1
#else
#define INCHWRIGHT_HAS_AVX2_LOOP 0
#endif

namespace inchwright {
namespace {

constexpr std::uint32_t kLanes = 64;
constexpr std::int32_t kOne = 8192;  ///< one standard deviation of a normal deviate

// The body is compiled once for every instruction set, so all of it has to be inlined.
#define INCHWRIGHT_INLINE __attribute__((always_inline)) inline

INCHWRIGHT_INLINE std::uint32_t mixed(std::uint32_t x) {
  x ^= x >> 16;
  x *= 0x85ebca6bU;
  x ^= x >> 13;
  x *= 0xc2b2ae35U;
  x ^= x >> 16;
  return x;
}

INCHWRIGHT_INLINE std::int32_t bothHalves(std::uint32_t x) {
  return static_cast<std::int32_t>((x & 0xffffU) + (x >> 16));
}

// The odd polynomial that takes percentiles of the sum of eight uniform numbers to those of the
// normal distribution: its factors, in parts of 2^15, are the fit with the least greatest error as
// far as 4.3 standard deviations. Shifts round; no product leaves 31 bits.
INCHWRIGHT_INLINE std::int32_t normalOf(std::int32_t sum) {
  const std::int32_t y = (sum + 4) >> 3;
  const std::int32_t square = (y * y) >> 15;
  std::int32_t factor = -3'979 + ((12'926 * square) >> 15);
  factor = 7'096 + ((factor * square) >> 15);
  factor = 39'294 + ((factor * square) >> 15);
  return (y * factor + (1 << 14)) >> 15;
}

INCHWRIGHT_INLINE std::int32_t normalDeviate(std::uint32_t counter, const DrawnMember& member) {
  std::int32_t sum = -4 * 65'535;
  for (int i = 0; i < 4; ++i) sum += bothHalves(mixed(counter + member.keys[i]));
  return normalOf(sum);
}

template <Spread spread>
INCHWRIGHT_INLINE std::int32_t deviate(std::uint32_t counter, const DrawnMember& member) {
  if constexpr (spread == Spread::normal) return normalDeviate(counter, member);
  const std::uint32_t random = mixed(counter + member.keys[0]);
  if constexpr (spread == Spread::triangular) return bothHalves(random) - 65'535;
  return 2 * static_cast<std::int32_t>(random >> 16) - 65'535;
}

template <Spread spread>
INCHWRIGHT_INLINE void drawLanes(std::span<const DrawnMember> members, std::uint32_t first,
                                 std::int64_t* sums) {
  for (std::uint32_t lane = 0; lane < kLanes; ++lane) sums[lane] = 0;
  for (const DrawnMember& member : members) {
    std::int32_t deviates[kLanes];
    for (std::uint32_t lane = 0; lane < kLanes; ++lane) {
      deviates[lane] = deviate<spread>((first + lane) * 0x9e3779b9U, member);
    }
    const std::int64_t weight = member.weight;
    for (std::uint32_t lane = 0; lane < kLanes; ++lane) {
      sums[lane] += weight * static_cast<std::int64_t>(deviates[lane]);
    }
  }
}

template <Spread spread>
INCHWRIGHT_INLINE void drawAll(std::span<const DrawnMember> members, std::uint32_t begin,
                               std::uint32_t end, DrawTally& tally) {
  std::int64_t sums[kLanes];
  for (std::uint32_t first = begin; first < end; first += std::min(kLanes, end - first)) {
    drawLanes<spread>(members, first, sums);
    const std::uint32_t count = std::min(kLanes, end - first);
    for (std::uint32_t lane = 0; lane < count; ++lane) {
      ++tally.classes[static_cast<std::size_t>((sums[lane] + tally.reach) >> tally.shift)];
      tally.below += sums[lane] < tally.lowest ? 1 : 0;
      tally.above += sums[lane] > tally.highest ? 1 : 0;
    }
  }
}

INCHWRIGHT_INLINE void drawAny(std::span<const DrawnMember> members, Spread spread,
                               std::uint32_t begin, std::uint32_t end, DrawTally& tally) {
  switch (spread) {
    case Spread::normal:
      return drawAll<Spread::normal>(members, begin, end, tally);
    case Spread::rectangular:
      return drawAll<Spread::rectangular>(members, begin, end, tally);
    case Spread::triangular:
      return drawAll<Spread::triangular>(members, begin, end, tally);
  }
}

void drawPlainly(std::span<const DrawnMember> members, Spread spread, std::uint32_t begin,
                 std::uint32_t end, DrawTally& tally) {
  drawAny(members, spread, begin, end, tally);
}

#if INCHWRIGHT_HAS_AVX2_LOOP
__attribute__((target("avx2"))) void drawWithAvx2(std::span<const DrawnMember> members,
                                                  Spread spread, std::uint32_t begin,
                                                  std::uint32_t end, DrawTally& tally) {
  drawAny(members, spread, begin, end, tally);
}
#endif

}  // namespace

std::int32_t normalDeviateOf(std::int32_t sum) {
  return normalOf(sum);
}

std::int32_t deviatesPerHalf(Spread spread) {
  return spread == Spread::normal ? 3 * kOne : 65'535;
}

std::int32_t furthestDeviate(Spread spread) {
  return spread == Spread::normal ? 7 * kOne : 65'535;
}

void drawRuns(std::span<const DrawnMember> members, Spread spread, std::uint32_t begin,
              std::uint32_t end, bool plainLoop, DrawTally& tally) {
#if INCHWRIGHT_HAS_AVX2_LOOP
  if (!plainLoop && __builtin_cpu_supports("avx2")) {
    return drawWithAvx2(members, spread, begin, end, tally);
  }
#endif
  drawPlainly(members, spread, begin, end, tally);
}

}  // namespace inchwright
