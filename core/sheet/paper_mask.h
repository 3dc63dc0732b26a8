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
    return any(bits_, after(box.left - paper_.left), after(box.top - paper_.top),
               at(box.right - paper_.left), at(box.bottom - paper_.top));
  }

  /// Prepares `mayHold` for boxes at least so large.
  void findRoomFor(double width, double height) {
    constexpr double kTiny = 1e-6;
    // So many whole squares one covers wherever it lies; none where it is narrower than two.
    const std::ptrdiff_t wide = at(width - kTiny) - 1, high = at(height - kTiny) - 1;
    if (!room_.empty() && wide_ <= wide && high_ <= high) return;
    wide_ = room_.empty() ? wide : std::min(wide, wide_);
    high_ = room_.empty() ? high : std::min(high, high_);
    findRoom();
  }

  /// Whether a box that room was looked for may be free: as sure as `isTaken` of all that was
  /// marked by then, and quicker asked. Requires that it lies on the paper.
  bool mayHold(const PaperBox& box) const {
    if (wide_ < 1 || high_ < 1) return true;
    const std::ptrdiff_t x = after(box.left - paper_.left), y = after(box.top - paper_.top);
    return (room_[wordAt(x, y)] >> (x % 64) & 1) != 0;
  }

  /// Nothing stands in the box: no square that it touches is marked. Requires that it lies on the
  /// paper.
  bool isEmpty(const PaperBox& box) const {
    return !any(bits_, at(box.left - paper_.left), at(box.top - paper_.top),
                at(box.right - paper_.left) + 1, at(box.bottom - paper_.top) + 1);
  }

 private:
  static constexpr double kSquare = 0.5;  // mm
  using Bits = std::vector<std::uint64_t>;

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

  /// Notes each square at which a block of `wide_` by `high_` free ones begins. Runs grow from two
  /// of the last length, the one beginning `by` further on:
  ///
  ///     free          1 1 1 1 1 0 1 1
  ///     two of them   1 1 1 1 0 0 1 0
  ///     four          1 1 0 0 0 0 0 0
  void findRoom() {
    const std::uint64_t inLast = ~std::uint64_t{0} >> (63 - (across_ - 1) % 64);
    room_.resize(bits_.size());
    for (std::size_t word = 0; word < room_.size(); ++word) {
      room_[word] = ~bits_[word] & (word % words_ + 1 == words_ ? inLast : ~std::uint64_t{0});
    }
    eachDoubling(wide_, [&](std::size_t by) {
      for (std::size_t word = 0; word < room_.size(); ++word) {
        const bool last = word % words_ + 1 == words_;
        room_[word] &= room_[word] >> by | (last ? 0 : room_[word + 1] << (64 - by));
      }
    });
    eachDoubling(high_, [&](std::size_t by) {
      for (std::size_t word = 0; word < room_.size(); ++word) {
        const std::size_t below = word + by * words_;
        room_[word] &= below < room_.size() ? room_[below] : 0;
      }
    });
  }

  /// The steps by which a run of one grows to `length`.
  template <class Step>
  static void eachDoubling(std::ptrdiff_t length, const Step& step) {
    for (std::ptrdiff_t run = 1; run < length;) {
      const std::ptrdiff_t by = std::min({run, length - run, std::ptrdiff_t{63}});
      step(static_cast<std::size_t>(by));
      run += by;
    }
  }

  /// Of the squares from the first to before the last, both ways.
  bool any(const Bits& bits, std::ptrdiff_t left, std::ptrdiff_t top, std::ptrdiff_t right,
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
      const std::uint64_t* word = &bits[static_cast<std::size_t>(y) * words_ + begin / 64];
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
  Bits bits_;
  Bits room_;  ///< where a block of so many squares found room when it was last looked for
  std::ptrdiff_t wide_ = 0;
  std::ptrdiff_t high_ = 0;
};

}  // namespace inchwright
