#include "core/say/milled_words.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/say/piece_words.h"
#include "tests/core/plan/milled_plate.h"

namespace inchwright::test {
namespace {

const Step kStep{Length::ticks(Length::kTicksPerInch / 2000), Unit::inch};

bool says(const std::vector<std::string>& lines, std::string_view words) {
  return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
    return line.find(words) != std::string::npos;
  });
}

TEST(MilledWords, OfASlot) {
  MilledPlate plate;
  plate.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", "1/4");
  const auto lines = milledWords(plate.cuts().at(0), kStep);
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_EQ(lines[0],
            "S: end mill 1/4, all of it at each depth in turn: 0.1250, 0.2500. It is not known to "
            "cut over its centre: first drill C at X +0.8750, Y +2.2500 and go in there");
  EXPECT_EQ(lines[1], "S down the middle: X +0.8750 to +1.6250, Y +2.2500");
  EXPECT_TRUE(lines[2].starts_with("S: width 1/4 wanted, measured ____"));
  EXPECT_FALSE(says(lines, "lift"));
}

TEST(MilledWords, OfOneThatIsOpenedUp) {
  MilledPlate plate;
  plate.slot("S", Axis::y, ".250", "1", "1 1/4", "2 1/4", "1/4");
  const auto lines = milledWords(plate.cuts().at(0), kStep);
  EXPECT_TRUE(says(lines, "S along the wall: Y +1.8750 to +2.6250, X +1.2190"));
  EXPECT_TRUE(says(lines, "lift the cutter between runs that do not meet"));
  EXPECT_TRUE(says(lines, "stays beside the middle of its round ends up to 0.0120"));
  const auto notes = milledNotes(plate.cuts().at(0), kStep);
  EXPECT_EQ(notes.size() + plate.cuts().at(0).runs.size(), lines.size());
}

TEST(MilledWords, OfOneThatIsInDispute) {
  MilledPlate plate;
  plate.pocket("1", "1", "1", "1", "1/4", "1/4");
  EXPECT_FALSE(says(milledWords(plate.cuts().at(0), kStep), "DISPUTE"));
  plate.read(Axis::x, "L", "PR", "2 1/4");
  for (const std::string& line : milledWords(plate.cuts().at(0), kStep)) {
    const bool isFigure = line.find(": X ") != std::string::npos ||
                          line.find(": Y ") != std::string::npos ||
                          line.find("end mill") != std::string::npos;
    EXPECT_EQ(line.find("IN DISPUTE") != std::string::npos, isFigure) << line;
  }
  MilledPlate slot;
  slot.slot("S", Axis::x, "1/4", "1", "1 1/4", "2 1/4", "1/4");
  slot.read(Axis::x, "S", "R", "2 1/2");
  EXPECT_TRUE(says(milledWords(slot.cuts().at(0), kStep), "S: IN DISPUTE, a loop"));
}

TEST(MilledWords, OfAnOpeningWithoutADepth) {
  MilledPlate plate;
  plate.pocket("1", "1", "1", "1", "1/4", "1/4");
  EXPECT_FALSE(says(milledWords(plate.cuts().at(0), kStep), "No depth is said"));
  plate.part.outlines.back().depth.reset();
  EXPECT_TRUE(
      says(milledWords(plate.cuts().at(0), kStep), "No depth is said: taken right through"));
}

TEST(MilledWords, OfWhatIsTurned) {
  MilledPlate plate;
  plate.curvedSlot("1/4", "2", "1/8");
  const auto lines = milledWords(plate.cuts().at(0), kStep);
  EXPECT_TRUE(says(lines,
                   "on the rotary table, set true under X +1.5000, Y +1.0000: spindle off "
                   "its centre by 1.0000; from X +2.5000, Y +1.0000 to X +1.5000, Y "
                   "+2.0000, 90.000° on, the shorter way round"));
  MilledPlate off;
  off.curvedSlot("1/4", "2 1/8", "1/8");
  EXPECT_TRUE(says(milledWords(off.cuts().at(0), kStep), "do not lie equally far"));
}

TEST(PieceWords, OfOneThatDoesNotCleanUp) {
  PieceLeft piece;
  piece.name = "2";
  piece.cleansUp = false;
  piece.left[static_cast<std::size_t>(Side::right)] = inch("1/16").negated();
  EXPECT_EQ(pieceWords(piece, kStep),
            "piece 2: left to come off right -0.0625: it does not clean up");
}

TEST(PieceWords, OfPiecesPutInEndForEnd) {
  PutInOtherwise put;
  put.pieces = {"1", "3"};
  put.atStop = Side::right;
  put.atJaw = Side::back;
  put.leftAtStop = inch("1/16");
  PutInOtherwise::Row row;
  row.id = "A";
  row.x.text = "2.5625";
  row.y.text = "-0.7500";
  put.rows = {row};
  const auto lines = otherwiseWords(put, kStep);
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_EQ(lines[0],
            "Put in end for end, right with 0.0625 left on it at the stop, back at the fixed jaw: "
            "pieces 1 and 3; zero stays where it is, X and Y are then");
  EXPECT_EQ(lines[1], "A: X +2.5625, Y -0.7500");
  put.pieces = {"2"};
  put.how = PutInOtherwise::How::turnedOver;
  EXPECT_EQ(otherwiseWords(put, kStep)[0],
            "Turned over along the jaws, right with 0.0625 left on it at the stop, back at the "
            "fixed jaw: piece 2; zero stays where it is, the places seen through from below are "
            "then");
}

}  // namespace
}  // namespace inchwright::test
