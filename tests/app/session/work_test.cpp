#include "app/session/work.h"

#include <gtest/gtest.h>

#include <QRegularExpression>

#include "app/session/picture_edits.h"
#include "core/document/document.h"

namespace inchwright::app {
namespace {

/// A desk with an empty plate on it, and hands.
class WorkTest : public ::testing::Test {
 protected:
  void SetUp() override {
    Job job;
    Part part;
    part.name = "Plate";
    job.parts.push_back(part);
    desk.take(job, {});
    QObject::connect(&desk, &Desk::refused, [this](const QString& why) { refused << why; });
  }

  void type(std::initializer_list<const char*> lines) {
    for (const char* line : lines) {
      EXPECT_TRUE(work.enter(QString::fromUtf8(line)))
          << line << ": " << refused.join(' ').toStdString();
    }
  }

  void click(double x, double y, const char* place = "") {
    work.point({QPointF(x, y), place, {}, false});
  }

  /// Four sides and two holes where a plate of 2 by 1 1/2 has them.
  void tracePlate() {
    work.trace(FeatureKind::edge);
    click(0, 0.7);
    type({""});
    click(2, 0.7);
    type({""});
    click(1, 0);
    type({""});
    click(1, 1.5);
    type({""});
    work.trace(FeatureKind::hole);
    click(0.377, 0.75);
    type({"A 1/4 ream"});
    click(1.56, 0.752);
    type({""});
  }

  const Part& part() const { return desk.part(); }

  Desk desk;
  Work work{desk};
  QStringList refused;
};

TEST_F(WorkTest, EdgesOfferTheirSidesAndHolesTheLastSize) {
  tracePlate();
  ASSERT_EQ(part().features.size(), 6u);
  const char* sides[] = {"L", "R", "F", "K"};
  for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(part().features[i].id, sides[i]);
  EXPECT_EQ(part().features[1].traced, (std::vector<std::string>{"2.000"}));
  EXPECT_EQ(part().features[5].id, "B");
  EXPECT_EQ(part().features[5].drilled()->diameter->text, "1/4");
  EXPECT_EQ(part().features[5].drilled()->make, Make::ream);
  EXPECT_EQ(part().features[5].traced, (std::vector<std::string>{"1.560", "0.752"}));
}

TEST_F(WorkTest, AChainIsReadByClicksAndFigures) {
  tracePlate();
  work.read();
  click(0, 0, "L");
  click(0, 0, "A");
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L", "A"}));
  type({"3/8"});
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"A"}));
  click(0, 0, "B");
  type({"1 3/16"});
  click(0, 0, "R");
  type({"7/16"});
  ASSERT_EQ(part().readings.size(), 3u);
  EXPECT_EQ(part().readings[1].from, "A");
  EXPECT_EQ(part().readings[1].to, "B");
  EXPECT_TRUE(desk.solution().between("L", "R", Axis::x).has_value());
}

TEST_F(WorkTest, FromTheFirstEachReadingStartsAnew) {
  tracePlate();
  work.read();
  work.setFromFirst(true);
  click(0, 0, "L");
  for (const auto& [place, figure] : {std::pair{"A", "3/8"}, {"B", "1 9/16"}, {"R", "2"}}) {
    click(0, 0, place);
    type({figure});
  }
  for (const Reading& reading : part().readings) EXPECT_EQ(reading.from, "L");
}

TEST_F(WorkTest, AWholeChainByIdsAlone) {
  work.look();
  type({"edge L left", "edge R right", "hole A 1/4", "hole B 1/4"});
  work.read();
  type({"L", "A 3/8", "B 1 3/16", "R 7/16", "L R (2)"});
  ASSERT_EQ(part().readings.size(), 4u);
  EXPECT_EQ(part().readings[2].to, "R");
  EXPECT_TRUE(part().readings[3].figure.reference);
  EXPECT_TRUE(desk.solution().clashes.empty());
}

TEST_F(WorkTest, AChainWalkedBackwardsStillRunsInThePositiveDirection) {
  tracePlate();
  work.read();
  click(0, 0, "B");
  click(0, 0, "A");
  type({"1 3/16"});
  EXPECT_EQ(part().readings[0].from, "A");
  EXPECT_EQ(part().readings[0].to, "B");
}

TEST_F(WorkTest, TheTracingSpeaksAgainstAFigureAndNeverForOne) {
  tracePlate();
  work.read();
  click(0, 0, "L");
  click(0, 0, "A");
  type({"3/8"});
  click(0, 0, "B");
  type({"1 3/16"});
  click(0, 0, "R");
  EXPECT_EQ(work.offer(), "") << "nothing is measured from a picture";
  const std::size_t before = part().readings.size();
  EXPECT_FALSE(work.enter({}));
  EXPECT_EQ(part().readings.size(), before) << "Enter alone takes no figure";
  const Echo doubtful = work.echo("1 7/16");
  EXPECT_TRUE(doubtful.doubtful);
  EXPECT_FALSE(doubtful.refused);
  EXPECT_TRUE(doubtful.text.contains("7/16")) << doubtful.text.toStdString();
  EXPECT_FALSE(work.echo("7/16").doubtful);
}

TEST_F(WorkTest, ARowIsTracedByItsLowerHoleWhicheverIsPointedAtFirst) {
  tracePlate();
  work.setAxis(Axis::x);
  const std::vector<std::string> lower = {tracedText(0.5), tracedText(0.25)};
  struct Row {
    QPointF first, last;
    Axis axis;
  };
  for (const Row& row : {Row{{0.5, 0.25}, {1.5, 0.26}, Axis::x},
                         {{1.5, 0.26}, {0.5, 0.25}, Axis::x},
                         {{0.5, 0.25}, {0.49, 0.75}, Axis::y},
                         {{0.49, 0.75}, {0.5, 0.25}, Axis::y}}) {
    work.trace(FeatureKind::row);
    click(row.first.x(), row.first.y(), "");
    click(row.last.x(), row.last.y(), "");
    type({"3 holes 1/8 drill, 1/4 apart"});
    ASSERT_TRUE(part().features.back().is<kind::Row>());
    EXPECT_EQ(axisOf(part().features.back()), row.axis);
    EXPECT_EQ(part().features.back().traced, lower);
  }
}

TEST_F(WorkTest, EveryExampleThatIsShownIsTaken) {
  tracePlate();
  work.setAxis(Axis::x);
  const QRegularExpression shown(QStringLiteral("such as (.+) or (.+)$"));
  for (const FeatureKind kind : {FeatureKind::edge, FeatureKind::hole, FeatureKind::slot,
                                 FeatureKind::ring, FeatureKind::row, FeatureKind::round}) {
    work.trace(kind);
    click(1, 0.5, "");
    if (kind == FeatureKind::row) click(1.5, 0.5, "");
    const auto found = shown.match(work.prompt());
    ASSERT_TRUE(found.hasMatch()) << work.prompt().toStdString();
    for (int i = 1; i <= 2; ++i) {
      // A name that is there already is another matter.
      QString text = found.captured(i);
      text.replace(QRegularExpression(QStringLiteral("^(L|B) ")), QStringLiteral("EX "));
      const Echo echo = work.echo(text);
      EXPECT_FALSE(echo.refused) << text.toStdString() << ": " << echo.text.toStdString();
    }
  }
}

TEST_F(WorkTest, WhatIsChosenIsPutRightWhereItStands) {
  tracePlate();
  work.look();
  type({"L A 3/8"});
  const Id reading = part().readings[0].id;
  desk.select({{}, {reading}});
  EXPECT_TRUE(work.prompt().contains("corrects it"));
  EXPECT_TRUE(work.echo("7/16").text.contains("was 3/8")) << work.echo("7/16").text.toStdString();
  type({"7/16"});
  ASSERT_EQ(part().readings.size(), 1u);
  EXPECT_EQ(part().readings[0].figure.text, "7/16");
  EXPECT_EQ(part().readings[0].to, "A");
  const auto traced = part().feature("A")->traced;
  desk.select({{"A"}, {}});
  type({"3/16 ream"});
  EXPECT_EQ(diameterOf(*part().feature("A"))->text, "3/16");
  EXPECT_EQ(part().feature("A")->drilled()->make, Make::ream);
  EXPECT_EQ(part().feature("A")->traced, traced);
  type({"point"});
  EXPECT_TRUE(part().feature("A")->is<kind::Point>());
  EXPECT_EQ(part().feature("A")->traced, traced);
  type({"Z9"});
  EXPECT_EQ(part().feature("A"), nullptr);
  ASSERT_NE(part().feature("Z9"), nullptr);
  EXPECT_EQ(part().readings[0].to, "Z9");
  EXPECT_TRUE(desk.selection().places.empty());
  for (int i = 0; i < 4; ++i) desk.undo();
  EXPECT_EQ(part().readings[0].figure.text, "3/8");
  EXPECT_EQ(diameterOf(*part().feature("A"))->text, "1/4");
}

TEST_F(WorkTest, AWholeLineIsALineWhateverIsChosen) {
  tracePlate();
  work.look();
  desk.select({{"A"}, {}});
  type({"hole C 3/8", "L A 3/8"});
  EXPECT_EQ(diameterOf(*part().feature("C"))->text, "3/8");
  EXPECT_EQ(diameterOf(*part().feature("A"))->text, "1/4");
  EXPECT_EQ(part().readings.size(), 1u);
  // Two chosen: nothing says which is meant.
  desk.select({{"A", "B"}, {}});
  EXPECT_FALSE(work.enter("5/16"));
}

TEST_F(WorkTest, ATypedLineIsAsSafeAsAClickedOne) {
  tracePlate();
  work.look();
  type({"L A 3/8", "A B 1 3/16"});
  const Echo doubtful = work.echo("B R 1 7/16");
  EXPECT_TRUE(doubtful.doubtful);
  for (const char* word : {"1 7/16 = 1.4375 in = 36.5125 mm", "the tracing says about 7/16"}) {
    EXPECT_TRUE(doubtful.text.contains(word)) << doubtful.text.toStdString();
  }
  EXPECT_FALSE(work.echo("B R 7/16").doubtful);
  // Walked against its axis it still runs from the lesser end, and says so.
  EXPECT_TRUE(work.echo("R B 7/16").text.contains("from B to R"))
      << work.echo("R B 7/16").text.toStdString();
  type({"R B 7/16"});
  EXPECT_EQ(part().readings.back().from, "B");
  EXPECT_EQ(part().readings.back().to, "R");
}

TEST_F(WorkTest, TheEchoShowsEveryFormAndTheFault) {
  work.read();
  EXPECT_TRUE(work.echo("1 3/16").text.contains("30.1625 mm"));
  EXPECT_TRUE(work.echo("1 3/16").text.contains("1.1875 in"));
  const Echo bad = work.echo("1 3/x");
  EXPECT_TRUE(bad.refused);
  EXPECT_GE(bad.at, 0);
  // Where ends are typed before it, by as much further on.
  tracePlate();
  work.read();
  EXPECT_EQ(work.echo("L A 1 3/x").at, 6);
}

TEST_F(WorkTest, ARefusalChangesNothing) {
  work.look();
  const Job before = desk.job();
  EXPECT_FALSE(work.enter("L A 3/8"));
  EXPECT_EQ(refused.size(), 1);
  EXPECT_EQ(desk.job(), before);
  EXPECT_FALSE(desk.canUndo());
}

TEST_F(WorkTest, UndoingAllGivesTheSameBytes) {
  const std::string before = writeDocument(desk.job());
  tracePlate();
  work.read();
  type({"L", "A 3/8", "B 1 3/16", "R 7/16"});
  work.relate(UnderstandingKind::inLine);
  work.setAxis(Axis::y);
  type({"A B"});
  work.zero();
  click(0, 0, "A");
  type({""});
  const std::string after = writeDocument(desk.job());
  int steps = 0;
  while (desk.canUndo()) {
    desk.undo();
    ++steps;
  }
  EXPECT_EQ(writeDocument(desk.job()), before);
  while (desk.canRedo()) desk.redo();
  EXPECT_EQ(writeDocument(desk.job()), after);
  EXPECT_EQ(steps, 11);
}

TEST_F(WorkTest, MidwayByThreeClicks) {
  tracePlate();
  work.relate(UnderstandingKind::midway);
  work.setAxis(Axis::y);
  for (const char* place : {"A", "F", "K"}) click(0, 0, place);
  type({"stated"});
  ASSERT_EQ(part().understood.size(), 1u);
  EXPECT_EQ(part().understood[0].between, (std::vector<Id>{"F", "K"}));
  EXPECT_TRUE(part().understood[0].stated);
}

TEST_F(WorkTest, AnOfferThatWasTakenOrLeftIsNotMadeAgain) {
  tracePlate();
  Job squared = *layPicture(desk.job(), 0, Face::top, "sheet", "bytes");
  squared.pictures[0].points = {{0, 300, *readLength("0"), *readLength("0")},
                                {400, 300, *readLength("4"), *readLength("0")}};
  desk.apply(squared, "square up");
  work.setAxis(Axis::y);
  work.relate(UnderstandingKind::midway);
  EXPECT_EQ(work.offer(), "A F K");
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
  work.relate(UnderstandingKind::midway);
  EXPECT_EQ(work.offer(), "B F K");
  type({""});
  EXPECT_EQ(part().understood.back().of, std::vector<Id>{"B"});
  EXPECT_EQ(work.offer(), "");
  // What is left of one kind is still offered of another.
  work.relate(UnderstandingKind::inLine);
  EXPECT_EQ(work.offer(), "A B");
}

TEST_F(WorkTest, ZeroInTheMiddleOfTheStock) {
  tracePlate();
  work.zero();
  click(0, 0, "L");
  click(0, 0, "R");
  type({"stock"});
  ASSERT_EQ(part().setups.size(), 1u);
  EXPECT_EQ(part().setups[0].zero[0].middle, (std::vector<Id>{"L", "R"}));
  EXPECT_TRUE(part().setups[0].zero[0].ofStock);
}

TEST_F(WorkTest, TheSecondReadingNeverShowsTheFirst) {
  tracePlate();
  work.read();
  type({"L", "A 3/8", "B 1 3/16"});
  work.reread();
  EXPECT_FALSE(work.prompt().contains("3/8")) << work.prompt().toStdString();
  type({"3/8"});
  EXPECT_EQ(part().readings[0].again, "3/8");
  EXPECT_FALSE(work.prompt().contains("3/16"));
  // Two that differ are settled by a third look.
  type({"1 5/16"});
  EXPECT_EQ(part().readings[1].again, "");
  EXPECT_FALSE(work.prompt().contains("3/16") || work.prompt().contains("5/16"));
  type({"1 5/16"});
  EXPECT_EQ(part().readings[1].figure.text, "1 5/16");
  EXPECT_EQ(part().readings[1].again, "1 5/16");
  EXPECT_EQ(work.prompt(), QStringLiteral("Every figure has been read twice"));
  EXPECT_FALSE(work.enter(QStringLiteral("3/8")));
}

// Turning to another face is no reason to lay down what is in hand.
TEST_F(WorkTest, AnotherFaceLeavesTheToolInHand) {
  tracePlate();
  work.trace(FeatureKind::hole);
  desk.chooseFace(Face::front);
  EXPECT_EQ(work.doing(), Doing::tracing);
  work.read();
  desk.chooseFace(Face::top);
  EXPECT_EQ(work.doing(), Doing::reading);
  work.zero();
  desk.chooseFace(Face::front);
  EXPECT_EQ(work.doing(), Doing::zeroing);
}

TEST_F(WorkTest, EscapeStepsBackAndThenLooks) {
  tracePlate();
  work.read();
  click(0, 0, "L");
  click(0, 0, "A");
  work.back();
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"L"}));
  work.back();
  work.back();
  EXPECT_EQ(work.doing(), Doing::looking);
}

TEST_F(WorkTest, SquaringUpTakesPointsAndThenLooks) {
  work.squareUp();
  EXPECT_EQ(work.doing(), Doing::looking);
  EXPECT_EQ(refused.size(), 1);
  desk.apply(*layPicture(desk.job(), 0, Face::top, "sheet", "bytes"), "lay");
  work.squareUp();
  ASSERT_EQ(work.doing(), Doing::squaring);
  click(1, -5);
  EXPECT_EQ(work.offer(), "0, 0");
  type({""});
  click(4, -1);
  type({"3 7/8, 6 1/4"});
  EXPECT_EQ(work.marks().size(), 2u);
  type({""});
  EXPECT_EQ(work.doing(), Doing::looking);
  const Picture* picture = desk.job().picture("sheet");
  ASSERT_NE(picture, nullptr);
  ASSERT_EQ(picture->points.size(), 2u);
  EXPECT_EQ(picture->points[0].pixelX, 100);
  EXPECT_EQ(picture->points[0].pixelY, 500);
  EXPECT_EQ(picture->points[1].y.value, Length::ticks(15'875'000'000));
}

struct TwoRow {
  const char* text;
  const char* x;  ///< null: refused
  const char* y;
};

TEST(TwoLengths, WhereTheSecondBegins) {
  const TwoRow rows[] = {{"0 0", "0", "0"},
                         {"3 7/8 0", "3 7/8", "0"},
                         {"3 7/8, 1 1/2", "3 7/8", "1 1/2"},
                         {"1 1/2 3 1/4", "1 1/2", "3 1/4"},
                         {"12.7 mm, 5", "12.7 mm", "5"},
                         {"", nullptr, nullptr},
                         {"3", nullptr, nullptr},
                         {"x y", nullptr, nullptr},
                         {"1, 2, 3", nullptr, nullptr}};
  for (const TwoRow& row : rows) {
    SCOPED_TRACE(row.text);
    const auto two = readTwoLengths(row.text, Unit::inch);
    ASSERT_EQ(two.ok(), row.x != nullptr);
    if (!two.ok()) continue;
    EXPECT_EQ(two->first.value, readLength(row.x)->value);
    EXPECT_EQ(two->second.value, readLength(row.y)->value);
  }
}

// What clicks gave of a ring is in doubt until it is accepted; then it is a figure like others.
TEST_F(WorkTest, AcceptingConfirmsWhatClicksGave) {
  Job job = desk.job();
  Feature feature;
  feature.id = "G";
  feature.shape = kind::Ring{};
  kind::Ring& ring = *feature.as<kind::Ring>();
  ring.pitchDiameter = *readLength("2");
  ring.byTrace = {"pcd"};
  job.parts[0].features.push_back(feature);
  desk.take(job, {});
  AcceptedDoubt doubt("assumed:::G");
  doubt.about = "2";
  work.accept({doubt}, "2 of G came from where it was traced");
  type({"stepped off"});
  EXPECT_TRUE(part().feature("G")->as<kind::Ring>()->byTrace.empty());
  ASSERT_EQ(part().accepted.size(), 1u);
  EXPECT_EQ(part().accepted[0].reason, "stepped off");
  desk.undo();
  EXPECT_EQ(part().feature("G")->as<kind::Ring>()->byTrace.size(), 1u);
  EXPECT_TRUE(part().accepted.empty());
}

}  // namespace
}  // namespace inchwright::app
