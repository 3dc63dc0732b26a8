#include "core/seen/glyph.h"

#include <cmath>

namespace inchwright::seen {
namespace {

/// The mean of a stretch of columns and rows whose ends may fall within pixels.
double meanOver(const Grey& g, double x0, double x1, double y0, double y1) {
  double sum = 0;
  for (int y = static_cast<int>(y0); y < std::min<double>(g.height, y1); ++y) {
    const double high = std::min<double>(y1, y + 1) - std::max<double>(y0, y);
    for (int x = static_cast<int>(x0); x < std::min<double>(g.width, x1); ++x) {
      sum += g.row(y)[x] * high * (std::min<double>(x1, x + 1) - std::max<double>(x0, x));
    }
  }
  return sum / ((x1 - x0) * (y1 - y0));
}

}  // namespace

GlyphPatch patchOf(const Grey& glyph) {
  GlyphPatch out{};
  if (glyph.empty()) return out;
  const double f = double(kGlyphSide - 2) / std::max(glyph.width, glyph.height);
  const int w = std::clamp(static_cast<int>(std::lround(glyph.width * f)), 1, kGlyphSide);
  const int h = std::clamp(static_cast<int>(std::lround(glyph.height * f)), 1, kGlyphSide);
  const int x0 = (kGlyphSide - w) / 2, y0 = (kGlyphSide - h) / 2;
  const double sx = double(glyph.width) / w, sy = double(glyph.height) / h;
  std::array<double, kGlyphSide * kGlyphSide> fine{};
  double most = 0;
  for (int y = 0; y < h; ++y) {
    for (int x = 0; x < w; ++x) {
      const double v = sx >= 1 ? meanOver(glyph, x * sx, (x + 1) * sx, y * sy, (y + 1) * sy)
                               : sampled(glyph, (x + 0.5) * sx - 0.5, (y + 0.5) * sy - 0.5);
      fine[(y0 + y) * kGlyphSide + x0 + x] = v;
      most = std::max(most, v);
    }
  }
  if (most <= 0) return out;
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = static_cast<std::uint8_t>(fine[i] * 255 / most + 0.5);
  }
  return out;
}

GlyphOdds oddsOf(const Net& net, const GlyphPatch& patch) {
  GlyphOdds odds{};
  if (net.outputs() != static_cast<int>(odds.size())) return odds;
  const std::vector<float> raw = net.answer(patch);
  const float most = *std::max_element(raw.begin(), raw.end());
  float sum = 0;
  for (std::size_t i = 0; i < odds.size(); ++i) sum += odds[i] = std::exp(raw[i] - most);
  for (float& v : odds) v /= sum;
  return odds;
}

char kindOf(const GlyphOdds& odds) {
  return kGlyphKinds[std::max_element(odds.begin(), odds.end()) - odds.begin()];
}

}  // namespace inchwright::seen
