#pragma once

#include <cmath>
#include <cstdio>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/job.h"

namespace inchwright::test {

/// A print at random whose places hang on chains and on centre distances and angles in turn, with
/// where everything truly lies by its own lettered figures.
struct MixedPrint {
  struct Truth {
    Id id;
    double x = 0;
    double y = 0;
    /// How far away its mirror image lies; 0 where there is none.
    double image = 0;
    bool hangsOnDoubt = false;  ///< on an image that is too near to be told apart
  };
  Part part;
  std::vector<Truth> truth;
};

class MixedPrintMaker {
 public:
  explicit MixedPrintMaker(std::uint64_t seed) : random_(seed) {}

  MixedPrint make(int places, bool isTraced) {
    out_ = {};
    out_.part.name = "Plate";
    isTraced_ = isTraced;
    addEdge("L", Axis::x, Side::left);
    addEdge("F", Axis::y, Side::front);
    for (int i = 0; i < places; ++i) {
      const Id id = "P" + std::string(1, static_cast<char>('a' + i));
      if (i < 2 || random_() % 2 == 0) {
        chain(id, i);
      } else if (random_() % 2 == 0) {
        byDistances(id, i);
      } else {
        byAngle(id, i);
      }
    }
    return std::move(out_);
  }

 private:
  double spread(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  void addEdge(const Id& id, Axis axis, Side side) {
    Feature feature;
    feature.id = id;
    feature.shape = kind::Edge{axis, side};
    if (isTraced_) feature.traced = {written(spread(-kShake, kShake), 4)};
    out_.part.features.push_back(feature);
  }

  static std::string written(double value, int places) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", places, value);
    for (char& c : text) {
      if (c == ',') c = '.';  // some suites run under a decimal comma
    }
    return text;
  }

  void addHole(const Id& id, double x, double y, double image, bool inDoubt) {
    Feature feature;
    feature.id = id;
    kind::Hole hole;
    hole.drilled.diameter = *readLength("1/16");
    feature.shape = hole;
    if (isTraced_) {
      feature.traced = {written(x + spread(-kShake, kShake), 4),
                        written(y + spread(-kShake, kShake), 4)};
    }
    out_.part.features.push_back(feature);
    out_.truth.push_back({id, x, y, image, inDoubt});
  }

  Reading& addReading(ReadingKind kind, const Id& from, const Id& to) {
    Reading reading;
    reading.id = "r" + std::to_string(out_.part.readings.size() + 1);
    reading.kind = kind;
    reading.from = from;
    reading.to = to;
    out_.part.readings.push_back(reading);
    return out_.part.readings.back();
  }

  // Along an axis: from an edge or from another place, in 64ths.
  double along(Axis axis, const Id& id, int count, bool& inDoubt) {
    const bool fromEdge = count == 0 || random_() % 2 == 0;
    const auto other = fromEdge ? 0 : random_() % static_cast<unsigned>(count);
    const int steps = static_cast<int>(spread(16, 256));
    Reading& reading = addReading(ReadingKind::along, "", id);
    reading.axis = axis;
    reading.from = fromEdge ? (axis == Axis::x ? "L" : "F") : out_.truth[other].id;
    reading.figure = *readLength(std::to_string(steps) + "/64");
    if (fromEdge) return steps / 64.0;
    inDoubt = inDoubt || isDoubtful(other);
    return (axis == Axis::x ? out_.truth[other].x : out_.truth[other].y) + steps / 64.0;
  }

  bool isDoubtful(std::size_t other) const {
    const auto& one = out_.truth[other];
    return one.hangsOnDoubt || (one.image != 0 && (!isTraced_ || one.image <= kClearlyApart));
  }

  void chain(const Id& id, int count) {
    bool inDoubt = false;
    const double x = along(Axis::x, id, count, inDoubt);
    const double y = along(Axis::y, id, count, inDoubt);
    addHole(id, x, y, 0, inDoubt);
  }

  std::pair<std::size_t, std::size_t> two(int count) {
    const auto a = random_() % static_cast<unsigned>(count);
    return {a,
            (a + 1 + random_() % static_cast<unsigned>(count - 1)) % static_cast<unsigned>(count)};
  }

  void byDistances(const Id& id, int count) {
    for (int attempt = 0; attempt < 50; ++attempt) {
      const auto [a, b] = two(count);
      const auto &p = out_.truth[a], &q = out_.truth[b];
      const double x = spread(0, 5), y = spread(0, 5);
      const std::string first = written(std::hypot(x - p.x, y - p.y), 3);
      const std::string second = written(std::hypot(x - q.x, y - q.y), 3);
      const double r = readLength(first)->value.toInches();
      const double s = readLength(second)->value.toInches();
      const double apart = std::hypot(q.x - p.x, q.y - p.y);
      if (apart < 0.25 || r < 0.25 || s < 0.25) continue;
      const double foot = (apart * apart + r * r - s * s) / (2 * apart);
      if (r * r - foot * foot < 1e-4) continue;
      const double off = std::sqrt(r * r - foot * foot);
      // Steep crossings: near images have weakly held places, which the tracing can't tell apart.
      const double ux = (q.x - p.x) / apart, uy = (q.y - p.y) / apart;
      const int side = (x - p.x) * -uy + (y - p.y) * ux > 0 ? 1 : -1;
      addReading(ReadingKind::centres, p.id, id).figure = *readLength(first);
      addReading(ReadingKind::centres, q.id, id).figure = *readLength(second);
      const bool inDoubt = isDoubtful(a) || isDoubtful(b);
      addHole(id, p.x + foot * ux - side * off * uy, p.y + foot * uy + side * off * ux, 2 * off,
              inDoubt);
      return;
    }
    chain(id, count);
  }

  void byAngle(const Id& id, int count) {
    const auto a = random_() % static_cast<unsigned>(count);
    const auto& p = out_.truth[a];
    const std::string far = written(spread(0.25, 3), 3);
    const std::string angle =
        std::to_string(random_() % 720 / 2) + (random_() % 2 == 0 ? ".5" : "");
    Reading& turned = addReading(ReadingKind::angle, p.id, id);
    turned.angle = *readAngle(angle);
    turned.figure.text = angle;
    addReading(ReadingKind::centres, p.id, id).figure = *readLength(far);
    const double r = readLength(far)->value.toInches();
    const double t = readAngle(angle)->value.toRadians();
    addHole(id, p.x + r * std::cos(t), p.y + r * std::sin(t), 0, isDoubtful(a));
  }

  static constexpr double kShake = 1.0 / 64;
  static constexpr double kClearlyApart = 1.0 / 8;
  std::mt19937_64 random_;
  MixedPrint out_;
  bool isTraced_ = true;
};

}  // namespace inchwright::test
