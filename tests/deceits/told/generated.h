#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "tests/deceits/told/changed.h"

namespace inchwright::test {

/// Documents made at random, sound and not: what may be put on a print is, wherever it falls. The
/// same seed gives the same documents on every machine.
class Generated {
 public:
  explicit Generated(unsigned seed) : random_(seed) {}

  /// A plate in the vice or under clamps, with holes of every make, slots and a pocket.
  Json plate() {
    begin("Plate");
    sides(draw(24, 96), draw(16, 64), draw(4, 24));
    for (int i = draw(4, 9); i > 0; --i)
      hole(one<std::string>({"top", "top", "top", "front", "bottom", "left"}));
    if (chance(2)) slot();
    if (chance(3)) slot();
    if (chance(3)) ring();
    if (chance(3)) row();
    if (chance(3)) pocket();
    setup("1", one<std::string>({"top", "top", "top", "bottom"}));
    for (const char* id : {"A", "B", "C"}) {
      if (chance(2)) made(id);
    }
    if (chance(2)) setup("2", one<std::string>({"top", "front", "bottom", "left"}));
    return done();
  }

  /// Holes by centre distances and angles from one another, nearly all as they are traced.
  Json slanted() {
    begin("Cock");
    part_["general"] = {{"fractions", "1/64"},
                        {"two_places", "0.010"},
                        {"three_places", "0.005"},
                        {"angles", "1/2"}};
    edge("L", "x", "left");
    edge("F", "y", "front");
    std::vector<std::pair<double, double>> at;
    for (int i = 0; i < 7; ++i) {
      const std::string id(1, static_cast<char>('M' + i));
      const double x = draw(16, 320) / 64.0, y = draw(16, 256) / 64.0;
      Json hole{{"id", id}, {"kind", "hole"}, {"diameter", "3/16"}};
      if (!chance(5))
        hole["traced"] = {plain(x + draw(-9, 9) / 1000.0), plain(y + draw(-9, 9) / 1000.0)};
      part_["features"].push_back(hole);
      at.emplace_back(x, y);
      const std::size_t n = at.size();
      if (n == 1) {
        read("x", "L", id, sixtyFourth(x));
        read("y", "F", id, sixtyFourth(y));
        continue;
      }
      for (int k = chance(6) ? 3 : 2; k > 0; --k) {
        const std::size_t from = random_() % (n - 1);
        const double dx = x - at[from].first, dy = y - at[from].second;
        const std::string other(1, static_cast<char>('M' + static_cast<int>(from)));
        const double off = chance(9) ? 1 / 16.0 : 0;
        switch (random_() % 4) {
          case 0:
            read(dx < 0 ? "x" : "x", dx < 0 ? id : other, dx < 0 ? other : id,
                 sixtyFourth(std::abs(dx) + off));
            break;
          case 1:
            read("y", dy < 0 ? id : other, dy < 0 ? other : id, sixtyFourth(std::abs(dy) + off));
            break;
          case 2:
            part_["readings"].push_back(
                {{"id", next()},
                 {"kind", "angle"},
                 {"from", other},
                 {"to", id},
                 {"text", plain(std::round(std::atan2(dy, dx) * 180 / 3.14159265358979 * 4) / 4)},
                 {"sense", "anticlockwise"}});
            if (std::atan2(dy, dx) < 0) {
              part_["readings"].back()["sense"] = "clockwise";
              part_["readings"].back()["text"] =
                  plain(std::round(-std::atan2(dy, dx) * 180 / 3.14159265358979 * 4) / 4);
            }
            break;
          default:
            part_["readings"].push_back({{"id", next()},
                                         {"kind", "centres"},
                                         {"from", other},
                                         {"to", id},
                                         {"text", plain(std::hypot(dx, dy) + off)}});
        }
      }
    }
    part_["setups"].push_back({{"name", "1"},
                               {"face", "top"},
                               {"turn", 90 * draw(0, 3)},
                               {"zero", {{"x", {{"at", "M"}}}, {"y", {{"at", "M"}}}}}});
    return done();
  }

  /// Chains along both axes with readings over them, some misread, some with tolerances.
  Json chains() {
    begin("Bar");
    part_["general"] = {{"fractions", "1/64"}, {"two_places", "0.010"}, {"three_places", "0.005"}};
    const int high = draw(32, 64);
    sides(160, high, 16);
    std::vector<int> at{0};
    std::vector<std::string> ids{"L"};
    for (int i = 0; i < 7; ++i) {
      at.push_back(at.back() + draw(6, 20));
      ids.push_back(std::string(1, "ABCDEGH"[i]));
      Json hole{{"id", ids.back()}, {"kind", "hole"}, {"diameter", "1/4"}};
      if (chance(2)) hole["traced"] = {plain(at.back() / 16.0), plain(high / 32.0)};
      part_["features"].push_back(hole);
      read("y", "F", ids.back(), sixteenth(high / 2));
    }
    for (std::size_t i = 1; i < at.size(); ++i) {
      const std::size_t from = chance(3) ? 0 : i - 1;
      read("x", ids[from], ids[i], figure(at[i] - at[from] + (chance(12) ? 1 : 0)));
    }
    for (int k = draw(2, 5); k > 0; --k) {
      const std::size_t a = random_() % at.size(), b = random_() % at.size();
      if (at[a] < at[b]) read("x", ids[a], ids[b], figure(at[b] - at[a] + (chance(5) ? 2 : 0)));
    }
    if (chance(2))
      part_["understood"].push_back({{"kind", "midway"},
                                     {"axis", "y"},
                                     {"of", "A"},
                                     {"between", {"F", "K"}},
                                     {"stated", chance(2)}});
    if (chance(2))
      part_["understood"].push_back(
          {{"kind", "equal"}, {"axis", "x"}, {"of", {"B", "C", "D"}}, {"stated", true}});
    setup("1", "top");
    job_["machine"]["accuracy"] = "0.0005";
    return done();
  }

  /// Turned work of up to six diameters, with what else may be cut on them.
  Json shaft() {
    begin("Arbor");
    part_["shape"] = "turned";
    std::vector<std::string> ids{"L"};
    edge("L", "x", "left");
    int at = 0;
    for (int i = draw(2, 6); i > 0; --i) {
      at += draw(4, 20);
      ids.push_back(i == 1 ? "R" : "E" + std::to_string(i));
      edge(ids.back(), "x", i == 1 ? "right" : "");
      read("x", "L", ids.back(), sixteenth(at));
    }
    for (std::size_t i = 1; i < ids.size(); ++i) {
      const std::vector<std::string> between{ids[i - 1], ids[i]};
      const std::string id = "D" + std::to_string(i), wide = sixteenth(draw(4, 16));
      switch (random_() % 6) {
        case 0:
          part_["features"].push_back({{"id", id},
                                       {"kind", "taper"},
                                       {"between", between},
                                       {"large", sixteenth(draw(9, 16))},
                                       {"small", sixteenth(draw(3, 8))},
                                       {"large_at", between[random_() % 2]}});
          break;
        case 1:
          part_["features"].push_back(
              {{"id", id}, {"kind", "groove"}, {"between", between}, {"diameter", wide}});
          break;
        case 2:
          part_["features"].push_back(
              {{"id", id}, {"kind", "outside"}, {"between", between}, {"diameter", "1/2"}});
          part_["features"].push_back({{"id", "S" + id},
                                       {"kind", "screwed"},
                                       {"between", between},
                                       {"thread", one<std::string>({"1/2-20 UNF", "1/2-13 UNC"})},
                                       {"runout", "1/16"}});
          break;
        default:
          part_["features"].push_back(
              {{"id", id},
               {"kind", "outside"},
               {"between", between},
               {"diameter", wide + one<std::string>({"", "", " +.000 -.001", " ±.002"})}});
      }
    }
    if (chance(2))
      part_["features"].push_back(
          {{"id", "B"}, {"kind", "bored"}, {"between", {"L", ids[1]}}, {"diameter", "3/16"}});
    if (chance(2))
      part_["features"].push_back({{"id", "C1"},
                                   {"kind", "chamfer"},
                                   {"at", "R"},
                                   {"length", "1/32"},
                                   {"angle", one<std::string>({"45", "30"})}});
    if (chance(2))
      part_["features"].push_back(
          {{"id", "C2"}, {"kind", "centre_drill"}, {"at", "R"}, {"size", "#2"}});
    job_["lathe"] = {{"unit", "in"},
                     {"step", "0.001"},
                     {"carriage_counts", one<std::string>({"left", "right"})},
                     {"cross_counts", one<std::string>({"diameter", "radius"})}};
    Json first{{"name", "1"},
               {"kind", "lathe"},
               {"held", one<std::string>({"left", "right"})},
               {"zero", {{"x", {{"at", one<std::string>({"L", "R"})}}}}}};
    if (chance(2)) first["stands_out"] = sixteenth(draw(8, 24));
    if (chance(3))
      first["part_off"] = {{"width", "1/8"}, {"corner", one<std::string>({"left", "right"})}};
    Json second{{"name", "2"},
                {"kind", "lathe"},
                {"held", first["held"] == "left" ? "right" : "left"},
                {"zero", {{"x", {{"at", "L"}}}}}};
    part_["setups"] = {first, second};
    return done();
  }

 protected:
  int draw(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
  }
  bool chance(int outOf) { return draw(1, outOf) == 1; }
  template <class T>
  T one(const std::vector<T>& of) {
    return of[random_() % of.size()];
  }

  static std::string plain(double inches) {
    char text[32];
    std::snprintf(text, sizeof text, "%.4f", inches);
    return text;
  }
  static std::string over(int count, int parts) {
    while (count % 2 == 0 && parts > 1) {
      count /= 2;
      parts /= 2;
    }
    const std::string whole = std::to_string(count / parts);
    if (count % parts == 0) return whole;
    const std::string rest = std::to_string(count % parts) + "/" + std::to_string(parts);
    return count < parts ? rest : whole + " " + rest;
  }
  static std::string sixteenth(int count) { return over(std::max(count, 1), 16); }
  static std::string sixtyFourth(double inches) {
    return over(std::max(1, static_cast<int>(std::lround(inches * 64))), 64);
  }
  /// Sixteenths as a print letters them.
  std::string figure(int count) {
    count = std::max(count, 1);
    switch (random_() % 5) {
      case 0:
        return plain(count / 16.0);
      case 1:
        return plain(count / 16.0).substr(0, plain(count / 16.0).size() - 1) + " ±.003";
      case 2:
        return sixteenth(count) + " ±1/64";
      default:
        return sixteenth(count);
    }
  }

  void begin(const std::string& name) {
    readings_ = holes_ = 0;
    job_ = {{"inchwright", 1}, {"job", {{"title", "Generated"}, {"unit", "in"}}}};
    job_["machine"] = {{"unit", one<std::string>({"in", "in", "mm"})},
                       {"x_counts", one<std::string>({"right", "left"})},
                       {"y_counts", one<std::string>({"away", "towards"})},
                       {"finder", one<std::string>({"0.200", "6 mm"})}};
    part_ = {{"name", name},
             {"material", one<std::string>({"brass", "mild steel", "aluminium"})},
             {"features", Json::array()},
             {"readings", Json::array()},
             {"understood", Json::array()},
             {"setups", Json::array()}};
  }
  Json done() {
    job_["parts"] = {part_};
    return job_;
  }
  std::string next() { return "r" + std::to_string(++readings_); }
  void read(const std::string& axis, const std::string& from, const std::string& to,
            const std::string& text) {
    part_["readings"].push_back(
        {{"id", next()}, {"axis", axis}, {"from", from}, {"to", to}, {"text", text}});
  }
  void edge(const std::string& id, const std::string& axis, const std::string& side) {
    Json one{{"id", id}, {"kind", "edge"}, {"axis", axis}};
    if (!side.empty()) one["side"] = side;
    part_["features"].push_back(one);
  }
  void sides(int wide, int high, int thick) {
    wide_ = wide;
    high_ = high;
    thick_ = thick;
    edge("L", "x", "left");
    edge("R", "x", "right");
    edge("F", "y", "front");
    edge("K", "y", "back");
    edge("U", "z", "bottom");
    edge("T", "z", "top");
    read("x", "L", "R", sixteenth(wide));
    read("y", "F", "K", sixteenth(high));
    read("z", "U", "T", sixteenth(thick));
  }

  /// Somewhere on a face, by its two axes from the lower sides.
  void place(const std::string& id, const std::string& face) {
    const bool level = face == "top" || face == "bottom";
    const std::string first = face == "left" ? "y" : "x", second = level ? "y" : "z";
    const auto lower = [](const std::string& axis) {
      return axis == "x" ? "L" : axis == "y" ? "F" : "U";
    };
    const auto size = [&](const std::string& axis) {
      return axis == "x" ? wide_ : axis == "y" ? high_ : thick_;
    };
    for (const std::string& axis : {first, second})
      read(axis, lower(axis), id, figure(draw(1, size(axis) + (chance(9) ? 3 : -2))));
  }
  void make(Json& what) {
    static const std::vector<std::string> kSizes{"1/8", "3/16", "1/4", "5/16", "3/8",
                                                 "1/2", "6 mm", "#30", ".257"};
    const std::string size = one(kSizes);
    what["diameter"] = size == "#30" ? ".1285" : size;
    switch (random_() % 9) {
      case 0:
      case 1:
        what["make"] = "ream";
        if (chance(2)) what["limits"] = "H7";
        break;
      case 2:
        what["make"] = "bore";
        what["diameter"] = sixteenth(draw(8, 20));
        break;
      case 3:
        what["make"] = "tap";
        what.erase("diameter");
        what["thread"] = one<std::string>({"1/4-20 UNC", "8-32 UNC", "M4", "2 BA"});
        break;
      case 4:
        what["make"] = one<std::string>({"counterbore", "spotface"});
        what["diameter"] = "3/16";
        what["seat_diameter"] = "3/8";
        what["seat_depth"] = sixteenth(draw(1, 4));
        break;
      case 5:
        what["make"] = "countersink";
        what["diameter"] = "3/16";
        what["seat_diameter"] = "3/8";
        break;
      default:
        break;
    }
    if (chance(2)) what["depth"] = sixteenth(draw(1, thick_ + 1));
    if (chance(8)) what["locate"] = one<std::string>({"mate", "pair", "assembly", "suit"});
  }
  void hole(const std::string& face) {
    const std::string id(1, static_cast<char>('A' + holes_++));
    const std::string name = id >= "F" ? id + "0" : id;
    Json feature{{"id", name}, {"kind", "hole"}, {"face", face}};
    make(feature);
    part_["features"].push_back(feature);
    place(name, face);
  }
  void made(const std::string& place) {
    Json found{{"place", place}, {"setup", "1"}};
    if (!chance(4))
      found["size"] =
          plain(one<double>({0.125, 0.1875, 0.25, 0.3125, 0.375, 0.5}) + draw(-20, 20) / 10'000.0);
    if (chance(2)) {
      found["x"] = plain(draw(-20'000, 20'000) / 10'000.0);
      found["y"] = plain(draw(-20'000, 20'000) / 10'000.0);
    }
    if (chance(3)) {
      found["go"] = Json{{"size", "0.2495"}, {"class", "ZZ"}, {"sign", "plus"}};
      found["no_go"] = "0.2510";
    }
    if (!chance(3))
      found["with"] = {{"name", "caliper"}, {"error", one<std::string>({"0.0005", "0.001"})}};
    part_["made"].push_back(found);
  }
  void slot() {
    const std::string id = "S" + std::string(1, static_cast<char>('A' + holes_++));
    Json feature{{"id", id},
                 {"kind", "slot"},
                 {"axis", one<std::string>({"x", "y"})},
                 {"width", sixteenth(draw(2, 8))},
                 {"length", sixteenth(draw(9, 24))},
                 {"depth", chance(3) ? "through" : sixteenth(draw(1, thick_))}};
    if (chance(4)) feature["cutter"] = "1/4";
    part_["features"].push_back(feature);
    place(id, "top");
  }
  void ring() {
    Json feature{{"id", "GR"},
                 {"kind", "ring"},
                 {"holes", draw(3, 8)},
                 {"pcd", sixteenth(draw(8, 24))},
                 {"first_angle", std::to_string(15 * draw(0, 23))},
                 {"sense", one<std::string>({"clockwise", "anticlockwise"})}};
    make(feature);
    part_["features"].push_back(feature);
    place("GR", "top");
  }
  void row() {
    Json feature{{"id", "W"},
                 {"kind", "row"},
                 {"axis", one<std::string>({"x", "y"})},
                 {"holes", draw(2, 6)},
                 {"pitch", sixteenth(draw(3, 9))}};
    make(feature);
    part_["features"].push_back(feature);
    place("W1", "top");
  }
  void pocket() {
    edge("PL", "x", "");
    edge("PR", "x", "");
    edge("PF", "y", "");
    edge("PK", "y", "");
    const int x = draw(2, wide_ / 2), y = draw(2, high_ / 2);
    read("x", "L", "PL", sixteenth(x));
    read("x", "PL", "PR", sixteenth(draw(6, wide_ / 2)));
    read("y", "F", "PF", sixteenth(y));
    read("y", "PF", "PK", sixteenth(draw(6, high_ / 2)));
    const std::string radius = one<std::string>({"1/16", "1/8", "3/16", "1/4"});
    const char* const corners[][3] = {
        {"C1", "PF", "PR"}, {"C2", "PR", "PK"}, {"C3", "PK", "PL"}, {"C4", "PL", "PF"}};
    for (const auto& corner : corners)
      part_["features"].push_back({{"id", corner[0]},
                                   {"kind", "round"},
                                   {"radius", radius},
                                   {"corner", {corner[1], corner[2]}}});
    part_["outlines"].push_back({{"face", "top"},
                                 {"follows", {"PF", "C1", "PR", "C2", "PK", "C3", "PL", "C4"}},
                                 {"inner", true},
                                 {"depth", sixteenth(draw(1, thick_))}});
  }
  void setup(const std::string& name, const std::string& face) {
    const bool level = face == "top" || face == "bottom";
    const std::string first = face == "left" ? "y" : "x", second = level ? "y" : "z";
    const auto ends = [](const std::string& axis) {
      return axis == "x"   ? std::vector<std::string>{"L", "R"}
             : axis == "y" ? std::vector<std::string>{"F", "K"}
                           : std::vector<std::string>{"U", "T"};
    };
    Json one{{"name", name}, {"face", face}, {"turn", 90 * draw(0, 3)}};
    for (const std::string& axis : {first, second}) {
      Json& zero = one["zero"][axis];
      if (chance(2)) {
        zero["at"] = ends(axis)[random_() % 2];
        if (chance(4)) zero["offset"] = chance(2) ? "1/4" : "-1/8";
      } else {
        zero["middle"] = ends(axis);
        if (chance(2)) zero["of"] = "stock";
      }
    }
    for (const char* side : {"left", "right", "front", "back", "top", "bottom"}) {
      if (chance(5)) one["stock"][side] = "1/16";
    }
    if (level && chance(3)) {
      one["clamps"].push_back({{"x", {"0", "1/2"}}, {"y", {"1/2", "3/2"}}, {"tall", "3/4"}});
    } else if (level) {
      one["jaw"] = chance(2) ? "front" : "back";
      one["stop"] = chance(2) ? "left" : "right";
      one["parallels"] = Json::array();
      for (const char* jaw : {"fixed", "moving"}) {
        Json laid{{"jaw", jaw}, {"thick", "1/8"}, {"tall", "3/4"}};
        if (chance(2)) laid["gap"] = sixteenth(draw(1, 6));
        if (chance(4)) laid["from"] = "1/2";
        if (!chance(9)) one["parallels"].push_back(laid);
      }
      job_["shop"]["vice"] = {{"jaw_height", "1 1/4"}};
    }
    if (level && chance(4))
      one["clear_of"].push_back({{"x", {"1", "3/2"}}, {"y", {"0", "1/2"}}, {"tall", "1/2"}});
    if (chance(4)) job_["machine"]["travel"] = {{"x", "2"}, {"y", "6"}};
    if (chance(3))
      job_["shop"]["cutters"] = {{{"size", "1/8"}, {"length", "3/8"}},
                                 {{"size", "1/4"}, {"centre_cutting", true}}};
    part_["setups"].push_back(one);
  }

  std::mt19937 random_;
  Json job_, part_;
  int readings_ = 0, holes_ = 0;
  int wide_ = 0, high_ = 0, thick_ = 0;  // sixteenths
};

}  // namespace inchwright::test
