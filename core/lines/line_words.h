#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace inchwright {

/// One word of a line and where it begins, in bytes.
struct LineWord {
  std::string_view text;
  std::size_t at = 0;
};

/// The words of a line, taken from the front one after another.
///
/// Holds views into the line: that has to outlive it.
class LineWords {
 public:
  explicit LineWords(std::string_view line);

  bool empty() const { return next_ == words_.size(); }
  /// The word to come, empty at the end.
  std::string_view peek(std::size_t ahead = 0) const;
  std::string_view take();
  /// Takes the word when it is the one expected.
  bool takeIf(std::string_view word);
  /// Takes words up to the first that is one of `stops` and gives the text they span, unchanged.
  std::string_view takeUntil(const std::vector<std::string_view>& stops);
  /// Takes so many words and gives the text they span, unchanged. Requires: they are there.
  std::string_view take(std::size_t count);
  /// The text the next so many words span.
  std::string_view span(std::size_t count) const;
  /// The rest of the line, unchanged.
  std::string_view takeRest();

  /// Where the word to come begins; the end of the line when there is none.
  std::size_t at() const;
  /// Where a text taken from this line begins in it.
  std::size_t at(std::string_view taken) const;
  /// A refusal at the word to come.
  Error refuse(std::string text) const;

 private:
  std::string_view line_;
  std::vector<LineWord> words_;
  std::size_t next_ = 0;
};

}  // namespace inchwright
