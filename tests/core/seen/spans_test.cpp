#include "core/seen/spans.h"

#include <gtest/gtest.h>

#include <tuple>

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

// Of two places of one end the surer one counts.
TEST(Spans, OfTwoPlacesOfOneEndThePlainerIsItsPlace) {
  Drafted lane;
  lane.line(100, 60, 300, 60, 2);
  const End first{100, 60, true, 0, 0.99F};
  for (const auto& [near, far, at] :
       {std::tuple(End{296, 60, true, 0.8F, 0.1F}, End{300, 60, true, 0.5F, 0.45F}, 296),
        std::tuple(End{296, 60, true, 0.5F, 0.45F}, End{300, 60, true, 0.8F, 0.1F}, 300),
        std::tuple(End{296, 60, false, 0.9F, 0.1F}, End{300, 60, true, 0.8F, 0.1F}, 300),
        std::tuple(End{296, 60, true, 0.8F, 0.1F}, End{300, 60, false, 0.9F, 0.1F}, 296)}) {
    const auto spans = lane.spans({first, near, far}, {200});
    ASSERT_EQ(spans.size(), 1U);
    EXPECT_EQ(spans[0].x2, at);
  }
}

// Two plain ends on a line drawn between them, as what may be told of them is changed.
struct Pair {
  double past = 300;     ///< the second end; the first is at 100
  double drawnFrom = 0;  ///< a gap in the line, pixels
  double drawnPast = 0;  //
  std::vector<double> figures{200};
  float odds = 0.95F;  ///< of each end, towards the other
  double lower = 0;    ///< the second lies so much lower
  bool crossed = true;
  double least = 0.5;  ///< logarithm of the odds asked for
};

TEST(Spans, AreDrawnButForAGapWithTheirFigure) {
  struct Case {
    const char* what;
    Pair pair;
    bool isOne;
  };
  const Case cases[] = {
      {"drawn whole", {}, true},
      {"its figure in a gap", {.drawnFrom = 170, .drawnPast = 230}, true},
      {"a gap without a figure", {.drawnFrom = 170, .drawnPast = 230, .figures = {120}}, false},
      {"a short gap, the figure beside it",
       {.drawnFrom = 170, .drawnPast = 190, .figures = {120}},
       true},
      {"no figure", {.figures = {}}, false},
      {"its figure beside a short one", {.past = 200, .figures = {300}}, true},
      {"and too far beside", {.past = 200, .figures = {410}}, false},
      {"its figure beside a long one", {.past = 300, .figures = {350}}, false},
      {"nothing drawn but the tails",
       {.past = 500, .drawnFrom = 120, .drawnPast = 480, .figures = {300}},
       false},
      {"shorter than a tenth of an inch", {.past = 118, .figures = {109}}, false},
      {"hardly longer", {.past = 124, .figures = {112}}, true},
      {"ends that look like none", {.odds = 0.1F}, false},
      {"ends that may be", {.odds = 0.7F}, true},
      {"on nearly one height", {.lower = 8}, true},
      {"on two heights", {.lower = 14}, false},
      {"carried out by nothing", {.odds = 0.7F, .crossed = false}, false},
  };
  for (const Case& row : cases) {
    const Pair& p = row.pair;
    Drafted lane;
    if (p.drawnPast > 0) {
      lane.line(100, 60, p.drawnFrom, 60, 2);
      lane.line(p.drawnPast, 60, p.past, 60, 2);
    } else {
      lane.line(100, 60, p.past, 60 + p.lower, 2);
    }
    const std::vector<End> ends{{100, 60, p.crossed, 0, p.odds},
                                {p.past, 60 + p.lower, p.crossed, p.odds, 0}};
    const auto spans = lane.spans(ends, p.figures);
    ASSERT_EQ(spans.size(), row.isOne) << row.what;
    if (!row.isOne) continue;
    EXPECT_EQ(spans[0].x1, 100) << row.what;
    EXPECT_EQ(spans[0].x2, p.past) << row.what;
    EXPECT_EQ(spans[0].y, 60 + p.lower / 2) << row.what;
    EXPECT_FALSE(spans[0].outside) << row.what;
    EXPECT_GT(spans[0].sure, 0.6) << row.what;
    EXPECT_LT(spans[0].sure, 1) << row.what;
  }
}

// Arrows that point at one another: up to 1.3 inches (260 pixels) with the figure between them,
// and shorter ones with the figure beside them on the right, within an inch.
TEST(Spans, OutsideAShortDimension) {
  struct Case {
    double past;
    double figure;
    bool isOne;
  };
  const Case cases[] = {{150, 125, true}, {355, 230, true},  {365, 230, false}, {150, 250, true},
                        {280, 380, true}, {295, 390, false}, {150, 60, false},  {150, 355, false}};
  for (const Case& row : cases) {
    Drafted lane;
    lane.line(50, 60, 100, 60, 2);
    lane.line(row.past, 60, row.past + 50, 60, 2);
    const auto spans =
        lane.spans({{100, 60, true, 0.97F, 0}, {row.past, 60, true, 0, 0.97F}}, {row.figure});
    ASSERT_EQ(spans.size(), row.isOne) << row.past << " " << row.figure;
    if (row.isOne) {
      EXPECT_TRUE(spans[0].outside);
    }
  }
}

// The plainer the ends, the surer the line; a line that runs over a plain end is less sure.
TEST(Spans, AreAsSureAsTheirEnds) {
  Drafted lane;
  lane.line(100, 60, 500, 60, 2);
  const auto sureOf = [&](float odds, std::vector<End> more) {
    more.insert(more.begin(), {100, 60, true, 0, odds});
    more.push_back({500, 60, true, odds, 0});
    const auto spans = lane.spans(more, {300});
    EXPECT_EQ(spans.size(), 1U) << odds;
    return spans.empty() ? 0 : spans[0].sure;
  };
  // Odds of 9 each and lettering's e: 81 e in 81 e + 1.
  EXPECT_NEAR(sureOf(0.9F, {}), 0.99548, 1e-4);
  EXPECT_NEAR(sureOf(0.6F, {}), 0.85946, 1e-4);
  // Running over a crossed end with odds of 3 costs half of them: the root.
  EXPECT_NEAR(sureOf(0.6F, {{260, 60, true, 0.75F, 0}}), 0.77930, 1e-4);
  EXPECT_NEAR(sureOf(0.6F, {{260, 60, false, 0.75F, 0}}), 0.85946, 1e-4);
}

// A pen's breadth apart, two places are one end; those on two heights are lines of their own.
TEST(Spans, EndsOfTwoLanesAndOfOnePlace) {
  Drafted lane;
  for (const double y : {40.0, 80.0}) lane.line(100, y, 300, y, 2);
  std::vector<End> ends;
  for (const double y : {80.0, 40.0}) {
    ends.push_back({300, y, true, 0.95F, 0});
    ends.push_back({100, y, true, 0, 0.95F});
    ends.push_back({104, y + 1, false, 0, 0.5F});
  }
  const auto spans = lane.spans(ends, {200});
  ASSERT_EQ(spans.size(), 2U);
  for (const Span& s : spans) EXPECT_EQ(s.x1, 100);
  EXPECT_EQ(spans[0].y + spans[1].y, 120.5);  // each end's two places in the middle
  ends.assign(3001, {100, 60, true, 0.9F, 0.9F});
  EXPECT_TRUE(lane.spans(ends, {200}).empty()) << "no print has so many";
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
