#include <algorithm>
#include <limits>

#include "core/making/hole_planner.h"
#include "core/shop/drill_work.h"
#include "core/shop/fits.h"
#include "core/shop/gauge_pins.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

constexpr Length kLargeDrill = sixtyFourths(32);   // a pilot goes before it
constexpr Length kLargerDrill = sixtyFourths(48);  // and a further step
constexpr Length kLeastPilot = sixtyFourths(8);
constexpr Length kLeftToSuit = sixtyFourths(2);

Length share(Length whole, std::int64_t over, std::int64_t under) {
  return Length::ticks(whole.ticks() / under * over);
}

}  // namespace

Length sumHeld(Length a, Length b) {
  const std::optional<Length> sum = a.plus(b);
  if (sum) return *sum;
  constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max() / 4;
  return Length::ticks(b < Length() ? -kFar : kFar);
}

std::string_view nameOf(Op op) {
  constexpr std::string_view kNames[] = {"spotface",    "spot", "pilot", "drill", "counterbore",
                                         "countersink", "bore", "ream",  "tap",   "deburr",
                                         "mill",        "mark", "press"};
  return kNames[static_cast<std::size_t>(op)];
}

std::string_view nameOf(Rule rule) {
  constexpr std::string_view kNames[] = {
      "spot_first",       "rough_face_first",    "pilot_first",     "step_up",
      "drill_of_size",    "drill_near_size",     "before_reamer",   "before_hand_reamer",
      "before_bore_ream", "bore_before_reamer",  "table_tap_drill", "nearest_percent",
      "under_bore",       "end_mill_under_bore", "trial_cut",       "boring_cut",
      "ream_to_size",     "tap_thread",          "as_lettered",     "under_suit",
      "waits_to_suit",    "break_edges",         "hole_for_cutter", "largest_that_goes",
      "under_close_slot", "largest_in_corners",  "mark_only",       "open_for_bush",
      "press_in",         "after_pressing"};
  return kNames[static_cast<std::size_t>(rule)];
}

std::vector<const HoleStep*> fittingsOf(const HolePlan& plan) {
  std::vector<const HoleStep*> fittings;
  for (const HoleStep& step : plan.steps) {
    const bool further = !fittings.empty() && step.kind == ToolKind::bar &&
                         fittings.back()->kind == ToolKind::bar && fittings.back()->op == step.op;
    if (further) fittings.pop_back();
    fittings.push_back(&step);
  }
  return fittings;
}

bool goesByCoordinates(const HolePlan& plan) {
  return std::none_of(plan.notes.begin(), plan.notes.end(), [](HoleNote note) {
    return note == HoleNote::byMatesSheet || note == HoleNote::fromMate ||
           note == HoleNote::onAssembly;
  });
}

const HolePlan& SharedPlan::operator*() const {
  static const HolePlan kNone;
  return plan_ ? *plan_ : kNone;
}

Result<std::optional<SizeLimits>> limitsOfHole(const Drilled& drilled, Unit unit) {
  const std::string& limits = drilled.limits;
  const auto about = [](Length size, const Tolerance& tolerance) {
    return std::optional<SizeLimits>(
        SizeLimits{sumHeld(size, tolerance.lower), sumHeld(size, tolerance.upper)});
  };
  if (limits.empty()) {
    if (!drilled.diameter || !drilled.diameter->tolerance) return std::optional<SizeLimits>();
    return about(drilled.diameter->value, *drilled.diameter->tolerance);
  }
  const bool named =
      (limits[0] >= 'A' && limits[0] <= 'Z') || (limits[0] >= 'a' && limits[0] <= 'z');
  if (!named) {
    const Result<Lettered> figures = readLength(limits, {unit});
    if (!figures) return figures.error();
    if (!figures->tolerance || figures->tolerance->width() <= Length()) {
      return Error{ErrorCode::badText,
                   "`" + limits +
                       "` names no limits: say such as `H7` or "
                       "`0.2500/0.2506`",
                   ""};
    }
    return about(figures->value, *figures->tolerance);
  }
  if (!drilled.diameter) {
    return Error{ErrorCode::badRequest, "limits by name need the hole's diameter", ""};
  }
  const Length size = drilled.diameter->value;
  if (const Result<Tolerance> iso = limitsOfClass(limits, size); iso) return about(size, *iso);
  const Result<Fit> fit = fitByName(limits, size);
  if (fit) return about(size, fit->hole);
  const Result<Tolerance> iso = limitsOfClass(limits, size);
  return iso.error().code == ErrorCode::notFound ? iso.error() : fit.error();
}

HolePlanner::HolePlanner(const HoleWork& work, const ToolsOwned& tools,
                         const std::vector<int>& speeds)
    : work_(work), tools_(tools), speeds_(speeds), cutting_(cuttingSpeedOf(work.material)) {
  unit_ = work.drilled.diameter ? work.drilled.diameter->unit : work.unit;
  const auto limits = limitsOfHole(work.drilled, work.unit);
  if (limits) plan_.limits = *limits;
}

HolePlan HolePlanner::take() && {
  if (work_.putRight &&
      (work_.putRight->way == WayOut::shaft || work_.putRight->way == WayOut::leave)) {
    leaveAsFound();
    return std::move(plan_);
  }
  if (work_.putRight && work_.putRight->isLined()) {
    addLined();
    return std::move(plan_);
  }
  if (work_.drilled.make == Make::spotface) addSpotface();
  addSpot();
  addWork();
  if (work_.putRight) leaveOutWhatIsCut();
  add(Op::deburr, ToolKind::hand, "deburr", "", std::nullopt, Rule::breakEdges);
  // Seats are cut while the drilled hole still guides their pilot: before it is bored, reamed,
  // tapped.
  std::stable_sort(plan_.steps.begin(), plan_.steps.end(),
                   [](const HoleStep& a, const HoleStep& b) {
                     const auto rank = [](const HoleStep& step) {
                       return step.op == Op::pilot ? Op::drill : step.op;
                     };
                     return rank(a) < rank(b);
                   });
  addLocating();
  setPins();
  return std::move(plan_);
}

void HolePlanner::addWork() {
  const bool needsSize = work_.drilled.make != Make::tap;
  if (needsSize && (!work_.drilled.diameter || work_.drilled.diameter->value <= Length())) {
    lack(Op::drill, "", Lacking::Why::noDiameter);
  } else if (work_.drilled.locate == Locate::suit && needsSize) {
    addToSuit();
  } else if (work_.drilled.make == Make::ream) {
    addReamed();
  } else if (work_.drilled.make == Make::bore) {
    addBored();
  } else if (work_.drilled.make == Make::tap) {
    addTapped();
  } else {
    addDrilled();
  }
  if (work_.drilled.make != Make::spotface) addSeat();
}

void HolePlanner::addSpot() {
  add(Op::spot, ToolKind::spot, "spot", "", std::nullopt, Rule::spotFirst);
}

HoleStep& HolePlanner::add(Op op, ToolKind kind, std::string_view verb, std::string named,
                           std::optional<Length> size, Rule rule) {
  HoleStep step;
  step.op = op;
  step.kind = kind;
  step.tool = std::string(verb) + (verb.empty() || named.empty() ? "" : " ") + named;
  step.named = std::move(named);
  step.unit = unit_;
  step.size = size;
  step.rule = rule;
  plan_.steps.push_back(std::move(step));
  return plan_.steps.back();
}

HoleStep& HolePlanner::add(Op op, ToolKind kind, std::string_view verb, const Lettered& size,
                           Rule rule) {
  HoleStep& step = add(op, kind, verb, sizeName(size.value, size.unit), size.value, rule);
  step.unit = size.unit;
  return step;
}

void HolePlanner::addDrilled() {
  const Length size = work_.drilled.diameter->value;
  Length low = size, high = size;
  const DrillAtHand* drill = tools_.largestDrill(size, size, unit_);
  Rule rule = Rule::drillOfSize;
  if (!drill || plan_.limits) {
    const DrilledHoleTolerance custom = drilledHoleTolerance(size);
    low = plan_.limits ? plan_.limits->least : sumHeld(size, custom.under.negated());
    high = plan_.limits ? plan_.limits->greatest : sumHeld(size, custom.over);
    if (!drill || size < low || size > high) {
      rule = Rule::drillNearSize;
      drill = nullptr;
      for (const DrillAtHand& one : tools_.drillsFor(unit_)) {
        if (one.drill.diameter < low || one.drill.diameter > high) continue;
        const auto off = [&](const DrillAtHand& each) {
          return Length::ticks(each.drill.diameter.ticks() - size.ticks()).magnitude();
        };
        if (!drill || off(one) < off(*drill)) drill = &one;
      }
    }
  }
  if (drill) {
    addDrill(*drill, rule, blindDepth());
    return;
  }
  Lacking& lacking = lack(Op::drill, sizeText(), Lacking::Why::noDrillOfSize);
  nameNearestDrills(lacking, low, high);
}

void HolePlanner::addToSuit() {
  const Length size = work_.drilled.diameter->value;
  const Length under = sumHeld(size, kLeftToSuit.negated());
  if (const DrillAtHand* drill = tools_.largestDrill(Length::ticks(1), under, unit_)) {
    addDrill(*drill, Rule::underSuit, blindDepth());
  }
  const Op op = work_.drilled.make == Make::ream   ? Op::ream
                : work_.drilled.make == Make::bore ? Op::bore
                                                   : Op::drill;
  const ToolKind kind = op == Op::ream   ? ToolKind::reamer
                        : op == Op::bore ? ToolKind::bar
                                         : ToolKind::drill;
  HoleStep& step = add(op, kind, "", "to suit", std::nullopt, Rule::waitsToSuit);
  step.below = tools_.marginBelow();
  setDepths(step, Length(), blindDepth());
  step.struckOut = sizeText();
  plan_.notes.push_back(HoleNote::waitsToSuit);
}

void HolePlanner::addFirstDrills(const DrillAtHand& drill, std::optional<Length> blindFull) {
  const Length size = drill.drill.diameter;
  if (size <= kLargeDrill) return;
  const DrillAtHand* pilot = tools_.largestDrill(kLeastPilot, share(size, 1, 3), unit_);
  // To the same full depth: the point of a smaller drill reaches less deep.
  if (pilot) addOneDrill(Op::pilot, *pilot, Rule::pilotFirst, blindFull);
  if (size <= kLargerDrill) return;
  const Length least = pilot ? sumHeld(pilot->drill.diameter, Length::ticks(1)) : kLeastPilot;
  if (const DrillAtHand* step = tools_.largestDrill(least, share(size, 2, 3), unit_)) {
    addOneDrill(Op::drill, *step, Rule::stepUp, blindFull);
  }
}

HoleStep& HolePlanner::addDrill(const DrillAtHand& drill, Rule rule,
                                std::optional<Length> blindFull) {
  addFirstDrills(drill, blindFull);
  return addOneDrill(Op::drill, drill, rule, blindFull);
}

HoleStep& HolePlanner::addOneDrill(Op op, const DrillAtHand& drill, Rule rule,
                                   std::optional<Length> blindFull) {
  const Length size = drill.drill.diameter;
  HoleStep& step = add(op, ToolKind::drill, "", drill.drill.name, size, rule);
  const Length point = pointLength(size);
  step.below = sumHeld(point, tools_.marginBelow());
  step.stands = drill.stands;
  step.cutsOver = drillOversize(size).mean;
  setDepths(step, point, blindFull);
  setSpeed(step, size, 2);
  return step;
}

void HolePlanner::setDepths(HoleStep& step, Length end, std::optional<Length> blindFull) {
  if (isThrough()) {
    step.through = true;
    if (!work_.throughNow) return;
    step.pointDepth = sumHeld(*work_.throughNow, step.below);
    step.fullDepth = sumHeld(*step.pointDepth, end.negated());
  } else if (blindFull) {
    step.fullDepth = blindFull;
    step.pointDepth = sumHeld(*blindFull, end);
  }
}

void HolePlanner::setSpeed(HoleStep& step, Length size, int partsOfTwo) {
  if (!cutting_ || size <= Length()) return;
  const int guide = revolutionsFor(cutting_->drillFeetPerMinute, size) * partsOfTwo / 2;
  step.speed = nearestSpeed(std::max(guide, 1), speeds_);
  step.ownSpeed = !speeds_.empty();
}

Lacking& HolePlanner::lack(Op op, std::string wanted, Lacking::Why why) {
  Lacking lacking;
  lacking.op = op;
  lacking.wanted = std::move(wanted);
  lacking.why = why;
  plan_.lacking.push_back(std::move(lacking));
  return plan_.lacking.back();
}

void HolePlanner::nameNearestDrills(Lacking& lacking, Length low, Length high) {
  const DrillAtHand* below = nullptr;
  const DrillAtHand* above = nullptr;
  for (const DrillAtHand& one : tools_.drillsFor(unit_)) {
    if (one.drill.diameter < low) below = &one;
    if (one.drill.diameter > high && !above) above = &one;
  }
  const Length wanted = work_.drilled.diameter ? work_.drilled.diameter->value : Length();
  for (const DrillAtHand* one : {below, above}) {
    if (!one) continue;
    lacking.near.push_back({one->drill.name, one->drill.diameter,
                            Length::ticks(one->drill.diameter.ticks() - wanted.ticks()),
                            std::nullopt, std::nullopt});
  }
}

void HolePlanner::addLocating() {
  plan_.with = work_.with;
  if (!work_.mateThere) plan_.notes.push_back(HoleNote::mateNotThere);
  switch (work_.drilled.locate) {
    case Locate::pair:
      plan_.notes.push_back(work_.pairLeads ? HoleNote::throughBoth : HoleNote::byMatesSheet);
      break;
    case Locate::mate:
      plan_.notes.push_back(HoleNote::fromMate);
      break;
    case Locate::assembly:
      plan_.notes.push_back(HoleNote::onAssembly);
      break;
    default:
      break;
  }
}

void HolePlanner::setPins() {
  if (!plan_.limits) return;
  const SizeLimits& limits = *plan_.limits;
  LimitPins pins{limits.least, limits.greatest, false};
  const auto& owned = tools_.shop().pins;
  if (owned) {
    std::optional<Length> go, noGo;
    for (const OwnedPins& set : *owned) {
      for (const Length size : set.sizes) {
        const Result<Length> width = gaugePinTolerance(set.pinClass, size);
        if (!width) continue;
        const bool plus = set.sign == PinSign::plus;
        const Length least = plus ? size : sumHeld(size, width->negated());
        const Length greatest = plus ? sumHeld(size, *width) : size;
        // One that goes in shows that the hole is at least its own least size; one that does not,
        // that it is under its greatest.
        if (least >= limits.least && greatest <= limits.greatest) {
          if (!go || size < *go) go = size;
          if (!noGo || size > *noGo) noGo = size;
        }
      }
    }
    if (go && noGo && *go < *noGo) pins = {*go, *noGo, true};
  }
  plan_.pins = pins;
}

std::optional<Length> HolePlanner::blindDepth() const {
  if (isThrough()) return std::nullopt;
  return sumHeld(work_.drilled.depth.length->value, work_.onFace);
}

Length HolePlanner::shortOfFar(Length wanted, Length least, Length end) {
  if (!work_.throughFinished) return wanted;
  const Length most = sumHeld(*work_.throughFinished, sumHeld(end, tools_.marginWall()).negated());
  if (wanted <= most) return wanted;
  plan_.notes.push_back(HoleNote::shortOfFar);
  return std::max(least, most);
}

std::string HolePlanner::sizeText() const {
  if (!work_.drilled.diameter) return "";
  const Lettered& diameter = *work_.drilled.diameter;
  const bool bare = !diameter.tolerance && diameter.symbol == SizeSymbol::none &&
                    !diameter.reference && !diameter.basic && !diameter.text.empty();
  return bare ? diameter.text : sizeName(diameter.value, diameter.unit);
}

HolePlan planHole(const HoleWork& work, const ToolsOwned& tools, const std::vector<int>& speeds) {
  if (!work.putRight || !work.putRight->next) return HolePlanner(work, tools, speeds).take();
  HoleWork larger = work;
  larger.drilled = work.putRight->next->drilled;
  return HolePlanner(larger, tools, speeds).take();
}

}  // namespace inchwright
