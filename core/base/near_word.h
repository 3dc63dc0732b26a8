#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace inchwright {

/// How many letters have to be put in, left out, changed or swapped with their neighbour to make a
/// known word of another that may be a slip for it: one, or two in a word of eight letters and
/// more. Empty where it is no such slip. Capitals, blanks and strokes count for nothing; words of
/// fewer than four letters are too near to too many others.
///
///     stok, stock -> 1        REEM, REAM -> 1        bore, drill -> nothing
std::optional<std::size_t> nearness(std::string_view word, std::string_view known);

/// The nearest of several known words, the first of those alike near; empty where none is.
template <class Words>
std::optional<std::string_view> nearestWord(std::string_view word, const Words& known) {
  std::optional<std::string_view> nearest;
  std::size_t least = 0;
  for (const std::string_view one : known) {
    const auto apart = nearness(word, one);
    if (!apart || (nearest && *apart >= least)) continue;
    nearest = one;
    least = *apart;
  }
  return nearest;
}

}  // namespace inchwright
