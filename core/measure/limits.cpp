#include "core/measure/limits.h"

namespace inchwright {
namespace {

/// The greatest whole number of steps that is not above `ticks`.
std::int64_t stepsBelow(std::int64_t ticks, std::int64_t step) {
  const std::int64_t quotient = ticks / step;
  return ticks % step < 0 ? quotient - 1 : quotient;
}

Shown shownAs(std::int64_t steps, const Step& step, Length exact) {
  Shown shown = showAtStep(Rational(steps * step.size.ticks()), step);
  shown.error = Length::ticks(shown.value.ticks() - exact.ticks());
  return shown;
}

bool tellsAt(Length low, Length high, const std::optional<Length>& least,
             const std::optional<Length>& greatest, const Step& step) {
  const ShownLimits ends = showOutwards(low, high, step);
  const auto shown = [&](Length limit) { return showAtStep(limit.rational(), step).value; };
  const auto isUnder = [&](Length end, Length endShown) {
    return !least || (end < *least) == (endShown < shown(*least));
  };
  const auto isOver = [&](Length end, Length endShown) {
    return !greatest || (end > *greatest) == (endShown > shown(*greatest));
  };
  return isUnder(low, ends.low.value) && isUnder(high, ends.high.value) &&
         isOver(low, ends.low.value) && isOver(high, ends.high.value);
}

}  // namespace

std::optional<SizeLimits> limitsOf(const Lettered& size,
                                   const std::optional<Tolerance>& tolerance) {
  const auto least = size.value.plus(tolerance ? tolerance->lower : Length());
  const auto greatest = size.value.plus(tolerance ? tolerance->upper : Length());
  if (!least || !greatest) return std::nullopt;
  return SizeLimits{*least, *greatest};
}

Result<ShownLimits> showLimitsInwards(Length low, Length high, const Step& step) {
  if (low > high) {
    return Error{ErrorCode::badRequest, "the lower limit is above the upper one", "", {}};
  }
  const std::int64_t size = step.size.ticks();
  const std::int64_t least = -stepsBelow(-low.ticks(), size);
  const std::int64_t greatest = stepsBelow(high.ticks(), size);
  if (least > greatest) {
    return Error{ErrorCode::unsolvable,
                 "no whole number of steps lies between the limits: a finer step is needed",
                 "",
                 {}};
  }
  return ShownLimits{shownAs(least, step, low), shownAs(greatest, step, high)};
}

ShownLimits showOutwards(Length low, Length high, const Step& step) {
  const std::int64_t size = step.size.ticks();
  return {shownAs(stepsBelow(low.ticks(), size), step, low),
          shownAs(-stepsBelow(-high.ticks(), size), step, high)};
}

Step stepThatTells(Length low, Length high, std::optional<Length> least,
                   std::optional<Length> greatest, const Step& step) {
  Step finer = step;
  while (!tellsAt(low, high, least, greatest, finer) && finer.size.ticks() % 10 == 0) {
    finer.size = Length::ticks(finer.size.ticks() / 10);
  }
  return finer;
}

}  // namespace inchwright
