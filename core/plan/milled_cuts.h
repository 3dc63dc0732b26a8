#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/plan/milled_work.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// Where the cutter's centre stands, as the readout shows it.
struct CutterStands {
  Coordinate x, y;

  bool operator==(const CutterStands&) const = default;
};

/// A straight run of the cutter's centre.
struct CutterRun {
  enum class What {
    middle,    ///< down the middle of a slot, over its whole length
    side,      ///< along one wall of a slot that is wider than the cutter
    clearing,  ///< across a pocket, to empty it
    leaving,   ///< along its wall, with `kLeftForLast` left on
    wall       ///< along its wall, to size
  };
  What what = What::middle;
  CutterStands from, to;

  bool operator==(const CutterRun&) const = default;
};

/// What stays where a cutter does not get to along straight runs: how thick at most.
struct LeftStanding {
  enum class Why {
    endOfSlot,     ///< in a slot's round ends, of a cutter narrower than it
    roundCorner,   ///< of a round larger than the cutter; `of` is the round
    squareCorner,  ///< of a corner without a round: the cutter's own radius
    standsIn       ///< a round that stands into the pocket: all of it
  };
  Why why = Why::squareCorner;
  Id of;
  std::optional<Length> height;

  bool operator==(const LeftStanding&) const = default;
};

/// How one slot or pocket is milled in a setup: where the cutter's centre goes, in the order of
/// work. All runs are made at each depth; along walls clockwise seen from above, so that the cutter
/// never climbs.
struct MilledCut {
  Id id;
  bool isPocket = false;
  std::string tool;
  Length cutter;
  std::vector<Length> passes;
  std::optional<Lettered> width;           ///< of a slot
  std::optional<CutterStands> drillFirst;  ///< where, and with what
  std::string drill;
  std::vector<CutterRun> runs;
  /// Between runs that do not meet a straight way would cut into the wall, or both slides would.
  bool liftBetween = false;
  bool cutShort = false;  ///< there would be more than `kMostCutterRuns`
  std::vector<LeftStanding> left;
  /// A curved slot or a round pocket, on the rotary table: its centre, and how far off it the
  /// spindle stands in turn; for a slot between its ends, how many degrees they lie apart, the
  /// shorter way.
  struct About {
    CutterStands centre;
    std::vector<Length> spindle;
    std::optional<CutterStands> from, to;
    double degrees = 360;

    bool operator==(const About&) const = default;
  };
  std::optional<About> about;
  bool offCircle = false;  ///< a curved slot whose ends do not lie equally far from its centre
  bool disputed = false;   ///< as of `MilledShape`, and so the two below
  bool assumed = false;
  bool depthUnsaid = false;

  bool operator==(const MilledCut&) const = default;
};

/// What is left on a pocket's wall for the last time round (from memory).
inline constexpr Length kLeftForLast = Length::ticks(Length::kTicksPerInch / 64);
inline constexpr std::size_t kMostCutterRuns = 200;

/// The slots and pockets of the setup's face that a cutter owned goes into and whose places are
/// known; empty where zero is not.
///
///     a slot 1/4 wide and 1 long at X 1, Y 1/2, a 1/4 cutter → middle from 0.6250 to 1.3750
std::vector<MilledCut> milledCuts(const WorkAt& work);

}  // namespace inchwright
