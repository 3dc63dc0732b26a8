#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "app/session/picture_edits.h"
#include "app/session/work.h"

namespace inchwright::test {

inline seen::FeatureOffer edgeAt(bool alongX, double at) {
  seen::FeatureOffer out;
  out.kind = seen::OfferedFeature::edge;
  out.ready = true;
  out.alongX = alongX;
  out.at = alongX ? PlanePoint{at, 1} : PlanePoint{1.5, at};
  out.from = alongX ? PlanePoint{at, 0} : PlanePoint{0, at};
  out.to = alongX ? PlanePoint{at, 2} : PlanePoint{3, at};
  return out;
}

inline seen::FeatureOffer holeAt(double x, double y, double radius = 0.125) {
  seen::FeatureOffer out;
  out.at = {x, y};
  out.drawnRadius = radius;
  out.ready = true;
  return out;
}

/// Holes in line along X, evenly between two places, as one row whose note says its size.
inline seen::FeatureOffer rowAt(double from, double to, double y, int count, const char* size) {
  seen::FeatureOffer out;
  out.kind = seen::OfferedFeature::row;
  out.from = {from, y};
  out.to = {to, y};
  out.at = {(from + to) / 2, y};
  out.count = count;
  out.drawnRadius = 0.0625;
  out.alongX = true;
  out.ready = true;
  out.size = size;
  out.sizeWitnesses = {true, false, true, false};
  out.note = "DRILL";
  return out;
}

/// The round of a corner, of which a note says the radius.
inline seen::FeatureOffer roundAt(PlanePoint corner, PlanePoint centre, const char* size) {
  seen::FeatureOffer out;
  out.kind = seen::OfferedFeature::round;
  out.at = centre;
  out.from = {centre.x, corner.y};
  out.to = {corner.x, centre.y};
  out.drawnRadius = 0.25;
  out.ready = true;
  out.size = size;
  if (!out.size.empty()) out.sizeWitnesses = {true, false, true, false};
  return out;
}

/// Four holes on a circle, one of them level with its middle, of which a note says all.
inline seen::FeatureOffer ringAt(double x, double y, double radius, const char* pcd) {
  seen::FeatureOffer out;
  out.kind = seen::OfferedFeature::ring;
  out.at = {x, y};
  out.drawnRadius = radius;
  out.count = 4;
  out.ready = true;
  out.size = "1/8";
  out.note = "DRILL";
  out.pcd = pcd;
  out.sizeWitnesses = out.pcdWitnesses = {true, false, true, false};
  out.firstAngle = 0;
  return out;
}

/// A slanted side from one place to another, or with a radius a curved one about a third.
inline seen::FeatureOffer sideBetween(PlanePoint from, PlanePoint to, double radius = 0,
                                      PlanePoint centre = {}) {
  seen::FeatureOffer out;
  out.kind = radius > 0 ? seen::OfferedFeature::arc : seen::OfferedFeature::line;
  out.from = from;
  out.to = to;
  out.at = radius > 0 ? centre : PlanePoint{(from.x + to.x) / 2, (from.y + to.y) / 2};
  out.drawnRadius = radius;
  out.ready = true;
  return out;
}

/// The same, not plainly drawn.
inline seen::FeatureOffer faint(seen::FeatureOffer one) {
  one.ready = false;
  return one;
}

inline seen::Candidate lettered(const char* text) {
  return {text, readLength(text, {Unit::inch})->value.ticks(), 0.9, 0.3, false};
}

constexpr seen::Witnesses kReady{true, false, true, false};
constexpr seen::Witnesses kUnsure{false, true, true, false};
constexpr seen::Witnesses kPlain{true, false, false, false};

inline seen::ReadingOffer dimension(bool alongX, double from, double to,
                                    std::vector<seen::Candidate> candidates,
                                    seen::Witnesses witnesses = kReady) {
  seen::ReadingOffer out;
  out.kind = alongX ? seen::OfferedReading::alongX : seen::OfferedReading::alongY;
  out.from = alongX ? PlanePoint{from, -0.5} : PlanePoint{-0.5, from};
  out.to = alongX ? PlanePoint{to, -0.5} : PlanePoint{-0.5, to};
  out.candidates = std::move(candidates);
  out.witnesses = witnesses;
  // Half way, of 100 pixels to the inch, which count downwards.
  const double middle = 50 * (from + to);
  out.figure = alongX ? seen::PictureBox{middle - 10, 45, 20, 10}
                      : seen::PictureBox{-60, -middle - 5, 20, 10};
  return out;
}

/// A picture squared up on a desk, 100 pixels to the inch and its zero at the face's, and what is
/// offered on it; Enter's deafness goes by a clock of its own.
class OffersOnDesk {
 public:
  OffersOnDesk() {
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
    const auto laid = app::layPicture(desk.job(), 0, Face::top, QStringLiteral("print"), "bytes");
    const Lettered none = *readLength("0", {Unit::inch}), one = *readLength("1", {Unit::inch});
    desk.take(*app::setPicturePoints(*laid, "print", {{0, 0, none, none}, {100, 0, one, none}}),
              {});
    QObject::connect(&desk, &app::Desk::refused, &desk,
                     [this](const QString& why) { refused = why; });
    work.setClock([this] { return now; });
  }

  /// A plate 3 by 2 with a hole, all of it dimensioned and ready: `1 3/16` and `1` to the hole.
  static seen::Offers sound() {
    seen::Offers out;
    out.features = {holeAt(1.19, 1), edgeAt(true, 0.004), edgeAt(true, 3.003), edgeAt(false, 0.001),
                    edgeAt(false, 2.002)};
    out.readings = {dimension(true, 0, 1.19, {lettered("1 3/16")}),
                    dimension(true, 0, 3, {lettered("3")}), dimension(false, 0, 1, {lettered("1")}),
                    dimension(false, 0, 2, {lettered("2")})};
    return out;
  }

  void offer(const seen::Offers& offers) {
    const auto map = squareUp(std::vector<KnownPoint>{{{0, 0}, {0, 0}}, {{100, 0}, {1, 0}}});
    ASSERT_TRUE(map.ok());
    work.noteOffers(app::PictureOffers{offers, map->pixelToInches});
    work.goThroughOffers();
    ASSERT_EQ(work.doing(), app::Doing::offering);
  }

  bool enter(const char* text = "") {
    now += seen::kDeaf;
    return work.enter(QString::fromUtf8(text));
  }

  /// Enter and again Enter, whatever stands there; what that does not take is passed by, or named
  /// once where a name is given.
  void hurry(const char* name = nullptr) {
    for (int idle = 0; work.doing() == app::Doing::offering && idle < 40;) {
      const bool place = work.offering()->offered.feature() != nullptr;
      if (enter()) {
        idle = 0;
      } else if (place && name != nullptr && enter(std::exchange(name, nullptr))) {
        idle = 0;
      } else {
        ++idle;
        work.pass();
      }
    }
  }

  const Part& part() { return desk.part(); }

  app::Desk desk;
  app::Work work{desk};
  seen::Offered::Time now{1000};
  QString refused;
};

}  // namespace inchwright::test
