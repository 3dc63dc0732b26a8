#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/measure/limits.h"
#include "core/measure/writing.h"
#include "core/part/job.h"
#include "core/plan/work_at.h"
#include "core/turned/turned_shape.h"

namespace inchwright {

/// What a readout of the lathe shows, rounded once.
struct LatheFigure {
  std::string text;  ///< at the step, ASCII `-` when negative
  Length value;      ///< the exact one, to the tick
  bool exact = true;

  bool operator==(const LatheFigure&) const = default;
};

/// How a thread is cut with a tool.
struct ThreadCut {
  int perInch = 0;  ///< threads to the inch; 0 where the pitch is what its standard gives
  LatheFigure pitch;
  LatheFigure depth;  ///< of the form, on one side: `screwDepthInPitches`
  bool leftHand = false;
  std::string runout;  ///< how far imperfect thread may run past it, as lettered

  bool operator==(const ThreadCut&) const = default;
};

/// One stretch as it is turned in a setup.
struct LatheRow {
  Id id;
  FeatureKind kind = FeatureKind::outside;
  LatheFigure length;  ///< the carriage at its end nearer the chuck
  /// The carriage at its end nearer the free end, where that is not the free end itself.
  std::optional<LatheFigure> from;
  /// What stands in front of it, so that no tool comes to it past the free end: a larger surface, a
  /// smaller bore, or its own id where it is a bore with nothing bored in front of it.
  Id behind;
  std::optional<LatheFigure> dia;  ///< the cross slide there; empty where nothing says it
  std::optional<double> topSlide;  ///< degrees off the axis: half a taper's included angle
  /// Of a taper longer than a top slide reaches (`kTopSlideReach`): how far the tailstock is set
  /// over instead, the work between centres.
  std::optional<LatheFigure> setOver;
  std::optional<ThreadCut> thread;
  std::optional<LatheFigure> width;  ///< of a groove, along the axis
  std::string knurl;                 ///< its pattern and pitch, as lettered
  /// What its diameter has to keep to, where the print letters limits with it or it suits a mate.
  std::optional<SizeLimits> limits;
  /// The figure as shown lies outside them: the readout's step is too coarse for it.
  bool roundsOut = false;
  /// The print's own, where another was chosen since to suit its mate.
  std::optional<LatheFigure> struckOut;
  /// It was chosen to be made to suit its mate, and there is no size that can be followed.
  bool unsuited = false;
  bool cutHere = true;  ///< false where an earlier setup has cut it
  bool disputed = false;

  bool operator==(const LatheRow&) const = default;
};

enum class CutOp {
  face,
  centreDrill,
  rough,
  drill,
  bore,
  knurl,
  finish,
  groove,
  chamfer,
  thread,
  deburr,
  partOff,
};

std::string_view nameOf(CutOp op);  ///< `face`, `centre_drill`, …

/// What of a drill comes to the length of its cut.
enum class DrillTo {
  fullDiameter,  ///< a further bore goes on from there
  point,         ///< the bore is blind
  through,       ///< the part ends there: the point has to go well past
};

/// One cut, in the order of work.
struct Cut {
  CutOp op = CutOp::face;
  std::vector<Id> of;  ///< the features it makes
  std::optional<LatheFigure> length;
  std::optional<LatheFigure> from;  ///< where it begins, when it is kept between two shoulders
  std::optional<LatheFigure> dia;
  std::optional<double> topSlide;
  Id behind;  ///< as of its row: to be cut between its shoulders only
  DrillTo drillTo = DrillTo::fullDiameter;

  bool operator==(const Cut&) const = default;
};

/// A lathe setup worked out: what its readouts show, in the lathe's unit at its step.
struct LatheWork {
  std::string part;
  std::string setup;
  Step step;
  bool halved = false;         ///< the cross slide's readout counts the radius
  std::string carriageLetter;  ///< `Z`
  std::string crossLetter;     ///< `X`
  Side held = Side::left;
  Id zeroAt;                 ///< the edge zero is on; empty where it is a middle
  bool zeroAssumed = false;  ///< the setup says nothing: the free end was taken
  std::vector<LatheRow> rows;
  std::vector<Cut> cuts;
  std::vector<Id> unplaced;    ///< stretches with a loose end: no row
  std::vector<Id> inTheChuck;  ///< stretches that this setup can't reach
  /// How far the parting tool would come into the jaws, by what stands out; 0 where it does not.
  Length partOffInJaws;
  bool zeroInChuck = false;  ///< zero is on the end that is held
  /// More stands out than the part is long, and nothing is parted off.
  bool standsOutTooFar = false;
  std::optional<LatheFigure> whole;  ///< what is to be measured over both ends when it is faced
  TurnedShape shape;

  /// Something is wrong, beyond what is merely assumed or not yet placed.
  bool isFaulty() const { return !shape.faults.empty() || !partOffInJaws.isZero(); }
  bool operator==(const LatheWork&) const = default;
};

/// Works a setup out. Whichever end is held the chuck is at the lathe's left: a reading grows
/// towards it where the carriage counts `left`. Reached is what stands out; where that is not said
/// and a later setup holds the other end, all up to the largest diameter from the free end. What an
/// earlier setup of the lathe has reached is not cut again.
///
/// Order of cuts, each rule common practice: the free end is faced first, since lengths are from
/// it; roughing goes from the largest diameter to the smallest, before anything is brought to size;
/// bores before the outside is finished, knurls before the finishing cut beside them, threads after
/// their groove and chamfer; parting off is last. Errors: `badRequest` when the setup is not of the
/// lathe; `badText` for its step; `unsolvable` where zero is on a loose edge; `outOfRange`.
Result<LatheWork> latheWork(const Job& job, const Part& part, const Solution& solution,
                            const Setup& setup, const TableOptions& options = {});

/// The longest taper that a small lathe's top slide reaches: 2 in. Common practice, no source.
inline constexpr Length kTopSlideReach = Length::ticks(2 * Length::kTicksPerInch);

/// Keeps a row's diameter to limits: sets `limits` and whether the figure shown, which may be of
/// the radius, lies outside them.
void holdTo(LatheRow& row, const SizeLimits& limits, const Step& step, bool halved);

/// The job's lathe, or a customary one, in the unit and at the step that are asked for.
Lathe latheFor(const Job& job, const TableOptions& options);

}  // namespace inchwright
