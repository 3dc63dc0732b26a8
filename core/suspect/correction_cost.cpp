#include "core/suspect/correction_cost.h"

#include <algorithm>
#include <cmath>

#include "core/suspect/lookalike.h"

namespace inchwright {
namespace {

constexpr Int128 kLargestChange = Int128{1} << 62;

/// About one figure in 250 is misread (practice, rank 9, puts reading and keying between 0.3 % and
/// a few per cent).
constexpr double kMisread = 5.5;
/// A reading taken from or to another place than its own, before the choice of that place.
constexpr double kWrongEnd = 2.5;
/// Its two ends changed places: before any look-alike where the tracing has them so, else behind
/// the likely ones.
constexpr double kSwapped = 3.0;
constexpr double kSwappedAsTraced = 0.5;
/// Of the difference of two traced places, each good to about 1/64 in.
constexpr double kTracedDeviation = 0.0221;
constexpr double kMostTraced = 8.0;
constexpr double kClose = 0.15;  ///< inches
/// For a figure that needs more places than its neighbours have.
constexpr double kNoSuchDecimal = 5.0;
constexpr std::int64_t kTicksPer128th = Length::kTicksPerInch / 128;

/// The power of two of the denominator in lowest terms; 8 when it is no such fraction of an inch.
std::size_t denominatorPower(Length length) {
  if (length.ticks() % kTicksPer128th != 0) return 8;
  std::int64_t count = length.ticks() / kTicksPer128th;
  std::size_t power = 7;
  for (; power > 0 && count % 2 == 0; --power) count /= 2;
  return power;
}

/// The last figure of a decimal lettered to as many places as `seen`; empty when it does not end
/// there.
std::optional<std::size_t> lastDigit(const Lettered& seen, Length length) {
  const auto count = decimalCount(length, seen.unit, seen.places);
  if (!count) return std::nullopt;
  return static_cast<std::size_t>(*count % 10);
}

double penalty(double off) {
  const double z = off / kTracedDeviation;
  return std::min(0.5 * z * z, kMostTraced);
}

Int128 sizeOf(Int128 value) {
  return value < 0 ? -value : value;
}

}  // namespace

std::optional<Correction> nearestCorrection(const AxisNetwork& network, std::uint32_t link,
                                            Ratio longer, Int128 slack) {
  if (longer.under < 0) longer = {-longer.over, -longer.under};
  if (sizeOf(longer.over / longer.under) > kLargestChange) return std::nullopt;
  const auto near = static_cast<std::int64_t>(longer.over / longer.under);
  if (slack == 0) {
    if (longer.over % longer.under != 0) return std::nullopt;
    return Correction{link, near};
  }
  constexpr std::int64_t kStep = Length::kTicksPerInch / 10'000;
  constexpr std::int64_t kFraction = Length::kTicksPerInch / 64;
  for (const std::int64_t step : {kFraction, kStep}) {
    const std::int64_t figure = network.links[link].ticks + near;
    const std::int64_t rest = ((figure % step) + step) % step;
    const std::int64_t off = rest > step / 2 ? step - rest : -rest;
    if (sizeOf(off) <= slack + 1) return Correction{link, near + off};
  }
  return Correction{link, near};
}

CorrectionCost::CorrectionCost(const Part& part, const AxisNetwork& network,
                               const ConditionSpace& space, const Tracing& tracing)
    : part_(part), network_(network), space_(space), tracing_(tracing) {
  learnLettering();
  for (std::uint32_t node = 0; node < network.places.size(); ++node) {
    trees_[space.forest().root(node)].push_back(node);
  }
}

// How often the print uses each denominator and each last decimal, as −log of a share.
void CorrectionCost::learnLettering() {
  double fractions = 0;
  double decimals = 0;
  for (const Reading& reading : part_.readings) {
    if (reading.kind != ReadingKind::along) continue;
    if (reading.figure.lettering == Lettering::fraction) {
      byDenominator_[denominatorPower(reading.figure.value)] += 1;
      fractions += 1;
    } else if (const auto digit = lastDigit(reading.figure, reading.figure.value)) {
      byLastDigit_[*digit] += 1;
      decimals += 1;
    }
  }
  for (std::size_t power = 0; power < byDenominator_.size(); ++power) {
    // A little for each denominator, so that none is impossible, and less for the finest, which
    // hardly any print has. An inch holds 2^(power − 1) such fractions.
    const double before = power >= 7 ? 0.05 : 0.4;
    const double share = (byDenominator_[power] + before) / (fractions + 3);
    const double many = std::log(2.0) * (power < 2 ? 0.0 : static_cast<double>(power) - 1);
    byDenominator_[power] = -std::log(share) + many;
  }
  for (double& digit : byLastDigit_) digit = -std::log((digit + 0.2) / (decimals + 2));
}

const Lettered& CorrectionCost::lettered(std::uint32_t link) const {
  return *figureOf(part_, network_.links[link].source);
}

double CorrectionCost::unusual(const Lettered& seen, Length length) const {
  // Hardly anything lies closer together than holes and their walls need; a correction to nothing
  // or less counts as one to a tick, so that the cost stays finite.
  const double inches = Length::ticks(std::max<std::int64_t>(length.ticks(), 1)).toInches();
  const double close = std::max(0.0, std::log(kClose / inches));
  if (seen.lettering == Lettering::fraction)
    return byDenominator_[denominatorPower(length)] + close;
  const auto digit = lastDigit(seen, length);
  return close + (digit ? byLastDigit_[*digit] : kNoSuchDecimal);
}

const CorrectionCost::Figure& CorrectionCost::figure(const Correction& correction) {
  const auto [found, fresh] = figures_.try_emplace({correction.link, correction.longer});
  Figure& figure = found->second;
  if (!fresh) return figure;
  const Lettered& seen = lettered(correction.link);
  const auto would = seen.value.plus(Length::ticks(correction.longer));
  if (would && seen.value.ticks() > 0 && *would == seen.value.negated()) {
    figure.possible = true;
    figure.reason.look = Likeness::endsSwapped;
    const auto drawn = tracing_.lengthOf(correction.link);
    figure.cost = kMisread + (drawn && *drawn < 0 ? kSwappedAsTraced : kSwapped);
    return figure;
  }
  figure.possible = would && would->ticks() > 0 && correction.longer != 0;
  if (!figure.possible) return figure;
  Resemblance look = resemblance(seen, *would);
  figure.cost = kMisread + look.cost;
  figure.reason = std::move(look.reason);
  figure.cost += unusual(seen, *would) - unusual(seen, seen.value);
  return figure;
}

double CorrectionCost::traceChange(const Correction& correction) const {
  const auto drawn = tracing_.lengthOf(correction.link);
  if (!drawn) return 0;
  const double now = lettered(correction.link).value.toInches();
  const double then = now + Length::ticks(correction.longer).toInches();
  return penalty(*drawn - then) - penalty(*drawn - now);
}

double CorrectionCost::guess(const Correction& correction) {
  return figure(correction).cost + traceChange(correction);
}

Int128 CorrectionCost::movedTicks(std::uint32_t node,
                                  const std::vector<Correction>& corrections) const {
  Int128 ticks = space_.forest().position(node);
  for (const Correction& one : corrections)
    ticks += tracing_.shareOf(node, one.link) * Int128{one.longer};
  return ticks;
}

CorrectionCost::Figure CorrectionCost::withEnds(const Correction& correction,
                                                const std::vector<Correction>& corrections) {
  Figure best = figure(correction);
  const AxisLink& link = network_.links[correction.link];
  const auto& places = trees_.at(space_.forest().root(link.from));
  const double cost = kMisread + kWrongEnd + 0.7 * std::log(static_cast<double>(places.size()));
  if (cost >= best.cost) return best;
  const Int128 from = movedTicks(link.from, corrections);
  const Int128 to = movedTicks(link.to, corrections);
  for (const std::uint32_t node : places) {
    const Int128 at = movedTicks(node, corrections);
    const bool isStart = node != link.from && node != link.to && to - at == link.ticks;
    const bool isEnd = node != link.from && node != link.to && at - from == link.ticks;
    if (!isStart && !isEnd) continue;
    best.cost = cost;
    best.reason = {};
    best.reason.wrongEnd = isStart ? Reason::End::from : Reason::End::to;
    best.reason.rather = network_.places[node];
    best.reason.than = network_.places[isStart ? link.from : link.to];
    break;
  }
  return best;
}

std::vector<std::pair<double, Correction>> CorrectionCost::suggestedBy(std::uint32_t link,
                                                                       std::size_t most) {
  std::vector<std::pair<double, Correction>> found;
  const auto drawn = tracing_.lengthOf(link);
  if (!drawn) return found;
  const Lettered& seen = lettered(link);
  if (penalty(*drawn - seen.value.toInches()) < 2.0) return found;
  constexpr std::int64_t kStep = 2 * kTicksPer128th;
  const auto nearest = static_cast<std::int64_t>(std::llround(*drawn * 64));
  std::vector<Length> lengths;
  for (std::int64_t count = nearest - 4; count <= nearest + 4; ++count) {
    if (count > 0) lengths.push_back(Length::ticks(count * kStep));
  }
  for (const Length length : decimalNeighbours(seen)) {
    if (penalty(*drawn - length.toInches()) < kMostTraced) lengths.push_back(length);
  }
  if (*drawn < 0) lengths.push_back(seen.value.negated());
  for (const Length length : lengths) {
    const Correction one{link, length.ticks() - seen.value.ticks()};
    if (figure(one).possible) found.push_back({guess(one), one});
  }
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
    return std::pair(a.first, a.second.longer) < std::pair(b.first, b.second.longer);
  });
  if (found.size() > most) found.resize(most);
  return found;
}

}  // namespace inchwright
