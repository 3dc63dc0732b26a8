#include "core/plan/machine_axes.h"

#include <array>

namespace inchwright {
namespace {

SignedAxis opposite(SignedAxis axis) {
  return {axis.axis, -axis.sign};
}

MachineAxes unturned(Face up) {
  constexpr SignedAxis kX{Axis::x, 1}, kY{Axis::y, 1}, kZ{Axis::z, 1};
  switch (up) {
    case Face::top:
      return {kX, kY, kZ};
    case Face::bottom:
      return {kX, opposite(kY), opposite(kZ)};
    case Face::front:
      return {kX, kZ, opposite(kY)};
    case Face::back:
      return {opposite(kX), kZ, kY};
    case Face::left:
      return {opposite(kY), kZ, opposite(kX)};
    case Face::right:
      break;
  }
  return {kY, kZ, kX};
}

}  // namespace

MachineAxes machineAxes(Face up, int turn) {
  MachineAxes axes = unturned(up);
  const int quarters = ((turn / 90) % 4 + 4) % 4;
  for (int i = 0; i < quarters; ++i) {
    // A quarter turn carries what lay along X to Y, and what lay along Y to −X.
    const SignedAxis wasX = axes.x;
    axes.x = opposite(axes.y);
    axes.y = wasX;
  }
  return axes;
}

std::string_view nameOf(TableSide side) {
  constexpr std::array<std::string_view, 4> kNames{"left", "right", "near", "far"};
  return kNames[static_cast<std::size_t>(side)];
}

std::optional<TableSide> tableSideOf(Side side, const MachineAxes& axes) {
  const Axis across = axisOf(side);
  if (across == axes.x.axis) {
    return outward(side) * axes.x.sign > 0 ? TableSide::right : TableSide::left;
  }
  if (across == axes.y.axis) {
    return outward(side) * axes.y.sign > 0 ? TableSide::far : TableSide::near;
  }
  return std::nullopt;
}

}  // namespace inchwright
