#pragma once

#include <iosfwd>

namespace inchwright::app {

/// Where a word writes. Held by reference so that a test reads what a person would.
struct Streams {
  std::ostream& out;
  std::ostream& err;
  /// Whether `out` goes to a terminal that wants colours; a file or a pipe never gets any.
  bool colour = false;
};

}  // namespace inchwright::app
