#pragma once

#include <span>
#include <string>
#include <string_view>

#include "app/words/streams.h"

namespace inchwright::app {

/// Exit statuses of every word: they are part of the contract with scripts.
inline constexpr int kFine = 0;
inline constexpr int kFindings = 1;  ///< the work was done; a clash or a loose feature is in it
inline constexpr int kUnusable = 2;  ///< the words or the file could not be used; one line says why

/// One word of the command line, such as `check`.
struct Word {
  std::string_view name;
  std::string_view summary;  ///< one line for the list of words
  std::string_view help;     ///< all of `inchwright NAME --help`
  /// Does the work on what follows the word; the outcome is an exit status.
  int (*run)(std::span<const std::string> args, Streams& streams);
};

}  // namespace inchwright::app
