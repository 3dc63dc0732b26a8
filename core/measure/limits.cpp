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

}  // namespace inchwright
