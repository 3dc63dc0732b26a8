// What is painted of a change must leave the same picture as painting all of it anew.

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <cstdlib>
#include <memory>
#include <random>

#include "app/base/look.h"
#include "app/canvas/print_painter.h"
#include "app/canvas/stamps.h"
#include "tests/support/big_plate.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr QSize kPane{500, 400};
constexpr int kBlendingRounds = 3;  // of 255: a clipped line is blended by another way

/// A part with all that is drawn of it, at one scale.
struct Sketched {
  Sketched(Part given, const PrintMap& map) : part(std::move(given)), solution(*solve(part)) {
    drawn = drawFace(part, solution, Face::top, true);
    lettering = letteringFor(drawn, part.readings.size(), map);
    lines = dimensionLines(part, solution, drawn, TracingEvidence(part),
                           lettering.character / map.scale());
  }

  PrintScene scene() const {
    return {drawn,        lines,          lettering, widths,      QRectF(QPointF(), kPane),
            chosenPlaces, chosenReadings, hovered,   std::nullopt};
  }

  Part part;
  Solution solution;
  DrawnFace drawn;
  Lettering lettering;
  mutable TextWidths widths;
  std::vector<DimensionLine> lines;
  std::set<Id> chosenPlaces, chosenReadings;
  Id hovered;
};

QImage paintedWhole(const PrintScene& scene, const PrintMap& map) {
  QImage image(kPane, QImage::Format_ARGB32_Premultiplied);
  image.fill(Look::now().print);
  QPainter painter(&image);
  paintPrint(painter, scene, map, image.rect());
  return image;
}

/// The painting of one scene with only what differs in the next painted over.
QImage paintedOver(QImage image, const PrintScene& before, const PrintScene& after,
                   const PrintMap& map, QRegion* changed) {
  auto first = inkOf(before, map), second = inkOf(after, map);
  *changed = changedBetween(first, second);
  QPainter painter(&image);
  painter.setClipRegion(*changed);
  painter.fillRect(image.rect(), Look::now().print);
  paintPrint(painter, after, map, *changed);
  return image;
}

/// How far the greys of two pictures are apart at most.
int farthest(const QImage& one, const QImage& other) {
  int apart = 0;
  for (int y = 0; y < one.height(); ++y) {
    for (int x = 0; x < one.width(); ++x) {
      apart = std::max(apart, std::abs(qGray(one.pixel(x, y)) - qGray(other.pixel(x, y))));
    }
  }
  return apart;
}

class RandomEdits {
 public:
  explicit RandomEdits(unsigned seed) : random_(seed) {}

  /// The part with one thing or two changed.
  Part next(Part part) {
    Reading& reading = part.readings[pick(part.readings.size())];
    Feature& feature = part.features[4 + pick(part.features.size() - 4)];
    switch (pick(5)) {
      case 0:
        reading.figure = *readLength("5/16");
        break;
      case 1:
        part.readings.erase(part.readings.begin() +
                            static_cast<std::ptrdiff_t>(pick(part.readings.size())));
        break;
      case 2:
        feature.traced = {std::to_string(0.5 + 0.25 * static_cast<double>(pick(12))),
                          std::to_string(0.4 + 0.25 * static_cast<double>(pick(4)))};
        break;
      case 3:
        feature.drilled()->diameter = *readLength(pick(2) == 0 ? "1/2" : "1/16");
        break;
      default: {
        Reading more = reading;
        more.id = "more" + std::to_string(++made_);
        more.from = "L";
        more.to = feature.id;
        more.axis = Axis::x;
        part.readings.push_back(std::move(more));
      }
    }
    return part;
  }

  std::size_t pick(std::size_t below) { return random_() % below; }

 private:
  std::mt19937 random_;
  int made_ = 0;
};

TEST(Repaint, PaintingTheDifferenceIsPaintingAll) {
  deskApplication();
  const PrintMap map(60, QPointF(120, 180));
  int smaller = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    RandomEdits edits(seed);
    auto before = std::make_unique<Sketched>(bigPlate(16), map);
    for (int step = 0; step < 6; ++step) {
      auto after = std::make_unique<Sketched>(edits.next(before->part), map);
      after->chosenPlaces = before->chosenPlaces;
      const auto& places = after->drawn.places;
      if (edits.pick(3) == 0) after->chosenPlaces = {places[edits.pick(places.size())].id};
      if (edits.pick(3) == 0) after->hovered = places[edits.pick(places.size())].id;
      if (edits.pick(4) == 0) after->chosenReadings = {after->part.readings.front().id};
      const PrintScene first = before->scene(), second = after->scene();
      QRegion changed;
      const QImage over = paintedOver(paintedWhole(first, map), first, second, map, &changed);
      ASSERT_LE(farthest(over, paintedWhole(second, map)), kBlendingRounds) << "step " << step;
      const QRect box = changed.boundingRect();
      if (box.width() * box.height() < kPane.width() * kPane.height() / 4) ++smaller;
      before = std::move(after);
    }
  }
  // Else all of it might have been painted each time.
  EXPECT_GT(smaller, 20);
}

TEST(Repaint, NothingChangedIsNothingToPaint) {
  deskApplication();
  const PrintMap map(60, QPointF(120, 180));
  const Sketched plate(bigPlate(16), map);
  auto first = inkOf(plate.scene(), map), second = inkOf(plate.scene(), map);
  EXPECT_FALSE(first.empty());
  EXPECT_TRUE(changedBetween(first, second).isEmpty());
}

TEST(Repaint, WhatIsBelowLookOrPlaceChangesTheInk) {
  deskApplication();
  const PrintMap map(60, QPointF(120, 180));
  Sketched plate(bigPlate(16), map);
  const auto plain = inkOf(plate.scene(), map);
  plate.chosenPlaces = {"H0x3"};
  auto before = plain;
  auto chosen = inkOf(plate.scene(), map);
  const QRegion changed = changedBetween(before, chosen);
  const QPointF at = map.toWidget(plate.drawn.find("H0x3")->at);
  EXPECT_TRUE(changed.contains(at.toPoint()));
  EXPECT_LT(changed.boundingRect().width(), 80);
}

// Of an edge called otherwise nothing changes where a figure stands, wherever that is.
TEST(Repaint, NoNameStandsOverAFigure) {
  deskApplication();
  const PrintMap map(60, QPointF(120, 180));
  const Part part = bigPlate(4);
  const auto edge =
      std::find_if(part.features.begin(), part.features.end(), [](const Feature& one) {
        return one.is<kind::Edge>() && one.as<kind::Edge>()->axis == Axis::y;
      });
  ASSERT_NE(edge, part.features.end());
  Sketched plate(part, map);
  const auto named = std::find_if(plate.drawn.places.begin(), plate.drawn.places.end(),
                                  [&](const DrawnPlace& one) { return one.id == edge->id; });
  ASSERT_NE(named, plate.drawn.places.end());
  plate.lines.resize(1);
  double left = 1e9;
  for (const DrawnPlace& one : plate.drawn.places) left = std::min(left, map.toWidget(one.at).x());
  const double y = map.toWidget(named->at).y();
  for (int dx = -60; dx <= 0; dx += 10) {
    plate.lines[0].place = map.toInches(QPointF(left + dx, y - 8));
    const QLineF run = runOf(plate.lines[0], plate.drawn, map, plate.lettering);
    const QRect figure =
        letteringOn(run, plate.lines[0], map, plate.lettering, QRectF(QPointF(), kPane)).toRect();
    named->id = "F";
    const QImage one = paintedWhole(plate.scene(), map).copy(figure);
    named->id = "W";
    EXPECT_EQ(one, paintedWhole(plate.scene(), map).copy(figure)) << dx;
  }
}

// The stamp of a circle is the circle drawn, to within what an eighth of a pixel makes.
TEST(Stamps, LookLikeWhatTheyStandFor) {
  deskApplication();
  for (const qreal width : {0.0, 1.4}) {
    for (const QPointF centre : {QPointF(20.125, 20.375), QPointF(21.6, 19.9)}) {
      QImage stamped(40, 40, QImage::Format_ARGB32_Premultiplied);
      stamped.fill(Qt::white);
      QImage drawn = stamped;
      QPainter one(&stamped), other(&drawn);
      stampCircle(one, centre, 9, Qt::black, width);
      other.setRenderHint(QPainter::Antialiasing);
      other.setPen(width > 0 ? QPen(Qt::black, width) : QPen(Qt::NoPen));
      other.setBrush(width > 0 ? QBrush() : QBrush(Qt::black));
      other.drawEllipse(centre, 9, 9);
      double apart = 0, ink = 0;
      for (int y = 0; y < 40; ++y) {
        for (int x = 0; x < 40; ++x) {
          apart += std::abs(qGray(stamped.pixel(x, y)) - qGray(drawn.pixel(x, y)));
          ink += 255 - qGray(drawn.pixel(x, y));
        }
      }
      EXPECT_GT(ink, 10'000);
      EXPECT_LT(apart, 0.15 * ink) << width << " at " << centre.x();
    }
  }
}

}  // namespace
}  // namespace inchwright::app
