#include "core/suspect/rounding.h"

#include <optional>

#include "core/chain/circuit.h"

namespace inchwright {
namespace {

// The 64th of an inch next to a decimal, where that rounds to it.
std::optional<Length> fractionFor(const Lettered& figure) {
  if (figure.lettering != Lettering::decimal) return std::nullopt;
  const std::optional<Rational> count =
      figure.value.rational().over(Rational(Length::kTicksPerInch / 64));
  const auto nearest = count ? count->rounded() : std::nullopt;
  if (!nearest) return std::nullopt;
  const Length fraction = Length::ticks(*nearest * (Length::kTicksPerInch / 64));
  const auto off = fraction.minus(figure.value);
  if (!off || off->isZero() || off->magnitude().rational() > halfLastPlace(figure)) {
    return std::nullopt;
  }
  return fraction;
}

}  // namespace

Rounding roundingOf(const Part& part, const Clash& loop) {
  Rounding rounding{loop, {}};
  std::optional<Rational> sum = Rational();
  for (const LoopMember& member : loop.loop) {
    std::optional<Rational> step = member.step;
    const Lettered* figure = figureOf(part, member.source);
    const auto meant = figure == nullptr ? std::nullopt : fractionFor(*figure);
    if (meant) {
      const auto factor = member.step.over(figure->value.rational());
      step = factor ? factor->times(meant->rational()) : std::nullopt;
      rounding.fractions.push_back({part.readings[member.source.index].id, *meant});
    }
    sum = sum && step ? sum->plus(*step) : std::nullopt;
  }
  if (!sum || !sum->isZero()) rounding.fractions.clear();
  return rounding;
}

}  // namespace inchwright
