// The sum behind a figure.

#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

TEST(WhyWord, AddsUpFromZeroToTheFigure) {
  const Scratch scratch;
  const std::string file = scratch.write("plate.inchwright", soundPlate());
  // Zero at L, turned by a quarter: the part's x runs along the machine's Y.
  const Spoken spoken =
      say({"why", file, "--place", "B", "--axis", "x", "--setup", "turned", "--json"});
  EXPECT_EQ(spoken.status, 0) << spoken.err;
  const auto why = spoken.json()["why"][0];
  EXPECT_EQ(why["axis"], "x");
  EXPECT_EQ(why["value"], "1.5625");
  ASSERT_EQ(why["steps"].size(), 2u) << why;
  EXPECT_EQ(why["steps"][0]["reading"], "r1");
  EXPECT_EQ(why["steps"][0]["text"], "3/8");
  EXPECT_EQ(why["steps"][1]["reading"], "r2");
  EXPECT_EQ(why["steps"][1]["adds"], "1.1875");
  EXPECT_EQ(why["steps"][1]["running_ticks"], why["value_ticks"]);
  EXPECT_EQ(why["rounding_ticks"], 0);
}

TEST(WhyWord, BeginsAtAMiddle) {
  const Scratch scratch;
  const std::string file = scratch.write("plate.inchwright", soundPlate());
  const auto all = say({"why", file, "--place", "A", "--setup", "1", "--json"}).json()["why"];
  ASSERT_EQ(all.size(), 2u);
  // 3/8 from the left side of 2 in: 5/8 left of the middle. Along y zero is on A itself.
  EXPECT_EQ(all[0]["value"], "-0.6250");
  EXPECT_EQ(all[0]["steps"].back()["running"], "-0.6250");
  EXPECT_EQ(all[0]["steps"][0]["adds"], "-1.0000");
  EXPECT_EQ(all[1]["value"], "0.0000");
  EXPECT_EQ(all[1]["steps"], nlohmann::json::array()) << "there, and without a step";
  const std::string words = say({"why", file, "--place", "A", "--setup", "1"}).out;
  EXPECT_NE(words.find("A along x: -0.6250"), std::string::npos) << words;
}

TEST(WhyWord, TellsTheTriangleOfAPlaceHeldByCentreDistances) {
  const Scratch scratch;
  const std::string file = scratch.write("plate.inchwright", R"({"inchwright": 1, "parts": [{
    "name": "Plate",
    "features": [
      {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
      {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
      {"id": "A", "kind": "hole", "diameter": "1/4"},
      {"id": "B", "kind": "hole", "diameter": "1/4"},
      {"id": "C", "kind": "hole", "diameter": "1/8", "traced": ["1", "2.1"]}],
    "readings": [
      {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1/2"},
      {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "1/2"},
      {"id": "r3", "axis": "x", "from": "A", "to": "B", "text": "3"},
      {"id": "r4", "kind": "centres", "from": "A", "to": "C", "text": "1 1/2"},
      {"id": "r5", "kind": "centres", "from": "B", "to": "C", "text": "2.598"}],
    "understood": [{"kind": "in_line", "axis": "y", "of": ["A", "B"], "stated": true}]}]})");
  const Spoken spoken = say({"why", file, "--place", "C", "--axis", "y", "--json"});
  ASSERT_EQ(spoken.status, 0) << spoken.err;
  const auto why = spoken.json()["why"][0];
  EXPECT_EQ(why["steps"].back()["understood"],
            "by 1 1/2 from A straight to C and 2.598 from B straight to C");
  const auto held = why["held"][0];
  EXPECT_EQ(held["place"], "C");
  EXPECT_EQ(held["readings"], nlohmann::json({"r4", "r5"}));
  // 1 1/2 and 3 √3 / 2 over 3: half an equilateral triangle, to a thou.
  EXPECT_NEAR(held["ends"][0]["angle"].get<double>(), 60, 0.02);
  EXPECT_NEAR(held["ends"][1]["angle"].get<double>(), 150, 0.02);
  EXPECT_EQ(held["ends"][1]["distance"], "2.5980");
  ASSERT_EQ(held["others"].size(), 1u);
  EXPECT_EQ(held["others"][0]["x"], held["at"]["x"]);
  const std::string words = say({"why", file, "--place", "C"}).out;
  EXPECT_NE(words.find("; the tracing shows this one."), std::string::npos) << words;
}

TEST(WhyWord, RefusesInOneLine) {
  const Scratch scratch;
  const std::string file = scratch.write("plate.inchwright", kClashingPlate);
  EXPECT_EQ(say({"why", file}).status, 2);
  EXPECT_EQ(say({"why", file, "--place", "Q"}).status, 2);
  EXPECT_EQ(say({"why", file, "--place", "C"}).status, 2);  // loose along y
  EXPECT_EQ(say({"why", file, "--place", "A", "--axis", "z"}).status, 2);
  // Its loop does not close.
  EXPECT_EQ(say({"why", file, "--place", "B", "--axis", "x"}).status, 1);
}

}  // namespace
}  // namespace inchwright::app
