#include "core/part/axis.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<3> kAxisNames{"x", "y", "z"};
constexpr NameTable<6> kFaceNames{"top", "bottom", "front", "back", "left", "right"};

}  // namespace

std::string_view nameOf(Axis axis) {
  return nameIn(kAxisNames, axis);
}
std::string_view nameOf(Face face) {
  return nameIn(kFaceNames, face);
}
std::optional<Axis> axisNamed(std::string_view name) {
  return valueNamed<Axis>(kAxisNames, name);
}
std::optional<Face> faceNamed(std::string_view name) {
  return valueNamed<Face>(kFaceNames, name);
}

}  // namespace inchwright
