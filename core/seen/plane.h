#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

namespace inchwright::seen {

/// A rectangle of values, row by row from the top. Pixel centres lie at whole numbers.
template <class T>
struct Plane {
  int width = 0;
  int height = 0;
  std::vector<T> at;

  Plane() = default;
  Plane(int w, int h, T value = T{})
      : width(w), height(h), at(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), value) {}

  T* row(int y) {
    return at.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
  }
  const T* row(int y) const {
    return at.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
  }
  bool holds(int x, int y) const { return x >= 0 && y >= 0 && x < width && y < height; }
  bool empty() const { return at.empty(); }
};

/// Grey, or how far ink covers a pixel: 0 none, 255 all.
using Grey = Plane<std::uint8_t>;

/// Ink thinner than this is paper; see `Ink`.
inline constexpr std::uint8_t kInk = 84;

/// A box of pixels: those from x to x + w - 1 and y to y + h - 1.
struct Box {
  int x = 0;
  int y = 0;
  int w = 0;
  int h = 0;

  int right() const { return x + w; }
  int bottom() const { return y + h; }
  double midX() const { return x + (w - 1) / 2.0; }
  double midY() const { return y + (h - 1) / 2.0; }
  bool operator==(const Box&) const = default;
};

inline Box around(const Box& a, const Box& b) {
  const int x = std::min(a.x, b.x), y = std::min(a.y, b.y);
  return {x, y, std::max(a.right(), b.right()) - x, std::max(a.bottom(), b.bottom()) - y};
}

/// Whether somebody asked for the work to end. Looked at with every row of a picture and every
/// few hundred of anything else, so as to answer in 0.1 s; what was begun is then worth nothing.
class Stop {
 public:
  explicit Stop(const std::atomic<bool>* wanted = nullptr)
      : Stop(wanted == nullptr ? std::function<bool()>()
                               : [wanted] { return wanted->load(std::memory_order_relaxed); }) {}
  explicit Stop(std::function<bool()> asked) : asked_(std::move(asked)) {}
  bool asked() const { return asked_ && asked_(); }
  /// The same, but asked only at every `by`th of something counted.
  bool askedAt(std::size_t i, std::size_t by = 256) const { return i % by == 0 && asked(); }

 private:
  std::function<bool()> asked_;
};

/// Rows become columns: (x, y) goes to (y, x).
Grey transposed(const Grey& from);
/// Every pixel the mean of `by` × `by`; what is left over at the right and below is dropped, but
/// one pixel stays at least.
Grey shrunk(const Grey& from, int by);
/// The part of a plane inside a box; what reaches beyond it is 0.
Grey cut(const Grey& from, const Box& box);
/// A quarter turn clockwise: what was read from the right stands upright.
Grey turnedUpright(const Grey& from);
/// Means over (2 reach + 1)², edges repeated.
Grey blurred(const Grey& from, int reach);
/// The greatest of (2 reach + 1)².
Grey widened(const Grey& from, int reach);
/// The least of (2 reach + 1)².
Grey narrowed(const Grey& from, int reach);

/// The blend of the four pixels round a point that lies within the picture, none of them beyond it.
inline double sampledWithin(const Grey& g, double x, double y) {
  const int i = static_cast<int>(x), j = static_cast<int>(y);
  const double fx = x - i, fy = y - j;
  const std::uint8_t *a = g.row(j) + i, *b = g.row(j + 1) + i;
  return (a[0] * (1 - fx) + a[1] * fx) * (1 - fy) + (b[0] * (1 - fx) + b[1] * fx) * fy;
}

/// The blend of the four pixels round a point; beyond the edge there is nothing, 0.
inline double sampled(const Grey& g, double x, double y) {
  if (x >= 0 && y >= 0 && x < g.width - 1 && y < g.height - 1) return sampledWithin(g, x, y);
  if (!(x > -1 && y > -1 && x < g.width && y < g.height)) return 0;
  const int i = static_cast<int>(x + 1) - 1, j = static_cast<int>(y + 1) - 1;
  const double fx = x - i, fy = y - j;
  const auto at = [&](int u, int v) {
    return g.holds(u, v) ? static_cast<double>(g.row(v)[u]) : 0;
  };
  return (at(i, j) * (1 - fx) + at(i + 1, j) * fx) * (1 - fy) +
         (at(i, j + 1) * (1 - fx) + at(i + 1, j + 1) * fx) * fy;
}

}  // namespace inchwright::seen
