#pragma once

#include <string>

#include "core/part/job.h"
#include "tests/support/big_plate.h"

namespace inchwright {

/// A job of so many plates, each with so many features; every tenth is like the one before it, the
/// others differ in the names and sizes of their holes. Each goes with the next by a mate, every
/// fifth has a hole that was measured, and a gap runs through each.
inline Job bigKit(int parts, int features) {
  Job job;
  job.machine.accuracy = *readLength("0.0005");
  for (int i = 0; i < parts; ++i) {
    Part part = bigPlate(features);
    part.name = "Plate " + std::to_string(i + 1);
    const int kind = i % 10 == 9 ? i - 1 : i;
    const std::string diameter = std::to_string(8 + kind) + "/128";
    for (Feature& feature : part.features) {
      if (Drilled* drilled = feature.drilled()) drilled->diameter = *readLength(diameter);
    }
    if (kind == i && i > 0) {
      for (const Feature& feature : std::vector<Feature>(part.features)) {
        if (!feature.drilled()) continue;
        part = *renameFeature(part, feature.id, feature.id + "n" + std::to_string(i));
      }
    } else if (i > 0) {
      part.features = job.parts.back().features;
      part.readings = job.parts.back().readings;
      part.understood = job.parts.back().understood;
    }
    if (i % 5 == 0) {
      MadePlace made;
      made.place = part.features.back().id;
      made.size = part.features.back().drilled()->diameter;
      part.made.push_back(made);
    }
    job.parts.push_back(std::move(part));
  }
  for (int i = 0; i + 1 < parts; ++i) {
    const Part& here = job.parts[static_cast<std::size_t>(i)];
    const Part& next = job.parts[static_cast<std::size_t>(i) + 1];
    Mate mate;
    mate.name = "mate " + std::to_string(i + 1);
    mate.hole = PartPlace{here.name, here.features.back().id, {}};
    mate.shaft = PartPlace{next.name, next.features.back().id, {}};
    mate.least = *readLength("-1");
    mate.greatest = *readLength("1");
    job.mates.push_back(mate);
    Gap gap;
    gap.name = "gap " + std::to_string(i + 1);
    GapMember member;
    member.part = here.name;
    member.axis = Axis::x;
    member.from = "L";
    member.to = here.features.back().id;
    gap.members = {member};
    gap.least = *readLength("0");
    job.gaps.push_back(gap);
  }
  return job;
}

}  // namespace inchwright
