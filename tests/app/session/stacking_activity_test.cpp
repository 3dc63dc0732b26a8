// Choosing the two ends of a stack, or a gap by its name.

#include <QStringList>

#include "tests/support/kit_on_desk.h"
#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class StackingTest : public PlateOnDesk {
 protected:
  void SetUp() override {
    PlateOnDesk::SetUp();
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
    put(
        jobOfPlate("edge L left\nedge R right\nedge F front\nedge K back\nhole A 1/4\nhole B 1/4\n"
                   "L A 3/8\nA B 1 3/16\nF K 1\n"));
    work.stack();
  }
  void click(std::initializer_list<const char*> places) {
    for (const char* place : places) work.point({{}, place, {}, false});
  }
  QStringList refused;
};

TEST_F(StackingTest, TwoEndsByClicksOrByNamesAreOneStack) {
  std::vector<Id> lit;
  QObject::connect(
      &work, &Work::show, &work,
      [&](const std::vector<Id>&, const std::vector<Id>& readings) { lit = readings; });
  click({"L", "", "L"});
  EXPECT_EQ(work.chosen(), std::vector<Id>{"L"});
  EXPECT_FALSE(work.stacked());
  EXPECT_TRUE(lit.empty());
  EXPECT_TRUE(work.prompt().endsWith("point at the other end"));
  click({"B"});
  ASSERT_TRUE(work.stacked() && work.stacked()->ok());
  EXPECT_EQ(lit.size(), 2u) << "both links of the chain are lit";
  EXPECT_EQ(work.prompt(), "The stack from L to B; Escape to choose others");
  // A third begins another, and names do as clicks.
  click({"A"});
  EXPECT_EQ(work.chosen(), std::vector<Id>{"A"});
  for (const char* names : {"L B", "A L", "F K"}) {
    EXPECT_TRUE(work.enter("L"));
    work.stack();
    EXPECT_TRUE(work.enter(names)) << names;
    ASSERT_TRUE(work.stacked()) << names;
    EXPECT_TRUE(work.stacked()->ok()) << names;
  }
  EXPECT_EQ(work.axis(), Axis::y) << "along which F and K lie";
  EXPECT_FALSE(desk.canUndo()) << "nothing of it is an edit";
}

TEST_F(StackingTest, WhatDoesNotHangTogetherSaysSoAndWhatIsNoPlaceIsRefused) {
  click({"L", "R"});
  ASSERT_TRUE(work.stacked());
  EXPECT_FALSE(work.stacked()->ok());
  EXPECT_FALSE(work.stacked()->error().text.empty());
  for (const char* wrong : {"Q", "3/8", "A Q"}) EXPECT_FALSE(work.enter(wrong)) << wrong;
  EXPECT_EQ(refused, (QStringList{"There is no feature Q", "There is no feature 3/8",
                                  "There is no feature Q"}));
  EXPECT_FALSE(work.enter({}));
  // Two that no axis has in common make no stack.
  work.stack();
  click({"L", "F"});
  EXPECT_EQ(work.chosen(), std::vector<Id>{"L"});
}

TEST_F(StackingTest, EscapeGivesUpTheLastEndFirst) {
  click({"L", "B"});
  work.back();
  EXPECT_EQ(work.chosen(), std::vector<Id>{"L"});
  EXPECT_FALSE(work.stacked());
  work.back();
  EXPECT_EQ(work.doing(), Doing::stacking);
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
}

// The stack is of the document as it stands.
TEST_F(StackingTest, AnEditOfAFigureIsInTheStack) {
  click({"L", "B"});
  const auto inches = [&] {
    const auto now = work.stacked();
    return !now || !now->ok() ? 0.0
                              : now->value().ways[0].stack.nominal.toDouble() /
                                    static_cast<double>(Length::kTicksPerInch);
  };
  EXPECT_DOUBLE_EQ(inches(), 1.5625);  // 3/8 + 1 3/16
  Job job = desk.job();
  job.parts[0].readings[0].figure = *readLength("5/8");
  desk.apply(job, "Another figure");
  EXPECT_DOUBLE_EQ(inches(), 1.8125);
  desk.undo();
  EXPECT_DOUBLE_EQ(inches(), 1.5625);
}

using StackedGap = KitOnDesk;

TEST_F(StackedGap, AGapIsStackedByItsNameUntilPlacesAreChosen) {
  Work work{desk};
  ASSERT_FALSE(desk.job().gaps.empty());
  const std::string name = desk.job().gaps.front().name;
  work.stack();
  EXPECT_TRUE(work.enter(QString::fromStdString(name)));
  ASSERT_TRUE(work.stacked());
  EXPECT_TRUE(work.stacked()->ok());
  EXPECT_EQ(
      work.prompt(),
      QStringLiteral("The gap %1; Escape to choose others").arg(QString::fromStdString(name)));
  work.back();
  EXPECT_FALSE(work.stacked());
  EXPECT_EQ(work.doing(), Doing::stacking);
  EXPECT_TRUE(work.enter(QString::fromStdString(name)));
  work.point({{}, desk.part().features.front().id, {}, false});
  EXPECT_FALSE(work.stacked()) << "one end alone, and no gap any more";
}

}  // namespace
}  // namespace inchwright::app
