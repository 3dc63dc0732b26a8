#include "core/say/plan_words.h"

#include "core/measure/limits.h"
#include "core/shop/clearance.h"
#include "core/shop/cutting_speeds.h"

namespace inchwright {
namespace {

std::string figureAt(Length length, const Step& shown) {
  return showAtStep(length.rational(), shown).text + (shown.unit == Unit::millimetre ? " mm" : "");
}

std::string percentText(int hundredths) {
  return std::to_string((hundredths + 50) / 100) + " %";
}

std::string overOrUnder(Length length, const Step& shown) {
  return figureAt(length.magnitude(), shown) + (length < Length() ? " under" : " over");
}

/// What another thread would change.
std::string threadText(const Lacking::Near& near, const Step& shown) {
  const Thread& thread = *near.thread;
  std::string text =
      thread.name + " (" + overOrUnder(near.differs, shown) + " outside, drill " + thread.tapDrill;
  const bool ba = thread.series == ThreadSeries::ba;
  if (const auto hole = clearanceHole(ba ? "clear" : "close", thread.name)) {
    text += ", clearance hole " + hole->drill;
  }
  const Length wall = Length::ticks(near.differs.ticks() / 2);
  text += ", wall " + figureAt(wall.magnitude(), shown) +
          (wall > Length() ? " thinner" : " thicker") + ", " + figureAt(thread.major, shown) +
          " of thread in steel or " + figureAt(Length::ticks(thread.major.ticks() / 2 * 3), shown) +
          " in aluminium, a screw to match)";
  return text;
}

std::string nearText(const Lacking& lacking, const Step& shown) {
  std::string text;
  for (const Lacking::Near& near : lacking.near) {
    text += text.empty() ? "; the nearest: " : "; ";
    if (near.thread) {
      text += threadText(near, shown);
      continue;
    }
    text += near.name + " (" + overOrUnder(near.differs, shown);
    if (near.percent) text += ", " + percentText(*near.percent) + " of thread";
    text += ")";
  }
  return text;
}

std::string whyText(const Lacking& lacking) {
  const std::string& wanted = lacking.wanted;
  switch (lacking.why) {
    case Lacking::Why::noDrillOfSize:
      return "no drill owned makes a hole of " + wanted;
    case Lacking::Why::noneLeavesEnough:
      return "no drill owned leaves the reamer " + wanted + " what it is to cut";
    case Lacking::Why::noReamer:
      return "no reamer of " + wanted + " is owned";
    case Lacking::Why::reamerBeyondLimits:
      return "a reamer of " + wanted + " does not keep the limits named";
    case Lacking::Why::noneWithinPercent:
      return "no drill owned leaves enough and not too much thread for " + wanted;
    case Lacking::Why::noTap:
      return "no tap for " + wanted +
             " is owned, and nothing is planned with another until one is chosen";
    case Lacking::Why::noSuchThread:
      return "the tables have no thread " + wanted + ", so nothing is planned for it";
    case Lacking::Why::noThread:
      return "the print names no thread";
    case Lacking::Why::noDiameter:
      return "the print names no diameter";
    case Lacking::Why::noBar:
      return "no boring bar owned goes in and opens it to " + wanted;
    case Lacking::Why::dialTooCoarse:
      return "no whole division of the dial comes within the limits of " + wanted;
    case Lacking::Why::noSeatTool:
      return "no tool for a seat of " + wanted + " is owned";
    case Lacking::Why::pilotDoesNotRun:
      return "the pilot of the counterbore owned for " + wanted +
             " does not run in the hole as drilled";
    case Lacking::Why::noDrillUnder:
      return "nothing owned is small enough to start a bore of " + wanted;
    case Lacking::Why::noSeatSize:
      return "the print gives no size for the " + std::string(nameOf(lacking.op));
    case Lacking::Why::noCutterForPocket:
      return "no cutter owned goes into the pocket and its corners";
    case Lacking::Why::noCutter:
      break;
  }
  return "no cutter owned goes into a slot of " + wanted;
}

/// What the heads of screws that go through it would want.
std::string seatsText(const Lacking& lacking) {
  std::string text;
  for (const SeatOfScrew& one : lacking.seats) {
    text += (text.empty() ? "; for a socket head it would be " : ", ") + std::string(one.seat) +
            " (" + std::string(one.screw) +
            (one.standard == SeatStandard::din974 ? ", DIN 974" : "") + ")";
  }
  return text.empty() ? text : text + ", from memory: ask";
}

std::string remedyText(const Lacking& lacking) {
  switch (lacking.why) {
    case Lacking::Why::noDrillOfSize:
      return "; buy that drill";
    case Lacking::Why::noneLeavesEnough:
      return lacking.barWouldDo ? "; buy a drill that leaves it, or bore under the reamer"
                                : "; buy a drill that leaves it";
    case Lacking::Why::noReamer:
    case Lacking::Why::reamerBeyondLimits:
      return lacking.barWouldDo ? "; buy the reamer, or bore to size" : "; buy the reamer";
    case Lacking::Why::noneWithinPercent:
      return "; buy the table's own drill";
    case Lacking::Why::noTap:
      return "; buy the tap, or choose another thread for both parts";
    case Lacking::Why::noBar:
      return "; buy a bar for it, or a reamer";
    case Lacking::Why::pilotDoesNotRun:
      return "; buy a pilot for it, or take an end mill";
    case Lacking::Why::noSeatTool:
    case Lacking::Why::noCutter:
    case Lacking::Why::noCutterForPocket:
      return "; buy one";
    case Lacking::Why::noSeatSize:
      return seatsText(lacking);
    case Lacking::Why::dialTooCoarse:
      return "; a dial with a finer division would, or a reamer";
    default:
      return "";
  }
}

}  // namespace

std::string wordsOf(Rule rule) {
  switch (rule) {
    case Rule::spotFirst:
      return "spotted so that the drill starts true (common practice)";
    case Rule::roughFaceFirst:
      return "first, on the rough face";
    case Rule::pilotFirst:
      return "a pilot of about a third before a large drill (from memory)";
    case Rule::stepUp:
      return "a step of about two thirds (from memory)";
    case Rule::drillOfSize:
      return "the drill of that size";
    case Rule::drillNearSize:
      return "the nearest owned that a drilled hole may have (AND10387, or the limits named)";
    case Rule::beforeReamer:
      return "the largest owned that leaves the machine reamer enough and not too much";
    case Rule::beforeHandReamer:
      return "the largest owned that leaves the hand reamer enough and not too much";
    case Rule::beforeBoreReam:
      return "well under, since boring puts the hole in its place";
    case Rule::boreBeforeReamer:
      return ".005 to .010 under the reamer (school workshop practice): it does not move a hole";
    case Rule::tableTapDrill:
      return "the table's own drill for the thread";
    case Rule::nearestPercent:
      return "the owned drill nearest to the percent of thread wanted";
    case Rule::underBore:
      return "the largest owned under the bore";
    case Rule::endMillUnderBore:
      return "the largest end mill owned under the bore";
    case Rule::trialCut:
      return "a trial cut, to see what the dial counts";
    case Rule::boringCut:
      return "whole divisions; the last two halve what is left; run the last setting twice";
    case Rule::reamToSize:
      return "to size";
    case Rule::tapThread:
    case Rule::asLettered:
      return "as lettered";
    case Rule::underSuit:
      return "left 1/32 under until it is known what it has to suit";
    case Rule::waitsToSuit:
      return "to suit: its size waits for what is measured";
    case Rule::holeForCutter:
      return "at one end, since the cutter is not known to cut over its centre";
    case Rule::largestThatGoes:
      return "the largest cutter owned that goes in; passes of at most half its diameter (from "
             "memory)";
    case Rule::underCloseSlot:
      return "the largest owned at least 1/64 under, since the width is lettered close: then "
             "either "
             "side; passes of at most half its diameter (from memory)";
    case Rule::largestInCorners:
      return "the largest owned that its corners let in, of a square one about half its width; "
             "passes of at most half its diameter (from memory)";
    case Rule::markOnly:
      return "a point: nothing is cut";
    case Rule::openForBush:
      return "bored true for what is pressed in; run the last setting twice";
    case Rule::pressIn:
      return "pressed in before anything is cut in it";
    case Rule::afterPressing:
      return "after pressing, since a bush closes in";
    case Rule::breakEdges:
      break;
  }
  return "break both edges";
}

std::string wordsOf(OrderRule rule) {
  switch (rule) {
    case OrderRule::marks:
      return "points are marked before there is a chip on the work";
    case OrderRule::roughFaces:
      return "a spotface first gives the drill a flat to start on";
    case OrderRule::spots:
      return "every place is spotted before any is drilled: what is wrong shows before it costs";
    case OrderRule::drills:
      return "drills from the smallest up, so that a pilot comes before what it is for";
    case OrderRule::seats:
      return "seats while the drilled hole still guides their pilot";
    case OrderRule::bars:
      return "bores before reamers, which follow the hole they find";
    case OrderRule::reamers:
      return "reamers once nothing more is drilled beside them";
    case OrderRule::taps:
      return "taps last of the holes, when the chips are out of the way";
    case OrderRule::presses:
      return "bushes and plugs when the sound holes are made";
    case OrderRule::inBushes:
      return "what is cut in them once they are in";
    case OrderRule::slots:
      return "slots when every drill has had whole metal about it";
    case OrderRule::pockets:
      return "pockets after the slots that run into them";
    case OrderRule::elsewhere:
      return "what is spotted from a mate or drilled on assembly once that is there";
    case OrderRule::edges:
      break;
  }
  return "edges when no tool raises another burr";
}

std::string struckText(const HoleStep& step, Unit shown) {
  const bool bare = step.struckOut.find_first_not_of("0123456789./ -") == std::string::npos;
  if (!bare || step.struckOut.empty() || step.unit == shown) return step.struckOut;
  return step.struckOut + (step.unit == Unit::inch ? " in" : " mm");
}

std::string speedText(const HoleStep& step) {
  int speed = step.speed.value_or(0), scale = 1;
  while (!step.ownSpeed && speed / scale >= 100) scale *= 10;
  speed = (speed + scale / 2) / scale * scale;
  return std::to_string(speed);
}

std::string speedSource(std::string_view material, English english) {
  const auto cutting = cuttingSpeedOf(material);
  if (!cutting) return {};
  return inEnglish("Speeds are guides, for high-speed steel in " + cutting->material + ": " +
                       std::string(cutting->source) + "; tables differ by up to twice.",
                   english);
}

std::string pinWords(const HolePlan& plan, const Step& shown) {
  if (!plan.limits || !plan.pins) return {};
  if (plan.pins->owned) {
    return "pin " + writeDecimal(plan.pins->go, shown.unit) + " goes in, " +
           writeDecimal(plan.pins->noGo, shown.unit) + " does not";
  }
  // Limits are told to a tenth of a thou or to 1 µm: a readout's step would round past them.
  const std::int64_t fine = shown.unit == Unit::inch ? Length::kTicksPerInch / 10'000
                                                     : Length::kTicksPerMillimetre / 1'000;
  const auto limits = showLimitsInwards(plan.limits->least, plan.limits->greatest,
                                        {Length::ticks(fine), shown.unit});
  const std::string low = limits ? limits->low.text : writeDecimal(plan.limits->least, shown.unit);
  const std::string high =
      limits ? limits->high.text : writeDecimal(plan.limits->greatest, shown.unit);
  return "between " + low + " and " + high + ": a pin of the first goes in, of the second not";
}

std::string wordsOf(const HoleStep& step, const Step& shown) {
  std::string text;
  const auto add = [&](const std::string& more) { text += (text.empty() ? "" : ", ") + more; };
  if (step.dial) {
    // As it is divided: .25 mm has no end in inches.
    const bool other = step.dialUnit != shown.unit;
    const char* const unit = step.dialUnit == Unit::inch ? " in" : " mm";
    add("dial " + writeDecimal(*step.dial, step.dialUnit) + (other ? unit : ""));
    if (step.size) add("to " + figureAt(*step.size, shown));
  } else if (step.kind == ToolKind::drill && step.size) {
    add(figureAt(*step.size, shown));
  }
  if (step.fullDepth) add(figureAt(*step.fullDepth, shown) + " deep");
  if (step.pointDepth && step.pointDepth != step.fullDepth) {
    add(figureAt(*step.pointDepth, shown) + " to its end");
  }
  if (step.passes.size() > 1) {
    std::string passes = std::to_string(step.passes.size()) + " passes: ";
    constexpr std::size_t kMostPasses = 8;
    for (std::size_t i = 0; i < step.passes.size() && i < kMostPasses; ++i) {
      passes += (i == 0 ? "" : ", ") + figureAt(step.passes[i], shown);
    }
    if (step.passes.size() > kMostPasses) passes += " and so on";
    add(passes);
  }
  if (step.percent) add(percentText(*step.percent) + " of thread");
  if (step.cutsOver) add("may cut " + figureAt(*step.cutsOver, shown) + " over");
  if (step.speed) add("about " + speedText(step) + " rpm");
  if (!step.struckOut.empty()) add("never drill " + struckText(step, shown.unit));
  if (step.measure) add("measure: ______");
  return text;
}

std::string wordsOf(HoleNote note, const std::optional<PartPlace>& with) {
  const std::string mate = with ? with->place + " of " + with->part : "its mate";
  switch (note) {
    case HoleNote::barTooSmall:
      return "its place is lettered close, but it is too small for the bar: drilled and reamed";
    case HoleNote::reamerDoesNotMove:
      return "bored before it is reamed: a reamer follows the hole it finds";
    case HoleNote::interrupted:
      return "it breaks out, so the bar cuts by turns: end mills first, light cuts";
    case HoleNote::dialUnsaid:
      return "dial figures are the growth of the hole; many dials want half: trial cut first";
    case HoleNote::throughBoth:
      return "clamped to " + mate + " and drilled once by this sheet, through both";
    case HoleNote::byMatesSheet:
      return "drilled together with " + mate + " by that part's sheet: not by these coordinates";
    case HoleNote::fromMate:
      return "spotted through " + mate + ": not by these coordinates";
    case HoleNote::onAssembly:
      return "drilled on assembly" + (with ? ", once " + mate + " is in place" : std::string()) +
             ": not by these coordinates";
    case HoleNote::mateNotThere:
      return "the job has no " + mate + " to drill it with";
    case HoleNote::shortOfFar:
      return "room for chips is cut short by the far side: clear them often";
    case HoleNote::openedToSize:
      return "came out under size: opened to its own";
    case HoleNote::chosenAnew:
      return "what was chosen for it had other figures, see “made so far”: choose again before it "
             "is "
             "cut";
    case HoleNote::openedUp:
      return "came out wrong: made the next size";
    case HoleNote::linedOnPlace:
      return "came out wrong: bored out on these figures and bushed, see “made so far”";
    case HoleNote::linedAsFound:
      return "came out wrong: bored out about the hole as it is, not on these figures, then lined; "
             "see “made so far”";
    case HoleNote::shaftToSuit:
      return "came out wrong: left as found, its shaft is made to suit";
    case HoleNote::leftAsFound:
      return "came out wrong: left as found";
    case HoleNote::pieceWrong:
      return "came out wrong on one piece, see “made so far”: these figures are for the others";
    case HoleNote::foundUnlikely:
      return "is said to have come out far off: is that figure right? Nothing is made by it";
    case HoleNote::notClosed:
      return "its outline does not close (see outline): not milled by this plan";
    case HoleNote::waitsToSuit:
      break;
  }
  return "its size waits for what is measured";
}

std::string wordsOf(const Lacking& lacking, const Step& shown) {
  return whyText(lacking) + nearText(lacking, shown) + remedyText(lacking);
}

}  // namespace inchwright
