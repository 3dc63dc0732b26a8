#pragma once

#include <string>
#include <vector>

#include "core/say/doubt_words.h"

namespace inchwright::test {

/// A clash with the readings suspected in it.
struct Suspected : Clash {
  std::vector<Suspect> suspects;
  std::vector<std::string> why;  ///< as it is said of each
};

inline std::vector<Suspected> suspectedIn(const Part& part, const Solution& solution) {
  std::vector<Suspected> all;
  for (std::size_t i = 0; i < solution.clashes.size(); ++i) {
    all.push_back({solution.clashes[i], solution.suspects[i], {}});
    for (const Suspect& one : all.back().suspects)
      all.back().why.push_back(suspicionText(part, one));
  }
  return all;
}

}  // namespace inchwright::test
