#include <gtest/gtest.h>

#include "tests/app/words/spoken.h"

namespace inchwright::app {
namespace {

// A bar with two round ends, and how each is cut.
constexpr const char* kBar = R"({"inchwright":1,
"job":{"title":"","print":"","unit":"in","notes":""},
"machine":{"unit":"in","step":"0.0005","x_counts":"right","y_counts":"away"},
"parts":[{"name":"Bar","quantity":1,"material":"brass","features":[
{"id":"F","kind":"edge","axis":"y","side":"front"},{"id":"K","kind":"edge","axis":"y","side":"back"},
{"id":"A","kind":"hole","face":"top","diameter":"1/4","make":"drill","depth":"through"},
{"id":"B","kind":"hole","face":"top","diameter":"1/4","make":"drill","depth":"through"},
{"id":"C","kind":"hole","face":"top","diameter":"1/8","make":"drill","depth":"through"},
{"id":"D","kind":"round","face":"top","radius":"3/8","about":"A","side":"left"},
{"id":"E","kind":"round","face":"top","radius":"3/8","about":"B","side":"right"}],
"readings":[{"id":"r1","axis":"x","from":"A","to":"B","text":"1 1/2"},
{"id":"r2","axis":"y","from":"F","to":"K","text":"3/4"},
{"id":"r3","kind":"centres","from":"A","to":"C","text":".800"},
{"id":"r4","kind":"centres","from":"B","to":"C","text":".750"}],
"understood":[{"kind":"midway","axis":"y","of":"A","between":["F","K"],"stated":true},
{"kind":"in_line","axis":"y","of":["A","B"],"stated":true}],
"setups":[{"name":"1","face":"top","turn":0,"zero":{"x":{"at":"A"},"y":{"at":"A"}},
"curves":[{"of":"D","way":"rotary","cutter":"1/2","overrun":5},
{"of":"E","way":"points","cutter":"1/4","count":3},
{"of":"E","way":"filing_buttons"}]}]}]})";

std::string barFile(Scratch& scratch) {
  return scratch.write("bar.inchwright", kBar);
}

// A word that draws on a print in doubt says so, and one that finds nothing says that.
TEST(OutlineWord, NothingIsToldInSilence) {
  Scratch scratch;
  std::string open(kBar);
  const std::string sides = R"({"id":"r2","axis":"y","from":"F","to":"K","text":"3/4"},)";
  open.erase(open.find(sides), sides.size());
  const Spoken outline = say({"outline", scratch.write("open.inchwright", open)});
  EXPECT_EQ(outline.status, 1);
  EXPECT_NE(outline.out.find("Bar, top: no outline"), std::string::npos) << outline.out;
  const std::string sound = INCHWRIGHT_SOURCE_DIR "/samples/front_plate.inchwright";
  for (const char* word : {"outline", "table", "plan", "curve"}) {
    // The bar has two answers for C, and none is chosen.
    EXPECT_NE(say({word, barFile(scratch)}).out.find("DRAFT: Bar is still in doubt"),
              std::string::npos)
        << word;
    EXPECT_EQ(say({word, sound}).out.find("DRAFT"), std::string::npos) << word;
  }
  const Spoken curve = say({"curve", sound});
  EXPECT_EQ(curve.status, 0) << curve.err;
  EXPECT_NE(curve.out.find("no round or arc is asked to be cut"), std::string::npos) << curve.out;
}

TEST(OutlineWord, TellsCornersRadiiAndWalls) {
  Scratch scratch;
  const Spoken spoken = say({"outline", barFile(scratch), "--json"});
  EXPECT_EQ(spoken.status, 0) << spoken.err;
  const auto outline = spoken.json()["outlines"][0];
  EXPECT_EQ(outline["closed"], true);
  EXPECT_EQ(outline["from"], (nlohmann::json{"A", "F"}));
  EXPECT_EQ(outline["follows"].size(), 4U);
  const auto end = outline["follows"][1];
  EXPECT_EQ(end["id"], "E");
  EXPECT_EQ(end["centre"], (nlohmann::json{"1.5000", "0.3750"}));
  EXPECT_EQ(end["radius_ticks"], 952'500'000);
  EXPECT_EQ(end["sense"], "anticlockwise");
  EXPECT_EQ(outline["area"], "1.566786");  // 1 1/2 by 3/4 and a disc of 3/4
  EXPECT_EQ(outline["extents"][0], (nlohmann::json{"-0.3750", "0.0000"}));
  EXPECT_EQ(outline["thinnest"][0]["place"], "A");
  EXPECT_EQ(outline["thinnest"][0]["wall"], "0.2500");
}

// How much metal is left between a hole and the edge: a hole as wide as its place allows touches
// the edge and still does not break out of it. 3/8 from the front less half of each diameter.
TEST(OutlineWord, TellsAWallFromWhatBreaksOut) {
  for (const auto& [diameter, told] : {std::pair{"1/2", "A leaves a wall of 0.1250 beside F"},
                                       {"3/4", "A leaves a wall of 0.0000 beside F"},
                                       {"7/8", "A breaks out by 0.0625 beside F"}}) {
    Scratch scratch;
    std::string bar(kBar);
    bar.replace(bar.find("1/4"), 3, diameter);
    const Spoken spoken = say({"outline", scratch.write("wall.inchwright", bar)});
    EXPECT_NE(spoken.out.find(told), std::string::npos) << told << "\n" << spoken.out;
  }
}

TEST(OutlineWord, RefusesWhatIsNoFace) {
  Scratch scratch;
  const Spoken spoken = say({"outline", barFile(scratch), "--face", "inside"});
  EXPECT_EQ(spoken.status, 2);
  EXPECT_TRUE(spoken.out.empty());
}

TEST(CurveWord, TellsDialPointsAndButtons) {
  Scratch scratch;
  const Spoken spoken = say({"curve", barFile(scratch), "--json"});
  EXPECT_EQ(spoken.status, 1) << "an overrun into the metal, and points too far apart";
  const auto curves = spoken.json()["curves"];
  ASSERT_EQ(curves.size(), 3U);
  EXPECT_EQ(curves[0]["spindle"], "0.6250");
  EXPECT_EQ(curves[0]["start_deg"], 270);
  EXPECT_EQ(curves[0]["end_deg"], 90);
  EXPECT_EQ(curves[0]["table_turns"], "clockwise");
  EXPECT_EQ(curves[0]["findings"][0]["code"], "overrun");
  EXPECT_EQ(curves[1]["points"].size(), 3U);
  EXPECT_EQ(curves[1]["points"][1], (nlohmann::json{"2.0000", "0.0000"}));
  EXPECT_EQ(curves[1]["ridge"], nullptr);
  EXPECT_EQ(curves[2]["buttons"]["outside"], "0.7500");
  EXPECT_EQ(curves[2]["buttons"]["bore"], "0.2500");
}

// The left end begins a quarter turn on; turned with the work it goes round the dial, over 0.
TEST(CurveWord, TheDialFollowsTheTurnOfTheWork) {
  Scratch scratch;
  for (const auto& [turn, start, end] :
       {std::tuple{"0", 270, 90}, {"90", 180, 0}, {"180", 90, 270}, {"270", 0, 180}}) {
    std::string bar(kBar);
    bar.replace(bar.find("\"turn\":0") + 7, 1, turn);
    const Spoken spoken = say({"curve", scratch.write("turned.inchwright", bar), "--json"});
    const auto curve = spoken.json()["curves"][0];
    EXPECT_EQ(curve["start_deg"], start) << turn;
    EXPECT_EQ(curve["end_deg"], end) << turn;
    EXPECT_EQ(spoken.out.find("_deg\": -"), std::string::npos) << turn << ": no nought has a sign";
  }
}

TEST(CurveWord, AskedForByItsIdItNeedsNoSetting) {
  Scratch scratch;
  const Spoken spoken =
      say({"curve", barFile(scratch), "--of", "D", "--way", "rotary", "--cutter", "1/4", "--json"});
  EXPECT_EQ(spoken.json()["curves"].size(), 1u);
  EXPECT_EQ(spoken.json()["curves"][0]["of"], "D");
  EXPECT_EQ(spoken.json()["curves"][0]["spindle"], "0.5000");
  EXPECT_EQ(say({"curve", barFile(scratch), "--of", "A"}).status, 2);
  EXPECT_EQ(say({"curve", barFile(scratch), "--cutter", "0"}).status, 2);
  EXPECT_EQ(say({"curve", barFile(scratch), "--way", "lathe"}).status, 2);
}

TEST(CheckWord, NamesBothAnswersOfAPlaceInDoubt) {
  Scratch scratch;
  const Spoken spoken = say({"check", barFile(scratch), "--json"});
  EXPECT_EQ(spoken.status, 1);
  const auto part = spoken.json()["parts"][0];
  const auto queries = part["queries"];
  const auto found = std::find_if(queries.begin(), queries.end(),
                                  [](const auto& one) { return one["kind"] == "two_answers"; });
  ASSERT_NE(found, queries.end());
  EXPECT_EQ((*found)["place"], "C");
  EXPECT_EQ((*found)["answers"].size(), 2U);
  EXPECT_EQ((*found)["answers_ticks"][0][0], (*found)["answers_ticks"][1][0]);
}

}  // namespace
}  // namespace inchwright::app
