#include "core/seen/lettered_size.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/seen/glyph.h"
#include "core/seen/lettering.h"

namespace inchwright::seen {
namespace {

constexpr int kLowest = 7, kHighest = 100;  // pixels
constexpr std::size_t kMostLooks = 6000;
constexpr double kAsMany = 0.5;  // letters of the drawing itself, beside smaller ones in its title
constexpr double kOneHeight = 1.15;
constexpr std::string_view kLetters = "RABCDEFGHKLMNPSTUVWXY";

/// The greatest height round which, within a twelfth, so much of them lie of as many as lie round
/// any.
double mode(const std::vector<int>& heights, double share, std::size_t& count) {
  const auto roundOf = [&](int h) {
    std::vector<int> near;
    std::copy_if(heights.begin(), heights.end(), std::back_inserter(near),
                 [h](int v) { return std::abs(v - h) <= std::max(1.0, h / 12.0); });
    return near;
  };
  count = 0;
  for (int h = kLowest; h <= kHighest; ++h) count = std::max(count, roundOf(h).size());
  double best = 0;
  std::size_t most = 0;
  for (int h = kHighest; h >= kLowest && (best == 0 || h * kOneHeight > best); --h) {
    const std::vector<int> near = roundOf(h);
    const auto size = static_cast<double>(near.size());
    if (near.size() <= most || size < share * static_cast<double>(count)) continue;
    most = near.size();
    best = std::accumulate(near.begin(), near.end(), 0.0) / size;
  }
  return best;
}

}  // namespace

double heightOfCapitals(const Grey& cover, const Net& glyphs, const Stop& stop) {
  const Parts parts = partsOf(cover, kInk, stop);
  if (stop.asked()) return 0;
  std::vector<int> fit;
  for (std::size_t n = 0; n < parts.list.size(); ++n) {
    const Box& b = parts.list[n].box;
    const bool sized = b.h >= kLowest && b.h <= kHighest && b.w <= 1.6 * b.h && b.w >= 0.1 * b.h;
    if (sized && parts.list[n].area > 0.08 * b.w * b.h) fit.push_back(static_cast<int>(n));
  }
  const std::size_t step = fit.size() / kMostLooks + 1;
  std::vector<int> letters, figures;
  for (std::size_t i = 0; i < fit.size() && !stop.asked(); i += step) {
    const int n = fit[i];
    const Box& b = parts.list[n].box;
    Grey ink(b.w, b.h);
    for (int y = 0; y < b.h; ++y) {
      for (int x = 0; x < b.w; ++x) {
        if (parts.of.row(b.y + y)[b.x + x] == n) ink.row(y)[x] = cover.row(b.y + y)[b.x + x];
      }
    }
    const GlyphOdds odds = oddsOf(glyphs, patchOf(ink));
    const char kind = kindOf(odds);
    if (oddsFor(odds, kind) < 0.8F) continue;
    if (kLetters.find(kind) != std::string_view::npos) letters.push_back(b.h);
    if (kind >= '2' && kind <= '9') figures.push_back(b.h);
  }
  std::size_t count = 0;
  const double byLetters = mode(letters, kAsMany, count);
  if (count >= 6) return byLetters;
  // Without words, the greatest height that a fair share of the figures has: those of fractions
  // are smaller.
  if (figures.size() < 5) return 0;
  std::sort(figures.begin(), figures.end());
  const int high = figures[figures.size() * 9 / 10];
  std::vector<int> upper;
  std::copy_if(figures.begin(), figures.end(), std::back_inserter(upper),
               [&](int h) { return h > high * 0.85; });
  return mode(upper, 1, count);
}

}  // namespace inchwright::seen
