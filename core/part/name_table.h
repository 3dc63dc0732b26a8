#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace inchwright {

/// Names of an enumeration's values in their order, as the document writes them: of
/// `{"right", "left"}` the second is `Hand::left`.
template <std::size_t N>
using NameTable = std::array<std::string_view, N>;

template <class Enum, std::size_t N>
constexpr std::string_view nameIn(const NameTable<N>& names, Enum value) {
  return names[static_cast<std::size_t>(value)];
}

/// The value so named; empty when there is none. Names are case-sensitive.
template <class Enum, std::size_t N>
constexpr std::optional<Enum> valueNamed(const NameTable<N>& names, std::string_view name) {
  for (std::size_t i = 0; i < N; ++i) {
    if (names[i] == name) return static_cast<Enum>(i);
  }
  return std::nullopt;
}

}  // namespace inchwright
