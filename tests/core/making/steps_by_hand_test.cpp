// Figures of single steps, by hand: seats, cutters, taps, rules of the shop, pins.

#include <gtest/gtest.h>

#include "core/making/hole_plan.h"
#include "core/shop/drill_work.h"
#include "core/shop/gauge_pins.h"
#include "tests/core/making/shops.h"

namespace inchwright::test {
namespace {

HoleWork seated(Make make, const char* seat, const char* deep) {
  HoleWork work = hole("1/4", make);
  work.drilled.seatDiameter = figure(seat);
  if (*deep) work.drilled.seatDepth = figure(deep);
  return work;
}

const HoleStep& only(const HolePlan& plan, Op op) {
  const auto steps = stepsOf(plan, op);
  EXPECT_EQ(steps.size(), 1u);
  static const HoleStep none;
  return steps.empty() ? none : *steps.front();
}

OwnedCutter cutter(const char* text) {
  OwnedCutter one;
  one.size = figure(text);
  one.length = figure("3/4");
  one.stands = figure("1 1/2");
  return one;
}

TEST(Seats, AreAsDeepAsLetteredFromTheFaceAsItIsNow) {
  for (const Make make : {Make::counterbore, Make::spotface}) {
    HoleWork work = seated(make, "3/8", "1/8");
    work.onFace = size("1/32");
    const Op op = make == Make::spotface ? Op::spotface : Op::counterbore;
    const HoleStep step = only(plan(work), op);
    EXPECT_EQ(step.fullDepth, size("5/32"));
    EXPECT_EQ(step.pointDepth, size("5/32"));
    EXPECT_EQ(step.size, size("3/8"));
  }
}

TEST(Seats, ACountersinkGoesToItsPointByItsAngle) {
  // 82° for inch screws, 90° for metric ones, as the shop's own says otherwise.
  HoleWork work = seated(Make::countersink, "3/8", "");
  work.onFace = size("1/32");
  HoleStep step = only(plan(work), Op::countersink);
  EXPECT_FALSE(step.fullDepth.has_value());
  EXPECT_EQ(*step.pointDepth,
            Length::ticks(size("1/32").ticks() + pointLength(size("3/8"), 82).ticks()));
  work.drilled.seatDiameter = figure("10 mm");
  step = only(plan(work), Op::countersink);
  EXPECT_EQ(*step.pointDepth,
            Length::ticks(size("1/32").ticks() + pointLength(size("10 mm"), 90).ticks()));
  Shop shop;
  OwnedSeatTool sink;
  sink.size = figure("1/2");
  sink.angle = *readAngle("60");
  sink.stands = figure("2");
  OwnedSeatTool larger = sink;
  larger.size = figure("3/4");
  larger.angle = *readAngle("100");
  OwnedSeatTool small = sink;
  small.size = figure("1/4");
  small.angle = *readAngle("120");
  shop.countersinks = {larger, sink, small};
  step = only(plan(work, shop), Op::countersink);
  EXPECT_EQ(*step.pointDepth,
            Length::ticks(size("1/32").ticks() + pointLength(size("10 mm"), 60).ticks()))
      << "the smallest that opens so far";
  EXPECT_EQ(step.stands, size("2"));
}

TEST(Seats, AnAngleThatThePrintLettersIsThatOfTheTool) {
  HoleWork work = seated(Make::countersink, "3/8", "");
  work.drilled.seatAngle = *readAngle("100");
  HoleStep step = only(plan(work), Op::countersink);
  EXPECT_EQ(step.tool, "countersink 3/8 100°");
  EXPECT_EQ(step.named, "3/8 100°");
  EXPECT_EQ(step.size, size("3/8"));
  EXPECT_EQ(step.pointDepth, pointLength(size("3/8"), 100));
  const auto owned = [](const char* across, const char* angle) {
    OwnedSeatTool one;
    one.size = figure(across);
    if (*angle) one.angle = *readAngle(angle);
    one.stands = figure(across);
    return one;
  };
  Shop shop;
  shop.countersinks = {owned("1/2", "82"), owned("3/4", "100"), owned("1", "100")};
  step = only(plan(work, shop), Op::countersink);
  EXPECT_EQ(step.stands, size("3/4")) << "the smallest of that angle";
  EXPECT_EQ(step.pointDepth, pointLength(size("3/8"), 100));
  shop.countersinks = {owned("1/2", "82"), owned("5/8", "")};
  EXPECT_EQ(only(plan(work, shop), Op::countersink).stands, size("5/8")) << "nobody said its angle";
  shop.countersinks = {owned("1/2", "82")};
  const HolePlan lacks = plan(work, shop);
  EXPECT_TRUE(stepsOf(lacks, Op::countersink).empty());
  ASSERT_EQ(lacks.lacking.size(), 1u);
  EXPECT_EQ(lacks.lacking[0].why, Lacking::Why::noSeatTool);
  EXPECT_EQ(lacks.lacking[0].wanted, "3/8 100°");
  work.drilled.seatAngle = *readAngle("0");
  EXPECT_FALSE(only(plan(work), Op::countersink).pointDepth.has_value());
}

// A pilot runs in the hole as it is drilled, and not loosely.
TEST(Seats, ACounterboreGoesByItsPilot) {
  const auto withPilot = [](const char* pilot) {
    Shop shop;
    shop.cutters.emplace();
    OwnedSeatTool bore;
    bore.size = figure("3/8");
    bore.pilot = figure(pilot);
    shop.counterbores = {bore};
    return plan(seated(Make::counterbore, "3/8", "1/8"), shop);
  };
  EXPECT_EQ(only(withPilot("1/4"), Op::counterbore).kind, ToolKind::counterbore);
  EXPECT_EQ(only(withPilot("15/64"), Op::counterbore).kind, ToolKind::counterbore);
  for (const char* pilot : {"17/64", "3/16"}) {
    const HolePlan amiss = withPilot(pilot);
    EXPECT_TRUE(stepsOf(amiss, Op::counterbore).empty()) << pilot;
    ASSERT_EQ(amiss.lacking.size(), 1u) << pilot;
    EXPECT_EQ(amiss.lacking[0].why, Lacking::Why::pilotDoesNotRun);
  }
}

TEST(Reamed, AMetricReamerForAnInchHoleStrikesOutItsOwnSize) {
  Shop shop;
  OwnedReamer reamer;
  reamer.size = figure("6.35 mm");
  shop.reamers = {reamer};
  EXPECT_EQ(only(plan(hole("1/4", Make::ream), shop), Op::ream).struckOut, "6.35 mm");
}

TEST(Seats, AreCutByAnEndMillOfTheirSizeWhereNoCounterboreIsOwned) {
  Shop shop;
  shop.counterbores.emplace();
  shop.cutters = {cutter("1/4"), cutter("3/8"), cutter("1/2")};
  const HoleStep step = only(plan(seated(Make::counterbore, "3/8", "1/8"), shop), Op::counterbore);
  EXPECT_EQ(step.kind, ToolKind::endMill);
  EXPECT_EQ(step.stands, size("1 1/2"));
  EXPECT_EQ(step.flutes, size("3/4"));
  const HolePlan lacks = plan(seated(Make::counterbore, "7/16", "1/8"), shop);
  EXPECT_TRUE(stepsOf(lacks, Op::counterbore).empty());
  ASSERT_EQ(lacks.lacking.size(), 1u);
  EXPECT_EQ(lacks.lacking[0].why, Lacking::Why::noSeatTool);
}

TEST(Bored, AnEndMillBeforeTheBarStandsAndCutsAsTheShopSays) {
  Shop shop = drillsOwned({"1/8", "1/4"});
  shop.cutters = {cutter("5/8")};
  shop.boring = {boringHead("1/2", "2", DialCounts::diameter, "0.001")};
  HoleWork work = blind(hole("1", Make::bore), "1/2");
  const HolePlan made = plan(work, shop);
  bool found = false;
  for (const HoleStep& step : made.steps) {
    if (step.rule != Rule::endMillUnderBore) continue;
    found = true;
    EXPECT_EQ(step.stands, size("1 1/2"));
    EXPECT_EQ(step.flutes, size("3/4"));
    EXPECT_EQ(step.fullDepth, size("1/2"));
    EXPECT_EQ(step.pointDepth, size("1/2")) << "it has no point";
  }
  EXPECT_TRUE(found);
}

TEST(Bored, ADialCountsInItsOwnUnit) {
  Shop shop = drillsOwned({"3/4"});
  shop.boring = {boringHead("1/2", "2", DialCounts::diameter, "0.01 mm")};
  const HolePlan metric = plan(hole("1", Make::bore), shop);
  for (const HoleStep* cut : stepsOf(metric, Op::bore)) {
    EXPECT_EQ(cut->dialUnit, Unit::millimetre);
    EXPECT_EQ(cut->dial->ticks() % size("0.01 mm").ticks(), 0);
  }
  const HolePlan inches = plan(hole("1", Make::bore), {});
  ASSERT_FALSE(stepsOf(inches, Op::bore).empty());
  EXPECT_EQ(stepsOf(inches, Op::bore).front()->dialUnit, Unit::inch);
}

TEST(Tapped, NearestDrillsSayHowFarTheyAreOff) {
  // 1/4-20: the table drills #7, .201. A 3/16 leaves over 80 %, a 7/32 under 55 %.
  const HolePlan made = plan(hole("", Make::tap, "1/4-20 UNC"), drillsOwned({"3/16", "7/32"}));
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].why, Lacking::Why::noneWithinPercent);
  ASSERT_EQ(made.lacking[0].near.size(), 2u);
  EXPECT_EQ(made.lacking[0].near[0].differs, size("3/16").minus(size(".201")));
  EXPECT_EQ(made.lacking[0].near[1].differs, size("7/32").minus(size(".201")));
  EXPECT_GT(made.lacking[0].near[0].percent, 8'000);
  EXPECT_LT(made.lacking[0].near[1].percent, 5'500);
}

TEST(ReamingRule, OfTheShopDecidesWhatIsLeft) {
  Shop shop = drillsOwned({"15/64", "6.1 mm", "C", "D"});
  shop.reaming.emplace();
  const auto drilled = [&] { return only(plan(hole("1/4", Make::ream), shop), Op::drill).tool; };
  EXPECT_EQ(drilled(), "C") << "nothing said: .006 to .018";
  shop.reaming->machine = {figure(".009"), figure(".012")};
  EXPECT_EQ(drilled(), "6.1 mm") << ".2402 leaves .0098";
  shop.reaming->machine = {figure(".003"), figure(".005")};
  EXPECT_EQ(drilled(), "D") << ".246 leaves .004";
  shop.reaming->machine = {figure(".015"), figure(".020")};
  EXPECT_EQ(drilled(), "15/64");
}

TEST(Size, IsShownAsLetteredOnlyWhereItIsAPlainFigure) {
  const auto shown = [](const char* text) {
    return only(plan(hole(text, Make::ream)), Op::ream).struckOut;
  };
  EXPECT_EQ(shown(".250"), ".250");
  EXPECT_EQ(shown("8/32"), "8/32");
  for (const char* marked : {"(.250)", ".250 BSC", "Ø.250", ".250 ±.001"}) {
    EXPECT_EQ(shown(marked), "1/4") << marked;
  }
}

TEST(Pins, GoAndNoGoLieWithinTheLimitsByTheirOwnClass) {
  HoleWork work = hole("", Make::bore);
  work.drilled.diameter = figure("1/2");
  work.drilled.limits = ".5000/.5010";
  Shop shop;
  OwnedPins set;
  for (const char* text : {".499", ".500", ".501", ".502"}) set.sizes.push_back(size(text));
  set.sign = PinSign::plus;
  shop.pins = {set};
  // Class ZZ is .0002 wide: .501 plus may be .5012, over the limit; .500 plus alone is one pin.
  auto pins = plan(work, shop).pins;
  ASSERT_TRUE(pins.has_value());
  EXPECT_FALSE(pins->owned);
  shop.pins->front().sign = PinSign::minus;
  // .501 minus lies from .5008 to .501; .500 minus from .4998, under the limit.
  pins = plan(work, shop).pins;
  EXPECT_FALSE(pins->owned);
  shop.pins->front().sizes = {size(".5002"), size(".5006"), size(".5010")};
  pins = plan(work, shop).pins;
  ASSERT_TRUE(pins->owned);
  EXPECT_EQ(pins->go, size(".5002"));
  EXPECT_EQ(pins->noGo, size(".5010"));
}

}  // namespace
}  // namespace inchwright::test
