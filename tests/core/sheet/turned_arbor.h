#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/part/edit.h"
#include "core/sheet/lathe_sheet.h"
#include "core/solution/solution.h"

namespace inchwright {

inline Feature turned(const Id& id, Shape shape) {
  Feature feature;
  feature.id = id;
  feature.shape = std::move(shape);
  return feature;
}

/// An arbor with so many steps of 1/4 in, each thinner than the one before.
struct Turned {
  Job job;
  Part part;
  std::optional<Solution> solution;
  LatheWork work;

  explicit Turned(int steps, const char* standsOut = nullptr) {
    part.name = "Winding arbor";
    part.features.push_back(turned("L", kind::Edge{Axis::x, Side::left}));
    for (int i = 0; i < steps; ++i) {
      const Id from = i == 0 ? "L" : "E" + std::to_string(i);
      const Id to = "E" + std::to_string(i + 1);
      part.features.push_back(turned(
          to, kind::Edge{Axis::x, i + 1 == steps ? std::optional(Side::right) : std::nullopt}));
      part.features.push_back(turned(
          "D" + std::to_string(i + 1),
          kind::Outside{{from, to}, readLength(std::to_string(49 - 2 * i) + "/64").value()}));
      Reading reading;
      reading.id = "r" + std::to_string(i + 1);
      reading.from = from;
      reading.to = to;
      reading.figure = readLength("1/4").value();
      part.readings.push_back(reading);
    }
    part = turnedPart(std::move(part));
    auto& setup = part.setups.emplace_back();
    setup.name = "1";
    setup.chucked.emplace();
    if (standsOut) setup.chucked->standsOut = readLength(standsOut).value();
    auto solved = solve(part);
    solution = *std::move(solved);
    work = latheWork(job, part, *solution, setup).value();
  }

  std::vector<Page> pages(const SheetOptions& options = {}) const {
    return latheSheet(job, part, *solution, work, Lathe{}, options);
  }
};

}  // namespace inchwright
