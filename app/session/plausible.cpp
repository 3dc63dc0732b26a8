#include "app/session/plausible.h"

#include <cmath>

#include "core/measure/writing.h"

namespace inchwright::app {
namespace {

constexpr double kTracingError = 1.0 / 64;

/// Holes of a ring or row and ends of a slot are not traced one by one.
const Feature* tracedFeature(const Part& part, std::string_view place) {
  const Feature* feature = part.feature(place);
  return feature != nullptr && !feature->traced.empty() ? feature : nullptr;
}

}  // namespace

std::optional<double> tracedDistance(const Part& part, std::string_view from, std::string_view to,
                                     Axis axis) {
  const Feature* a = tracedFeature(part, from);
  const Feature* b = tracedFeature(part, to);
  if (a == nullptr || b == nullptr) return std::nullopt;
  const auto start = tracedAlong(*a, axis);
  const auto end = tracedAlong(*b, axis);
  if (!start || !end) return std::nullopt;
  return *end - *start;
}

double tracingBound(double inches) {
  return 3 * std::sqrt(2.0) * kTracingError + 0.01 * std::abs(inches);
}

bool tracedToScale(const Part& part, Axis axis) {
  int agree = 0, all = 0;
  for (const Reading& reading : part.readings) {
    if (reading.kind != ReadingKind::along || reading.axis != axis) continue;
    const auto traced = tracedDistance(part, reading.from, reading.to, axis);
    if (!traced) continue;
    ++all;
    const double figure = reading.figure.value.toInches();
    if (std::abs(*traced - figure) <= tracingBound(figure)) ++agree;
  }
  return agree >= 2 && 2 * agree > all;
}

std::string likelyFigure(double inches, Unit unit) {
  const double size = std::abs(inches);
  if (size < kTracingError) return {};
  if (unit == Unit::millimetre) {
    const auto halves = static_cast<std::int64_t>(std::llround(size * 25.4 * 2));
    const auto length = Length::ticks(halves * (Length::kTicksPerMillimetre / 2));
    return writeDecimal(length, Unit::millimetre);
  }
  for (std::int64_t denominator = 1; denominator <= 64; denominator *= 2) {
    const auto parts =
        static_cast<std::int64_t>(std::llround(size * static_cast<double>(denominator)));
    const double error =
        std::abs(size - static_cast<double>(parts) / static_cast<double>(denominator));
    if (parts == 0 || (error > 0.75 * kTracingError && denominator < 64)) continue;
    return writeFraction(Length::ticks(parts * (Length::kTicksPerInch / denominator)));
  }
  return {};
}

std::string tracingObjection(const Part& part, const Reading& reading) {
  if (reading.kind != ReadingKind::along || !tracedToScale(part, reading.axis)) return {};
  const auto traced = tracedDistance(part, reading.from, reading.to, reading.axis);
  if (!traced) return {};
  const double figure = reading.figure.value.toInches();
  if (std::abs(*traced - figure) <= tracingBound(figure)) return {};
  const std::string likely = likelyFigure(*traced, reading.figure.unit);
  return likely.empty() ? std::string() : "the tracing says about " + likely;
}

}  // namespace inchwright::app
