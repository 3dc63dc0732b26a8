#include "core/part/axis.h"

namespace inchwright {
namespace {

constexpr std::array<std::string_view, 3> kAxisNames{"x", "y", "z"};
constexpr std::array<std::string_view, 6> kFaceNames{"top",  "bottom", "front",
                                                     "back", "left",   "right"};

template <class Enum, std::size_t N>
std::optional<Enum> find(const std::array<std::string_view, N>& names, std::string_view name) {
  for (std::size_t i = 0; i < N; ++i) {
    if (names[i] == name) return static_cast<Enum>(i);
  }
  return std::nullopt;
}

}  // namespace

std::string_view nameOf(Axis axis) { return kAxisNames[static_cast<std::size_t>(axis)]; }
std::string_view nameOf(Face face) { return kFaceNames[static_cast<std::size_t>(face)]; }
std::optional<Axis> axisNamed(std::string_view name) { return find<Axis>(kAxisNames, name); }
std::optional<Face> faceNamed(std::string_view name) { return find<Face>(kFaceNames, name); }

}  // namespace inchwright
