#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/geometry/point.h"

namespace inchwright {

/// A place to drive to. Doubles do here: only the length of the way is compared.
struct WorkStop {
  std::string id;
  PlanePoint at;
};

/// Whether one id stands before another as people count: `D2` before `D10`.
bool standsBefore(std::string_view a, std::string_view b);

/// The way from 0, 0 through the stops in the given order; no way back is counted.
double travelThrough(const std::vector<WorkStop>& stops, const std::vector<std::size_t>& order);

/// An order with a short way from 0, 0: the nearest stop each time. What is nearer by no more than
/// `same` is as near, and ties go by id.
std::vector<std::size_t> nearestFirst(const std::vector<WorkStop>& stops, double same = 0);

/// `nearestFirst`, improved by turning stretches round while that shortens the way (2-opt); never
/// longer than it. Deterministic: the same stops in any order give the same way, ties go by id;
/// nothing is turned round that gains no more than `same`.
/// Beyond `kLongestImproved` stops it sweeps the work in strips instead.
std::vector<std::size_t> shortTravel(const std::vector<WorkStop>& stops, double same = 0);
inline constexpr std::size_t kLongestImproved = 4000;

}  // namespace inchwright
