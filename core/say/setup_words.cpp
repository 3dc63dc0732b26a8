#include "core/say/setup_words.h"

#include <algorithm>
#include <unordered_map>

#include "core/say/curve_words.h"
#include "core/say/doubt_words.h"
#include "core/say/figure_words.h"
#include "core/say/making_words.h"
#include "core/say/milled_words.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"

namespace inchwright {
namespace {

std::string letterWords(MachineAxis axis) {
  return std::string(1, letterOf(axis));
}

/// The two ways along an axis of the machine.
std::string wayWords(MachineAxis axis, bool up, English english) {
  switch (axis) {
    case MachineAxis::x:
      return up ? "to the right" : "to the left";
    case MachineAxis::y:
      return up ? "away" : inEnglish("towards you", english);
    case MachineAxis::z:
      break;
  }
  return up ? "up" : "down";
}

std::string_view standing(MachineAxis axis, bool beyond) {
  if (axis == MachineAxis::x) return beyond ? "right" : "left";
  return beyond ? "on the far side" : "on the near side";
}

std::string onIt(const Contact& contact, Unit shown) {
  return contact.stock ? ", " + figureText(*contact.stock, shown) + " still on it" : "";
}

std::string sideWords(const Contact& contact, Unit shown) {
  const std::string side(contact.side ? nameOf(*contact.side) : "outer");
  return "the " + side + " side (" + contact.place + onIt(contact, shown) + ")";
}

std::string placeWords(const Contact& contact, English english) {
  const std::string bore = "the bore of " + contact.place + " with an indicator or a plug";
  switch (contact.kind) {
    case FeatureKind::hole:
    case FeatureKind::row:
      return bore;
    case FeatureKind::ring:
      if (!contact.whole) return bore;
      return inEnglish("the centre of ring ", english) + contact.place +
             ", midway between opposite holes";
    case FeatureKind::slot:
      return contact.whole
                 ? "the middle of slot " + contact.place + ", its walls halved"
                 : "the end " + contact.place + " of the slot with an indicator or a plug";
    default:
      return std::string(nameOf(contact.kind)) + " " + contact.place + " with a pointer";
  }
}

/// `hole A`, and a hole of a ring or row is one too.
std::string rowWords(const CheckPlace& check) {
  const bool ofMany = check.kind == FeatureKind::ring || check.kind == FeatureKind::row;
  if (check.whole || (!ofMany && check.kind != FeatureKind::slot)) {
    return std::string(nameOf(check.kind)) + " " + check.place;
  }
  return (ofMany ? "hole " : "slot end ") + check.place;
}

std::string listedIds(const std::vector<std::string>& ids) {
  std::string text;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (i > 0) text += i + 1 == ids.size() ? " and " : ", ";
    text += ids[i];
  }
  return text;
}

/// The part's own name of a side as it lies on the table.
std::string sideOnTable(const SetupWarning& warning) {
  return warning.side ? std::string(nameOf(*warning.side)) : "outer";
}

std::string oddThing(const SetupWarning& warning) {
  switch (warning.of) {
    case SetupWarning::Of::stock:
      return "the stock on the " + sideOnTable(warning);
    case SetupWarning::Of::cutter:
      return "the cutter for " + warning.place;
    case SetupWarning::Of::ridge:
      return "the ridge left at " + warning.place;
    case SetupWarning::Of::offset:
      return "the offset of " + letterWords(warning.axis) + "0";
    case SetupWarning::Of::parallel:
      return "a parallel";
    case SetupWarning::Of::overhang:
      return "how far it stands out on the " + sideOnTable(warning);
    case SetupWarning::Of::inTheWay:
      return "a clamp, or what is kept clear of,";
    case SetupWarning::Of::piece:
      return "the piece of stock" + (warning.place.empty() ? "" : " " + warning.place);
    case SetupWarning::Of::vice:
      return "the vice";
    case SetupWarning::Of::margin:
      return "the shop's margin";
    case SetupWarning::Of::finder:
    case SetupWarning::Of::none:
      break;
  }
  return "the finder";
}

std::string oddWords(const SetupWarning& warning) {
  std::string text = oddThing(warning) + " is lettered " + warning.figure.text + ": ";
  for (std::size_t i = 0; i < warning.figure.questions.size(); ++i) {
    text += (i > 0 ? "; " : "") + warning.figure.questions[i];
  }
  return text;
}

const TableAxis& axisOf(const SetupTable& table, MachineAxis axis) {
  return axis == MachineAxis::y ? table.y : table.x;
}

}  // namespace

std::string zeroWords(const TableAxis& axis, Unit shown, English english) {
  if (!axis.zero) return "nowhere: nothing is placed along it";
  const ZeroAlong& asked = axis.zero->asked;
  std::string phrase;
  if (asked.middle.size() == 2) {
    phrase = "middle of " + asked.middle.front() + "–" + asked.middle.back();
    if (asked.ofStock) phrase += " (stock)";
  } else {
    phrase = "at " + asked.at;
  }
  if (asked.offset && !asked.offset->value.isZero()) {
    const Length offset = asked.offset->value;
    const bool up = (offset > Length()) == (axis.part.sign > 0);
    phrase += " + " + writePlain(offset.magnitude(), asked.offset->unit);
    if (asked.offset->unit != shown) phrase += asked.offset->unit == Unit::inch ? " in" : " mm";
    phrase += " ";
    phrase += wayWords(axis.machine, up, english);
  }
  return phrase;
}

std::string zeroLine(const SetupTable& table, English english) {
  const Unit unit = table.step.unit;
  return "X0 " + zeroWords(table.x, unit, english) + " · Y0 " + zeroWords(table.y, unit, english);
}

std::string tipWords(const FinderTip& tip, Unit shown) {
  if (!tip.lettered) {
    return shown == Unit::inch ? "0.200" : writeDecimal(tip.diameter, shown);
  }
  const std::string& text = tip.lettered->text;
  const bool bare = text.find_first_not_of("0123456789./ ") == std::string::npos && !text.empty();
  std::string words = bare ? text : writeDecimal(tip.diameter, tip.lettered->unit);
  if (tip.lettered->unit != shown) words += tip.lettered->unit == Unit::inch ? " in" : " mm";
  return words;
}

std::string aimWords(const TouchOff& touch, Unit shown, English english) {
  if (touch.axis.machine != MachineAxis::z || touch.axis.zero) {
    return zeroWords(touch.axis, shown, english);
  }
  return touch.stockOnTop.isZero() ? "top of the work" : "finished top of the work";
}

std::string touchWords(const TouchOff& touch, const TouchStep& step, const SetupTable& table,
                       English english) {
  const Unit shown = table.step.unit;
  const std::string letter = letterWords(touch.axis.machine);
  const std::string tip = "the " + tipWords(table.tip, shown) + " tip";
  const auto figure = [&](const Coordinate& coordinate) {
    const std::string text = presetText(coordinate, shown);
    switch (step.use) {
      case TouchStep::Figure::set:
        return "set " + letter + " " + text;
      case TouchStep::Figure::shouldRead:
        return letter + " should read " + text;
      case TouchStep::Figure::shouldReadAbout:
        break;
    }
    return letter + " should read about " + text;
  };
  switch (step.kind) {
    case TouchStep::Kind::touchSide:
      return "Touch " + sideWords(step.at, shown) + " with " +
             (step.sameTip ? "the same tip" : tip) + ": " + figure(step.figure);
    case TouchStep::Kind::touchPlane:
      return "Touch edge " + step.at.place + " with " + tip + ": standing " +
             std::string(standing(touch.axis.machine, false)) + " of it, " + figure(step.figure) +
             "; standing " + std::string(standing(touch.axis.machine, true)) + " of it, " +
             figure(step.beyond);
    case TouchStep::Kind::pickUp:
      return "Pick up " + placeWords(step.at, english) + ": " + figure(step.figure);
    case TouchStep::Kind::driveBack:
      return std::string("Drive back to half of what it reads, the middle") +
             (step.ofStock ? " of the stock: " : ": ") + figure(step.figure);
    case TouchStep::Kind::touchTop:
      return "Touch the top of the work with the tool" + onIt(step.at, shown) + ": " +
             figure(step.figure);
    case TouchStep::Kind::noTop:
      break;
  }
  return "Set Z 0 there: the top of the work has no position on the print";
}

std::string lookWords(const CheckPlace& check) {
  switch (check.look) {
    case CheckPlace::Look::overZero:
      return "zero: over the middle of " + check.place;
    case CheckPlace::Look::overCrossing:
      return "zero: spindle over where " + check.place + " and " + check.other + " cross";
    case CheckPlace::Look::nought:
      return "zero: the readout shows 0 and 0";
    case CheckPlace::Look::corner:
      return "spindle over the " + std::string(nameOf(check.sideY)) + " " +
             std::string(nameOf(check.sideX)) + " corner" + (check.ofStock ? " of the stock" : "") +
             " (" + check.place + ", " + check.other + ")";
    case CheckPlace::Look::overMiddle:
      return "over the middle of " + rowWords(check);
    case CheckPlace::Look::overEdge:
      break;
  }
  return "spindle over the finished edge " + check.place;
}

std::string warningWords(const SetupWarning& warning, const SetupTable& table, English english) {
  const Unit unit = table.step.unit;
  const std::string letter = letterWords(warning.axis);
  const TableAxis& axis = axisOf(table, warning.axis);
  switch (warning.kind) {
    case SetupWarning::Kind::noZero:
      return letter + "0 is nowhere: nothing is placed along the part's " +
             std::string(nameOf(axis.part.axis));
    case SetupWarning::Kind::zeroAssumed:
      return "the setup gives no " + letter + "0: it is taken " + zeroWords(axis, unit, english);
    case SetupWarning::Kind::zeroDisputed:
      return letter + "0 rests on a figure in dispute, and every " + letter + " with it";
    case SetupWarning::Kind::ofStockAlone:
      return letter + "0 is on " + warning.place +
             " as finished: `of stock` has a meaning for a middle only";
    case SetupWarning::Kind::stockOffMiddle:
      return "the middle of the stock is not the middle of the part along " + letter + ": " +
             writePlain(warning.apart, unit) + " apart; " + letter + "0 is the middle of the " +
             (axis.zero && axis.zero->asked.ofStock ? "stock" : "finished part");
    case SetupWarning::Kind::stopAndMiddle:
      return letter +
             "0 is a middle, but with a stop zero repeats from the stop: find it anew for a piece "
             "of another length";
    case SetupWarning::Kind::zeroNotThere:
      return letter + "0 is on " + warning.place +
             ", which this setup makes: there is nothing to pick up until it is made. Set zero on "
             "a side first";
    case SetupWarning::Kind::sideStoodFor:
      return "stock is left on the " + sideOnTable(warning) +
             " side, but no edge is named as it: " + warning.place +
             ", the outermost, is taken for it";
    case SetupWarning::Kind::sideMissing:
      return "stock is left on the " + sideOnTable(warning) +
             " side, but no edge is named as it: no preset counts it in";
    case SetupWarning::Kind::finderAssumed:
      return "the machine names no finder: a " + tipWords(table.tip, unit) +
             " tip is assumed in the presets";
    case SetupWarning::Kind::finderUnlikely:
      return "the finder's tip is lettered " + warning.figure.text + " " +
             (warning.figure.unit == Unit::inch ? "in" : "mm") +
             ": no finder has such a tip; every preset hangs on it";
    case SetupWarning::Kind::misspelt:
      return misspeltText(warning.member);
    case SetupWarning::Kind::oddFigure:
      break;
  }
  return oddWords(warning);
}

std::string directCheckWords(const DirectCheck& check, const Part& part) {
  if (check.reading.kind != SourceKind::reading) return labelOf(part, check.reading);
  const Reading& reading = part.readings[check.reading.index];
  std::string text = reading.kind == ReadingKind::along
                         ? reading.from + " to " + reading.to + " along " +
                               letterWords(check.axis) + ": " + reading.figure.text
                         : readingWords(part, reading);
  if (check.least && check.greatest) {
    text += ", " + check.least->text + " to " + check.greatest->text;
  }
  return text;
}

std::string adviceWords(const ClosenessAdvice& advice, const Part& part, const Step& step) {
  std::vector<std::string> readings;
  for (const Source& source : advice.readings) {
    if (source.kind != SourceKind::reading) {
      readings.push_back(labelOf(part, source));
      continue;
    }
    const Reading& reading = part.readings[source.index];
    readings.push_back(reading.figure.text + " (" + reading.from + " to " + reading.to + ")");
  }
  std::string text = "Hold " + listedIds(advice.places) + " to ±" + atStep(advice.plusMinus, step) +
                     " along " + letterWords(advice.axis);
  if (!advice.eased) {
    return text + ": " + listedIds(readings) +
           (readings.size() == 1 ? " asks for it." : " ask for it.");
  }
  text += ", or measure " + listedIds(readings) + " on the part";
  if (advice.then) text += " and hold all to ±" + atStep(*advice.then, step);
  return text + ".";
}

SetupWords setupWords(const Part& part, const SetupTable& table, English english) {
  const Unit unit = table.step.unit;
  SetupWords words;
  words.zero = zeroLine(table, english);
  std::unordered_map<std::string_view, const Feature*> features;
  for (const Feature& feature : part.features) features.emplace(feature.id, &feature);
  for (const TableRow& row : table.rows) {
    const Feature& feature = *features.at(row.feature);
    words.rows.push_back(
        {sizeWords(feature, *row.plan, unit), noteWords(feature, row, table.step, english)});
    const bool narrower =
        std::any_of(table.milled.begin(), table.milled.end(), [&](const MilledCut& cut) {
          return cut.id == row.feature &&
                 (cut.runs.size() > 1 || (cut.about && cut.about->spindle.size() > 1));
        });
    if (!narrower) continue;
    std::string& note = words.rows.back().note;
    note += (note.empty() ? "" : "; ") +
            inEnglish("the cutter is narrower: its centre goes as told below", english);
  }
  const auto isName = [&](std::string_view word) { return part.feature(word) != nullptr; };
  for (const Loose& loose : table.unplaced) {
    words.unplaced.push_back(inEnglish(adviceText(loose), english, isName));
  }
  for (const TouchOff& touch : table.touchOff) {
    SetupWords::Touch& said = words.touchOff.emplace_back();
    said.what = aimWords(touch, unit, english);
    for (const TouchStep& step : touch.steps) {
      said.steps.push_back(touchWords(touch, step, table, english));
    }
  }
  for (const CheckPlace& check : table.checks) words.checks.push_back(lookWords(check));
  for (const SetupWarning& warning : table.warnings) {
    words.warnings.push_back(warningWords(warning, table, english));
  }
  words.curves = curveWords(part, table, english);
  for (const MilledCut& cut : table.milled) {
    for (const std::string& line : milledWords(cut, table.step)) {
      words.milled.push_back(inEnglish(line, english, isName));
    }
  }
  return words;
}

std::string countsWords(const SetupTable& table, English english) {
  return std::string("X counts up to the ") + (table.x.counts > 0 ? "right" : "left") +
         ", Y counts up " +
         (table.y.counts > 0 ? "away from you" : inEnglish("towards you", english));
}

}  // namespace inchwright
