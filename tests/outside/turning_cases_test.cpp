// Published cases of turned work and of what is pressed or run together.

#include <gtest/gtest.h>

#include <cmath>

#include "core/kit/as_made.h"
#include "core/shop/thread_work.h"
#include "core/turned/lathe_formulas.h"
#include "core/turned/turned_shape.h"
#include "tests/support/csv_table.h"

namespace inchwright::test {
namespace {

Length inInches(std::string_view text) {
  return readLength(text).value().value;
}

Feature edgeAcrossX(const char* id, Side side) {
  Feature edge{id, Face::top, kind::Edge{Axis::x, side}, {}, {}, {}};
  return edge;
}

/// A part that is one taper from end to end.
TurnedShape taperOf(const kind::Taper& taper, const char* length) {
  Part part;
  part.turned = true;
  part.features = {edgeAcrossX("L", Side::left), edgeAcrossX("R", Side::right)};
  Feature feature{"A", Face::top, taper, {}, {}, {}};
  part.features.push_back(feature);
  Reading reading;
  reading.id = "r1";
  reading.from = "L";
  reading.to = "R";
  reading.figure = *readLength(length);
  part.readings = {reading};
  return turnedShape(part, *solve(part));
}

// "Turning and Boring Tapers" (Derry-Collard, New York 1902), equivalent tapers of degrees; two
// figures of its page text are misprinted (4° .07984, 15° .28330).
TEST(TurningCases, TapersOfDegreesOf1902) {
  int held = 0;
  for (const CsvRow& row : publishedTable("tapers_of_degrees_1902")) {
    const bool misprint = row.at("status").find("MISPRINT") != std::string::npos;
    const double degrees = std::stod(row.at("included_angle_deg"));
    const double printed =
        std::stod(row.at(misprint ? "computed_in_per_in" : "printed_taper_in_per_in"));
    EXPECT_NEAR(taperOfAngle(degrees), printed, 2e-5) << degrees;
    // The same as a part: from 2 in over 1 in of length.
    kind::Taper taper;
    taper.between = {"L", "R"};
    taper.large = *readLength("2");
    taper.angle = *readAngle(row.at("included_angle_deg"));
    const TurnedShape shape = taperOf(taper, "1");
    ASSERT_TRUE(shape.stretches[0].atRight);
    EXPECT_NEAR(2 - shape.stretches[0].atRight->toInches(), printed, 2e-5) << degrees;
    ++held;
  }
  EXPECT_GE(held, 12);
}

// F. D. Jones, Turning and Boring (1914), pages 80 to 83 by its index: 1 in per foot on work 9 in
// long over all: 3/8; 2 1/2 to 2 over 6 in, work 9: 3/8; 1 1/2 in per foot on 8 in: 1/2. J. Rose,
// Modern Machine-Shop Practice, at Fig. 1217: 1 in per foot on 3 ft: 1 1/2. Exact.
TEST(TurningCases, TheTailstockIsSetOverByTheWholeLength) {
  const auto over = [](const char* large, const char* small, const char* taper, const char* work) {
    return tailstockSetOver(inInches(large), inInches(small), inInches(taper), inInches(work))
        .value();
  };
  EXPECT_EQ(over("1", "0", "12", "9"), inInches("3/8").rational());
  EXPECT_EQ(over("2 1/2", "2", "6", "9"), inInches("3/8").rational());
  EXPECT_EQ(over("1 1/2", "0", "12", "8"), inInches("1/2").rational());
  EXPECT_EQ(over("1", "0", "12", "36"), inInches("1 1/2").rational());
}

// Rose, at Fig. 1240: 36/48 × 66/18 × a lead screw of 4 cuts 11 threads. Selection of screwing
// wheels (chestofbooks.com): 1 to the inch to cut 7: 20 and 140. Exact.
TEST(TurningCases, ChangeWheels) {
  EXPECT_EQ(threadsPerInchOf({{48, 36}, {18, 66}}, 4).value(), Rational(11));
  EXPECT_EQ(threadsPerInchOf({{20, 140}}, 1).value(), Rational(7));
}

// Depths of the thread of a screw over its pitch (constants from memory, sharp heights checked).
TEST(TurningCases, DepthsOfScrews) {
  const std::map<std::string, std::vector<ThreadSeries>> forms{
      {"UN and ISO metric", {ThreadSeries::unc, ThreadSeries::unf, ThreadSeries::metric}},
      {"BSW, BSF, ME, brass",
       {ThreadSeries::bsw, ThreadSeries::bsf, ThreadSeries::me, ThreadSeries::brass}},
      {"BA", {ThreadSeries::ba}}};
  std::size_t held = 0;
  for (const CsvRow& row : publishedTable("thread_form_constants")) {
    const auto form = forms.find(row.at("form"));
    if (form == forms.end()) continue;  // the old American form is cut no more
    ++held;
    for (const ThreadSeries series : form->second) {
      EXPECT_NEAR(screwDepthInPitches(series).toDouble(),
                  std::stod(row.at("external_depth_over_p")), 5e-7);
    }
  }
  EXPECT_EQ(held, forms.size());
}

// Machinery's Handbook, 31st ed., p. 660 Table 12: LN2 on 1 in: interference 0 to 1.3 thou.
TEST(TurningCases, ABushOfLn2) {
  Mate mate;
  mate.name = "bush";
  mate.hole = *readLength("1");
  mate.shaft = *readLength("1");
  mate.fit = "LN2";
  const auto wanted = wantedClearance(Job{}, mate);
  ASSERT_TRUE(wanted.ok());
  EXPECT_EQ(*wanted->least, inInches(".0013").negated());
  EXPECT_EQ(*wanted->greatest, Length());
}

// F. D. Jones, Turning and Boring (1914), limits for running fits, classes X, Y and Z (its size
// headings from memory): each tolerance is the difference of its limits, and the shaft runs with so
// much play in a hole of the very size. No table here has the classes by name, as no standard of
// today does; their limits are lettered.
TEST(TurningCases, RunningFitsOf1914) {
  int held = 0;
  for (const CsvRow& row : publishedTable("running_fit_limits_1914")) {
    const std::string heading = row.at("diameter_in");
    const std::size_t last = heading.find(" to ");
    const std::string size = heading.substr(last + 4);
    const auto thou = [&](const char* column) {
      return inInches(row.at(column).substr(1) + " thou");
    };
    const Length least = thou("shaft_upper_thou"), greatest = thou("shaft_lower_thou");
    EXPECT_EQ(*greatest.minus(least), inInches(row.at("tolerance_thou") + " thou")) << size;
    Mate mate;
    mate.name = "running";
    mate.hole = *readLength(size + " BSC");
    mate.shaft = *readLength(size + " -" + writeDecimal(least, Unit::inch) + " -" +
                             writeDecimal(greatest, Unit::inch));
    mate.least = *readLength(writeDecimal(least, Unit::inch));
    Job job;
    job.mates = {mate};
    const MateState state = mateStates(job).front();
    EXPECT_EQ(state.clearanceAsDrawn, (FoundSize{least, greatest})) << size;
    EXPECT_EQ(state.verdict, Verdict::in) << size;
    ++held;
  }
  EXPECT_EQ(held, 15);
}

// ISO 286 on 50 mm (an encyclopaedia's article as quoted at videorepeats.com): H7/p6 1 to 42 µm of
// interference. H7/k6 (from memory): 23 clear to 18 tight.
TEST(TurningCases, PressFitsOfFiftyMillimetres) {
  const auto press = fitByName("H7/p6", inInches("50 mm"));
  ASSERT_TRUE(press.ok());
  EXPECT_EQ(press->greatestClearance(), inInches("0.001 mm").negated());
  EXPECT_EQ(press->leastClearance(), inInches("0.042 mm").negated());
  const auto transition = fitByName("H7/k6", inInches("50 mm"));
  ASSERT_TRUE(transition.ok());
  EXPECT_EQ(transition->greatestClearance(), inInches("0.023 mm"));
  EXPECT_EQ(transition->leastClearance(), inInches("0.018 mm").negated());
}

// Throw in a three-jaw chuck (from memory, derived again from three points of contact).
TEST(TurningCases, PackingUnderOneJaw) {
  EXPECT_NEAR(threeJawPacking(inInches("1/4"), inInches("1/2"))->toInches(), .32569, 5e-6);
}

}  // namespace
}  // namespace inchwright::test
