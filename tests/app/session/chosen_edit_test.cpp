#include "app/session/chosen_edit.h"

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class ChosenEditTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    enterLines({"edge L left", "edge F front", "hole A 1/4 ream", "hole B 1/4", "L A 3/8",
                "F A 1/2", "A B 1 3/16"});
  }

  std::optional<ChosenEdit> edit(Selection chosen, const char* text) {
    desk.select(std::move(chosen));
    return editOfChosen(hands, QString::fromUtf8(text));
  }

  Hands hands{desk};
};

TEST_F(ChosenEditTest, AFigureIsReadAnew) {
  const auto made = edit({{}, {"r3"}}, "1 5/16");
  ASSERT_TRUE(made);
  EXPECT_EQ(made->part.reading("r3")->figure.text, "1 5/16");
  EXPECT_EQ(made->title, QStringLiteral("Read 1 3/16 from A to B as 1 5/16"));
  EXPECT_TRUE(made->echo.text.startsWith(QStringLiteral("A to B was 1 3/16, now ")))
      << made->echo.text.toStdString();
  EXPECT_EQ(desk.part().reading("r3")->figure.text, "1 3/16") << "it is only proposed";
}

TEST_F(ChosenEditTest, ASecondLookDoesNotOutliveTheFigureItWasAt) {
  Job job = desk.job();
  job.parts[0].readings[2].again = "1 5/16";
  desk.apply(job, QStringLiteral("second look"));
  const auto made = edit({{}, {"r3"}}, "1 5/16");
  ASSERT_TRUE(made);
  EXPECT_TRUE(made->part.reading("r3")->again.empty());
}

TEST_F(ChosenEditTest, WhatIsNoFigureIsNone) {
  EXPECT_FALSE(edit({{}, {"r3"}}, "Q"));
  EXPECT_FALSE(edit({{}, {"r9"}}, "3/8")) << "there is no such reading";
}

TEST_F(ChosenEditTest, AFeatureTakesItsSizeAndKeepsNameAndPlace) {
  Job job = desk.job();
  job.parts[0].features[2].traced = {"0.38", "0.51"};
  desk.apply(job, QStringLiteral("trace"));
  const auto made = edit({{"A"}, {}}, "5/16 ream");
  ASSERT_TRUE(made);
  const Feature& hole = *made->part.feature("A");
  EXPECT_EQ(hole.drilled()->diameter->text, "5/16");
  EXPECT_EQ(hole.drilled()->make, Make::ream);
  EXPECT_EQ(hole.traced, (std::vector<std::string>{"0.38", "0.51"}));
  EXPECT_EQ(made->part.readings.size(), desk.part().readings.size());
  EXPECT_TRUE(made->echo.text.contains(QStringLiteral("0.3125")));
}

TEST_F(ChosenEditTest, AFreeNameRenamesWithAllThatMentionsIt) {
  const auto made = edit({{"A"}, {}}, "Q");
  ASSERT_TRUE(made);
  EXPECT_EQ(made->part.feature("A"), nullptr);
  ASSERT_NE(made->part.feature("Q"), nullptr);
  EXPECT_EQ(made->part.reading("r1")->to, "Q");
  EXPECT_EQ(made->part.reading("r3")->from, "Q");
}

TEST_F(ChosenEditTest, ANameThatIsTakenIsNone) {
  EXPECT_FALSE(edit({{"A"}, {}}, "B"));
  EXPECT_FALSE(edit({{"A"}, {}}, "A B")) << "two words are no name";
}

TEST_F(ChosenEditTest, AWordThatBeginsALineIsNoName) {
  EXPECT_FALSE(edit({{"A"}, {}}, "delete"));
  EXPECT_FALSE(edit({{"A"}, {}}, "rename"));
  EXPECT_FALSE(edit({{"A"}, {}}, "midway"));
  EXPECT_TRUE(edit({{"A"}, {}}, "deleted"));
}

TEST_F(ChosenEditTest, SeveralOrNothingChosenIsNone) {
  EXPECT_FALSE(edit({}, "3/8"));
  EXPECT_FALSE(edit({{"A"}, {"r3"}}, "3/8"));
  EXPECT_FALSE(edit({{"A", "B"}, {}}, "3/8"));
}

}  // namespace
}  // namespace inchwright::app
