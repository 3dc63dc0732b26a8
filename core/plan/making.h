#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/length.h"
#include "core/part/feature.h"

namespace inchwright {

enum class StepKind { spot, drill, ream, bore, tap, counterbore, countersink, spotface, mark };

std::string_view nameOf(StepKind kind);  ///< `spot`, `drill`, …

/// What is fitted for one operation.
struct Tool {
  enum class Way {
    plain,        ///< the kind of step says all: a spotting drill, a mark
    named,        ///< by its name in the tables: the drill `15/64`, the tap `1/4-20 UNC`
    sized,        ///< by the lettered figure: a reamer of 1/4
    toFigure,     ///< whatever cuts the lettered figure: no table has it
    under,        ///< something under the lettered figure, for a bore
    boredUnder,   ///< drilled and bored under the lettered figure, for a reamer
    tappingSize,  ///< for a thread that is in no table; its name as lettered, or none
    asWanted      ///< the print gives no size
  };
  Way way = Way::plain;
  std::string name = {};
  std::optional<Lettered> figure = {};

  bool operator==(const Tool&) const = default;
};

/// One operation at one hole: a value; rows and words follow from it.
struct MakingStep {
  StepKind kind = StepKind::drill;
  Tool tool;
  Length diameter;             ///< 0 where it has none (a spot)
  std::optional<Depth> depth;  ///< from the face; empty where none is kept to
  std::string rule;            ///< the rule or table row it comes from, for the curious

  bool operator==(const MakingStep&) const = default;
};

/// What the print or the tables lack for making a feature.
enum class MakingFault {
  noDiameter,
  noDrillOfSize,
  noDrillUnderReamer,
  noDrillUnderBore,
  noThread,
  unknownThread,
  noCounterboreSize,
  noCountersinkSize,
  noSpotfaceSize
};

/// How a feature is made, and where that stands in the order of work.
struct Making {
  std::vector<MakingStep> steps;
  std::vector<MakingFault> faults;
  /// The kind of work, in the order in which it is done: marked points, drilled holes (with their
  /// seats), bored, reamed, tapped, slots. A hole is drilled all over before the first reamer is
  /// fitted, and tapped last, when the chips are out of the way.
  int rank = 0;
  /// The diameter that orders the holes of a rank: that of the first drill, smallest first.
  Length first;

  bool operator==(const Making&) const = default;
};

/// Never fails: what can't be found in the tables is made to size, and the fault named. Inch holes
/// are drilled from fraction, number and letter drills, metric ones from metric drills, tapped ones
/// as the table of threads says. A 1/4 ream: spot, drill 15/64, ream 1/4.
Making makingOf(const Feature& feature);

}  // namespace inchwright
