#include "core/document/document.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

#include "tests/core/document/document_text.h"
#include "tests/core/document/random_job.h"
#include "tests/support/scratch.h"

namespace inchwright {
namespace {

Job read(const std::string& text) {
  Result<Job> job = readDocument(text);
  EXPECT_TRUE(job.ok()) << job.error().place << ": " << job.error().text;
  return job.ok() ? *std::move(job) : Job();
}

Length inches(std::int64_t numerator, std::int64_t denominator) {
  return Length::ticks(Length::kTicksPerInch / denominator * numerator);
}

/// A part of one hole `A` and an outer side `L`, with room for more.
std::string smallText(const std::string& features, const std::string& members = "") {
  return R"({"inchwright": 1, "parts": [{"name": "p", "features": [)" +
         std::string(R"({"id": "A", "kind": "hole"}, {"id": "L", "kind": "edge", "axis": "x"})") +
         features + "]" + members + "}]}";
}

TEST(ReadDocument, TheFrontPlate) {
  const Job job = read(frontPlateText());
  EXPECT_EQ(job.title, "Clock plates");
  EXPECT_EQ(job.print, "sheet 2, second edition");
  EXPECT_EQ(job.unit, Unit::inch);
  EXPECT_EQ(job.machine.step, "0.0005");
  EXPECT_EQ(job.machine.finder->value, inches(1, 5));
  ASSERT_EQ(job.parts.size(), 1U);
  const Part& part = job.parts[0];
  EXPECT_EQ(part.quantity, 1);
  EXPECT_EQ(part.general.twoPlaces->value, inches(1, 100));
  EXPECT_EQ(part.general.angles->value, Angle::microArcseconds(Angle::kPerDegree / 2));
  ASSERT_EQ(part.features.size(), 7U);
  EXPECT_EQ(sideOf(part.features[0]), Side::left);
  EXPECT_EQ(part.features[4].drilled()->make, Make::ream);
  EXPECT_EQ(part.features[4].drilled()->diameter->value, inches(1, 4));
  EXPECT_TRUE(part.features[4].drilled()->depth.through);
  EXPECT_EQ(part.features[4].traced, (std::vector<std::string>{"0.41", "0.77"}));
  EXPECT_FALSE(part.features[5].drilled()->depth.through);
  EXPECT_EQ(part.features[5].drilled()->depth.length->value, inches(1, 2));
  ASSERT_EQ(part.readings.size(), 7U);
  EXPECT_EQ(part.readings[1].figure.value, inches(19, 16));
  EXPECT_TRUE(part.readings[3].figure.reference);
  EXPECT_EQ(part.readings[4].figure.tolerance, Tolerance::symmetric(inches(1, 200)));
  EXPECT_EQ(part.readings[5].kind, ReadingKind::centres);
  EXPECT_EQ(part.readings[6].angle->value, Angle::degrees(55));
  ASSERT_EQ(part.understood.size(), 2U);
  EXPECT_TRUE(part.understood[0].stated);
  EXPECT_EQ(part.understood[0].between, (std::vector<Id>{"F", "K"}));
  ASSERT_EQ(part.setups.size(), 1U);
  EXPECT_TRUE(part.setups[0].zeroAlong(Axis::x)->ofStock);
  EXPECT_EQ(part.setups[0].zeroAlong(Axis::y)->at, "F");
  EXPECT_EQ(part.setups[0].stockOn(Side::right), inches(1, 16));
}

TEST(WriteDocument, TheFrontPlateIsWrittenLineByLine) {
  const std::string written = writeDocument(read(frontPlateText()));
  EXPECT_EQ(written,
            readText(INCHWRIGHT_SOURCE_DIR "/tests/core/document/front_plate_written.inchwright"));
}

TEST(WriteDocument, AChangedReadingChangesOneLine) {
  Job job = read(frontPlateText());
  const std::string before = writeDocument(job);
  job.parts[0].readings[1].figure = *readLength("1 1/8");
  const std::string after = writeDocument(job);
  EXPECT_EQ(after, with(before, "1 3/16", "1 1/8"));
}

TEST(WriteDocument, ABlankJob) {
  EXPECT_EQ(writeDocument(Job()),
            "{\n"
            "  \"inchwright\": 1,\n"
            "  \"job\": {\"title\": \"\", \"print\": \"\", \"unit\": \"in\", \"notes\": \"\"},\n"
            "  \"machine\": {\"unit\": \"in\", \"step\": \"0.0005\", \"x_counts\": \"right\", "
            "\"y_counts\": \"away\"},\n"
            "  \"parts\": []\n"
            "}\n");
}

TEST(WriteDocument, ReadsBackAsItWasOverRandomJobs) {
  constexpr unsigned kSeed = 20261125;
  for (unsigned i = 0; i < 400; ++i) {
    SCOPED_TRACE("seed " + std::to_string(kSeed + i));
    const Job job = RandomJob(kSeed + i).make();
    const std::string written = writeDocument(job);
    const Result<Job> back = readDocument(written);
    ASSERT_TRUE(back.ok()) << back.error().place << ": " << back.error().text << "\n" << written;
    ASSERT_EQ(*back, job) << written;
    ASSERT_EQ(writeDocument(*back), written);
  }
}

TEST(SaveDocument, WhatWouldNotOpenAgainAsItIsReplacesNothing) {
  const test::Scratch scratch;
  const std::string file = scratch.path("savable.inchwright");
  Job job = RandomJob(1).make();
  ASSERT_TRUE(saveDocument(job, file).ok());
  const std::string before = readText(file);
  // Its text means something else in the unit of the job.
  job.unit = Unit::inch;
  job.parts.emplace_back();
  job.parts.back().name = "another";
  job.parts.back().general.fractions = *readLength("2", {Unit::millimetre});
  EXPECT_EQ(saveDocument(job, file).error().code, ErrorCode::badDocument);
  job.parts.pop_back();
  job.notes = std::string(kLargestDocument, 'x');
  const auto large = saveDocument(job, file);
  EXPECT_EQ(large.error().code, ErrorCode::tooLarge);
  EXPECT_EQ(large.error().text.substr(0, 30), "it has grown beyond 100 MB, mo");
  EXPECT_EQ(readText(file), before);
}

TEST(WriteDocument, TheSamplesKeepTheirMeaning) {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(INCHWRIGHT_SOURCE_DIR "/samples")) {
    if (entry.path().extension() != ".inchwright") continue;
    SCOPED_TRACE(entry.path().string());
    ++count;
    const Job job = read(readText(entry.path().string()));
    EXPECT_EQ(read(writeDocument(job)), job);
  }
  EXPECT_GE(count, 5);
}

TEST(ReadDocument, TheUnitCountsWhereverItStands) {
  const char* texts[] = {
      R"({"inchwright": 1, "parts": [{"name": "p", "features": [{"id": "A", "kind": "hole",)"
      R"( "diameter": "5"}]}], "job": {"unit": "mm"}})",
      R"({"job": {"unit": "mm"}, "parts": [{"features": [{"diameter": "5", "kind": "hole",)"
      R"( "id": "A"}], "name": "p"}], "inchwright": 1})"};
  for (const char* text : texts) {
    const Job job = read(text);
    EXPECT_EQ(job.parts[0].features[0].drilled()->diameter->value,
              Length::ticks(5 * Length::kTicksPerMillimetre));
  }
}

TEST(ReadDocument, TheMachineHasItsOwnUnit) {
  const Job job =
      read(R"({"inchwright": 1, "job": {"unit": "in"}, "machine": {"unit": "mm", "finder": "10"},)"
           R"( "parts": []})");
  EXPECT_EQ(job.machine.finder->value, Length::ticks(10 * Length::kTicksPerMillimetre));
  EXPECT_EQ(job.machine.step, "0.01");
}

TEST(ReadDocument, LeftOutMembersTakeTheirDefaults) {
  const Job job = read(smallText("", R"(, "setups": [{"name": "1"}])"));
  EXPECT_EQ(job.unit, Unit::inch);
  EXPECT_EQ(job.machine, Machine());
  const Part& part = job.parts[0];
  EXPECT_EQ(part.quantity, 1);
  EXPECT_EQ(part.features[0].face, Face::top);
  EXPECT_EQ(part.features[0].drilled()->make, Make::drill);
  EXPECT_TRUE(part.features[0].drilled()->depth.through);
  EXPECT_EQ(part.setups[0].turn, 0);
  EXPECT_EQ(part.setups[0].face, Face::top);
}

TEST(ReadDocument, EveryKindOfFeature) {
  const Job job = read(smallText(R"(,
      {"id": "S", "kind": "slot", "axis": "y", "width": "1/4", "length": "1", "depth": "1/8"},
      {"id": "G", "kind": "ring", "holes": 6, "pcd": "2 1/2", "first_angle": "30",
       "sense": "clockwise", "diameter": "1/8", "make": "tap", "thread": "2 BA", "locate": "mate"},
      {"id": "D", "kind": "row", "axis": "x", "spaces": 4, "pitch": "1/2"},
      {"id": "W", "kind": "row", "axis": "y", "holes": 4, "face": "left", "seat_diameter": "3/8",
       "seat_depth": "1/8", "make": "counterbore"},
      {"id": "M", "kind": "round", "radius": "R 3/8", "about": "A", "side": "left"},
      {"id": "K", "kind": "edge", "axis": "y"},
      {"id": "N", "kind": "round", "corner": ["L", "K"]},
      {"id": "P", "kind": "point", "note": "scribed"},
      {"id": "X", "kind": "line", "through": ["A", "P"], "traced": ["1", "2", "3", "4"]},
      {"id": "Y", "kind": "arc", "radius": "1"})"));
  const std::vector<Feature>& all = job.parts[0].features;
  ASSERT_EQ(all.size(), 12U);
  EXPECT_EQ(all[2].as<kind::Slot>()->length->value, inches(1, 1));
  EXPECT_EQ(all[3].as<kind::Ring>()->holes, 6);
  EXPECT_EQ(all[3].as<kind::Ring>()->pitchDiameter->value, inches(5, 2));
  EXPECT_EQ(all[3].as<kind::Ring>()->firstAngle->value, Angle::degrees(30));
  EXPECT_EQ(all[3].as<kind::Ring>()->sense, Sense::clockwise);
  EXPECT_EQ(all[3].drilled()->thread, "2 BA");
  EXPECT_EQ(all[3].drilled()->locate, Locate::mate);
  EXPECT_EQ(all[4].as<kind::Row>()->holes, 5);
  EXPECT_TRUE(all[4].as<kind::Row>()->countedBySpaces);
  EXPECT_EQ(all[5].as<kind::Row>()->holes, 4);
  EXPECT_FALSE(all[5].as<kind::Row>()->countedBySpaces);
  EXPECT_EQ(all[5].face, Face::left);
  EXPECT_EQ(all[6].as<kind::Round>()->about, "A");
  EXPECT_EQ(all[6].as<kind::Round>()->side, Side::left);
  EXPECT_EQ(all[8].as<kind::Round>()->corner, (std::vector<Id>{"L", "K"}));
  EXPECT_EQ(all[9].note, "scribed");
  EXPECT_EQ(all[10].traced.size(), 4U);
  EXPECT_EQ(read(writeDocument(job)), job);
}

TEST(ReadDocument, UnknownMembersAreKeptAtEveryLevel) {
  const std::string text = R"({"inchwright": 1, "a": 1.10, "job": {"b": 1e400},
    "machine": {"c": [1,2]}, "parts": [{"name": "p", "d": {"x": {"y": []}},
      "general": {"e": null},
      "features": [{"id": "A", "kind": "hole", "f": 123456789012345678901234567890},
                   {"id": "L", "kind": "edge", "axis": "x", "face": "top"}],
      "readings": [{"id": "r", "axis": "x", "from": "L", "to": "A", "text": "1", "g": "\u00e9"}],
      "understood": [{"kind": "concentric", "of": ["A", "A2"], "h": -0}],
      "setups": [{"name": "1", "i": true, "zero": {"j": 5, "x": {"at": "L", "k": {}}},
                  "stock": {"l": "1/2"}}]}]})";
  const std::string whole =
      with(text, R"("features": [)", R"("features": [{"id": "A2", "kind": "point"},)");
  const Job job = read(whole);
  EXPECT_EQ(job.extra, (Extra{{"a", "1.10"}}));
  EXPECT_EQ(job.jobExtra, (Extra{{"b", "1e400"}}));
  EXPECT_EQ(job.machine.extra, (Extra{{"c", "[1, 2]"}}));
  const Part& part = job.parts[0];
  EXPECT_EQ(part.extra, (Extra{{"d", R"({"x": {"y": []}})"}}));
  EXPECT_EQ(part.general.extra, (Extra{{"e", "null"}}));
  EXPECT_EQ(part.features[1].extra, (Extra{{"f", "123456789012345678901234567890"}}));
  EXPECT_EQ(part.features[2].extra, (Extra{{"face", "\"top\""}}));
  EXPECT_EQ(part.readings[0].extra, (Extra{{"g", "\"é\""}}));
  EXPECT_EQ(part.understood[0].extra, (Extra{{"h", "-0"}}));
  EXPECT_EQ(part.setups[0].extra, (Extra{{"i", "true"}}));
  EXPECT_EQ(part.setups[0].zeroExtra, (Extra{{"j", "5"}}));
  EXPECT_EQ(part.setups[0].zero[0].extra, (Extra{{"k", "{}"}}));
  EXPECT_EQ(part.setups[0].stockExtra, (Extra{{"l", "\"1/2\""}}));
  EXPECT_EQ(read(writeDocument(job)), job);
}

// What stands in a part and the name that may have been meant by it; nothing where another
// program's own names are.
TEST(ReadDocument, MembersThatLookMisspelt) {
  const std::vector<std::pair<std::string, std::string>> rows = {
      {"setpus", "setups"},
      {"featurs", "features"},
      {"Reading", "readings"},
      {"quantitty", "quantity"},
      {"materail", "material"},
      {"unitb", ""},
      {"note", ""},
      {"x", ""},
      {"colour_of_the_paper", ""},
      {"name2", ""},
      {"nmae", "name"},
      {"NAME", "name"},
  };
  for (const auto& [name, meant] : rows) {
    const auto job =
        readDocument(R"({"inchwright": 1, "parts": [{"name": "P", ")" + name + R"(": 1}]})");
    ASSERT_TRUE(job.ok()) << name;
    ASSERT_EQ(job->parts[0].extra.size(), 1u) << name;
    EXPECT_EQ(job->parts[0].extra[0].meant, meant) << name;
  }
}

TEST(WriteDocument, AMemberIsNeverThereTwice) {
  Job job = read(smallText(""));
  Feature& edge = job.parts[0].features[1];
  edge.extra = {{"face", "\"top\""}, {"id", "\"B\""}, {"mine", "1"}};
  edge.shape = kind::Point{};
  const Job back = read(writeDocument(job));
  EXPECT_EQ(back.parts[0].features[1].id, "L");
  EXPECT_EQ(back.parts[0].features[1].extra, (Extra{{"mine", "1"}}));
}

TEST(WriteDocument, ManyUnknownMembersTakeLinearTime) {
  std::string text = "{\"inchwright\": 1, \"parts\": []";
  for (int i = 0; i < 300'000; ++i) text += ", \"k" + std::to_string(i) + "\": 0";
  const Job job = read(text + "}");
  EXPECT_EQ(job.extra.size(), 300'000U);
  EXPECT_EQ(read(writeDocument(job)), job);
}

TEST(ReadDocument, TextStaysAsLettered) {
  const Job job = read(smallText(
      "", R"(, "readings": [{"id": "r", "axis": "x", "from": "L", "to": "A", "text": " 1-3/16 "}],)"
          R"( "general": {"fractions": "±1/64", "two_places": "+/-.01"})"));
  const Part& part = job.parts[0];
  EXPECT_EQ(part.readings[0].figure.text, " 1-3/16 ");
  EXPECT_EQ(part.readings[0].figure.value, inches(19, 16));
  EXPECT_EQ(part.general.fractions->text, "±1/64");
  EXPECT_EQ(part.general.fractions->value, inches(1, 64));
  EXPECT_EQ(part.general.twoPlaces->value, inches(1, 100));
  EXPECT_NE(writeDocument(job).find("\" 1-3/16 \""), std::string::npos);
}

TEST(ReadDocument, AByteOrderMarkIsSkippedAndNotWritten) {
  const Job job = read("\xEF\xBB\xBF" + frontPlateText());
  EXPECT_EQ(job, read(frontPlateText()));
  EXPECT_EQ(writeDocument(job)[0], '{');
}

TEST(ReadDocument, OneUnderstoodFeatureMayStandWithoutAList) {
  const Job job = read(smallText(
      R"(, {"id": "B", "kind": "hole"})",
      R"(, "understood": [{"kind": "midway", "axis": "x", "of": ["A"], "between": ["L", "B"]}])"));
  EXPECT_EQ(job.parts[0].understood[0].of, (std::vector<Id>{"A"}));
  EXPECT_NE(writeDocument(job).find(R"("of": "A")"), std::string::npos);
}

}  // namespace
}  // namespace inchwright
