#include "app/session/plausible.h"

#include <array>
#include <cmath>
#include <numbers>

#include "app/session/picture_edits.h"
#include "core/measure/writing.h"

namespace inchwright::app {
namespace {

constexpr double kTracingError = 1.0 / 64;

/// The feature whose trace is the trace of a place; null when it has none of its own. `traced(id)`
/// is the feature of that name where it is traced, else null.
template <class Traced>
const Feature* tracedAs(std::string_view place, const Traced& traced) {
  if (const Feature* itself = traced(place)) return itself;
  // The first hole of a row is where the row was traced.
  if (place.empty() || place.back() != '1') return nullptr;
  const Feature* row = traced(place.substr(0, place.size() - 1));
  return row != nullptr && row->is<kind::Row>() ? row : nullptr;
}

std::optional<double> between(const Feature* from, const Feature* to, Axis axis) {
  if (from == nullptr || to == nullptr) return std::nullopt;
  const auto start = tracedAlong(*from, axis);
  const auto end = tracedAlong(*to, axis);
  if (!start || !end) return std::nullopt;
  return *end - *start;
}

}  // namespace

std::optional<double> tracedDistance(const Part& part, std::string_view from, std::string_view to,
                                     Axis axis) {
  const auto at = [&](std::string_view place) {
    return tracedAs(place, [&](std::string_view id) -> const Feature* {
      const Feature* feature = part.feature(id);
      return feature != nullptr && !feature->traced.empty() ? feature : nullptr;
    });
  };
  return between(at(from), at(to), axis);
}

double tracingBound(double inches, double squaringError) {
  return 3 * std::sqrt(2.0) * std::hypot(kTracingError, squaringError) + 0.01 * std::abs(inches);
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

TracingEvidence::TracingEvidence(const Part& part, double squaringError)
    : squaringError_(squaringError) {
  for (const Feature& feature : part.features) {
    if (!feature.traced.empty()) traced_.emplace(feature.id, &feature);
  }
  std::array<int, 3> agree{}, all{};
  for (const Reading& reading : part.readings) {
    if (reading.kind != ReadingKind::along) continue;
    const auto drawn = distance(reading.from, reading.to, reading.axis);
    if (!drawn) continue;
    const auto axis = static_cast<std::size_t>(reading.axis);
    const double figure = reading.figure.value.toInches();
    ++all[axis];
    if (std::abs(*drawn - figure) <= tracingBound(figure, squaringError_)) ++agree[axis];
  }
  for (std::size_t axis = 0; axis < 3; ++axis) {
    toScale_[axis] = agree[axis] >= 2 && 2 * agree[axis] > all[axis];
  }
}

const Feature* TracingEvidence::tracedAt(std::string_view place) const {
  return tracedAs(place, [this](std::string_view id) -> const Feature* {
    const auto found = traced_.find(id);
    return found == traced_.end() ? nullptr : found->second;
  });
}

std::optional<double> TracingEvidence::distance(std::string_view from, std::string_view to,
                                                Axis axis) const {
  return between(tracedAt(from), tracedAt(to), axis);
}

std::optional<QPointF> TracingEvidence::step(std::string_view from, std::string_view to) const {
  const Feature* start = tracedAt(from);
  if (start == nullptr) return std::nullopt;
  const auto axes = axesIn(start->face);
  const auto along = distance(from, to, axes[0]), up = distance(from, to, axes[1]);
  if (!along || !up) return std::nullopt;
  return asViewed({*along, *up}, start->face);
}

std::string TracingEvidence::objection(const Reading& reading, bool squared) const {
  const bool known =
      squared || (reading.kind == ReadingKind::along ? toScale(reading.axis)
                                                     : toScale(Axis::x) && toScale(Axis::y));
  if (!known) return {};
  if (reading.kind == ReadingKind::angle) return objectionToAngle(reading);
  std::optional<double> drawn;
  if (reading.kind == ReadingKind::along) {
    drawn = distance(reading.from, reading.to, reading.axis);
  } else if (reading.kind == ReadingKind::centres) {
    if (const auto by = step(reading.from, reading.to)) drawn = std::hypot(by->x(), by->y());
  }
  if (!drawn) return {};
  const double figure = reading.figure.value.toInches();
  if (std::abs(*drawn - figure) <= tracingBound(figure, squaringError_)) return {};
  const std::string likely = likelyFigure(*drawn, reading.figure.unit);
  return likely.empty() ? "the tracing puts the two in line" : "the tracing says about " + likely;
}

std::string TracingEvidence::objectionToAngle(const Reading& reading) const {
  // Against a line any of four rays may be meant.
  if (!reading.angle || !reading.against.empty()) return {};
  const auto by = step(reading.from, reading.to);
  if (!by) return {};
  const double far = std::hypot(by->x(), by->y());
  const double bound = std::atan2(tracingBound(far, squaringError_), far) * 180 / std::numbers::pi;
  const double lettered = reading.angle->value.toDegrees();
  const double turned = reading.sense == Sense::clockwise ? -lettered : lettered;
  const double drawn = std::atan2(by->y(), by->x()) * 180 / std::numbers::pi;
  if (std::abs(std::remainder(drawn - turned, 360)) <= bound) return {};
  const double shown = reading.sense == Sense::clockwise ? -drawn : drawn;
  const long degrees = (std::lround(shown) + 360) % 360;
  return "the tracing says about " + std::to_string(degrees) + " degrees";
}

}  // namespace inchwright::app
