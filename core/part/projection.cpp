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

}  // namespace inchwright
