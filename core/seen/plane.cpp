#include "core/seen/plane.h"

#include <bit>
#include <cstring>
#include <numeric>

namespace inchwright::seen {
namespace {

constexpr int kTile = 32;  // what fits the nearest cache both ways

/// The extreme of each window of 2 reach + 1 along a row, by van Herk's running extremes over
/// blocks (Pattern Recognition Letters 13, 1992, from memory): three comparisons a pixel.
template <class Pick>
void extremeOfRow(const std::uint8_t* from, std::uint8_t* to, int n, int reach, Pick pick,
                  std::vector<std::uint8_t>& padded, std::vector<std::uint8_t>& back) {
  const int window = 2 * reach + 1;
  const int size = (n + 2 * reach + window - 1) / window * window;
  padded.assign(static_cast<std::size_t>(size), from[n - 1]);
  std::fill_n(padded.begin(), reach, from[0]);
  std::copy_n(from, n, padded.begin() + reach);
  back = padded;
  // Of the pixels of a block so far, forwards and backwards.
  for (int first = 0; first < size; first += window) {
    std::uint8_t *ahead = padded.data() + first, *behind = back.data() + first;
    std::uint8_t most = ahead[0];
    for (int i = 1; i < window; ++i) ahead[i] = most = pick(most, ahead[i]);
    most = behind[window - 1];
    for (int i = window - 2; i >= 0; --i) behind[i] = most = pick(most, behind[i]);
  }
  const std::uint8_t *behind = back.data(), *ahead = padded.data() + window - 1;
  for (int i = 0; i < n; ++i) to[i] = pick(behind[i], ahead[i]);
}

template <class Pick>
Grey extreme(const Grey& from, int reach, Pick pick) {
  if (reach <= 0 || from.empty()) return from;
  std::vector<std::uint8_t> padded, back;
  Grey along(from.width, from.height);
  for (int y = 0; y < from.height; ++y) {
    extremeOfRow(from.row(y), along.row(y), from.width, reach, pick, padded, back);
  }
  const Grey turned = transposed(along);
  Grey both(turned.width, turned.height);
  for (int y = 0; y < turned.height; ++y) {
    extremeOfRow(turned.row(y), both.row(y), turned.width, reach, pick, padded, back);
  }
  return transposed(both);
}

void meanOfRow(const std::uint8_t* from, std::uint8_t* to, int n, int reach) {
  const int window = 2 * reach + 1;
  int sum = 0;
  const auto at = [&](int i) { return from[std::clamp(i, 0, n - 1)]; };
  for (int i = -reach; i <= reach; ++i) sum += at(i);
  for (int i = 0; i < n; ++i) {
    to[i] = static_cast<std::uint8_t>((sum + reach) / window);
    sum += at(i + reach + 1) - at(i - reach);
  }
}

/// Sums of neighbouring pairs of eight pixels, 16 bits each, the first lowest.
std::uint64_t pairsAt(const std::uint8_t* p) {
  constexpr std::uint64_t kEven = 0x00FF00FF00FF00FF;
  std::uint64_t eight;
  std::memcpy(&eight, p, sizeof eight);
  return (eight & kEven) + (eight >> 8 & kEven);
}

/// Means over squares of a side known beforehand, 2 or 4, which is several times as fast.
template <int kSide>
Grey meansOf(const Grey& from) {
  constexpr int kAtOnce = 8 / kSide;
  Grey to(from.width / kSide, from.height / kSide);
  for (int y = 0; y < to.height; ++y) {
    std::uint8_t* row = to.row(y);
    int x = 0;
    for (; std::endian::native == std::endian::little && x + kAtOnce <= to.width; x += kAtOnce) {
      std::uint64_t sum = 0;
      for (int j = 0; j < kSide; ++j) sum += pairsAt(from.row(y * kSide + j) + x * kSide);
      if (kSide == 4) sum += sum >> 16;
      for (int i = 0; i < kAtOnce; ++i) {
        const auto own = static_cast<int>(sum >> (8 * kSide * i) & 0xFFFF);
        row[x + i] = static_cast<std::uint8_t>((own + kSide * kSide / 2) / (kSide * kSide));
      }
    }
    for (; x < to.width; ++x) {
      int sum = kSide * kSide / 2;
      for (int j = 0; j < kSide; ++j) {
        const std::uint8_t* p = from.row(y * kSide + j) + x * kSide;
        for (int i = 0; i < kSide; ++i) sum += p[i];
      }
      row[x] = static_cast<std::uint8_t>(sum / (kSide * kSide));
    }
  }
  return to;
}

}  // namespace

Grey transposed(const Grey& from) {
  Grey to(from.height, from.width);
  for (int by = 0; by < from.height; by += kTile) {
    for (int bx = 0; bx < from.width; bx += kTile) {
      const int endY = std::min(from.height, by + kTile), endX = std::min(from.width, bx + kTile);
      for (int y = by; y < endY; ++y) {
        const std::uint8_t* row = from.row(y);
        for (int x = bx; x < endX; ++x) to.row(x)[y] = row[x];
      }
    }
  }
  return to;
}

Grey shrunk(const Grey& from, int by) {
  if (by <= 1 || from.empty()) return from;
  if (by == 2 && std::min(from.width, from.height) >= 2) return meansOf<2>(from);
  if (by == 4 && std::min(from.width, from.height) >= 4) return meansOf<4>(from);
  Grey to(std::max(1, from.width / by), std::max(1, from.height / by));
  const int rows = std::min(by, from.height), columns = std::min(by, from.width);
  const int count = rows * columns;
  for (int y = 0; y < to.height; ++y) {
    for (int x = 0; x < to.width; ++x) {
      int sum = 0;
      for (int j = 0; j < rows; ++j) {
        const std::uint8_t* row = from.row(y * by + j) + x * by;
        sum = std::accumulate(row, row + columns, sum);
      }
      to.row(y)[x] = static_cast<std::uint8_t>((sum + count / 2) / count);
    }
  }
  return to;
}

Grey cut(const Grey& from, const Box& box) {
  Grey to(box.w, box.h);
  const int x0 = std::max(0, box.x), x1 = std::min(from.width, box.right());
  if (x1 <= x0) return to;
  for (int y = std::max(0, box.y); y < std::min(from.height, box.bottom()); ++y) {
    std::copy(from.row(y) + x0, from.row(y) + x1, to.row(y - box.y) + (x0 - box.x));
  }
  return to;
}

Grey turnedUpright(const Grey& from) {
  Grey to(from.height, from.width);
  for (int y = 0; y < from.height; ++y) {
    for (int x = 0; x < from.width; ++x) to.row(x)[from.height - 1 - y] = from.row(y)[x];
  }
  return to;
}

Grey blurred(const Grey& from, int reach) {
  if (reach <= 0 || from.empty()) return from;
  Grey along(from.width, from.height);
  for (int y = 0; y < from.height; ++y) meanOfRow(from.row(y), along.row(y), from.width, reach);
  const Grey turned = transposed(along);
  Grey both(turned.width, turned.height);
  for (int y = 0; y < turned.height; ++y)
    meanOfRow(turned.row(y), both.row(y), turned.width, reach);
  return transposed(both);
}

Grey widened(const Grey& from, int reach) {
  return extreme(from, reach, [](std::uint8_t a, std::uint8_t b) { return std::max(a, b); });
}

Grey narrowed(const Grey& from, int reach) {
  return extreme(from, reach, [](std::uint8_t a, std::uint8_t b) { return std::min(a, b); });
}

}  // namespace inchwright::seen
