#pragma once

#include <optional>

#include "core/measure/writing.h"
#include "core/plan/machine_axes.h"
#include "core/plan/table.h"
#include "core/plan/zero.h"

namespace inchwright {

/// One of the table's two axes for one setup: which of the part's axes runs along it, which way its
/// readout counts and where its zero is.
struct TableAxis {
  bool alongX = true;
  SignedAxis part;
  int counts = 1;  ///< +1 when the readout goes up to the right or away, else −1
  std::optional<FoundZero> zero;

  char letter() const { return alongX ? 'X' : 'Y'; }
  /// From zero, in ticks, in the machine's frame (right, away) whatever the readout does. The
  /// argument is a position in the part's own axes. Empty on overflow or without a zero.
  std::optional<Rational> onTable(const Rational& position) const;
  /// The same as the readout counts it.
  std::optional<Rational> onReadout(const Rational& position) const;
};

/// The machine's frame for one setup.
struct SetupFrame {
  MachineAxes axes;
  TableAxis x;
  TableAxis y;

  /// The table's axis that a part's axis runs along; null for the one across the face.
  const TableAxis* along(Axis axis) const;
};

/// Errors: as `findZero`.
Result<SetupFrame> frameOf(const Part& part, const Solution& solution, const Setup& setup,
                           const Machine& machine);

/// A readout figure shown at a step. `exact` is false when a position behind it was rounded, or
/// when the figure is no whole tick. Errors: `outOfRange` beyond 2^62 ticks.
Result<Coordinate> coordinateOf(const std::optional<Rational>& ticks, bool exact, const Step& step);

/// The coordinate of a placed position on an axis that has a zero.
Result<Coordinate> coordinateOf(const TableAxis& axis, const Position& position, const Step& step);

}  // namespace inchwright
