#include "core/part/projection.h"

#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<2> kProjectionNames{"first", "third"};

}  // namespace

std::string_view nameOf(Projection projection) {
  return nameIn(kProjectionNames, projection);
}

std::optional<Projection> projectionNamed(std::string_view name) {
  return valueNamed<Projection>(kProjectionNames, name);
}

ViewPlace viewPlace(Face face, Projection projection) {
  const int out = projection == Projection::third ? 1 : -1;
  switch (face) {
    case Face::top:
      return {0, 0};
    case Face::right:
      return {out, 0};
    case Face::left:
      return {-out, 0};
    case Face::back:
      return {0, -out};
    case Face::front:
      return {0, out};
    case Face::bottom:
      break;
  }
  return {2, 0};
}

}  // namespace inchwright
