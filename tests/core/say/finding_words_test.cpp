#include <gtest/gtest.h>

#include "core/say/plan_words.h"

namespace inchwright {
namespace {

Length asLength(std::string_view text) {
  return readLength(text)->value;
}

/// With every fact that a finding can have, so that what is left out is left out by its sentence.
Finding foundAs(FindingCode code, std::string_view had = "1/4") {
  Finding one;
  one.code = code;
  one.places = {"A"};
  one.by = asLength("1/8");
  one.tool = "drill 1/4";
  one.which = 1;
  one.jaw = Jaw::moving;
  one.side = Side::left;
  one.wanted = asLength("3/8");
  one.had = asLength(had);
  one.piece = "2";
  return one;
}

template <class Change>
Finding butFor(Finding one, Change make) {
  make(one);
  return one;
}

// Who reads the sentence goes to the machine with it: which tool, into what, by how much, and what
// to do about it.
TEST(FindingWords, SayWhatMeetsWhatAndByHowMuch) {
  using enum FindingCode;
  struct Case {
    Finding finding;
    const char* says;
  };
  const auto byNoTool = [](Finding& one) { one.tool.clear(); };
  const auto nowToo = [](Finding& one) { one.nowToo = true; };
  for (const Case& one : {
           Case{foundAs(parallel),
                "A: drill 1/4 runs into the parallel at the moving jaw by 0.125"},
           {butFor(foundAs(parallel), [](Finding& f) { f.shift = asLength("1/16"); }),
            "A: drill 1/4 runs into the parallel at the moving jaw by 0.125: shift it 0.063 away "
            "from that jaw"},
           {butFor(foundAs(parallel), [](Finding& f) { f.shift = asLength("-1/2"); }),
            "A: drill 1/4 runs into the parallel at the moving jaw by 0.125: shift it 0.500 "
            "towards that jaw"},
           {foundAs(jaw),
            "A: drill 1/4 runs into the moving jaw by 0.125: higher parallels, or hold it "
            "elsewhere"},
           {butFor(foundAs(jaw), [](Finding& f) { f.jaw.reset(); }),
            "A: drill 1/4 runs into the fixed jaw by 0.125: higher parallels, or hold it "
            "elsewhere"},
           {foundAs(stop),
            "A: drill 1/4 runs into the stop on the left side by 0.125: take it away once the work "
            "is held"},
           {butFor(foundAs(stop), [](Finding& f) { f.side.reset(); }),
            "A: drill 1/4 runs into the stop by 0.125: take it away once the work is held"},
           {butFor(foundAs(clamp), byNoTool),
            "A: what is cut runs into clamp 2 by 0.125: shift the clamp"},
           {foundAs(clearOf),
            "A: drill 1/4 comes 0.125 too near to what it is to keep clear of (2)"},
           {foundAs(viceBed),
            "A: drill 1/4 goes 0.375 below the work, and only 0.250 is free above the vice's bed: "
            "higher parallels"},
           {butFor(foundAs(breaksInto),
                   [](Finding& f) {
                     f.places = {"A", "B"};
                   }),
            "A and B: the wall between them is only 0.250 thick, 0.125 too thin"},
           {butFor(foundAs(breaksInto, "-1/4"),
                   [](Finding& f) {
                     f.places = {"A", "B", "C"};
                   }),
            "A, B and C: they run into each other by 0.250"},
           {foundAs(breaksInto, "0"),
            "A: the wall between them is only 0.000 thick, 0.125 too thin"},
           {foundAs(breaksOut), "A: it breaks out of the part on the left side by 0.125"},
           {butFor(foundAs(breaksOut), byNoTool),
            "A: it breaks out of the part on the left side by 0.125: drill it before that side is "
            "cut down"},
           {butFor(butFor(foundAs(breaksOut), byNoTool), nowToo),
            "A: it breaks out of the part on the left side by 0.125: an end mill before a bar, "
            "which cuts by turns; a drill wanders"},
           {foundAs(thinWall),
            "A: the wall on the left side is only 0.250 thick, 0.125 too thin once that side is "
            "cut down"},
           {butFor(foundAs(thinWall), nowToo),
            "A: the wall on the left side is only 0.250 thick, 0.125 too thin"},
           {foundAs(breaksThrough), "A: drill 1/4 ends only 0.250 short of the far side"},
           {foundAs(breaksThrough, "0"), "A: drill 1/4 ends only 0.000 short of the far side"},
           {foundAs(breaksThrough, "-1/4"), "A: drill 1/4 breaks through the far side by 0.250"},
           {foundAs(cutterTooBig), "A: the cutter 0.250 is wider than the slot by 0.125"},
           {foundAs(cornerTooTight), "A: the corner is 0.125 tighter than the smallest cutter"},
           {foundAs(tooDeep), "A: drill 1/4 has flutes of 0.250, and 0.375 is to be cut"},
           {butFor(foundAs(drillAtReamSize), [](Finding& f) { f.tool = "1/4"; }),
            "A: drill 1/4 was ticked off, as large as the reamer: nothing is left to ream"},
           {butFor(foundAs(grip), [](Finding& f) { f.places.clear(); }),
            "the vice holds 0.250 of the work, and 0.375 is wanted: lower parallels"},
           {butFor(foundAs(grip),
                   [](Finding& f) {
                     f.places.clear();
                     f.axis = Axis::y;
                   }),
            "the work is 0.375 from jaw to jaw, and the vice opens 0.250: hold it otherwise"},
           {butFor(foundAs(travel), [](Finding& f) { f.axis = Axis::x; }),
            "A: they lie 0.375 apart along the machine's X, 0.125 more than it travels"},
           {butFor(foundAs(travel), [](Finding& f) { f.axis = Axis::y; }),
            "A: they lie 0.375 apart along the machine's Y, 0.125 more than it travels"},
           {foundAs(headroom),
            "A: the tools differ by 0.375 in how far they stand out (drill 1/4 the furthest), "
            "0.125 more than the quill comes down: the knee or head has to move. Settle it before "
            "the first hole; where the head moves on a round column, find zero again"},
           {butFor(foundAs(stockTooSmall),
                   [](Finding& f) {
                     f.places.clear();
                     f.axis = Axis::y;
                     f.side = Side::back;
                   }),
            "piece 2 is 0.125 too short along y: the back side does not clean up"},
       }) {
    EXPECT_EQ(wordsOf(one.finding, *readStep("0.001", Unit::inch)), one.says);
  }
  // A figure in millimetres names its unit, beside a print in inches.
  EXPECT_EQ(wordsOf(foundAs(cutterTooBig), *readStep("0.01", Unit::millimetre)),
            "A: the cutter 6.35 mm is wider than the slot by 3.18 mm");
}

}  // namespace
}  // namespace inchwright
