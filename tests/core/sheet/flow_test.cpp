#include "core/sheet/flow.h"

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

namespace inchwright {
namespace {

Piece piece(const std::string& name, double height) {
  Piece made;
  made.height = height;
  made.sketch.text(0, 0, name, {1});
  return made;
}

/// `name@x,y` of every text, page by page.
std::vector<std::string> laid(const Flowed& flowed) {
  std::vector<std::string> pages;
  for (const std::vector<Laid>& laid : flowed.pages) {
    std::string page;
    Sketch sketch;
    for (const Laid& one : laid) one.piece->drawOnto(sketch, one.left, one.top);
    for (const DrawItem& item : sketch.items()) {
      const auto& text = std::get<TextItem>(item);
      page += (page.empty() ? "" : " ") + text.text + "@" +
              std::to_string(static_cast<int>(text.at.x)) + "," +
              std::to_string(static_cast<int>(text.at.y));
    }
    pages.push_back(page);
  }
  return pages;
}

Stretch pageOf100(std::size_t number) {
  return {number, 5, 10, 110};
}

using Pages = std::vector<std::string>;

TEST(Flow, FillsPagesFromTheTop) {
  const Pieces pieces{piece("a", 60), piece("b", 40), piece("c", 50)};
  const Flowed flowed = flow(pieces, pageOf100);
  EXPECT_EQ(laid(flowed), (Pages{"a@5,10 b@5,70", "c@5,10"}));
  EXPECT_EQ(flowed.last.page, 1U);
  EXPECT_DOUBLE_EQ(flowed.end, 60);
}

TEST(Flow, KeepsAHeadingWithWhatFollows) {
  Piece heading = piece("h", 10);
  heading.keepWithNext = true;
  EXPECT_EQ(laid(flow({piece("a", 80), heading, piece("b", 20)}, pageOf100)),
            (Pages{"a@5,10", "h@5,10 b@5,20"}));
}

TEST(Flow, LeavesSpaceOutAtTheTopAndAtTheEnd) {
  EXPECT_EQ(
      laid(flow({space(5), piece("a", 90), space(20), piece("b", 10), space(500)}, pageOf100)),
      (Pages{"a@5,10", "b@5,10"}));
}

TEST(Flow, RepeatsTheHeadingOfATornGroup) {
  Piece rest = piece("b", 60);
  rest.heading = std::make_shared<const Piece>(piece("again", 10));
  EXPECT_EQ(laid(flow({piece("a", 60), rest}, pageOf100)), (Pages{"a@5,10", "again@5,10 b@5,20"}));
}

TEST(Flow, GoesOnToALargerFrameButNeverForEver) {
  const Stretches stretches = [](std::size_t number) {
    return number == 0 ? Stretch{0, 5, 80, 110} : Stretch{number, 5, 10, 110};
  };
  EXPECT_EQ(laid(flow({piece("a", 40)}, stretches)), (Pages{"", "a@5,10"}));
  EXPECT_EQ(laid(flow({piece("vast", 400), piece("b", 10)}, stretches)),
            (Pages{"", "vast@5,10", "b@5,10"}));
}

TEST(Flow, TwoFramesOfAPageShareItsSketch) {
  const Stretches stretches = [](std::size_t number) {
    return Stretch{number / 2, number % 2 == 0 ? 5.0 : 60.0, 10, 50};
  };
  EXPECT_EQ(laid(flow({piece("a", 30), piece("b", 30), piece("c", 30)}, stretches)),
            (Pages{"a@5,10 b@60,10", "c@5,10"}));
}

TEST(Flow, NothingGivesNoPage) {
  EXPECT_TRUE(flow({}, pageOf100).pages.empty());
}

TEST(Pieces, DrawTheRestWhenTheirPageIsDrawn) {
  int drawn = 0;
  Piece some = piece("a", 10);
  some.later = [&drawn](Sketch& sketch) {
    ++drawn;
    sketch.text(1, 2, "b", {1});
  };
  const Pieces pieces{some, piece("c", 100)};
  const Flowed flowed = flow(pieces, pageOf100);
  EXPECT_EQ(drawn, 0);
  EXPECT_EQ(laid(flowed), (Pages{"a@5,10 b@6,12", "c@5,10"}));
  EXPECT_EQ(drawn, 1);
}

TEST(Pieces, JoinAndStandBesideEachOther) {
  const Piece both = joined({piece("a", 10), space(5), piece("b", 20)});
  EXPECT_DOUBLE_EQ(both.height, 35);
  EXPECT_DOUBLE_EQ(std::get<TextItem>(both.sketch.items()[1]).at.y, 15);
  const Piece pair = beside(piece("a", 10), piece("b", 30), 40);
  EXPECT_DOUBLE_EQ(pair.height, 30);
  EXPECT_DOUBLE_EQ(std::get<TextItem>(pair.sketch.items()[1]).at.x, 40);
}

}  // namespace
}  // namespace inchwright
