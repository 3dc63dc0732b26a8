#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/part/job.h"

namespace inchwright::test {

/// A print drawn at random about a true part, so that all of it can hold: readings with equal and
/// unequal tolerances and with limits, basic ones, places in line, middles, symmetric places and
/// equal spaces.
class PrintAtRandom {
 public:
  PrintAtRandom(std::mt19937_64& random, std::int64_t step) : random_(random), step_(step) {
    addPoint(0);
    const std::uint64_t points = 2 + random_() % 24;
    while (part.features.size() < points) grow();
    for (std::uint64_t more = random_() % points; more > 0; --more) read(any(), any());
  }

  Part part;
  std::vector<std::int64_t> truth;  ///< by feature

 private:
  std::size_t any() { return random_() % truth.size(); }

  std::size_t addPoint(std::int64_t at) {
    Feature point;
    point.id = "P" + std::to_string(100 + part.features.size());
    part.features.push_back(point);
    truth.push_back(at);
    return truth.size() - 1;
  }

  void grow() {
    const std::size_t a = any();
    const std::size_t b = any();
    switch (random_() % 8) {
      case 0:
        return understand(UnderstandingKind::inLine, {a, addPoint(truth[a])}, {});
      case 1:
        if (a == b || (truth[a] + truth[b]) % 2 != 0) break;
        return understand(UnderstandingKind::midway, {addPoint((truth[a] + truth[b]) / 2)}, {a, b});
      case 2:
        if (a == b) break;
        return understand(UnderstandingKind::equal, {a, b, addPoint(2 * truth[b] - truth[a])}, {});
      case 3:
        if (a == b) break;
        return mirror(a, addPoint(2 * truth[b] - truth[a]), b);
      default:
        break;
    }
    read(a, addPoint(static_cast<std::int64_t>(random_() % 20'000) * step_));
  }

  void understand(UnderstandingKind kind, const std::vector<std::size_t>& of,
                  const std::vector<std::size_t>& between) {
    Understanding one;
    one.kind = kind;
    one.axis = Axis::x;
    for (const std::size_t i : of) one.of.push_back(part.features[i].id);
    for (const std::size_t i : between) one.between.push_back(part.features[i].id);
    part.understood.push_back(one);
  }

  void mirror(std::size_t a, std::size_t b, std::size_t about) {
    understand(UnderstandingKind::symmetric, {a, b}, {});
    part.understood.back().about = part.features[about].id;
  }

  // The truth lies within the limits: about the figure, all to one side of it, or at a limit.
  void read(std::size_t a, std::size_t b) {
    if (a == b) return;
    Reading reading;
    reading.id = "r" + std::to_string(100 + part.readings.size());
    reading.from = part.features[a].id;
    reading.to = part.features[b].id;
    const std::int64_t length = truth[b] - truth[a];
    const auto steps = [&](std::uint64_t most) {
      return static_cast<std::int64_t>(random_() % (most + 1)) * step_;
    };
    const std::uint64_t kind = random_() % 8;
    if (kind == 0) {
      reading.figure.value = Length::ticks(length);
      reading.figure.basic = true;
      part.readings.push_back(reading);
      return;
    }
    const std::int64_t low = length - (kind == 1 ? 0 : steps(12));
    const std::int64_t high = length + (kind == 2 ? 0 : steps(12));
    const std::int64_t figure = kind == 3 ? (low + high) / 2 : kind == 4 ? high : low - steps(3);
    reading.figure.value = Length::ticks(figure);
    reading.figure.tolerance = Tolerance{Length::ticks(high - figure), Length::ticks(low - figure)};
    part.readings.push_back(reading);
  }

  std::mt19937_64& random_;
  std::int64_t step_;
};

}  // namespace inchwright::test
