// Each stage asks whether to stop, often enough for its size, and ends when told to.

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <random>

#include "core/seen/angles.h"
#include "core/seen/dimension_lines.h"
#include "core/seen/joins.h"
#include "core/seen/lettered_size.h"
#include "core/seen/notes.h"
#include "core/seen/paper.h"
#include "core/seen/shapes.h"
#include "core/seen/slanted.h"
#include "core/seen/spans.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kStopInch = 100;
constexpr int kHigh = 400;
const Homography kStopMap({0.01, 0, 0, 0, -0.01, 4, 0, 0, 1});

/// What asks no more than so often after it was told to stop has ended: some loops lie in others.
constexpr int kMoreAsked = 12;

using Stage = std::function<void(const Stop&)>;

int asked(const Stage& stage, int until) {
  int count = 0;
  stage(Stop([&] { return ++count > until; }));
  return count;
}

void expectStops(const char* what, int least, const Stage& stage) {
  const int whole = asked(stage, std::numeric_limits<int>::max());
  EXPECT_GE(whole, least) << what;
  for (const int until : {0, whole / 3, whole / 2, whole - 1})
    EXPECT_LE(asked(stage, until), until + kMoreAsked) << what << " stopped after " << until;
}

Grey stopNoise() {
  std::mt19937 random(4);
  Grey g(500, kHigh);
  for (auto& v : g.at) v = static_cast<std::uint8_t>(static_cast<std::uint32_t>(random()) % 256);
  return g;
}

/// Plates in rows, each with holes, dimension lines above it and marks as high as lettering.
Grey plates() {
  Grey all(500, kHigh);
  Pen pen(250, 200);
  for (const double y : {60.0, 180.0}) pen.line(20, y, 230, y, 3);
  for (const double x : {20.0, 230.0}) {
    pen.line(x, 60, x, 180, 3);
    pen.line(x, 10, x, 55, 1);
  }
  pen.line(20, 20, 90, 20, 1);
  pen.line(130, 20, 230, 20, 1);
  for (const double x : {100.0, 107.0, 114.0, 121.0}) pen.line(x, 14, x + 2, 26, 2);
  for (const double x : {60.0, 125.0, 190.0}) {
    pen.circle(x, 120, 20, 3);
    pen.line(x - 28, 120, x + 28, 120, 1);
    pen.line(x, 92, x, 148, 1);
  }
  for (int y = 0; y < all.height; ++y) {
    for (int x = 0; x < all.width; ++x) all.row(y)[x] = pen.cover.row(y % 200)[x % 250];
  }
  return all;
}

TEST(Stop, AsksNobodyWhereThereIsNone) {
  EXPECT_FALSE(Stop().asked());
  std::atomic<bool> wanted{false};
  const Stop stop(&wanted);
  EXPECT_FALSE(stop.asked());
  wanted = true;
  EXPECT_TRUE(stop.asked());
  EXPECT_TRUE(stop.askedAt(512));
  EXPECT_FALSE(stop.askedAt(513));
}

TEST(Stop, PixelsAreAskedAboutByTheRow) {
  const Grey g = stopNoise();
  const GreyPicture picture{g.at.data(), g.width, g.height, g.width};
  expectStops("square", kHigh / 2, [&](const Stop& s) { square(picture, kStopMap, 100, 1e6, s); });
  expectStops("ink", kHigh, [&](const Stop& s) { inkOf(g, kStopInch, s); });
  expectStops("parts", kHigh, [&](const Stop& s) { partsOf(g, kInk, s); });
  expectStops("capitals", kHigh,
              [&](const Stop& s) { heightOfCapitals(g, builtInNets().glyphs, s); });
  expectStops("strokes", kHigh, [&](const Stop& s) { levelStrokes(g, kStopInch, 5, s); });
  expectStops("view", kHigh, [&](const Stop& s) { viewOf(g, kStopInch, s); });
  expectStops("circles", kHigh / 2, [&](const Stop& s) { circlesOf(g, kStopInch, s); });
  expectStops("lettering", kHigh, [&](const Stop& s) { letteringOf(g, kStopInch, {}, s); });
}

TEST(Stop, LinesAndLetteringAreAskedAboutOneByOne) {
  const Grey cover = plates();
  View level = viewOf(cover, kStopInch), plumb = viewOf(transposed(cover), kStopInch);
  level.plumbs = chained(plumb.strokes, 20, 3);
  plumb.plumbs = chained(level.strokes, 20, 3);
  const auto circles = circlesOf(cover, kStopInch, Stop());
  ASSERT_EQ(circles.size(), 12U);
  const Lettering lettering = letteringOf(cover, kStopInch, {}, Stop());
  const Frame frame{100, 0, 4};
  const Outlines outlines = outlinesOf(level, plumb, circles, frame);
  ASSERT_FALSE(outlines.sides.empty());
  const Net& glyphs = builtInNets().glyphs;
  expectStops("chains", 1, [&](const Stop& s) { chained(level.strokes, 20, 3, s); });
  expectStops("without lines", 2, [&](const Stop& s) {
    Grey ruled;
    withoutLines(cover, level.strokes, plumb.strokes, kStopInch, ruled, s);
  });
  expectStops("along lines", 2, [&](const Stop& s) {
    alongLines(cover.width, cover.height, plumb.plumbs, level.plumbs, kStopInch, s);
  });
  expectStops("outlines", static_cast<int>(outlines.sides.size()),
              [&](const Stop& s) { outlinesOf(level, plumb, circles, frame, s); });
  std::vector<Stroke> levels, plumbs;
  for (const Outlines::Side& side : outlines.sides)
    (side.plumb ? plumbs : levels).push_back(side.stroke);
  expectStops("rounds", static_cast<int>(levels.size()),
              [&](const Stop& s) { roundingsOf(levels, plumbs, cover, kStopInch, s); });
  const std::vector<LooseEnd> loose(40);  // each is asked about with the 16th and the 32nd
  expectStops("joins", 16 + 32, [&](const Stop& s) { joinsOf(loose, cover, kStopInch, s); });
  expectStops("slots", static_cast<int>(level.strokes.size()),
              [&](const Stop& s) { slotsOf(level, false, outlines, circles, frame, s); });
  expectStops("rings", static_cast<int>(circles.size()),
              [&](const Stop& s) { ringsOf(circles, cover, outlines, frame, kStopInch, s); });
  expectStops("notes", static_cast<int>(lettering.blocks.size()),
              [&](const Stop& s) { noteRows(lettering, kStopInch, Unit::inch, glyphs, s); });
  std::vector<End> ends = placesOfEnds(level);
  ASSERT_GT(ends.size(), 10U);
  expectStops("places of ends", static_cast<int>(level.plumbs.size()),
              [&](const Stop& s) { placesOfEnds(level, s); });
  expectStops("ends", static_cast<int>(ends.size()),
              [&](const Stop& s) { judge(level, builtInNets().ends, ends, s); });
  for (End& e : ends) e.left = e.right = 0.9F;
  const IsLettered lettered = [](double, double, double, double) { return true; };
  expectStops("spans", static_cast<int>(level.lines.size()),
              [&](const Stop& s) { spansOf(level, ends, lettered, 0.5, s); });
  expectStops("centre lines", static_cast<int>(circles.size()),
              [&](const Stop& s) { centreLinesOf(circles, cover, lettering, kStopInch, s); });
  expectStops("angles", 4, [&](const Stop& s) {
    angleArcsOf(outlines, circles, cover, lettering, lettering, kStopInch, s);
  });
}

TEST(Stop, TheWholeEnds) {
  Grey picture = plates();
  for (auto& v : picture.at) v = static_cast<std::uint8_t>(235 - v * 3 / 4);
  const GreyPicture grey{picture.at.data(), picture.width, picture.height, picture.width};
  expectStops("look", 5 * kHigh, [&](const Stop& s) {
    if (const auto looked = lookAt(grey, kStopMap, 0.12, builtInNets(), s); !looked.ok()) {
      EXPECT_EQ(looked.error().text, "stopped");
    }
  });
  const auto looked = lookAt(grey, kStopMap, 0.12, builtInNets(), Stop());
  ASSERT_TRUE(looked.ok());
  const auto circles = circlesOf(looked->level.cover, looked->inch, Stop());
  const Outlines outlines =
      outlinesOf(looked->level, looked->plumb, circles, looked->squared.frame);
  expectStops("dimension lines", 50, [&](const Stop& s) {
    dimensionLines(*looked, outlines, circles, {}, builtInNets(), s);
  });
  std::atomic<bool> stop{true};
  Options options;
  options.stop = &stop;
  EXPECT_EQ(offer(grey, kStopMap, options).error().text, "stopped");
}

}  // namespace
}  // namespace inchwright::seen
