#pragma once

#include <gtest/gtest.h>

#include <utility>

#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// Fails the test and returns an empty solution when the part can't be solved.
inline Solution solved(const Part& part) {
  auto solution = solve(part);
  if (!solution) {
    ADD_FAILURE() << part.name << ": " << solution.error().text;
    return {};
  }
  return *std::move(solution);
}

}  // namespace inchwright
