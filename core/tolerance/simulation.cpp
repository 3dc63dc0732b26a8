#include "core/tolerance/simulation.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <thread>

#include "core/tolerance/draw_loop.h"

namespace inchwright {
namespace {

constexpr std::int32_t kWidest = 1 << 23;
constexpr unsigned kMostThreads = 256;

// The mixing step of splitmix64 (G. Steele, D. Lea and C. Flood, 2014), for the members' keys.
std::uint64_t nextKey(std::uint64_t& state) {
  state += 0x9e3779b97f4a7c15ULL;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

/// Ticks of a sum, and back: ticks = middle + sum · half / (kWidest · deviatesPerHalf).
struct Scale {
  long double middle = 0;
  long double ticksPerUnit = 0;

  long double ticks(long double sum) const { return middle + sum * ticksPerUnit; }
  std::int64_t rounded(long double sum) const { return std::llround(ticks(sum)); }
  // The last sum at or below so many ticks.
  std::int64_t sumAt(std::int64_t ticksWanted) const {
    const long double sum = (static_cast<long double>(ticksWanted) - middle) / ticksPerUnit;
    constexpr long double kFar = 9e18L;
    return static_cast<std::int64_t>(std::floor(std::clamp(sum, -kFar, kFar)));
  }
};

long double widthOf(const StackMember& member) {
  const long double factor = std::fabs(static_cast<long double>(member.factor.toDouble()));
  return static_cast<long double>(member.high - member.low) * factor;
}

std::vector<DrawnMember> drawnMembers(const Stack& stack, std::uint64_t seed, long double widest) {
  std::vector<DrawnMember> members;
  std::uint64_t state = seed;
  for (const StackMember& member : stack.members) {
    DrawnMember drawn;
    drawn.weight = static_cast<std::int32_t>(std::lround(widthOf(member) / widest * kWidest));
    for (std::uint32_t& key : drawn.keys) key = static_cast<std::uint32_t>(nextKey(state) >> 32);
    if (drawn.weight > 0) members.push_back(drawn);
  }
  return members;
}

// Every thread draws its own share of the runs; counts add up to the same whatever the shares.
DrawTally drawOnThreads(const std::vector<DrawnMember>& members, const SimulationOptions& options,
                        DrawTally tally) {
  const unsigned threads = std::clamp(options.threads, 1U, kMostThreads);
  std::vector<DrawTally> tallies(threads, tally);
  const auto drawShare = [&](unsigned i) {
    tallies[i].classes.assign(DrawTally::kClasses, 0);
    const auto begin = static_cast<std::uint32_t>(options.runs * i / threads);
    const auto end = static_cast<std::uint32_t>(options.runs * (i + 1) / threads);
    drawRuns(members, options.spread, begin, end, options.plainLoop, tallies[i]);
  };
  std::vector<std::thread> others;
  for (unsigned i = 1; i < threads; ++i) others.emplace_back(drawShare, i);
  drawShare(0);
  for (std::thread& other : others) other.join();
  tally.classes.assign(DrawTally::kClasses, 0);
  for (const DrawTally& one : tallies) {
    tally.below += one.below;
    tally.above += one.above;
    for (std::size_t i = 0; i < one.classes.size(); ++i) tally.classes[i] += one.classes[i];
  }
  return tally;
}

// Mean, deviation, percentiles and bars out of the classes.
void readClasses(const DrawTally& tally, const Scale& scale, Simulation& result) {
  const auto middleOf = [&](std::size_t index) {
    const long double low = static_cast<long double>(index) * std::ldexp(1.0L, tally.shift);
    return low + std::ldexp(0.5L, tally.shift) - static_cast<long double>(tally.reach);
  };
  long double sum = 0, squares = 0;
  std::uint64_t seen = 0;
  std::size_t next = 0;
  const long double barWidth = static_cast<long double>(result.range.width()) / Simulation::kBars;
  for (std::size_t i = 0; i < tally.classes.size(); ++i) {
    const std::uint64_t count = tally.classes[i];
    if (count == 0) continue;
    sum += middleOf(i) * static_cast<long double>(count);
    squares += middleOf(i) * middleOf(i) * static_cast<long double>(count);
    seen += count;
    while (next < kPercentiles.size() &&
           static_cast<double>(seen) >=
               kPercentiles[next] / 100 * static_cast<double>(result.runs)) {
      result.percentiles[next++] = scale.rounded(middleOf(i));
    }
    const long double offset =
        scale.ticks(middleOf(i)) - static_cast<long double>(result.range.low);
    const long double bar = barWidth > 0 ? std::floor(offset / barWidth) : 0;
    result.bars[static_cast<std::size_t>(
        std::clamp(bar, 0.0L, static_cast<long double>(Simulation::kBars - 1)))] += count;
  }
  const auto runs = static_cast<long double>(result.runs);
  const long double mean = sum / runs;
  result.mean = scale.rounded(mean);
  const long double variance = std::max(0.0L, squares / runs - mean * mean);
  result.deviation = std::llround(std::sqrt(variance) * scale.ticksPerUnit);
}

void allAlike(const Stack& stack, const SimulationOptions& options, Simulation& result) {
  const std::int64_t only = stack.middle.rounded().value_or(0);
  result.mean = only;
  result.percentiles.fill(only);
  result.bars[0] = options.runs;
  if (!options.required) return;
  if (only < options.required->low) result.below = options.runs;
  if (only > options.required->high) result.above = options.runs;
}

}  // namespace

Result<Simulation> simulate(const Stack& stack, const SimulationOptions& options) {
  if (options.runs == 0 || options.runs > kMostRuns) {
    return Error{ErrorCode::badRequest, "a simulation takes from one run to a thousand million",
                 ""};
  }
  Simulation result;
  result.runs = options.runs;
  result.seed = options.seed;
  result.spread = options.spread;
  result.range = stack.worst;
  long double widest = 0;
  for (const StackMember& member : stack.members) widest = std::max(widest, widthOf(member));
  if (widest == 0) {
    allAlike(stack, options, result);
    return result;
  }
  const std::vector<DrawnMember> members = drawnMembers(stack, options.seed, widest);
  DrawTally tally;
  Int128 reach = 1;
  for (const DrawnMember& member : members) {
    reach += Int128{member.weight} * furthestDeviate(options.spread);
  }
  if (reach > std::numeric_limits<std::int64_t>::max() / 4) {
    return Error{ErrorCode::outOfRange, "this stack has too many members to simulate", ""};
  }
  tally.reach = static_cast<std::int64_t>(reach);
  while ((2 * tally.reach) >> tally.shift >= static_cast<std::int64_t>(DrawTally::kClasses)) {
    ++tally.shift;
  }
  const Scale scale{static_cast<long double>(stack.middle.numerator()) /
                        static_cast<long double>(stack.middle.denominator()),
                    widest / 2 / kWidest / deviatesPerHalf(options.spread)};
  if (options.required) {
    tally.lowest = scale.sumAt(options.required->low - 1) + 1;
    tally.highest = scale.sumAt(options.required->high);
  }
  tally = drawOnThreads(members, options, std::move(tally));
  result.below = tally.below;
  result.above = tally.above;
  readClasses(tally, scale, result);
  return result;
}

}  // namespace inchwright
