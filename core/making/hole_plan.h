#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/making/put_right.h"
#include "core/making/tools_owned.h"
#include "core/measure/limits.h"
#include "core/part/drilled.h"
#include "core/shop/counterbores.h"

namespace inchwright {

/// One operation, in the order in which they come about at a hole; a slot is milled, a point
/// marked, and a bush or plug pressed into a hole that came out wrong.
enum class Op {
  spotface,
  spot,
  pilot,
  drill,
  counterbore,
  countersink,
  bore,
  ream,
  tap,
  deburr,
  mill,
  mark,
  press
};
std::string_view nameOf(Op op);  ///< `spotface`, `spot` …

/// What chose a tool or a depth. Each has a name for scripts; core/say words it with its source.
enum class Rule {
  spotFirst,         ///< so that the drill starts true
  roughFaceFirst,    ///< a spotface on a rough face
  pilotFirst,        ///< before a large drill, about a third of it
  stepUp,            ///< about two thirds
  drillOfSize,       ///< the drill of the hole's own size
  drillNearSize,     ///< none owned; the nearest that a drilled hole's tolerance allows
  beforeReamer,      ///< the largest owned that leaves between least and greatest
  beforeHandReamer,  ///< the same for a hand reamer
  beforeBoreReam,    ///< drilled under, since the bore after it puts the hole in its place
  boreBeforeReamer,  ///< .005 to .010 under, then reamed
  tableTapDrill,     ///< the table's own drill of the thread
  nearestPercent,    ///< the owned one nearest to the percent wanted
  underBore,         ///< the largest owned under the bore
  endMillUnderBore,
  trialCut,   ///< first, since nobody said what the dial counts
  boringCut,  ///< whole divisions, the last two halve what is left
  reamToSize,
  tapThread,
  asLettered,   ///< a seat
  underSuit,    ///< left under until it is known what it has to suit
  waitsToSuit,  ///< its size waits for what is measured
  breakEdges,
  holeForCutter,     ///< in a slot, where the cutter is not known to cut over its centre
  largestThatGoes,   ///< the largest cutter owned that goes into the slot
  underCloseSlot,    ///< at least 1/64 under a slot lettered close, which is opened up either side
  largestInCorners,  ///< the largest owned that the corners of a pocket let in
  markOnly,          ///< a point: nothing is cut
  openForBush,       ///< bored true for what is pressed in
  pressIn,
  afterPressing  ///< to size once it is pressed in: a bush closes in
};
std::string_view nameOf(Rule rule);  ///< `spot_first`, `before_reamer` …

/// What kind of tool it is, for what is asked of it elsewhere.
enum class ToolKind { spot, drill, endMill, counterbore, countersink, bar, reamer, tap, hand };

/// One step. Depths count from the face as it is when the step is begun, down to the full diameter
/// and to the tool's end; empty where they are not known.
struct HoleStep {
  Op op = Op::drill;
  ToolKind kind = ToolKind::drill;
  std::string tool;   ///< what to fit: `15/64`, `end mill 3/4`, `ream 1/4`, `tap M3`, `bore`
  std::string named;  ///< of that the size or name alone: `15/64`, `3/4`, `M3`; empty for a bar
  Unit unit = Unit::inch;      ///< of a figure in it, and of the one struck out
  std::optional<Length> size;  ///< of the hole after it, exact
  std::optional<Length> fullDepth;
  std::optional<Length> pointDepth;
  bool through = false;  ///< right through the work, known or not
  Rule rule = Rule::asLettered;
  std::optional<int> speed;        ///< revolutions a minute, a guide
  bool ownSpeed = false;           ///< one that the machine has, not only the formula's figure
  std::string struckOut;           ///< the size that is never to be drilled here, as lettered
  std::optional<int> percent;      ///< of thread, in hundredths of a percent
  std::optional<Length> dial;      ///< of a boring cut
  Unit dialUnit = Unit::inch;      ///< that the dial is divided in
  bool measure = false;            ///< a line to write on after it
  std::optional<Length> stands;    ///< how far the tool stands out, where the shop says so
  std::optional<Length> flutes;    ///< the length it can cut, where the shop says so
  Length below;                    ///< how far its end goes below through work
  std::optional<Length> cutsOver;  ///< what a drill may be expected to cut over, on the diameter
  std::vector<Length> passes;      ///< of a cutter in a slot: depths, the last one full depth
  bool inBush = false;             ///< in what was pressed in: after all other holes are made

  bool operator==(const HoleStep&) const = default;
};

/// A tool that is not owned and has none that will do, with the nearest that are.
struct Lacking {
  struct Near {
    std::string name;
    Length size;
    Length differs;              ///< less what is wanted
    std::optional<int> percent;  ///< of thread it would leave
    std::optional<Thread> thread;

    bool operator==(const Near&) const = default;
  };
  Op op = Op::drill;
  std::string wanted;  ///< `1/4`, `1/4-20 UNC`
  /// Why nothing else will do.
  enum class Why {
    noDrillOfSize,
    noneLeavesEnough,  ///< before a reamer
    noReamer,
    noneWithinPercent,
    noTap,
    noSuchThread,  ///< the tables lack it, so nothing is known of its drill
    noThread,      ///< the print names none
    noDiameter,
    noBar,  ///< none goes into the hole, or opens it so far
    dialTooCoarse,
    noSeatTool,
    pilotDoesNotRun,  ///< that of the counterbore owned, in the hole as drilled
    noSeatSize,       ///< the print gives none
    noDrillUnder,     ///< nothing to start a bore with
    reamerBeyondLimits,
    noCutter,          ///< that goes into a slot
    noCutterForPocket  ///< that goes into a pocket and its corners
  } why = Why::noDrillOfSize;
  std::vector<Near> near;
  std::vector<SeatOfScrew> seats;  ///< of noSeatSize: those of screws that go through such a hole
  bool barWouldDo = false;         ///< boring to size, or under it, would

  bool operator==(const Lacking&) const = default;
};

/// Pins that say whether a hole is within its limits: one that has to go in, one that must not.
struct LimitPins {
  Length go;
  Length noGo;
  bool owned = false;  ///< of the pins of the shop; else the limits themselves

  bool operator==(const LimitPins&) const = default;
};

/// What to say of a hole besides its steps.
enum class HoleNote {
  barTooSmall,        ///< its place is lettered close, but no bar owned goes in: drilled and reamed
  reamerDoesNotMove,  ///< bored first, since a reamer follows the hole it finds
  interrupted,        ///< it breaks out of the outline, so a bar cuts by turns
  dialUnsaid,         ///< growth of the hole; many dials want half
  throughBoth,        ///< clamped to its mate and drilled once, deep enough for both
  byMatesSheet,       ///< drilled with its mate, by the other part's coordinates
  fromMate,           ///< spotted through its mate
  onAssembly,         ///< drilled once what it goes with is in place
  shortOfFar,         ///< chip room was cut short by the far side
  waitsToSuit,
  openedToSize,  ///< what came out under size is opened to the print's own
  chosenAnew,    ///< the way out chosen has other figures since something else was measured
  openedUp,      ///< what came out wrong is made the next size: nothing of the print's is drilled
  linedOnPlace,  ///< bored out where it was to be, then lined
  linedAsFound,  ///< bored out about the hole as it is, off its place, then lined
  shaftToSuit,   ///< left as found, its shaft is made to suit it
  leftAsFound,
  mateNotThere,  ///< the job has no such part or place as it is to be drilled with or from
  pieceWrong,    ///< it came out wrong on one of several pieces: these figures are for the others
  notClosed,     ///< the outline of a pocket does not come together, so nothing is milled by it
  foundUnlikely  ///< what was found is rather a slip of the pen: nothing is made by it
};

/// Everything about making one hole.
struct HolePlan {
  std::vector<HoleStep> steps;
  std::vector<Lacking> lacking;
  std::optional<SizeLimits> limits;
  std::optional<LimitPins> pins;
  std::vector<HoleNote> notes;
  std::optional<PutRight> putRight;  ///< it came out wrong, and this was chosen
  std::optional<PartPlace> with;     ///< the other part's hole it is drilled with, from or after

  bool operator==(const HolePlan&) const = default;
};

/// The steps with all cuts of a bar as one, the last: one for each tool that is fitted, as it is
/// named, ticked and looked for. They point into the plan.
std::vector<const HoleStep*> fittingsOf(const HolePlan& plan);

/// Whether a hole is made where the coordinates of its own sheet say: not with its mate by the
/// other part's sheet, spotted through its mate or drilled on assembly.
bool goesByCoordinates(const HolePlan& plan);

/// A plan that holes which are alike share; alike when what they say is. Without one: a plan that
/// says nothing.
class SharedPlan {
 public:
  SharedPlan() = default;
  SharedPlan(HolePlan plan) : plan_(std::make_shared<const HolePlan>(std::move(plan))) {}

  const HolePlan& operator*() const;
  const HolePlan* operator->() const { return &**this; }
  /// Whether it is the very same, not only alike.
  bool isOf(const SharedPlan& other) const { return plan_ == other.plan_; }
  bool operator==(const SharedPlan& other) const { return isOf(other) || **this == *other; }

 private:
  std::shared_ptr<const HolePlan> plan_;
};

/// What is wanted of one hole, and how the work stands.
struct HoleWork {
  Drilled drilled;
  Unit unit = Unit::inch;  ///< of the job
  std::string material;
  /// From the face as it is now to the far side as it is now, and as it will be finished. Empty
  /// where the part's thickness is not known; depths of through holes are then not known either.
  std::optional<Length> throughNow;
  std::optional<Length> throughFinished;
  Length onFace;            ///< still to come off the face it is cut from
  bool closePlace = false;  ///< its place is lettered closer than a fraction
  bool breaksOut = false;   ///< of the outline as it is now
  bool pairLeads = false;   ///< a pair drilled by this part's coordinates: depths count both
  std::optional<PutRight> putRight;  ///< it came out wrong: what is there already is not cut again
  std::optional<PartPlace> with;     ///< the other part's hole it is drilled with, from or after
  bool mateThere = true;             ///< the job has it
};

/// The limits of a hole's size: by its `limits`, else by the tolerance lettered with its diameter;
/// empty where neither says so. Errors: those of reading them.
Result<std::optional<SizeLimits>> limitsOfHole(const Drilled& drilled, Unit unit);

/// The steps of a hole with the tools owned. Never fails: what can't be made is in `lacking`, and
/// nothing is planned in its stead. `speeds` are the machine's.
///
/// Held whatever is owned: no drill before a reamer is as large as it, none before a tap leaves
/// less or more thread than the rule says but the table's own, and the sizes not to drill stand
/// beside.
HolePlan planHole(const HoleWork& work, const ToolsOwned& tools, const std::vector<int>& speeds);

}  // namespace inchwright
