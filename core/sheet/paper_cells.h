#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "core/sheet/sketch.h"

namespace inchwright {

/// What lies where on a piece of paper: numbered boxes by the square cells they touch, so that
/// looking a place up takes as long as it is crowded. Everything outside the paper counts as on its
/// border.
class PaperCells {
 public:
  explicit PaperCells(const PaperBox& paper)
      : paper_(paper),
        across_(cellAt(paper.width()) + 1),
        down_(cellAt(paper.height()) + 1),
        cells_(across_ * down_) {}

  void add(const PaperBox& box, std::uint32_t number) {
    const Touched touched = touchedBy(box);
    for (std::size_t y = touched.top; y <= touched.bottom; ++y) {
      for (std::size_t x = touched.left; x <= touched.right; ++x) {
        cells_[y * across_ + x].push_back(number);
      }
    }
  }

  /// Whether `holds(number)` is true of anything in the cells that a box touches; asked perhaps
  /// more than once of the same.
  template <class Holds>
  bool any(const PaperBox& box, const Holds& holds) const {
    const Touched touched = touchedBy(box);
    for (std::size_t y = touched.top; y <= touched.bottom; ++y) {
      for (std::size_t x = touched.left; x <= touched.right; ++x) {
        const std::vector<std::uint32_t>& cell = cells_[y * across_ + x];
        if (std::any_of(cell.begin(), cell.end(), holds)) return true;
      }
    }
    return false;
  }

 private:
  static constexpr double kCell = 6;  // mm: about the size of a name

  /// Cells, the last ones included.
  struct Touched {
    std::size_t left, top, right, bottom;
  };

  static std::size_t cellAt(double offset) {
    return offset > 0 ? static_cast<std::size_t>(std::min(offset / kCell, 1000.0)) : 0;
  }

  Touched touchedBy(const PaperBox& box) const {
    const std::size_t right = std::min(cellAt(box.right - paper_.left), across_ - 1);
    const std::size_t bottom = std::min(cellAt(box.bottom - paper_.top), down_ - 1);
    return {std::min(cellAt(box.left - paper_.left), right),
            std::min(cellAt(box.top - paper_.top), bottom), right, bottom};
  }

  PaperBox paper_;
  std::size_t across_;
  std::size_t down_;
  std::vector<std::vector<std::uint32_t>> cells_;
};

}  // namespace inchwright
