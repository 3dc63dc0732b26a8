#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "core/geometry/point.h"

namespace inchwright {

/// Places on the table by the square cells they lie in, about two in each, so that what lies near a
/// place is found without looking at the rest. Refers to them: they outlive it, unchanged.
class SpotGrid {
 public:
  /// Requires at least one spot.
  explicit SpotGrid(const std::vector<PlanePoint>& spots) : spots_(spots) {
    const auto [left, right] =
        std::minmax_element(spots.begin(), spots.end(),
                            [](const PlanePoint& a, const PlanePoint& b) { return a.x < b.x; });
    const auto [low, high] =
        std::minmax_element(spots.begin(), spots.end(),
                            [](const PlanePoint& a, const PlanePoint& b) { return a.y < b.y; });
    corner_ = {left->x, low->y};
    const double width = right->x - left->x, height = high->y - low->y;
    const double most = std::max(width, height);
    const double cells = std::max(1.0, static_cast<double>(spots.size()) / 2);
    // Never more cells than spots, however long and thin the part is.
    cell_ = std::max({std::sqrt(width * height / cells), most / cells, 1e-9});
    across_ = cellAlong(width) + 1;
    down_ = cellAlong(height) + 1;
    cells_.resize(across_ * down_);
    for (std::size_t i = 0; i < spots.size(); ++i) cells_[cellOf(spots[i])].push_back(i);
  }

  double cell() const { return cell_; }

  void remove(std::size_t spot) {
    std::vector<std::size_t>& in = cells_[cellOf(spots_[spot])];
    in.erase(std::find(in.begin(), in.end(), spot));
  }

  /// Calls `visit` with every spot that is at most `radius` away, and with some others.
  template <class Visit>
  void near(const PlanePoint& at, double radius, Visit visit) const {
    const std::size_t left = cellAlong(at.x - radius - corner_.x);
    const std::size_t low = cellAlong(at.y - radius - corner_.y);
    const std::size_t right = std::min(cellAlong(at.x + radius - corner_.x), across_ - 1);
    const std::size_t high = std::min(cellAlong(at.y + radius - corner_.y), down_ - 1);
    for (std::size_t y = low; y <= high; ++y) {
      for (std::size_t x = left; x <= right; ++x) {
        for (const std::size_t spot : cells_[y * across_ + x]) visit(spot);
      }
    }
  }

  /// The nearest of what was not removed, the first of those as near but for `same`. Requires that
  /// there is one.
  std::size_t nearest(const PlanePoint& at, double same) const {
    const std::size_t x = std::min(cellAlong(at.x - corner_.x), across_ - 1);
    const std::size_t y = std::min(cellAlong(at.y - corner_.y), down_ - 1);
    std::size_t best = spots_.size();
    double least = INFINITY;
    for (std::size_t ring = 0; ring < std::max(across_, down_); ++ring) {
      // Cells of this ring are at least so far away; a place outside the grid is no nearer.
      const double away = ring == 0 ? 0 : static_cast<double>(ring - 1) * cell_;
      if (away * away > least) break;
      eachOfRing(x, y, ring, [&](std::size_t spot) {
        const double square = squareBetween(spots_[spot], at);
        if (square > least || (square == least && spot > best)) return;
        least = square;
        best = spot;
      });
    }
    if (same <= 0) return best;
    const double most = std::sqrt(least) + same;
    near(at, most, [&](std::size_t spot) {
      if (spot < best && squareBetween(spots_[spot], at) <= most * most) best = spot;
    });
    return best;
  }

 private:
  std::size_t cellAlong(double offset) const {
    return offset > 0 ? static_cast<std::size_t>(offset / cell_) : 0;
  }
  std::size_t cellOf(const PlanePoint& spot) const {
    return cellAlong(spot.y - corner_.y) * across_ + cellAlong(spot.x - corner_.x);
  }

  /// The cells whose greater distance along an axis from the cell at `x`, `y` is `ring`.
  template <class Visit>
  void eachOfRing(std::size_t x, std::size_t y, std::size_t ring, Visit visit) const {
    const std::size_t top = std::min(y + ring, down_ - 1), right = std::min(x + ring, across_ - 1);
    for (std::size_t row = y > ring ? y - ring : 0; row <= top; ++row) {
      const bool whole = row + ring == y || row == y + ring;
      for (std::size_t column = x > ring ? x - ring : 0; column <= right; ++column) {
        if (!whole && column + ring != x && column != x + ring) {
          // Straight on to the right end of the ring.
          if (x + ring > right) break;
          column = x + ring;
        }
        for (const std::size_t spot : cells_[row * across_ + column]) visit(spot);
      }
    }
  }

  const std::vector<PlanePoint>& spots_;
  PlanePoint corner_;
  double cell_ = 1;
  std::size_t across_ = 1;
  std::size_t down_ = 1;
  std::vector<std::vector<std::size_t>> cells_;
};

}  // namespace inchwright
