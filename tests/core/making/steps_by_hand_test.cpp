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

// Up to 1/2 at once; over it a pilot of at most a third, over 3/4 a step of at most two thirds.
TEST(Drilled, LargeDrillsHaveTheirPilotsAndSteps) {
  const Shop sixtyFourths = drillsOwned({"fractional 1/16 to 1"});
  for (const auto& [text, tools] : std::vector<std::pair<const char*, const char*>>{
           {"1/2", "spot, 1/2, deburr"},
           {"33/64", "spot, 11/64, 33/64, deburr"},
           {"3/4", "spot, 1/4, 3/4, deburr"},
           {"49/64", "spot, 1/4, 1/2, 49/64, deburr"},  // .2552 and .5104
           {"63/64", "spot, 21/64, 21/32, 63/64, deburr"}}) {
    EXPECT_EQ(toolsOf(plan(hole(text, Make::drill), sixtyFourths)), tools);
  }
  // A pilot under 1/8 is none; then the step has nothing before it.
  EXPECT_EQ(toolsOf(plan(hole("7/8", Make::drill), drillsOwned({"7/64", "1/2", "7/8"}))),
            "spot, 1/2, 7/8, deburr");
  EXPECT_EQ(toolsOf(plan(hole("7/8", Make::drill), drillsOwned({"1/8", "7/8"}))),
            "spot, 1/8, 7/8, deburr");
  const HolePlan blindHole = plan(blind(hole("7/8", Make::drill), "1/2"), sixtyFourths);
  for (const HoleStep* step : stepsOf(blindHole, Op::drill)) {
    EXPECT_EQ(step->fullDepth, size("1/2"));
  }
  EXPECT_EQ(only(blindHole, Op::pilot).fullDepth, size("1/2"));
  EXPECT_EQ(only(blindHole, Op::pilot).rule, Rule::pilotFirst);
  EXPECT_EQ(stepsOf(blindHole, Op::drill)[0]->rule, Rule::stepUp);
}

TEST(Suit, IsLeftAThirtySecondUnder) {
  struct Row {
    Make make;
    Op op;
    ToolKind kind;
  };
  for (const Row& row :
       {Row{Make::ream, Op::ream, ToolKind::reamer}, Row{Make::bore, Op::bore, ToolKind::bar},
        Row{Make::drill, Op::drill, ToolKind::drill}}) {
    HoleWork work = blind(hole("1/4", row.make), "1/2");
    work.drilled.locate = Locate::suit;
    const HolePlan made = plan(work);
    EXPECT_EQ(toolsOf(made), "spot, 7/32, to suit, deburr");
    EXPECT_EQ(made.steps[1].rule, Rule::underSuit);
    const HoleStep& last = made.steps[2];
    EXPECT_EQ(last.op, row.op);
    EXPECT_EQ(last.kind, row.kind);
    EXPECT_EQ(last.struckOut, "1/4");
    EXPECT_EQ(last.fullDepth, size("1/2"));
    EXPECT_EQ(last.pointDepth, size("1/2"));
    // Right through an inch, and 1/32 below.
    work.drilled.depth = {};
    EXPECT_EQ(plan(work).steps[2].pointDepth, size("1 1/32"));
  }
}

// C, .242, before a machine reamer: its lead of 1/32 below the 1/2, and a quarter of .242 for
// chips; its point is taken for .3 of .242.
TEST(Reamed, BlindDepthsMakeRoomForLeadAndChips) {
  HoleWork work = blind(hole("1/4", Make::ream), "1/2");
  const auto deep = [&](const char* thick) {
    work.throughNow = work.throughFinished = size(thick);
    const HolePlan made = plan(work);
    return std::pair{*only(made, Op::drill).fullDepth, made.notes.size()};
  };
  // To .5 + .03125 + .0605 where .0726 and a wall of .03125 are left below that: .6956.
  EXPECT_EQ(deep("1"), (std::pair{size(".59175"), std::size_t{0}}));
  EXPECT_EQ(deep(".6956"), (std::pair{size(".59175"), std::size_t{0}}));
  EXPECT_EQ(deep(".6955"), (std::pair{size(".59165"), std::size_t{1}}));
  EXPECT_EQ(deep("5/8"), (std::pair{size(".53125"), std::size_t{1}})) << "the lead at least";
  // A hand reamer's lead is a quarter of its length, or twice its size where nobody said.
  Shop shop;
  shop.reamers = {reamer("1/4", ReamedBy::hand)};
  work.throughNow = work.throughFinished = size("2");
  EXPECT_EQ(only(plan(work, shop), Op::ream).pointDepth, size("1"));
  EXPECT_EQ(only(plan(work, shop), Op::ream).tool, "hand ream 1/4");
  shop.reamers->front().length = figure("1");
  EXPECT_EQ(only(plan(work, shop), Op::ream).pointDepth, size("3/4"));
  EXPECT_EQ(only(plan(work, shop), Op::ream).flutes, size("1"));
  shop.reamers->push_back(reamer("1/4"));
  EXPECT_EQ(only(plan(work, shop), Op::ream).tool, "ream 1/4") << "the machine reamer of two";
}

TEST(Reamed, LimitsTakeReamersAtTheirEnds) {
  HoleWork work = hole("1/4", Make::ream);
  work.drilled.limits = ".2500/.2506";
  for (const auto& [owned, suits] : std::vector<std::pair<const char*, bool>>{
           {".2499", false}, {".2500", true}, {".2506", true}, {".2507", false}}) {
    Shop shop;
    shop.reamers = {reamer(owned)};
    EXPECT_EQ(plan(work, shop).lacking.empty(), suits) << owned;
  }
  // The two nearest, and by how much they differ.
  Shop shop;
  shop.reamers = {reamer("3/8"), reamer("17/32"), reamer("7/16")};
  const Lacking lacks = plan(hole("1/2", Make::ream), shop).lacking.at(0);
  ASSERT_EQ(lacks.near.size(), 2u);
  EXPECT_EQ(lacks.near[0].name, "17/32");
  EXPECT_EQ(lacks.near[0].differs, size("1/32"));
  EXPECT_EQ(lacks.near[1].name, "7/16");
  EXPECT_EQ(lacks.near[1].differs, size("-1/16"));
}

// Nothing leaves .006 to .018: a bar would do where a drill at least 1/32 under lets it in.
TEST(Reamed, ABarWouldDoWhereOneGoesIn) {
  const auto barWouldDo = [](std::initializer_list<const char*> drills) {
    const HolePlan made = plan(hole("1/2", Make::ream), drillsOwned(drills));
    EXPECT_EQ(made.lacking.at(0).why, Lacking::Why::noneLeavesEnough);
    EXPECT_EQ(only(made, Op::ream).tool, "ream 1/2");
    return made.lacking.at(0).barWouldDo;
  };
  EXPECT_TRUE(barWouldDo({"15/32", "1/2"}));
  EXPECT_TRUE(barWouldDo({"1/4"}));
  EXPECT_FALSE(barWouldDo({"15/64"})) << "a head goes into 1/4";
  EXPECT_FALSE(barWouldDo({"1/2"}));
}

// Bored before the reamer, since a reamer follows the hole it finds: to the middle of .005 and
// .010 under, unless the hole is so large already; with too coarse a dial not at all.
TEST(Reamed, ACloselyPlacedHoleIsBoredToTheMiddle) {
  HoleWork work = hole("1/2", Make::ream);
  work.closePlace = true;
  Shop shop;
  shop.boring = {boringHead("3/8", "3", DialCounts::diameter, ".00005")};
  HolePlan made = plan(work, shop);
  ASSERT_FALSE(stepsOf(made, Op::bore).empty());
  EXPECT_EQ(stepsOf(made, Op::bore).back()->size, size(".4925"));
  shop.boring = {boringHead("3/8", "3", DialCounts::diameter, "1/4")};
  made = plan(work, shop);
  EXPECT_TRUE(stepsOf(made, Op::bore).empty());
  EXPECT_EQ(made.notes, std::vector{HoleNote::barTooSmall});
  shop.boring = {boringHead("3/8", "3", DialCounts::diameter, ".00005")};
  for (const char* there : {".4900", ".4950"}) {
    PutRight right;
    right.way = WayOut::openToSize;
    right.found = {size(there), size(there)};
    work.putRight = right;
    made = plan(work, shop);
    EXPECT_EQ(toolsOf(made), "ream 1/2, deburr") << there;
    EXPECT_EQ(made.notes, std::vector{HoleNote::openedToSize}) << there;
  }
  work.putRight->found = {size(".4800"), size(".4800")};
  made = plan(work, shop);
  EXPECT_EQ(stepsOf(made, Op::bore).back()->size, size(".4925"));
  EXPECT_TRUE(stepsOf(made, Op::drill).empty()) << "15/32 cuts nothing in it";
}

TEST(Bored, LimitsAreAimedAtInTheirMiddleAndHeadsTakenAtTheirEnds) {
  HoleWork work = hole("3/4", Make::bore);
  work.drilled.limits = ".7500/.7512";
  const auto last = [&](OwnedBoring head) -> std::optional<Length> {
    Shop shop = drillsOwned({"1/2"});
    shop.cutters.emplace();
    shop.boring = {std::move(head)};
    const HolePlan made = plan(work, shop);
    if (stepsOf(made, Op::bore).empty()) return std::nullopt;
    return stepsOf(made, Op::bore).back()->size;
  };
  EXPECT_EQ(last(boringHead("1/2", "3/4", DialCounts::diameter, ".0001")), size(".7506"));
  EXPECT_EQ(last(boringHead("33/64", "3/4", DialCounts::diameter, ".0001")), std::nullopt);
  EXPECT_EQ(last(boringHead("1/2", "47/64", DialCounts::diameter, ".0001")), std::nullopt);
  EXPECT_EQ(last({}), size(".751")) << "any head, in thousandths: the nearest to .7506";
}

// 1/4-20 blind 3/8: #7, .201, with a point of .0604 and a wall of .0312 below the thread's end, so
// a second tap's five threads of .050 need .7167.
TEST(Tapped, TheSecondTapIsTakenWhereThereIsRoomForItsLead) {
  HoleWork work = blind(hole("", Make::tap, "1/4-20 UNC"), "3/8");
  work.throughNow = work.throughFinished = size(".7167");
  HolePlan made = plan(work);
  EXPECT_EQ(only(made, Op::tap).pointDepth, size(".625"));
  EXPECT_EQ(only(made, Op::drill).fullDepth->ticks(),
            size(".7167").ticks() - size("1/32").ticks() - pointLength(size(".201")).ticks());
  EXPECT_EQ(made.notes, std::vector{HoleNote::shortOfFar});
  work.throughNow = work.throughFinished = size(".7166");
  EXPECT_EQ(only(plan(work), Op::tap).pointDepth, size(".475"));
  // Of owned taps the second, wherever it stands; without one the shortest.
  Shop shop;
  const auto owned = [&](std::vector<TapLead> leads) {
    shop.taps.emplace();
    for (const TapLead lead : leads) shop.taps->push_back({"1/4-20 UNC", lead, figure("3"), {}});
    return only(plan(hole("", Make::tap, "1/4-20 UNC"), shop), Op::tap);
  };
  EXPECT_EQ(owned({TapLead::taper, TapLead::second, TapLead::bottoming}).below, size(".250"));
  EXPECT_EQ(owned({TapLead::taper, TapLead::bottoming}).below, size(".100"));
  EXPECT_EQ(owned({TapLead::taper}).below, size(".500"));
  EXPECT_EQ(owned({TapLead::taper}).stands, size("3"));
}

// M6 in a job in inches goes by metric drills: 5.1 mm leaves (6 - 5.1)/1.299038 = 69 %, and 5.0 is
// the table's own.
TEST(Tapped, MetricThreadsGoByMetricDrills) {
  for (const char* thread : {"M6", "2 BA"}) {
    const HoleStep step = only(plan(hole("", Make::tap, thread)), Op::tap);
    EXPECT_EQ(step.unit, Unit::millimetre) << thread;
  }
  EXPECT_EQ(only(plan(hole("", Make::tap, "1/4-20 UNC")), Op::tap).unit, Unit::inch);
  // Nearest to the rule's percent, and no further off than the rule lets it be.
  Shop shop = drillsOwned({"5.1 mm", "5.2 mm", "4.9 mm"});
  EXPECT_EQ(only(plan(hole("", Make::tap, "M6"), shop), Op::drill).tool, "5.1 mm");
  shop.tapping.emplace();
  shop.tapping->percent = 60;
  EXPECT_EQ(only(plan(hole("", Make::tap, "M6"), shop), Op::drill).tool, "5.2 mm") << "61.6 %";
  shop.tapping->percent = 85;
  shop.tapping->greatest = 84;
  EXPECT_EQ(only(plan(hole("", Make::tap, "M6"), shop), Op::drill).tool, "5.1 mm")
      << "4.9 leaves 84.7 %";
  shop.tapping->greatest = 85;
  EXPECT_EQ(only(plan(hole("", Make::tap, "M6"), shop), Op::drill).tool, "4.9 mm");
}

TEST(Seats, NearestToolsSayHowFarTheyAreOff) {
  Shop shop;
  shop.cutters.emplace();
  OwnedSeatTool small;
  small.size = figure("5/16");
  OwnedSeatTool large;
  large.size = figure("10 mm");
  shop.counterbores = {small, large};
  const HolePlan made = plan(seated(Make::counterbore, "3/8", "1/8"), shop);
  ASSERT_EQ(made.lacking.size(), 1u);
  EXPECT_EQ(made.lacking[0].op, Op::counterbore);
  ASSERT_EQ(made.lacking[0].near.size(), 2u);
  EXPECT_EQ(made.lacking[0].near[0].differs, size("-1/16"));
  EXPECT_EQ(made.lacking[0].near[1].name, "10 mm");
  EXPECT_EQ(made.lacking[0].near[1].differs, size("10 mm").minus(size("3/8")));
  // A pilot 1/32 under the hole still runs in it.
  shop.counterbores = {large};
  shop.counterbores->front().size = figure("3/8");
  for (const char* pilot : {"7/32", "1/4", ""}) {
    shop.counterbores->front().pilot.reset();
    if (*pilot) shop.counterbores->front().pilot = figure(pilot);
    const HolePlan runs = plan(seated(Make::counterbore, "3/8", "1/8"), shop);
    EXPECT_EQ(only(runs, Op::counterbore).kind, ToolKind::counterbore) << pilot;
  }
}

}  // namespace
}  // namespace inchwright::test
