#include "core/seen/paper.h"

#include <array>

namespace inchwright::seen {
namespace {

constexpr int kCoarse = 4;  // the paper's tone is looked at so much coarser

constexpr int kSampled = 4;  // of so many pixels each way one tells light ink from dark

/// Ink strays further from the tone round it than paper does: which way tells white on dark.
/// `coarse` is the picture kCoarse times as coarse.
bool inkIsLight(const Grey& grey, const Grey& coarse, int half) {
  constexpr int kBlock = kCoarse * kSampled;
  const Grey mean = blurred(shrunk(coarse, kSampled), std::max(1, half / kSampled));
  std::array<std::int64_t, 511> count{};
  std::int64_t all = 0;
  for (int y = 0; y < grey.height; y += kSampled) {
    const std::uint8_t* round = mean.row(std::min(y / kBlock, mean.height - 1));
    for (int x = 0; x < grey.width; x += kSampled) {
      ++count[255 + grey.row(y)[x] - round[std::min(x / kBlock, mean.width - 1)]];
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

/// The fall below the paper that counts as full ink, of 255, by how many pixels fall how far.
int fullInk(const std::array<std::int64_t, 256>& count) {
  std::int64_t all = 0;
  for (int tone = 52; tone < 256; ++tone) all += count[tone];
  if (all < 60) return 153;
  std::int64_t left = all / 10;
  int tone = 255;
  while ((left -= count[tone]) >= 0 && tone > 52) --tone;
  return tone;
}

/// How far a tone falls below the paper's, of 255: row by row of the paper's tone. `turned` is what
/// turns a tone round where the print is white on dark.
std::vector<std::uint8_t> fallsBelow(int turned) {
  std::vector<std::uint8_t> out(256 * 256);
  for (int paper = 0; paper < 256; ++paper) {
    for (int tone = 0; tone < 256; ++tone) {
      out[static_cast<std::size_t>(paper * 256 + (tone ^ turned))] = static_cast<std::uint8_t>(
          std::min(255, std::max(0, paper - tone) * 255 / std::max(paper, 30)));
    }
  }
  return out;
}

/// The paper's tone along one row of the picture: blended of the four coarse pixels round each,
/// whose middles lie one and a half pixels from their edges. `blend` is room for a coarse row.
void paperAlong(const Grey& paper, int y, std::vector<int>& blend, std::vector<std::uint8_t>& out) {
  const double v = std::clamp((y - 1.5) / kCoarse, 0.0, paper.height - 1.0);
  const int j = std::min(static_cast<int>(v), std::max(0, paper.height - 2));
  const int fy = paper.height < 2 ? 0 : static_cast<int>((v - j) * 256);
  const std::uint8_t* upper = paper.row(j);
  const std::uint8_t* lower = paper.row(std::min(j + 1, paper.height - 1));
  const int coarse = paper.width, width = static_cast<int>(out.size());
  int* blended = blend.data();
  std::uint8_t* to = out.data();
  for (int x = 0; x < coarse; ++x) blended[x] = upper[x] * (256 - fy) + lower[x] * fy;
  const auto tone = [](int wide) { return static_cast<std::uint8_t>((wide + 32768) >> 16); };
  std::fill_n(to, std::min(2, width), tone(blended[0] * 256));
  int x = 2;
  for (int i = 0; i + 1 < coarse && x + kCoarse <= width; ++i, x += kCoarse) {
    const int step = (blended[i + 1] - blended[i]) * 64, first = blended[i] * 256 + step / 2;
    for (int k = 0; k < kCoarse; ++k) to[x + k] = tone(first + k * step);
  }
  std::fill(to + std::min(x, width), to + width, tone(blended[coarse - 1] * 256));
}

}  // namespace

Ink inkOf(const Grey& grey, double inch, const Stop& stop) {
  Grey coarse = shrunk(grey, kCoarse);
  const int half = std::max(2, static_cast<int>(inch * 0.25 / kCoarse));
  Ink out;
  out.lightOnDark = inkIsLight(grey, coarse, half);
  const int turned = out.lightOnDark ? 255 : 0;
  for (auto& v : coarse.at) v = static_cast<std::uint8_t>(v ^ turned);
  if (stop.asked()) return out;
  const int stroke = std::max(1, static_cast<int>(inch * 0.03));
  const Grey paper = blurred(narrowed(widened(coarse, stroke), stroke), half);
  std::vector<std::uint8_t> falls = fallsBelow(turned);
  std::vector<int> blend(static_cast<std::size_t>(paper.width));
  std::vector<std::uint8_t> tones(static_cast<std::size_t>(grey.width));
  // What counts as full ink is told by one pixel in ten.
  std::array<std::int64_t, 256> count{};
  for (int y = 0; y < grey.height && !stop.asked(); y += 5) {
    paperAlong(paper, y, blend, tones);
    for (int x = 0; x < grey.width; x += 2) ++count[falls[tones[x] * 256U + grey.row(y)[x]]];
  }
  const int full = fullInk(count);
  for (auto& fall : falls) fall = static_cast<std::uint8_t>(std::min(255, fall * 255 / full));
  const int width = grey.width;
  out.cover = Grey(width, grey.height);
  for (int y = 0; y < grey.height && !stop.asked(); ++y) {
    paperAlong(paper, y, blend, tones);
    const std::uint8_t* from = grey.row(y);
    std::uint8_t* to = out.cover.row(y);
    const std::uint8_t *tone = tones.data(), *fall = falls.data();
    for (int x = 0; x < width; ++x) to[x] = fall[tone[x] * 256U + from[x]];
  }
  return out;
}

}  // namespace inchwright::seen
