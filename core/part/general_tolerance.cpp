#include <array>
#include <cstdint>

#include "core/part/job.h"

namespace inchwright {
namespace {

constexpr Length inchPart(std::int64_t divisor) {
  return Length::ticks(Length::kTicksPerInch / divisor);
}

/// Hundredths of a millimetre.
constexpr Length hundredths(std::int64_t count) {
  return Length::ticks(count * (Length::kTicksPerMillimetre / 100));
}

struct SizeBand {
  Length upTo;
  Length plusMinus;
};

// ISO 2768-1:1989, table 1, class m (medium): linear dimensions but broken edges. Below 0.5 mm the
// tolerance has to stand with the figure; above 4000 mm the table ends.
constexpr Length kSmallestBanded = hundredths(50);
constexpr std::array<SizeBand, 7> kMedium{{
    {hundredths(600), hundredths(10)},
    {hundredths(3'000), hundredths(20)},
    {hundredths(12'000), hundredths(30)},
    {hundredths(40'000), hundredths(50)},
    {hundredths(100'000), hundredths(80)},
    {hundredths(200'000), hundredths(120)},
    {hundredths(400'000), hundredths(200)},
}};

std::optional<Tolerance> mediumBand(Length size) {
  const Length magnitude = size.magnitude();
  if (magnitude < kSmallestBanded) return std::nullopt;
  for (const SizeBand& band : kMedium) {
    if (magnitude <= band.upTo) return Tolerance::symmetric(band.plusMinus);
  }
  return std::nullopt;
}

}  // namespace

std::optional<Tolerance> toleranceOf(const Lettered& figure, const General& general) {
  if (figure.tolerance) return figure.tolerance;
  if (figure.basic || figure.reference) return std::nullopt;
  if (figure.lettering == Lettering::fraction) {
    return Tolerance::symmetric(general.fractions ? general.fractions->value : inchPart(64));
  }
  const bool close = figure.places >= 3;
  const std::optional<Lettered>& named = close ? general.threePlaces : general.twoPlaces;
  if (figure.lettering == Lettering::millimetres) {
    if (named && named->unit == Unit::millimetre) return Tolerance::symmetric(named->value);
    return mediumBand(figure.value);
  }
  if (named) return Tolerance::symmetric(named->value);
  return Tolerance::symmetric(inchPart(close ? 200 : 100));
}

}  // namespace inchwright
