#include "core/seen/looked_at.h"

#include <cmath>

#include "core/seen/lettered_size.h"
#include "core/seen/paper.h"

namespace inchwright::seen {
namespace {

constexpr double kCapitalPixels = 25;  // capitals this high are read best, and higher no better
constexpr double kFirstPixels = 9e6;   // of the first look, for the lettering's height
constexpr double kMostPixels = 16e6;   // of the raster that is worked on

}  // namespace

View viewOf(Grey cover, double inch, const Stop& stop) {
  View v;
  v.half = shrunk(cover, 2);
  v.strokes = levelStrokes(cover, inch, 0.13 * inch, stop);
  v.lines = chained(v.strokes, 0.05 * inch, 0.02 * inch + 1, stop);
  v.inch = inch;
  v.cover = std::move(cover);
  return v;
}

Result<LookedAt> lookAt(const GreyPicture& picture, const Homography& pixelToInches,
                        double capitals, const Nets& nets, const Stop& stop) {
  const Error nothing{ErrorCode::badRequest, "there is no picture to look at"};
  const Error stopped{ErrorCode::notFound, "stopped"};
  if (picture.data == nullptr || picture.width < 1 || picture.height < 1) return nothing;
  const double density = densityOf(picture, pixelToInches);
  if (!(density > 0) || !std::isfinite(density)) {
    return Error{ErrorCode::badRequest, "the picture's points make nothing of it"};
  }
  LookedAt out;
  double wanted = density;
  if (capitals <= 0) {
    const Squared first = square(picture, pixelToInches, density, kFirstPixels, stop);
    if (stop.asked()) return stopped;
    const Ink ink = inkOf(first.grey, 150, stop);
    if (stop.asked()) return stopped;
    capitals = heightOfCapitals(ink.cover, nets.glyphs, stop) / first.frame.perInch;
    if (stop.asked()) return stopped;
  }
  if (capitals > 0) wanted = std::min(density, kCapitalPixels / capitals);
  out.squared = square(picture, pixelToInches, wanted, kMostPixels, stop);
  if (stop.asked()) return stopped;
  out.capitals = capitals * out.squared.frame.perInch;
  // Without lettering the sheet is taken to be drawn full size.
  out.inch = std::max(24.0, capitals > 0 ? out.capitals / kCapital : out.squared.frame.perInch);
  Ink ink = inkOf(out.squared.grey, out.inch, stop);
  out.squared.grey = {};
  out.lightOnDark = ink.lightOnDark;
  if (stop.asked()) return stopped;
  out.plumb = viewOf(transposed(ink.cover), out.inch, stop);
  if (stop.asked()) return stopped;
  out.level = viewOf(std::move(ink.cover), out.inch, stop);
  if (stop.asked()) return stopped;
  const double gap = 0.20 * out.inch, stray = 0.02 * out.inch + 1;
  out.level.plumbs = chained(out.plumb.strokes, gap, stray, stop);
  out.plumb.plumbs = chained(out.level.strokes, gap, stray, stop);
  const Grey& cover = out.level.cover;
  const Grey dashed =
      alongLines(cover.width, cover.height, out.plumb.plumbs, out.level.plumbs, out.inch, stop);
  out.whole = letteringOf(cover, out.inch, {}, stop);
  if (stop.asked()) return stopped;
  Grey ruled;
  const Grey bare =
      withoutLines(cover, out.level.strokes, out.plumb.strokes, out.inch, ruled, stop);
  out.bare = letteringOf(bare, out.inch, dashed, stop);
  out.bare.ruled = std::move(ruled);
  if (stop.asked()) return stopped;
  return out;
}

}  // namespace inchwright::seen
