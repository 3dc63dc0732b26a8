#include "core/say/lathe_words.h"

#include <gtest/gtest.h>

#include "tests/core/turned/arbor.h"

namespace inchwright {
namespace {

LatheFigure shownAs(const char* text, bool exact = true) {
  return {text, readLength(text)->value, exact};
}

Step inThous() {
  return *readStep("0.001", Unit::inch);
}

// By hand: 3/4 × 1/2, a shoulder and 1 in of 3/8, held by its left end and zeroed at the right one.
TEST(LatheWords, TellAWholeSetup) {
  Arbor arbor = stepped();
  arbor.held(Side::left, "1 1/4");
  std::string text;
  for (const std::string& line : latheLines(arbor.work(), Lathe{})) text += line + "\n";
  EXPECT_EQ(text,
            "Arbor, setup 1: in the lathe\n"
            "  inches at a step of 0.001\n"
            "  held by the left end, Z0 at R; Z counts up towards the chuck\n"
            "  over both ends 1.750\n"
            "  id          Length (Z)       Dia (X)\n"
            "  B                1.250         0.750  outside\n"
            "  C                1.000         0.375  outside\n"
            "  Cuts in order\n"
            "    face R                  Z 0.000\n"
            "    rough B                 Z 1.250  X 0.770\n"
            "    rough C                 Z 1.000  X 0.395\n"
            "    finish B                Z 1.250  X 0.750\n"
            "    finish C                Z 1.000  X 0.375\n"
            "    break all edges       \n"
            "  not within reach here: A\n"
            "  Mind: nothing says where zero is: the free end was taken\n");
}

// What must be known before a tool comes to the work, each by itself.
TEST(LatheWords, ARowSaysWhatItsFiguresDoNot) {
  struct Case {
    void (*change)(LatheRow&);
    const char* says;
  };
  static const SizeLimits kLimits{readLength(".2495")->value, readLength(".2502")->value};
  for (const Case& one : {
           Case{[](LatheRow&) {}, ""},
           {[](LatheRow& r) { r.behind = "B"; },
            "NOT FROM THE END: B in front of it would be cut away"},
           {[](LatheRow& r) { r.behind = "A"; },
            "NOT FROM THE END: nothing is bored in front of it"},
           {[](LatheRow& r) {
              r.behind = "B";
              r.cutHere = false;
            },
            "cut in an earlier setup"},
           {[](LatheRow& r) { r.from = shownAs("0.500"); }, ""},
           {[](LatheRow& r) {
              r.kind = FeatureKind::groove;
              r.from = shownAs("0.500");
              r.width = shownAs("0.125");
            },
            "begins at 0.500; 0.125 wide"},
           {[](LatheRow& r) { r.topSlide = 1.19348; }, "top slide to 1.193°, half the angle"},
           {[](LatheRow& r) { r.topSlide = 0.0625; }, "top slide to 0.063°, half the angle"},
           {[](LatheRow& r) {
              r.topSlide = 14.9996;
              r.setOver = shownAs("0.250");
            },
            "top slide to 15.000°, half the angle; or, long as it is, between centres with the "
            "tailstock set over by 0.250"},
           {[](LatheRow& r) {
              r.thread = ThreadCut{48, shownAs("0.0208"), shownAs("0.013"), true, "1/16"};
            },
            "48 to the inch, 0.013 deep on one side; LEFT-HAND; may run out by 1/16"},
           {[](LatheRow& r) {
              r.thread = ThreadCut{0, shownAs("0.039"), shownAs("0.024"), false, ""};
            },
            "pitch 0.039 in, 0.024 deep on one side"},
           {[](LatheRow& r) { r.knurl = "diamond"; }, "diamond"},
           {[](LatheRow& r) { r.limits = kLimits; }, "measure Ø 0.2495 to 0.2502"},
           {[](LatheRow& r) {
              r.limits = kLimits;
              r.roundsOut = true;
            },
            "measure Ø 0.2495 to 0.2502: the readout's step is too coarse to show it"},
           {[](LatheRow& r) { r.unsuited = true; },
            "DON'T TURN YET: chosen to suit its mate, and no size does; see check"},
           {[](LatheRow& r) { r.struckOut = shownAs("0.313"); },
            "to suit its mate, not the print's 0.313"},
           {[](LatheRow& r) { r.disputed = true; }, "in dispute: the print contradicts itself"},
           {[](LatheRow& r) { r.length.exact = false; }, "no exact figure"},
           {[](LatheRow& r) { r.dia->exact = false; }, "no exact figure"},
           {[](LatheRow& r) { r.dia.reset(); }, ""},
       }) {
    LatheRow row;
    row.id = "A";
    row.length = shownAs("1.000");
    row.dia = shownAs("0.250");
    one.change(row);
    EXPECT_EQ(latheNote(row, inThous()), one.says);
  }
}

// Limits are told inwards, to a tenth of a thou or 2 µm, however coarse the readout is.
TEST(LatheWords, LimitsAreToldAsFinelyAsTheyAreMeasured) {
  LatheRow row;
  row.length = row.dia.emplace(shownAs("0.250"));
  row.limits = SizeLimits{readLength("9.9781 mm")->value, readLength("9.9969 mm")->value};
  EXPECT_EQ(latheNote(row, *readStep("0.02", Unit::millimetre)), "measure Ø 9.980 to 9.996");
  EXPECT_EQ(latheNote(row, *readStep("0.001", Unit::inch)), "measure Ø 0.3929 to 0.3935");
}

TEST(LatheWords, ACutSaysWhatEndsOrHindersIt) {
  Cut cut;
  cut.op = CutOp::partOff;
  EXPECT_EQ(cutWords(cut), "part off");
  cut.of = {"A", "B"};
  EXPECT_EQ(cutWords(cut), "part off A, B");
  cut.op = CutOp::deburr;
  EXPECT_EQ(cutWords(cut), "break all edges");
  EXPECT_EQ(cutNote(cut, "Z"), "");
  cut.length = shownAs("1.750");
  EXPECT_EQ(cutNote(cut, "Z"), "");
  cut.from = shownAs("0.500");
  EXPECT_EQ(cutNote(cut, "Z"), "only between Z 0.500 and Z 1.750");
  cut.behind = "D";
  EXPECT_EQ(cutNote(cut, "Z"),
            "only between Z 0.500 and Z 1.750: D in front of it would be cut away");
  cut.from.reset();
  EXPECT_EQ(cutNote(cut, "Z"), "D in front of it would be cut away");
  cut.behind = "A";
  EXPECT_EQ(cutNote(cut, "Z"), "nothing is bored in front of it");
  cut.drillTo = DrillTo::point;
  EXPECT_EQ(cutNote(cut, "Z"), "to the drill's point: the bore is blind");
  cut.drillTo = DrillTo::through;
  EXPECT_EQ(cutNote(cut, "Z"), "right through: its point well past that");
}

TEST(LatheWords, EveryFaultOfTheShapeNamesWhatMeetsWhat) {
  using enum TurnedFaultKind;
  for (const auto& [kind, says] : {
           std::pair{backToFront, "A has no length: its two edges lie on one another"},
           {taperUnsaid, "the taper A wants two of large, small, angle and taper per foot"},
           {taperContradicts, "the figures of the taper A disagree by 0.125"},
           {noSuchThread, "the thread of A is not one that is known"},
           {noDiameter, "nothing says how thick A is: it is in none of the cuts"},
           {grooveTooLarge, "the floor of groove A is not below B: larger by 0.125"},
           {boreTooLarge, "the bore A leaves no metal under B: larger by 0.125"},
           {twoSurfaces, "A and B lie over one another: only one can be there"},
           {taperToNothing, "the taper A comes to nothing before its small end"},
           {chamferTooLong, "the chamfer A is longer than B"},
           {drilledWithin, "A is drilled at B, which is no end of the part"},
       }) {
    EXPECT_EQ(turnedFaultWords({kind, "A", "B", readLength("1/8")->value}, inThous()), says);
  }
}

TEST(LatheWords, WarningsTellOfTheJawsTheZeroAndTheReach) {
  LatheWork work;
  work.step = inThous();
  EXPECT_TRUE(latheWarnings(work).empty());
  work.partOffInJaws = readLength("1/16")->value;
  work.zeroInChuck = work.standsOutTooFar = work.zeroAssumed = true;
  work.zeroAt = "L";
  work.unplaced = {"P", "Q"};
  LatheRow row;
  row.id = "A";
  for (const char* behind : {"A", "B", ""}) {
    row.behind = behind;
    work.rows.push_back(row);
  }
  row.behind = "B";
  row.cutHere = false;
  work.rows.push_back(row);
  EXPECT_EQ(latheWarnings(work),
            (std::vector<std::string>{
                "the parting tool would come 0.063 into the jaws: let more stand out",
                "A can't be bored from this end: nothing is bored in front of it",
                "A lies behind B: sink it between its shoulders, or cut it from the other end",
                "zero is on L, the end in the chuck: it can't be touched",
                "more stands out of the chuck than the part is long: is it held at all?",
                "nothing says where zero is: the free end was taken", "no place yet for P and Q"}));
}

TEST(LatheWords, HeadingsNameTheReadoutsOwnLetters) {
  LatheWork work;
  work.carriageLetter = "W";
  work.crossLetter = "U";
  work.held = Side::right;
  EXPECT_EQ(lengthHeading(work) + ", " + diaHeading(work), "Length (W), Dia (U)");
  work.halved = true;
  EXPECT_EQ(diaHeading(work), "Half dia (U)");
  Lathe lathe;
  EXPECT_EQ(heldWords(work, lathe), "held by the right end; W counts up towards the chuck");
  work.zeroAt = "L";
  lathe.carriageCounts = CarriageCounts::right;
  EXPECT_EQ(heldWords(work, lathe),
            "held by the right end, W0 at L; W counts up away from the chuck");
}

}  // namespace
}  // namespace inchwright
