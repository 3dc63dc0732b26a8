#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/sheet/bounds.h"

namespace inchwright {

/// Which small squares of a piece of paper something stands on, one bit each: most questions
/// whether a box is free are answered by a few words of it. What lies off the paper is not kept.
class PaperMask {
 public:
  explicit PaperMask(const PaperBox& paper)
      : paper_(paper),
        across_(std::max<std::ptrdiff_t>(1, after(paper.width()))),
        down_(std::max<std::ptrdiff_t>(1, after(paper.height()))),
        words_(static_cast<std::size_t>(across_ + 63) / 64),
        bits_(words_ * static_cast<std::size_t>(down_)) {}

  void mark(const PaperBox& box) {
    const std::ptrdiff_t last = after(box.bottom - paper_.top);
    for (std::ptrdiff_t y = at(box.top - paper_.top); y < last; ++y) {
      markRow(y, box.left - paper_.left, box.right - paper_.left);
    }
  }

  void mark(PlanePoint centre, double radius) {
    const double middle = centre.x - paper_.left, high = centre.y - paper_.top;
    const std::ptrdiff_t last = after(high + radius);
    for (std::ptrdiff_t y = at(high - radius); y < last; ++y) {
      const double top = static_cast<double>(y) * kSquare;
      const double off = std::max({top - high, 0.0, high - top - kSquare});
      if (off >= radius) continue;
      const double half = std::sqrt(radius * radius - off * off);
      markRow(y, middle - half, middle + half);
    }
  }

  /// Something certainly stands in the box: a square that lies in it as a whole is marked.
  bool isTaken(const PaperBox& box) const {
    return any(after(box.left - paper_.left), after(box.top - paper_.top),
               at(box.right - paper_.left), at(box.bottom - paper_.top));
  }

  /// Nothing stands in the box: no square that it touches is marked. Requires that it lies on the
  /// paper.
  bool isEmpty(const PaperBox& box) const {
    return !any(at(box.left - paper_.left), at(box.top - paper_.top),
                at(box.right - paper_.left) + 1, at(box.bottom - paper_.top) + 1);
  }

 private:
  static constexpr double kSquare = 0.5;  // mm

  /// The square that an offset lies in; the first that begins there or later.
  static std::ptrdiff_t at(double offset) {
    const double squares = offset / kSquare;
    const auto whole = static_cast<std::ptrdiff_t>(squares);
    return squares < static_cast<double>(whole) ? whole - 1 : whole;
  }
  static std::ptrdiff_t after(double offset) { return -at(-offset); }

  void markRow(std::ptrdiff_t y, double left, double right) {
    if (y < 0 || y >= down_) return;
    const std::ptrdiff_t end = std::min(after(right), across_);
    for (std::ptrdiff_t x = std::max<std::ptrdiff_t>(at(left), 0); x < end; ++x) {
      bits_[wordAt(x, y)] |= std::uint64_t{1} << (x % 64);
    }
  }

  std::size_t wordAt(std::ptrdiff_t x, std::ptrdiff_t y) const {
    return static_cast<std::size_t>(y) * words_ + static_cast<std::size_t>(x / 64);
  }

  /// Of the squares from the first to before the last, both ways.
  bool any(std::ptrdiff_t left, std::ptrdiff_t top, std::ptrdiff_t right,
           std::ptrdiff_t bottom) const {
    left = std::max<std::ptrdiff_t>(left, 0);
    right = std::min(right, across_);
    bottom = std::min(bottom, down_);
    if (left >= right) return false;
    const auto begin = static_cast<std::size_t>(left), end = static_cast<std::size_t>(right - 1);
    const std::uint64_t first = ~std::uint64_t{0} << (begin % 64);
    const std::uint64_t last = ~std::uint64_t{0} >> (63 - end % 64);
    const std::size_t across = end / 64 - begin / 64;  // from the first word to the last
    for (std::ptrdiff_t y = std::max<std::ptrdiff_t>(top, 0); y < bottom; ++y) {
      const std::uint64_t* word = &bits_[static_cast<std::size_t>(y) * words_ + begin / 64];
      std::uint64_t found = across == 0 ? *word & first & last : *word & first;
      for (std::size_t i = 1; i < across; ++i) found |= word[i];
      if (across > 0) found |= word[across] & last;
      if (found != 0) return true;
    }
    return false;
  }

  PaperBox paper_;
  std::ptrdiff_t across_;
  std::ptrdiff_t down_;
  std::size_t words_;  ///< of a row
  std::vector<std::uint64_t> bits_;
};

}  // namespace inchwright
