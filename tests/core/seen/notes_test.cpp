#include "core/seen/notes.h"

#include <gtest/gtest.h>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfNote = 200;  // the sheet's inch, pixels

Note note(const char* word, const char* size, int of) {
  return {word, {{size, -0.1, 3}}, {}, 1, {}, of};
}

std::vector<std::string> kept(const std::vector<Note>& notes) {
  std::vector<std::string> words;
  for (const Note& one : undisputed(notes)) words.push_back(one.word + one.size.front().text);
  return words;
}

using Words = std::vector<std::string>;

TEST(Notes, OfOneHoleThatIsNotedTwoWaysNeitherCounts) {
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("REAM", "11/32", 1), note("REAM", "5/32", 0)}),
            (Words{"REAM11/32"}));
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("DRILL", "3/32", 0)}), Words{});
}

TEST(Notes, WhatIsSaidTwiceAlikeCounts) {
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("DRILL", "5/32", 0)}),
            (Words{"DRILL5/32", "DRILL5/32"}));
  EXPECT_EQ(kept({note("DRILL", "5/32", 0), note("REAM", "5/32", 1)}),
            (Words{"DRILL5/32", "REAM5/32"}));
}

TEST(Notes, WhatPointsAtNothingDisputesNothing) {
  EXPECT_EQ(kept({note("DRILL", "5/32", -1), note("REAM", "1/4", -1)}),
            (Words{"DRILL5/32", "REAM1/4"}));
}

/// A note of 100 by 30 pixels at (400, 200), with leaders to circles of 30 round (100, 100) and
/// (100, 300).
struct Noted : Pen {
  Noted() : Pen(900, 500) {}

  /// A leader from beside the note towards a place, as much of its way as `part`.
  void leader(PlanePoint to, double part = 1, bool right = false) {
    const PlanePoint from{right ? 510.0 : 390.0, 215};
    line(from.x, from.y, from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part, 1.6);
  }
  NoteRow row(const char* word) const { return {{400, 200, 100, 30}, word, {{"1/4", -0.1, 2}}, 0}; }
  int of(const std::vector<Circle>& circles) const {
    const auto notes = notesOf({row("DRILL")}, circles, cover, kOfNote);
    return notes.size() == 1 ? notes[0].of : -2;
  }
};

/// Where a leader from the note's left ends at the rim of a circle.
PlanePoint onRim(const Circle& c) {
  const double dx = 390 - c.x, dy = 215 - c.y, far = std::hypot(dx, dy);
  return {c.x + c.radius * dx / far, c.y + c.radius * dy / far};
}

TEST(Notes, ALeaderFromEitherSideLeadsToItsCircle) {
  const Circle upper{100, 100, 30}, lower{100, 300, 30}, right{800, 100, 40};
  Noted one;
  one.leader(onRim(upper));
  EXPECT_EQ(one.of({upper, lower, right}), 0);
  EXPECT_EQ(one.of({right, lower, upper}), 2);
  EXPECT_EQ(one.of({lower, right}), -1);
  Noted other;
  other.leader({800 - 40 * 0.94, 100 + 40 * 0.34}, 1, true);  // 115 up in 290
  EXPECT_EQ(other.of({upper, lower, right}), 2);
  EXPECT_EQ(Noted().of({upper, lower, right}), -1) << "none is drawn";
}

// It starts beside the note's middle, within a twentieth of the sheet's inch (10 pixels) of it.
TEST(Notes, ALeaderStartsBesideTheMiddleOfItsNote) {
  for (const double up : {-20, -8, -4, 0, 4, 8, 20}) {
    for (const double far : {8.0, 30.0, 60.0}) {
      Noted drawn;
      const Circle c{100, 215 + 1.5 * up, 30};
      const PlanePoint from{400 - far, 215 + up};
      const double dx = from.x - c.x, dy = from.y - c.y, away = std::hypot(dx, dy);
      drawn.line(from.x, from.y, c.x + c.radius * dx / away, c.y + c.radius * dy / away, 1.6);
      EXPECT_EQ(drawn.of({c}), std::abs(up) < 10 ? 0 : -1) << up << " " << far;
    }
  }
}

TEST(Notes, ALeaderIsDrawnAllTheWayAndToOneCircle) {
  const Circle upper{100, 100, 30}, lower{100, 300, 30};
  Noted nearly;
  nearly.leader(onRim(upper), 0.97);
  EXPECT_EQ(nearly.of({upper, lower}), 0);
  Noted ends;
  ends.leader(onRim(upper), 0.88);
  EXPECT_EQ(ends.of({upper, lower}), -1) << "an eighth of it lacks";
  Noted both;
  both.leader(onRim(upper));
  both.leader(onRim(lower));
  EXPECT_EQ(both.of({upper, lower}), -1) << "two leaders";
  // Two circles one behind the other on one line: the leader that goes on to the second passes over
  // the first.
  Noted beyond;
  beyond.leader(onRim(upper));
  const Circle before{245, 157.5, 20};
  EXPECT_EQ(beyond.of({upper, before}), -1);
}

// A circle within a fifth of an inch of the lettering is part of it, or crossed by nothing.
TEST(Notes, ACircleAtTheLetteringIsNotPointedAt) {
  for (const double away : {34.0, 60.0}) {
    Noted beside;
    const Circle c{390 - 20 - away, 215, 20};
    beside.line(390, 215, c.x + 20, 215, 1.6);
    EXPECT_EQ(beside.of({c}), away > 40 ? 0 : -1) << away;
  }
}

TEST(Notes, OfASizeOfAHoleOnly) {
  const Circle upper{100, 100, 30};
  Noted drawn;
  drawn.leader(onRim(upper));
  for (const char* word : {"HOLES", "PLACES", "PCD", "R", "RAD"})
    EXPECT_TRUE(notesOf({drawn.row(word)}, {upper}, drawn.cover, kOfNote).empty()) << word;
  for (const char* word : {"DRILL", "REAM", "DIA", "TAP", "BORE", "DEEP"})
    EXPECT_EQ(notesOf({drawn.row(word)}, {upper}, drawn.cover, kOfNote).size(), 1U) << word;
  NoteRow bare = drawn.row("DRILL");
  bare.figures.clear();
  EXPECT_TRUE(notesOf({bare}, {upper}, drawn.cover, kOfNote).empty());
  const auto note = notesOf({drawn.row("DRILL")}, {upper}, drawn.cover, kOfNote).at(0);
  EXPECT_EQ(note.word + note.size.at(0).text, "DRILL1/4");
  EXPECT_EQ(note.box, (Box{400, 200, 100, 30}));
  EXPECT_EQ(note.count, 1);
  EXPECT_TRUE(note.pcd.empty());
}

// `4 HOLES` stands behind the size in its row, no further than three tenths of an inch (60
// pixels), or below it within a quarter (50); the pitch circle's diameter below within 0.55 (110).
TEST(Notes, HowManyHolesAndOnWhichCircleStandsBehindOrBelow) {
  const Noted drawn;
  const auto said = [&](const char* word, Box box, const char* figure) {
    const NoteRow other{box, word, {{"7", -9, 1}, {figure, -0.1, 1}}, 0};
    return notesOf({drawn.row("DRILL"), other}, {}, drawn.cover, kOfNote).at(0);
  };
  struct Case {
    Box box;
    int count;
  };
  const Case cases[] = {
      {{520, 200, 80, 30}, 4},  // 20 behind
      {{555, 212, 80, 30}, 4},  // 55 behind, a little lower
      {{565, 200, 80, 30}, 1},  // too far
      {{520, 217, 80, 30}, 1},  // in another row
      {{490, 200, 80, 30}, 1},  // over its own end
      {{420, 240, 80, 30}, 4},  // below
      {{420, 275, 80, 30}, 4},  //
      {{420, 285, 80, 30}, 1},  // too far below
      {{420, 160, 80, 30}, 1},  // above
      {{505, 240, 80, 30}, 1},  // below, but beside
      {{310, 240, 85, 30}, 1},  // likewise on the left
      {{310, 240, 95, 30}, 4},
  };
  for (const Case& one : cases) {
    for (const char* word : {"HOLES", "PLACES"})
      EXPECT_EQ(said(word, one.box, "4").count, one.count) << word << one.box.x << one.box.y;
  }
  EXPECT_EQ(said("REAM", {520, 200, 80, 30}, "4").count, 1) << "another size";
  // A count is a number of one or two digits above one.
  for (const auto& [text, count] :
       {std::pair("12", 12), {"2", 2}, {"1", 1}, {"123", 1}, {"1/4", 1}, {"", 1}})
    EXPECT_EQ(said("HOLES", {420, 240, 80, 30}, text).count, count) << text;
  NoteRow own = drawn.row("DRILL");
  own.count = 3;
  EXPECT_EQ(notesOf({own}, {}, drawn.cover, kOfNote).at(0).count, 3);
  for (const auto& [y, has] : {std::pair(330, true), {345, false}}) {
    const auto pcd = said("PCD", {420, y, 80, 30}, "2 1/4").pcd;
    ASSERT_EQ(pcd.size(), has ? 2U : 0U) << y;
    if (has) {
      EXPECT_EQ(pcd[1].text, "2 1/4");
    }
  }
}

}  // namespace
}  // namespace inchwright::seen
