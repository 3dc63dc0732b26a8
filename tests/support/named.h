#pragma once

#include <initializer_list>
#include <vector>

#include "core/chain/network.h"

namespace inchwright::test {

/// The readings of a part by their places in it, counted from 1: `readings({1, 3})` are r1 and r3
/// of one that lists r1, r2, r3.
inline std::vector<Source> readings(std::initializer_list<std::uint32_t> numbers) {
  std::vector<Source> sources;
  for (const std::uint32_t number : numbers) {
    sources.push_back({SourceKind::reading, number - 1});
  }
  return sources;
}

/// The ids of the readings and features that sources name.
inline std::vector<Id> idsOf(const Part& part, const std::vector<Source>& sources) {
  std::vector<Id> ids;
  for (const Source& source : sources) ids.push_back(idOf(part, source));
  return ids;
}

}  // namespace inchwright::test
