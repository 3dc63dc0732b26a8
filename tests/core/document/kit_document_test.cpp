#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"

namespace inchwright {
namespace {

// As the program writes it: what was made, how it was mended, and what goes together.
constexpr const char* kKit = R"({
  "inchwright": 1,
  "job": {"title": "", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "in", "step": "0.0005", "x_counts": "right", "y_counts": "away"},
  "parts": [
    {
      "name": "Back plate",
      "quantity": 1,
      "material": "",
      "features": [
        {"id": "A", "kind": "hole", "face": "top", "diameter": "1/4", "make": "ream", "depth": "through"}
      ],
      "readings": [],
      "understood": [],
      "setups": [],
      "made": [
        {"place": "A", "setup": "1", "piece": "2", "ticks": ["drill 15/64"], "ticked_x": "31.75 mm", "ticked_y": "-19.05 mm", "x": "1.2505", "y": "-.750", "size": ".2518", "go": {"size": ".2510", "class": "ZZ", "sign": "minus", "made_by": "us"}, "no_go": ".2520", "with": {"name": "small hole gauge", "error": ".0003", "lent": true}, "when": "2026-11-29"}
      ],
      "mended": [
        {"place": "A", "piece": "2", "way": "eccentric_bush", "figures": {"wall": "0.0310", "toward": ["1", "0"]}, "reason": "the plate is finished", "when": "2026-11-30", "by": "night"}
      ],
      "printed": [
        {"setup": "1", "edition": 2, "sheet": "1.1 K7QF-ACDE-HJLM", "when": "2026-11-28", "readout": "inches at a step of 0.0005", "zero": "X0 at L", "rows": [["A", "+1.2500", "-0.7500", "1/4 ream"]], "room": "cellar"}
      ]
    }
  ],
  "mates": [
    {"name": "arbor in plate", "hole": {"part": "Back plate", "place": "A", "seen": 1}, "shaft": ".2490/.2493", "fit": "RC4", "places": ["A"], "later": []},
    {"name": "dowel", "hole": ".2495/.2500", "shaft": {"part": "Pin", "place": "D"}, "least": "-.0005", "greatest": "0"}
  ]
}
)";

TEST(KitDocument, IsReadAsItSays) {
  const auto job = readDocument(kKit);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  ASSERT_EQ(job->parts[0].made.size(), 1u);
  const MadePlace& made = job->parts[0].made[0];
  EXPECT_EQ(made.piece, "2");
  EXPECT_EQ(made.tickedX->value, readLength("1.25")->value);
  EXPECT_EQ(made.tickedY->text, "-19.05 mm");
  EXPECT_EQ(made.size->value, Length::ticks(2518 * 254'000));
  EXPECT_EQ(made.go->size.value, Length::ticks(2510 * 254'000));
  EXPECT_EQ(made.go->pinClass, "ZZ");
  EXPECT_EQ(made.go->sign, PinSign::minus);
  EXPECT_EQ(made.noGo->size.text, ".2520");
  EXPECT_FALSE(made.noGo->sign);
  EXPECT_EQ(made.with->name, "small hole gauge");
  EXPECT_EQ(made.with->error->value, Length::ticks(3 * 254'000));
  EXPECT_TRUE(made.measured());
  ASSERT_EQ(job->parts[0].mended.size(), 1u);
  EXPECT_EQ(job->parts[0].mended[0].way, WayOut::eccentricBush);
  EXPECT_EQ(job->parts[0].mended[0].reason, "the plate is finished");
  ASSERT_EQ(job->parts[0].printed.size(), 1u);
  EXPECT_EQ(job->parts[0].printed[0].edition, 2);
  EXPECT_EQ(job->parts[0].printed[0].rows,
            (std::vector<PrintedRow>{{"A", "+1.2500", "-0.7500", "1/4 ream"}}));
  ASSERT_EQ(job->mates.size(), 2u);
  EXPECT_EQ(std::get<PartPlace>(job->mates[0].hole).part, "Back plate");
  EXPECT_EQ(std::get<Lettered>(job->mates[0].shaft).text, ".2490/.2493");
  EXPECT_EQ(job->mates[1].least->value, Length::ticks(-5 * 254'000));
  EXPECT_EQ(std::get<PartPlace>(job->mates[1].shaft).place, "D");
}

TEST(KitDocument, IsWrittenBackToTheByte) {
  const auto job = readDocument(kKit);
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(writeDocument(*job), kKit);
}

struct Bad {
  const char* from;
  const char* to;
  const char* place;
};

TEST(KitDocument, IsRefusedWithThePlace) {
  for (const Bad& bad : {
           Bad{R"("hole": {"part": "Back plate", "place": "A", "seen": 1})", R"("hole": 3)",
               "/mates/0/hole"},
           Bad{R"("part": "Back plate", )", "", "/mates/0/hole"},
           Bad{R"("shaft": ".2490/.2493")", R"("shaft": "thick")", "/mates/0/shaft"},
           Bad{R"("shaft": ".2490/.2493", )", "", "/mates/0"},
           Bad{R"("fit": "RC4")", R"("fit": "RC4", "least": "0")", "/mates/0/fit"},
           Bad{R"("sign": "minus")", R"("sign": "under")", "/parts/0/made/0/go/sign"},
           Bad{R"("size": ".2510", )", "", "/parts/0/made/0/go"},
           Bad{R"("error": ".0003")", R"("error": 3)", "/parts/0/made/0/with/error"},
           Bad{R"("with": {"name": "small hole gauge", "error": ".0003", "lent": true})",
               R"("with": "calliper")", "/parts/0/made/0/with"},
           Bad{R"("way": "eccentric_bush")", R"("way": "pray")", "/parts/0/mended/0/way"},
           Bad{R"("way": "eccentric_bush", )", "", "/parts/0/mended/0"},
           Bad{R"("edition": 2)", R"("edition": 0)", "/parts/0/printed/0/edition"},
           Bad{R"("edition": 2)", R"("edition": "second")", "/parts/0/printed/0/edition"},
           Bad{R"([["A", "+1.2500", "-0.7500", "1/4 ream"]])", R"([["A", "+1.2500"]])",
               "/parts/0/printed/0/rows/0"},
           Bad{R"([["A", "+1.2500", "-0.7500", "1/4 ream"]])", R"([["A", 1, 2, 3]])",
               "/parts/0/printed/0/rows/0"},
           Bad{R"([["A", "+1.2500", "-0.7500", "1/4 ream"]])", R"(["A"])",
               "/parts/0/printed/0/rows/0"},
           Bad{R"({"setup": "1", "edition": 2)", R"({"edition": 2)", "/parts/0/printed/0"},
       }) {
    std::string text = kKit;
    const std::size_t at = text.find(bad.from);
    ASSERT_NE(at, std::string::npos) << bad.from;
    text.replace(at, std::string(bad.from).size(), bad.to);
    const auto job = readDocument(text);
    ASSERT_FALSE(job.ok()) << bad.to;
    EXPECT_EQ(job.error().place, bad.place) << job.error().text;
  }
}

// Ticks count before what a readout showed; what is no length says nothing.
TEST(KitDocument, TheFiguresOfAWayOutAreReadAsFarAsTheyGo) {
  struct Case {
    const char* figures;
    std::optional<std::int64_t> bore, least, greatest;
    bool exact;
  };
  const std::optional<std::int64_t> none;
  for (const Case& one : {
           Case{R"({"bore": ".3125", "bore_ticks": 793751000})", 793'751'000, none, none, true},
           Case{R"({"bore": ".3125"})", 793'750'000, none, none, false},
           Case{R"({"bore": ".3125", "bore_ticks": "793751000"})", 793'750'000, none, none, false},
           Case{R"({"bore": 793751000})", none, none, none, false},
           Case{R"({"bore_ticks": 793751000.5, "bore": "5/16"})", 793'750'000, none, none, false},
           Case{R"({"size": [".2490", ".2493"]})", none, 632'460'000, 633'222'000, false},
           Case{R"({"size_ticks": [632460000, 633222000], "size": "1"})", none, 632'460'000,
                633'222'000, true},
           Case{R"({"size": "1/4"})", none, 635'000'000, 635'000'000, false},
           Case{R"({"size": []})", none, none, none, false},
           Case{R"({"size": "thick", "wall": ".03"})", none, none, none, false},
       }) {
    std::string text = kKit;
    const std::string from = R"({"wall": "0.0310", "toward": ["1", "0"]})";
    text.replace(text.find(from), from.size(), one.figures);
    const auto job = readDocument(text);
    ASSERT_TRUE(job.ok()) << one.figures;
    const ChosenFigures& chosen = job->parts[0].mended[0].chosen;
    const auto ticks = [](const std::optional<Length>& length) {
      return length ? std::optional(length->ticks()) : std::nullopt;
    };
    EXPECT_EQ(ticks(chosen.bore), one.bore) << one.figures;
    EXPECT_EQ(ticks(chosen.least), one.least) << one.figures;
    EXPECT_EQ(ticks(chosen.greatest), one.greatest) << one.figures;
    EXPECT_EQ(chosen.exact, one.exact) << one.figures;
  }
}

}  // namespace
}  // namespace inchwright
