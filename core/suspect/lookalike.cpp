#include "core/suspect/lookalike.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <string_view>

#include "core/base/ascii.h"
#include "core/measure/writing.h"

namespace inchwright {
namespace {

constexpr std::int64_t kFinest = 128;
constexpr std::int64_t kTicksPerFinest = Length::kTicksPerInch / kFinest;

/// On top, where a figure looks like another only before it is brought to lowest terms.
constexpr double kNotReduced = 1.5;

/// On top, where the figure would have to stand as `15/8` and others here do not.
constexpr double kImproper = 1.2;

/// On top, where a decimal would need other places than it has.
constexpr double kOtherPlaces = 2.0;

/// More whole inches than any print of a part loses at once.
constexpr std::int64_t kMostInches = 10'000;

/// A length as a whole number and a fraction in lowest terms.
struct Mixed {
  std::int64_t whole = 0;
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
};

std::optional<Mixed> mixedOf(Length length) {
  if (length.ticks() < 0 || length.ticks() % kTicksPerFinest != 0) return std::nullopt;
  const std::int64_t count = length.ticks() / kTicksPerFinest;
  Mixed mixed{count / kFinest, count % kFinest, kFinest};
  while (mixed.denominator > 1 && mixed.numerator % 2 == 0) {
    mixed.numerator /= 2;
    mixed.denominator /= 2;
  }
  return mixed;
}

std::string properText(const Mixed& mixed) {
  if (mixed.numerator == 0) return std::to_string(mixed.whole);
  const std::string part =
      std::to_string(mixed.numerator) + '/' + std::to_string(mixed.denominator);
  return mixed.whole == 0 ? part : std::to_string(mixed.whole) + ' ' + part;
}

/// As `15/8`; empty when the figure is less than one or would not be lettered so.
std::string improperText(const Mixed& mixed) {
  if (mixed.whole == 0 || mixed.whole >= 10 || mixed.numerator == 0) return {};
  return std::to_string(mixed.whole * mixed.denominator + mixed.numerator) + '/' +
         std::to_string(mixed.denominator);
}

/// The inverse of `decimalCount`; empty when out of range or no whole tick.
std::optional<Length> lengthAt(std::int64_t count, Unit unit, int places) {
  Int128 ticks = Int128{count} * ticksPer(unit);
  for (int i = 0; i < places; ++i) {
    if (ticks % 10 != 0) return std::nullopt;
    ticks /= 10;
  }
  if (ticks > (Int128{1} << 62) || ticks < 0) return std::nullopt;
  return Length::ticks(static_cast<std::int64_t>(ticks));
}

/// `.375` for 375 at three places; `2` at none.
std::string decimalText(std::int64_t count, int places) {
  std::string digits = std::to_string(count);
  if (places <= 0) return digits;
  const auto wanted = static_cast<std::size_t>(places);
  if (digits.size() < wanted) digits.insert(0, wanted - digits.size(), '0');
  digits.insert(digits.size() - wanted, 1, '.');
  return digits;
}

/// Digits that a worn print, a poor copy or a hurried eye takes for one another.
double digitCost(char a, char b) {
  struct Pair {
    char first, second;
    double cost;
  };
  constexpr std::array kPairs{
      Pair{'3', '8', 1.0}, Pair{'3', '5', 1.0}, Pair{'1', '7', 1.0}, Pair{'6', '8', 1.0},
      Pair{'5', '6', 1.0}, Pair{'4', '9', 1.2}, Pair{'0', '6', 1.3}, Pair{'0', '8', 1.3},
      Pair{'5', '8', 1.4}, Pair{'2', '7', 1.5}, Pair{'0', '9', 1.5}, Pair{'8', '9', 1.5},
      Pair{'1', '4', 1.6}, Pair{'7', '9', 1.6}, Pair{'3', '9', 1.8}, Pair{'2', '3', 1.8},
      Pair{'5', '9', 2.0}, Pair{'6', '9', 1.8}, Pair{'1', '2', 2.5}, Pair{'1', '3', 2.5}};
  for (const Pair& pair : kPairs) {
    if ((pair.first == a && pair.second == b) || (pair.first == b && pair.second == a))
      return pair.cost;
  }
  return 3.2;
}

double substitutionCost(char a, char b) {
  if (a == b) return 0;
  return isDigit(a) && isDigit(b) ? digitCost(a, b) : 4.0;
}

double lossCost(char c) {
  switch (c) {
    case ' ':
      return 1.0;
    case '.':
      return 2.0;
    case '/':
      return 4.0;
    case '0':
      return 1.8;
    case '1':
      return 2.0;
    default:
      return 2.6;
  }
}

/// Cheapest way from one lettering to another by figures changed, lost, added, or two neighbours
/// swapped (Damerau's distance with weights). Stops short at `kNoResemblance`.
double editCost(std::string_view seen, std::string_view would) {
  constexpr std::size_t kLongest = 24;
  if (seen.size() > kLongest || would.size() > kLongest) return kNoResemblance;
  std::array<std::array<double, kLongest + 1>, kLongest + 1> cost{};
  for (std::size_t i = 1; i <= seen.size(); ++i)
    cost[i][0] = cost[i - 1][0] + lossCost(seen[i - 1]);
  for (std::size_t j = 1; j <= would.size(); ++j)
    cost[0][j] = cost[0][j - 1] + lossCost(would[j - 1]);
  for (std::size_t i = 1; i <= seen.size(); ++i) {
    for (std::size_t j = 1; j <= would.size(); ++j) {
      double best = cost[i - 1][j - 1] + substitutionCost(seen[i - 1], would[j - 1]);
      best = std::min(best, cost[i - 1][j] + lossCost(seen[i - 1]));
      best = std::min(best, cost[i][j - 1] + lossCost(would[j - 1]));
      if (i > 1 && j > 1 && seen[i - 1] == would[j - 2] && seen[i - 2] == would[j - 1] &&
          isDigit(seen[i - 1]) && isDigit(seen[i - 2]) && seen[i - 1] != seen[i - 2])
        best = std::min(best, cost[i - 2][j - 2] + 1.4);
      cost[i][j] = best;
    }
  }
  return std::min(cost[seen.size()][would.size()], kNoResemblance);
}

/// Whether the two differ by two neighbouring figures swapped and nothing else.
bool isSwapped(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  const auto [first, second] = std::mismatch(a.begin(), a.end(), b.begin());
  if (first == a.end() || first + 1 == a.end()) return false;
  return first[0] == second[1] && first[1] == second[0] &&
         std::equal(first + 2, a.end(), second + 2);
}

/// Collects the cheapest of several readings of one difference.
class Cheapest {
 public:
  void offer(double cost, Likeness look, std::string looksAs = {}) {
    if (cost < held_.cost) held_ = {cost, {look, 0, std::move(looksAs)}};
  }
  void offerInches(double cost, Likeness look, std::int64_t inches) {
    if (cost < held_.cost) held_ = {cost, {look, static_cast<int>(inches)}};
  }
  Resemblance take() { return std::move(held_); }

 private:
  Resemblance held_{kNoResemblance, {}};
};

void offerEdit(Cheapest& cheapest, std::string_view seen, const std::string& would,
               double extra = 0) {
  const bool swapped = isSwapped(seen, would);
  cheapest.offer(std::min(editCost(seen, would) + extra, kNoResemblance),
                 swapped ? Likeness::swapped : Likeness::alike, swapped ? std::string() : would);
}

/// A whole inch more or less, half for full: what holds for every lettering.
void offerSlips(Cheapest& cheapest, const Lettered& seen, Length would) {
  const std::int64_t is = seen.value.ticks();
  const std::int64_t be = would.ticks();
  if (is <= 0) return;
  if (be % 2 == 0 && be / 2 == is) cheapest.offer(1.8, Likeness::halfForFull);
  if (is % 2 == 0 && is / 2 == be) cheapest.offer(1.8, Likeness::fullForHalf);
  if (seen.unit == Unit::millimetre) {
    if (be / 10 == is && be % 10 == 0) cheapest.offer(1.6, Likeness::pointShifted);
    if (is / 10 == be && is % 10 == 0) cheapest.offer(1.6, Likeness::pointShifted);
    return;
  }
  const std::int64_t more = be - is;
  if (more % Length::kTicksPerInch != 0) return;
  const std::int64_t inches = more / Length::kTicksPerInch;
  // A figure that has lost all its whole inches is likelier than one that has lost some of them.
  const bool allDropped = is < Length::kTicksPerInch;
  const bool allAdded = be < Length::kTicksPerInch;
  if (std::abs(inches) > kMostInches) return;
  if (inches == 1) cheapest.offerInches(allDropped ? 1.2 : 1.7, Likeness::inchesDropped, 1);
  if (inches == -1) cheapest.offerInches(allAdded ? 1.4 : 1.7, Likeness::inchesAdded, 1);
  if (inches > 1) cheapest.offerInches(allDropped ? 2.0 : 3.2, Likeness::inchesDropped, inches);
  if (inches < -1) cheapest.offerInches(allAdded ? 2.0 : 3.2, Likeness::inchesAdded, -inches);
}

double denominatorCost(std::int64_t a, std::int64_t b) {
  const std::int64_t low = std::min(a, b);
  const std::int64_t high = std::max(a, b);
  if (low == 16 && high == 64) return 1.4;
  if (low == 32 && high == 64) return 2.0;
  if (low == 16 && high == 32) return 2.0;
  if (low == 8 && high == 16) return 2.2;
  return 2.8;
}

Resemblance fractionResemblance(const Lettered& seen, Length would) {
  Cheapest cheapest;
  offerSlips(cheapest, seen, would);
  const auto is = mixedOf(seen.value);
  const auto be = mixedOf(would);
  if (!be) {
    Resemblance odd = cheapest.take();
    odd.cost += 6.0;
    return odd;
  }
  if (!is) return cheapest.take();
  if (is->whole == be->whole && is->numerator == be->numerator && is->numerator > 0)
    cheapest.offer(denominatorCost(is->denominator, be->denominator), Likeness::alike,
                   properText(*be));
  if (is->whole == be->whole && is->denominator == be->denominator &&
      std::abs(is->numerator - be->numerator) == 2)
    cheapest.offer(2.6, Likeness::alike, properText(*be));
  if (is->whole == be->whole && be->numerator > 0 && is->numerator == 0)
    cheapest.offer(3.0, Likeness::fractionDropped);
  const std::string improper = improperText(*is);
  const bool isImproper = !improper.empty() && seen.text.find(improper) != std::string::npos;
  const std::string from = isImproper ? improper : properText(*is);
  offerEdit(cheapest, from, properText(*be));
  const std::string to = improperText(*be);
  if (!to.empty()) offerEdit(cheapest, from, to, isImproper ? 0 : kImproper);
  if (is->denominator != be->denominator && is->whole == be->whole) {
    // `6/64` misread and put down in lowest terms.
    const std::int64_t common = std::max(is->denominator, be->denominator);
    const auto over = [&](const Mixed& one) {
      return std::to_string(one.numerator * (common / one.denominator));
    };
    const double cost = editCost(over(*is), over(*be)) + kNotReduced;
    cheapest.offer(std::min(cost, kNoResemblance), Likeness::alike, properText(*be));
  }
  return cheapest.take();
}

Resemblance decimalResemblance(const Lettered& seen, Length would) {
  Cheapest cheapest;
  offerSlips(cheapest, seen, would);
  const auto is = decimalCount(seen.value, seen.unit, seen.places);
  if (!is) return cheapest.take();
  const std::string from = decimalText(*is, seen.places);
  // A figure that loses or gains a nought behind the point changes its number of places.
  for (int places = std::max(0, seen.places - 1); places <= seen.places + 1; ++places) {
    const auto be = decimalCount(would, seen.unit, places);
    if (!be || (places > seen.places && *be % 10 == 0)) continue;
    const std::string to = decimalText(*be, places);
    if (places == seen.places) {
      offerEdit(cheapest, from, to);
    } else if (*be == *is) {
      cheapest.offer(1.5, Likeness::pointShifted);
    } else {
      offerEdit(cheapest, from, to, kOtherPlaces);
    }
  }
  Resemblance best = cheapest.take();
  if (best.reason.isNone() && !decimalCount(would, seen.unit, seen.places))
    best.cost += kOtherPlaces;
  return best;
}

}  // namespace

std::optional<std::int64_t> decimalCount(Length length, Unit unit, int places) {
  std::int64_t per = ticksPer(unit);
  std::int64_t scale = 1;
  for (int i = 0; i < places; ++i) {
    if (per % 10 == 0) {
      per /= 10;
    } else {
      scale *= 10;
    }
  }
  if (scale > 1'000'000 || length.magnitude().ticks() > (std::int64_t{1} << 62) / scale)
    return std::nullopt;
  const std::int64_t scaled = length.ticks() * scale;
  if (scaled % per != 0) return std::nullopt;
  return scaled / per;
}

Resemblance resemblance(const Lettered& seen, Length would) {
  return seen.lettering == Lettering::fraction ? fractionResemblance(seen, would)
                                               : decimalResemblance(seen, would);
}

std::string letteredLike(const Lettered& seen, Length would) {
  if (seen.lettering == Lettering::fraction) return writePlain(would, Unit::inch);
  std::string text = writeDecimal(would, seen.unit);
  const auto point = text.find('.');
  int places = point == std::string::npos ? 0 : static_cast<int>(text.size() - point) - 1;
  if (places == 0 && seen.places > 0) text += '.';
  for (; places < seen.places; ++places) text += '0';
  // Inches go without a leading nought, as is customary, unless this very figure shows one.
  const bool leading =
      seen.value.ticks() < ticksPer(seen.unit) && seen.text.find("0.") != std::string::npos;
  if (seen.lettering == Lettering::decimal && !leading && text.starts_with("0.")) text.erase(0, 1);
  if (seen.text.find("mm") != std::string::npos) text += " mm";
  return text;
}

std::vector<Length> decimalNeighbours(const Lettered& seen) {
  std::vector<Length> found;
  if (seen.lettering == Lettering::fraction) return found;
  const auto count = decimalCount(seen.value, seen.unit, seen.places);
  if (!count || *count <= 0) return found;
  const auto add = [&](std::int64_t other, int places) {
    const auto length = lengthAt(other, seen.unit, places);
    if (length && length->ticks() > 0 && *length != seen.value) found.push_back(*length);
  };
  const std::string digits = std::to_string(*count);
  for (std::size_t i = 0; i < digits.size() && digits.size() < 16; ++i) {
    for (char c = '0'; c <= '9'; ++c) {
      std::string other = digits;
      other[i] = c;
      add(std::stoll(other), seen.places);
    }
    if (i + 1 == digits.size()) break;
    std::string swapped = digits;
    std::swap(swapped[i], swapped[i + 1]);
    add(std::stoll(swapped), seen.places);
  }
  add(*count, seen.places + 1);
  if (seen.places > 0) add(*count, seen.places - 1);
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

}  // namespace inchwright
