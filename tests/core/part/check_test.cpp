#include "core/part/check.h"

#include <gtest/gtest.h>

#include <functional>
#include <random>
#include <set>
#include <string>

#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

using Change = std::function<void(Part&)>;

struct BadRow {
  const char* place;
  const char* says;  ///< words the advice must hold
  Change change;
};

void expectBad(const BadRow& row) {
  SCOPED_TRACE(std::string(row.place) + ": " + row.says);
  Part part = samplePart();
  row.change(part);
  const Result<Done> result = checkPart(part);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().code, ErrorCode::badDocument);
  EXPECT_EQ(result.error().place, row.place);
  EXPECT_NE(result.error().text.find(row.says), std::string::npos) << result.error().text;
  EXPECT_EQ(result.error().text.find('\n'), std::string::npos);
}

TEST(CheckPart, TheSampleIsSound) {
  const Result<Done> result = checkPart(samplePart());
  EXPECT_TRUE(result.ok()) << result.error().place << ": " << result.error().text;
}

TEST(CheckPart, Heading) {
  const BadRow rows[] = {
      {"/name", "name", [](Part& p) { p.name.clear(); }},
      {"/quantity", "1 or more", [](Part& p) { p.quantity = 0; }},
      {"/hand", "left", [](Part& p) { p.hand = "both"; }},
      {"/general/fractions", "sign",
       [](Part& p) { p.general.fractions = sixtyFourths(-1, "-1/64"); }},
      {"/general/two_places", "sign", [](Part& p) { p.general.twoPlaces = sixtyFourths(-1, "-"); }},
      {"/general/three_places", "sign",
       [](Part& p) { p.general.threePlaces = sixtyFourths(-1, "-"); }},
      {"/general/angles", "sign",
       [](Part& p) {
         p.general.angles = LetteredAngle{"-1", Angle::degrees(-1), {}, false};
       }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, Ids) {
  const BadRow rows[] = {
      {"/features/4/id", "1 to 64", [](Part& p) { p.features[4].id.clear(); }},
      {"/features/4/id", "1 to 64", [](Part& p) { p.features[4].id = std::string(65, 'A'); }},
      {"/features/4/id", "control", [](Part& p) { p.features[4].id = "A\n"; }},
      {"/features/4/id", "blanks", [](Part& p) { p.features[4].id = " A"; }},
      {"/features/4/id", "1 to 64", [](Part& p) { p.features[4].id = "A\xE2\x80\x8B"; }},
      {"/features/4/id", "1 to 64", [](Part& p) { p.features[4].id = "A\xC2\xA0"; }},
      {"/features/4/id", "1 to 64",
       [](Part& p) {
         p.features[4].id =
             "\xE2\x80\xAE"
             "A";
       }},
      {"/features/5/id", "looks like `A`", [](Part& p) { p.features[5].id = "\xD0\x90"; }},
      {"/features/5/id", "twice", [](Part& p) { p.features[5].id = "A"; }},
      {"/features/4/id", "hole or end of `G`", [](Part& p) { p.features[4].id = "G3"; }},
      {"/features/13/id", "hole or end of `G`", [](Part& p) { p.features[13].id = "G3"; }},
      {"/features/13/id", "hole or end of `S`", [](Part& p) { p.features[13].id = "S2"; }},
      {"/readings/1/id", "twice", [](Part& p) { p.readings[1].id = "r1"; }},
      {"/readings/1/id", "1 to 64", [](Part& p) { p.readings[1].id.clear(); }},
      {"/setups/1/name", "twice", [](Part& p) { p.setups.push_back(p.setups[0]); }},
      {"/setups/1/name", "as it looks",
       [](Part& p) {
         p.setups.push_back(p.setups[0]);
         p.setups[1].name += " \xE2\x80\x8B";
       }},
      {"/setups/0/name", "name", [](Part& p) { p.setups[0].name.clear(); }},
      {"/made/0/no_go", "no smaller",
       [](Part& p) {
         p.made.resize(1);
         p.made[0].go.emplace().size = *readLength(".2501");
         p.made[0].noGo.emplace().size = *readLength(".2500");
       }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, FeaturesByKind) {
  const BadRow rows[] = {
      {"/features/0/side", "left side",
       [](Part& p) { p.features[0].as<kind::Edge>()->axis = Axis::y; }},
      {"/features/2/side", "across z",
       [](Part& p) { p.features[2].as<kind::Edge>()->side = Side::top; }},
      {"/features/7", "a slot needs",
       [](Part& p) { p.features[7].as<kind::Slot>()->axis.reset(); }},
      {"/features/7/axis", "lie in the top",
       [](Part& p) { p.features[7].as<kind::Slot>()->axis = Axis::z; }},
      {"/features/9/axis", "lie in the front", [](Part& p) { p.features[9].face = Face::front; }},
      {"/features/8/holes", "`holes`", [](Part& p) { p.features[8].as<kind::Ring>()->holes = 0; }},
      {"/features/8/holes", "1000", [](Part& p) { p.features[8].as<kind::Ring>()->holes = 1001; }},
      {"/features/8/holes", "1000", [](Part& p) { p.features[8].as<kind::Ring>()->holes = -3; }},
      {"/features/9/spaces", "`spaces`", [](Part& p) { p.features[9].as<kind::Row>()->holes = 1; }},
      {"/features/10/side", "top face",
       [](Part& p) { p.features[10].as<kind::Round>()->side = Side::top; }},
      {"/features/10/about", "no `Q`",
       [](Part& p) { p.features[10].as<kind::Round>()->about = "Q"; }},
      {"/features/10/about", "itself",
       [](Part& p) { p.features[10].as<kind::Round>()->about = "M"; }},
      {"/features/10/about", "along x",
       [](Part& p) { p.features[10].as<kind::Round>()->about = "F"; }},
      {"/features/10/about", "along y",
       [](Part& p) { p.features[10].as<kind::Round>()->about = "E"; }},
      {"/features/10", "not both",
       [](Part& p) {
         p.features[10].as<kind::Round>()->corner = {"R", "K"};
       }},
      {"/features/11/corner", "two",
       [](Part& p) { p.features[11].as<kind::Round>()->corner = {"R"}; }},
      {"/features/11/corner/1", "no `Q`",
       [](Part& p) { p.features[11].as<kind::Round>()->corner[1] = "Q"; }},
      {"/features/11/corner/1", "a hole",
       [](Part& p) { p.features[11].as<kind::Round>()->corner[1] = "A"; }},
      {"/features/11/corner/1", "each axis",
       [](Part& p) { p.features[11].as<kind::Round>()->corner[1] = "L"; }},
      {"/features/12/through/1", "no `Q`",
       [](Part& p) { p.features[12].as<kind::Line>()->through[1] = "Q"; }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, SizesAndTraces) {
  const Lettered none = sixtyFourths(0, "0");
  const auto radius = [] {
    Lettered figure = sixtyFourths(8, "R 1/8");
    figure.symbol = SizeSymbol::radius;
    return figure;
  }();
  const auto diameter = [] {
    Lettered figure = sixtyFourths(8, "Ø 1/8");
    figure.symbol = SizeSymbol::diameter;
    return figure;
  }();
  const BadRow rows[] = {
      {"/features/4/diameter", "greater than 0",
       [&](Part& p) { p.features[4].drilled()->diameter = none; }},
      {"/features/4/diameter", "radius",
       [&](Part& p) { p.features[4].drilled()->diameter = radius; }},
      {"/features/4/depth", "through",
       [&](Part& p) {
         p.features[4].drilled()->depth = {false, std::nullopt};
       }},
      {"/features/4/depth", "greater",
       [&](Part& p) {
         p.features[4].drilled()->depth = {false, none};
       }},
      {"/features/4/seat_diameter", "radius",
       [&](Part& p) { p.features[4].drilled()->seatDiameter = radius; }},
      {"/features/4/seat_depth", "greater",
       [&](Part& p) { p.features[4].drilled()->seatDepth = none; }},
      {"/features/7/width", "greater",
       [&](Part& p) { p.features[7].as<kind::Slot>()->width = none; }},
      {"/features/7/length", "between centres",
       [&](Part& p) {
         p.features[7].as<kind::Slot>()->width = p.features[7].as<kind::Slot>()->length =
             sixtyFourths(8, "1/8");
       }},
      {"/features/9/pitch", "greater",
       [&](Part& p) { p.features[9].as<kind::Row>()->pitch = none; }},
      {"/features/8/pcd", "radius",
       [&](Part& p) { p.features[8].as<kind::Ring>()->pitchDiameter = radius; }},
      {"/features/10/radius", "diameter",
       [&](Part& p) { p.features[10].as<kind::Round>()->radius = diameter; }},
      {"/features/0/traced", "one value",
       [](Part& p) {
         p.features[0].traced = {"1", "2"};
       }},
      {"/features/4/traced", "two values", [](Part& p) { p.features[4].traced = {"1"}; }},
      {"/features/12/traced", "two points",
       [](Part& p) {
         p.features[12].traced = {"1", "2"};
       }},
      {"/features/4/traced/1", "plain decimal", [](Part& p) { p.features[4].traced[1] = "1e9"; }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

// Lengths of turned work are read along X, from edge to edge.
TEST(CheckPart, TurnedWorkLiesBetweenEdgesAcrossX) {
  const auto turned = [](std::vector<Id> between) {
    Part part = samplePart();
    part.turned = true;
    Feature& feature = part.features.emplace_back();
    feature.id = "T9";
    feature.shape = kind::Outside{std::move(between), sixtyFourths(16, "1/4")};
    return part;
  };
  ASSERT_TRUE(checkPart(turned({"L", "R"})).ok()) << checkPart(turned({"L", "R"})).error().text;
  const std::string at = "/features/" + std::to_string(samplePart().features.size()) + "/between";
  struct Case {
    std::vector<Id> between;
    std::string place;
    const char* says;
  };
  for (const Case& one : {Case{{"L", "F"}, at + "/1", "`F` is none"},
                          {{"F", "R"}, at + "/0", "`F` is none"},
                          {{"L", "A"}, at + "/1", "`A` is none"},
                          {{"L", "Q"}, at + "/1", "there is no `Q`"},
                          {{"", "R"}, at + "/0", "an id is missing"},
                          {{"L", "L"}, at, "two edges"},
                          {{"L"}, at, "two edges"}}) {
    const Result<Done> result = checkPart(turned(one.between));
    ASSERT_FALSE(result.ok()) << one.place;
    EXPECT_EQ(result.error().place, one.place) << result.error().text;
    EXPECT_NE(result.error().text.find(one.says), std::string::npos) << result.error().text;
  }
}

TEST(CheckPart, Readings) {
  const BadRow rows[] = {
      {"/readings/0/from", "no `Q`", [](Part& p) { p.readings[0].from = "Q"; }},
      {"/readings/0/to", "no `G7`", [](Part& p) { p.readings[0].to = "G7"; }},
      {"/readings/0/to", "missing", [](Part& p) { p.readings[0].to.clear(); }},
      {"/readings/0/from", "along x", [](Part& p) { p.readings[0].from = "F"; }},
      {"/readings/0/to", "along x", [](Part& p) { p.readings[0].to = "K"; }},
      {"/readings/0/to", "kind `line`", [](Part& p) { p.readings[0].to = "P"; }},
      {"/readings/0/to", "twice", [](Part& p) { p.readings[0].to = "L"; }},
      {"/readings/0/text", "swap the ends",
       [](Part& p) { p.readings[0].figure = sixtyFourths(-24, "-3/8"); }},
      {"/readings/0/place", "two values", [](Part& p) { p.readings[0].place = {"1"}; }},
      {"/readings/0/place/0", "decimals",
       [](Part& p) {
         p.readings[0].place = {"1/2", "1"};
       }},
      {"/readings/0/place/1", "decimals",
       [](Part& p) {
         p.readings[0].place = {"1", "1/2"};
       }},
      {"/readings/3/from", "no point", [](Part& p) { p.readings[3].from = "L"; }},
      {"/readings/3/to", "no point", [](Part& p) { p.readings[3].to = "E"; }},
      {"/readings/3/to", "missing", [](Part& p) { p.readings[3].to.clear(); }},
      {"/readings/3/text", "greater", [](Part& p) { p.readings[3].figure = sixtyFourths(0, "0"); }},
      {"/readings/4/to", "leave `to` out", [](Part& p) { p.readings[4].to = "A"; }},
      {"/readings/4/from", "no radius", [](Part& p) { p.readings[4].from = "L"; }},
      {"/readings/4/text", "lettered",
       [](Part& p) { p.readings[4].figure.symbol = SizeSymbol::diameter; }},
      {"/readings/5/text", "lettered",
       [](Part& p) { p.readings[5].figure.symbol = SizeSymbol::radius; }},
      {"/readings/5/from", "no diameter", [](Part& p) { p.readings[5].from = "C"; }},
      {"/readings/6/from", "no pcd", [](Part& p) { p.readings[6].from = "A"; }},
      {"/readings/6/from", "no pcd", [](Part& p) { p.readings[6].from = "G1"; }},
      {"/readings/7/text", "angle", [](Part& p) { p.readings[7].angle.reset(); }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, Understandings) {
  const BadRow rows[] = {
      {"/understood/0/between/0", "no point", [](Part& p) { p.understood[0].axis.reset(); }},
      {"/understood/0/of", "one `of`",
       [](Part& p) {
         p.understood[0].of = {"A", "B"};
       }},
      {"/understood/0/between", "two `between`", [](Part& p) { p.understood[0].between = {"F"}; }},
      {"/understood/0/between/1", "twice",
       [](Part& p) {
         p.understood[0].between = {"F", "F"};
       }},
      {"/understood/0/between/1", "along y",
       [](Part& p) {
         p.understood[0].between = {"F", "L"};
       }},
      {"/understood/0/of", "twice",
       [](Part& p) {
         p.understood[0].between = {"F", "A"};
       }},
      {"/understood/0/about", "two `between`", [](Part& p) { p.understood[0].about = "C"; }},
      {"/understood/1/of", "two or more", [](Part& p) { p.understood[1].of = {"A"}; }},
      {"/understood/1/of/2", "no `Q`", [](Part& p) { p.understood[1].of[2] = "Q"; }},
      {"/understood/1/of/2", "along y", [](Part& p) { p.understood[1].of[2] = "L"; }},
      {"/understood/1/between", "two or more",
       [](Part& p) {
         p.understood[1].between = {"F", "K"};
       }},
      {"/understood/2/of", "three or more",
       [](Part& p) {
         p.understood[2].of = {"A", "B"};
       }},
      {"/understood/2/of/2", "twice",
       [](Part& p) {
         p.understood[2].of = {"A", "B", "A"};
       }},
      {"/understood/3/about", "`about`", [](Part& p) { p.understood[3].about.clear(); }},
      {"/understood/3/about", "no `Q`", [](Part& p) { p.understood[3].about = "Q"; }},
      {"/understood/3/about", "along x", [](Part& p) { p.understood[3].about = "F"; }},
      {"/understood/3/of", "twice", [](Part& p) { p.understood[3].about = "A"; }},
      {"/understood/3/of", "two `of`",
       [](Part& p) {
         p.understood[3].of = {"A", "B", "S"};
       }},
      {"/understood/4/of/1", "has none", [](Part& p) { p.understood[4].of[1] = "E"; }},
      {"/understood/5/of", "two or more", [](Part& p) { p.understood[5].of = {"P"}; }},
      {"/understood/5/of/0", "no `Q`", [](Part& p) { p.understood[5].of[0] = "Q"; }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, Setups) {
  const BadRow rows[] = {
      {"/setups/0/turn", "90", [](Part& p) { p.setups[0].turn = 45; }},
      {"/setups/0/turn", "90", [](Part& p) { p.setups[0].turn = 360; }},
      {"/setups/0/turn", "90", [](Part& p) { p.setups[0].turn = -90; }},
      {"/setups/0/zero/z", "x and y", [](Part& p) { p.setups[0].zero[1].axis = Axis::z; }},
      {"/setups/0/zero/y", "y does not lie", [](Part& p) { p.setups[0].face = Face::front; }},
      {"/setups/0/zero/x", "twice", [](Part& p) { p.setups[0].zero[1].axis = Axis::x; }},
      {"/setups/0/zero/x", "say which", [](Part& p) { p.setups[0].zero[0].at = "L"; }},
      {"/setups/0/zero/y", "say which", [](Part& p) { p.setups[0].zero[1].at.clear(); }},
      {"/setups/0/zero/y/of", "`middle`", [](Part& p) { p.setups[0].zero[1].ofStock = true; }},
      {"/setups/0/zero/y/at", "no `Q`", [](Part& p) { p.setups[0].zero[1].at = "Q"; }},
      {"/setups/0/zero/y/at", "along y", [](Part& p) { p.setups[0].zero[1].at = "L"; }},
      {"/setups/0/zero/x/middle", "two", [](Part& p) { p.setups[0].zero[0].middle = {"L"}; }},
      {"/setups/0/zero/x/middle/1", "twice",
       [](Part& p) {
         p.setups[0].zero[0].middle = {"L", "L"};
       }},
      {"/setups/0/zero/x/middle/1", "along x",
       [](Part& p) {
         p.setups[0].zero[0].middle = {"L", "F"};
       }},
      {"/setups/0/stock/right", "0 or more",
       [](Part& p) { p.setups[0].stock[5] = sixtyFourths(-1, "-1/64"); }},
      {"/setups/0/jaw", "no jaw", [](Part& p) { p.setups[0].jaw = Side::top; }},
      {"/setups/0/stop", "no stop", [](Part& p) { p.setups[0].stop = Side::bottom; }},
      {"/setups/0/stop", "same side", [](Part& p) { p.setups[0].stop = Side::front; }},
      {"/setups/0/checks/1", "no `Q`", [](Part& p) { p.setups[0].checks[1] = "Q"; }},
  };
  for (const BadRow& row : rows) expectBad(row);
}

TEST(CheckPart, AcceptsWhatAPrintMayLeaveOpen) {
  const Change changes[] = {
      [](Part& p) { p.readings[0].figure = sixtyFourths(0, "0"); },
      [](Part& p) {
        p.features[8].as<kind::Ring>()->holes = 1;
        p.readings[1].to = "G1";
        p.setups[0].checks = {};
      },
      [](Part& p) { p.features[10].as<kind::Round>()->about.clear(); },
      [](Part& p) { p.features[13].id = "Ø 3 von links"; },
      [](Part& p) {
        p.features[12].traced = {"1", "2", "3", "4"};
      },
      [](Part& p) {
        p.setups.clear();
        p.understood.clear();
        p.readings.clear();
      },
      [](Part& p) {
        p = Part();
        p.name = "blank";
      },
  };
  for (const Change& change : changes) {
    Part part = samplePart();
    change(part);
    const Result<Done> result = checkPart(part);
    EXPECT_TRUE(result.ok()) << result.error().place << ": " << result.error().text;
  }
}

TEST(CheckPart, IdsAreUniqueAsIfEveryPlaceWereListed) {
  constexpr unsigned kSeed = 20261125;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937 random(kSeed);
  int sound = 0;
  for (int round = 0; round < 3'000; ++round) {
    Part part;
    part.name = "p";
    std::vector<Id> all;
    for (auto i = random() % 4 + 1; i > 0; --i) {
      Feature ring = onTop(random() % 2 == 0 ? "A" : "B", FeatureKind::ring);
      if (random() % 2 == 0) ring.id += std::to_string(random() % 130);
      ring.as<kind::Ring>()->holes = static_cast<int>(random() % 130) + 1;
      for (const Place& place : placesOf(ring)) all.push_back(place.id);
      part.features.push_back(ring);
    }
    const bool unique = std::set<Id>(all.begin(), all.end()).size() == all.size();
    ASSERT_EQ(checkPart(part).ok(), unique);
    sound += unique ? 1 : 0;
  }
  EXPECT_GT(sound, 300);
  EXPECT_LT(sound, 2'700);
}

TEST(CheckPart, RefusesMorePlacesThanItHolds) {
  Part part;
  part.name = "sieve";
  Feature ring = onTop("", FeatureKind::ring);
  ring.as<kind::Ring>()->holes = kMostHoles;
  for (int i = 0; i < 2'001; ++i) {
    ring.id = "G" + std::to_string(i) + "-";
    part.features.push_back(ring);
  }
  const Result<Done> result = checkPart(part);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().code, ErrorCode::tooLarge);
  EXPECT_EQ(result.error().place, "/features");
}

TEST(CheckJob, LooksAtThePartsAndTheirNames) {
  Job job;
  job.parts = {samplePart(), samplePart()};
  Result<Done> result = checkJob(job);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, "/parts/1/name");
  job.parts[1].name = "Back plate";
  EXPECT_TRUE(checkJob(job).ok());
  job.parts[1].readings[0].to = "Q";
  result = checkJob(job);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, "/parts/1/readings/0/to");
}

TEST(CheckJob, LooksAtTheMachine) {
  Job job;
  job.machine.step = "0";
  Result<Done> result = checkJob(job);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, "/machine/step");
  job.machine.step = "0.001";
  job.machine.finder = sixtyFourths(0, "0");
  result = checkJob(job);
  ASSERT_FALSE(result.ok());
  EXPECT_EQ(result.error().place, "/machine/finder");
}

}  // namespace
}  // namespace inchwright
