#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/lettered.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::plates {

constexpr std::int64_t kSixtyFourth = 39'687'500;

/// A figure as the reader of lengths gives it.
inline Lettered figure(std::string_view text, Unit unit = Unit::inch) {
  return readLength(text, {unit}).value();
}

/// A part whose places are put down by hand, so that a test of the plan does not hang on the
/// solver. Positions are in sixty-fourths of an inch.
class Plate {
 public:
  Plate& edge(const Id& id, Axis axis, int at, std::optional<Side> side = std::nullopt) {
    Feature feature;
    feature.id = id;
    feature.shape = kind::Edge{axis, side};
    part.features.push_back(std::move(feature));
    return put(id, axis, at);
  }

  /// A feature in a face, its own place at (a, b) along the face's two axes.
  Plate& feature(const Id& id, FeatureKind kind, int a, int b, Face face = Face::top) {
    Feature made;
    made.id = id;
    made.shape = emptyShape(kind);
    made.face = face;
    part.features.push_back(std::move(made));
    return put(id, axesIn(face)[0], a).put(id, axesIn(face)[1], b);
  }

  Plate& hole(const Id& id, int a, int b, std::string_view diameter, Make make = Make::drill,
              Face face = Face::top) {
    feature(id, FeatureKind::hole, a, b, face);
    part.features.back().drilled()->make = make;
    if (!diameter.empty()) part.features.back().drilled()->diameter = figure(diameter);
    return *this;
  }

  Plate& put(const Id& id, Axis axis, int sixtyFourths) {
    return putTicks(id, axis, Rational(sixtyFourths * kSixtyFourth));
  }

  Plate& putTicks(const Id& id, Axis axis, const Rational& ticks) {
    solution.positions.at(id, axis).ticks = ticks;
    return *this;
  }

  Feature& last() { return part.features.back(); }
  Position& at(const Id& id, Axis axis) { return solution.positions.at(id, axis); }

  Part part;
  Solution solution;
};

/// A block with all six sides: 2 in along X, 1 1/2 along Y, 1 along Z, its lower corner off origin.
inline Plate block() {
  Plate plate;
  plate.part.name = "Block";
  plate.edge("L", Axis::x, 32, Side::left).edge("R", Axis::x, 160, Side::right);
  plate.edge("F", Axis::y, -16, Side::front).edge("K", Axis::y, 80, Side::back);
  plate.edge("U", Axis::z, 8, Side::bottom).edge("T", Axis::z, 72, Side::top);
  return plate;
}

inline ZeroAlong zeroAt(Axis axis, Id place) {
  ZeroAlong zero;
  zero.axis = axis;
  zero.at = std::move(place);
  return zero;
}

inline ZeroAlong zeroMiddle(Axis axis, Id a, Id b, bool ofStock = false) {
  ZeroAlong zero;
  zero.axis = axis;
  zero.middle = {std::move(a), std::move(b)};
  zero.ofStock = ofStock;
  return zero;
}

inline Setup setupWith(std::vector<ZeroAlong> zero, Face face = Face::top, int turn = 0) {
  Setup setup;
  setup.name = "1";
  setup.face = face;
  setup.turn = turn;
  setup.zero = std::move(zero);
  return setup;
}

inline Setup lowerCorner(int turn = 0) {
  return setupWith({zeroAt(Axis::x, "L"), zeroAt(Axis::y, "F")}, Face::top, turn);
}

inline void leaveOn(Setup& setup, Side side, std::string_view text) {
  setup.stock[static_cast<std::size_t>(side)] = figure(text);
}

inline Job jobWith(CountsX x = CountsX::right, CountsY y = CountsY::away) {
  Job job;
  job.machine.xCounts = x;
  job.machine.yCounts = y;
  job.machine.finder = figure("0.200");
  return job;
}

}  // namespace inchwright::plates
