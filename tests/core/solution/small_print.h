#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/part/job.h"

namespace inchwright::test {

/// A random print of edges along X with a seed, small enough to be searched through whole.
struct SmallPrint {
  Part part;
  std::vector<std::int64_t> truth;  ///< ticks, by feature
};

struct SmallPrintOptions {
  int edges = 6;
  int readings = 8;
  int understandings = 0;  ///< midway, symmetric and equal ones that are true where there are any
  int misread = 0;
};

inline Reading readingAlongX(const std::string& id, const Id& from, const Id& to,
                             std::int64_t ticks) {
  Reading reading;
  reading.id = id;
  reading.from = from;
  reading.to = to;
  reading.figure.value = Length::ticks(ticks);
  reading.figure.text = std::to_string(ticks);
  return reading;
}

inline SmallPrint smallPrint(std::uint64_t seed, const SmallPrintOptions& options) {
  std::mt19937_64 random(seed);
  const auto below = [&](int bound) {
    return static_cast<std::size_t>(random() % static_cast<std::uint64_t>(bound));
  };
  SmallPrint print;
  for (int i = 0; i < options.edges; ++i) {
    Feature edge;
    kind::Edge plane;
    edge.id = std::string(1, static_cast<char>('A' + i));
    if (below(4) == 0) plane.side = below(2) == 0 ? Side::left : Side::right;
    edge.shape = plane;
    print.part.features.push_back(edge);
    print.truth.push_back(static_cast<std::int64_t>(below(7)) * 6);
  }
  const auto id = [&](std::size_t i) { return print.part.features[i].id; };
  for (int i = 0; i < options.readings; ++i) {
    const std::size_t a = below(options.edges);
    std::size_t b = below(options.edges);
    if (a == b) b = (a + 1) % print.truth.size();
    Reading reading =
        readingAlongX("r" + std::to_string(i), id(a), id(b),
                      print.truth[b] - print.truth[a] + (i < options.misread ? 1 : 0));
    reading.figure.reference = below(4) == 0;
    print.part.readings.push_back(reading);
  }
  for (int tries = 0; tries < 200; ++tries) {
    if (static_cast<int>(print.part.understood.size()) == options.understandings) break;
    const std::size_t a = below(options.edges), b = below(options.edges), c = below(options.edges);
    if (a == b || b == c || a == c) continue;
    if (print.truth[a] + print.truth[c] != 2 * print.truth[b]) continue;
    Understanding what;
    what.axis = Axis::x;
    what.stated = below(2) == 0;
    switch (below(3)) {
      case 0:
        what.kind = UnderstandingKind::midway;
        what.of = {id(b)};
        what.between = {id(a), id(c)};
        break;
      case 1:
        what.kind = UnderstandingKind::symmetric;
        what.of = {id(a), id(c)};
        what.about = id(b);
        break;
      default:
        what.kind = UnderstandingKind::equal;
        what.of = {id(a), id(b), id(c)};
        break;
    }
    print.part.understood.push_back(what);
  }
  return print;
}

}  // namespace inchwright::test
