#include "core/part/holding.h"

#include "core/part/check.h"
#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<2> kJawNames{"fixed", "moving"};

Fault notBelowZero(const std::optional<Lettered>& figure, const char* what,
                   const Pointer& pointer) {
  if (!figure || figure->value >= Length()) return std::nullopt;
  return faultAt(pointer, std::string(what) + " is not below 0");
}

Fault aboveZero(const std::optional<Lettered>& figure, const char* what, const Pointer& pointer) {
  if (!figure || figure->value > Length()) return std::nullopt;
  return faultAt(pointer, std::string(what) + " is greater than 0");
}

Fault checkParallel(const LaidParallel& one, const Pointer& pointer) {
  if (!one.thick) return faultAt(pointer, "a parallel says how `thick` it is");
  if (!one.tall) return faultAt(pointer, "a parallel says how `tall` it is");
  if (Fault fault = aboveZero(one.thick, "a parallel's thickness", pointer / "thick")) return fault;
  if (Fault fault = aboveZero(one.tall, "a parallel's height", pointer / "tall")) return fault;
  if (Fault fault = notBelowZero(one.gap, "the gap to the jaw", pointer / "gap")) return fault;
  if (one.from && one.to && one.to->value <= one.from->value) {
    return faultAt(pointer / "to", "a parallel ends beyond where it begins");
  }
  return std::nullopt;
}

Fault checkObstacle(const Obstacle& one, Face face, const Pointer& pointer) {
  bool any = false;
  for (const Axis axis : kAxes) {
    const auto& span = one.along[static_cast<std::size_t>(axis)];
    if (!span) continue;
    any = true;
    if (axis == axisAcross(face)) {
      return faultAt(pointer / nameOf(axis), std::string(nameOf(axis)) + " does not lie in the " +
                                                 std::string(nameOf(face)) + " face");
    }
    if (span->second.value < span->first.value) {
      return faultAt(pointer / nameOf(axis), "low comes before high");
    }
  }
  if (!any) return faultAt(pointer, "say where it stands, such as \"x\": [\"0\", \"1/2\"]");
  return notBelowZero(one.tall, "a height", pointer / "tall");
}

Fault checkPieces(const std::vector<StockPiece>& pieces, const Pointer& pointer) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (pieces[i].name.empty()) return faultAt(pointer / i / "name", "a piece needs a name");
    for (std::size_t j = 0; j < i; ++j) {
      if (pieces[j].name != pieces[i].name) continue;
      return faultAt(pointer / i / "name", "the piece `" + pieces[i].name + "` is there twice");
    }
    for (const Axis axis : kAxes) {
      const auto& size = pieces[i].size[static_cast<std::size_t>(axis)];
      if (Fault fault = aboveZero(size, "a piece's size", pointer / i / nameOf(axis))) return fault;
    }
  }
  return std::nullopt;
}

}  // namespace

std::string_view nameOf(Jaw jaw) {
  return nameIn(kJawNames, jaw);
}
std::optional<Jaw> jawNamed(std::string_view name) {
  return valueNamed<Jaw>(kJawNames, name);
}

Fault checkHolding(const Holding& held, Face face, const Pointer& pointer) {
  for (std::size_t i = 0; held.parallels && i < held.parallels->size(); ++i) {
    if (Fault fault = checkParallel((*held.parallels)[i], pointer / "parallels" / i)) return fault;
  }
  for (std::size_t i = 0; i < held.clamps.size(); ++i) {
    if (Fault fault = checkObstacle(held.clamps[i], face, pointer / "clamps" / i)) return fault;
  }
  for (std::size_t i = 0; i < held.clearOf.size(); ++i) {
    if (Fault fault = checkObstacle(held.clearOf[i], face, pointer / "clear_of" / i)) return fault;
  }
  for (std::size_t i = 0; i < held.overhang.size(); ++i) {
    const Pointer here = pointer / "overhang" / nameOf(static_cast<Side>(i));
    if (Fault fault = notBelowZero(held.overhang[i], "an overhang", here)) return fault;
  }
  return checkPieces(held.pieces, pointer / "pieces");
}

}  // namespace inchwright
