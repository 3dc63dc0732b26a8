#pragma once

#include <array>
#include <cmath>
#include <cstdio>
#include <functional>
#include <numbers>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/job.h"

namespace inchwright::test {

/// A print at random in which every way of holding a place stands: centre distances, angles from X,
/// from two places and from a line, distances square to a line, tangents, what lies on a line or an
/// arc, in line, evenly spaced, mirrored; with lines and arcs that are found in turn. The same is
/// put down a second time as equations between plain numbers, for a solver that is not ours.
struct OtherPrint {
  using Values = std::vector<double>;
  using Equation = std::function<double(const Values&)>;

  Part part;
  std::vector<std::pair<Id, std::size_t>> places;  ///< ids, and where x stands in `truth`; y behind
  Values truth;                                    ///< near which the lettered figures hold
  std::vector<Equation> equations;

  /// `size` is about how far the places lie apart, in inches.
  static OtherPrint make(std::uint64_t seed, bool isTraced, double size = 1);
};

/// How what is on such a print is lettered and put into its part.
class OtherPrintBase {
 protected:
  OtherPrintBase(std::uint64_t seed, bool isTraced, double size)
      : random_(seed), isTraced_(isTraced), size_(size) {}

  using Values = OtherPrint::Values;
  using Equation = OtherPrint::Equation;
  struct Place {
    Id id;
    std::size_t at;
    double radius;
  };
  struct Straight {
    Id id;
    std::size_t at;  ///< direction, offset to its left
  };
  /// What holds a place: what is put into the part, and its equation.
  struct Hold {
    Equation equation;
    std::function<void()> letter;
  };

  double spread(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double& val(std::size_t at) { return out_.truth[at]; }
  static double away(const Values& v, std::size_t a, std::size_t b) {
    return std::hypot(v[b] - v[a], v[b + 1] - v[a + 1]);
  }
  static double way(const Values& v, std::size_t a, std::size_t b) {
    return std::atan2(v[b + 1] - v[a + 1], v[b] - v[a]);
  }
  static double left(const Values& v, std::size_t line, std::size_t p) {
    return std::cos(v[line]) * v[p + 1] - std::sin(v[line]) * v[p] - v[line + 1];
  }
  static double turned(double angle) { return std::remainder(angle, 2 * std::numbers::pi); }

  static std::string written(double value, int places) {
    char text[40];
    std::snprintf(text, sizeof text, "%.*f", places, value);
    for (char& c : text) {
      if (c == ',') c = '.';
    }
    return text;
  }
  Lettered lettered(double inches) {
    if (random_() % 4 == 0) return *readLength(written(inches * 25.4, 6) + " mm");
    return *readLength(written(inches, 8));
  }
  LetteredAngle letteredAngle(double radians) {
    const double degrees = radians * 180 / std::numbers::pi;
    if (random_() % 3 > 0) return *readAngle(written(degrees, 6));
    const long seconds = std::lround(degrees * 3600);
    return *readAngle(std::to_string(seconds / 3600) + "°" + std::to_string(seconds / 60 % 60) +
                      "'" + std::to_string(seconds % 60) + "\"");
  }
  static double fullTurn(double angle) {
    const double turn = 2 * std::numbers::pi;
    return angle - turn * std::floor(angle / turn);
  }

  void edge(const Id& id, Axis axis, Side side) {
    Feature feature;
    feature.id = id;
    feature.shape = kind::Edge{axis, side};
    if (isTraced_) feature.traced = {"0"};
    out_.part.features.push_back(std::move(feature));
  }

  std::string shaken(double value) {
    return written(value + spread(-1, 1) * std::min(1.0 / 64, size_ / 64), 5);
  }

  Place spot() {
    const std::size_t at = out_.truth.size();
    out_.truth.push_back(spread(0.3, 5) * size_);
    out_.truth.push_back(spread(0.3, 5) * size_);
    return {"H" + std::string(1, static_cast<char>('a' + places_.size())), at,
            spread(0.02, 0.06) * size_};
  }

  void keep(Place place) {
    Feature feature;
    feature.id = place.id;
    kind::Hole hole;
    hole.drilled.diameter = *readLength(written(2 * place.radius, 8));
    feature.shape = hole;
    if (isTraced_) feature.traced = {shaken(val(place.at)), shaken(val(place.at + 1))};
    out_.part.features.push_back(std::move(feature));
    out_.places.push_back({place.id, place.at});
    places_.push_back(std::move(place));
  }

  Reading& reading(ReadingKind kind, const Id& from, const Id& to) {
    Reading one;
    one.id = "r" + std::to_string(out_.part.readings.size() + 1);
    one.kind = kind;
    one.from = from;
    one.to = to;
    out_.part.readings.push_back(std::move(one));
    return out_.part.readings.back();
  }
  Understanding& understood(UnderstandingKind kind, std::vector<Id> of) {
    Understanding what;
    what.kind = kind;
    what.of = std::move(of);
    what.stated = true;
    out_.part.understood.push_back(std::move(what));
    return out_.part.understood.back();
  }
  void readAngleOf(const Id& from, const Id& to, const LetteredAngle& angle,
                   std::vector<Id> against = {}, std::optional<Sense> sense = {},
                   bool reversed = false) {
    Reading& one = reading(ReadingKind::angle, from, to);
    one.angle = angle;
    one.figure.text = angle.text;
    one.against = std::move(against);
    one.sense = sense;
    one.reversed = reversed;
  }

  std::mt19937_64 random_;
  bool isTraced_;
  double size_;
  OtherPrint out_;
  std::vector<Place> places_;
  std::vector<Straight> lines_;
};

}  // namespace inchwright::test
