#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/measure/length.h"

namespace inchwright {

/// A tool that finds an edge: the spindle stands half its contact diameter from the edge, 0.1 in
/// with a tip of 0.200.
struct EdgeFinder {
  std::string name;
  Length contact;  ///< diameter that touches; 0 for a pointer
  std::string_view source;

  bool operator==(const EdgeFinder&) const = default;
};

/// Customary ones, inch sizes first. Most rows are from memory and say so.
const std::vector<EdgeFinder>& edgeFinders();

/// The tip taken when the machine's profile names none: 0.200 in for an inch readout, 10 mm for a
/// metric one. Whoever uses it says that it was assumed.
const EdgeFinder& customaryFinder(Unit unit);

}  // namespace inchwright
