// A left-hand part against its mirror worked out by hand: the figures of its table and what it
// makes.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/document/document.h"
#include "core/plan/table.h"

namespace inchwright {
namespace {

// 2 in long and 1 in wide. A 3/8 from the left and 1/4 up; a ring of 3 about A on 1/2, hole 1 at
// 30°, anticlockwise; B in the left edge, 5/16 up and 1/8 below the top.
constexpr const char* kLevers = R"({"inchwright": 1, "parts": [
  {"name": "Right lever", "hand": "right",
   "features": [
     {"id": "L", "kind": "edge", "axis": "x", "side": "left"},
     {"id": "R", "kind": "edge", "axis": "x", "side": "right"},
     {"id": "F", "kind": "edge", "axis": "y", "side": "front"},
     {"id": "K", "kind": "edge", "axis": "y", "side": "back"},
     {"id": "U", "kind": "edge", "axis": "z", "side": "bottom"},
     {"id": "T", "kind": "edge", "axis": "z", "side": "top"},
     {"id": "A", "kind": "hole", "face": "top", "diameter": "1/4"},
     {"id": "G", "kind": "ring", "face": "top", "holes": 3, "pcd": "1/2", "first_angle": "30",
      "sense": "anticlockwise", "diameter": "1/16"},
     {"id": "B", "kind": "hole", "face": "left", "make": "tap", "thread": "4-40 UNC",
      "depth": "1/4"}],
   "readings": [
     {"id": "r1", "axis": "x", "from": "L", "to": "R", "text": "2"},
     {"id": "r2", "axis": "y", "from": "F", "to": "K", "text": "1"},
     {"id": "r3", "axis": "x", "from": "L", "to": "A", "text": "3/8"},
     {"id": "r4", "axis": "y", "from": "F", "to": "A", "text": "1/4"},
     {"id": "r5", "axis": "z", "from": "U", "to": "T", "text": "1/4"},
     {"id": "r6", "axis": "y", "from": "F", "to": "B", "text": "5/16"},
     {"id": "r7", "axis": "z", "from": "B", "to": "T", "text": "1/8"}],
   "understood": [{"kind": "concentric", "of": ["A", "G"], "stated": true}],
   "setups": [
     {"name": "1", "face": "top", "turn": 0, "zero": {"x": {"at": "L"}, "y": {"at": "F"}},
      "stop": "left"},
     {"name": "2", "face": "left", "turn": 0, "zero": {"y": {"at": "F"}, "z": {"at": "T"}}}]},
  {"name": "Left lever", "opposite_of": "Right lever", "across": "x", "quantity": 2}]})";

std::string rowsOf(const Job& job, std::size_t part, std::size_t setup) {
  const Part& of = job.parts[part];
  const auto table = makeTable(job, of, *solve(of), of.setups[setup]);
  EXPECT_TRUE(table.ok());
  std::string text;
  for (const TableRow& row : table->rows) {
    text += row.id + " " + signedText(row.x) + " " + signedText(row.y) + "\n";
  }
  return text;
}

std::string sorted(std::string rows) {
  std::vector<std::string> lines;
  for (std::size_t at = 0, end; (end = rows.find('\n', at)) != std::string::npos; at = end + 1) {
    lines.push_back(rows.substr(at, end - at + 1));
  }
  std::sort(lines.begin(), lines.end());
  std::string all;
  for (const std::string& line : lines) all += line;
  return all;
}

TEST(LeftHand, IsTheMirrorByHand) {
  const auto job = readDocument(kLevers);
  ASSERT_TRUE(job.ok()) << job.error().place << job.error().text;
  // 1/4 about (3/8, 1/4) at 30°, 150° and 270°.
  EXPECT_EQ(sorted(rowsOf(*job, 0, 0)),
            "A +0.3750 +0.2500\n"
            "G1 +0.5915 +0.3750\n"
            "G2 +0.1585 +0.3750\n"
            "G3 +0.3750 +0.0000\n");
  // Its zero is on the side that was the left one, L, which is the right one now: X is negative.
  // Hole 1 stands at 150°, and they are counted clockwise.
  EXPECT_EQ(sorted(rowsOf(*job, 1, 0)),
            "A -0.3750 +0.2500\n"
            "G1 -0.5915 +0.3750\n"
            "G2 -0.1585 +0.3750\n"
            "G3 -0.3750 +0.0000\n");
  EXPECT_EQ(job->parts[1].setups[0].stop, Side::right);
  // The hole in the left edge is in the right one, X of the table running the other way.
  EXPECT_EQ(rowsOf(*job, 0, 1), "B -0.3125 -0.1250\n");
  EXPECT_EQ(rowsOf(*job, 1, 1), "B +0.3125 -0.1250\n");
  EXPECT_EQ(job->parts[1].setups[1].face, Face::right);
  EXPECT_EQ(job->parts[1].feature("B")->drilled()->thread, "4-40 UNC");  // right-handed as ever
  EXPECT_EQ(job->parts[1].hand, "left");
  EXPECT_EQ(job->parts[1].quantity, 2);
}

}  // namespace
}  // namespace inchwright
