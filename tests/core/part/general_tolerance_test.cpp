#include <gtest/gtest.h>

#include "core/part/job.h"
#include "tests/core/part/sample_part.h"

namespace inchwright {
namespace {

Lettered decimal(std::int64_t tenThousandths, int places) {
  Lettered figure;
  figure.lettering = Lettering::decimal;
  figure.places = places;
  figure.value = Length::ticks(tenThousandths * 254'000);
  return figure;
}

Lettered millimetres(std::int64_t hundredths, int places) {
  Lettered figure;
  figure.lettering = Lettering::millimetres;
  figure.unit = Unit::millimetre;
  figure.places = places;
  figure.value = Length::ticks(hundredths * 1'000'000);
  return figure;
}

std::optional<Tolerance> plusMinus(std::int64_t ticks) {
  return Tolerance::symmetric(Length::ticks(ticks));
}

TEST(GeneralTolerance, CustomaryValuesByLettering) {
  // Common practice, no source; the values are the project's stated defaults.
  const General none;
  EXPECT_EQ(toleranceOf(sixtyFourths(24, "3/8"), none), plusMinus(39'687'500));
  EXPECT_EQ(toleranceOf(decimal(5000, 1), none), plusMinus(25'400'000));
  EXPECT_EQ(toleranceOf(decimal(3800, 2), none), plusMinus(25'400'000));
  EXPECT_EQ(toleranceOf(decimal(3750, 3), none), plusMinus(12'700'000));
  EXPECT_EQ(toleranceOf(decimal(3751, 4), none), plusMinus(12'700'000));
}

TEST(GeneralTolerance, TheTitleBlockComesFirst) {
  General general;
  general.fractions = sixtyFourths(2, "1/32");
  general.twoPlaces = decimal(200, 3);
  general.threePlaces = decimal(20, 3);
  EXPECT_EQ(toleranceOf(sixtyFourths(24, "3/8"), general), plusMinus(79'375'000));
  EXPECT_EQ(toleranceOf(decimal(3800, 2), general), plusMinus(50'800'000));
  EXPECT_EQ(toleranceOf(decimal(3750, 3), general), plusMinus(5'080'000));
}

TEST(GeneralTolerance, AFiguresOwnComesBeforeAll) {
  Lettered figure = sixtyFourths(24, "3/8 +.002 -.000");
  figure.tolerance = Tolerance{Length::ticks(5'080'000), Length()};
  EXPECT_EQ(toleranceOf(figure, General{}), figure.tolerance);
}

TEST(GeneralTolerance, BasicAndReferenceFiguresHaveNone) {
  Lettered basic = decimal(25000, 3);
  basic.basic = true;
  EXPECT_EQ(toleranceOf(basic, General{}), std::nullopt);
  Lettered reference = sixtyFourths(128, "(2)");
  reference.reference = true;
  EXPECT_EQ(toleranceOf(reference, General{}), std::nullopt);
}

TEST(GeneralTolerance, MillimetresByTheMediumClass) {
  // ISO 2768-1:1989, table 1, class m.
  const std::pair<std::int64_t, std::int64_t> rows[] = {
      {50, 10},      {300, 10},      {600, 10},      {601, 20},      {3'000, 20},
      {3'001, 30},   {12'000, 30},   {12'001, 50},   {40'000, 50},   {40'001, 80},
      {100'000, 80}, {100'001, 120}, {200'000, 120}, {200'001, 200}, {400'000, 200}};
  for (const auto& [size, expected] : rows) {
    EXPECT_EQ(toleranceOf(millimetres(size, 2), General{}), plusMinus(expected * 1'000'000))
        << size;
  }
  EXPECT_EQ(toleranceOf(millimetres(49, 2), General{}), std::nullopt);
  EXPECT_EQ(toleranceOf(millimetres(400'001, 2), General{}), std::nullopt);
}

TEST(GeneralTolerance, MillimetresByAMetricTitleBlockOnly) {
  General inches;
  inches.twoPlaces = decimal(100, 3);
  EXPECT_EQ(toleranceOf(millimetres(1'270, 1), inches), plusMinus(20'000'000));
  General metric;
  metric.twoPlaces = millimetres(5, 2);
  metric.threePlaces = millimetres(1, 2);
  EXPECT_EQ(toleranceOf(millimetres(1'270, 1), metric), plusMinus(5'000'000));
  EXPECT_EQ(toleranceOf(millimetres(1'270, 3), metric), plusMinus(1'000'000));
}

}  // namespace
}  // namespace inchwright
