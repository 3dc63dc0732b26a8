// A print drawn and lettered by the pen, as a person would be offered it.

#include <gtest/gtest.h>

#include "core/seen/offer.h"
#include "tests/core/seen/letterer.h"

namespace inchwright::seen {
namespace {

/// A plate of 4 by 1 inches, 150 pixels each, its lower left corner at zero, with a line below it
/// and one to its right, each with its heads and its figure in a gap.
struct PennedPrint : Letterer {
  std::string below = "4", beside = "1";
  double perInch = 150;
  bool hasTwoViews = false;  ///< another one just under the line below the plate

  PennedPrint() : Letterer(1000, 500) {}

  Offers offers(const Options& options = {}) {
    for (const double y : {100.0, 250.0}) line(100, y, 700, y, 4);
    for (const double x : {100.0, 700.0}) line(x, 100, x, 250, 4);
    for (const double y : {390.0, 470.0}) {
      if (hasTwoViews) line(100, y, 700, y, 4);
    }
    for (const double x : {100.0, 700.0}) {
      if (hasTwoViews) line(x, 390, x, 470, 4);
    }
    if (!below.empty()) level(100, 700, 350);
    if (!beside.empty()) plumb(100, 250, 830);
    Grey picture(cover.width, cover.height);
    for (std::size_t i = 0; i < picture.at.size(); ++i)
      picture.at[i] = static_cast<std::uint8_t>(235 - cover.at[i] * 3 / 4);
    const double pixel = 1 / perInch;
    Options own = options;
    own.capitals = 24 * pixel;
    const auto found =
        offer({picture.at.data(), picture.width, picture.height, picture.width},
              Homography({pixel, 0, -100 * pixel, 0, -pixel, 250 * pixel, 0, 0, 1}), own);
    EXPECT_TRUE(found.ok());
    return found.ok() ? *found : Offers{};
  }
  void head(double x, double y, double along, double down) {
    for (double k = -1; k <= 1; k += 0.25)
      line(x, y, x + 24 * along + 5 * k * down, y + 24 * down + 5 * k * along, 1.5);
  }

 private:
  void level(double from, double past, double y) {
    const double middle = (from + past) / 2, half = static_cast<double>(below.size()) * 21 / 2;
    for (const double x : {from, past}) line(x, 262, x, y + 30, 1.5);
    line(from, y, middle - half - 8, y, 1.6);
    line(middle + half + 8, y, past, y, 1.6);
    head(from, y, 1, 0);
    head(past, y, -1, 0);
    text(below, middle - half, y - 12);
  }
  void plumb(double from, double past, double x) {
    const double middle = (from + past) / 2, half = static_cast<double>(beside.size()) * 21 / 2;
    for (const double y : {from, past}) line(712, y, x + 30, y, 1.5);
    line(x, from, x, middle - 20, 1.6);
    line(x, middle + 20, x, past, 1.6);
    head(x, from, 0, 1);
    head(x, past, 0, -1);
    text(beside, x - half, middle - 12);
  }
};

/// The one reading along X, or along Y: its witnesses, then its figures.
std::string readingIn(const Offers& offers, OfferedReading kind) {
  std::string out;
  for (const ReadingOffer& r : offers.readings) {
    if (r.kind != kind) continue;
    out += out.empty() ? "" : "; ";
    out += r.witnesses.letters() + ":";
    for (const Candidate& c : r.candidates) out += " " + c.text;
  }
  return out;
}

constexpr auto kX = OfferedReading::alongX, kY = OfferedReading::alongY;

// A lone stroke is no plain 1.
TEST(PennedPrint, BothLinesAreReadAndFourSidesAreReady) {
  const Offers offers = PennedPrint().offers();
  EXPECT_EQ(readingIn(offers, kX), "G S: 4");
  EXPECT_EQ(readingIn(offers, kY), "g S: 1");
  ASSERT_EQ(offers.readings.size(), 2U);
  for (const ReadingOffer& r : offers.readings) {
    const bool plumb = r.kind == kY;
    EXPECT_NEAR(plumb ? r.from.y : r.from.x, 0, 0.015);
    EXPECT_NEAR(plumb ? r.to.y : r.to.x, plumb ? 1 : 4, 0.015);
    EXPECT_NEAR(plumb ? r.from.x : r.from.y, plumb ? 730 / 150.0 : -100 / 150.0, 0.015);
    EXPECT_EQ(r.view, 0);
  }
  ASSERT_EQ(offers.features.size(), 4U);
  for (const FeatureOffer& f : offers.features) {
    EXPECT_EQ(f.kind, OfferedFeature::edge);
    EXPECT_TRUE(f.ready);
  }
  EXPECT_NEAR(offers.lettering, 24, 0.5);
  EXPECT_FALSE(offers.tooCoarse);
}

// Its ends stand; its figure is typed. The other line is as it was.
TEST(PennedPrint, ALineWhoseFigureCannotBeReadIsThereToBeTyped) {
  PennedPrint below, beside;
  below.below = "MH";
  beside.beside = "MH";
  const Offers first = below.offers(), second = beside.offers();
  EXPECT_EQ(readingIn(first, kX), ":");
  EXPECT_EQ(readingIn(first, kY), "g S: 1");
  EXPECT_EQ(readingIn(second, kX), "G S: 4");
  EXPECT_EQ(readingIn(second, kY), ":");
}

// The line lies nearer to the other view, and the lines that carry its ends out come from the
// plate.
TEST(PennedPrint, ALineIsOfTheViewThatItsEndsAreCarriedOutOf) {
  PennedPrint print;
  print.hasTwoViews = true;
  const Offers offers = print.offers();
  EXPECT_EQ(readingIn(offers, kX), "G S: 4");
  for (const ReadingOffer& r : offers.readings) EXPECT_EQ(r.view, 0);
}

// A line from 230 to 830 at 400, whose right end a plumb one carries out that has heads as well.
// With a figure on it that plumb line is its carrier and no dimension; without, nobody can tell.
TEST(PennedPrint, WhatCarriesAnEndOutIsNoLineOfItsOwn) {
  for (const std::string figure : {"4", "MH"}) {
    PennedPrint print;
    print.below.clear();
    print.beside.clear();
    print.line(712, 100, 860, 100, 1.5);
    print.line(830, 100, 830, 230, 1.6);
    print.line(830, 270, 830, 400, 1.6);
    print.text("MH", 809, 238);
    print.head(830, 100, 0, 1);
    print.head(830, 400, 0, -1);
    print.line(230, 262, 230, 430, 1.5);
    print.line(230, 400, 500, 400, 1.6);
    print.line(560, 400, 830, 400, 1.6);
    print.text(figure, figure == "4" ? 520 : 509, 388);
    print.head(230, 400, 1, 0);
    print.head(830, 400, -1, 0);
    const Offers offers = print.offers();
    EXPECT_EQ(readingIn(offers, kX), figure == "4" ? "G S: 4" : ":");
    EXPECT_EQ(readingIn(offers, kY), figure == "4" ? "" : ":");
  }
}

// Drawn 5 inches long, and lettered 4.
TEST(PennedPrint, AMisprintIsAskedAbout) {
  PennedPrint print;
  print.perInch = 120;
  EXPECT_EQ(readingIn(print.offers(), kX), "G: 4");
}

// No dimension ends on the plate's lower and upper sides, or on any.
TEST(PennedPrint, ASideWithoutADimensionIsNotReady) {
  PennedPrint below, none;
  below.beside.clear();
  none.below.clear();
  none.beside.clear();
  for (const FeatureOffer& f : below.offers().features) EXPECT_EQ(f.ready, f.alongX);
  for (const FeatureOffer& f : none.offers().features) EXPECT_FALSE(f.ready);
  EXPECT_TRUE(none.offers().readings.empty());
}

}  // namespace
}  // namespace inchwright::seen
