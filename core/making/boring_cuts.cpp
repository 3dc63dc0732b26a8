#include "core/making/boring_cuts.h"

#include <algorithm>

#include "core/shop/sizes.h"

namespace inchwright {
namespace {

constexpr Length kLastTwo = tenThousandths(100);
constexpr Length kRoughCut = tenThousandths(500);
constexpr Length kTrialCut = tenThousandths(100);

/// How many divisions lead from start to the size wanted; 0 when there is none.
std::int64_t divisionsFor(const BoreJob& job, std::int64_t growth) {
  const std::int64_t wanted = job.target.ticks() - job.start.ticks();
  if (wanted <= 0) return 0;
  std::int64_t count = wanted / growth;
  if (!job.low || !job.high) return count;
  const std::int64_t under = wanted - count * growth;
  if (growth - under < under) ++count;
  const auto fits = [&](std::int64_t n) {
    const std::int64_t size = job.start.ticks() + n * growth;
    return n > 0 && size >= job.low->ticks() && size <= job.high->ticks();
  };
  for (const std::int64_t n : {count, count - 1, count + 1}) {
    if (fits(n)) return n;
  }
  return 0;
}

/// Divisions of about so much growth of the hole, at least `least`.
std::int64_t divisionsOf(Length growthWanted, std::int64_t growth, std::int64_t least) {
  return std::max(growthWanted.ticks() / growth, least);
}

}  // namespace

std::vector<BoreCut> boringCuts(const BoreJob& job, Length division,
                                const std::optional<DialCounts>& dial) {
  const std::int64_t growth = division.ticks() * (dial == DialCounts::slide ? 2 : 1);
  std::int64_t left = divisionsFor(job, growth);
  std::vector<BoreCut> cuts;
  std::int64_t size = job.start.ticks();
  const auto cut = [&](std::int64_t divisions, bool trial) {
    size += divisions * growth;
    left -= divisions;
    cuts.push_back({Length::ticks(divisions * division.ticks()), Length::ticks(size), trial});
  };
  const std::int64_t lastTwo = std::min(left, divisionsOf(kLastTwo, growth, 2));
  if (!dial && left > lastTwo) {
    cut(std::min(left - lastTwo, divisionsOf(kTrialCut, growth, 1)), true);
  }
  const std::int64_t rough = left - lastTwo, most = divisionsOf(kRoughCut, growth, 1);
  for (std::int64_t cutsLeft = (rough + most - 1) / most; cutsLeft > 0; --cutsLeft) {
    const std::int64_t still = left - lastTwo;
    cut((still + cutsLeft - 1) / cutsLeft, false);
  }
  if (left > 1) cut((left + 1) / 2, false);
  if (left > 0) cut(left, false);
  return cuts;
}

}  // namespace inchwright
