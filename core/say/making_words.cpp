#include "core/say/making_words.h"

#include "core/say/figure_words.h"
#include "core/say/plan_words.h"

namespace inchwright {
namespace {

std::string depthPhrase(const Depth& depth, Unit shown) {
  if (depth.through || !depth.length) return "through";
  return figureText(*depth.length, shown) + " deep";
}

std::string holeWords(const Drilled& hole, std::string_view verb, Unit shown) {
  std::string text;
  if (hole.diameter) text = "Ø" + figureText(*hole.diameter, shown) + " ";
  return text + std::string(verb) + ", " + depthPhrase(hole.depth, shown);
}

std::string seatWords(const Drilled& hole, std::string_view seat, Unit shown) {
  std::string text = holeWords(hole, "drill", shown) + "; " + std::string(seat);
  if (hole.seatDiameter) text += " Ø" + figureText(*hole.seatDiameter, shown);
  if (hole.seatAngle) {
    const bool bare = hole.seatAngle->text.find_first_not_of("0123456789.") == std::string::npos;
    text += ", " + hole.seatAngle->text + (bare ? "°" : "");
  }
  if (hole.seatDepth) text += ", " + figureText(*hole.seatDepth, shown) + " deep";
  return text;
}

std::string slotWords(const kind::Slot& slot, Unit shown) {
  std::string text = "slot";
  if (slot.width) text += " " + figureText(*slot.width, shown) + " wide";
  if (slot.length) text += ", " + figureText(*slot.length, shown) + " long";
  return text + ", " + depthPhrase(slot.depth, shown);
}

}  // namespace

std::string verbText(const HoleStep& step) {
  // A drill is called by its name alone.
  if (step.tool == step.named) return std::string(nameOf(step.op));
  return step.named.empty() ? step.tool
                            : step.tool.substr(0, step.tool.size() - step.named.size() - 1);
}

std::string toolText(const HoleStep& step, Unit shown) {
  const bool bar = step.kind == ToolKind::bar && step.size;
  std::string text = bar ? sizeName(*step.size, step.unit) : step.named;
  const bool figure = bar || step.kind == ToolKind::reamer || step.kind == ToolKind::endMill ||
                      step.kind == ToolKind::counterbore || step.kind == ToolKind::countersink;
  if (figure && step.size && step.unit == Unit::inch && shown == Unit::millimetre) text += " in";
  return text;
}

std::string stepWords(const HoleStep& step, Unit shown) {
  const std::string tool = toolText(step, shown);
  return verbText(step) + (tool.empty() ? "" : " ") + tool;
}

std::string incompleteWords(const HolePlan& plan) {
  return plan.lacking.empty() ? "" : "incomplete: ";
}

std::string stepsWords(const TableRow& row, Unit shown) {
  std::string text;
  for (const HoleStep* step : fittingsOf(*row.plan)) {
    text += (text.empty() ? "" : ", ") + stepWords(*step, shown);
  }
  return incompleteWords(*row.plan) + text;
}

std::string runNotes(const HolePlan& plan, Unit shown) {
  std::string text, speeds;
  const auto add = [&](const std::string& more) {
    text += (text.empty() ? "" : " \u00B7 ") + more;
  };
  for (const HoleStep* step : fittingsOf(plan)) {
    if (step->percent) add(std::to_string((*step->percent + 50) / 100) + " % of thread");
    if (!step->struckOut.empty()) add("never drill " + struckText(*step, shown));
    if (step->speed) speeds += (speeds.empty() ? "" : ", ") + speedText(*step);
  }
  if (!speeds.empty()) add("about " + speeds + " rpm");
  return text;
}

std::string keptTo(const HolePlan& plan, const Step& shown) {
  std::string text;
  for (const HoleStep& step : plan.steps) {
    const bool deep = !step.through && step.fullDepth;
    if (!deep && !step.dial && step.passes.size() < 2) continue;
    HoleStep kept = step;
    kept.percent.reset();
    kept.cutsOver.reset();
    kept.speed.reset();
    kept.struckOut.clear();
    if (step.through) kept.fullDepth = kept.pointDepth = std::nullopt;
    if (!step.dial) kept.size.reset();
    text += (text.empty() ? "" : " \u00B7 ") +
            (step.dial ? step.tool : stepWords(step, shown.unit)) + " " + wordsOf(kept, shown);
  }
  const std::string pins = pinWords(plan, shown);
  if (!pins.empty()) text += (text.empty() ? "" : " \u00B7 ") + pins;
  return text;
}

std::string notesOf(const HolePlan& plan) {
  std::string text;
  for (const HoleNote note : plan.notes)
    text += (text.empty() ? "" : "; ") + wordsOf(note, plan.with);
  return text;
}

std::string depthText(const HoleStep& step, const Step& shown) {
  if (step.through) return "through";
  return step.fullDepth ? atStep(*step.fullDepth, shown) : std::string();
}

std::string sizeWords(const Feature& feature, const HolePlan& plan, Unit shown) {
  if (const auto* slot = feature.as<kind::Slot>()) return slotWords(*slot, shown);
  const Drilled* hole = feature.drilled();
  if (!hole) return std::string(nameOf(feature.kind()));
  if (plan.putRight && plan.putRight->next) {
    const std::string print = hole->make == Make::tap ? hole->thread
                              : hole->diameter        ? "Ø" + figureText(*hole->diameter, shown)
                                                      : std::string();
    return drilledWords(plan.putRight->next->drilled, shown) + ", not " + print;
  }
  return drilledWords(*hole, shown);
}

std::string drilledWords(const Drilled& drilled, Unit shown) {
  const Drilled* const hole = &drilled;
  switch (hole->make) {
    case Make::tap:
      return (hole->thread.empty() ? "thread not given" : hole->thread) + " tap, " +
             depthPhrase(hole->depth, shown);
    case Make::ream:
      return holeWords(*hole, "ream", shown);
    case Make::bore:
      return holeWords(*hole, "bore", shown);
    case Make::counterbore:
    case Make::countersink:
    case Make::spotface:
      return seatWords(*hole, nameOf(hole->make), shown);
    case Make::drill:
      break;
  }
  return holeWords(*hole, "drill", shown);
}

std::string noteWords(const Feature& feature, const TableRow& row, const Step& shown,
                      English english) {
  std::string notes;
  const auto add = [&](const std::string& note) {
    if (note.empty()) return;
    if (!notes.empty()) notes += "; ";
    notes += note;
  };
  if (row.disputed) add("a loop it lies on does not close");
  if (row.assumed) add("its place rests on an assumption");
  if (!row.x.exact || !row.y.exact) add("no exact figure: rounded");
  add(inEnglish(notesOf(*row.plan), english));
  for (const Lacking& lacking : row.plan->lacking) {
    add(inEnglish(wordsOf(lacking, shown), english));
  }
  add(feature.note);
  return notes;
}

}  // namespace inchwright
