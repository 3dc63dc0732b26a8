// The four sides that the corners of a picture tell: when they are offered, and what is made of
// them.
#include "app/session/four_sides.h"

#include <algorithm>

#include "app/session/picture_edits.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class FourSidesTest : public PlateOnDesk {
 protected:
  /// A bare plate whose picture was squared up by these places, across and up.
  void squareUpBy(const std::vector<std::pair<const char*, const char*>>& places) {
    Job job = *layPicture(jobOfPlate(), 0, Face::top, "print", "bytes");
    std::vector<SquaringPoint> points;
    for (const auto& [across, up] : places) {
      const Lettered x = *readLength(across), y = *readLength(up);
      points.push_back({100 * x.value.toInches() + 1, 500 - 100 * y.value.toInches(), x, y});
    }
    put(*setPicturePoints(job, "print", points));
  }
  void squareUp() { squareUpBy({{"0", "0"}, {"3", "0"}, {"3", "2 1/8"}, {"0", "2 1/8"}}); }
  std::optional<FourSides> offered() { return fourSides(hands); }

  Hands hands{desk};
};

TEST_F(FourSidesTest, CornersInAnyOrderAreTheSidesOfOneRectangle) {
  using Places = std::vector<std::pair<const char*, const char*>>;
  const Places around{{"0", "0"}, {"3", "0"}, {"3", "2"}, {"0", "2"}};
  for (std::size_t first = 0; first < 4; ++first) {
    Places turned = around;
    std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(first), turned.end());
    squareUpBy(turned);
    ASSERT_TRUE(offered()) << first;
    EXPECT_EQ(offered()->box, QRectF(0, 0, 3, 2)) << first;
    EXPECT_FALSE(offered()->overall[0]) << "nobody said so at these corners in this sitting";
  }
  for (const Places& none : {Places{{"0", "0"}, {"3", "0"}, {"3", "2"}},
                             Places{{"0", "0"}, {"3", "0"}, {"3", "2"}, {"1/2", "2"}},
                             Places{{"0", "0"}, {"3", "0"}, {"3", "2"}, {"0", "1 7/8"}}}) {
    squareUpBy(none);
    EXPECT_FALSE(offered()) << none.size();
  }
}

TEST_F(FourSidesTest, OnlyABarePartSeenStraightFromAboveHasThem) {
  squareUp();
  ASSERT_TRUE(offered());
  desk.chooseFace(Face::front);
  EXPECT_FALSE(offered());
  desk.chooseFace(Face::top);
  Job turned = desk.job();
  turned.parts[0].views[0].turn = 90;
  desk.apply(turned, "Turn");
  EXPECT_FALSE(offered());
  desk.undo();
  ASSERT_TRUE(offered());
  Job moved = desk.job();
  moved.parts[0].views[0].at = {"1.000", "0.000"};
  desk.apply(moved, "Place");
  EXPECT_FALSE(offered());
  desk.undo();
  enterLines({"hole A 1/4"});
  EXPECT_TRUE(offered()) << "a hole is no side";
  enterLines({"edge L left"});
  EXPECT_FALSE(offered());
  EXPECT_FALSE(traceFourSides(hands));
}

TEST_F(FourSidesTest, TheyAreTracedInOneStepWithTheFiguresThatWereSaid) {
  squareUp();
  hands.squaredBy = desk.job().pictures[0].points;
  hands.overall = {*readLength("3"), *readLength("2 1/8 ±.005")};
  const Job before = desk.job();
  ASSERT_TRUE(traceFourSides(hands));
  const Part& part = desk.part();
  ASSERT_EQ(part.features.size(), 4u);
  const std::pair<const char*, const char*> sides[] = {
      {"L", "0.000"}, {"R", "3.000"}, {"F", "0.000"}, {"K", "2.125"}};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(part.features[i].id, sides[i].first);
    EXPECT_EQ(part.features[i].traced, std::vector<std::string>{sides[i].second});
  }
  ASSERT_EQ(part.readings.size(), 2u);
  EXPECT_EQ(part.readings[0].from + part.readings[0].to, "LR");
  EXPECT_EQ(part.readings[0].axis, Axis::x);
  EXPECT_EQ(part.readings[0].figure.text, "3");
  EXPECT_EQ(part.readings[1].from + part.readings[1].to, "FK");
  EXPECT_EQ(part.readings[1].axis, Axis::y);
  EXPECT_TRUE(part.readings[1].figure.tolerance) << "as it was said";
  desk.undo();
  EXPECT_EQ(desk.job(), before);
  EXPECT_FALSE(desk.canUndo());
}

// A figure is read only where it was said of just these corners, and still is as long.
TEST_F(FourSidesTest, AFigureOfOtherCornersIsNotTaken) {
  squareUp();
  hands.squaredBy = desk.job().pictures[0].points;
  hands.overall = {*readLength("3 1/8"), *readLength("2 1/4")};
  ASSERT_TRUE(offered());
  EXPECT_EQ(offered()->overall[0]->text, "3") << "the corner's own word, not the longer one";
  EXPECT_EQ(offered()->overall[1]->text, "2 1/8");
  hands.squaredBy.pop_back();
  EXPECT_FALSE(offered()->overall[0] || offered()->overall[1]);
  // Where the zero is elsewhere, a corner's place is no length of the part.
  squareUpBy({{"1", "0"}, {"4", "0"}, {"4", "2"}, {"1", "2"}});
  hands.squaredBy = desk.job().pictures[0].points;
  hands.overall = {};
  ASSERT_TRUE(offered());
  EXPECT_FALSE(offered()->overall[0]);
  EXPECT_EQ(offered()->overall[1]->text, "2");
}

// Left, right, then the two across, as a face is customarily met.
TEST(SidesOfFaces, TheNextIsTheFirstThatIsNotTracedYet) {
  Part part;
  using S = Side;
  const std::pair<Face, std::array<Side, 4>> rows[] = {
      {Face::top, {S::left, S::right, S::front, S::back}},
      {Face::bottom, {S::left, S::right, S::front, S::back}},
      {Face::front, {S::left, S::right, S::bottom, S::top}},
      {Face::back, {S::left, S::right, S::bottom, S::top}},
      {Face::left, {S::front, S::back, S::bottom, S::top}},
      {Face::right, {S::front, S::back, S::bottom, S::top}}};
  for (const auto& [face, sides] : rows) {
    EXPECT_EQ(sidesOf(face), sides);
    EXPECT_EQ(nextSide(part, face), sides[0]);
  }
  for (const Side side : {S::left, S::right}) part.features.push_back(edgeFor(part, side, 1.25));
  EXPECT_EQ(nextSide(part, Face::top), S::front);
  EXPECT_EQ(nextSide(part, Face::front), S::bottom);
  EXPECT_EQ(nextSide(part, Face::left), S::front);
  for (const Side side : {S::back, S::front}) part.features.push_back(edgeFor(part, side, 0));
  EXPECT_EQ(nextSide(part, Face::top), std::nullopt);
  EXPECT_EQ(nextSide(part, Face::right), S::bottom);
  ASSERT_NE(edgeOf(part, S::left), nullptr);
  EXPECT_EQ(edgeOf(part, S::left)->traced, std::vector<std::string>{"1.250"});
  EXPECT_EQ(edgeOf(part, S::top), nullptr);
}

}  // namespace
}  // namespace inchwright::app
