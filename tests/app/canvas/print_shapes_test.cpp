#include "app/canvas/print_shapes.h"

#include <gtest/gtest.h>

#include "app/session/work.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr double kScale = 100;  // pixels an inch
const PrintMap kMap(kScale, QPointF(0, 0));

class PrintShapesTest : public testing::Test {
 protected:
  void type(std::initializer_list<const char*> lines) {
    for (const char* line : lines) ASSERT_TRUE(work.enter(QString::fromUtf8(line))) << line;
  }
  DrawnFace drawn() const { return drawFace(desk.part(), desk.solution(), Face::top, false); }

  void SetUp() override {
    deskApplication();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
    type({"edge L left", "edge F front", "edge R right", "edge K back", "L R 4", "y F K 3"});
  }

  Desk desk;
  Work work{desk};
};

TEST_F(PrintShapesTest, ASlotIsDrawnAsAWhole) {
  type({"slot S x 1/4 by 1", "L S 2", "y F S 1"});
  const DrawnFace face = drawn();
  const QRectF box = outlineOf(*face.find("S"), kMap).boundingRect();
  EXPECT_NEAR(box.width(), kScale, 0.1);
  EXPECT_NEAR(box.height(), kScale / 4, 0.1);
  EXPECT_NEAR(box.center().x(), 2 * kScale, 0.1);
  // Its ends are places of their own, but have no outline.
  EXPECT_TRUE(outlineOf(*face.find("S1"), kMap).isEmpty());
}

TEST_F(PrintShapesTest, AHoleIsACircleAndNeedsNoOutline) {
  type({"hole A 1/4", "L A 1", "y F A 1"});
  EXPECT_TRUE(outlineOf(*drawn().find("A"), kMap).isEmpty());
}

TEST_F(PrintShapesTest, ARowStandsOnALine) {
  type({"row D x 4 holes pitch 1/2 1/8", "L D 1", "y F D 1"});
  const auto lines = rowLines(drawn(), kMap);
  ASSERT_EQ(lines.size(), 1u);
  EXPECT_NEAR(lines[0].length(), 1.5 * kScale, 0.1);
  EXPECT_NEAR(lines[0].dy(), 0, 0.1);
}

}  // namespace
}  // namespace inchwright::app
