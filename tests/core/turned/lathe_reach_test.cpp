#include <gtest/gtest.h>

#include "tests/core/turned/arbor.h"

namespace inchwright {
namespace {

// A cone is as thick as its large end. By hand: 1 in of 3 in to the foot falls from 7/8 to 5/8, so
// its large end stands above the collar of 3/4 that lies behind it, and its small end below.
TEST(LatheReach, ATaperHidesWhatLiesBehindItsLargeEnd) {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("T").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "T", "1/4").reads("T", "R", "1");
  arbor.outside("A", "L", "S", "1/2").outside("B", "S", "T", "3/4");
  arbor.add("C", kind::Taper{{"T", "R"}, lettered("7/8"), {}, {}, lettered("3"), "T"});
  arbor.held(Side::left).held(Side::right);
  EXPECT_EQ(rowsOf(arbor.work(0)), "C 1.000 0.875\n");
  EXPECT_EQ(rowsOf(arbor.work(1)),
            "A 0.500 0.500\n"
            "B 0.750 0.750\n"
            "C 1.750 0.625 done\n");
}

// What is as thick is roughed in the order of the print, and so on every sheet of it.
TEST(LatheReach, SurfacesOfOneDiameterAreTurnedAsThePrintListsThem) {
  Arbor arbor;
  arbor.edge("L", Side::left).edge("S").edge("T").edge("R", Side::right);
  arbor.reads("L", "S", "1/2").reads("S", "T", "1/4").reads("T", "R", "1");
  arbor.outside("A", "L", "S", "1/2").outside("B", "S", "T", "3/4").outside("C", "T", "R", "1/2");
  arbor.held(Side::left);
  const std::string cuts = cutsOf(arbor.work());
  EXPECT_NE(cuts.find("rough B 1.250 0.770\nrough A 1.750 0.520\nrough C 1.000 0.520\n"),
            std::string::npos)
      << cuts;
}

// A readout steps as its owner says; only figures asked for in the other unit take that unit's own.
TEST(LatheReach, TheStepIsThatOfTheLatheUnlessTheUnitIsTheOther) {
  struct Case {
    Unit own;
    const char* ownStep;
    std::optional<Unit> asked;
    std::optional<std::string> askedStep;
    Unit unit;
    const char* step;
  };
  constexpr Unit in = Unit::inch, mm = Unit::millimetre;
  for (const Case& one : {Case{in, "0.002", {}, {}, in, "0.002"},
                          {in, "0.002", in, {}, in, "0.002"},
                          {in, "0.002", mm, {}, mm, "0.02"},
                          {mm, "0.05", mm, {}, mm, "0.05"},
                          {mm, "0.05", in, {}, in, "0.001"},
                          {mm, "0.05", in, "0.0005", in, "0.0005"},
                          {in, "0.002", {}, "0.005", in, "0.005"}}) {
    Job job;
    job.lathe.emplace();
    job.lathe->unit = one.own;
    job.lathe->step = one.ownStep;
    const Lathe lathe = latheFor(job, {one.asked, one.askedStep});
    EXPECT_EQ(lathe.unit, one.unit) << one.ownStep << " to " << one.step;
    EXPECT_EQ(lathe.step, one.step) << one.ownStep << " to " << one.step;
  }
  EXPECT_EQ(latheFor(Job{}, {}), Lathe{});
}

}  // namespace
}  // namespace inchwright
