#include "core/making/put_right.h"

#include <gtest/gtest.h>

#include "core/making/drawn_size.h"
#include "core/making/hole_plan.h"
#include "core/shop/fits.h"
#include "core/shop/threads.h"
#include "tests/support/ticks.h"

namespace inchwright {
namespace {

Lettered lettered(const char* text) {
  return *readLength(text, {});
}

Length inches(const char* text) {
  return lettered(text).value;
}

/// A reamed hole of 1/4, wanted .2500 to .2506.
Drilled reamed() {
  Drilled hole;
  hole.diameter = lettered("1/4");
  hole.make = Make::ream;
  hole.limits = "0.2500/0.2506";
  return hole;
}

WrongHole foundAt(const char* size) {
  const DrawnSize drawn{inches("1/4"), {inches(".2500"), inches(".2506")}};
  return wrongHole(drawn, {inches(size), inches(size)}, std::nullopt, std::nullopt, Unit::inch);
}

TEST(LimitsOfHole, AreByNameWhereTheyBeginWithALetter) {
  Drilled hole;
  for (const char* named : {"A9", "Z9", "a9", "z9"}) {
    hole.limits = named;
    EXPECT_EQ(limitsOfHole(hole, Unit::inch).error().text,
              "limits by name need the hole's diameter");
  }
  for (const char* other : {"@9", "[9", "`9", "{9", "9"}) {
    hole.limits = other;
    EXPECT_EQ(limitsOfHole(hole, Unit::inch).error().code, ErrorCode::badText) << other;
  }
}

TEST(DrawnSize, GoesByAFitsNameAndByTheUnitOfTheHole) {
  Part part;
  Feature feature;
  feature.id = "A";
  kind::Hole shape;
  shape.drilled.diameter = lettered("1");
  shape.drilled.limits = "RC4";
  feature.shape = shape;
  part.features = {feature};
  const auto fit = fitByName("RC4", inches("1"));
  ASSERT_TRUE(fit.ok());
  EXPECT_EQ(drawnSize(part, "A")->limits.greatest, inches("1").plus(fit->hole.upper));
  part.features[0].drilled()->diameter = lettered("6 mm");
  part.features[0].drilled()->limits = "6.000/6.012";
  EXPECT_EQ(drawnSize(part, "A")->limits.greatest, inches("6.012 mm"));
}

TEST(NextSize, IsTheNextRoundOneAndStaysOnceTheHoleIsOpened) {
  struct Row {
    const char* found;
    const char* next;
  };
  const Row rows[] = {{".2510", "17/64"}, {".2518", "17/64"}, {".2656", "17/64"},
                      {".2658", "17/64"},  // .265625 and up to .0006 more: opened, and in
                      {".2663", "9/32"},   // opened, and over again
                      {".2400", "17/64"}};
  for (const Row& row : rows) {
    const auto next = nextSize(reamed(), foundAt(row.found));
    ASSERT_TRUE(next) << row.found;
    EXPECT_EQ(next->name, row.next) << row.found;
    EXPECT_EQ(next->size, inches(row.next));
  }
}

TEST(NextSize, IsNotReachedByWideLimitsAlone) {
  Drilled loose = reamed();
  loose.limits.clear();
  const DrawnSize drawn{inches("1/4"), {inches("15/64"), inches("17/64")}};
  const FoundSize found{inches(".2718"), inches(".2718")};
  const auto next = nextSize(loose, wrongHole(drawn, found, {}, {}, Unit::inch));
  ASSERT_TRUE(next);
  EXPECT_EQ(next->name, "9/32");
  EXPECT_FALSE(isOpenedTo(*next, found));
  EXPECT_TRUE(isOpenedTo(*next, {inches("9/32"), inches(".2815")}));
}

TEST(NextSize, TakesLimitsInFiguresAlongAndLeavesThoseByName) {
  const auto figures = nextSize(reamed(), foundAt(".2518"));
  const auto limits = limitsOfHole(figures->drilled, Unit::inch);
  ASSERT_TRUE(limits.ok() && *limits);
  EXPECT_EQ((*limits)->least, inches("17/64"));
  EXPECT_EQ((*limits)->greatest, inches(".266225"));
  Drilled named = reamed();
  named.limits = "H7";
  EXPECT_EQ(nextSize(named, foundAt(".2518"))->drilled.limits, "H7");
}

TEST(NextSize, OfAThreadIsTheNextOfItsSeries) {
  Drilled tapped;
  tapped.make = Make::tap;
  tapped.thread = "#8-32 UNC";
  const Length major = threadNamed("#8-32 UNC")->major;
  WrongHole hole = wrongHole({major, {major, major}}, {}, {}, {}, Unit::inch);
  hole.found = inches(".1420");
  const auto next = nextSize(tapped, hole);
  ASSERT_TRUE(next);
  EXPECT_EQ(next->name, "#10-24 UNC");
  EXPECT_EQ(next->drilled.thread, "#10-24 UNC");
  tapped.thread = "of his own";
  EXPECT_FALSE(nextSize(tapped, hole));
}

HolePlan planFor(WayOut way, const char* found, Length offX = {}, const Shop& shop = {}) {
  HoleWork work;
  work.drilled = reamed();
  work.throughNow = work.throughFinished = inches("1/2");
  WrongHole hole = foundAt(found);
  hole.offX = offX;
  const auto right = putRight(way, reamed(), hole, {inches(found), inches(found)});
  EXPECT_TRUE(right.ok());
  work.putRight = *right;
  return planHole(work, ToolsOwned(shop), {});
}

std::vector<std::string> toolsOf(const HolePlan& plan) {
  std::vector<std::string> tools;
  for (const HoleStep* step : fittingsOf(plan)) tools.push_back(step->tool);
  return tools;
}

TEST(PutRight, TheNextSizeIsPlannedWithoutWhatCutsNothing) {
  // .265625 less .006 to .018: the largest customary drill is F, .257.
  EXPECT_EQ(toolsOf(planFor(WayOut::nextSize, ".2518")),
            (std::vector<std::string>{"F", "ream 17/64", "deburr"}));
  // F cuts nothing where the hole is as large.
  for (const char* found : {".2570", ".2575"}) {
    EXPECT_EQ(toolsOf(planFor(WayOut::nextSize, found)),
              (std::vector<std::string>{"ream 17/64", "deburr"}));
  }
  const HolePlan plan = planFor(WayOut::nextSize, ".2518");
  for (const HoleStep& step : plan.steps) EXPECT_NE(step.named, "1/4");
  EXPECT_EQ(plan.notes, std::vector<HoleNote>{HoleNote::openedUp});
}

TEST(PutRight, AHoleUnderSizeIsOpenedToItsOwn) {
  const HolePlan plan = planFor(WayOut::openToSize, ".2480");
  EXPECT_EQ(toolsOf(plan), (std::vector<std::string>{"ream 1/4", "deburr"}));
  EXPECT_EQ(plan.notes, std::vector<HoleNote>{HoleNote::openedToSize});
  const HolePlan over = planFor(WayOut::openToSize, ".2518");
  EXPECT_EQ(over.notes, std::vector<HoleNote>{HoleNote::leftAsFound});
  const HolePlan most = planFor(WayOut::openToSize, ".2506");
  EXPECT_EQ(most.notes, std::vector<HoleNote>{HoleNote::openedToSize}) << "the limit is in";
}

TEST(PutRight, ABoreIsOpenedFromWhatItIsAlready) {
  HoleWork work;
  work.drilled = reamed();
  work.drilled.make = Make::bore;
  const auto right = putRight(WayOut::nextSize, work.drilled, foundAt(".2518"),
                              {inches(".2518"), inches(".2518")});
  ASSERT_TRUE(right.ok());
  work.putRight = *right;
  const HolePlan plan = planHole(work, ToolsOwned(Shop()), {});
  ASSERT_EQ(toolsOf(plan), (std::vector<std::string>{"F", "bore", "deburr"}));
  // Nobody said what the dial counts: the dial figures are the growth of the hole, cut by cut.
  Length at = inches(".257");
  for (const HoleStep& step : plan.steps) {
    if (step.op != Op::bore) continue;
    EXPECT_EQ(at.plus(*step.dial), step.size);
    at = *step.size;
  }
  EXPECT_GE(at, plan.limits->least);
  EXPECT_LE(at, plan.limits->greatest);
}

TEST(PutRight, ABushIsBoredForPressedAndMadeToSizeAfterwards) {
  const HolePlan plan = planFor(WayOut::bush, ".2518");
  EXPECT_EQ(toolsOf(plan), (std::vector<std::string>{"bore", "press bush", "ream 1/4", "deburr"}));
  const Bushing& bush = *plan.putRight->bushing;
  Length last;
  for (const HoleStep& step : plan.steps) {
    if (step.op == Op::bore) last = *step.size;
  }
  EXPECT_GE(last, bush.boreLimits.least);
  EXPECT_LE(last, bush.boreLimits.greatest);
  EXPECT_EQ(plan.steps[plan.steps.size() - 2].rule, Rule::afterPressing);
  EXPECT_TRUE(plan.steps[plan.steps.size() - 2].inBush);
  EXPECT_EQ(plan.notes.front(), HoleNote::linedOnPlace);
}

// LN2 about 5/16: .3125 to .3131, and .3128 is the middle.
TEST(PutRight, ABushsBoreIsAimedAtTheMiddleOfItsLimits) {
  Shop shop;
  OwnedBoring bar;
  bar.dial = DialCounts::diameter;
  bar.division = lettered(".0001");
  shop.boring = {bar};
  const auto sizeOfLastBore = [&](const char* found) {
    std::optional<Length> last;
    for (const HoleStep& step : planFor(WayOut::bush, found, {}, shop).steps) {
      if (step.op == Op::bore) last = step.size;
    }
    return last;
  };
  EXPECT_EQ(sizeOfLastBore(".2518"), inches(".3128"));
  EXPECT_EQ(sizeOfLastBore(".3125"), std::nullopt) << "it is large enough as found";
  EXPECT_EQ(toolsOf(planFor(WayOut::bush, ".3125", {}, shop)).front(), "press bush");
}

// A bush has its hole, a little under: it is opened by what came last, then seats and threads.
TEST(PutRight, WhatIsCutInABushIsWhatComesLast) {
  HoleWork work;
  work.drilled.diameter = lettered("1/4");
  const DrawnSize drawn{inches("1/4"), {inches("1/4"), inches(".2510")}};
  const FoundSize found{inches(".2530"), inches(".2530")};
  Shop shop;
  OwnedBoring bar;
  bar.least = lettered("1/8");
  shop.boring = {bar};
  const auto lined = [&](WayOut way) {
    const WrongHole hole = wrongHole(drawn, found, {}, {}, Unit::inch);
    work.putRight = *putRight(way, work.drilled, hole, found);
    return planHole(work, ToolsOwned(shop), {});
  };
  using Tools = std::vector<std::string>;
  for (const WayOut way : {WayOut::bush, WayOut::eccentricBush}) {
    work.drilled.make = Make::drill;
    EXPECT_EQ(toolsOf(lined(way)), (Tools{"bore", "press bush", "1/4", "deburr"}));
    work.drilled.make = Make::counterbore;
    work.drilled.seatDiameter = lettered("3/8");
    work.drilled.seatDepth = lettered("1/8");
    HolePlan plan = lined(way);
    EXPECT_EQ(toolsOf(plan), (Tools{"bore", "press bush", "1/4", "counterbore 3/8", "deburr"}));
    const std::size_t count = plan.steps.size();
    EXPECT_EQ(plan.steps[count - 3].rule, Rule::afterPressing);
    EXPECT_EQ(plan.steps[count - 2].rule, Rule::asLettered) << "the first alone";
    EXPECT_TRUE(plan.steps[count - 3].inBush && plan.steps[count - 2].inBush);
    EXPECT_FALSE(plan.steps[count - 1].inBush) << "deburred with the rest";
    EXPECT_FALSE(plan.steps[count - 4].inBush);
    work.drilled.seatDiameter.reset();
    work.drilled.make = Make::bore;
    plan = lined(way);
    const HoleStep& bore = plan.steps[plan.steps.size() - 2];
    EXPECT_EQ(bore.op, Op::bore);
    EXPECT_LE(*bore.size, inches("1/4"));
    EXPECT_GT(*bore.size, inches(".249")) << "in thousandths from its drill";
    EXPECT_FALSE(bore.dial.has_value()) << "the bush closes in: from what, nobody knows";
    EXPECT_EQ(std::count(plan.notes.begin(), plan.notes.end(), HoleNote::linedOnPlace),
              way == WayOut::bush ? 1 : 0);
  }
}

// Where the place comes from is said once, though a plug is a hole drilled anew.
TEST(PutRight, APlugsPlaceIsSaidOnce) {
  struct Row {
    Locate locate;
    bool leads, there;
    std::vector<HoleNote> notes;
  };
  using enum HoleNote;
  for (const Row& row : {Row{Locate::pair, true, true, {linedAsFound, throughBoth}},
                         Row{Locate::pair, false, true, {linedAsFound, byMatesSheet}},
                         Row{Locate::mate, false, true, {linedAsFound, fromMate}},
                         Row{Locate::assembly, false, true, {linedAsFound, onAssembly}},
                         Row{Locate::mate, false, false, {linedAsFound, mateNotThere, fromMate}},
                         Row{Locate::coordinate, false, true, {linedAsFound}}}) {
    HoleWork work;
    work.drilled = reamed();
    work.drilled.locate = row.locate;
    work.pairLeads = row.leads;
    work.mateThere = row.there;
    const FoundSize found{inches(".2518"), inches(".2518")};
    work.putRight = *putRight(WayOut::plug, work.drilled, foundAt(".2518"), found);
    // Nobody said what the dial counts, which is said of the bore.
    std::vector<HoleNote> notes = planHole(work, ToolsOwned(Shop()), {}).notes;
    std::erase(notes, dialUnsaid);
    EXPECT_EQ(notes, row.notes) << nameOf(row.locate);
  }
}

TEST(PutRight, APlugIsMadeAnewAndBoredWhereItsJointIsCut) {
  EXPECT_EQ(toolsOf(planFor(WayOut::plug, ".2518")),
            (std::vector<std::string>{"bore", "press plug", "spot", "C", "ream 1/4", "deburr"}));
  // .010 off in a plug of 17/64: the wanted hole cuts the joint.
  Shop shop;
  OwnedBoring bar;
  bar.least = lettered("1/8");
  shop.boring = std::vector<OwnedBoring>{bar};
  const std::vector<std::string> joint =
      toolsOf(planFor(WayOut::plug, ".2518", inches(".010"), shop));
  EXPECT_EQ(joint[1], "press plug");
  EXPECT_EQ(std::count(joint.begin(), joint.end(), "ream 1/4"), 0);
  EXPECT_EQ(joint[joint.size() - 2], "bore");
}

TEST(PutRight, WhatIsLeftAsFoundIsNotCutAgain) {
  for (const WayOut way : {WayOut::shaft, WayOut::leave}) {
    const HolePlan plan = planFor(way, ".2518");
    EXPECT_TRUE(plan.steps.empty());
    EXPECT_TRUE(plan.lacking.empty());
    EXPECT_EQ(plan.notes,
              std::vector{way == WayOut::shaft ? HoleNote::shaftToSuit : HoleNote::leftAsFound});
  }
}

TEST(PutRight, ABoreWithoutABarIsSaidToLackOne) {
  HoleWork work;
  work.drilled = reamed();
  work.putRight = *putRight(WayOut::bush, reamed(), foundAt(".2518"), {inches(".2518"), {}});
  Shop shop;
  shop.boring = std::vector<OwnedBoring>();
  const HolePlan plan = planHole(work, ToolsOwned(shop), {});
  ASSERT_EQ(plan.lacking.size(), 1u);
  EXPECT_EQ(plan.lacking[0].why, Lacking::Why::noBar);
  EXPECT_TRUE(plan.steps.empty());  // nothing is pressed into a hole that was not bored
}

TEST(PutRight, WhatTheHoleInTheBushLacksIsSaid) {
  Shop shop;
  shop.reamers.emplace();
  for (const WayOut way : {WayOut::bush, WayOut::plug}) {
    const HolePlan plan = planFor(way, ".2518", {}, shop);
    ASSERT_EQ(plan.lacking.size(), 1u);
    EXPECT_EQ(plan.lacking[0].why, Lacking::Why::noReamer);
    EXPECT_EQ(plan.lacking[0].op, Op::ream);
  }
}

// 6 mm wanted up to .2 over: by half millimetres, and never further than .05 off one.
TEST(NextSize, OfMetricWorkGoesByHalfMillimetres) {
  Drilled drilled;
  drilled.diameter = *readLength("6", {Unit::millimetre});
  const auto next = [&](const char* found, const char* most) {
    const auto mm = [](const char* text) { return readLength(text, {Unit::millimetre})->value; };
    const DrawnSize drawn{mm("6"), {mm("6"), mm(most)}};
    return nextSize(drilled, wrongHole(drawn, {mm(found), mm(found)}, {}, {}, Unit::millimetre));
  };
  EXPECT_EQ(next("6.02", "6.012")->name, "6.5");
  EXPECT_EQ(next("6.512", "6.012")->name, "6.5");
  EXPECT_EQ(next("6.513", "6.012")->name, "7");
  EXPECT_EQ(next("6.55", "6.2")->name, "6.5");
  EXPECT_EQ(next("6.551", "6.2")->name, "7");
  const NextSize size = *next("6.02", "6.2");
  const auto isOpened = [&](const char* least) {
    return isOpenedTo(size, {readLength(least, {Unit::millimetre})->value, {}});
  };
  EXPECT_TRUE(isOpened("6.5"));
  EXPECT_FALSE(isOpened("6.499")) << "its least is 6 and half a millimetre";
  EXPECT_FALSE(isOpenedTo(size, {})) << "nothing was measured";
}

// Tap drills by the table: #38 .1015, #36 .1065, #29 .136, #25 .1495, #16 .177.
TEST(NextSize, OfAThreadHasItsTapDrillOutsideWhatWasFound) {
  Drilled tapped;
  tapped.make = Make::tap;
  tapped.thread = "#4-40 UNC";
  WrongHole hole;
  const auto next = [&](const char* found) {
    hole.found = inches(found);
    const auto size = nextSize(tapped, hole);
    return size ? size->name : "none";
  };
  EXPECT_EQ(next(".0900"), "#5-40 UNC");
  EXPECT_EQ(next(".1015"), "#5-40 UNC");
  EXPECT_EQ(next(".1016"), "#6-32 UNC");
  EXPECT_EQ(next(".1360"), "#8-32 UNC");
  EXPECT_EQ(next(".1361"), "#10-24 UNC");
  EXPECT_EQ(next("30"), "none");
  hole.found = inches(".1360");
  const NextSize size = *nextSize(tapped, hole);
  // Tapped 8-32: at least .164 less 1.299038/32 is .12340.
  EXPECT_TRUE(isOpenedTo(size, {inches(".1235"), {}}));
  EXPECT_FALSE(isOpenedTo(size, {inches(".1233"), {}}));
}

// As a readout showed them they are the same within a thousandth; kept exact, only when alike.
TEST(PutRight, TheFiguresChosenByAreOtherOnceTheyDiffer) {
  ChosenFigures was;
  was.bore = inches(".3125");
  was.least = inches(".2500");
  was.greatest = inches(".2506");
  EXPECT_FALSE(isOtherThanChosen(was, was));
  for (const auto member :
       {&ChosenFigures::bore, &ChosenFigures::least, &ChosenFigures::greatest}) {
    for (const char* by : {".001", "-.001"}) {
      ChosenFigures now = was;
      now.*member = (was.*member)->plus(inches(by));
      EXPECT_FALSE(isOtherThanChosen(was, now)) << by;
      ChosenFigures exact = was;
      exact.exact = true;
      EXPECT_TRUE(isOtherThanChosen(exact, now)) << by;
      now.*member = (now.*member)->plus(Length::ticks(*by == '-' ? -1 : 1));
      EXPECT_TRUE(isOtherThanChosen(was, now)) << by;
      (now.*member).reset();
      EXPECT_FALSE(isOtherThanChosen(exact, now)) << "not known: nothing to say";
    }
  }
}

TEST(NextSize, IsChosenOfAHoleThatIsThereAndHasASize) {
  Part part;
  Feature hole;
  hole.id = "A";
  hole.shape = kind::Hole{reamed()};
  part.features = {hole};
  const FoundSize found{inches(".2518"), inches(".2518")};
  const auto chosen = [&](const char* place, const FoundSize& size) {
    return chosenNextSize(part, place, size, Unit::inch);
  };
  EXPECT_FALSE(chosen("A", found)) << "nothing is chosen yet";
  for (const char* place : {"A", "Z"}) {
    Mended mended;
    mended.place = place;
    mended.way = WayOut::nextSize;
    part.mended.push_back(mended);
  }
  ASSERT_TRUE(chosen("A", found));
  EXPECT_EQ(chosen("A", found)->name, "17/64");
  EXPECT_FALSE(chosen("A", {})) << "nothing was measured";
  EXPECT_FALSE(chosen("Z", found)) << "there is no such hole";
  part.features[0].drilled()->diameter.reset();
  part.features[0].drilled()->limits.clear();
  EXPECT_FALSE(chosen("A", found)) << "the print gives no size";
  *part.features[0].drilled() = reamed();
  part.mended[0].way = WayOut::bush;
  EXPECT_FALSE(chosen("A", found));
}

// A tapped hole is measured where the thread is: its own tap drill's size is as wanted, and it is
// never opened to the outside of the thread.
TEST(DrawnSize, OfATappedHoleIsWhatIsLeftOfTheThread) {
  Part part;
  Feature hole;
  hole.id = "A";
  Drilled drilled;
  drilled.make = Make::tap;
  drilled.thread = "1/4-20 UNC";
  hole.shape = kind::Hole{drilled};
  part.features.push_back(hole);
  const auto size = drawnSize(part, "A");
  ASSERT_TRUE(size.ok()) << size.error().text;
  // .250 less 1.299038/20, and less half of it.
  EXPECT_NEAR(size->limits.least.toInches(), 0.18505, 1e-5);
  EXPECT_NEAR(size->limits.greatest.toInches(), 0.21752, 1e-5);
  EXPECT_NEAR(size->nominal.toInches(), 0.201, 1e-9) << "#7";
  for (const Thread& thread : threads()) {
    const auto limits = tappedLimits(thread);
    ASSERT_TRUE(limits.has_value()) << thread.name;
    EXPECT_GT(thread.tapDrillDiameter, limits->least) << thread.name;
    EXPECT_LE(thread.tapDrillDiameter, limits->greatest) << thread.name;
    EXPECT_LT(limits->greatest, thread.major) << thread.name;
  }
}

}  // namespace
}  // namespace inchwright
