#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"

namespace inchwright {
namespace {

// As the program writes it: every kind of turned work, and both ends of a setup in the lathe.
constexpr const char* kArbor = R"({
  "inchwright": 1,
  "job": {"title": "", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "in", "step": "0.0005", "x_counts": "right", "y_counts": "away"},
  "lathe": {"unit": "in", "step": "0.001", "carriage_counts": "right", "cross_counts": "radius", "carriage_letter": "Y", "cross_letter": "X", "rough_leaves": ".030", "make": 1},
  "parts": [
    {
      "name": "Arbor",
      "quantity": 1,
      "material": "",
      "shape": "turned",
      "features": [
        {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
        {"id": "S", "kind": "edge", "axis": "x"},
        {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
        {"id": "A", "kind": "outside", "between": ["L", "S"], "diameter": "1/2"},
        {"id": "B", "kind": "bored", "between": ["L", "R"], "diameter": "1/8"},
        {"id": "C", "kind": "taper", "between": ["S", "R"], "large": "1/2", "small": "3/8", "angle": "10", "per_foot": "1/2", "large_at": "S"},
        {"id": "D", "kind": "groove", "between": ["S", "R"], "diameter": "3/8"},
        {"id": "E", "kind": "screwed", "between": ["S", "R"], "thread": "1/4-20 UNC", "hand": "left", "runout": "1/16"},
        {"id": "G", "kind": "knurl", "between": ["L", "S"], "pitch": ".030", "pattern": "diamond"},
        {"id": "H", "kind": "chamfer", "at": "R", "length": "1/32", "angle": "45", "later": {}},
        {"id": "J", "kind": "centre_drill", "at": "R", "size": "#2"},
        {"id": "K", "kind": "hole", "face": "top", "diameter": "1/16", "make": "drill", "depth": "through"}
      ],
      "readings": [
        {"id": "r1", "axis": "x", "from": "L", "to": "S", "text": "1"},
        {"id": "r2", "axis": "y", "from": "CL", "to": "K", "text": "1/64"}
      ],
      "understood": [],
      "setups": [
        {
          "name": "1",
          "face": "top",
          "turn": 0,
          "zero": {"x": {"at": "R"}},
          "kind": "lathe", "held": "left", "stands_out": "1 1/2", "part_off": {"width": ".0625", "corner": "right", "ground": "hollow"}
        }
      ]
    }
  ]
}
)";

std::string written(const std::string& text) {
  const auto job = readDocument(text);
  return job.ok() ? writeDocument(*job) : job.error().place + ": " + job.error().text;
}

TEST(LatheDocument, IsReadAsItSays) {
  const auto job = readDocument(kArbor);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  ASSERT_TRUE(job->lathe);
  EXPECT_EQ(job->lathe->carriageCounts, CarriageCounts::right);
  EXPECT_EQ(job->lathe->crossCounts, CrossCounts::radius);
  EXPECT_EQ(job->lathe->carriageLetter, "Y");
  const Part& part = job->parts[0];
  EXPECT_TRUE(part.turned);
  // Its centre line is there by itself, and stays out of the document.
  ASSERT_NE(part.feature("CL"), nullptr);
  EXPECT_EQ(axesOf(*part.feature("CL")), (AxisSet{Axis::y, Axis::z}));
  EXPECT_EQ(writeDocument(*job).find("\"id\": \"CL\""), std::string::npos);
  const auto* taper = part.feature("C")->as<kind::Taper>();
  ASSERT_NE(taper, nullptr);
  EXPECT_EQ(taper->largeAt, "S");
  EXPECT_EQ(taper->perFoot->text, "1/2");
  EXPECT_EQ(part.feature("E")->as<kind::Screwed>()->hand, Hand::left);
  EXPECT_EQ(diameterOf(*part.feature("A"))->text, "1/2");
  const auto& setup = part.setups[0];
  ASSERT_TRUE(setup.chucked);
  EXPECT_EQ(setup.chucked->held, Side::left);
  EXPECT_EQ(setup.chucked->standsOut->text, "1 1/2");
  EXPECT_EQ(setup.chucked->partOff->corner, ToolCorner::right);
}

TEST(LatheDocument, ComesBackToTheByteOnceWritten) {
  const std::string once = written(kArbor);
  EXPECT_EQ(written(once), once);
  for (const char* kept : {"\"make\": 1", "\"later\": {}", "\"ground\": \"hollow\"",
                           "\"hand\": \"left\"", "\"large_at\": \"S\"", "\"shape\": \"turned\"",
                           "\"kind\": \"lathe\"", "\"rough_leaves\": \".030\""}) {
    EXPECT_NE(once.find(kept), std::string::npos) << kept;
  }
}

struct BadLathe {
  const char* from;
  const char* to;
  const char* place;
};

TEST(LatheDocument, IsRefusedWithThePlace) {
  for (const BadLathe& bad : {
           BadLathe{R"("shape": "turned",)", "", "/parts/0/features/3/kind"},
           BadLathe{R"("shape": "turned")", R"("shape": "round")", "/parts/0/shape"},
           BadLathe{R"("between": ["L", "S"], "diameter": "1/2")", R"("between": ["L"])",
                    "/parts/0/features/3/between"},
           BadLathe{R"("between": ["L", "S"], "diameter": "1/2")", R"("between": ["L", "L"])",
                    "/parts/0/features/3/between"},
           BadLathe{R"("between": ["L", "S"], "diameter": "1/2")", R"("between": ["L", "Q"])",
                    "/parts/0/features/3/between/1"},
           BadLathe{R"("between": ["L", "S"], "diameter": "1/2")", R"("between": ["K", "S"])",
                    "/parts/0/features/3/between/0"},
           BadLathe{R"("diameter": "1/2")", R"("diameter": "R 1/2")",
                    "/parts/0/features/3/diameter"},
           BadLathe{R"("large_at": "S")", R"("large_at": "L")", "/parts/0/features/5/large_at"},
           BadLathe{R"("at": "R", "length")", R"("at": "A", "length")", "/parts/0/features/9/at"},
           BadLathe{R"("hand": "left")", R"("hand": "wrong")", "/parts/0/features/7/hand"},
           BadLathe{R"("held": "left")", R"("held": "top")", "/parts/0/setups/0/held"},
           BadLathe{R"("width": ".0625", )", "", "/parts/0/setups/0/part_off"},
           BadLathe{R"("step": "0.001")", R"("step": "none")", "/lathe/step"},
           BadLathe{R"("carriage_counts": "right")", R"("carriage_counts": "up")",
                    "/lathe/carriage_counts"},
       }) {
    std::string text = kArbor;
    const std::size_t at = text.find(bad.from);
    ASSERT_NE(at, std::string::npos) << bad.from;
    text.replace(at, std::string(bad.from).size(), bad.to);
    const auto job = readDocument(text);
    ASSERT_FALSE(job.ok()) << bad.to;
    EXPECT_EQ(job.error().place, bad.place) << job.error().text;
  }
}

}  // namespace
}  // namespace inchwright
