#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/place/curve.h"
#include "core/solution/solution.h"
#include "tests/support/csv_table.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright::test {
namespace {

double apart(const Solution& solution, const char* a, const char* b) {
  const auto x = solution.between(a, b, Axis::x), y = solution.between(a, b, Axis::y);
  EXPECT_TRUE(x && y) << a << " " << b;
  if (!x || !y) return 0;
  return std::hypot(x->toDouble(), y->toDouble()) / static_cast<double>(Length::kTicksPerInch);
}

Solution solvedText(const std::string& text) {
  Part part = PartText::read(text);
  part.name = "Case";
  return solved(part);
}

// Precision Locating and Dividing Methods (Machinery's Reference Series 135, Industrial Press
// 1914): buttons of 1.070, .790 and .650 that touch one another stand .930, .720 and .860 apart.
TEST(PlacingCases, ButtonsThatTouch) {
  const Solution solution = solvedText(
      "hole A 1.070\nhole B .790\nhole C .650\nin_line y A B\n"
      "tangent A B\ntangent B C\ntangent C A\n"
      "traced A 0 0\ntraced B 0.93 0\ntraced C 0.52 0.68\n");
  EXPECT_NEAR(apart(solution, "A", "B"), 0.930, 1e-9);
  EXPECT_NEAR(apart(solution, "B", "C"), 0.720, 1e-9);
  EXPECT_NEAR(apart(solution, "C", "A"), 0.860, 1e-9);
}

// US Army subcourse OD1640, Machine Shop Calculation, ed. 7, p. 89: 8 and 10 with 78 degrees
// between give a third side of 11.434 (exact 11.433903).
TEST(PlacingCases, LawOfCosines) {
  const Solution solution = solvedText(
      "hole A 1/4\nhole B 1/4\nhole C 1/4\nin_line y A B\n"
      "r1 x A B 8\nr2 centres A C 10\nr3 angle A C 78\n");
  EXPECT_NEAR(apart(solution, "B", "C"), 11.433903, 5e-7);
}

// Two circles of radius 9 and 4 that touch one another and a line (hugi.is, a question site: the
// figures are given there, 2√(9·4) = 12 is computed).
TEST(PlacingCases, TwoCirclesOnALine) {
  const Solution solution = solvedText(
      "edge L x left\nedge F y front\nhole A 18\nhole B 8\nr1 x L A 20\n"
      "tangent A F\ntangent B F\nr2 centres A B 13\n"
      "traced L 0\ntraced F 0\ntraced A 20 9\ntraced B 32 4\n");
  const auto x = solution.between("A", "B", Axis::x);
  ASSERT_TRUE(x);
  EXPECT_NEAR(x->toDouble() / static_cast<double>(Length::kTicksPerInch), 12, 1e-9);
}

// ---- lines, discs and arcs ----

/// A part from text with what its lines can't say.
struct Case {
  Part part;

  explicit Case(const std::string& text) : part(PartText::read(text)) { part.name = "Case"; }

  Feature& feature(const Id& id) {
    return *std::find_if(part.features.begin(), part.features.end(),
                         [&](const Feature& one) { return one.id == id; });
  }
  Case& traced(const Id& id, std::vector<std::string> at) {
    feature(id).traced = std::move(at);
    return *this;
  }
  /// A line through a place at an angle.
  Case& through(const Id& line, const Id& place) {
    feature(line).as<kind::Line>()->through = {place};
    return *this;
  }
  Case& angleOf(const Id& line, const char* text) {
    Reading reading;
    reading.id = "angle of " + line;
    reading.kind = ReadingKind::angle;
    reading.from = line;
    reading.figure.text = text;
    reading.angle = *readAngle(text);
    part.readings.push_back(std::move(reading));
    return *this;
  }
  Case& touching(const Id& a, const Id& b, Touch touch) {
    Understanding what;
    what.kind = UnderstandingKind::tangent;
    what.of = {a, b};
    what.touch = touch;
    what.stated = true;
    part.understood.push_back(std::move(what));
    return *this;
  }
  Solution solution() const { return solved(part); }
};

PlaneCircle circleOf(const Solution& solution, const char* id) {
  const auto found = solution.beyond.circles[0].find(id);
  EXPECT_TRUE(found != solution.beyond.circles[0].end()) << id;
  return found == solution.beyond.circles[0].end() ? PlaneCircle{} : found->second;
}

// US Army subcourse OD1640, Lesson 2 task 3: a plug of radius .5 in a V of 65 degrees has its
// centre .9305788 from the point (exact .9305795).
TEST(PlacingCases, PlugInAV) {
  Case one(
      "hole P 1/16\nhole A 1\nline M\nline N\nin_line x P A\ntangent A M\ntangent A N\n"
      "traced A 0 0.93\ntraced P 0 0\n");
  one.through("M", "P").through("N", "P").angleOf("M", "57.5").angleOf("N", "122.5");
  one.traced("M", {"0", "0", "0.5", "0.785"}).traced("N", {"0", "0", "-0.5", "0.785"});
  EXPECT_NEAR(apart(one.solution(), "P", "A"), 0.9305795, 5e-7);
}

// OD1640 p. 69, Fig. 19: 15°55' with the side opposite 1.7 in gives an adjacent of 5.961 (exact
// 5.961314) and a hypotenuse of 6.200 (exact 6.198973; the book divides by .2742).
TEST(PlacingCases, ATriangleByOneSideAndItsAngle) {
  const Solution solution =
      solvedText("hole A 1/4\nhole C 1/4\nr1 y A C 1.7\nr2 angle A C 15°55'\n");
  const auto x = solution.between("A", "C", Axis::x);
  ASSERT_TRUE(x);
  EXPECT_NEAR(x->toDouble() / static_cast<double>(Length::kTicksPerInch), 5.961314, 5e-7);
  EXPECT_NEAR(apart(solution, "A", "C"), 6.198973, 5e-7);
}

// Rings: seven holes on 10 in, 4.3388 apart (algebra.com, question 731560); twelve on 35 cm, 9.0587
// cm (question 423148); five on 12 cm, 7.053423 cm (University of Illinois, MSTE, Bolt diameter,
// worksheet 2); three on 325 mm, 81.25 mm from the centre to a side (mathhelpforum.com, 152010).
TEST(PlacingCases, RingsOfOtherTrades) {
  EXPECT_NEAR(apart(solvedText("ring E 7 10 0\n"), "E1", "E2"), 4.3388, 5e-5);
  EXPECT_NEAR(apart(solvedText("ring E 12 350mm 0\n"), "E1", "E2"), 9.0587 / 2.54, 5e-5 / 2.54);
  EXPECT_NEAR(apart(solvedText("ring E 5 120mm 0\n"), "E1", "E2"), 7.053423 / 2.54, 5e-7);
  const Solution three = solvedText("ring E 3 325mm 60\n");
  const auto side = three.between("E", "E1", Axis::x);
  ASSERT_TRUE(side);
  EXPECT_NEAR(side->toDouble() / Length::kTicksPerMillimetre, 81.25, 1e-7);
  EXPECT_NEAR(apart(three, "E1", "E2"), 281.458256 / 25.4, 1e-6);
}

// Three circles in a row on one line (sangaku, Gunma 1824): 1/√r = 1/√36 + 1/√9, r = 4.
TEST(PlacingCases, ThreeCirclesOnALine) {
  Case one(
      "edge L x left\nedge F y front\nhole A 72\nhole B 18\narc C\nr1 x L A 40\n"
      "tangent A F\ntangent B F\ntangent A B\ntangent C F\ntangent C A\ntangent C B\n"
      "traced L 0\ntraced F 0\ntraced A 40 36\ntraced B 76 9\n");
  one.traced("C", {"64", "4", "4"});
  EXPECT_NEAR(circleOf(one.solution(), "C").radius, 4, 1e-8);
}

// F. Soddy, "The Kiss Precise", Nature 137 (1936) 1021: three circles of radius 1, 2 and 3 that
// touch one another; the one between them has radius 6/23 about (21/23, 20/23), the one round them
// radius 6 about (3, 4).
TEST(PlacingCases, TheKissPrecise) {
  Case one(
      "hole A 2\nhole B 4\nhole C 6\narc D\narc E\nr1 x A B 3\nin_line y A B\n"
      "r2 y A C 4\nin_line x A C\ntraced A 0 0\ntraced B 3 0\ntraced C 0 4\n");
  one.traced("D", {"0.9", "0.88", "0.27"}).traced("E", {"3.02", "3.98", "6"});
  for (const char* id : {"A", "B", "C"}) {
    one.touching("D", id, Touch::outside).touching("E", id, Touch::inside);
  }
  const Solution solution = one.solution();
  const PlaneCircle between = circleOf(solution, "D"), about = circleOf(solution, "E");
  EXPECT_NEAR(between.radius, 6.0 / 23, 1e-9);
  EXPECT_NEAR(between.centre.x, 21.0 / 23, 1e-9);
  EXPECT_NEAR(between.centre.y, 20.0 / 23, 1e-9);
  EXPECT_NEAR(about.radius, 6, 1e-8);
  EXPECT_NEAR(about.centre.x, 3, 1e-8);
  EXPECT_NEAR(about.centre.y, 4, 1e-8);
}

// AMC 12A 2005 no. 16 (answer from memory): three circles of radius s in a corner; one that
// touches both sides and the outer two has the radius 9 s.
TEST(PlacingCases, CirclesInACorner) {
  Case one(
      "edge L x left\nedge F y front\nhole A 2\nhole B 2\nhole C 2\narc D\n"
      "tangent A L\ntangent A F\ntangent B F\ntangent A B\ntangent C L\ntangent A C\n"
      "tangent D L\ntangent D F\n"
      "traced L 0\ntraced F 0\ntraced A 1 1\ntraced B 3 1\ntraced C 1 3\n");
  one.traced("D", {"9.01", "8.98", "9"}).touching("D", "B", Touch::outside);
  const Solution solution = one.solution();
  EXPECT_NEAR(circleOf(solution, "D").radius, 9, 1e-8);
  // The other of the two is touched as well.
  EXPECT_NEAR(apart(solution, "D", "C"), 10, 1e-8);
}

// Machinery's Handbook, 31st ed., p. 702: two discs in contact make 15 degrees; the small one is 1
// in, the large one 1.3002 (exact 1.300242).
TEST(PlacingCases, DiscsInContact) {
  Case one("hole A 1\narc B\nline M\nin_line y A B\ntangent M A\ntangent M B\ntraced A 0 0\n");
  one.traced("B", {"1.15", "0", "0.65"}).touching("A", "B", Touch::outside);
  one.traced("M", {"0", "0.5", "1.15", "0.65"}).angleOf("M", "7.5");
  EXPECT_NEAR(2 * circleOf(one.solution(), "B").radius, 1.300242, 5e-7);
}

// Discs apart. Jones, "Accurate measurement of angles and tapers": 20 degrees, discs of 3 and 1 in,
// centres 5.759 (exact 5.758770). Machinery's Handbook, 31st ed., p. 701: 3/4 in per foot, discs of
// 1.5 and 1.25, 4.002 (exact 4.001953; atan(3/8 ÷ 12) is 1.7899106°).
TEST(PlacingCases, DiscsApart) {
  Case steep(
      "hole A 1\nhole B 3\nline M\nin_line y A B\ntangent M A\ntangent M B\n"
      "traced A 0 0\ntraced B 5.76 0\n");
  steep.angleOf("M", "10").traced("M", {"0", "0.5", "5.7", "1.5"});
  EXPECT_NEAR(apart(steep.solution(), "A", "B"), 5.758770, 5e-7);
  Case slight(
      "hole A 1.25\nhole B 1.5\nline M\nin_line y A B\ntangent M A\ntangent M B\n"
      "traced A 0 0\ntraced B 4 0\n");
  slight.angleOf("M", "1.7899106").traced("M", {"0", "0.625", "4", "0.75"});
  EXPECT_NEAR(apart(slight.solution(), "A", "B"), 4.001953, 2e-6);
}

// Machinery's Handbook, 31st ed., p. 701: discs of 1 and 1.5 in, centres 5 apart: 1.2015 in of
// taper a foot (exact 1.201503).
TEST(PlacingCases, TaperOverTwoDiscs) {
  Case one(
      "hole A 1\nhole B 1.5\nline M\nr1 x A B 5\nin_line y A B\ntangent M A\ntangent M B\n"
      "traced A 0 0\ntraced B 5 0\n");
  one.traced("M", {"0", "0.5", "5", "0.75"});
  const Solution solution = one.solution();
  ASSERT_TRUE(solution.beyond.lines[0].contains("M"));
  const double half = std::tan(solution.beyond.lines[0].at("M").direction);
  EXPECT_NEAR(std::abs(half) * 24, 1.201503, 5e-7);
}

// Circles of radius 1 that touch in a ring, in a circle of the radius that
// tables/circles_in_circle.csv gives (encyclopaedia, Circle packing in a circle; from memory, cut
// to three places): 2.154 for 3, 2.414 for 4. Seven are six about one; eight and more are no ring
// of touching ones.
TEST(PlacingCases, CirclesInACircle) {
  for (const CsvRow& row : publishedTable("circles_in_circle")) {
    const int circles = std::stoi(row.at("circles"));
    if (circles > 7) continue;
    const double about = std::stod(row.at("outer_over_inner_radius_3dp_truncated"));
    const std::string pitch = std::to_string(2 * (about - 1)).substr(0, 5);
    const int count = std::min(circles, 6);
    const double gap =
        apart(solvedText("ring E " + std::to_string(count) + " " + pitch + " 0\n"), "E1", "E2");
    EXPECT_LE(gap, 2 + 1e-9) << circles;
    EXPECT_GT(gap, 2 - 0.002) << circles;
  }
}

// Machinery's Handbook, 31st ed., p. 79: a segment of radius 60 and height 8 has a chord of 59.86
// (exact 59.866518; the book rounds a root); one of chord 16 and height 6 the radius 8 1/3.
TEST(PlacingCases, Segments) {
  const Solution chord = solvedText(
      "hole A 1/4\nhole P 1/4\nhole Q 1/4\nr1 y A P 52\nr2 centres A P 60\nin_line y P Q\n"
      "r3 centres A Q 60\ntraced A 0 0\ntraced P 30 52\ntraced Q -30 52\n");
  EXPECT_NEAR(apart(chord, "P", "Q"), 59.866518, 1e-6);
  Case arc(
      "hole P 1/4\nhole Q 1/4\nhole S 1/4\narc C\nr1 x P Q 16\nin_line y P Q\n"
      "r2 x P S 8\nr3 y P S 6\ntraced P -8 0\ntraced Q 8 0\ntraced S 0 6\n");
  arc.feature("C").as<kind::Arc>()->through = {"P", "Q", "S"};
  arc.traced("C", {"0", "-2.3", "8.3"});
  EXPECT_NEAR(circleOf(arc.solution(), "C").radius, 25.0 / 3, 1e-8);
}

// Segments of circles of radius 1 (tables/circle_segments.csv, computed): the chord of each angle.
TEST(PlacingCases, ChordsSteppedOff) {
  for (const CsvRow& row : publishedTable("circle_segments")) {
    const Solution solution = solvedText(
        "hole A 1/4\nhole P 1/4\nhole Q 1/4\nr1 x A P 1\nin_line y A P\n"
        "r2 centres A Q 1\nr3 angle A Q " +
        row.at("angle_deg") + "\n");
    EXPECT_NEAR(apart(solution, "P", "Q"), std::stod(row.at("chord")), 5.1e-6)
        << row.at("angle_deg");
  }
}

// A disc of 6 in milled round on a rotary table with a 3/4 in end mill (a machining course
// question, mymasterpapers.com): the spindle stands 3 3/8 from the centre.
TEST(PlacingCases, ADiscOnTheRotaryTable) {
  EXPECT_EQ(spindleDistance({{{0, 0}, 3}, 0, 360}, 0.75), 3.375);
}

// Wheels by their pitch circles. US Navy, Machinery Repairman 14345, appendix III, p. AIII-2: the
// centre distance is half the sum of the pitch diameters; A. F. Collins, Inventing for Boys, 1916:
// half the sum of the teeth over the diametral pitch (figures computed). 60 and 20 teeth of 16 DP
// stand 2.500 in apart, 60 and 8 of module 1 34 mm; exactly, wherever the pinion stands.
TEST(PlacingCases, WheelsByTheirPitchCircles) {
  const Solution inch = solvedText(
      "hole W 60/16\nhole P 20/16\nin_line y W P\ntangent W P\ntraced W 0 0\ntraced P 2.5 0\n");
  const auto level = inch.between("W", "P", Axis::x);
  ASSERT_TRUE(level);
  EXPECT_EQ(nearestTick(*level), Length::ticks(5 * Length::kTicksPerInch / 2));
  const Solution metric = solvedText(
      "hole W 60mm\nhole P 8mm\nr1 x W P 30mm\ntangent W P\ntraced W 0 0\ntraced P 1.18 0.63\n");
  const auto up = metric.between("W", "P", Axis::y);
  ASSERT_TRUE(up);
  EXPECT_EQ(nearestTick(*up), Length::ticks(16 * Length::kTicksPerMillimetre));
  EXPECT_NEAR(apart(metric, "W", "P"), 34 / 25.4, 1e-9);
}

/// What an index plate of a 40 : 1 head, 9 degrees a turn, makes of whole turns and holes.
Angle indexed(std::int64_t turns, std::int64_t holes, std::int64_t ofCircle) {
  const std::int64_t turn = Angle::degrees(9).microArcseconds();
  EXPECT_EQ(turn * holes % ofCircle, 0);
  return Angle::microArcseconds(turn * turns + turn * holes / ofCircle);
}

Angle angleRead(const char* text) {
  const auto read = readAngle(text);
  EXPECT_TRUE(read) << text;
  return read ? read->value : Angle();
}

// Machinery's Handbook 1916, indexing for angles: 35° is 3 turns and 16 holes of 18, 11 1/2° 1 and
// 5 of 18, 20' 1 of 27; 48°40' (computed) 5 and 11 of 27. An angle as lettered is held so finely
// that each of them is exact. How to divide (which plate, which circle) is not worked out here:
// dial readings are given in degrees.
TEST(PlacingCases, AnglesOfAnIndexingTable) {
  EXPECT_EQ(angleRead("35"), indexed(3, 16, 18));
  EXPECT_EQ(angleRead("11 1/2"), indexed(1, 5, 18));
  EXPECT_EQ(angleRead("20'"), indexed(0, 1, 27));
  EXPECT_EQ(angleRead("48°40'"), indexed(5, 11, 27));
}

// US Army OD1644 ed. 8: 24' would want a circle of 22.5 holes; the 23 is taken and makes 23.478'
// (computed). What is made is known to the tick where the ring is given by its number: 40 · 23
// divisions against the 900 that 24' would be.
TEST(PlacingCases, AnAngleThatNoCircleOfHolesMakes) {
  EXPECT_NE(angleRead("9").microArcseconds() % angleRead("24'").microArcseconds(), 0);
  for (const auto& [count, minutes] : {std::pair("920", 23.478261), std::pair("900", 24.0)}) {
    const Solution ring = solvedText(std::string("ring E ") + count + " 20 0\n");
    const auto x = ring.between("E", "E2", Axis::x), y = ring.between("E", "E2", Axis::y);
    ASSERT_TRUE(x && y);
    const double angle = std::atan2(y->toDouble(), x->toDouble()) * 180 / std::numbers::pi;
    EXPECT_NEAR(angle * 60, minutes, 5e-6) << count;
  }
}

}  // namespace
}  // namespace inchwright::test
