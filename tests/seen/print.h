#pragma once

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "core/seen/offer.h"

namespace inchwright::seen {

/// A print drawn by `draw_prints`: the picture, how it is squared up, and the truth about it.
struct DrawnPrint {
  std::string name;
  std::vector<std::uint8_t> bytes;
  GreyPicture picture;
  Homography pixelToInches;
  nlohmann::json truth;

  Unit unit() const { return truth["unit"] == "mm" ? Unit::millimetre : Unit::inch; }
  /// Inches of the sheet to one of the face.
  double scale() const { return truth["scale"]; }
  /// Height of the capitals in inches of the face.
  double capitals() const { return truth["style"]["cap"].get<double>() / scale(); }
};

/// Reads a print from FOLDER/NAME.pgm and .json; one without a picture when there is none.
inline DrawnPrint readPrint(const std::string& stem) {
  DrawnPrint out;
  out.name = stem;
  std::ifstream file(stem + ".pgm", std::ios::binary);
  std::string magic;
  int width = 0, height = 0, most = 0;
  file >> magic >> width >> height >> most;
  file.get();
  if (magic != "P5" || most != 255) return out;
  out.bytes.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  file.read(reinterpret_cast<char*>(out.bytes.data()),
            static_cast<std::streamsize>(out.bytes.size()));
  out.truth = nlohmann::json::parse(std::ifstream(stem + ".json"));
  std::vector<KnownPoint> points;
  for (const auto& p : out.truth["points"]) points.push_back({{p[2], p[3]}, {p[0], p[1]}});
  const auto squared = squareUp(points);
  if (!squared) return out;
  out.pixelToInches = squared->pixelToInches;
  out.picture = {out.bytes.data(), width, height, width};
  return out;
}

}  // namespace inchwright::seen
