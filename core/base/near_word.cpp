#include "core/base/near_word.h"

#include <algorithm>
#include <string>
#include <vector>

namespace inchwright {
namespace {

/// How many letters have to be put in, left out, changed or swapped with their neighbour to make
/// the one of the other; capitals, blanks and strokes count for nothing.
std::size_t lettersApart(std::string_view one, std::string_view other) {
  const auto plain = [](std::string_view name) {
    std::string letters;
    for (const char c : name) {
      if (c == '_' || c == '-' || c == ' ') continue;
      letters += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return letters;
  };
  const std::string a = plain(one), b = plain(other);
  std::vector<std::vector<std::size_t>> apart(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        apart[i][j] = i + j;
        continue;
      }
      const std::size_t changed = a[i - 1] == b[j - 1] ? 0 : 1;
      std::size_t& here = apart[i][j];
      here = std::min({apart[i - 1][j] + 1, apart[i][j - 1] + 1, apart[i - 1][j - 1] + changed});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) here = std::min(here, apart[i - 2][j - 2] + 1);
    }
  }
  return apart[a.size()][b.size()];
}

}  // namespace

std::optional<std::size_t> nearness(std::string_view word, std::string_view known) {
  constexpr std::size_t kLongest = 24;
  if (word.size() > kLongest || known.size() < 4) return std::nullopt;
  if (word.size() > known.size() + 3 || known.size() > word.size() + 3) return std::nullopt;
  const std::size_t apart = lettersApart(word, known);
  return apart <= (known.size() < 8 ? 1u : 2u) ? std::optional(apart) : std::nullopt;
}

}  // namespace inchwright
