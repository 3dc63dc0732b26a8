#pragma once

#include "tests/seen/print.h"
#include "tests/seen/trainer.h"

namespace inchwright::seen {

/// Patches and glyphs of drawn prints with what they are, found by the very steps that find them
/// on a picture.
struct ExamplesOfPrints {
  Examples ends;
  Examples glyphs;
  std::size_t endsMissed = 0;  ///< ends that no place was found for
};

void addExamples(const DrawnPrint& print, std::uint32_t seed, ExamplesOfPrints& out);

}  // namespace inchwright::seen
