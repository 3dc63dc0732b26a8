#include "core/part/common_axis.h"

#include <cmath>
#include <string>

#include "core/part/place_index.h"

namespace inchwright {

Result<Axis> axisBetween(const Part& part, std::string_view from, std::string_view to,
                         Axis wanted) {
  const auto index = PlaceIndex::of(part);
  if (!index.ok()) return index.error();
  const auto a = index->find(from);
  const auto b = index->find(to);
  if (!a || !b) {
    const std::string missing(!a ? from : to);
    return Error{ErrorCode::notFound, "there is no `" + missing + "`", missing};
  }
  if (a->axes.has(wanted) && b->axes.has(wanted)) return wanted;
  for (const Axis axis : kAxes) {
    if (a->axes.has(axis) && b->axes.has(axis)) return axis;
  }
  return Error{ErrorCode::badRequest,
               std::string(from) + " and " + std::string(to) +
                   " have no axis in common, so no dimension runs between them",
               std::string(from)};
}

Result<Axis> axisOfReading(const Part& part, std::string_view from, std::string_view to,
                           Axis wanted) {
  // What tracing to 1/64 in can't tell from nothing, and what it can.
  constexpr double kInLine = 1.0 / 32, kApart = 1.0 / 8;
  const auto shared = axisBetween(part, from, to, wanted);
  const Feature* a = part.feature(from);
  const Feature* b = part.feature(to);
  if (!shared.ok() || a == nullptr || b == nullptr) return shared;
  const auto apart = [&](Axis axis) -> std::optional<double> {
    const auto start = tracedAlong(*a, axis), end = tracedAlong(*b, axis);
    if (!start || !end) return std::nullopt;
    return std::abs(*end - *start);
  };
  if (apart(*shared).value_or(kApart) >= kInLine) return shared;
  for (const Axis axis : kAxes) {
    if (apart(axis).value_or(0) >= kApart) return axis;
  }
  return shared;
}

}  // namespace inchwright
