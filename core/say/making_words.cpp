#include "core/say/making_words.h"

#include "core/say/figure_words.h"
#include "core/shop/threads.h"

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
  if (hole.seatDepth) text += ", " + figureText(*hole.seatDepth, shown) + " deep";
  return text;
}

std::string slotWords(const kind::Slot& slot, Unit shown) {
  std::string text = "slot";
  if (slot.width) text += " " + figureText(*slot.width, shown) + " wide";
  if (slot.length) text += ", " + figureText(*slot.length, shown) + " long";
  return text + ", " + depthPhrase(slot.depth, shown);
}

std::string_view locateWords(Locate locate) {
  switch (locate) {
    case Locate::mate:
      return "locate from its mate";
    case Locate::pair:
      return "drill with its mate, as a pair";
    case Locate::assembly:
      return "locate on assembly";
    case Locate::suit:
      return "locate to suit";
    case Locate::coordinate:
      break;
  }
  return {};
}

std::string faultWords(MakingFault fault, const Drilled& hole) {
  switch (fault) {
    case MakingFault::noDiameter:
      return "the print gives no diameter";
    case MakingFault::noDrillOfSize:
      return "no listed drill has this size";
    case MakingFault::noDrillUnderReamer:
      return "no listed drill suits this reamer";
    case MakingFault::noDrillUnderBore:
      return "too small for the drills listed";
    case MakingFault::noThread:
      return "the print gives no thread";
    case MakingFault::unknownThread: {
      const Result<Thread> thread = threadNamed(hole.thread);
      return thread ? std::string() : thread.error().text;
    }
    case MakingFault::noCounterboreSize:
      return "the print gives no size for the counterbore";
    case MakingFault::noCountersinkSize:
      return "the print gives no size for the countersink";
    case MakingFault::noSpotfaceSize:
      break;
  }
  return "the print gives no size for the spotface";
}

}  // namespace

std::string toolText(const MakingStep& step, Unit shown, English english) {
  const Tool& tool = step.tool;
  const std::string figure = tool.figure ? figureText(*tool.figure, shown) : std::string();
  switch (tool.way) {
    case Tool::Way::plain:
      return {};
    case Tool::Way::named:
      return tool.name.empty() ? "thread not given" : tool.name;
    case Tool::Way::sized:
      return figure;
    case Tool::Way::toFigure:
      return "to " + figure;
    case Tool::Way::under:
      return "under " + figure;
    case Tool::Way::boredUnder:
      return "and bore under " + figure;
    case Tool::Way::tappingSize:
      return inEnglish("tapping size for ", english) +
             (tool.name.empty() ? "thread not given" : tool.name);
    case Tool::Way::asWanted:
      break;
  }
  return "to size";
}

std::string toolName(const MakingStep& step, Unit shown, English english) {
  const bool drill = step.kind == StepKind::drill && step.tool.way == Tool::Way::named;
  return drill ? step.tool.name : stepWords(step, shown, english);
}

std::string stepWords(const MakingStep& step, Unit shown, English english) {
  const std::string tool = toolText(step, shown, english);
  const std::string kind(nameOf(step.kind));
  return tool.empty() ? kind : kind + " " + tool;
}

std::string stepsWords(const TableRow& row, Unit shown, English english) {
  std::string text;
  for (const MakingStep& step : row.steps) {
    text += (text.empty() ? "" : ", ") + stepWords(step, shown, english);
  }
  return text;
}

std::string depthText(const MakingStep& step, Unit shown) {
  if (!step.depth) return {};
  if (step.depth->through || !step.depth->length) return "through";
  return figureText(*step.depth->length, shown);
}

std::string sizeWords(const Feature& feature, Unit shown, English) {
  if (const auto* slot = feature.as<kind::Slot>()) return slotWords(*slot, shown);
  const Drilled* hole = feature.drilled();
  if (!hole) return std::string(nameOf(feature.kind()));
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

std::string noteWords(const Feature& feature, const TableRow& row, English) {
  std::string notes;
  const auto add = [&](std::string_view note) {
    if (note.empty()) return;
    if (!notes.empty()) notes += "; ";
    notes += note;
  };
  if (row.disputed) add("a loop it lies on does not close");
  if (feature.drilled()) add(locateWords(feature.drilled()->locate));
  if (row.assumed) add("its place rests on an assumption");
  if (!row.x.exact || !row.y.exact) add("no exact figure: rounded");
  for (const MakingFault fault : row.faults) add(faultWords(fault, *feature.drilled()));
  add(feature.note);
  return notes;
}

}  // namespace inchwright
