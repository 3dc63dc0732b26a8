#include "core/seen/spans.h"

#include <gtest/gtest.h>

#include "core/seen/looked_at.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfLane = 200;  // the sheet's inch, pixels

/// A level line with ends on it, from 100 to 500 and lettered in the middle of either half.
struct Drafted : Pen {
  Drafted() : Pen(700, 120) {}

  std::vector<Span> spans(const std::vector<End>& ends, std::vector<double> figures) {
    const IsLettered lettered = [&](double from, double past, double, double) {
      return std::any_of(figures.begin(), figures.end(),
                         [&](double x) { return x > from && x < past; });
    };
    auto out = spansOf(viewOf(cover, kOfLane), ends, lettered, 0.5);
    std::sort(out.begin(), out.end(), [](const Span& a, const Span& b) { return a.x1 < b.x1; });
    return out;
  }
};

TEST(Spans, TwoLinesShareATickThatIsPlainlyAnEnd) {
  Drafted lane;
  lane.line(100, 60, 500, 60, 2);
  const std::vector<End> ends{
      {100, 60, true, 0, 0.99F}, {300, 60, true, 0.41F, 0.3F}, {500, 60, true, 0.99F, 0}};
  const auto spans = lane.spans(ends, {200, 400});
  ASSERT_EQ(spans.size(), 2U);
  EXPECT_EQ(spans[0].x2, 300);
  EXPECT_EQ(spans[1].x1, 300);
  // Where only one half is lettered, the tick is no end.
  ASSERT_EQ(lane.spans(ends, {200}).size(), 1U);
}

TEST(Spans, ABracketDoesNotCutALineInTwo) {
  Drafted lane;
  lane.line(100, 60, 500, 60, 2);
  const std::vector<End> ends{
      {100, 60, true, 0, 0.99F}, {300, 60, false, 0.95F, 0.9F}, {500, 60, true, 0.99F, 0}};
  const auto spans = lane.spans(ends, {270, 290, 310});
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_EQ(spans[0].x1, 100);
  EXPECT_EQ(spans[0].x2, 500);
}

TEST(Spans, TailsThatPointAtOneAnotherAreNoLine) {
  // Arrows outside two short dimensions, 100 to 180 and 420 to 500, and nothing between the tails.
  Drafted lane;
  for (const auto& [from, past] :
       {std::pair(50, 100), std::pair(180, 230), std::pair(370, 420), std::pair(500, 550)})
    lane.line(from, 60, past, 60, 2);
  const std::vector<End> ends{{100, 60, true, 0.99F, 0},
                              {180, 60, true, 0, 0.99F},
                              {420, 60, true, 0.99F, 0},
                              {500, 60, true, 0, 0.99F}};
  const auto spans = lane.spans(ends, {140, 460});
  ASSERT_EQ(spans.size(), 2U);
  for (const Span& s : spans) EXPECT_TRUE(s.outside);
  EXPECT_EQ(spans[0].x2, 180);
  EXPECT_EQ(spans[1].x1, 420);
}

TEST(Spans, AHeadOfALongLineMayPointAtAShortOneToo) {
  // Short, long, short in one chain: the long line's own heads are the short ones' inner ones.
  Drafted lane;
  for (const auto& [from, past] :
       {std::pair(50, 100), std::pair(180, 280), std::pair(320, 420), std::pair(500, 550)})
    lane.line(from, 60, past, 60, 2);
  const std::vector<End> ends{{100, 60, true, 0.99F, 0},
                              {180, 60, true, 0, 0.99F},
                              {420, 60, true, 0.99F, 0},
                              {500, 60, true, 0, 0.99F}};
  const auto spans = lane.spans(ends, {140, 300, 460});
  ASSERT_EQ(spans.size(), 3U);
  for (const Span& s : spans) EXPECT_EQ(s.outside, s.x2 - s.x1 < 100);
}

TEST(Spans, TheTipOfAnArrowIsItsFurthestPlace) {
  Drafted lane;
  for (const auto& [from, past] : {std::pair(50, 100), std::pair(200, 250)})
    lane.line(from, 60, past, 60, 2);
  const std::vector<End> ends{
      {100, 60, true, 0.99F, 0}, {200, 60, true, 0, 0.91F}, {208, 60, true, 0.05F, 0.97F}};
  const auto spans = lane.spans(ends, {150});
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_EQ(spans[0].x2, 200);
}

TEST(Ends, ShortTailsAndDotsOnALineThatCarriesAPlaceOut) {
  Drafted pen;
  pen.line(200, 5, 200, 115, 2);
  pen.line(190, 60, 214, 60, 2);  // a tick's tails, too short for a line of their own
  pen.line(400, 5, 400, 115, 2);
  pen.line(400, 60, 400, 60, 12);  // a dot
  pen.line(600, 5, 600, 115, 2);
  View view = viewOf(pen.cover, kOfLane);
  view.plumbs = chained(viewOf(transposed(pen.cover), kOfLane).strokes, 40, 5);
  for (const double x : {200.0, 400.0}) {
    int near = 0;
    for (const End& e : placesOfEnds(view))
      near += std::abs(e.x - x) < 3 && std::abs(e.y - 60) < 4 && e.crossed;
    EXPECT_EQ(near, 1) << x;
  }
  for (const End& e : placesOfEnds(view)) EXPECT_LT(e.x, 590);
}

}  // namespace
}  // namespace inchwright::seen
