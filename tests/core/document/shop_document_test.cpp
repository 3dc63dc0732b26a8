#include "core/document/shop_document.h"

#include <gtest/gtest.h>

#include "core/document/document.h"
#include "tests/core/document/document_text.h"

namespace inchwright {
namespace {

constexpr const char* kShop = R"({
  "drills": [
    "fractional 1/16 to 1/2",
    "number",
    {"size": "#7", "stands": "2 1/4", "maker": "ours"}
  ],
  "reamers": [
    {"size": "1/4", "by": "machine"},
    {"size": "3/16", "by": "hand", "length": "2", "stands": "4"}
  ],
  "taps": [
    {"size": "1/4-20 UNC", "lead": "taper"},
    {"size": "2 BA"}
  ],
  "cutters": [
    {"size": "1/4", "flutes": 4, "length": "5/8", "centre_cutting": false, "stands": "1 1/2"}
  ],
  "countersinks": [],
  "counterbores": [
    {"size": "7/16", "pilot": "17/64"}
  ],
  "boring": [
    {"least": "3/8", "greatest": "3", "dial": "slide", "division": "0.0005"}
  ],
  "parallels": [
    {"thick": "1/8", "tall": "1"}
  ],
  "pins": [
    {"ranges": ["0.061 to 0.250", ".2505"], "class": "Z", "sign": "plus"}
  ],
  "vice": {"jaw_width": "4", "jaw_height": "1 1/4", "opens": "3"},
  "reaming": {"machine": [".006", ".018"], "hand": [".001", ".005"]},
  "tapping": {"percent": 65, "least": 50, "greatest": 80},
  "margins": {"around": "1/16", "wall": ".05"},
  "bench": {"colour": 1.10}
}
)";

Shop shopOf(const std::string& json) {
  const auto shop = readShop(json);
  EXPECT_TRUE(shop.ok()) << (shop ? "" : shop.error().place + ": " + shop.error().text);
  return shop ? *shop : Shop{};
}

TEST(ShopDocument, ComesBackAsItStood) {
  EXPECT_EQ(writeShop(shopOf(kShop)), kShop);
  EXPECT_EQ(writeShop(Shop{}), "{}\n");
}

TEST(ShopDocument, SaysWhatIsOwned) {
  const Shop shop = shopOf(kShop);
  ASSERT_TRUE(shop.drills && shop.drills->size() == 3);
  EXPECT_EQ(shop.drills->front().set.drills.size(), 29u);
  EXPECT_EQ((*shop.drills)[2].stands->value, readLength("2.25")->value);
  ASSERT_TRUE(shop.countersinks);
  EXPECT_TRUE(shop.countersinks->empty()) << "none is another thing than nothing said";
  EXPECT_EQ(shop.pins->front().sizes.size(), 191u);
  EXPECT_EQ(shop.tapping->percent, 65);
  EXPECT_FALSE(shopOf("{}").drills);
}

TEST(ShopDocument, TakesOneForAListOfOne) {
  const Shop shop = shopOf(R"({"drills": "letter", "reamers": ["1/4", "3/8"], "taps": ["M3"],
    "boring": {"division": "0.001"}, "pins": "0.061 to 0.250", "cutters": ["1/8"]})");
  EXPECT_EQ(shop.drills->front().set.drills.size(), 26u);
  EXPECT_EQ(shop.reamers->size(), 2u);
  EXPECT_EQ(shop.boring->size(), 1u);
  EXPECT_EQ(shop.pins->front().pinClass, "ZZ");
  EXPECT_EQ(shopOf(writeShop(shop)), shop);
}

TEST(ShopDocument, RefusesWithThePlaceAndTheReason) {
  struct Case {
    const char* json;
    const char* place;
  };
  for (const Case& one : {Case{"[]", ""},
                          {R"({"drills": 7})", "/drills"},
                          {R"({"drills": ["7"]})", "/drills/0"},
                          {R"({"drills": [null]})", "/drills/0"},
                          {R"({"drills": [{"stands": "1"}]})", "/drills/0"},
                          {R"({"drills": [{"size": "seven"}]})", "/drills/0/size"},
                          {R"({"reamers": ["-1/4"]})", "/reamers/0/size"},
                          {R"({"reamers": [{"size": "1/4", "by": "foot"}]})", "/reamers/0/by"},
                          {R"({"taps": [{"size": "a quarter"}]})", "/taps/0/size"},
                          {R"({"taps": [{"size": "M3", "lead": "plug"}]})", "/taps/0/lead"},
                          {R"({"cutters": [{"size": "0"}]})", "/cutters/0/size"},
                          {R"({"cutters": [{"size": "1/4", "flutes": -2}]})", "/cutters/0/flutes"},
                          {R"({"boring": {"least": "2", "greatest": "1"}})", "/boring/0/greatest"},
                          {R"({"boring": {"division": "0"}})", "/boring/0/division"},
                          {R"({"boring": {"dial": "radius"}})", "/boring/dial"},
                          {R"({"parallels": [{"thick": "1/8"}]})", "/parallels/0"},
                          {R"({"pins": "0.25 to 0.1"})", "/pins"},
                          {R"({"pins": {"ranges": "0.1 to 0.2", "class": "Q"}})", "/pins/0/class"},
                          {R"({"pins": {"class": "Z"}})", "/pins"},
                          {R"({"vice": {"jaw_height": "-1"}})", "/vice/jaw_height"},
                          {R"({"vice": []})", "/vice"},
                          {R"({"reaming": {"machine": [".006"]}})", "/reaming/machine"},
                          {R"({"reaming": {"hand": ["0", ".006"]}})", "/reaming/hand/0"},
                          {R"({"reaming": {"hand": [".005", ".001"]}})", "/reaming/hand/1"},
                          {R"({"tapping": {"percent": 90}})", "/tapping"},
                          {R"({"tapping": {"percent": "70"}})", "/tapping/percent"},
                          {R"({"margins": {"wall": "-1/32"}})", "/margins/wall"}}) {
    const auto shop = readShop(one.json);
    ASSERT_FALSE(shop.ok()) << one.json;
    EXPECT_EQ(shop.error().place, one.place) << one.json;
    EXPECT_FALSE(shop.error().text.empty());
  }
}

TEST(ShopDocument, StandsInTheDocument) {
  const std::string plate = frontPlateText();
  const std::string owned = with(plate, "\"parts\"", R"("shop": {"drills": ["number"]}, "parts")");
  const auto job = readDocument(owned);
  ASSERT_TRUE(job.ok()) << job.error().text;
  EXPECT_EQ(job->shop.drills->front().set.drills.size(), 80u);
  const auto again = readDocument(writeDocument(*job));
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(*again, *job);
  const std::string hostile = with(plate, "\"parts\"", R"("shop": {"taps": ["?"]}, "parts")");
  EXPECT_EQ(readDocument(hostile).error().place, "/shop/taps/0/size");
}

TEST(ShopDocument, TheDocumentsMemberWins) {
  const Shop document = shopOf(R"({"drills": ["number"], "taps": []})");
  const Shop user = shopOf(R"({"drills": ["letter"], "reamers": ["1/4"], "vice": {"opens": "4"}})");
  const Shop both = shopFor(document, user);
  EXPECT_EQ(both.drills, document.drills);
  EXPECT_EQ(both.taps, document.taps);
  EXPECT_EQ(both.reamers, user.reamers);
  EXPECT_EQ(both.vice, user.vice);
}

constexpr const char* kHolding =
    R"("parallels": [{"jaw": "fixed", "thick": "1/8", "tall": "1", "gap": "0"},
  {"jaw": "moving", "thick": "1/8", "tall": "1", "gap": "1/4", "from": "1/2", "to": "2", "mine": 1}],
  "clamps": [{"x": ["0", "1/2"], "y": ["-1/4", "1"], "tall": "1/2"}], "clear_of": [{"x": ["1", "2"]}],
  "overhang": {"left": "1/4", "near": true}, "pieces": [{"name": "1", "x": "2.13", "y": "1.5"}], )";

TEST(HoldingDocument, ComesBackAsItStood) {
  const std::string text =
      with(with(frontPlateText(), "\"zero\": {", std::string(kHolding) + "\"zero\": {"),
           "\"finder\": \"0.200\"",
           R"("finder": "0.200", "travel": {"x": "12", "y": "5", "a": 1},
      "quill": "3", "column": "round", "speeds": [180, 560, 1400], "rotary_counts": "clockwise")");
  const auto job = readDocument(text);
  ASSERT_TRUE(job.ok()) << job.error().place << ": " << job.error().text;
  const auto& setup = job->parts[0].setups[0];
  ASSERT_TRUE(setup.held.parallels && setup.held.parallels->size() == 2);
  EXPECT_EQ((*setup.held.parallels)[1].jaw, Jaw::moving);
  EXPECT_EQ(setup.held.clamps[0].along[1]->first.value, readLength("-1/4")->value);
  EXPECT_EQ(setup.held.pieces[0].name, "1");
  EXPECT_EQ(job->machine.speeds, (std::vector<int>{180, 560, 1400}));
  EXPECT_EQ(job->machine.column, Column::round);
  EXPECT_EQ(job->machine.rotaryCounts, Sense::clockwise);
  const std::string written = writeDocument(*job);
  const auto again = readDocument(written);
  ASSERT_TRUE(again.ok()) << again.error().place << ": " << again.error().text;
  EXPECT_EQ(*again, *job);
  EXPECT_EQ(writeDocument(*again), written);
}

TEST(HoldingDocument, RefusesWithThePlaceAndTheReason) {
  struct Case {
    const char* member;
    const char* place;
  };
  for (const Case& one :
       {Case{R"("parallels": {})", "/parallels"},
        {R"("parallels": [{"thick": "1/8"}])", "/parallels/0"},
        {R"("parallels": [{"thick": "0", "tall": "1"}])", "/parallels/0/thick"},
        {R"("parallels": [{"thick": "1/8", "tall": "1", "gap": "-1"}])", "/parallels/0/gap"},
        {R"("parallels": [{"thick": "1/8", "tall": "1", "jaw": "left"}])", "/parallels/0/jaw"},
        {R"("parallels": [{"thick": "1/8", "tall": "1", "from": "2", "to": "1"}])",
         "/parallels/0/to"},
        {R"("clamps": [{}])", "/clamps/0"},
        {R"("clamps": [{"x": ["1"]}])", "/clamps/0/x"},
        {R"("clamps": [{"x": ["1", 2]}])", "/clamps/0/x/1"},
        {R"("clamps": [{"x": ["2", "1"]}])", "/clamps/0/x"},
        {R"("clear_of": [{"z": ["0", "1"]}])", "/clear_of/0/z"},
        {R"("overhang": {"left": "-1"})", "/overhang/left"},
        {R"("pieces": [{"x": "1"}])", "/pieces/0/name"},
        {R"("pieces": [{"name": "1", "x": "0"}])", "/pieces/0/x"},
        {R"("pieces": [{"name": "1"}, {"name": "1"}])", "/pieces/1/name"}}) {
    const auto job = readDocument(
        with(frontPlateText(), "\"zero\": {", std::string(one.member) + ", \"zero\": {"));
    ASSERT_FALSE(job.ok()) << one.member;
    EXPECT_EQ(job.error().place, std::string("/parts/0/setups/0") + one.place) << one.member;
  }
  for (const Case& one : {Case{R"("travel": {"x": "0"})", "/travel/x"},
                          {R"("travel": [1])", "/travel"},
                          {R"("quill": "-1")", "/quill"},
                          {R"("column": "square")", "/column"},
                          {R"("speeds": [0])", "/speeds/0"},
                          {R"("speeds": [1.5])", "/speeds/0"},
                          {R"("speeds": ["180"])", "/speeds/0"},
                          {R"("rotary_counts": "left")", "/rotary_counts"}}) {
    const auto job = readDocument(
        with(frontPlateText(), "\"finder\": ", std::string(one.member) + ", \"finder\": "));
    ASSERT_FALSE(job.ok()) << one.member;
    EXPECT_EQ(job.error().place, std::string("/machine") + one.place) << one.member;
  }
}

}  // namespace
}  // namespace inchwright
