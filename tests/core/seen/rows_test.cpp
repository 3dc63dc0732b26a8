#include "core/seen/rows.h"

#include <gtest/gtest.h>

#include "tests/core/seen/drawn.h"

namespace inchwright::seen {
namespace {

constexpr double kOfRow = 100;  // the sheet's inch, pixels; so is the face's

/// Holes of 1/8 at places along a line 1 in below the picture's top, and the line through them.
struct Row {
  explicit Row(std::vector<double> at, bool upright = false, bool lined = true) : pen(600, 600) {
    for (const double x : at) {
      FeatureOffer f;
      f.at = upright ? PlanePoint{1, x} : PlanePoint{x, 5};
      f.drawnRadius = 1.0 / 16;
      f.ready = true;
      features.push_back(f);
    }
    if (!lined) return;
    const PlanePoint a = frame.pixel(features.front().at), b = frame.pixel(features.back().at);
    pen.line(a.x, a.y, b.x, b.y, 1.6);
  }

  Row& noted(std::size_t hole, int count) {
    features[hole].size = "1/8";
    features[hole].sizeTicks = 317'500'000;
    features[hole].sizeWitnesses = {true, false, true, false};
    features[hole].count = count;
    return *this;
  }
  std::vector<FeatureOffer> rows() const { return rowsOf(features, pen.cover, frame, kOfRow); }
  /// What is left when the print is dimensioned along X between such places.
  std::vector<FeatureOffer> settled(
      const std::vector<std::pair<double, double>>& dimensions) const {
    std::vector<ReadingOffer> readings;
    for (const auto& [from, to] : dimensions) {
      readings.emplace_back();
      readings.back().from = {from, 4};
      readings.back().to = {to, 4};
    }
    std::vector<FeatureOffer> out = rows();
    settleRows(readings, 0.03, out);
    return out;
  }

  Pen pen;
  Frame frame{kOfRow, 0, 6};
  std::vector<FeatureOffer> features;
};

TEST(Rows, HolesEvenlyOnALineThatIsDrawn) {
  for (const bool upright : {false, true}) {
    const auto rows = Row({1, 1.5, 2, 2.5}, upright).noted(2, 4).rows();
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].kind, OfferedFeature::row);
    EXPECT_EQ(rows[0].count, 4);
    EXPECT_EQ(rows[0].alongX, !upright);
    EXPECT_EQ(rows[0].from, (upright ? PlanePoint{1, 1} : PlanePoint{1, 5}));
    EXPECT_EQ(rows[0].to, (upright ? PlanePoint{1, 2.5} : PlanePoint{2.5, 5}));
    EXPECT_EQ(rows[0].size, "1/8");
  }
}

TEST(Rows, WhatIsNone) {
  EXPECT_TRUE(Row({1, 1.5}).rows().empty()) << "two";
  EXPECT_TRUE(Row({1, 1.5, 2}, false, false).rows().empty()) << "no line";
  EXPECT_TRUE(Row({1, 1.5, 2 + 1.0 / 64, 2.5}).rows().empty()) << "a 64th off";
  EXPECT_TRUE(Row({1, 1.5, 2, 2.5 + 1.0 / 64}).rows().empty()) << "the last space a 64th more";
  Row other({1, 1.5, 2});
  other.features[1].drawnRadius = 3.0 / 32;
  EXPECT_TRUE(other.rows().empty()) << "one of another size";
  Row view({1, 1.5, 2});
  view.features[2].view = 1;
  EXPECT_TRUE(view.rows().empty()) << "one of another view";
  Row ring({1, 1.5, 2});
  FeatureOffer circle;
  circle.kind = OfferedFeature::ring;
  circle.at = {1.5, 5};
  circle.drawnRadius = 0.5;
  ring.features.push_back(circle);
  EXPECT_TRUE(ring.rows().empty()) << "holes of a ring and its middle";
}

TEST(Rows, ANoteOfOtherHolesThanTheRowsSaysNothingOfIt) {
  const auto rows = Row({1, 1.5, 2}).noted(0, 5).rows();
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0].size, "");
}

TEST(Rows, DimensionsDecide) {
  const Row row = Row({1, 1.5, 2, 2.5}).noted(0, 4);
  // From the first to the last: nothing but even spaces can be meant.
  auto left = row.settled({{0, 1}, {1, 2.5}});
  ASSERT_EQ(left.size(), 1U);
  EXPECT_TRUE(left[0].ready);
  // Some spaces are dimensioned: others may have been missed.
  left = row.settled({{0, 1}, {1, 1.5}, {1, 2.5}});
  ASSERT_EQ(left.size(), 1U);
  EXPECT_FALSE(left[0].ready);
  // Each hole has a dimension of its own.
  EXPECT_TRUE(row.settled({{0, 1}, {1, 1.5}, {1.5, 2}, {2, 2.5}}).empty());
  // No dimension at the last; a row without a size.
  left = row.settled({{0, 1}});
  ASSERT_EQ(left.size(), 1U);
  EXPECT_FALSE(left[0].ready);
  left = Row({1, 1.5, 2, 2.5}).settled({{0, 1}, {1, 2.5}});
  ASSERT_EQ(left.size(), 1U);
  EXPECT_FALSE(left[0].ready);
}

}  // namespace
}  // namespace inchwright::seen
