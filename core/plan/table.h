#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/chain/solution.h"
#include "core/measure/writing.h"
#include "core/part/job.h"

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

enum class StepKind { spot, drill, ream, bore, tap, counterbore, countersink, spotface, mark };

/// One operation at one hole.
struct MakingStep {
  StepKind kind = StepKind::drill;
  std::string tool;   ///< what to fit: `15/64`, `#7`, `ream 1/4`, `tap 1/4-20 UNC`
  Length diameter;    ///< 0 where it has none (a spot)
  std::string depth;  ///< `through` or as lettered
  std::string rule;   ///< the rule or table row it comes from, for the curious

  bool operator==(const MakingStep&) const = default;
};

/// One hole, point, slot end or the like, at one drive of the table.
struct TableRow {
  Id id;       ///< the place: `A`, `D3`
  Id feature;  ///< the feature it belongs to
  FeatureKind kind = FeatureKind::hole;
  Coordinate x;
  Coordinate y;
  std::string size;  ///< as lettered with what is made: `Ø1/4 ream, through`
  std::string note;  ///< assumption, dispute, located from the mate …
  /// Distance from zero in the print's own fraction, without a sign (that stands in the figure);
  /// empty when it has none with a denominator up to 128, is not exact, or the print is metric.
  std::string xFraction;
  std::string yFraction;
  std::vector<MakingStep> steps;
  int group = 0;  ///< rows that take the same run of tools share a group, in cutting order
  bool disputed = false;

  bool operator==(const TableRow&) const = default;
};

/// Where one edge or other plane stands on the readout.
struct EdgeRow {
  Id id;
  std::optional<Side> side;
  bool alongX = true;  ///< of the machine; else along Y
  Coordinate value;
  Length stockLeft;  ///< still to come off it in this setup
  bool disputed = false;

  bool operator==(const EdgeRow&) const = default;
};

/// A place to drive to before cutting, and what should be seen there.
struct CheckPlace {
  Coordinate x;
  Coordinate y;
  std::string look;  ///< `tip just touches the left edge`, `over the middle of hole A`

  bool operator==(const CheckPlace&) const = default;
};

/// How to find zero along one machine axis, in words.
struct TouchOff {
  bool alongX = true;
  bool depth = false;              ///< of Z, the axis across the face; `alongX` then means nothing
  std::string what;                ///< `middle of L and R, of the stock`
  std::vector<std::string> steps;  ///< each one instruction, with exact presets and their signs

  bool operator==(const TouchOff&) const = default;
};

/// Everything one setup's sheet and table show, in machine axes as the readout counts them.
struct SetupTable {
  std::string part;
  std::string setup;
  Face face = Face::top;
  int turn = 0;
  Step step;
  bool xCountsRight = true;
  bool yCountsAway = true;
  std::string zero;  ///< one line: `X0 middle of L–R (stock) · Y0 at F`
  std::vector<TableRow> rows;
  std::vector<EdgeRow> edges;
  std::vector<Loose> unplaced;  ///< places of this face that have no coordinates
  std::vector<TouchOff> touchOff;
  std::vector<CheckPlace> checks;
  std::vector<std::string> warnings;  ///< unequal allowances, middle of stock against finished …

  bool operator==(const SetupTable&) const = default;
};

struct TableOptions {
  std::optional<Unit> unit;         ///< else the machine's
  std::optional<std::string> step;  ///< else the machine's
};

/// Errors: `notFound` for a zero at an unknown place, `unsolvable` when a zero is on a loose place,
/// `outOfRange`. The part and its solution are only read.
Result<SetupTable> makeTable(const Job& job, const Part& part, const Solution& solution,
                             const Setup& setup, const TableOptions& options = {});

/// The setup a part has when it names none: the top face, turn 0, zero at the left and front outer
/// edges (else at the first placed place of each axis).
Setup defaultSetup(const Part& part, const Solution& solution);

}  // namespace inchwright
