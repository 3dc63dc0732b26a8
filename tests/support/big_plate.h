#pragma once

#include <algorithm>
#include <string>

#include "core/lines/lines.h"
#include "core/measure/lettered.h"
#include "core/part/edit.h"

namespace inchwright {

/// A plate with so many features in all: four sides and rows of 40 holes, read as chains along X
/// from side to side and along Y from the front, each row in line, all of it traced. Everything is
/// placed and every chain closes.
inline Part bigPlate(int features) {
  constexpr int kAcross = 40;
  Part part;
  part.name = "Big plate";
  const auto figure = [](int eighths) {
    return *readLength(std::to_string(eighths / 8) + (eighths % 8 == 0 ? "" : " ") +
                       (eighths % 8 == 0 ? "" : std::to_string(eighths % 8) + "/8"));
  };
  const auto inches = [](int eighths) { return std::to_string(eighths * 0.125); };
  const auto read = [&](Axis axis, const Id& from, const Id& to, int eighths) {
    Reading reading;
    reading.id = "r" + std::to_string(part.readings.size() + 1);
    reading.axis = axis;
    reading.from = from;
    reading.to = to;
    reading.figure = figure(eighths);
    part.readings.push_back(std::move(reading));
  };
  const auto edge = [&](const char* id, Side side, int eighths) {
    Feature feature;
    feature.id = id;
    feature.shape = kind::Edge{axisAcross(side), side};
    feature.traced = {inches(eighths)};
    part.features.push_back(std::move(feature));
  };
  const int holes = features - 4, rows = (holes + kAcross - 1) / kAcross;
  const int width = 3 * (kAcross + 1), height = 4 * (rows + 1);
  edge("L", Side::left, 0);
  edge("R", Side::right, width);
  edge("F", Side::front, 0);
  edge("K", Side::back, height);
  for (int row = 0, made = 0; row < rows; ++row) {
    Understanding inLine;
    inLine.axis = Axis::y;
    Id last = "L";
    for (int column = 0; column < kAcross && made < holes; ++column, ++made) {
      Feature hole;
      hole.id = "H" + std::to_string(row) + "x" + std::to_string(column);
      hole.shape = kind::Hole{{.diameter = *readLength("1/8")}};
      hole.traced = {inches(3 * (column + 1)), inches(4 * (row + 1))};
      read(Axis::x, last, hole.id, 3);
      last = hole.id;
      inLine.of.push_back(hole.id);
      part.features.push_back(std::move(hole));
    }
    const int columns = static_cast<int>(inLine.of.size());
    read(Axis::x, last, "R", width - 3 * columns);
    read(Axis::y, "F", inLine.of.front(), 4 * (row + 1));
    if (row % 5 == 0) read(Axis::y, inLine.of.front(), "K", height - 4 * (row + 1));
    if (columns > 1) part.understood.push_back(std::move(inLine));
  }
  Setup setup;
  setup.name = "1";
  for (const Axis axis : {Axis::x, Axis::y}) {
    ZeroAlong zero;
    zero.axis = axis;
    zero.at = axis == Axis::x ? "L" : "F";
    setup.zero.push_back(std::move(zero));
  }
  part.setups.push_back(std::move(setup));
  return part;
}

/// One more reading of it, which agrees.
inline std::string bigPlateLine() {
  return "x L H0x1 3/4";
}

}  // namespace inchwright
