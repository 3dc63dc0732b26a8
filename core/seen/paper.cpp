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

}  // namespace

Ink inkOf(const Grey& grey, double inch, const Stop& stop) {
  Grey tone = grey;
  Grey coarse = shrunk(tone, kCoarse);
  const int half = std::max(2, static_cast<int>(inch * 0.25 / kCoarse));
  Ink out;
  out.lightOnDark = inkIsLight(tone, blurred(coarse, half));
  if (out.lightOnDark) {
    for (auto& v : tone.at) v = static_cast<std::uint8_t>(255 - v);
    for (auto& v : coarse.at) v = static_cast<std::uint8_t>(255 - v);
  }
  if (stop.asked()) return out;
  const int stroke = std::max(1, static_cast<int>(inch * 0.03));
  const Grey paper = blurred(narrowed(widened(coarse, stroke), stroke), half);
  for (int y = 0; y < tone.height && !stop.asked(); ++y) {
    const double v = std::clamp((y - 1.5) / kCoarse, 0.0, paper.height - 1.0);
    const int j = std::min(static_cast<int>(v), std::max(0, paper.height - 2));
    const int fy = paper.height < 2 ? 0 : static_cast<int>((v - j) * 256);
    const std::uint8_t* upper = paper.row(j);
    const std::uint8_t* lower = paper.row(std::min(j + 1, paper.height - 1));
    std::uint8_t* row = tone.row(y);
    for (int x = 0; x < tone.width; ++x) {
      const int at = std::clamp(x * 64 - 96, 0, (paper.width - 1) * 256);
      const int i = std::min(at >> 8, std::max(0, paper.width - 2)),
                fx = paper.width < 2 ? 0 : at - i * 256;
      const int k = std::min(i + 1, paper.width - 1);
      const int here = ((upper[i] * (256 - fx) + upper[k] * fx) * (256 - fy) +
                        (lower[i] * (256 - fx) + lower[k] * fx) * fy + 32768) >>
                       16;
      const int fall = (here - row[x]) * 255 / std::max(here, 30);
      row[x] = static_cast<std::uint8_t>(std::clamp(fall, 0, 255));
    }
  }
  const int full = fullInk(tone);
  for (auto& v : tone.at) v = static_cast<std::uint8_t>(std::min(255, v * 255 / full));
  out.cover = std::move(tone);
  return out;
}

}  // namespace inchwright::seen
