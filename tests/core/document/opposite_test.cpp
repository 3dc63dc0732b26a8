// A part that is the other hand of another one: by hand, from making.md's rules.

#include <gtest/gtest.h>

#include "core/document/document.h"
#include "core/part/edit.h"
#include "core/part/parts_of_job.h"
#include "tests/core/document/random_job.h"

namespace inchwright {
namespace {

const char* const kCocks = R"({"inchwright": 1, "parts": [
  {"name": "Left cock", "opposite_of": "Right cock", "across": "x", "quantity": 3,
   "features": [{"id": "H", "diameter": "5/16"}, {"id": "B", "absent": true}],
   "readings": [{"id": "r3", "absent": true}]},
  {"name": "Right cock", "quantity": 2, "material": "brass", "hand": "right",
   "features": [
     {"id": "L", "kind": "edge", "axis": "x", "side": "left", "traced": ["0.5"]},
     {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
     {"id": "H", "kind": "hole", "face": "top", "diameter": "9/32", "make": "tap",
      "thread": "1/4-20", "traced": ["0.41", "-0.77"]},
     {"id": "B", "kind": "hole", "face": "top", "diameter": "1/8"},
     {"id": "G", "kind": "ring", "face": "top", "holes": 3, "pcd": "1", "first_angle": "22 1/2",
      "sense": "clockwise"},
     {"id": "S", "kind": "hole", "face": "left", "diameter": "1/8", "traced": ["1", "2"]}],
   "readings": [
     {"id": "r1", "axis": "x", "from": "L", "to": "H", "text": "3/8 +.005 -.002"},
     {"id": "r2", "axis": "y", "from": "H", "to": "K", "text": "1/2"},
     {"id": "r3", "axis": "x", "from": "H", "to": "B", "text": "1/4"},
     {"id": "r4", "kind": "angle", "from": "H", "to": "G", "text": "30"}],
   "understood": [{"kind": "way_round", "of": ["H", "G", "G1"], "sense": "clockwise", "stated": true}],
   "setups": [{"name": "1", "face": "top", "turn": 0,
     "zero": {"x": {"at": "L", "offset": "1/16"}, "y": {"at": "K"}},
     "stock": {"left": "1/16"}, "stop": "left"}]}]})";

TEST(OppositeParts, CutTheSameCurves) {
  Part part;
  inchwright::Setup setup;
  setup.name = "1";
  setup.curves = {
      {"E", CurveWay::points, *readLength("1/2"), CutterAt::left, {}, 7, {}, false, {}}};
  part.setups = {setup};
  const Part other = mirrored(part, Axis::x);
  ASSERT_EQ(other.setups[0].curves.size(), 1u);
  EXPECT_EQ(other.setups[0].curves[0], setup.curves[0]);
}

Job cocks() {
  const Result<Job> job = readDocument(kCocks);
  EXPECT_TRUE(job.ok()) << job.error().place << " " << job.error().text;
  return job.ok() ? *job : Job();
}

TEST(OppositeParts, AreMirroredWhereverTheyStand) {
  const Job job = cocks();
  ASSERT_EQ(job.parts.size(), 2u);
  const Part& left = job.parts[0];
  EXPECT_EQ(left.name, "Left cock");
  EXPECT_EQ(left.quantity, 3);
  EXPECT_EQ(left.material, "brass");
  EXPECT_EQ(left.hand, "left");
  ASSERT_NE(left.feature("L"), nullptr);
  EXPECT_EQ(sideOf(*left.feature("L")), Side::right);
  EXPECT_EQ(left.feature("L")->traced, std::vector<std::string>{"-0.5"});
  EXPECT_EQ(sideOf(*left.feature("K")), Side::back);
  EXPECT_EQ(left.feature("H")->traced, (std::vector<std::string>{"-0.41", "-0.77"}));
  EXPECT_EQ(left.feature("H")->drilled()->thread, "1/4-20");
  EXPECT_EQ(left.feature("S")->face, Face::right);
  EXPECT_EQ(left.feature("S")->traced, (std::vector<std::string>{"1", "2"}));
  const kind::Ring& ring = *left.feature("G")->as<kind::Ring>();
  EXPECT_EQ(ring.sense, Sense::anticlockwise);
  EXPECT_EQ(ring.firstAngle->value, Angle::microArcseconds(315 * Angle::kPerDegree / 2));
  const Reading& along = *left.reading("r1");
  EXPECT_EQ(along.from, "H");
  EXPECT_EQ(along.to, "L");
  EXPECT_EQ(along.figure.text, "3/8 +.005 -.002");
  EXPECT_EQ(left.reading("r2")->from, "H");
  EXPECT_EQ(left.reading("r4")->angle->value, Angle::degrees(150));
  EXPECT_EQ(left.understood[0].sense, Sense::anticlockwise);
  const inchwright::Setup& setup = left.setups[0];
  EXPECT_EQ(setup.stop, Side::right);
  EXPECT_TRUE(setup.stockLettered(Side::right).has_value());
  EXPECT_FALSE(setup.stockLettered(Side::left).has_value());
  EXPECT_EQ(setup.zero[0].offset->value, readLength("-1/16")->value);
}

TEST(OppositeParts, KeepWhatIsTheirOwn) {
  const Part left = cocks().parts[0];
  EXPECT_EQ(diameterOf(*left.feature("H"))->text, "5/16");
  EXPECT_EQ(left.feature("H")->drilled()->make, Make::tap);
  EXPECT_EQ(left.feature("B"), nullptr);
  EXPECT_EQ(left.reading("r3"), nullptr);
}

TEST(OppositeParts, StandInTheDocumentByWhatDiffers) {
  const Job job = cocks();
  const std::string text = writeDocument(job);
  EXPECT_NE(text.find("{\"id\": \"H\", \"diameter\": \"5/16\"}"), std::string::npos) << text;
  EXPECT_NE(text.find("{\"id\": \"B\", \"absent\": true}"), std::string::npos) << text;
  const Result<Job> again = readDocument(text);
  ASSERT_TRUE(again.ok()) << again.error().place << " " << again.error().text;
  EXPECT_EQ(*again, job);
  EXPECT_EQ(writeDocument(*again), text);
}

TEST(OppositeParts, FollowThePartTheyAreTheOtherHandOf) {
  const Job job = cocks();
  Part right = job.parts[1];
  for (Feature& feature : right.features) {
    if (feature.drilled()) feature.drilled()->diameter = *readLength("1/2");
  }
  right.readings[1].figure = *readLength("5/8");
  const Result<Job> edited = withPartEdited(job, 1, right);
  ASSERT_TRUE(edited.ok()) << edited.error().text;
  const Part& left = edited->parts[0];
  EXPECT_EQ(diameterOf(*left.feature("H"))->text, "5/16") << "its own";
  EXPECT_EQ(diameterOf(*left.feature("S"))->text, "1/2");
  EXPECT_EQ(left.reading("r2")->figure.text, "5/8");
  EXPECT_EQ(left.feature("B"), nullptr);
  const Result<Job> without = removePart(job, "Right cock");
  ASSERT_FALSE(without.ok());
  EXPECT_EQ(without.error().place, "/parts/0/opposite_of");
}

TEST(OppositeParts, WithoutSense) {
  const std::string text(kCocks);
  const auto with = [&](std::string from, const std::string& to) {
    std::string changed = text;
    changed.replace(changed.find(from), from.size(), to);
    const Result<Job> job = readDocument(changed);
    return job.ok() ? std::string() : job.error().place + " " + job.error().text;
  };
  EXPECT_NE(with("\"opposite_of\": \"Right cock\"", "\"opposite_of\": \"Q\"").find("/parts/0"),
            std::string::npos);
  EXPECT_NE(with("\"opposite_of\": \"Right cock\"", "\"opposite_of\": 5").find("/parts/0"),
            std::string::npos);
  EXPECT_NE(with("\"across\": \"x\"", "\"across\": \"z\"").find("across"), std::string::npos);
  EXPECT_NE(with("\"across\": \"x\", ", "").find("across"), std::string::npos);
  EXPECT_NE(with("\"diameter\": \"5/16\"", "\"diameter\": \"none\"").find("/parts/0/features"),
            std::string::npos);
  EXPECT_NE(with("{\"id\": \"H\", \"diameter\": \"5/16\"}", "5").find("/parts/0/features"),
            std::string::npos);
}

// What a part of its own would be refused for is not passed over in the other hand of one: a hole
// would be drilled as the first hand has it.
TEST(OppositeParts, NothingOfTheirOwnIsPassedOver) {
  const std::string own = R"("features": [{"id": "H", "diameter": "5/16"}, )"
                          R"({"id": "B", "absent": true}])";
  const std::string readings = R"("readings": [{"id": "r3", "absent": true}])";
  struct Case {
    std::string was;
    const char* now;
    const char* place;
    const char* says;
  };
  for (const Case& one : {
           Case{own, R"("features": {"id": "H", "diameter": "5/16"})", "/parts/0/features",
                "a list is wanted here, not "},
           {own, R"("features": "H")", "/parts/0/features", "a list is wanted here, not "},
           {own, R"("features": [{"id": "H", "diameter": "5/16"}, {"id": "H", "make": "ream"}])",
            "/parts/0/features/1", "`H` is there twice"},
           {own, R"("features": [{"diameter": "5/16"}])", "/parts/0/features/6", "`id` is missing"},
           {readings, R"("readings": {"id": "r3", "absent": true})", "/parts/0/readings",
            "a list is wanted here, not "},
           {readings, R"("readings": [{"id": "r2", "absent": true}, {"id": "r2", "text": "5/8"}])",
            "/parts/0/readings/1", "`r2` is there twice"},
       }) {
    std::string text = kCocks;
    ASSERT_NE(text.find("\n   \"readings\": [{\"id\": \"r3\""), std::string::npos);
    text.replace(text.find(one.was), one.was.size(), one.now);
    const Result<Job> job = readDocument(text);
    ASSERT_FALSE(job.ok()) << one.now;
    EXPECT_EQ(job.error().place.substr(0, std::string_view(one.place).size()), one.place);
    EXPECT_NE(job.error().text.find(one.says), std::string::npos) << job.error().text;
  }
}

// Twice mirrored is what it was, but for what is not carried over and the spelling of angles.
TEST(OppositeParts, TwiceIsOnce) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    for (const Part& part : RandomJob(static_cast<unsigned>(seed)).make().parts) {
      for (const Axis across : {Axis::x, Axis::y}) {
        const Part once = mirrored(part, across);
        EXPECT_TRUE(checkPart(once).ok());
        EXPECT_EQ(mirrored(mirrored(once, across), across), once);
      }
    }
  }
}

TEST(OppositeParts, AreMirroredAcrossTwoAxesOnly) {
  for (const auto& [across, place] : {std::pair("z", "/parts/0/opposite_of"),
                                      {"X", "/parts/0/across"},
                                      {"", "/parts/0/across"},
                                      {"left", "/parts/0/across"}}) {
    std::string text = kCocks;
    text.replace(text.find("\"across\": \"x\""), 13, "\"across\": \"" + std::string(across) + "\"");
    const auto job = readDocument(text);
    ASSERT_FALSE(job.ok()) << across;
    EXPECT_EQ(job.error().place, place) << job.error().text;
    EXPECT_NE(job.error().text.find("x"), std::string::npos) << job.error().text;
  }
}

}  // namespace
}  // namespace inchwright
