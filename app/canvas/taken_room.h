#pragma once

#include <QRectF>
#include <algorithm>
#include <vector>

namespace inchwright::app {

/// Squares of the pane on which something stands.
class TakenRoom {
 public:
  explicit TakenRoom(const QRectF& pane)
      : columns_(squareOf(pane.width()) + 1), rows_(squareOf(pane.height()) + 1) {
    squares_.resize(static_cast<std::size_t>(columns_ * rows_));
  }

  bool isFree(const QRectF& box) const {
    return !any(box, [&](std::size_t square) { return squares_[square] != 0; });
  }
  void take(const QRectF& box) {
    any(box, [&](std::size_t square) {
      squares_[square] = 1;
      return false;
    });
  }

 private:
  static constexpr qreal kGrain = 8;  ///< pixels

  /// Below 0 for all that lies before the pane. Asked so often that `floor` would tell.
  static int squareOf(qreal at) {
    const qreal squares = std::clamp(at / kGrain, -1.0, 1e6);
    return static_cast<int>(squares) - (squares < 0 ? 1 : 0);
  }

  /// Whether `wanted` holds of a square under the box; asks no further once it does.
  template <class Wanted>
  bool any(const QRectF& box, Wanted wanted) const {
    const int left = std::max(squareOf(box.left() + 1), 0);
    const int right = std::min(squareOf(box.right() - 1), columns_ - 1);
    const int top = std::max(squareOf(box.top() + 1), 0);
    const int bottom = std::min(squareOf(box.bottom() - 2), rows_ - 1);
    for (int row = top; row <= bottom; ++row) {
      for (int column = left; column <= right; ++column) {
        if (wanted(static_cast<std::size_t>(row * columns_ + column))) return true;
      }
    }
    return false;
  }

  int columns_, rows_;
  std::vector<unsigned char> squares_;
};

}  // namespace inchwright::app
