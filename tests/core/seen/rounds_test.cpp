#include "core/seen/rounds.h"

#include <gtest/gtest.h>

#include <numbers>

#include "core/seen/looked_at.h"
#include "core/seen/notes.h"
#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfCorner = 200;  // the sheet's inch, pixels

/// The lower right corner of a plate at (220, 180), which anything may take the place of.
struct Corner : Pen {
  explicit Corner(double lacks) : Pen(300, 240) {
    line(20, 180, 220 - lacks, 180, 4);
    line(220, 20, 220, 180 - lacks, 4);
  }

  void arc(double cx, double cy, double radius, double begin, double end) {
    constexpr int kPieces = 12;
    const auto at = [&](int i) {
      const double t = (begin + (end - begin) * i / kPieces) * std::numbers::pi / 180;
      return std::pair(cx + radius * std::cos(t), cy - radius * std::sin(t));
    };
    for (int i = 0; i < kPieces; ++i) {
      const auto [x0, y0] = at(i);
      const auto [x1, y1] = at(i + 1);
      line(x0, y0, x1, y1, 4);
    }
  }

  std::vector<Rounding> roundings() const {
    return roundingsOf(viewOf(cover, kOfCorner).strokes,
                       viewOf(transposed(cover), kOfCorner).strokes, cover, kOfCorner);
  }
};

TEST(Rounds, AQuarterCircleInPlaceOfACorner) {
  for (const double radius : {20.0, 40.0, 70.0}) {
    Corner drawn(radius);
    drawn.arc(220 - radius, 180 - radius, radius, -90, 0);
    const auto found = drawn.roundings();
    ASSERT_EQ(found.size(), 1U) << radius;
    EXPECT_NEAR(found[0].corner.x, 220, 2);
    EXPECT_NEAR(found[0].corner.y, 180, 2);
    // A radius follows from how far the arc stays off the corner: 0.41 of a pixel each.
    EXPECT_NEAR(found[0].radius, radius, 5);
    EXPECT_TRUE(found[0].levelPast);
    EXPECT_TRUE(found[0].plumbPast);
    EXPECT_GE(found[0].drawn, kWholeArc);
  }
}

TEST(Rounds, WhatIsNone) {
  Corner sharp(0);
  EXPECT_TRUE(sharp.roundings().empty());
  Corner open(40);
  EXPECT_TRUE(open.roundings().empty());
  Corner chamfered(40);
  chamfered.line(180, 180, 220, 140, 4);
  EXPECT_TRUE(chamfered.roundings().empty());
  // The end of a slot or of a bar, half a circle.
  Corner end(40);
  end.cover = Grey(300, 240);
  end.line(20, 180, 180, 180, 4);
  end.line(20, 100, 180, 100, 4);
  end.arc(180, 140, 40, -90, 90);
  EXPECT_TRUE(end.roundings().empty());
}

/// What a note beside a round of 40 pixels says, with a leader from its foot to `tip`.
int pointedAtBy(const std::string& word, PlanePoint tip) {
  Pen pen(500, 400);
  pen.line(240, 140, 400, 280, 1.6);
  pen.line(400, 280, 420, 280, 1.6);
  pen.line(tip.x, tip.y, 240, 140, 1.6);
  Rounding round;
  round.corner = {228.5, 128.5};
  round.centre = {188.5, 93.5};
  round.radius = 68.0;
  const NoteRow row{{425, 270, 60, 20}, word, {{"R1/4", -0.1, 3}}};
  const auto notes = radiiOf({row}, {round}, pen.cover, kOfCorner);
  return notes.size() == 1 ? notes[0].of : -2;
}

TEST(Rounds, ALeaderThatEndsAtTheArcSaysItsRadius) {
  EXPECT_EQ(pointedAtBy("R", {240, 140}), 0);
  EXPECT_EQ(pointedAtBy("RAD", {240, 140}), 0);
  EXPECT_EQ(pointedAtBy("DRILL", {240, 140}), -2);
}

TEST(Rounds, ALeaderThatRunsOnOverTheArcSpeaksOfSomethingElse) {
  EXPECT_EQ(pointedAtBy("R", {190, 95}), -1);
}

}  // namespace
}  // namespace inchwright::seen
