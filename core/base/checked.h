#pragma once

#include <cstdint>
#include <optional>

namespace inchwright {

/// Overflow-checked arithmetic on any built-in integer, `__int128` included. Empty on overflow.
template <class Int>
constexpr std::optional<Int> addChecked(Int a, Int b) {
  Int sum{};
  if (__builtin_add_overflow(a, b, &sum)) return std::nullopt;
  return sum;
}

template <class Int>
constexpr std::optional<Int> subtractChecked(Int a, Int b) {
  Int difference{};
  if (__builtin_sub_overflow(a, b, &difference)) return std::nullopt;
  return difference;
}

template <class Int>
constexpr std::optional<Int> multiplyChecked(Int a, Int b) {
  Int product{};
  if (__builtin_mul_overflow(a, b, &product)) return std::nullopt;
  return product;
}

/// The same value in a narrower integer. Empty when it does not fit.
template <class Narrow, class Wide>
constexpr std::optional<Narrow> narrowed(Wide value) {
  const auto narrow = static_cast<Narrow>(value);
  if (static_cast<Wide>(narrow) != value) return std::nullopt;
  return narrow;
}

}  // namespace inchwright
