#include "core/seen/paper.h"

#include <array>

namespace inchwright::seen {
namespace {

constexpr int kCoarse = 4;  // the paper's tone is looked at so much coarser

/// Ink strays further from the tone round it than paper does: which way tells white on dark.
bool inkIsLight(const Grey& grey, const Grey& mean) {
  std::array<std::int64_t, 511> count{};
  std::int64_t all = 0;
  for (int y = 0; y < grey.height; y += 2) {
    const std::uint8_t* round = mean.row(std::min(y / kCoarse, mean.height - 1));
    for (int x = 0; x < grey.width; x += 2) {
      ++count[255 + grey.row(y)[x] - round[std::min(x / kCoarse, mean.width - 1)]];
      ++all;
    }
  }
  const auto beyond = [&](bool light) {
    std::int64_t left = all * 7 / 1000;
    int tone = light ? 510 : 0;
    while ((left -= count[tone]) >= 0 && tone != 255) tone += light ? -1 : 1;
    return light ? tone - 255 : 255 - tone;
  };
  return beyond(true) > beyond(false);
}

/// The fall below the paper that counts as full ink, of 255.
int fullInk(const Grey& fall) {
  std::array<std::int64_t, 256> count{};
  std::int64_t all = 0;
  for (std::size_t i = 0; i < fall.at.size(); i += 3) {
    if (fall.at[i] <= 51) continue;
    ++count[fall.at[i]];
    ++all;
  }
  if (all < 200) return 153;
  std::int64_t left = all / 10;
  int tone = 255;
  while ((left -= count[tone]) >= 0 && tone > 52) --tone;
  return tone;
}

/// How far a tone falls below the paper's, of 255: `255 / max(paper, 30)` of it without a division.
class Fall {
 public:
  Fall() {
    for (int paper = 0; paper < 256; ++paper) {
      const int d = std::max(paper, 30);
      part_[paper] = static_cast<std::uint32_t>(((1 << 24) + d - 1) / d);
    }
  }
  std::uint8_t of(int paper, int tone) const {
    const auto below = static_cast<std::uint32_t>(std::max(0, paper - tone) * 255);
    return static_cast<std::uint8_t>(std::min<std::uint32_t>(
        255, static_cast<std::uint32_t>(std::uint64_t{below} * part_[paper] >> 24)));
  }

 private:
  std::array<std::uint32_t, 256> part_{};
};

/// The paper's tone along one row of the picture, 256 times as fine: blended of two coarse rows.
void blendRows(const Grey& paper, int y, std::vector<int>& out) {
  const double v = std::clamp((y - 1.5) / kCoarse, 0.0, paper.height - 1.0);
  const int j = std::min(static_cast<int>(v), std::max(0, paper.height - 2));
  const int fy = paper.height < 2 ? 0 : static_cast<int>((v - j) * 256);
  const std::uint8_t* upper = paper.row(j);
  const std::uint8_t* lower = paper.row(std::min(j + 1, paper.height - 1));
  for (int x = 0; x < paper.width; ++x) out[x] = upper[x] * (256 - fy) + lower[x] * fy;
}

}  // namespace

Ink inkOf(const Grey& grey, double inch, const Stop& stop) {
  Grey coarse = shrunk(grey, kCoarse);
  const int half = std::max(2, static_cast<int>(inch * 0.25 / kCoarse));
  Ink out;
  out.lightOnDark = inkIsLight(grey, blurred(coarse, half));
  const int turned = out.lightOnDark ? 255 : 0;
  for (auto& v : coarse.at) v = static_cast<std::uint8_t>(v ^ turned);
  if (stop.asked()) return out;
  const int stroke = std::max(1, static_cast<int>(inch * 0.03));
  const Grey paper = blurred(narrowed(widened(coarse, stroke), stroke), half);
  static const Fall fall;
  out.cover = Grey(grey.width, grey.height);
  std::vector<int> blend(static_cast<std::size_t>(paper.width));
  for (int y = 0; y < grey.height && !stop.asked(); ++y) {
    blendRows(paper, y, blend);
    const std::uint8_t* from = grey.row(y);
    std::uint8_t* to = out.cover.row(y);
    for (int x = 0; x < grey.width; ++x) {
      const int at = std::clamp(x * 64 - 96, 0, (paper.width - 1) * 256);
      const int i = at >> 8, fx = at & 255, k = std::min(i + 1, paper.width - 1);
      const int here = (blend[i] * (256 - fx) + blend[k] * fx + 32768) >> 16;
      to[x] = fall.of(here, from[x] ^ turned);
    }
  }
  const int full = fullInk(out.cover);
  std::array<std::uint8_t, 256> darker{};
  for (int v = 0; v < 256; ++v)
    darker[v] = static_cast<std::uint8_t>(std::min(255, v * 255 / full));
  for (auto& v : out.cover.at) v = darker[v];
  return out;
}

}  // namespace inchwright::seen
