#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/making/hole_plan.h"
#include "core/part/job.h"
#include "core/plan/check_places.h"
#include "core/plan/curve_cuts.h"
#include "core/plan/milled_cuts.h"
#include "core/plan/touch_off.h"
#include "core/plan/work_at.h"
#include "core/solution/solution.h"

namespace inchwright {

/// One hole, point, slot end or the like, at one drive of the table.
struct TableRow {
  Id id;       ///< the place: `A`, `D3`
  Id feature;  ///< the feature it belongs to
  FeatureKind kind = FeatureKind::hole;
  Coordinate x;
  Coordinate y;
  /// Distance from zero in the print's own fraction, without a sign (that stands in the figure);
  /// empty when it has none with a denominator up to 128, is not exact, or the print is metric.
  std::string xFraction;
  std::string yFraction;
  SharedPlan plan;  ///< how it is made with the tools owned; a slot's stands at both its ends
  int group = 0;    ///< rows that take the same run of tools share a group, in cutting order
  bool disputed = false;
  bool assumed = false;  ///< its place rests on an assumption

  bool operator==(const TableRow&) const = default;
};

/// Where one edge or other plane stands on the readout.
struct EdgeRow {
  Id id;
  std::optional<Side> side;
  MachineAxis axis = MachineAxis::x;
  Coordinate value;
  std::optional<Lettered> stock;  ///< still to come off it in this setup
  bool disputed = false;

  bool operator==(const EdgeRow&) const = default;
};

/// What to mind about a setup before anything is cut.
struct SetupWarning {
  enum class Kind {
    noZero,          ///< nothing is placed along the axis
    zeroAssumed,     ///< the setup says nothing of it
    zeroDisputed,    ///< it rests on a figure in dispute
    ofStockAlone,    ///< `of stock` without a middle
    stockOffMiddle,  ///< the stock's middle lies `apart` from the part's
    stopAndMiddle,   ///< pieces of unlike length at a stop
    zeroNotThere,    ///< zero is on `place`, a hole that this setup makes
    sideStoodFor,    ///< stock on a side without an edge of its name: `place` is taken for it
    misspelt,        ///< a member of the machine's is not known, and nearly one that is
    sideMissing,     ///< stock on a side that no edge can be
    finderAssumed,   ///< the machine names no finder
    finderUnlikely,  ///< no finder has a tip of `figure`
    oddFigure        ///< a figure of the setup or machine that a careful reader would ask about
  };
  enum class Of {
    none,
    stock,
    offset,
    finder,
    cutter,
    ridge,
    parallel,
    overhang,
    inTheWay,  ///< a clamp, or what is to be kept clear of
    piece,     ///< of stock: `place` is its name
    vice,
    margin
  };

  Kind kind = Kind::noZero;
  MachineAxis axis = MachineAxis::x;
  Length apart;
  Id place;
  std::optional<Side> side;
  Of of = Of::none;  ///< oddFigure: what the figure is of
  Lettered figure;   ///< oddFigure, finderUnlikely
  Misspelt member;   ///< misspelt

  bool operator==(const SetupWarning&) const = default;
};

/// Everything one setup's sheet and table show, in machine axes as the readout counts them: facts,
/// worded by `core/say`.
struct SetupTable {
  std::string part;
  std::string setup;
  Face face = Face::top;
  int turn = 0;
  Step step;
  TableAxis x;
  TableAxis y;
  FinderTip tip;
  std::vector<TableRow> rows;
  std::vector<EdgeRow> edges;
  std::vector<Loose> unplaced;  ///< places of this face that have no coordinates
  std::vector<TouchOff> touchOff;
  std::vector<CheckPlace> checks;
  std::vector<SetupWarning> warnings;
  CurveCuts curves;               ///< rounds and arcs as the setup asks for them
  std::vector<MilledCut> milled;  ///< where the cutter goes in slots and pockets

  bool operator==(const SetupTable&) const = default;
};

/// The table of a setup. Errors: `outOfRange`, and as `checkPlaces` and `touchOffs`.
Result<SetupTable> tableOf(const WorkAt& work);

/// The same from its beginnings. Errors: `notFound` for a zero at an unknown place, `unsolvable`
/// when a zero is on a loose place, `outOfRange`. The part and its solution are only read.
Result<SetupTable> makeTable(const Job& job, const Part& part, const Solution& solution,
                             const Setup& setup, const TableOptions& options = {});

/// The setup a part has when it names none: a turned one in the lathe by its left end; else the top
/// face, turn 0, zero at the left and front outer edges (else at the first placed place of each
/// axis).
Setup defaultSetup(const Part& part, const Solution& solution);

}  // namespace inchwright
