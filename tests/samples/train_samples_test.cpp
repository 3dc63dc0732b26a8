// The wheel train between its plates and the cock with a curved edge, worked out by hand.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/document/document.h"
#include "core/plan/curve_cuts.h"
#include "core/say/doubt_words.h"
#include "tests/support/solved_part.h"

namespace inchwright {
namespace {

constexpr double kTick = 1.0 / static_cast<double>(Length::kTicksPerInch);
constexpr double kDegree = std::numbers::pi / 180;

Job sampleNamed(const char* name) {
  auto job = loadDocument(std::string(INCHWRIGHT_SOURCE_DIR "/samples/") + name + ".inchwright");
  EXPECT_TRUE(job.ok()) << (job ? "" : job.error().text);
  return job ? *std::move(job) : Job{};
}

// Nothing is asked but to read twice what nothing checks.
void expectNothingAsked(const Part& part, const Solution& solution) {
  for (const Doubt& doubt : solution.doubts) {
    EXPECT_EQ(doubt.key.topic, DoubtTopic::alone) << doubtText(part, solution, doubt);
  }
  EXPECT_FALSE(solution.isDraft());
}

void expectAt(const Solution& solution, const char* id, double x, double y) {
  const auto along = [&](const char* side, Axis axis) {
    const auto ticks = solution.between(side, id, axis);
    EXPECT_TRUE(ticks) << id;
    return ticks ? ticks->toDouble() * kTick : 0;
  };
  EXPECT_NEAR(along("L", Axis::x), x, 3 * kTick) << id;
  EXPECT_NEAR(along("F", Axis::y), y, 3 * kTick) << id;
}

// B 1.500 from A at 60°. C by the cosine rule: 1.250 from B and 2.125 from A, to the right of the
// way from A to B. D likewise by 1.125 from C and 2.311 from A, to the right of the way from A to
// C; the lettered 120° agrees with that. E 7/8 above D.
TEST(TrainSample, ArborsAreWhereTheTrianglesPutThem) {
  const Job job = sampleNamed("wheel_train");
  ASSERT_EQ(job.parts.size(), 2u);
  for (const Part& part : job.parts) {
    SCOPED_TRACE(part.name);
    const Solution solution = solved(part);
    expectNothingAsked(part, solution);
    const double ax = 1, ay = 0.875;
    const double b = 60 * kDegree;
    const double c = b - std::acos((1.5 * 1.5 + 2.125 * 2.125 - 1.25 * 1.25) / (2 * 1.5 * 2.125));
    const double cx = ax + 2.125 * std::cos(c), cy = ay + 2.125 * std::sin(c);
    const double turn =
        c + std::numbers::pi -
        std::acos((2.125 * 2.125 + 1.125 * 1.125 - 2.311 * 2.311) / (2 * 2.125 * 1.125));
    EXPECT_NEAR(turn / kDegree, 120, 0.02);
    const double dx = cx + 1.125 * std::cos(turn), dy = cy + 1.125 * std::sin(turn);
    expectAt(solution, "A", ax, ay);
    expectAt(solution, "B", ax + 0.75, ay + 1.5 * std::sqrt(0.75));
    expectAt(solution, "C", cx, cy);
    expectAt(solution, "D", dx, dy);
    expectAt(solution, "E", dx, dy + 0.875);
    // The spare angle checks those of the triangles, and not the distance to E.
    EXPECT_EQ(solution.status.at(14), ReadingStatus::agrees);
    EXPECT_EQ(solution.status.at(12), ReadingStatus::agrees);
    EXPECT_EQ(solution.status.at(15), ReadingStatus::alone);
  }
}

// The hollow of 3 in touches both ends of 3/8: its centre is 3 3/8 from both, so the root of
// 3.375² − 1.25² above the line between them. It touches 3/8 of the way there.
TEST(CockSample, EndsAndHollowByHand) {
  const Job job = sampleNamed("cock");
  ASSERT_EQ(job.parts.size(), 1u);
  const Part& part = job.parts[0];
  const Solution solution = solved(part);
  expectNothingAsked(part, solution);
  const FaceOutlines faces = outlinesOf(part, solution.positions, solution.beyond, Face::top);
  ASSERT_EQ(faces.outlines.size(), 1u);
  const auto& pieces = faces.outlines[0].pieces;
  ASSERT_EQ(pieces.size(), 4u);
  const double up = std::sqrt(3.375 * 3.375 - 1.25 * 1.25);
  ASSERT_TRUE(pieces[3].path && pieces[3].path->circle);
  EXPECT_NEAR(pieces[3].path->circle->centre.x, 1.25, 3 * kTick);
  EXPECT_NEAR(pieces[3].path->circle->centre.y, up, 3 * kTick);
  ASSERT_TRUE(pieces[0].path);
  EXPECT_NEAR(pieces[0].path->start.x, 1.25 / 9, 1e-8);
  EXPECT_NEAR(pieces[0].path->start.y, up / 9, 1e-8);
  EXPECT_NEAR(pieces[0].path->end.y, -0.375, 1e-8);
}

// Both ends on the rotary table with a 1/2 in cutter: the spindle R + r = 5/8 off, the dial from
// 360° less where the end is left to less where it is begun, the table turned clockwise.
TEST(CockSample, DialReadingsByHand) {
  const Job job = sampleNamed("cock");
  ASSERT_EQ(job.parts.size(), 1u);
  const Part& part = job.parts[0];
  const Solution solution = solved(part);
  const inchwright::Setup& setup = part.setups.at(0);
  const auto work = workAt(job, part, solution, setup);
  ASSERT_TRUE(work.ok());
  const auto cuts = curveCuts(
      *work, outlinesOf(part, solution.positions, solution.beyond, Face::top), setup.curves);
  ASSERT_TRUE(cuts.ok());
  EXPECT_TRUE(cuts->findings.empty());
  ASSERT_EQ(cuts->cuts.size(), 3u);
  const double leans = std::atan2(std::sqrt(3.375 * 3.375 - 1.25 * 1.25), 1.25) / kDegree;
  const CurveCut &left = cuts->cuts[0], &right = cuts->cuts[1], &hollow = cuts->cuts[2];
  for (const CurveCut* end : {&left, &right}) {
    EXPECT_EQ(end->spindle, readLength("5/8")->value);
    EXPECT_EQ(end->pin, readLength("1/4")->value);
    ASSERT_TRUE(end->dial);
    EXPECT_TRUE(end->dial->isTurnedClockwise);
  }
  EXPECT_NEAR(left.dial->start, 360 - leans, 1e-6);
  EXPECT_NEAR(left.dial->end, 90, 1e-6);
  EXPECT_NEAR(right.dial->start, 90, 1e-6);
  EXPECT_NEAR(right.dial->end, 180 + leans, 1e-6);
  // Along the hollow the cutter's centre keeps R − r = 2 3/4 from the hollow's.
  EXPECT_TRUE(hollow.isInside);
  EXPECT_LE(*hollow.ridge, readLength(".002")->value);
  ASSERT_GE(hollow.points.size(), 10u);
  const double up = std::sqrt(3.375 * 3.375 - 1.25 * 1.25);
  for (const CurveCut::At& at : hollow.points) {
    EXPECT_NEAR(std::hypot(at.x.value.toInches() - 1.25, at.y.value.toInches() - up), 2.75, 1e-7);
  }
}

// Three touching points, in figures. From D's centre the hollow's lies 1.25 to the right and
// √(3.375² − 1.25²) = √(11.390625 − 1.5625) = √9.828125 = 3.134984 up: at the angle whose tangent
// is 3.134984/1.25 = 2.507987. The tangent of 68° is 2.475087, of 68.25° 2.506520,
// of 68.27° 2.509064: 68.2615°. There D's end touches the hollow; at 270°, straight down, the
// straight edge. E's touches the hollow at 180° − 68.2615° = 111.7385°. Seen from the hollow's own
// centre those two lie the opposite way: at 248.2615° and 291.7385°. The table turned anticlockwise
// by its dial reading brings a point at α to α + dial: for a cutter to the right that has to be
// 360° (or 0°), for one away 90°, to the left 180°, towards 270°.
TEST(CockSample, DialReadingsForEveryPlaceOfTheCutterByHand) {
  struct Case {
    const char* of;
    CutterAt at;
    Sense counts;
    double start, end;
    bool isClockwise;
  };
  const Case cases[] = {
      // 360 − 68.2615 = 291.7385, 360 − 270 = 90.
      {"D", CutterAt::right, Sense::anticlockwise, 291.7385, 90, true},
      // 90 − 68.2615 = 21.7385, 90 − 270 + 360 = 180.
      {"D", CutterAt::away, Sense::anticlockwise, 21.7385, 180, true},
      // 180 − 68.2615 = 111.7385, 180 − 270 + 360 = 270.
      {"D", CutterAt::left, Sense::anticlockwise, 111.7385, 270, true},
      // A dial that counts the other way shows 360 less: 68.2615, 270.
      {"D", CutterAt::right, Sense::clockwise, 68.2615, 270, true},
      // 270 − 270 = 0, 270 − 111.7385 = 158.2615.
      {"E", CutterAt::towards, Sense::anticlockwise, 0, 158.2615, true},
      // Inside, the table turned anticlockwise: the right end first, 360 − 291.7385 = 68.2615, then
      // the left, 360 − 248.2615 = 111.7385.
      {"N", CutterAt::right, Sense::anticlockwise, 68.2615, 111.7385, false},
  };
  Job job = sampleNamed("cock");
  ASSERT_EQ(job.parts.size(), 1u);
  const Part& part = job.parts[0];
  const Solution solution = solved(part);
  const auto faces = outlinesOf(part, solution.positions, solution.beyond, Face::top);
  for (const Case& one : cases) {
    SCOPED_TRACE(std::string(one.of) + " " + std::string(nameOf(one.at)));
    job.machine.rotaryCounts = one.counts;
    const auto work = workAt(job, part, solution, part.setups.at(0));
    ASSERT_TRUE(work.ok());
    GivenCurve asked;
    asked.of = one.of;
    asked.cutter = *readLength("1/2");
    asked.cutterAt = one.at;
    const auto cuts = curveCuts(*work, faces, {asked});
    ASSERT_TRUE(cuts.ok());
    ASSERT_EQ(cuts->cuts.size(), 1u);
    ASSERT_TRUE(cuts->cuts[0].dial);
    EXPECT_NEAR(cuts->cuts[0].dial->start, one.start, 1e-4);
    EXPECT_NEAR(cuts->cuts[0].dial->end, one.end, 1e-4);
    EXPECT_EQ(cuts->cuts[0].dial->isTurnedClockwise, one.isClockwise);
    // 3/8 + 1/4 outside, 3 − 1/4 inside.
    EXPECT_EQ(cuts->cuts[0].spindle, readLength(one.isClockwise ? "5/8" : "2 3/4")->value);
  }
}

}  // namespace
}  // namespace inchwright
