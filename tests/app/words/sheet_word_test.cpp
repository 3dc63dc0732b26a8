#include <gtest/gtest.h>

#include <cstdlib>

#include "app/base/sheet_date.h"
#include "app/words/sheet_file.h"
#include "tests/app/words/spoken.h"
#include "tests/support/xml.h"

namespace inchwright::app {
namespace {

TEST(SheetWord, WritesAPdfOfAllSetupsAndSaysWhere) {
  const Scratch scratch;
  const std::string out = scratch.path("sheet.pdf");
  const Spoken spoken = say({"sheet", sample("front_plate"), "--out", out});
  EXPECT_EQ(spoken.status, kFine) << spoken.err;
  EXPECT_EQ(spoken.out, out + "\n");
  const std::string pdf = Scratch::read(out);
  EXPECT_EQ(pdf.rfind("%PDF-", 0), 0u);
  EXPECT_TRUE(bearsOurMark(pdf));
}

TEST(SheetWord, TheSameCallGivesTheSameBytes) {
  const Scratch scratch;
  for (const std::string name : {"a", "b"}) {
    ASSERT_EQ(say({"sheet", sample("front_plate"), "--out", scratch.path(name + ".pdf")}).status,
              kFine);
  }
  EXPECT_EQ(Scratch::read(scratch.path("a.pdf")), Scratch::read(scratch.path("b.pdf")));
}

TEST(SheetWord, TheEndingSaysWhatIsWantedAndSeveralPagesAreNumbered) {
  const Scratch scratch;
  for (const std::string ending : {"svg", "PNG"}) {
    const Spoken spoken =
        say({"sheet", sample("front_plate"), "--out", scratch.path("s." + ending)});
    ASSERT_EQ(spoken.status, kFine) << spoken.err;
    std::istringstream files(spoken.out);
    int number = 0;
    for (std::string file; std::getline(files, file);) {
      EXPECT_EQ(file, scratch.path("s-" + std::to_string(++number) + "." + ending));
      const std::string bytes = Scratch::read(file);
      EXPECT_TRUE(bearsOurMark(bytes)) << file;
      if (ending == "svg") test::expectSvg(QByteArray::fromStdString(bytes));
    }
    EXPECT_GT(number, 1);
  }
  EXPECT_EQ(say({"sheet", sample("front_plate"), "--out", scratch.path("s.doc")}).status,
            kUnusable);
  for (const std::vector<std::string>& args : std::vector<std::vector<std::string>>{
           {"sheet", sample("front_plate")}, {"sheet", sample("front_plate"), "--out", ""}}) {
    const Spoken nowhere = say(args);
    EXPECT_EQ(nowhere.status, kUnusable);
    EXPECT_NE(nowhere.err.find("say where to: --out NAME.pdf"), std::string::npos) << nowhere.err;
  }
}

TEST(SheetWord, ReplacesItsOwnFilesButNoOthers) {
  const Scratch scratch;
  const std::string theirs = scratch.write("notes.pdf", "%PDF-1.4 about Inchwright, not by it");
  const Spoken refused = say({"sheet", sample("bracket"), "--out", theirs});
  EXPECT_EQ(refused.status, kUnusable);
  EXPECT_NE(refused.err.find("--force"), std::string::npos);
  EXPECT_EQ(Scratch::read(theirs), "%PDF-1.4 about Inchwright, not by it");
  EXPECT_EQ(say({"sheet", sample("bracket"), "--out", theirs, "--force"}).status, kFine);
  EXPECT_TRUE(bearsOurMark(Scratch::read(theirs)));
  EXPECT_EQ(say({"sheet", sample("bracket"), "--out", theirs}).status, kFine);
}

// What another program drew is not ours because it names us, nor ours because it looks alike.
TEST(SheetWord, OurMarkIsThatOfItsFormatAndStandsInItsPlace) {
  const Scratch scratch;
  for (const std::string name : {"s.pdf", "s.svg", "s.png", "s.html"}) {
    const Spoken spoken = say({"sheet", sample("bracket"), "--out", scratch.path(name)});
    ASSERT_EQ(spoken.status, kFine) << spoken.err;
    const std::string first = spoken.out.substr(0, spoken.out.find('\n'));
    EXPECT_TRUE(bearsOurMark(Scratch::read(first))) << first;
    EXPECT_EQ(say({"sheet", sample("bracket"), "--out", scratch.path(name)}).status, kFine) << name;
  }
  for (const std::string theirs :
       {"", "Inchwright ", "<!DOCTYPE html><title>Inchwright 0.1</title>",
        "<!DOCTYPE html><desc>Inchwright 0.1</desc><svg>",
        "<svg><title>Inchwright 0.1</title></svg>", "<desc>Inchwright 0.1</desc>",
        "%PDF-1.4 <desc>Inchwright 0.1</desc><svg>",
        "\x89PNG\r\n\x1a\n<svg><desc>Inchwright 0.1</desc>",
        "<meta name=\"generator\" content=\"Inchwright 0.1\">"}) {
    EXPECT_FALSE(bearsOurMark(theirs)) << theirs;
    for (const std::string ending : {"pdf", "svg", "png", "html"}) {
      const std::string file = scratch.write("theirs." + ending, theirs);
      EXPECT_FALSE(mayReplace(file, false).ok()) << theirs;
      EXPECT_TRUE(mayReplace(file, true).ok());
    }
  }
  EXPECT_TRUE(mayReplace(scratch.path("not there.pdf"), false).ok());
}

TEST(SheetWord, OneForeignFileAmongTheNumberedStopsAllOfThem) {
  const Scratch scratch;
  const std::string second = scratch.write("s-2.svg", "<svg>drawn by hand</svg>");
  EXPECT_EQ(say({"sheet", sample("front_plate"), "--out", scratch.path("s.svg")}).status,
            kUnusable);
  EXPECT_FALSE(std::filesystem::exists(scratch.path("s-1.svg")));
  EXPECT_EQ(Scratch::read(second), "<svg>drawn by hand</svg>");
}

TEST(SheetWord, PaperAndDistanceAreHeeded) {
  const Scratch scratch;
  const auto pageOf = [&](const std::vector<std::string>& more) {
    std::vector<std::string> args{"sheet", sample("bracket"),    "--setup", "1", "--force",
                                  "--out", scratch.path("p.pdf")};
    args.insert(args.end(), more.begin(), more.end());
    const Spoken spoken = say(args);
    return spoken.status == kFine ? Scratch::read(scratch.path("p.pdf")) : spoken.err;
  };
  const std::string plain = pageOf({});
  ASSERT_EQ(plain.rfind("%PDF-", 0), 0u) << plain;
  EXPECT_EQ(pageOf({"--paper", "a4", "--distance", "1 m"}), plain);
  EXPECT_EQ(pageOf({"--distance", "1"}), plain);
  EXPECT_EQ(pageOf({"--distance", "1000 mm"}), plain);
  EXPECT_NE(pageOf({"--distance", "1.5 m"}), plain);
  for (const char* last : {"0.3 m", "300 mm", "3 m"}) {
    EXPECT_EQ(pageOf({"--distance", last}).rfind("%PDF-", 0), 0u) << last;
  }
  EXPECT_NE(pageOf({"--paper", "letter"}).find("612"), std::string::npos);
  for (const char* bad : {"", "m", "1 furlong", "0", "-1 m", "1 mm", "0.29 m", "3.01 m", "9 m"}) {
    EXPECT_EQ(pageOf({"--distance", bad}).rfind("inchwright sheet: ", 0), 0u) << bad;
  }
  EXPECT_EQ(pageOf({"--english", "uk"}), plain);
  EXPECT_EQ(pageOf({"--english", "scots"}).rfind("inchwright sheet: --english", 0), 0u);
  EXPECT_EQ(pageOf({"--paper", "foolscap"}).rfind("inchwright sheet: --paper", 0), 0u);
}

TEST(SheetWord, FindingsAreToldAndTheSheetIsWrittenAllTheSame) {
  const Scratch scratch;
  const std::string out = scratch.path("draft.pdf");
  EXPECT_EQ(say({"sheet", sample("barrel_bridge"), "--out", out}).status, kFindings);
  EXPECT_TRUE(bearsOurMark(Scratch::read(out)));
}

TEST(SheetDate, FollowsTheEnvironmentWhereItNamesAMoment) {
  ::setenv("SOURCE_DATE_EPOCH", "86400", 1);
  EXPECT_EQ(sheetDate(), "1970-01-02");
  ::setenv("SOURCE_DATE_EPOCH", "yesterday", 1);
  const std::string today = sheetDate();
  ::unsetenv("SOURCE_DATE_EPOCH");
  EXPECT_EQ(today, sheetDate());
  EXPECT_EQ(today.size(), 10u);
}

}  // namespace
}  // namespace inchwright::app
