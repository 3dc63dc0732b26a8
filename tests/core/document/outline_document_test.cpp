#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/core/document/document_text.h"

namespace inchwright {
namespace {

// As the program writes it: an outline, a pocket, and three ways of cutting.
constexpr const char* kCock = R"({
  "inchwright": 1,
  "job": {"title": "", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "in", "step": "0.0005", "x_counts": "right", "y_counts": "away"},
  "parts": [
    {
      "name": "Cock",
      "quantity": 1,
      "material": "",
      "features": [
        {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
        {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
        {"id": "T", "kind": "edge", "axis": "z", "side": "top"},
        {"id": "A", "kind": "hole", "face": "top", "diameter": "1/4", "make": "drill", "depth": "through"},
        {"id": "B", "kind": "hole", "face": "top", "diameter": "1/4", "make": "drill", "depth": "through"},
        {"id": "D", "kind": "round", "side": "left", "face": "top", "radius": "3/8", "about": "A"},
        {"id": "E", "kind": "round", "side": "right", "face": "top", "radius": "3/8", "about": "B"}
      ],
      "readings": [],
      "understood": [],
      "setups": [
        {
          "name": "1",
          "face": "top",
          "turn": 0,
          "curves": [{"of": "D", "way": "rotary", "cutter": "1/2", "cutter_at": "away", "overrun": 5, "said": "so"}, {"of": "E", "way": "points", "cutter": "1/4", "ridge": ".002", "count": 12, "overrun": "2 1/2"}]
        }
      ],
      "outlines": [
        {"face": "top", "follows": ["F", "E", "K", "D"], "why": 1},
        {"face": "top", "follows": ["D"], "inner": true, "depth": "1/8"}
      ]
    }
  ]
}
)";

TEST(OutlineDocument, IsReadAsItSaysAndWrittenAsItWas) {
  const auto job = readDocument(kCock);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  const Part& part = job->parts[0];
  ASSERT_EQ(part.outlines.size(), 2U);
  EXPECT_EQ(part.outlines[0].follows, (std::vector<Id>{"F", "E", "K", "D"}));
  EXPECT_FALSE(part.outlines[0].isInner);
  EXPECT_EQ(part.outlines[1].depth->length->text, "1/8");
  const auto& curves = part.setups[0].curves;
  ASSERT_EQ(curves.size(), 2U);
  EXPECT_EQ(curves[0].cutterAt, CutterAt::away);
  EXPECT_EQ(curves[0].overrun->value, Angle::degrees(5));
  EXPECT_EQ(curves[1].way, CurveWay::points);
  EXPECT_EQ(*curves[1].count, 12);
  EXPECT_EQ(writeDocument(*job), kCock);
}

struct BadOutline {
  const char* find;
  const char* instead;
  const char* place;
};

TEST(OutlineDocument, WhatMakesNoSenseIsRefusedWithItsPlace) {
  const BadOutline kCases[] = {
      {R"(["F", "E", "K", "D"])", R"(["F", "X"])", "/parts/0/outlines/0/follows/1"},
      {R"(["F", "E", "K", "D"])", R"(["F", "A"])", "/parts/0/outlines/0/follows/1"},
      {R"(["F", "E", "K", "D"])", R"(["F", "T"])", "/parts/0/outlines/0/follows/1"},
      {R"(["F", "E", "K", "D"])", R"(["F", "F"])", "/parts/0/outlines/0/follows/0"},
      {R"(["F", "E", "K", "D"])", R"([])", "/parts/0/outlines/0/follows"},
      {R"(["F", "E", "K", "D"])", R"("F")", "/parts/0/outlines/0/follows"},
      {R"("inner": true, "depth": "1/8")", R"("depth": "1/8")", "/parts/0/outlines/1"},
      {R"("depth": "1/8")", R"("depth": "-1/8")", "/parts/0/outlines/1/depth"},
      {R"("depth": "1/8")", R"("depth": 3)", "/parts/0/outlines/1/depth"},
      {R"("inner": true)", R"("inner": "yes")", "/parts/0/outlines/1/inner"},
      {R"("of": "D", "way": "rotary")", R"("of": "A", "way": "rotary")",
       "/parts/0/setups/0/curves/0/of"},
      {R"("way": "rotary")", R"("way": "lathe")", "/parts/0/setups/0/curves/0/way"},
      {R"("cutter": "1/2")", R"("cutter": "0")", "/parts/0/setups/0/curves/0/cutter"},
      {R"("cutter_at": "away")", R"("cutter_at": "up")", "/parts/0/setups/0/curves/0/cutter_at"},
      {R"("overrun": 5)", R"("overrun": -5)", "/parts/0/setups/0/curves/0/overrun"},
      {R"("overrun": 5)", R"("overrun": [5])", "/parts/0/setups/0/curves/0/overrun"},
      {R"("count": 12)", R"("count": 1)", "/parts/0/setups/0/curves/1/count"},
      {R"("ridge": ".002")", R"("ridge": "0")", "/parts/0/setups/0/curves/1/ridge"},
  };
  for (const BadOutline& bad : kCases) {
    const auto job = readDocument(with(kCock, bad.find, bad.instead));
    ASSERT_FALSE(job.ok()) << bad.instead;
    EXPECT_EQ(job.error().place, bad.place) << bad.instead;
    EXPECT_FALSE(job.error().text.empty());
  }
}

TEST(OutlineDocument, ARenamedFeatureIsFollowedByItsNewName) {
  const auto job = readDocument(kCock);
  ASSERT_TRUE(job.ok());
  const auto renamed = renameFeature(job->parts[0], "D", "G");
  ASSERT_TRUE(renamed.ok()) << renamed.error().text;
  EXPECT_EQ(renamed->outlines[0].follows.back(), "G");
  EXPECT_EQ(renamed->setups[0].curves[0].of, "G");
}

TEST(OutlineDocument, WhatFollowsARemovedFeatureGoesWithIt) {
  const auto job = readDocument(kCock);
  ASSERT_TRUE(job.ok());
  const auto removed = removeFeature(job->parts[0], "D");
  ASSERT_TRUE(removed.ok()) << removed.error().text;
  EXPECT_TRUE(removed->part.outlines.empty());
  ASSERT_EQ(removed->part.setups[0].curves.size(), 1U);
  EXPECT_EQ(removed->part.setups[0].curves[0].of, "E");
}

// An angle against an edge, from its other end, is written back so: else a hole lies on the wrong
// side of it once the document has been saved.
TEST(OutlineDocument, AnAngleFromTheOtherEndStaysOne) {
  const std::string reading =
      R"("readings": [{"id": "r1", "kind": "angle", "from": "A", "to": "B", "against": "F", "sense": "clockwise", "reversed": true, "text": "30"}])";
  const std::string text = with(kCock, R"("readings": [])", reading.c_str());
  const auto job = readDocument(text);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  EXPECT_TRUE(job->parts[0].readings[0].reversed);
  EXPECT_EQ(job->parts[0].readings[0].sense, Sense::clockwise);
  const std::string written = writeDocument(*job);
  EXPECT_NE(written.find(R"("reversed": true)"), std::string::npos);
  const auto again = readDocument(written);
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(*again, *job);
  // Where it is not so nothing is said of it.
  const auto plain = readDocument(with(text, R"("reversed": true, )", ""));
  ASSERT_TRUE(plain.ok());
  EXPECT_FALSE(plain->parts[0].readings[0].reversed);
  EXPECT_EQ(writeDocument(*plain).find("reversed"), std::string::npos);
}

}  // namespace
}  // namespace inchwright
