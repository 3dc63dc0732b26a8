#pragma once

#include <array>
#include <cassert>
#include <cstddef>
#include <string>
#include <string_view>

namespace inchwright {

/// A JSON pointer (RFC 6901) on its way down a part, written out only when something is wrong
/// there: every member of every reading is checked at every edit, and hardly ever is one at fault.
///
///     Pointer() / "readings" / 3 / "text"  ->  /readings/3/text
///
/// Holds views of its keys, which are our own words and outlive it.
class Pointer {
 public:
  static constexpr std::size_t kMostSteps = 8;

  Pointer operator/(std::string_view key) const { return with({key, 0}); }
  Pointer operator/(std::size_t index) const { return with({{}, index}); }

  std::string text() const {
    std::string text;
    for (std::size_t i = 0; i < count_; ++i) {
      text += '/';
      text += steps_[i].key.empty() ? std::to_string(steps_[i].index) : std::string(steps_[i].key);
    }
    return text;
  }

 private:
  struct Step {
    std::string_view key;
    std::size_t index = 0;
  };

  Pointer with(Step step) const {
    assert(count_ < kMostSteps);
    Pointer longer;
    for (std::size_t i = 0; i < count_; ++i) longer.steps_[i] = steps_[i];
    longer.steps_[count_] = step;
    longer.count_ = count_ + 1;
    return longer;
  }

  std::array<Step, kMostSteps> steps_;
  std::size_t count_ = 0;
};

}  // namespace inchwright
