// Callouts in the manners of lettering of two continents over a century. Common practice, no
// source: no one standard holds them all.

#include "core/lines/callout.h"

#include <gtest/gtest.h>

#include <random>

namespace inchwright {
namespace {

/// What a callout says, piece by piece: `alike 4, drill 1/8, deep 1/2`.
std::string toldBy(const Callout& callout) {
  std::string out;
  const auto add = [&](const std::string& word, const std::string& text) {
    out += (out.empty() ? "" : ", ") + word + (text.empty() ? "" : " " + text);
  };
  const auto size = [&](const std::string& word, const std::optional<Lettered>& figure) {
    if (figure) add(word, figure->text);
  };
  if (callout.alike)
    add(callout.spaces ? "spaces" : "alike",
        std::to_string(callout.alike - (callout.spaces ? 1 : 0)));
  const Drilled& hole = callout.drilled;
  if (hole.diameter || !hole.thread.empty() || hole.make != Make::drill)
    add(std::string(nameOf(hole.make)), hole.diameter ? hole.diameter->text : hole.thread);
  if (!hole.limits.empty()) add("limits", hole.limits);
  if (hole.depth.length) add("deep", hole.depth.length->text);
  size("seat", hole.seatDiameter);
  size("seat deep", hole.seatDepth);
  if (hole.seatAngle) add("seat angle", hole.seatAngle->text);
  size("pcd", callout.pitchDiameter);
  size("pitch", callout.pitch);
  size("wide", callout.width);
  size("long", callout.length);
  size("radius", callout.radius);
  size("chamfer", callout.chamfer);
  if (callout.angle) add("angle", callout.angle->text);
  if (hole.locate != Locate::coordinate) add("located", std::string(nameOf(hole.locate)));
  if (!callout.more.empty()) add("more", "");
  return out;
}

struct CalloutRow {
  FeatureKind kind;
  Unit unit;
  const char* text;
  const char* told;
};

constexpr FeatureKind kHole = FeatureKind::hole, kRing = FeatureKind::ring, kRow = FeatureKind::row,
                      kSlot = FeatureKind::slot, kRound = FeatureKind::round,
                      kChamfer = FeatureKind::chamfer;
constexpr Unit kInch = Unit::inch, kMm = Unit::millimetre;

const CalloutRow kGood[] = {
    {kHole, kInch, "1/4 DRILL", "drill 1/4"},
    {kHole, kInch, "1/4 ream 3/8 deep", "ream 1/4, deep 3/8"},
    {kHole, kInch, "1/4 REAM", "ream 1/4"},
    {kHole, kInch, "REAM 1/4", "ream 1/4"},
    {kHole, kInch, "REAM 1/4 DIA", "ream 1/4"},
    {kHole, kInch, "1/4 DIA REAM", "ream 1/4"},
    {kHole, kInch, "DRILL 17/64", "drill 17/64"},
    {kHole, kInch, "DRILL 17/64 THRU", "drill 17/64"},
    {kHole, kInch, "17/64 DRILL THRO'", "drill 17/64"},
    {kHole, kInch, "17/64 DRILL THROUGH", "drill 17/64"},
    {kHole, kInch, "DRILL & REAM 1/4", "ream 1/4"},
    {kHole, kInch, "DRILL AND REAM 3/8 DIA", "ream 3/8"},
    {kHole, kInch, "15/64 DRILL, 1/4 REAM", "ream 1/4, more"},
    {kHole, kInch, "15/64 DRILL & REAM 1/4", "ream 1/4, more"},
    {kHole, kInch, "#7 drill", "drill 0.201"},
    {kHole, kInch, "#7", "drill 0.201"},
    {kHole, kInch, "No. 30", "drill 0.1285"},
    {kHole, kInch, "NO. 30 DRILL", "drill 0.1285"},
    {kHole, kInch, "No 30 (.1285) DRILL", "drill .1285"},
    {kHole, kInch, "letter F", "drill 0.257"},
    {kHole, kInch, "LETTER F DRILL", "drill 0.257"},
    {kHole, kInch, "LTR. Q", "drill 0.332"},
    {kHole, kInch, "F DRILL", "drill 0.257"},
    {kHole, kInch, "DRILL #29 5/8 DEEP", "drill 0.136, deep 5/8"},
    {kHole, kInch, "#29 DRILL 5/8 DEEP, 8-32 UNC 1/2 DEEP", "tap 8-32 UNC, deep 1/2, more"},
    {kHole, kInch, "#29 DRILL - 8-32 TAP", "tap 8-32, more"},
    {kHole, kInch, "C'BORE 3/8 x 3/16 DEEP", "counterbore, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "1/4 DRILL, C'BORE 3/8 x 3/16 DEEP",
     "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "1/4 DRILL C'BORE 3/8 DIA x 3/16 DEEP",
     "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "1/4 DRILL, 3/8 C'BORE 3/16 DEEP", "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "1/4 DRILL, 3/8 CBORE x 3/16 DP.", "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "13/32 DRILL 5/8 C/BORE 3/8 DEEP", "counterbore 13/32, seat 5/8, seat deep 3/8"},
    {kHole, kInch, "Ø.250 THRU ⌴ Ø.375 ↧ .188", "counterbore Ø.250, seat Ø.375, seat deep .188"},
    {kHole, kInch, "⌀.250 ↧ .500", "drill ⌀.250, deep .500"},
    {kHole, kInch, "1/4 DRILL COUNTERBORE 3/8 3/16 DEEP",
     "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "1/4 DRILL, SPOTFACE 1/2 DIA", "spotface 1/4, seat 1/2"},
    {kHole, kInch, "1/4 DRILL, 1/2 SPOTFACE", "spotface 1/4, seat 1/2"},
    {kHole, kInch, "1/4 DRILL S.F. 1/2 x 1/16 DEEP", "spotface 1/4, seat 1/2, seat deep 1/16"},
    {kHole, kInch, "3/16 DRILL, C'SINK 82° x 3/8", "countersink 3/16, seat 3/8, seat angle 82°"},
    {kHole, kInch, "C'SINK 82° x 3/8", "countersink, seat 3/8, seat angle 82°"},
    {kHole, kInch, "82° CSK x 3/8 DIA", "countersink, seat 3/8, seat angle 82°"},
    {kHole, kInch, "3/16 DRILL CSK 90° TO 3/8 DIA", "countersink 3/16, seat 3/8, seat angle 90°"},
    {kHole, kInch, "3/16 DRILL CSK 3/8 DIA", "countersink 3/16, seat 3/8"},
    {kHole, kInch, "3/16 DRILL & COUNTERSINK 82 DEG TO .375 DIA",
     "countersink 3/16, seat .375, seat angle 82 DEG"},
    {kHole, kInch, "#10 DRILL C'SINK .385 x 82°", "countersink 0.1935, seat .385, seat angle 82°"},
    {kHole, kInch, "8-32 UNC - 2B x 1/2 DEEP", "tap 8-32 UNC - 2B, deep 1/2"},
    {kHole, kInch, "8-32 UNC-2B x 1/2 DEEP", "tap 8-32 UNC-2B, deep 1/2"},
    {kHole, kInch, "8-32 UNC x 1/2", "tap 8-32 UNC, deep 1/2"},
    {kHole, kInch, "8-32 TAP", "tap 8-32"},
    {kHole, kInch, "#8-32 TAP", "tap #8-32"},
    {kHole, kInch, "No. 8-32 UNC", "tap No. 8-32 UNC"},
    {kHole, kInch, "TAP 8-32", "tap 8-32"},
    {kHole, kInch, "TAP 1/4-20 UNC 1/2 DEEP", "tap 1/4-20 UNC, deep 1/2"},
    {kHole, kInch, "TAP 1/4-20 x 1/2 DEEP", "tap 1/4-20, deep 1/2"},
    {kHole, kInch, "1/4-20", "tap 1/4-20"},
    {kHole, kInch, "1/4-20 UNC-2B", "tap 1/4-20 UNC-2B"},
    {kHole, kInch, "1/4-20 TAP THRU", "tap 1/4-20"},
    {kHole, kInch, "1/4 - 20 UNC - 2B THRU", "tap 1/4 - 20 UNC - 2B"},
    {kHole, kInch, "1/4\"-20 UNC", "tap 1/4\"-20 UNC"},
    {kHole, kInch, "2 BA tap", "tap 2 BA"},
    {kHole, kInch, "2 BA TAP x 3/8 DEEP", "tap 2 BA, deep 3/8"},
    {kHole, kInch, "TAP 2 BA", "tap 2 BA"},
    {kHole, kInch, "TAP 2 B.A.", "tap 2 B.A."},
    {kHole, kInch, "2BA", "tap 2BA"},
    {kHole, kInch, "TAPPED 4 BA 3/8 DEEP", "tap 4 BA, deep 3/8"},
    {kHole, kInch, "1/4 BSW", "tap 1/4 BSW"},
    {kHole, kInch, "1/4 WHIT", "tap 1/4 WHIT"},
    {kHole, kInch, "1/4 BSF TAP", "tap 1/4 BSF"},
    {kHole, kInch, "TAP 1/4 x 40 ME", "tap 1/4 x 40 ME"},
    {kHole, kInch, "1/4 x 40 TPI", "tap 1/4 x 40 TPI"},
    {kHole, kInch, "3/16-40 ME TAP 1/4 DEEP", "tap 3/16-40 ME, deep 1/4"},
    {kHole, kInch, "1/4 x 26 BRASS", "tap 1/4 x 26 BRASS"},
    {kHole, kMm, "M6", "tap M6"},
    {kHole, kMm, "M6 x 1", "tap M6 x 1"},
    {kHole, kMm, "M6 x 1 - 6H", "tap M6 x 1 - 6H"},
    {kHole, kMm, "M6 x 1 - 6H x 12 DEEP", "tap M6 x 1 - 6H, deep 12"},
    {kHole, kMm, "M4 TAP", "tap M4"},
    {kHole, kMm, "TAP M5 x 0.8 x 10 DEEP", "tap M5 x 0.8, deep 10"},
    {kHole, kInch, "M6 TAP 1/2 DEEP", "tap M6, deep 1/2"},
    {kHole, kMm, "Ø6 H7", "drill Ø6, limits H7"},
    {kHole, kMm, "Ø6H7", "drill Ø6, limits H7"},
    {kHole, kMm, "6 H7", "drill 6, limits H7"},
    {kHole, kInch, "1/4 H7", "drill 1/4, limits H7"},
    {kHole, kMm, "Ø6 H7 x 12 DEEP", "drill Ø6, limits H7, deep 12"},
    {kHole, kMm, "Ø10 DRILL", "drill Ø10"},
    {kHole, kMm, "10 DRILL 15 DEEP", "drill 10, deep 15"},
    {kHole, kMm, "5,5 DRILL", "drill 5,5"},
    {kHole, kInch, "6 mm DRILL", "drill 6 mm"},
    {kHole, kInch, "6 MM REAM", "ream 6 MM"},
    {kHole, kInch, ".250 +.001 -.000 REAM", "ream .250 +.001 -.000"},
    {kHole, kInch, ".250 +.0005/-.0000", "drill .250 +.0005/-.0000"},
    {kHole, kInch, "Ø.250 ±.001 THRU", "drill Ø.250 ±.001"},
    {kHole, kInch, ".2490/.2493 REAM", "ream .2490/.2493"},
    {kHole, kInch, "4 x 1/8", "alike 4, drill 1/8"},
    {kHole, kInch, "4X Ø1/8", "alike 4, drill Ø1/8"},
    {kHole, kInch, "4X Ø.125 THRU", "alike 4, drill Ø.125"},
    {kHole, kInch, "4x1/8", "alike 4, drill 1/8"},
    {kHole, kInch, "4 HOLES 1/8 DRILL", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL 4 HOLES", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL (4) HOLES", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL - 4 HOLES", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL, 4 PLACES", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL IN 4 PLACES", "alike 4, drill 1/8"},
    {kHole, kInch, "1/8 DRILL 4 PLCS", "alike 4, drill 1/8"},
    {kHole, kInch, "4 OFF 1/8 DRILL", "alike 4, drill 1/8"},
    {kHole, kInch, "3/16 REAM 3 places", "alike 3, ream 3/16"},
    {kHole, kInch, "17/64 DRILL 4 HOLES", "alike 4, drill 17/64"},
    {kHole, kInch, "2 HOLES #7 DRILL", "alike 2, drill 0.201"},
    {kHole, kInch, "2 HOLES 1/4-20 TAP 1/2 DEEP", "alike 2, tap 1/4-20, deep 1/2"},
    {kHole, kInch, "1/4-20 TAP 2 HOLES", "alike 2, tap 1/4-20"},
    {kHole, kInch, "1 1/16 BORE", "bore 1 1/16"},
    {kHole, kInch, "1-1/16 BORE", "bore 1-1/16"},
    {kHole, kInch, "BORE 1.0000 +.0005 -.0000", "bore 1.0000 +.0005 -.0000"},
    {kHole, kInch, "1 x 1/2 DEEP", "drill 1, deep 1/2"},
    {kHole, kInch, "3/8 x 1/2 DEEP", "drill 3/8, deep 1/2"},
    {kHole, kInch, "3/8 DRILL x 1/2 DEEP", "drill 3/8, deep 1/2"},
    {kHole, kInch, "3/8 DRILL 1/2 DEPTH", "drill 3/8, deep 1/2"},
    {kHole, kInch, "3/8 DRILL TO 1/2 DEPTH", "drill 3/8, deep 1/2"},
    {kHole, kInch, "3/8 DRILL DEPTH 1/2", "drill 3/8, deep 1/2"},
    {kHole, kInch, "DEEP 1/2 3/8", "drill 3/8, deep 1/2"},
    {kHole, kInch, "1/4\" DRILL", "drill 1/4\""},
    {kHole, kInch, "1/4 in. DRILL", "drill 1/4 in."},
    {kRing, kInch, "3 holes 3/32 on 1 1/16 PCD", "alike 3, drill 3/32, pcd 1 1/16"},
    {kRing, kInch, "3 HOLES 3/32 DRILL ON 1 1/16 P.C.D.", "alike 3, drill 3/32, pcd 1 1/16"},
    {kRing, kInch, "3/32 DRILL 3 HOLES EQ. SP. ON 1 1/16 DIA. B.C.",
     "alike 3, drill 3/32, pcd 1 1/16"},
    {kRing, kInch, "3/32 DRILL - 3 HOLES EQUALLY SPACED ON 1 1/16 BOLT CIRCLE",
     "alike 3, drill 3/32, pcd 1 1/16"},
    {kRing, kInch, "6 HOLES #7 DRILL ON 2 1/2 DIA PITCH CIRCLE", "alike 6, drill 0.201, pcd 2 1/2"},
    {kRing, kInch, "6 x 1/8 on 2.5 PCD", "alike 6, drill 1/8, pcd 2.5"},
    {kRing, kInch, "6X Ø.125 EQ SP ON Ø2.500 BC", "alike 6, drill Ø.125, pcd Ø2.500"},
    {kRing, kInch, "4 HOLES 2 BA TAP ON 1 1/4 PCD", "alike 4, tap 2 BA, pcd 1 1/4"},
    {kRing, kInch, "4 HOLES 1/8 DRILL EQUI-SPACED 1 1/4 PCD", "alike 4, drill 1/8, pcd 1 1/4"},
    {kRing, kMm, "6 x Ø5 ON Ø40 PCD", "alike 6, drill Ø5, pcd Ø40"},
    {kRing, kMm, "6 x M4 ON Ø40 PCD", "alike 6, tap M4, pcd Ø40"},
    {kRow, kInch, "5 holes 1/8 at 9/16 pitch", "alike 5, drill 1/8, pitch 9/16"},
    {kRow, kInch, "5 HOLES 1/8 DRILL 9/16 APART", "alike 5, drill 1/8, pitch 9/16"},
    {kRow, kInch, "5 HOLES 1/8 DRILL 1/2 CRS", "alike 5, drill 1/8, pitch 1/2"},
    {kRow, kInch, "4 SPACES AT 1/2, 1/8 DRILL", "spaces 4, drill 1/8, pitch 1/2"},
    {kRow, kInch, "5 HOLES 3/32 PITCH 1/2", "alike 5, drill 3/32, pitch 1/2"},
    {kRow, kInch, "5 x 1/8 EQUALLY SPACED 1/2 CENTRES", "alike 5, drill 1/8, pitch 1/2"},
    {kSlot, kInch, "3/16 x 5/8", "wide 3/16, long 5/8"},
    {kSlot, kInch, "5/8 x 3/16", "wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 x 5/8 SLOT", "wide 3/16, long 5/8"},
    {kSlot, kInch, "SLOT 3/16 x 5/8", "wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 WIDE x 5/8 LONG", "wide 3/16, long 5/8"},
    {kSlot, kInch, "5/8 LONG x 3/16 WIDE", "wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 SLOT 5/8 LG", "wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 WIDE 5/8 BETWEEN CENTRES", "wide 3/16, long 5/8 + 3/16"},
    {kSlot, kInch, "3/16 WIDE, 5/8 CRS", "wide 3/16, long 5/8 + 3/16"},
    {kSlot, kInch, "3/16 SLOT x 5/8 x 1/8 DEEP", "deep 1/8, wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 x 5/8 x 1/8 DEEP", "deep 1/8, wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16 WIDE x 1/8 DEEP KEYWAY", "deep 1/8, wide 3/16"},
    {kSlot, kInch, "2 x 3/16 x 5/8", "alike 2, wide 3/16, long 5/8"},
    {kSlot, kInch, "2 SLOTS 3/16 x 5/8", "alike 2, wide 3/16, long 5/8"},
    {kSlot, kInch, "3/16", "wide 3/16"},
    {kSlot, kInch, "1/4 x 1 1/4", "wide 1/4, long 1 1/4"},
    {kSlot, kInch, ".188 x .625", "wide .188, long .625"},
    {kSlot, kMm, "6 x 20", "wide 6, long 20"},
    {kSlot, kInch, "3/16 x 5/8 THRU", "wide 3/16, long 5/8"},
    {kRound, kInch, "R 3/8", "radius 3/8"},
    {kRound, kInch, "3/8 R", "radius 3/8"},
    {kRound, kInch, "R3/8", "radius 3/8"},
    {kRound, kInch, "R.375", "radius .375"},
    {kRound, kInch, "3/8 RAD", "radius 3/8"},
    {kRound, kInch, "3/8 RAD.", "radius 3/8"},
    {kRound, kInch, "RAD 3/8", "radius 3/8"},
    {kRound, kInch, "3/8 RADIUS", "radius 3/8"},
    {kRound, kInch, "3/8", "radius 3/8"},
    {kRound, kInch, "R 3/8 TYP.", "radius 3/8"},
    {kRound, kInch, "1/8 FILLET", "radius 1/8"},
    {kRound, kInch, "R 3/8 2 PLACES", "alike 2, radius 3/8"},
    {kRound, kInch, "4 CORNERS R 1/8", "alike 4, radius 1/8"},
    {kRound, kInch, "1/8 R 4 CORNERS", "alike 4, radius 1/8"},
    {kRound, kMm, "R10", "radius 10"},
    {kChamfer, kInch, "1/16 x 45°", "chamfer 1/16, angle 45°"},
    {kChamfer, kInch, "45° x 1/16", "chamfer 1/16, angle 45°"},
    {kChamfer, kInch, "1/16 CHAMFER", "chamfer 1/16"},
    {kChamfer, kInch, "1/16 CHAM. x 45°", "chamfer 1/16, angle 45°"},
    {kChamfer, kInch, "CHAMFER 1/16 x 45°", "chamfer 1/16, angle 45°"},
    {kChamfer, kMm, "0,5 x 45°", "chamfer 0,5, angle 45°"},
    {kChamfer, kInch, ".031 x 45 DEG", "chamfer .031, angle 45 DEG"},
    {kChamfer, kInch, "1/32 x 45° CHAMFER", "chamfer 1/32, angle 45°"},
    {kHole, kInch, "4 x 4 x 1/8", "alike 4, drill 4, deep 1/8"},
    {kSlot, kInch, "x 5/8", "wide 5/8"},
    {kHole, kInch, "3/4-10 UNC", "tap 3/4-10 UNC"},
    {kHole, kInch, "1-8 UNC", "tap 1-8 UNC"},
    {kHole, kInch, "10-32 x 3/8 DEEP 4 HOLES", "alike 4, tap 10-32, deep 3/8"},
    {kHole, kInch, "10-24 UNC-2B THRU, 3/8 C'SINK 90°",
     "tap 10-24 UNC-2B, seat 3/8, seat angle 90°, more"},
    {kHole, kInch, "DRILL .242 REAM .2495", "ream .2495, more"},
    {kHole, kInch, "DR. 1/4", "drill 1/4"},
    {kHole, kInch, "RM. 1/4", "ream 1/4"},
    {kHole, kInch, "1/4 RM", "ream 1/4"},
    {kHole, kInch, "DRL .250 THRU", "drill .250"},
    {kHole, kInch, ".250 DIA THRU", "drill .250"},
    {kHole, kInch, ".250 DIA. DRILL THRU", "drill .250"},
    {kHole, kInch, "1/2 BORED", "bore 1/2"},
    {kHole, kInch, "BORE 1/2 THRO'", "bore 1/2"},
    {kHole, kInch, "3/8 DRILLED 3/4 DEEP", "drill 3/8, deep 3/4"},
    {kHole, kInch, "3/8 REAMED", "ream 3/8"},
    {kHole, kInch, "1/4 DRILL 2 PLS", "alike 2, drill 1/4"},
    {kHole, kInch, "2 REQD 1/4 DRILL", "alike 2, drill 1/4"},
    {kHole, kInch, "TAP 6-32", "tap 6-32"},
    {kHole, kInch, "6-32 NC", "tap 6-32 NC"},
    {kHole, kInch, "10-32 NF", "tap 10-32 NF"},
    {kHole, kInch, "5/16 - 18 NC - 2", "tap 5/16 - 18 NC"},
    {kHole, kInch, "0 BA", "tap 0 BA"},
    {kHole, kInch, "6 B.A. TAPPED", "tap 6 B.A."},
    {kHole, kInch, "5/16 BSF x 1/2 DEEP", "tap 5/16 BSF, deep 1/2"},
    {kHole, kInch, "3/16 WHITWORTH TAP", "tap 3/16 WHITWORTH"},
    {kHole, kInch, "7/32 ME", "tap 7/32 ME"},
    {kHole, kInch, "1/4 x 32 ME", "tap 1/4 x 32 ME"},
    {kHole, kInch, "#4-40 UNC", "tap #4-40 UNC"},
    {kHole, kInch, "No. 4-40 TAP", "tap No. 4-40"},
    {kHole, kInch, "12-24 UNC", "tap 12-24 UNC"},
    {kHole, kMm, "3,3 DRILL 12 DEEP M4 TAP 8 DEEP", "tap M4, deep 8, more"},
    {kHole, kMm, "M3 x 0.5 - 6H", "tap M3 x 0.5 - 6H"},
    {kHole, kMm, "M8 x 1.25", "tap M8 x 1.25"},
    {kHole, kMm, "⌀4 ↧ 10", "drill ⌀4, deep 10"},
    {kHole, kMm, "Ø8 H7 REAM", "ream Ø8, limits H7"},
    {kHole, kMm, "Ø4.2 THRU ⌴ Ø8 ↧ 4.4", "counterbore Ø4.2, seat Ø8, seat deep 4.4"},
    {kHole, kMm, "Ø3,4 THRU ⌵ Ø6,5 x 90°", "countersink Ø3,4, seat Ø6,5, seat angle 90°"},
    {kHole, kInch, "CBORE .375 x .188 DEEP", "counterbore, seat .375, seat deep .188"},
    {kHole, kInch, "C-BORE 3/8", "counterbore, seat 3/8"},
    {kHole, kInch, "1/4 DRILL CSK 82° x 1/2 4 PLACES",
     "alike 4, countersink 1/4, seat 1/2, seat angle 82°"},
    {kHole, kInch, "1/4 DRILL SPOTFACE 1/2 2 HOLES", "alike 2, spotface 1/4, seat 1/2"},
    {kRing, kInch, "8 HOLES 1/8 DRILL EQ SP ON 3 DIA B.H.C.", "alike 8, drill 1/8, pcd 3"},
    {kRing, kInch, "4X #8-32 UNC-2B EQ SP ON Ø1.750 BC", "alike 4, tap #8-32 UNC-2B, pcd Ø1.750"},
    {kRing, kInch, "4 HOLES 8-32 TAP 3/8 DEEP ON 1 3/4 PCD",
     "alike 4, tap 8-32, deep 3/8, pcd 1 3/4"},
    {kRow, kInch, "6 HOLES 3/32 DRILL AT 3/8 CTRS", "alike 6, drill 3/32, pitch 3/8"},
    {kRow, kInch, "3 HOLES 1/8 PITCH 7/16", "alike 3, drill 1/8, pitch 7/16"},
    {kSlot, kInch, "1/8 WIDE x 1/2 LONG x 1/16 DEEP", "deep 1/16, wide 1/8, long 1/2"},
    {kSlot, kInch, "KEYWAY 1/8 x 1/16 DEEP", "deep 1/16, wide 1/8"},
    {kSlot, kInch, "1/4 SLOT 1 1/2 C-C", "wide 1/4, long 1 1/2 + 1/4"},
    {kSlot, kMm, "6 WIDE x 20 LONG", "wide 6, long 20"},
    {kRound, kMm, "10 R", "radius 10"},
    {kRound, kInch, "1/16 RADII", "radius 1/16"},
    {kRound, kInch, "FILLET R 1/8", "radius 1/8"},
    {kChamfer, kMm, "1 x 45°", "chamfer 1, angle 45°"},
    {kChamfer, kInch, "1/16 BEVEL", "chamfer 1/16"},
    {kChamfer, kInch, "3/64 x 30 DEG", "chamfer 3/64, angle 30 DEG"},
    {kHole, kInch, "5/16-18 NC-2 1/2 DEEP", "tap 5/16-18 NC, deep 1/2"},
    // As further shops on both sides of the water letter them.
    {kHole, kInch, "DRILL 17/64 - 4 HOLES", "alike 4, drill 17/64"},
    {kHole, kInch, "17/64\" DRILL THRO' 4 POSNS.", "alike 4, drill 17/64\""},
    {kHole, kInch, "(4) HOLES .2656 DIA.", "alike 4, drill .2656"},
    {kHole, kInch, "4 HOLES DRILL \"H\"", "alike 4, drill 0.266"},
    {kHole, kInch, "DRILL H", "drill 0.266"},
    {kHole, kInch, "Ltr. F DR.", "drill 0.257"},
    {kHole, kInch, "No 43 DRILL (.089) 3/8 DP", "drill .089, deep 3/8"},
    {kHole, kInch, "#29 (.136) DRILL, 8-32 TAP, 1/2 DP", "tap 8-32, deep 1/2, more"},
    {kHole, kInch, "DRILL & TAP 4 B.A. x 3/8 DEEP", "tap 4 B.A., deep 3/8, more"},
    {kHole, kMm, "TAP M4 x .7 - 6H", "tap M4 x .7 - 6H"},
    {kHole, kMm, "M6-6H THRO", "tap M6-6H"},
    {kHole, kInch, "5/16 - 18 UNC - 2B THRU", "tap 5/16 - 18 UNC - 2B"},
    {kHole, kInch, "1/4 WHIT TAP", "tap 1/4 WHIT"},
    {kHole, kInch, "1/4\" B.S.F. x 5/8 DEEP", "tap 1/4\" B.S.F., deep 5/8"},
    {kHole, kInch, "1/4-40 M.E. TAP", "tap 1/4-40 M.E."},
    {kHole, kInch, "Ø.250 +.0005 -.0000 REAM", "ream Ø.250 +.0005 -.0000"},
    {kHole, kMm, "Ø6 H7 REAM", "ream Ø6, limits H7"},
    {kHole, kInch, "Ø 1/4\" REAM IN POSN", "ream Ø 1/4\", located assembly, more"},
    {kHole, kInch, "1/4 REAM ON ASSEMBLY", "ream 1/4, located assembly, more"},
    {kHole, kInch, "REAM FOR 1/4 DOWEL", "ream 1/4, more"},
    {kHole, kInch, "11/64 CLEARANCE FOR 8-32", "drill 11/64, more"},
    {kHole, kInch, "1/8 DRILL FOR 2 BA", "drill 1/8, more"},
    {kHole, kInch, "BORE Ø 1.0000/1.0005", "bore Ø 1.0000/1.0005"},
    {kHole, kInch, "1.000/1.001 DIA BORE", "bore 1.000/1.001"},
    {kHole, kInch, "1/4 DRILL, CSK 90° TO 1/2 DIA", "countersink 1/4, seat 1/2, seat angle 90°"},
    {kHole, kInch, "⌀.201 THRU ⌴ ⌀.375 ↧ .19", "counterbore ⌀.201, seat ⌀.375, seat deep .19"},
    {kHole, kInch, "2X Ø.136 THRU", "alike 2, drill Ø.136"},
    {kRing, kInch, "6-HOLES 1/8 DRILL EQUI-SPACED ON 1.1/2\" P.C.D.",
     "alike 6, drill 1/8, pcd 1.1/2\""},
    {kRing, kInch, "8 HOLES No 30 DRILL EQ. SP. ON 2\" DIA.", "alike 8, drill 0.1285, pcd 2\""},
    {kRing, kInch, "3/32 DRILL 6 HOLES ON 1\" DIA B.C.", "alike 6, drill 3/32, pcd 1\""},
    {kRow, kInch, "5 HOLES 1/8 DRILL @ 3/8 PITCH", "alike 5, drill 1/8, pitch 3/8"},
    {kRow, kInch, "4 EQUAL SPACES @ 5/8, 3/32 DRILL", "spaces 4, drill 3/32, pitch 5/8"},
    {kSlot, kInch, "1/8 WIDE SLOT 1\" LONG", "wide 1/8, long 1\""},
    {kSlot, kInch, "SLOT 3/16\" WIDE X 3/4\" LONG O/A", "wide 3/16\", long 3/4\""},
    {kSlot, kInch, "1/4 END MILL x 1 1/4 CTRS", "wide 1/4, long 1 1/4 + 1/4"},
    {kSlot, kInch, ".188 x .625 SLOT", "wide .188, long .625"},
    {kSlot, kInch, "SLOT 1/4 WIDE BOTH ENDS ROUND", "wide 1/4"},
    {kRound, kInch, "1/4\" RAD. TYP.", "radius 1/4\""},
    {kRound, kInch, "R.25 (4) PLCS", "alike 4, radius .25"},
    {kRound, kInch, "FILLET 1/8 R", "radius 1/8"},
    {kHole, kInch, "17/64 CLEARANCE", "drill 17/64"},
    {kHole, kMm, "4 x 40 DRILL", "alike 4, drill 40"},
    {kHole, kMm, "4 x 40 TAP", "tap 4 x 40"},
    // The seat may stand before its hole.
    {kHole, kInch, "C'BORE 3/8 x 3/16 DEEP, DRILL 1/4",
     "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "C'BORE 3/8 x 3/16 DEEP, 1/4 DRILL",
     "counterbore 1/4, seat 3/8, seat deep 3/16"},
    {kHole, kInch, "CSK 90° TO 3/8, 3/16 DIA REAM", "ream 3/16, seat 3/8, seat angle 90°, more"},
    // And what it ends with before what comes first.
    {kHole, kInch, "1/4-20 TAP, #7 DRILL", "tap 1/4-20, more"},
    {kHole, kInch, "1/4-20 TAP 1/2 DEEP, #7 DRILL 3/4 DEEP", "tap 1/4-20, deep 1/2, more"},
    {kHole, kInch, "TAP 1/4-20, DRILL #7", "tap 1/4-20, more"},
    {kHole, kInch, "TAP 1/4-20 x 1/2 DEEP, DRILL #7 x 3/4 DEEP", "tap 1/4-20, deep 1/2, more"},
    {kHole, kInch, "1/4-20 DRILL & TAP", "tap 1/4-20, more"},
    {kHole, kInch, "1/4-20 TAP, DRILL & TAP", "tap 1/4-20, more"},
    {kHole, kInch, "REAM 1/4, DRILL 15/64", "ream 1/4, more"},
    {kHole, kInch, "1/4 REAM (15/64 DRILL)", "ream 1/4, more"},
    // A figure with all that can be lettered with it, and two with no blank between them.
    {kHole, kInch, "1/4 DRILL Ø 1 1/4 in +.005 in/-.002 in DEEP",
     "drill 1/4, deep Ø 1 1/4 in +.005 in/-.002 in"},
    {kHole, kInch, "DRILL .250,.500 DEEP", "drill .250, deep .500"},
    {kHole, kInch, "1½ BORE", "bore 1½"},
    {kHole, kInch, "1 ³⁄₁₆ REAM", "ream 1 ³⁄₁₆"},
    {kHole, kInch, ",25 DRILL 1½ DEEP", "drill ,25, deep 1½"},
    {kHole, kInch, "1/8 DRILL – 4 HOLES", "alike 4, drill 1/8"},
    // One thread said twice.
    {kHole, kInch, "8-32 TAP FOR 8-32 SCREW", "tap 8-32, more"},
    {kHole, kInch, "#29 DRILL, 8-32 TAP, 8-32 x 1/2 DEEP", "tap 8-32, deep 1/2, more"},
};

TEST(Callouts, AreReadAsLettered) {
  for (const CalloutRow& one : kGood) {
    SCOPED_TRACE(one.text);
    const Result<Callout> read = readCallout(one.text, one.kind, one.unit);
    ASSERT_TRUE(read.ok()) << read.error().text;
    EXPECT_EQ(toldBy(*read), one.told);
  }
  EXPECT_GE(std::size(kGood), 150u);
}

// Capitals and blanks between pieces do not matter.
TEST(Callouts, MayBeLetteredLarge) {
  for (const CalloutRow& one : kGood) {
    std::string text(one.text), loose;
    for (char& c : text) {
      if (c >= 'a' && c <= 'z' && one.unit == kInch) c = static_cast<char>(c - 'a' + 'A');
    }
    loose = "  " + text + " ";
    const Result<Callout> read = readCallout(loose, one.kind, one.unit);
    ASSERT_TRUE(read.ok()) << one.text << ": " << read.error().text;
    EXPECT_EQ(read->alike, readCallout(one.text, one.kind, one.unit)->alike) << one.text;
  }
}

// Whatever is typed is read or refused with a place inside it.
TEST(Callouts, NothingTypedDoesHarm) {
  const std::uint64_t seed = 20261129;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  const auto pick = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  for (int i = 0; i < 4000; ++i) {
    std::string text = kGood[pick(std::size(kGood))].text;
    for (std::size_t change = pick(4); change > 0; --change) {
      const std::size_t at = pick(text.size() + 1);
      if (pick(2) == 0) {
        text.insert(at, 1, static_cast<char>(random()));
      } else if (at < text.size()) {
        text.erase(at, 1 + pick(3));
      }
    }
    text += pick(50) == 0 ? std::string(300, '1') : "";
    const auto kind = static_cast<FeatureKind>(pick(17));
    const Result<Callout> read = readCallout(text, kind, pick(2) == 0 ? kInch : kMm);
    if (!read.ok()) {
      EXPECT_LE(read.error().at.value_or(0), text.size());
      EXPECT_FALSE(read.error().text.empty());
    }
  }
}

}  // namespace
}  // namespace inchwright
