#pragma once

#include <optional>
#include <string>

#include "core/measure/writing.h"
#include "core/plan/machine_axes.h"
#include "core/plan/zero.h"

namespace inchwright {

/// A figure as the readout will show it.
struct Coordinate {
  /// At the step, with a leading zero; ASCII `-` when negative and no sign otherwise: `0.3750`,
  /// `-0.3750`, `0.0000`. A sheet shows `signedText` instead.
  std::string text;
  Length value;     ///< the exact one, rounded to the tick where it is not exact
  Length rounding;  ///< what rounding to the step cost: shown − exact
  bool exact = true;

  bool operator==(const Coordinate&) const = default;
};

/// As people want it at the machine, always with a sign: `+0.3750`, `-0.3750`, `+0.0000`.
std::string signedText(const Coordinate& coordinate);

/// A readout figure shown at a step: 3/8 in at 0.0005 is `0.3750`. `exact` is false when a position
/// behind it was rounded, or when the figure is no whole tick. Errors: `outOfRange` beyond 2^62
/// ticks.
Result<Coordinate> coordinateOf(const std::optional<Rational>& ticks, bool exact, const Step& step);

/// One of the machine's axes for one setup: which of the part's axes runs along it, which way its
/// readout counts and where its zero is.
struct TableAxis {
  MachineAxis machine = MachineAxis::x;
  SignedAxis part;
  int counts = 1;  ///< +1 when the readout goes up to the right, away or upwards, else −1
  std::optional<FoundZero> zero;

  char letter() const { return letterOf(machine); }
  /// From zero, in ticks, in the machine's frame (right, away, up) whatever the readout does. The
  /// argument is a position in the part's own axes. Empty on overflow or without a zero.
  std::optional<Rational> onTable(const Rational& position) const;
  /// The same as the readout counts it.
  std::optional<Rational> onReadout(const Rational& position) const;

  bool operator==(const TableAxis&) const = default;
};

struct TableOptions {
  std::optional<Unit> unit;         ///< else the machine's
  std::optional<std::string> step;  ///< else the machine's
};

/// A part in one of its setups, with all that coordinates need: made once and handed on.
struct WorkAt : PartAt {
  const Job& job;  ///< outlives it as well
  Step step;       ///< of the readout, in the unit that figures are shown in
  MachineAxes axes;
  TableAxis x;
  TableAxis y;

  /// The table's axis that a part's axis runs along; null for the one across the face.
  const TableAxis* along(Axis axis) const;
  /// The coordinate of a placed position on an axis that has a zero.
  Result<Coordinate> coordinate(const TableAxis& axis, const Position& position) const;
};

/// Errors: those of `readStep` for a step that is none, and as `findZero` along both axes.
Result<WorkAt> workAt(const Job& job, const Part& part, const Solution& solution,
                      const Setup& setup, const TableOptions& options = {});

}  // namespace inchwright
