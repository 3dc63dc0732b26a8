#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "core/geometry/homography.h"
#include "core/place/answers.h"

namespace inchwright {

/// Numbered points of a plane (inches) kept by cells of a thou, so that what stands on a spot is
/// found without a walk through all of them.
class PointsByCell {
 public:
  void add(std::uint32_t point, PlanePoint at) {
    forCellsAbout(at, [&](const Cell& cell) { pointsIn_[cell].push_back(point); });
  }

  /// Whether `holds(point)` for any point within `kOneAnswerInches` of `at`; it is asked of some
  /// that lie farther off as well, and of some twice.
  template <class Holds>
  bool anyAbout(PlanePoint at, Holds holds) const {
    bool any = false;
    forCellsAbout(at, [&](const Cell& cell) {
      const auto found = pointsIn_.find(cell);
      any = any || (found != pointsIn_.end() &&
                    std::any_of(found->second.begin(), found->second.end(), holds));
    });
    return any;
  }

 private:
  using Cell = std::pair<long long, long long>;

  // One cell, but for points near a border: their surroundings of 200 ticks reach over it.
  template <class Visit>
  static void forCellsAbout(PlanePoint at, Visit visit) {
    constexpr double kCell = 1e-3, kAbout = 2 * kOneAnswerInches;
    const auto low = [](double x) { return std::llround(std::floor((x - kAbout) / kCell)); };
    const auto high = [](double x) { return std::llround(std::floor((x + kAbout) / kCell)); };
    for (auto x = low(at.x); x <= high(at.x); ++x) {
      for (auto y = low(at.y); y <= high(at.y); ++y) visit(Cell(x, y));
    }
  }

  std::map<Cell, std::vector<std::uint32_t>> pointsIn_;
};

}  // namespace inchwright
