// Every sample's print shows its holes where its document says they are: the figures solved, taken
// through the known points the picture is squared up by, lead to pixels on the drawn circles.

#include <gtest/gtest.h>

#include <QImage>
#include <cmath>
#include <filesystem>
#include <numbers>
#include <string>
#include <vector>

#include "core/document/document.h"
#include "core/geometry/homography.h"
#include "core/part/plain_decimal.h"
#include "core/solution/solution.h"

namespace inchwright::app {
namespace {

constexpr int kDark = 150;  // of 255: pencil, not paper

struct DrawnHole {
  Id id;
  PlanePoint at;      ///< inches in the face
  double radius = 0;  ///< inches
};

/// The holes seen in a face whose places are certain.
std::vector<DrawnHole> holesIn(const Part& part, const Solution& solution, Face face) {
  std::vector<DrawnHole> holes;
  const auto axes = axesIn(face);
  for (const Feature& feature : part.features) {
    if (feature.face != face || !diameterOf(feature)) continue;
    for (const Place& place : placesOf(feature)) {
      // The middle of a ring is no hole.
      if (feature.is<kind::Ring>() && place.id == feature.id) continue;
      const Position* x = solution.position(place.id, axes[0]);
      const Position* y = solution.position(place.id, axes[1]);
      if (x == nullptr || y == nullptr || x->group != 0 || y->group != 0) continue;
      holes.push_back({place.id,
                       {x->ticks.toDouble() / Length::kTicksPerInch,
                        y->ticks.toDouble() / Length::kTicksPerInch},
                       diameterOf(feature)->value.toInches() / 2});
    }
  }
  return holes;
}

/// A print with the map from the inches of one view to its pixels.
struct Print {
  QImage picture;
  Homography toPixels;
  PlanePoint origin;  ///< of the view, inches on the print

  bool isDark(PlanePoint inches) const {
    const PlanePoint at = toPixels.map({inches.x + origin.x, inches.y + origin.y});
    for (int dx = -1; dx <= 1; ++dx) {
      for (int dy = -1; dy <= 1; ++dy) {
        const QPoint pixel(static_cast<int>(std::lround(at.x)) + dx,
                           static_cast<int>(std::lround(at.y)) + dy);
        if (picture.valid(pixel) && qGray(picture.pixel(pixel)) < kDark) return true;
      }
    }
    return false;
  }

  /// The share of a circle that is drawn.
  double shareDrawn(PlanePoint centre, double radius) const {
    constexpr int kSteps = 120;
    int dark = 0;
    for (int i = 0; i < kSteps; ++i) {
      const double angle = 2 * std::numbers::pi * i / kSteps;
      dark += isDark({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
    }
    return static_cast<double>(dark) / kSteps;
  }
};

/// The part with each misread figure set to what it likeliest says, which is how it was drawn.
Part asDrawn(Part part) {
  for (int round = 0; round < 3; ++round) {
    const auto solution = solve(part);
    if (!solution.ok() || solution->clashes.empty()) break;
    const Suspect& suspect = solution->suspects.front().front();
    for (Reading& reading : part.readings) {
      if (reading.id == suspect.reading) reading.figure.value = suspect.wouldBe;
    }
  }
  return part;
}

class SamplePrints : public testing::TestWithParam<const char*> {};

TEST_P(SamplePrints, ShowEveryHoleWhereItsDocumentSaysItIs) {
  const std::filesystem::path samples = std::filesystem::path(INCHWRIGHT_SOURCE_DIR) / "samples";
  const auto job = loadDocument(samples / (std::string(GetParam()) + ".inchwright"));
  ASSERT_TRUE(job.ok());
  std::size_t looked = 0;
  for (const Part& read : job->parts) {
    SCOPED_TRACE(read.name);
    const Part part = asDrawn(read);
    const auto solution = solve(part);
    ASSERT_TRUE(solution.ok());
    ASSERT_TRUE(solution->clashes.empty());
    for (const PictureView& view : part.views) {
      const Picture& picture = *job->picture(view.picture);
      std::vector<KnownPoint> points;
      for (const SquaringPoint& point : picture.points) {
        points.push_back(
            {{point.pixelX, point.pixelY}, {point.x.value.toInches(), point.y.value.toInches()}});
      }
      const auto squared = squareUp(points);
      ASSERT_TRUE(squared.ok());
      Print print{QImage(QString::fromStdString((samples / picture.file).string())),
                  squared->pixelToInches.inverse(),
                  {}};
      ASSERT_FALSE(print.picture.isNull());
      if (!view.at.empty()) print.origin = {*plainDecimal(view.at[0]), *plainDecimal(view.at[1])};
      for (const DrawnHole& hole : holesIn(part, *solution, view.face)) {
        SCOPED_TRACE(hole.id);
        ++looked;
        EXPECT_GT(print.shareDrawn(hole.at, hole.radius), 0.97);
        // A twentieth of an inch beside it the circle is not.
        EXPECT_LT(print.shareDrawn({hole.at.x + 0.05, hole.at.y + 0.03}, hole.radius), 0.6);
      }
    }
  }
  EXPECT_GE(looked, 3U);
}

INSTANTIATE_TEST_SUITE_P(All, SamplePrints,
                         testing::Values("front_plate", "back_plate", "bracket", "barrel_bridge",
                                         "pendulum_hanger", "click_work"));

}  // namespace
}  // namespace inchwright::app
