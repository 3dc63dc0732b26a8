#include "core/making/found_size.h"

#include <gtest/gtest.h>

#include "core/shop/gauge_pins.h"

namespace inchwright {
namespace {

constexpr std::int64_t kMillionth = 2540;

Length millionths(std::int64_t count) {
  return Length::ticks(count * kMillionth);
}

Lettered sized(std::string_view text) {
  return readLength(text).value();
}

MadePlace measured(std::string_view size, std::string_view error = {}) {
  MadePlace made;
  made.size = sized(size);
  if (!error.empty()) made.with = Instrument{"gauge", sized(error), {}};
  return made;
}

FoundSize from(std::int64_t least, std::int64_t greatest) {
  return {millionths(least), millionths(greatest)};
}

// Gaugemakers' tolerances of ASME B89.1.5, millionths of an inch. The row up to .825 agrees between
// two lists (but for Y); the others are from memory.
TEST(GaugePins, StandAsListed) {
  struct Row {
    const char* size;
    std::int64_t xx, x, y, z, zz;
  };
  for (const Row& row :
       {Row{".0110", 20, 40, 70, 100, 200}, Row{".825", 20, 40, 70, 100, 200},
        Row{".8251", 30, 60, 90, 120, 240}, Row{"1.510", 30, 60, 90, 120, 240},
        Row{"2.510", 40, 80, 120, 160, 320}, Row{"4.510", 50, 100, 150, 200, 400}}) {
    const Length size = sized(row.size).value;
    EXPECT_EQ(gaugePinTolerance("XX", size).value(), millionths(row.xx)) << row.size;
    EXPECT_EQ(gaugePinTolerance("x", size).value(), millionths(row.x)) << row.size;
    EXPECT_EQ(gaugePinTolerance("Y", size).value(), millionths(row.y)) << row.size;
    EXPECT_EQ(gaugePinTolerance("z", size).value(), millionths(row.z)) << row.size;
    EXPECT_EQ(gaugePinTolerance("zZ", size).value(), millionths(row.zz)) << row.size;
  }
  EXPECT_EQ(gaugePinTolerance("V", sized("1/4").value).error().code, ErrorCode::badText);
  EXPECT_EQ(gaugePinTolerance("", sized("1/4").value).error().code, ErrorCode::badText);
  EXPECT_EQ(gaugePinTolerance("Z", sized("4.511").value).error().code, ErrorCode::notFound);
  EXPECT_EQ(gaugePinTolerance("Z", Length()).error().code, ErrorCode::notFound);
}

TEST(FoundSize, IsTheMeasuredOneWithItsError) {
  EXPECT_EQ(foundSize(measured(".2518", ".0003"), {}).value(), from(251500, 252100));
  EXPECT_EQ(foundSize(measured(".2518"), {}).value(), from(251800, 251800));
  EXPECT_EQ(foundSize({}, {}).value(), FoundSize{});
}

// A go end that enters: hole at least the pin; a not-go that does not: hole smaller than the pin
// (case 63 of the published ones). A minus ZZ pin .2500 measures .2498 to .2500, a plus one .2500
// to .2502 (shop pages; two lists agree).
TEST(FoundSize, FollowsFromPins) {
  MadePlace made;
  made.go = TriedPin{sized(".2500"), "ZZ", PinSign::minus, {}};
  made.noGo = TriedPin{sized(".2510"), "ZZ", PinSign::plus, {}};
  EXPECT_EQ(foundSize(made, {}).value(), from(249800, 251200));
  made.go->sign = PinSign::plus;
  made.noGo->sign = PinSign::minus;
  EXPECT_EQ(foundSize(made, {}).value(), from(250000, 251000));
  made.noGo.reset();
  EXPECT_EQ(foundSize(made, {}).value(), (FoundSize{millionths(250000), std::nullopt}));
}

TEST(FoundSize, TakesClassAndSignFromTheOwnedPins) {
  MadePlace made;
  made.go = TriedPin{sized(".2500"), "", std::nullopt, {}};
  EXPECT_EQ(foundSize(made, {"X", PinSign::minus}).value().least, millionths(249960));
  // Nothing said: the widest class, and to either side.
  EXPECT_EQ(foundSize(made, {}).value().least, millionths(249800));
  made.go->pinClass = "no such";
  EXPECT_EQ(foundSize(made, {"X", PinSign::minus}).value().least, millionths(249600));
}

TEST(FoundSize, HoldsBothAndLeavesAllWhereTheyContradict) {
  MadePlace made = measured(".2505", ".0005");
  made.go = TriedPin{sized(".2503"), "Z", PinSign::plus, {}};
  EXPECT_EQ(foundSize(made, {}).value(), from(250300, 251000));
  made.go->size = sized(".2520");
  EXPECT_EQ(foundSize(made, {}).value(), from(250000, 252000));
  // A not-go end, which Z leaves .0001 to: within what was measured, over it, and under it.
  made = measured(".2505", ".0005");
  made.noGo = TriedPin{sized(".2507"), "Z", PinSign::plus, {}};
  EXPECT_EQ(foundSize(made, {}).value(), from(250000, 250800));
  made.noGo->size = sized(".2510");
  EXPECT_EQ(foundSize(made, {}).value(), from(250000, 251000));
  made.noGo->size = sized(".2499");
  EXPECT_EQ(foundSize(made, {}).value(), from(250000, 250000)) << "they just meet";
  made.noGo->size = sized(".2490");
  EXPECT_EQ(foundSize(made, {}).value(), from(249100, 251000));
  // An instrument's error is the same whichever way it is written.
  EXPECT_EQ(foundSize(measured(".2505", "-.0005"), {}).value(), from(250000, 251000));
}

TEST(FoundSize, TakesTheFirstSetOfPinsForTheHabit) {
  EXPECT_EQ(pinHabit({}).pinClass, "");
  EXPECT_FALSE(pinHabit({}).sign);
  Shop shop;
  shop.pins.emplace();
  EXPECT_FALSE(pinHabit(shop).sign);
  shop.pins->push_back({});
  shop.pins->front().pinClass = "X";
  shop.pins->front().sign = PinSign::plus;
  shop.pins->push_back({});
  EXPECT_EQ(pinHabit(shop).pinClass, "X");
  EXPECT_EQ(pinHabit(shop).sign, PinSign::plus);
}

TEST(Verdict, SaysWhereAllOfItLies) {
  const FoundSize wanted = from(250000, 250500);
  EXPECT_EQ(verdictOf(from(250000, 250500), wanted), Verdict::in);
  EXPECT_EQ(verdictOf(from(250501, 250600), wanted), Verdict::over);
  EXPECT_EQ(verdictOf(from(249000, 249999), wanted), Verdict::under);
  EXPECT_EQ(verdictOf(from(249999, 250100), wanted), Verdict::cannotTell);
  EXPECT_EQ(verdictOf(from(250100, 250501), wanted), Verdict::cannotTell);
  EXPECT_EQ(verdictOf({}, wanted), Verdict::notMeasured);
  EXPECT_EQ(verdictOf({millionths(250100), std::nullopt}, wanted), Verdict::cannotTell);
  EXPECT_EQ(verdictOf({millionths(250501), std::nullopt}, wanted), Verdict::over);
  EXPECT_EQ(verdictOf({std::nullopt, millionths(249999)}, wanted), Verdict::under);
  EXPECT_EQ(verdictOf({millionths(250100), std::nullopt}, {millionths(250000), std::nullopt}),
            Verdict::in);
  EXPECT_EQ(nameOf(Verdict::offPlace), "off_place");
}

}  // namespace
}  // namespace inchwright
