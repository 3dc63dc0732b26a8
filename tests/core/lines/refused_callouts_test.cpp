// Callouts that lack something, say too much, or say two things.

#include <gtest/gtest.h>

#include <string_view>

#include "core/lines/callout.h"

namespace inchwright {
namespace {

struct RefusedCallout {
  FeatureKind kind;
  Unit unit;
  const char* text;
  std::size_t at;
  const char* says;
};

TEST(Callouts, SayWhatIsMissing) {
  constexpr FeatureKind hole = FeatureKind::hole, ring = FeatureKind::ring,
                        slot = FeatureKind::slot, round = FeatureKind::round,
                        chamfer = FeatureKind::chamfer;
  constexpr Unit inch = Unit::inch, millimetre = Unit::millimetre;

  const RefusedCallout kBad[] = {
      {hole, inch, "DRILL .257 REAM .2495", 0, "both .257 and .2495: which is the hole's size?"},
      {hole, inch, "DRILL 5/16 REAM 1/4", 0, "both 5/16 and 1/4: which is the hole's size?"},
      {hole, inch, "3/8 DRILL, 1/4-20 TAP", 0, "both 3/8 and 1/4-20: which is the hole's size?"},
      {hole, inch, "1/4 DRILL 3/16 DRILL", 0, "both 1/4 and 3/16: which is the hole's size?"},
      {hole, inch, "1/4 DRILL C'BORE 3/8 3/16 DRILL", 0, "both 1/4 and 3/16: which"},
      {hole, inch, "3/16 DRILL, 1/4 DRILL 1/2 DEEP", 0, "both 3/16 and 1/4: which"},
      {hole, inch, "3/16 DRILL 1/2 DEEP, 1/4 DRILL", 0, "both 3/16 and 1/4: which"},
      {hole, inch, "3/16 DRILL THRU, 1/4 DRILL 1/2 DEEP", 0,
       "both 3/16 and 1/4: which is the hole's size? A step is a seat, as in "
       "`3/16 DRILL, C'BORE 1/4 x 1/2 DEEP`"},
      {hole, inch, "8-32 TAP, 10-32 TAP", 10, "both 8-32 and 10-32: which is the hole's thread?"},
      {hole, inch, "1/4-20 UNC, #7 DRILL, 5/16-18 TAP", 22, "both 1/4-20 UNC and 5/16-18: which"},
      {hole, millimetre, "M6 TAP M8 TAP", 7, "both M6 and M8: which is the hole's thread?"},
      {hole, inch, "3/16 DRILL x 82° 1/2", 21, "what is 1/2? Say so, as in `1/2 DRILL`"},
      {hole, inch, ".2500-.2505 REAM", 5, "are these limits? Write them `.2505/.2500`"},
      {hole, inch, "4-1/8 DRILL", 0,
       "is this 4 holes of 1/8, or one of 4 1/8? Write `4 x 1/8` or `4 1/8`"},
      {hole, inch, "1/4 TAP", 4,
       "say how many threads to the inch, or the series: `1/4-20 TAP`, `2 BA TAP`"},
      {hole, inch, "TAP", 3, "the thread is missing, such as `1/4-20 UNC` or `2 BA`"},
      {hole, inch, "REAM", 4, "the size is missing: how large is it reamed?"},
      {hole, inch, "DRILL", 5, "the size is missing: how large is it drilled?"},
      {hole, inch, "C'BORE 3/16 DEEP", 16,
       "how large the seat is is missing: `C'BORE 3/8 x 3/16 DEEP`"},
      {hole, inch, "#95", 1,
       "there is no drill `#95`: numbers go from 1 to 80, letters from A to Z"},
      {hole, inch, "LETTER", 6, "give the letter of the drill behind this"},
      {hole, inch, "No.", 3, "give the number of the drill behind this"},
      {hole, inch, "1/4 FOO", 4, "`FOO` is not understood here: leave out"},
      {hole, inch, "1/4 REEM", 4, "`REEM` is not understood here: is REAM meant? Else leave out"},
      {hole, inch, "1/4 driil 3/8 deep", 4, "`driil` is not understood here: is DRILL meant?"},
      {hole, inch, "10-32 TAPP", 6, "`TAPP` is not understood here: is TAP meant?"},
      {hole, inch, "3/8 COUNTRBORE x 1/4 DEEP", 4,
       "`COUNTRBORE` is not understood here: is COUNTERBORE meant?"},
      {hole, inch, "1/4 DRILL 3/8 DEPP", 14, "`DEPP` is not understood here: is DEEP meant?"},
      {ring, inch, "3 HOELS 1/8 ON 1 PCD", 2, "`HOELS` is not understood here: is HOLE meant?"},
      {hole, inch, "3/8 1/4", 7, "what is 3/8? Say so, as in `3/8 DRILL` or `3/8 DEEP`"},
      {hole, inch, "1/4 1/4 REAM REAM", 17, "the size is missing: how large is it reamed?"},
      {hole, inch, "1/", 1, "the fraction is cut short: say what is below the stroke"},
      {hole, inch, "1/x", 1, "the fraction is cut short"},
      {hole, inch, "3/16 DRILL 1/ DEEP", 12, "the fraction is cut short"},
      {slot, inch, "3/16 x 1/", 8, "the fraction is cut short"},
      {hole, inch, "3/16 x", 5, "the figure behind this is missing, as in `3/16 x 5/8`"},
      {hole, inch, "1/4 REAM C'BORE 3/8 x", 20, "the figure behind this is missing"},
      {hole, inch, "x", 0, "give the size as the print letters it"},
      {hole, inch, ",", 0, "give the size as the print letters it"},
      {hole, inch, "1/4 DRILL 1/2", 13, "what is 1/2? Say so, as in `1/2 DRILL` or `1/2 DEEP`"},
      {hole, inch, "0 HOLES 1/8", 0, "how many there are is from 1 to 1000"},
      {hole, inch, "1/4 DEEP", 8, "the size is missing: how large is it drilled?"},
      {hole, inch, "1/4 DRILL 1/2 DEEP 3/8 DEEP", 19, "the depth is given already"},
      {hole, inch, "1/4 DRILL DEEP", 14, "how deep is missing"},
      {ring, inch, "3 HOLES 3/32 ON PCD", 19, "the diameter of the pitch circle is missing"},
      {ring, inch, "3 HOLES 3/32 ON", 15, "the diameter of the pitch circle is missing"},
      {slot, inch, "3/16 x 5/8 x 1/2", 13, "the length is given already"},
      {slot, inch, "5/8 LONG", 8, "how wide the slot is is missing"},
      {slot, inch, "WIDE 3/16", 0,
       "the figure stands before this word, as in `3/16 WIDE x 5/8 LONG`"},
      {round, inch, "DIA 3/8", 4, "a radius is wanted here, and this is lettered as a diameter"},
      {round, inch, "Ø 3/8", 0, "a radius is wanted here, and this is lettered as a diameter"},
      {round, inch, "R", 1, "the radius is missing"},
      {chamfer, inch, "45°", 4, "the length of the chamfer is missing, as in `1/16 x 45°`"},
      {hole, inch, "°", 0, "an angle has its figure before the degree mark"},
      {hole, inch, "1/4 C'BORE C'BORE 3/8", 11, "a seat is given already"},
      {hole, inch, "1/0 DRILL", 0, "a fraction over 0"},
      {hole, inch, "5000 HOLES", 0, "how many there are is from 1 to 1000"},
      {hole, inch, "12345678901 x 1/8", 0, "how many there are is from 1 to 1000"},
      {hole, inch, "Ø", 0, "there is no figure to read"},
      {hole, inch, "±", 0, "the size before the tolerance is missing"},
      {hole, inch, "5/16 REAM FOR TAPER PIN", 14, "`TAPER` is not understood here"},
      {hole, inch, "1/4 DRILL FAR SIDE", 10, "`FAR` is not understood here"},
      {hole, inch, "1/2 CRS", 7, "these lie in a row: trace a row, or read the distance"},
      {hole, inch, "13/64 DRILL 2 HOLES IN LINE", 23, "`LINE` is not understood here"},
      {hole, inch, "CLEARANCE", 0, "give the size as the print letters it"},
      {hole, inch, "8-32 CLEARANCE", 14, "how free is it to be about 8-32? Say the drill: "},
      {hole, inch, "CLEARANCE FOR 4 BA", 18, "how free is it to be about 4 BA? Say the drill: "},
      {hole, millimetre, "M5 CLEAR", 8, "how free is it to be about M5? Say the drill: "},
      {hole, inch, "C'BORE FOR 8-32 CAP HD", 22, "how free is it to be about 8-32?"},
      {hole, inch, "CSK FOR No 6 W.S.", 8, "the number of a screw is no size: say the diameter"},
      {hole, inch, "1/4 CAP SCREW", 4, "`CAP` is not understood here: leave out what tells"},
      {hole, inch, "1/4 DOWEL", 4, "`DOWEL` is not understood here"},
      {hole, inch, "1/4 END MILL", 4, "`END` is not understood here"},
      {hole, inch, ".250 SLIP FIT", 5, "`SLIP` is not understood here"},
      {hole, inch, "1/8 BSP TAP", 4, "`BSP` is not understood here"},
      {hole, inch, "SLOT 3/16 x 5/8", 0, "this speaks of a slot: trace it as one"},
      {hole, inch, "#29 DRILL 5/8 DEEP, 8-32 TAP", 28,
       "how deep the thread is is missing: its drill is deeper"},
      {hole, inch, "15/64 DRILL 1/2 DEEP, 1/4 REAM THRU", 0,
       "the drill goes 1/2 deep, the finished hole through: which of the two is misread?"},
      {hole, inch, "#7 DRILL 1/2 DEEP, 1/4-20 TAP 3/4 DEEP", 0,
       "the drill goes 1/2 deep, the thread 3/4 deep: which of the two is misread?"},
      {hole, inch, "1/4 REAM 1/2 DEEP THRU", 18, "the depth is given already"},
      {hole, inch, "#30 DRILL, 1/4-20 TAP", 0,
       "the drill for 1/4-20 is #7, and this is 0.1285: is the thread or its drill misread?"},
      {hole, inch, "1/4 DRILL, 1/4-20 TAP", 0, "the drill for 1/4-20 is #7, and this is 1/4"},
      {hole, millimetre, "M6 x 1.25", 5, "is 1.25 the pitch of M6, which is none in use"},
      {hole, inch, "1/8 x 4", 6, "is 4 how many there are, or how deep?"},
      {hole, inch, "1/4 DRILL -1/2 DEEP", 10, "a size has no minus sign: leave it out"},
      {hole, inch, "3\\16 DRILL", 1, "`\\` is not understood here"},
      {slot, inch, "3/16 BY", 5, "the figure behind this is missing, as in `3/16 x 5/8`"},
      {slot, inch, "3/16 DRILL", 5, "this speaks of a hole: trace it as one"},
  };
  for (const RefusedCallout& one : kBad) {
    SCOPED_TRACE(one.text);
    const Result<Callout> read = readCallout(one.text, one.kind, one.unit);
    ASSERT_FALSE(read.ok());
    // Behind it may stand what to do.
    EXPECT_EQ(read.error().text.substr(0, std::string_view(one.says).size()), one.says);
    EXPECT_EQ(read.error().at, one.at);
  }
}

}  // namespace
}  // namespace inchwright
