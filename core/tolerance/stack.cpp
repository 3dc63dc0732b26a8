#include "core/tolerance/stack.h"

#include <algorithm>
#include <cmath>

#include "core/base/checked.h"

namespace inchwright {
namespace {

Error tooLong() {
  return {ErrorCode::outOfRange, "the stack adds up to more than can be held", ""};
}

std::optional<Rational> plusScaled(const std::optional<Rational>& sum, const StackMember& member,
                                   std::int64_t ticks) {
  const auto length = member.rest.plus(ticks);
  const auto product = length ? member.factor.times(*length) : std::nullopt;
  return sum && product ? sum->plus(*product) : std::nullopt;
}

long double halfOf(const StackMember& member) {
  const long double width =
      static_cast<long double>(member.high) - static_cast<long double>(member.low);
  return width / 2 * std::fabs(static_cast<long double>(member.factor.toDouble()));
}

std::optional<Span> aboutMiddle(const Rational& middle, long double half) {
  const long double centre =
      static_cast<long double>(middle.numerator()) / static_cast<long double>(middle.denominator());
  constexpr long double kFar = 4.6e18L;
  if (!(std::fabs(centre) + half < kFar)) return std::nullopt;
  return Span{std::llround(centre - half), std::llround(centre + half)};
}

}  // namespace

Rational fractionOf(double slope) {
  constexpr std::int64_t kParts = std::int64_t{1} << 32;
  return Rational::of(std::llround(slope * static_cast<double>(kParts)), kParts)
      .value_or(Rational());
}

Result<Stack> stackOf(std::vector<StackMember> members, double inflation, const Rational& base) {
  if (!(inflation >= 1) || !std::isfinite(inflation)) {
    return Error{ErrorCode::badRequest, "a root sum square is widened by a factor of 1 or more",
                 ""};
  }
  std::optional<Rational> nominal = base, low = base, high = base;
  long double squares = 0, halves = 0;
  for (const StackMember& member : members) {
    if (member.low > member.high) {
      return Error{ErrorCode::badRequest, "the least size is above the greatest",
                   member.reading() ? *member.reading() : member.to};
    }
    const bool forward = member.factor.sign() >= 0;
    nominal = plusScaled(nominal, member, member.nominal);
    low = plusScaled(low, member, forward ? member.low : member.high);
    high = plusScaled(high, member, forward ? member.high : member.low);
    squares += halfOf(member) * halfOf(member);
    halves += halfOf(member);
  }
  if (!nominal || !low || !high) return tooLong();
  const auto twice = low->plus(*high);
  const auto middle = twice ? twice->over(Rational(2)) : std::nullopt;
  const auto least = narrowed<std::int64_t>(low->floor());
  const auto greatest = narrowed<std::int64_t>(high->ceiling());
  if (!middle || !least || !greatest) return tooLong();
  const long double root = std::sqrt(squares);
  const auto rss = aboutMiddle(*middle, root);
  const auto inflated = aboutMiddle(*middle, root * static_cast<long double>(inflation));
  if (!rss || !inflated) return tooLong();
  const Span worst{*least, *greatest};
  const Span held{std::max(inflated->low, worst.low), std::min(inflated->high, worst.high)};
  for (StackMember& member : members) {
    const long double half = halfOf(member);
    member.share = squares > 0 ? static_cast<double>(half * half / squares) : 0;
    member.worstShare = halves > 0 ? static_cast<double>(half / halves) : 0;
  }
  return Stack{*nominal,     *middle,           worst, *rss, held, held != *inflated, inflation,
               std::nullopt, std::move(members)};
}

}  // namespace inchwright
