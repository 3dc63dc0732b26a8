// Tracing: what a click stands for, what its name and size make of it, and what stays pending.

#include <QStringList>

#include "tests/support/plate_on_desk.h"

namespace inchwright::app {
namespace {

class TracingActivityTest : public PlateOnDesk {
 protected:
  using Traced = std::vector<std::string>;

  TracingActivityTest() {
    QObject::connect(&desk, &Desk::refused, &desk, [this](const QString& why) { refused << why; });
  }
  void click(double x, double y) { work.point({QPointF(x, y), {}, {}, false, 0.03}); }
  std::size_t count() const { return desk.part().features.size(); }
  const Feature& last() const { return desk.part().features.back(); }

  QStringList refused;
};

// The marks number what is pointed at, so they are shown where there is more than one.
TEST_F(TracingActivityTest, PlacesThatAreAlikeAreMarkedAndNamedInTheirOrder) {
  work.trace(FeatureKind::hole);
  click(1, 1);
  EXPECT_TRUE(work.marks().empty()) << "one alone needs no number";
  EXPECT_EQ(work.offer(), "A");
  click(2, 1);
  click(3, 1.5);
  EXPECT_EQ(work.marks(), (std::vector<QPointF>{{1, 1}, {2, 1}, {3, 1.5}}));
  EXPECT_EQ(work.pending(), QPointF(3, 1.5));
  EXPECT_EQ(work.offer(), "") << "a name alone says nothing of three";
  // The same spot again is the last one put right, no fourth.
  click(3.01, 1.51);
  EXPECT_EQ(work.marks().size(), 3u);
  EXPECT_EQ(work.marks().back(), QPointF(3.01, 1.51));
  EXPECT_TRUE(work.echo("2 holes 1/8").doubtful) << "three are pointed at";
  EXPECT_FALSE(work.echo("3 holes 1/8").doubtful);
  work.back();
  EXPECT_EQ(work.marks().size(), 2u);
  enterLines({"1/8 drill"});
  ASSERT_EQ(count(), 2u);
  EXPECT_EQ(desk.part().features[0].traced, (Traced{"1.000", "1.000"}));
  EXPECT_EQ(last().id, "B");
  EXPECT_EQ(last().traced, (Traced{"2.000", "1.000"}));
  EXPECT_TRUE(work.marks().empty());
  EXPECT_FALSE(work.pending());
  // What comes next is likely of the same size.
  click(2.5, 1);
  EXPECT_EQ(work.offer(), "C 1/8 drill");
}

TEST_F(TracingActivityTest, OneNameForSeveralIsRefusedAndTheyStayPointedAt) {
  work.trace(FeatureKind::hole);
  click(1, 1);
  click(2, 1);
  for (const char* wrong : {"Q 1/4", "edge S x"}) {
    refused.clear();
    EXPECT_FALSE(work.enter(wrong)) << wrong;
    EXPECT_EQ(refused.size(), 1) << wrong;
    EXPECT_EQ(work.marks().size(), 2u) << wrong;
    EXPECT_EQ(count(), 0u) << wrong;
  }
  enterLines({"A 1/4"});
  EXPECT_EQ(count(), 2u) << "the name that comes next anyway names the first";
}

// Round (2, 1) through points at a radius of one; points in line make no arc.
TEST_F(TracingActivityTest, AnArcIsKeptByItsCentreAndALineByItsEnds) {
  work.trace(FeatureKind::arc);
  click(3, 1);
  click(2, 2);
  EXPECT_EQ(work.offer(), "") << "it is not all there yet";
  EXPECT_TRUE(work.prompt().contains("the next point"));
  click(1, 1);
  enterLines({""});
  EXPECT_EQ(last().traced, (Traced{"2.000", "1.000", "1.000"}));
  for (const double x : {0.0, 1.0, 2.0}) click(x, 1);
  enterLines({""});
  EXPECT_TRUE(last().is<kind::Arc>());
  EXPECT_TRUE(last().traced.empty());
  work.trace(FeatureKind::line);
  click(0.25, 0.5);
  EXPECT_FALSE(work.enter({}));
  click(1.25, 0.75);
  enterLines({""});
  EXPECT_EQ(last().traced, (Traced{"0.250", "0.500", "1.250", "0.750"}));
}

TEST_F(TracingActivityTest, AnEdgeIsTracedAlongItsOwnAxisAlone) {
  struct Case {
    const char* text;
    const char* traced;
  };
  for (const Case& one :
       {Case{"L left", "1.250"}, {"F front", "0.750"}, {"S x", "1.250"}, {"S y", "0.750"}}) {
    put(jobOfPlate());
    work.trace(FeatureKind::edge);
    click(1.25, 0.75);
    enterLines({one.text});
    EXPECT_EQ(last().traced, Traced{one.traced}) << one.text;
  }
}

TEST_F(TracingActivityTest, TheFourthSideEndsItAndHolesFollow) {
  work.trace(FeatureKind::edge);
  const char* offers[] = {"L left", "R right", "F front", "K back"};
  for (int i = 0; i < 4; ++i) {
    ASSERT_EQ(work.traceKind(), FeatureKind::edge);
    click(i, i);
    EXPECT_EQ(work.offer(), offers[i]);
    enterLines({offers[i]});
  }
  EXPECT_EQ(work.doing(), Doing::tracing);
  EXPECT_EQ(work.traceKind(), FeatureKind::hole);
  // Where all sides were there before, edges are traced as long as one likes.
  work.trace(FeatureKind::edge);
  click(0.5, 0.5);
  enterLines({"S x", "T y"});
  EXPECT_EQ(work.traceKind(), FeatureKind::edge);
}

TEST_F(TracingActivityTest, AClickOnTakesANameAndNeverASizeThatIsOnlyOffered) {
  struct Case {
    FeatureKind kind;
    const char* typed;
    std::size_t taken;
  };
  for (const Case& one : {Case{FeatureKind::edge, "", 1},
                          {FeatureKind::point, "", 1},
                          {FeatureKind::hole, "", 0},
                          {FeatureKind::hole, "1/4", 1},
                          {FeatureKind::slot, "", 0},
                          {FeatureKind::hole, "1/46", 0}}) {
    SCOPED_TRACE(one.typed);
    put(jobOfPlate());
    work.trace(one.kind);
    click(1, 1);
    work.noteTyped(one.typed);
    click(2, 1);
    EXPECT_EQ(count(), one.taken);
    work.noteTyped({});
  }
}

// From the lathe: between which two shoulders the click fell is told by their tracing.
TEST_F(TracingActivityTest, TurnedSurfacesLieBetweenTheShouldersAboutTheClick) {
  put(jobOfPlate("edge J x\nedge S x\nedge T x\n"));
  Job job = desk.job();
  const char* at[] = {"0.000", "1.000", "2.500"};
  for (std::size_t i = 0; i < 3; ++i) job.parts[0].features[i].traced = {at[i]};
  desk.take(job, {});
  struct Case {
    double x;
    const char* words;  ///< null: between none
    std::vector<Id> between;
  };
  for (const Case& one : {Case{0.5, "J to S", {"J", "S"}},
                          {1.75, "S to T", {"S", "T"}},
                          {-0.5, nullptr, {}},
                          {3, nullptr, {}}}) {
    SCOPED_TRACE(one.x);
    desk.take(job, {});
    work.trace(FeatureKind::outside);
    EXPECT_FALSE(work.enter({}));
    click(one.x, 0.25);
    EXPECT_TRUE(work.prompt().contains(one.words ? one.words : "not between two shoulders"))
        << work.prompt().toStdString();
    EXPECT_EQ(work.enter("1/2"), one.words != nullptr);
    EXPECT_EQ(work.pending().has_value(), one.words == nullptr) << "a refused one stays";
    if (one.words == nullptr) {
      EXPECT_EQ(desk.job(), job);
      continue;
    }
    ASSERT_NE(betweenOf(last()), nullptr);
    EXPECT_EQ(*betweenOf(last()), one.between);
    EXPECT_EQ(diameterOf(last())->text, "1/2");
    desk.undo();
    EXPECT_EQ(desk.job(), job) << "with the centre line that came along";
  }
  // At an end it is the nearest shoulder, however far.
  for (const auto& [x, edge] : {std::pair(-1.0, "J"), {0.4, "J"}, {0.6, "S"}, {9.0, "T"}}) {
    desk.take(job, {});
    work.trace(FeatureKind::chamfer);
    click(x, 0.25);
    enterLines({"1/32 x 45°"});
    EXPECT_EQ(last().as<kind::Chamfer>()->at, edge) << x;
  }
}

TEST_F(TracingActivityTest, TheCentreLineLiesHalfWayAndEndsTheTool) {
  put(jobOfPlate("edge J x\nedge S x\n"));
  const Job before = desk.job();
  desk.chooseFace(Face::left);
  work.traceCentreLine();
  click(1, 0.5);
  EXPECT_EQ(refused.size(), 1) << "the part does not lie along that face";
  EXPECT_FALSE(work.pending());
  desk.chooseFace(Face::top);
  click(1, 0.5);
  EXPECT_EQ(work.pending(), QPointF(1, 0.5));
  work.back();
  EXPECT_FALSE(work.pending());
  click(1, 0.5);
  click(1, -0.25);
  EXPECT_EQ(work.doing(), Doing::looking);
  const Feature& axis = desk.part().features.back();
  ASSERT_EQ(axis.traced.size(), 2u);
  EXPECT_TRUE(axis.traced[0] == "0.125" || axis.traced[1] == "0.125");
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

}  // namespace
}  // namespace inchwright::app
