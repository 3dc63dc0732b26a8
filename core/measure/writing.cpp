#include "core/measure/writing.h"

#include <bit>

#include "core/measure/lettered.h"

namespace inchwright {
namespace {

__extension__ typedef unsigned __int128 UInt128;

constexpr int kMostPlaces = 12;
constexpr int kFinestFraction = 128;
constexpr std::int64_t kTicksPer128th = Length::kTicksPerInch / kFinestFraction;
static_assert(kTicksPer128th * kFinestFraction == Length::kTicksPerInch);

std::uint64_t magnitudeOf(std::int64_t value) {
  return value < 0 ? std::uint64_t{0} - static_cast<std::uint64_t>(value)
                   : static_cast<std::uint64_t>(value);
}

std::uint64_t powerOfTen(int exponent) {
  std::uint64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

/// A count of units of 10^-places as a decimal with a leading zero: (11875, 4) is `1.1875`.
template <class Count>
std::string decimalText(bool negative, Count count, int places) {
  // A wide division costs several plain ones, and hardly any count needs it.
  if constexpr (sizeof(Count) > sizeof(std::uint64_t)) {
    const auto narrow = static_cast<std::uint64_t>(count);
    if (narrow == count) return decimalText(negative, narrow, places);
  }
  char digits[48];
  char* const end = digits + sizeof digits;
  char* first = end;
  for (int i = 0; i < places; ++i, count /= 10) *--first = static_cast<char>('0' + count % 10);
  if (places > 0) *--first = '.';
  do {
    *--first = static_cast<char>('0' + count % 10);
    count /= 10;
  } while (count != 0);
  if (negative) *--first = '-';
  return std::string(first, end);
}

/// The length in units of 10^-places of `unit`, to the nearest, ties away from zero.
UInt128 countOf(std::uint64_t ticks, Unit unit, int places) {
  const auto divisor = static_cast<UInt128>(ticksPer(unit));
  const UInt128 scaled = static_cast<UInt128>(ticks) * powerOfTen(places);
  return (scaled + divisor / 2) / divisor;
}

/// Places after the point that every multiple of the step can be shown with.
int placesFor(const Step& step) {
  const auto perUnit = static_cast<UInt128>(ticksPer(step.unit));
  UInt128 scaled = static_cast<UInt128>(step.size.ticks());
  for (int places = 0; places <= kMostPlaces; ++places, scaled *= 10) {
    if (scaled % perUnit == 0) return places;
  }
  // A step of the other unit, such as 0.005 mm shown in inches, has no finite decimal: show a
  // hundredth of it.
  scaled = static_cast<UInt128>(step.size.ticks());
  int places = 0;
  while (places < kMostPlaces && scaled < 100 * perUnit) {
    scaled *= 10;
    ++places;
  }
  return places;
}

/// d − part, to the nearest whole number, ties away from zero; part is `rest`/`whole`, below 1.
Int128 nearestDifference(Int128 d, UInt128 rest, UInt128 whole) {
  const bool half = rest >= whole - rest;
  const bool moreThanHalf = rest > whole - rest;
  if (d > 0) return moreThanHalf ? d - 1 : d;
  return half ? d - 1 : d;
}

}  // namespace

Result<Step> readStep(std::string_view text, Unit unit) {
  ReadingOptions options;
  options.bareUnit = unit;
  auto read = readLength(text, options);
  if (!read) return read.error();
  const Lettered& step = *read;
  if (step.tolerance || step.reference || step.basic || step.symbol != SizeSymbol::none) {
    return Error{ErrorCode::badText, "a step is a plain length, such as 0.0005", "", 0};
  }
  if (step.value.ticks() <= 0) {
    return Error{ErrorCode::badText, "a step must be greater than 0", "", 0};
  }
  // A coarser one would show every figure as nothing.
  if (step.value > Length::ticks(Length::kTicksPerInch / 10)) {
    return Error{ErrorCode::badText, "a readout's step is 0.1 in at most, such as 0.0005", "", 0};
  }
  if (!step.exact) {
    return Error{ErrorCode::badText, "a step must come out at a whole number of ticks of 10 pm", "",
                 0};
  }
  return Step{step.value, unit};
}

Shown showAtStep(const Rational& ticks, const Step& step) {
  const bool below = ticks.sign() < 0;
  const auto denominator = static_cast<UInt128>(ticks.denominator());
  const auto numerator = static_cast<UInt128>(below ? -ticks.numerator() : ticks.numerator());
  const UInt128 whole = numerator / denominator;
  const UInt128 rest = numerator % denominator;

  const auto size = static_cast<UInt128>(step.size.ticks());
  UInt128 steps = whole / size;
  const UInt128 left = whole % size;
  // left + rest/denominator against size/2, without a product that could overflow.
  const bool up = 2 * left >= size || (2 * left + 1 == size && rest >= denominator - rest);
  if (up) ++steps;

  const auto shown = static_cast<std::int64_t>(steps * size);
  const Int128 error =
      nearestDifference(Int128{shown} - static_cast<Int128>(whole), rest, denominator);
  const int places = placesFor(step);
  const UInt128 count = countOf(static_cast<std::uint64_t>(shown), step.unit, places);
  Shown result;
  result.text = decimalText(below && count != 0, count, places);
  result.value = Length::ticks(below ? -shown : shown);
  result.error = Length::ticks(static_cast<std::int64_t>(below ? -error : error));
  return result;
}

std::string writeFraction(Length length) {
  const std::uint64_t size = magnitudeOf(length.ticks());
  if (size % kTicksPer128th != 0) return {};
  const std::uint64_t parts = size / kTicksPer128th;
  const std::uint64_t whole = parts / kFinestFraction;
  const std::uint64_t rest = parts % kFinestFraction;
  std::string text = length.ticks() < 0 ? "-" : "";
  if (whole != 0 || rest == 0) text += std::to_string(whole);
  if (rest != 0) {
    const int halvings = std::countr_zero(rest);
    if (whole != 0) text += ' ';
    text += std::to_string(rest >> halvings) + '/' + std::to_string(kFinestFraction >> halvings);
  }
  return text;
}

std::string writeDecimal(Length length, Unit unit) {
  int places = kMostPlaces;
  UInt128 count = countOf(magnitudeOf(length.ticks()), unit, places);
  for (; places > 0 && count % 10 == 0; --places) count /= 10;
  return decimalText(length.ticks() < 0 && count != 0, count, places);
}

std::string writePlain(Length length, Unit unit) {
  if (unit == Unit::inch) {
    std::string fraction = writeFraction(length);
    if (!fraction.empty()) return fraction;
  }
  return writeDecimal(length, unit);
}

}  // namespace inchwright
