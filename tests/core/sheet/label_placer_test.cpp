#include "core/sheet/label_placer.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <variant>

#include "core/sheet/bounds.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

const Sketch::Look kLook{3.6, Typeface::bold};
const PaperBox kRegion{0, 0, 100, 100};

std::optional<TextItem> onlyText(const Sketch& sketch) {
  std::optional<TextItem> found;
  for (const DrawItem& item : sketch.items()) {
    if (const auto* text = std::get_if<TextItem>(&item)) found = *text;
  }
  return found;
}

const PolylineItem* leaderOf(const Sketch& sketch) {
  for (const DrawItem& item : sketch.items()) {
    if (const auto* line = std::get_if<PolylineItem>(&item)) return line;
  }
  return nullptr;
}

PlanePoint middleOf(const PaperBox& box) {
  return {(box.left + box.right) / 2, (box.top + box.bottom) / 2};
}

TEST(LabelPlacer, SetsANameInTheMiddleOfALargeHole) {
  LabelPlacer placer(kRegion);
  placer.keepOff({50, 50}, 12);
  Sketch sketch;
  ASSERT_TRUE(placer.placeInside(sketch, "A", kLook, {50, 50}, 12));
  const std::optional<TextItem> name = onlyText(sketch);
  ASSERT_TRUE(name);
  EXPECT_EQ(name->text, "A");
  const PlanePoint middle = middleOf(boundsOf(*name));
  EXPECT_NEAR(middle.x, 50, 1e-6);
  EXPECT_NEAR(middle.y, 50, 1e-6);
  EXPECT_EQ(leaderOf(sketch), nullptr);
  // Where one stands already there is no room for another.
  Sketch second;
  EXPECT_FALSE(placer.placeInside(second, "A", kLook, {50, 50}, 12));
  EXPECT_TRUE(second.empty());
}

TEST(LabelPlacer, ANameGoesInOnlyWhereAllOfItFits) {
  LabelPlacer placer(kRegion);
  const double half = textWidth("LONGEST", kLook.height, kLook.face) / 2;
  Sketch sketch;
  EXPECT_FALSE(placer.placeInside(sketch, "LONGEST", kLook, {50, 50}, half));
  EXPECT_TRUE(placer.placeInside(sketch, "LONGEST", kLook, {50, 50}, half + 5));
  // Nor where another hole lies in the way.
  LabelPlacer crowded(kRegion);
  crowded.keepOff({50, 50}, 20);
  crowded.keepOff({52, 50}, 1);
  Sketch none;
  EXPECT_FALSE(crowded.placeInside(none, "A", kLook, {50, 50}, 20));
}

TEST(LabelPlacer, ANameNearADiscNeedsNoLeader) {
  LabelPlacer placer(kRegion);
  placer.keepOff({50, 50}, 3);
  Sketch sketch;
  ASSERT_TRUE(placer.placeAround(sketch, "A", kLook, {50, 50}, 3));
  EXPECT_EQ(leaderOf(sketch), nullptr);
  const PaperBox box = boundsOf(*onlyText(sketch));
  // Up to the right, and off the disc.
  EXPECT_GT(middleOf(box).x, 50);
  EXPECT_LT(middleOf(box).y, 50);
  EXPECT_GT(std::hypot(std::max(0.0, box.left - 50), std::max(0.0, 50 - box.bottom)), 3);
}

// A name that had to go further off is led from the disc's rim outwards to it.
TEST(LabelPlacer, ALeaderRunsFromTheDiscToItsName) {
  for (const PlanePoint centre : {PlanePoint{50, 50}, {30, 70}, {70, 25}}) {
    LabelPlacer placer(kRegion);
    placer.keepOff(centre, 3);
    // A wall of boxes close about it.
    for (int i = 0; i < 24; ++i) {
      const double angle = i * 0.2618;
      const PlanePoint at = centre + PlanePoint{std::cos(angle), std::sin(angle)} * 6.5;
      placer.keepOff(PaperBox{at.x, at.y, at.x, at.y}.grownBy(0.8));
    }
    Sketch sketch;
    ASSERT_TRUE(placer.placeAround(sketch, "A", kLook, centre, 3));
    const PolylineItem* leader = leaderOf(sketch);
    ASSERT_NE(leader, nullptr);
    const PlanePoint from = leader->points.at(0), to = leader->points.at(1);
    EXPECT_NEAR(between(from, centre), 3, 1e-6);
    EXPECT_GT(between(to, centre), between(from, centre) + 2);
    // It points at the name, straight out from the centre.
    const PlanePoint name = middleOf(boundsOf(*onlyText(sketch)));
    EXPECT_GT(dot(to - centre, name - centre), 0);
    EXPECT_NEAR(cross(to - centre, from - centre), 0, 1e-6);
    EXPECT_LT(between(to, name), between(from, name));
  }
}

TEST(LabelPlacer, NamesRatherCrossNoLine) {
  LabelPlacer placer(kRegion);
  placer.keepOff({50, 50}, 2);
  placer.avoid({0, 47}, {100, 47});  // right above: the upper places would cross it
  Sketch sketch;
  ASSERT_TRUE(placer.placeAround(sketch, "A", kLook, {50, 50}, 2));
  const PaperBox box = boundsOf(*onlyText(sketch));
  EXPECT_GT(box.top, 47);
}

TEST(LabelPlacer, NothingIsSetOutsideTheRegionOrWhereThereIsNoRoom) {
  LabelPlacer placer(PaperBox{0, 0, 8, 8});
  placer.keepOff(PaperBox{0, 0, 8, 8});
  Sketch sketch;
  EXPECT_FALSE(placer.placeAround(sketch, "A", kLook, {4, 4}, 1));
  EXPECT_FALSE(placer.placeAlong(sketch, "A", kLook, {0, 4}, {8, 4}, 0, -1));
  EXPECT_TRUE(sketch.empty());
}

TEST(LabelPlacer, ANameAlongALineStandsOnItsOuterSide) {
  for (const double out : {-1.0, 1.0}) {
    LabelPlacer placer(kRegion);
    placer.avoid({20, 50}, {80, 50});
    Sketch sketch;
    ASSERT_TRUE(placer.placeAlong(sketch, "K", kLook, {20, 50}, {80, 50}, 0, out));
    const PaperBox box = boundsOf(*onlyText(sketch));
    EXPECT_GT((middleOf(box).y - 50) * out, 0);
    EXPECT_NEAR(middleOf(box).x, 50, 1e-6);
    EXPECT_LT(std::min(std::abs(box.top - 50), std::abs(box.bottom - 50)), 2);
  }
}

TEST(Sketch, BlanksWhatIsNoCharacter) {
  Sketch sketch;
  sketch.text(0, 0,
              "a\tb\nc\x7F"
              "d\x01",
              kLook);
  sketch.text(0, 0, "x\xEF\xBF\xBEy\xEF\xBF\xBFz\xEF\xBF\xBD", kLook);
  sketch.text(0, 0, "", kLook);
  ASSERT_EQ(sketch.items().size(), 2u);
  EXPECT_EQ(std::get<TextItem>(sketch.items()[0]).text, "a b c d ");
  EXPECT_EQ(std::get<TextItem>(sketch.items()[1]).text, "x y z\xEF\xBF\xBD");
}

}  // namespace
}  // namespace inchwright
