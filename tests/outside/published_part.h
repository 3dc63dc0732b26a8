#pragma once

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>

#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "core/part/job.h"
#include "core/solution/solution.h"
#include "tests/support/part_text.h"
#include "tests/support/solved_part.h"

namespace inchwright {

/// A figure that the test itself letters; one that can't be read fails the test.
inline Lettered lettered(std::string_view text, Unit unit = Unit::inch) {
  ReadingOptions options;
  options.bareUnit = unit;
  auto read = readLength(text, options);
  if (!read) {
    ADD_FAILURE() << text << ": " << read.error().text;
    return {};
  }
  return *std::move(read);
}

/// The exact length that a text stands for.
inline Length length(std::string_view text) {
  return lettered(text).value;
}

/// The part that a published figure shows, line by line as in `PartText`; a faulty one fails the
/// test.
inline Part published(const std::string& text) {
  Part part = test::partFrom(text);
  part.name = "Published";
  if (const auto checked = checkPart(part); !checked) {
    ADD_FAILURE() << checked.error().place << ": " << checked.error().text;
  }
  return part;
}

/// The distance between two places as a length; fails the test where nothing fixes it.
inline Length distance(const Solution& solution, const Id& from, const Id& to, Axis axis) {
  const auto between = solution.between(from, to, axis);
  if (!between) {
    ADD_FAILURE() << "nothing fixes " << to << " against " << from;
    return {};
  }
  return nearestTick(*between).value_or(Length());
}

}  // namespace inchwright
