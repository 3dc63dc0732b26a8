#include <algorithm>
#include <cmath>

#include "core/making/hole_planner.h"
#include "core/shop/drill_work.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

// A countersink's included angle where the shop says none: by custom 82° for inch screws, 90° for
// metric ones.
constexpr int kInchCountersink = 82, kMetricCountersink = 90;

std::string angleText(const LetteredAngle& angle) {
  const bool bare = angle.text.find_first_not_of("0123456789.") == std::string::npos;
  return angle.text + (bare ? "°" : "");
}

}  // namespace

void HolePlanner::addSpotface() {
  if (!work_.drilled.seatDiameter) {
    lack(Op::spotface, "", Lacking::Why::noSeatSize);
    return;
  }
  const Lettered& seat = *work_.drilled.seatDiameter;
  HoleStep& step = add(Op::spotface, ToolKind::counterbore, "spotface", seat, Rule::roughFaceFirst);
  setSpeed(step, seat.value, 1);
  if (work_.drilled.seatDepth) {
    step.fullDepth = sumHeld(work_.drilled.seatDepth->value, work_.onFace);
    step.pointDepth = step.fullDepth;
  }
}

/// Seats are cut while the hole is as drilled: a pilot goes into that, and not loosely.
bool HolePlanner::pilotRuns(const OwnedSeatTool& tool) const {
  if (!tool.pilot) return true;
  Length drilled;
  for (const HoleStep& step : plan_.steps) {
    if (step.kind == ToolKind::drill && step.size) drilled = std::max(drilled, *step.size);
  }
  constexpr Length kLoose = sixtyFourths(2);  // from memory
  const Length pilot = tool.pilot->value;
  return drilled.isZero() ||
         (pilot <= drilled && drilled.ticks() - pilot.ticks() <= kLoose.ticks());
}

void HolePlanner::addSeat() {
  if (!work_.drilled.seatDiameter || work_.drilled.seatDiameter->value <= Length()) {
    const Make make = work_.drilled.make;
    if (make == Make::counterbore) {
      Lacking& lacking = lack(Op::counterbore, "", Lacking::Why::noSeatSize);
      if (work_.drilled.diameter) lacking.seats = seatsAboutHole(work_.drilled.diameter->value);
    }
    if (make == Make::countersink) lack(Op::countersink, "", Lacking::Why::noSeatSize);
    return;
  }
  const Lettered& seat = *work_.drilled.seatDiameter;
  const bool sink = work_.drilled.make == Make::countersink ||
                    (work_.drilled.make != Make::counterbore && !work_.drilled.seatDepth);
  const std::optional<LetteredAngle>& angle = work_.drilled.seatAngle;
  // One whose angle the shop does not say is taken to be what is fitted: the step names the angle.
  const auto hasAngle = [&](const OwnedSeatTool& one) {
    return !angle || !one.angle || one.angle->value == angle->value;
  };
  const std::string name =
      sizeName(seat.value, seat.unit) + (sink && angle ? " " + angleText(*angle) : "");
  const auto& owned = sink ? tools_.shop().countersinks : tools_.shop().counterbores;
  // In place, not a copy: the tool found is looked at below.
  const std::vector<OwnedSeatTool> none;
  const std::vector<OwnedSeatTool>& known = owned ? *owned : none;
  const OwnedSeatTool* tool = nullptr;
  bool pilotAmiss = false;
  for (const OwnedSeatTool& one : known) {
    bool fits = sink ? one.size.value >= seat.value && hasAngle(one) : one.size.value == seat.value;
    if (fits && !sink && !pilotRuns(one)) {
      pilotAmiss = true;
      fits = false;
    }
    if (fits && (!tool || one.size.value < tool->size.value)) tool = &one;
  }
  // A flat seat may as well be cut by an end mill of its size.
  const OwnedCutter* cutter = nullptr;
  for (const OwnedCutter& one : tools_.cuttersFor(seat.unit)) {
    if (!sink && one.size.value == seat.value) cutter = &one;
  }
  if (owned && !tool && !cutter) {
    Lacking& lacking = lack(sink ? Op::countersink : Op::counterbore, name,
                            pilotAmiss ? Lacking::Why::pilotDoesNotRun : Lacking::Why::noSeatTool);
    if (pilotAmiss) return;
    for (const OwnedSeatTool& one : *owned) {
      lacking.near.push_back({sizeName(one.size.value, one.size.unit), one.size.value,
                              Length::ticks(one.size.value.ticks() - seat.value.ticks()),
                              std::nullopt, std::nullopt});
    }
    return;
  }
  const bool byMill = owned && !tool;
  HoleStep& step = add(sink ? Op::countersink : Op::counterbore,
                       sink     ? ToolKind::countersink
                       : byMill ? ToolKind::endMill
                                : ToolKind::counterbore,
                       sink     ? "countersink"
                       : byMill ? "end mill"
                                : "counterbore",
                       name, seat.value, Rule::asLettered);
  step.unit = seat.unit;
  setSpeed(step, seat.value, 1);
  if (tool && tool->stands) step.stands = tool->stands->value;
  if (byMill && cutter->stands) step.stands = cutter->stands->value;
  if (byMill && cutter->length) step.flutes = cutter->length->value;
  if (work_.drilled.seatDepth) {
    step.fullDepth = sumHeld(work_.drilled.seatDepth->value, work_.onFace);
    step.pointDepth = step.fullDepth;
  }
  if (!sink) return;
  const std::optional<LetteredAngle>& asked = angle ? angle : tool ? tool->angle : angle;
  const int degrees = asked ? static_cast<int>(std::lround(asked->value.toDegrees()))
                            : (seat.unit == Unit::inch ? kInchCountersink : kMetricCountersink);
  if (degrees < 1 || degrees > 179) return;
  step.pointDepth =
      sumHeld(step.fullDepth.value_or(work_.onFace), pointLength(seat.value, degrees));
}

}  // namespace inchwright
