#include "app/machine/measured.h"

#include <cstdlib>

namespace inchwright::app {
namespace {

/// A slip of the sign lies so near to the figure turned round; of what is measured after cutting
/// nothing is further off and still worth a thought.
constexpr std::int64_t kNear = Length::kTicksPerInch / 20;

}  // namespace

bool isSignSlip(Length measured, Length wanted) {
  const bool opposite = (measured.ticks() < 0) != (wanted.ticks() < 0);
  const std::int64_t turned = measured.ticks() + wanted.ticks();
  const std::int64_t apart = measured.ticks() - wanted.ticks();
  return opposite && measured.ticks() != 0 && std::abs(turned) < kNear &&
         std::abs(turned) < std::abs(apart);
}

QString differenceText(Length measured, const Coordinate& wanted, const Step& step) {
  const std::int64_t shown = wanted.value.ticks() + wanted.rounding.ticks();
  const std::int64_t apart = measured.ticks() - shown;
  if (apart == 0) return {};
  const QString figure = QString::fromStdString(showAtStep(Rational(apart), step).text);
  return apart > 0 ? QLatin1Char('+') + figure : figure;
}

}  // namespace inchwright::app
