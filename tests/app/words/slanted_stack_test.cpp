// Stacks through places that centre distances and angles hold, and straight from place to place.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

using nlohmann::json;
using Texts = std::vector<std::string>;

// C stands 2.5 from A at 60°: what places it are a distance and an angle.
nlohmann::ordered_json slantedPlate() {
  return nlohmann::ordered_json::parse(R"json({
    "inchwright": 1,
    "machine": {"unit": "in", "step": "0.0005"},
    "parts": [{
      "name": "Plate",
      "general": {"angles": "1/2"},
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
        {"id": "A", "kind": "hole", "diameter": "1/4"},
        {"id": "C", "kind": "hole", "diameter": "1/4", "traced": ["2.25", "3.17"]}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "A", "text": "1.000 ±.001"},
        {"id": "r2", "axis": "y", "from": "F", "to": "A", "text": "1.000 ±.001"},
        {"id": "d", "kind": "centres", "from": "A", "to": "C", "text": "2.500 ±.002"},
        {"id": "w", "kind": "angle", "from": "A", "to": "C", "text": "60"}
      ],
      "setups": [{"name": "1", "face": "top", "zero": {"x": {"at": "L"}, "y": {"at": "F"}}}]
    }],
    "gaps": [{"name": "depth", "least": "2.4975", "greatest": "2.5025", "members": [
      {"part": "Plate", "axis": "centres", "from": "A", "to": "C", "sign": "+"}]}]
})json");
}

Spoken slanted(const Texts& options) {
  const Scratch scratch;
  Texts args{"stack", scratch.write("plate.inchwright", slantedPlate().dump())};
  args.insert(args.end(), options.begin(), options.end());
  return say(args);
}

TEST(SlantedStack, SlantedMembersSayHowMuchAndWhichWay) {
  const Texts call{"--from", "L", "--to", "C", "--axis", "x", "--json"};
  const json all = slanted(call).json();
  EXPECT_EQ(all["nominal"], "2.2500");
  ASSERT_EQ(all["members"].size(), 3u);
  EXPECT_EQ(all["members"][0]["reading"], "r1");
  EXPECT_EQ(all["members"][0]["factor"], "+");
  EXPECT_EQ(all["members"][1]["reading"], "d");
  EXPECT_EQ(all["members"][1]["factor"], "+1/2");
  const json& swing = all["members"][2];
  EXPECT_EQ(swing["reading"], "w");
  EXPECT_EQ(swing["sign"], -1);
  EXPECT_NEAR(swing["factor"].get<double>(), 2.5 * std::sqrt(0.75) * 3.14159265 / 180, 1e-6);
  EXPECT_EQ(swing["plus"], "0.5");
  EXPECT_EQ(swing["minus"], "0.5");
  EXPECT_FALSE(swing.contains("plus_ticks"));
  const Spoken lines = slanted({"--from", "L", "--to", "C", "--axis", "x"});
  EXPECT_NE(lines.out.find("-0.0378/°"), std::string::npos) << lines.out;
  EXPECT_NE(lines.out.find("+0.5°"), std::string::npos) << lines.out;
  EXPECT_NE(lines.out.find(" -0.5°"), std::string::npos) << lines.out;
}

TEST(SlantedStack, StraightFromCentreToCentre) {
  const Texts call{"--from", "A", "--to", "C", "--axis", "centres"};
  Texts asJson = call;
  asJson.insert(asJson.end(), {"--json", "--from-zero", "1", "--held", ".001"});
  const json all = slanted(asJson).json();
  EXPECT_EQ(all["axis"], "centres");
  EXPECT_EQ(all["worst"], json({"2.4980", "2.5020"}));
  // As made: two coordinates each way, each ±.001: 2 (cos 60° + sin 60°) thou.
  EXPECT_EQ(all["from_zero"]["members"].size(), 4u);
  EXPECT_NEAR(all["from_zero"]["worst_ticks"][1].get<double>() - 6.35e9,
              2 * (0.5 + std::sqrt(0.75)) * 2'540'000, 50);
  const Spoken lines = slanted(call);
  EXPECT_NE(lines.out.find("A to C, straight: 2.5000"), std::string::npos) << lines.out;
  const Spoken gap = slanted({"--gap", "depth"});
  EXPECT_EQ(gap.status, 0) << gap.err << gap.out;
  EXPECT_NE(gap.out.find("2.4980 to 2.5020"), std::string::npos) << gap.out;
}

}  // namespace
}  // namespace inchwright::app
