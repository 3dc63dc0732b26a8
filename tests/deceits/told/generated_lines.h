#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "tests/deceits/told/generated.h"

namespace inchwright::test {

/// Outlines of lines and arcs that are given by what they touch, run through, or at what angle.
class GeneratedLines : public Generated {
 public:
  using Generated::Generated;

  Json make() {
    begin("Lever");
    edge("L", "x", "left");
    edge("F", "y", "front");
    for (const char* id : {"M", "N", "O", "P"}) {
      const int x = draw(16, 96), y = draw(16, 64);
      at_.emplace_back(x / 16.0, y / 16.0);
      part_["features"].push_back({{"id", id},
                                   {"kind", "hole"},
                                   {"diameter", "1/8"},
                                   {"traced", {plain(x / 16.0), plain(y / 16.0)}}});
      read("x", "L", id, sixteenth(x));
      read("y", "F", id, sixteenth(y));
    }
    round("D", "M");
    round("E", "N");
    for (const char* id : {"V", "W", "X"}) line(id);
    if (chance(2)) arc();
    part_["outlines"].push_back({{"face", "top"}, {"follows", {"D", "V", "E", "W"}}});
    part_["setups"].push_back(
        {{"name", "1"},
         {"face", "top"},
         {"turn", 90 * draw(0, 3)},
         {"zero", {{"x", {{"at", "M"}}}, {"y", {{"at", one<std::string>({"N", "F"})}}}}}});
    return done();
  }

 private:
  static constexpr std::array<const char*, 4> kHoles{"M", "N", "O", "P"};

  void understand(Json what) {
    what["stated"] = !chance(6);
    part_["understood"].push_back(std::move(what));
  }
  void round(const std::string& id, const std::string& about) {
    part_["features"].push_back({{"id", id},
                                 {"kind", "round"},
                                 {"side", one<std::string>({"left", "right"})},
                                 {"radius", sixteenth(draw(4, 10))},
                                 {"about", about}});
  }
  void angle(const std::string& id) {
    Json reading{{"id", next()}, {"kind", "angle"}, {"from", id}};
    if (chance(2) && !lines_.empty()) reading["against"] = {one(lines_)};
    if (!reading.contains("against") && chance(3)) reading["against"] = {"M", "O"};
    if (chance(2)) reading["sense"] = one<std::string>({"clockwise", "anticlockwise"});
    reading["text"] = one<std::string>({"30", "12 1/2", "45.25", "80", "120"});
    part_["readings"].push_back(reading);
  }
  /// Two things said of it, sometimes one or three.
  void line(const std::string& id) {
    const std::size_t a = random_() % 4, b = (a + 1 + random_() % 3) % 4;
    Json feature{{"id", id}, {"kind", "line"}};
    if (!chance(5)) {
      feature["traced"] = {plain(at_[a].first), plain(at_[a].second + draw(-4, 4) / 16.0),
                           plain(at_[b].first), plain(at_[b].second + draw(-4, 4) / 16.0)};
    }
    int said = chance(6) ? 1 : chance(6) ? 3 : 2;
    if (chance(3)) {
      feature["through"] = {kHoles[a]};
      --said;
    }
    part_["features"].push_back(feature);
    for (; said > 0; --said) {
      switch (random_() % 5) {
        case 0:
          angle(id);
          break;
        case 1:
          understand({{"kind", "on"}, {"of", {kHoles[random_() % 4]}}, {"about", id}});
          break;
        case 2:
          if (lines_.empty()) {
            angle(id);
          } else {
            understand(
                {{"kind", one<std::string>({"parallel", "square"})}, {"of", {id, one(lines_)}}});
          }
          break;
        default:
          understand({{"kind", "tangent"}, {"of", {id, one<std::string>({"D", "E"})}}});
      }
    }
    if (chance(3)) {
      understand({{"kind", "beside"},
                  {"of", {kHoles[random_() % 4]}},
                  {"about", id},
                  {"side", one<std::string>({"front", "back"})}});
    }
    lines_.push_back(id);
  }
  void arc() {
    part_["features"].push_back({{"id", "Y"},
                                 {"kind", "arc"},
                                 {"radius", sixteenth(draw(24, 80))},
                                 {"traced", {plain(2.5), plain(5.5), plain(3)}}});
    for (const char* round : {"D", "E"}) {
      understand({{"kind", "tangent"},
                  {"of", {"Y", round}},
                  {"touch", one<std::string>({"outside", "inside"})}});
    }
  }

  std::vector<std::pair<double, double>> at_;
  std::vector<std::string> lines_;
};

}  // namespace inchwright::test
