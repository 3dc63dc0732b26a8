#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/part/axis.h"
#include "core/part/setup.h"

namespace inchwright {

/// A direction along one of the part's axes.
struct SignedAxis {
  Axis axis = Axis::x;
  int sign = 1;  ///< +1 or −1

  bool operator==(const SignedAxis&) const = default;
};

/// One of the machine's own axes: X and Y of the table, Z of the spindle.
enum class MachineAxis : std::uint8_t { x, y, z };

constexpr char letterOf(MachineAxis axis) {
  return axis == MachineAxis::x ? 'X' : axis == MachineAxis::y ? 'Y' : 'Z';
}

/// What the machine's directions are to the part as it lies: X to the right, Y away from the
/// operator, Z up towards the spindle (ISO 841, seen as movements of the tool over the work).
/// Always a right-handed set, so a mirrored sheet can't come out.
struct MachineAxes {
  SignedAxis x{Axis::x, 1};
  SignedAxis y{Axis::y, 1};
  SignedAxis z{Axis::z, 1};

  bool operator==(const MachineAxes&) const = default;
};

/// The machine's axes with a face up and the part then turned anticlockwise as seen from the
/// spindle. `turn` is taken modulo 360 and down to a quarter. Face top: X Y are the part's; bottom:
/// X, −Y; front: X, Z; back: −X, Z; left: −Y, Z; right: Y, Z, before the turn.
MachineAxes machineAxes(Face up, int turn);

/// A side of the work as it lies on the table, whatever the print calls it.
enum class TableSide { left, right, near, far };

std::string_view nameOf(TableSide side);  ///< `left`, `right`, `near`, `far`

/// Where a side of the part lies on the table; empty for the two that face up and down.
std::optional<TableSide> tableSideOf(Side side, const MachineAxes& axes);

/// The axis that a side is square to.
constexpr Axis axisOf(Side side) {
  return axisAcross(side);
}

}  // namespace inchwright
