#include <gtest/gtest.h>

#include <string>

#include "core/document/document.h"
#include "tests/core/document/document_text.h"

namespace inchwright {
namespace {

// As the program writes it: one member of a gap a line.
constexpr const char* kGaps = R"({
  "inchwright": 1,
  "job": {"title": "", "print": "", "unit": "in", "notes": ""},
  "machine": {"unit": "in", "step": "0.0005", "x_counts": "right", "y_counts": "away", "finder": "0.200", "accuracy": "0.0005", "finder_error": "0.001"},
  "parts": [
    {
      "name": "Plate",
      "quantity": 2,
      "material": "",
      "features": [
        {"id": "U", "kind": "edge", "axis": "z", "side": "bottom"},
        {"id": "T", "kind": "edge", "axis": "z", "side": "top"}
      ],
      "readings": [
        {"id": "r1", "axis": "z", "from": "U", "to": "T", "text": "1/8"}
      ],
      "understood": [],
      "setups": []
    }
  ],
  "gaps": [
    {
      "name": "end shake",
      "least": ".003",
      "greatest": ".015",
      "members": [
        {"part": "Plate", "axis": "z", "from": "U", "to": "T", "sign": "+"},
        {"name": "washer", "part": "Plate", "length": "1/32 ±.002", "sign": "-"},
        {"fit": "H7/g6", "size": "1/4", "sign": "+"},
        {"hole": ".2505", "shaft": ".2490", "sign": "+"},
        {"fit": "close", "screw": "#8-32", "sign": "+"}
      ]
    },
    {
      "name": "nothing yet",
      "members": []
    }
  ]
}
)";

TEST(GapDocument, IsReadAsItSays) {
  const auto job = readDocument(kGaps);
  ASSERT_TRUE(job.ok()) << job.error().place << ' ' << job.error().text;
  ASSERT_EQ(job->gaps.size(), 2u);
  const Gap* gap = job->gap("end shake");
  ASSERT_NE(gap, nullptr);
  EXPECT_EQ(gap->least->value, Length::ticks(3 * 2'540'000));
  EXPECT_EQ(gap->greatest->text, ".015");
  ASSERT_EQ(gap->members.size(), 5u);
  EXPECT_EQ(gap->members[0].part, "Plate");
  EXPECT_EQ(gap->members[0].axis, Axis::z);
  EXPECT_EQ(gap->members[0].from, "U");
  EXPECT_EQ(gap->members[0].to, "T");
  EXPECT_EQ(gap->members[0].sign, 1);
  EXPECT_EQ(gap->members[1].sign, -1);
  EXPECT_EQ(gap->members[1].name, "washer");
  EXPECT_TRUE(gap->members[1].length->tolerance.has_value());
  EXPECT_EQ(gap->members[2].fit, "H7/g6");
  EXPECT_EQ(gap->members[2].size->text, "1/4");
  EXPECT_EQ(std::get<Lettered>(*gap->members[3].shaft).text, ".2490");
  EXPECT_EQ(gap->members[4].screw, "#8-32");
  EXPECT_EQ(gap->members[4].fit, "close");
  EXPECT_FALSE(job->gap("nothing yet")->least.has_value());
  EXPECT_EQ(job->machine.accuracy->text, "0.0005");
  EXPECT_EQ(job->machine.finderError->value, Length::ticks(2'540'000));
}

TEST(GapDocument, IsWrittenAsItWasRead) {
  const auto job = readDocument(kGaps);
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(writeDocument(*job), kGaps);
}

TEST(GapDocument, UnknownMembersAreKept) {
  const std::string text = with(
      with(kGaps, R"("size": "1/4", "sign": "+")", R"("size": "1/4", "sign": "+", "grade": 1.50)"),
      R"("greatest": ".015",)", R"("greatest": ".015", "why": ["so"],)");
  const auto job = readDocument(text);
  ASSERT_TRUE(job.ok());
  const std::string written = writeDocument(*job);
  EXPECT_NE(written.find(R"("grade": 1.50)"), std::string::npos);
  EXPECT_NE(written.find(R"("why": ["so"])"), std::string::npos);
  EXPECT_EQ(*readDocument(written), *job);
}

TEST(GapDocument, BareFiguresAreInTheUnitOfTheJob) {
  const auto job =
      readDocument(with(kGaps, R"("unit": "in", "notes")", R"("unit": "mm", "notes")"));
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->gaps[0].least->value, Length::ticks(300'000));
  EXPECT_EQ(job->machine.accuracy->value, Length::ticks(1'270'000));  // the machine's own unit
}

// A part may be edited after its gap was named: the document stays readable.
TEST(GapDocument, MayNameWhatIsNotThere) {
  EXPECT_TRUE(readDocument(with(kGaps, R"("to": "T", "sign")", R"("to": "Q", "sign")")).ok());
  EXPECT_TRUE(readDocument(with(kGaps, R"({"part": "Plate")", R"({"part": "Cover")")).ok());
  EXPECT_TRUE(readDocument(with(kGaps, "H7/g6", "loose")).ok());
}

struct BadGap {
  const char* find;
  const char* replacement;
  const char* place;
  const char* says;
};

TEST(GapDocument, BadValuesAreRefusedWithTheirPlace) {
  const BadGap rows[] = {
      {R"("name": "end shake",)", "", "/gaps/0/name", "name"},
      {R"("name": "end shake")", R"("name": "nothing yet")", "/gaps/1/name", "name"},
      {R"("name": "end shake")", R"("name": 7)", "/gaps/0/name", "a string"},
      {R"(".003")", R"("thin")", "/gaps/0/least", ""},
      {R"(".015")", "0.015", "/gaps/0/greatest", "a string"},
      {R"("members": [])", R"("members": {})", "/gaps/1/members", "list"},
      {R"("members": [])", R"("parts": [])", "/gaps/1", "members"},
      {R"({"part": "Plate", "axis")", R"(7, {"part": "Plate", "axis")", "/gaps/0/members/0", ""},
      {R"("sign": "-")", R"("sign": "minus")", "/gaps/0/members/1/sign", "`+` or `-`"},
      {R"("sign": "-")", R"("sign": -1)", "/gaps/0/members/1/sign", "a string"},
      {R"("z", "from": "U", "to": "T", "sign")", R"("w", "from": "U", "to": "T", "sign")",
       "/gaps/0/members/0/axis", "`x`"},
      {R"("from": "U", "to": "T", "sign")", R"("from": 1, "to": "T", "sign")",
       "/gaps/0/members/0/from", "a string"},
      {R"("1/32 ±.002")", R"("1/32 by hand")", "/gaps/0/members/1/length", ""},
      {R"("size": "1/4")", R"("size": null)", "/gaps/0/members/2/size", "null"},
      {R"("fit": "H7/g6")", R"("fit": ["H7", "g6"])", "/gaps/0/members/2/fit", "a list"},
      {R"(".2505")", R"("")", "/gaps/0/members/3/hole", ""},
      {R"(".2490")", R"("-.249.")", "/gaps/0/members/3/shaft", ""},
      {R"("gaps": [)", R"("gaps": 3, "was": [)", "/gaps", "a list"},
      {R"("accuracy": "0.0005")", R"("accuracy": "-0.0005")", "/machine/accuracy", "below 0"},
      {R"("accuracy": "0.0005")", R"("accuracy": 0.0005)", "/machine/accuracy", "a string"},
      {R"("finder_error": "0.001")", R"("finder_error": "-1")", "/machine/finder_error", "below 0"},
      {R"("finder_error": "0.001")", R"("finder_error": "good")", "/machine/finder_error", ""},
  };
  for (const BadGap& row : rows) {
    SCOPED_TRACE(row.replacement);
    const auto job = readDocument(with(kGaps, row.find, row.replacement));
    ASSERT_FALSE(job.ok());
    EXPECT_EQ(job.error().code, ErrorCode::badDocument);
    EXPECT_EQ(job.error().place, row.place) << job.error().text;
    EXPECT_NE(job.error().text.find(row.says), std::string::npos) << job.error().text;
  }
}

}  // namespace
}  // namespace inchwright
