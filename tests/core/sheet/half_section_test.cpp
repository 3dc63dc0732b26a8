// A turned part as it lies in the lathe: the chuck at the left whichever end it holds.
#include "core/sheet/half_section.h"

#include <gtest/gtest.h>

#include <array>

#include "core/part/edit.h"
#include "core/solution/solution.h"
#include "tests/core/sheet/block_content.h"

namespace inchwright {
namespace {

/// A staff of three stretches, 1/4, 1 and 1/2 long and 1/4, 1/2 and 3/8 thick, held by one end.
struct Staff {
  Job job;
  Part part;
  Solution solution;

  explicit Staff(const std::array<Id, 3>& names = {"pivot", "seat", "arbor"}) {
    const auto add = [&](const Id& id, Shape shape) {
      Feature feature;
      feature.id = id;
      feature.shape = std::move(shape);
      part.features.push_back(std::move(feature));
    };
    add("L", kind::Edge{Axis::x, Side::left});
    add("M", kind::Edge{Axis::x, std::nullopt});
    add("N", kind::Edge{Axis::x, std::nullopt});
    add("R", kind::Edge{Axis::x, Side::right});
    add(names[0], kind::Outside{{"L", "M"}, lettered("1/4")});
    add(names[1], kind::Outside{{"M", "N"}, lettered("1/2")});
    add(names[2], kind::Outside{{"N", "R"}, lettered("3/8")});
    for (const auto& [from, to, figure] :
         {std::tuple{"L", "M", "1/4"}, {"M", "N", "1"}, {"N", "R", "1/2"}}) {
      Reading reading;
      reading.id = std::string("r") + from;
      reading.from = from;
      reading.to = to;
      reading.figure = lettered(figure);
      part.readings.push_back(reading);
    }
    part = turnedPart(std::move(part));
    solution = solve(part).value();
  }

  Piece held(Side end, double width = 120, double mostHeight = 70) {
    Setup setup;
    setup.name = "1";
    setup.chucked.emplace();
    setup.chucked->held = end;
    const LatheWork work = latheWork(job, part, solution, setup).value();
    EXPECT_EQ(work.held, end);
    return halfSectionPiece(work, setup, width, mostHeight);
  }
};

double middleOf(const Piece& piece, const std::string& name) {
  for (const TextItem& text : textsOf(piece.sketch)) {
    if (text.text == name) return text.at.x;
  }
  return -1;
}

/// The outlines of the stretches above the axis, as wide and high as they are drawn.
std::vector<PaperBox> stretchesOf(const Piece& piece) {
  std::vector<PaperBox> boxes;
  for (const DrawItem& item : piece.sketch.items()) {
    const auto* line = std::get_if<PolylineItem>(&item);
    if (!line || line->closed || line->points.size() != 4) continue;
    const auto& p = line->points;
    if (p[1].y < p[0].y)
      boxes.push_back({std::min(p[0].x, p[3].x), p[1].y, std::max(p[0].x, p[3].x), p[0].y});
  }
  return boxes;
}

TEST(HalfSection, KeepsItsProportions) {
  Staff staff;
  const std::vector<PaperBox> boxes = stretchesOf(staff.held(Side::left));
  ASSERT_EQ(boxes.size(), 3u);
  // One scale along and across: 1/8, 1/4 and 3/16 from the axis on lengths of 1/4, 1 and 1/2.
  const double scale = boxes[1].width();
  constexpr double kLengths[] = {0.25, 1, 0.5}, kRadii[] = {0.125, 0.25, 0.1875};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(boxes[i].width(), kLengths[i] * scale, kRounding) << i;
    EXPECT_NEAR(boxes[i].height(), kRadii[i] * scale, kRounding) << i;
  }
}

// Held by the other end the picture is turned end for end, with names and stretches.
TEST(HalfSection, ShowsTheHeldEndAtTheLeft) {
  Staff staff;
  const Piece left = staff.held(Side::left), right = staff.held(Side::right);
  const std::vector<PaperBox> one = stretchesOf(left), other = stretchesOf(right);
  ASSERT_EQ(other.size(), 3u);
  EXPECT_LT(one[0].left, one[2].left);
  EXPECT_GT(other[0].left, other[2].left);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(one[i].left + other[i].right, 120, kRounding) << "mirrored about the middle";
  }
  for (const auto& [piece, boxes] : {std::pair{left, one}, {right, other}}) {
    constexpr const char* kNames[] = {"pivot", "seat", "arbor"};
    std::size_t named = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      const double middle = middleOf(piece, kNames[i]);
      if (middle < 0) continue;  // in the chuck: no row
      EXPECT_NEAR(middle, (boxes[i].left + boxes[i].right) / 2, kRounding) << kNames[i];
      ++named;
    }
    EXPECT_GE(named, 1u);
  }
}

TEST(HalfSection, FitsTheRoomItIsGiven) {
  Staff staff;
  for (const double width : {60.0, 120.0, 190.0}) {
    for (const double most : {40.0, 70.0}) {
      const Piece piece = staff.held(Side::left, width, most);
      EXPECT_LE(piece.height, most + 3.3) << "and a line of caution";
      for (const PaperBox& box : stretchesOf(piece)) {
        EXPECT_GE(box.left, 9 - kRounding) << "room for the jaws";
        EXPECT_LE(box.right, width - 9 + kRounding);
        EXPECT_GE(box.top, 0);
      }
    }
  }
}

// Found by reading: the third of three long names over short stretches was printed over another.
TEST(HalfSection, PrintsNoNameOverAnother) {
  Staff staff({"pivot at the front", "seat of the wheel", "arbor at the rear"});
  for (const double width : {45.0, 60.0, 120.0}) {
    const Piece piece = staff.held(Side::left, width);
    std::vector<PaperBox> names;
    for (const TextItem& text : textsOf(piece.sketch)) {
      if (staff.part.feature(text.text) != nullptr) names.push_back(boundsOf(text));
    }
    ASSERT_EQ(names.size(), 3u) << width;
    for (std::size_t i = 0; i < names.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(names[i].meets(names[j])) << width;
    }
  }
}

TEST(HalfSection, IsEmptyWhereNothingIsPlaced) {
  Staff staff;
  EXPECT_FALSE(staff.held(Side::left).sketch.empty());
  EXPECT_TRUE(halfSectionPiece(LatheWork{}, inchwright::Setup{}, 120, 70).sketch.empty());
}

}  // namespace
}  // namespace inchwright
