#include "core/say/lathe_words.h"

#include <algorithm>
#include <cstdio>

#include "core/base/listed.h"
#include "core/say/figure_words.h"

namespace inchwright {
namespace {

/// Degrees to three places, whatever the locale.
std::string degrees(double value) {
  const auto thousandths = static_cast<std::int64_t>(value * 1000 + (value < 0 ? -0.5 : 0.5));
  std::string digits = std::to_string(std::abs(thousandths));
  while (digits.size() < 4) digits.insert(digits.begin(), '0');
  digits.insert(digits.size() - 3, ".");
  return (thousandths < 0 ? "-" : "") + digits + "°";
}

std::string padded(std::string text, std::size_t width, bool right) {
  if (text.size() >= width) return text;
  const std::string blanks(width - text.size(), ' ');
  return right ? blanks + text : text + blanks;
}

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
  return out + '"';
}

/// Inwards, at a finer step than the readout's where there is nothing between.
std::string limitsFor(const SizeLimits& limits, Step step) {
  const std::int64_t fine =
      step.unit == Unit::inch ? Length::kTicksPerInch / 10'000 : Length::kTicksPerMillimetre / 500;
  step.size = Length::ticks(std::min(step.size.ticks(), fine));
  const Result<ShownLimits> shown = showLimitsInwards(limits.least, limits.greatest, step);
  if (shown) return shown->low.text + " to " + shown->high.text;
  return writeDecimal(limits.least, step.unit) + " to " + writeDecimal(limits.greatest, step.unit);
}

/// What keeps a tool that comes from the free end away from `of`.
std::string behindWords(const std::vector<Id>& of, const Id& behind) {
  if (!of.empty() && of.front() == behind) return "nothing is bored in front of it";
  return behind + " in front of it would be cut away";
}

std::string kindWords(FeatureKind kind) {
  return kind == FeatureKind::centreDrill ? "centre hole" : std::string(nameOf(kind));
}

/// `48 to the inch, 0.013 deep on one side; left-hand; may run out by 1/16`.
std::string threadCutWords(const ThreadCut& thread, const Step& step) {
  std::string words =
      thread.perInch > 0 ? std::to_string(thread.perInch) + " to the inch"
                         : "pitch " + thread.pitch.text + (step.unit == Unit::inch ? " in" : " mm");
  words += ", " + thread.depth.text + " deep on one side";
  if (thread.leftHand) words += "; LEFT-HAND";
  if (!thread.runout.empty()) words += "; may run out by " + thread.runout;
  return words;
}

}  // namespace

std::string lengthHeading(const LatheWork& work) {
  return "Length (" + work.carriageLetter + ")";
}

std::string diaHeading(const LatheWork& work) {
  return (work.halved ? "Half dia (" : "Dia (") + work.crossLetter + ")";
}

std::string heldWords(const LatheWork& work, const Lathe& lathe) {
  const std::string& letter = work.carriageLetter;
  std::string text = "held by the " + std::string(nameOf(work.held)) + " end";
  if (!work.zeroAt.empty()) text += ", " + letter + "0 at " + work.zeroAt;
  text += lathe.carriageCounts == CarriageCounts::left
              ? "; " + letter + " counts up towards the chuck"
              : "; " + letter + " counts up away from the chuck";
  return text;
}

std::string cutWords(const Cut& cut) {
  std::string text(nameOf(cut.op));
  std::replace(text.begin(), text.end(), '_', ' ');
  if (cut.op == CutOp::deburr) return "break all edges";
  return cut.of.empty() ? text : text + " " + joined(cut.of, ", ");
}

std::string cutNote(const Cut& cut, const std::string& letter) {
  if (cut.drillTo == DrillTo::point) return "to the drill's point: the bore is blind";
  if (cut.drillTo == DrillTo::through) return "right through: its point well past that";
  if (!cut.from && cut.behind.empty()) return {};
  std::string note = cut.from && cut.length ? "only between " + letter + " " + cut.from->text +
                                                  " and " + letter + " " + cut.length->text
                                            : std::string();
  if (!cut.behind.empty()) note += (note.empty() ? "" : ": ") + behindWords(cut.of, cut.behind);
  return note;
}

std::string latheNote(const LatheRow& row, const Step& step) {
  std::string note;
  const auto add = [&](const std::string& text) { note += (note.empty() ? "" : "; ") + text; };
  if (!row.behind.empty() && row.cutHere)
    add("NOT FROM THE END: " + behindWords({row.id}, row.behind));
  const bool within = row.kind == FeatureKind::groove || row.kind == FeatureKind::knurl ||
                      row.kind == FeatureKind::screwed;
  if (row.from && (within || !row.behind.empty())) add("begins at " + row.from->text);
  if (row.topSlide) add("top slide to " + degrees(*row.topSlide) + ", half the angle");
  if (row.setOver) {
    add("or, long as it is, between centres with the tailstock set over by " + row.setOver->text);
  }
  if (row.thread) add(threadCutWords(*row.thread, step));
  if (row.width) add(row.width->text + " wide");
  if (!row.knurl.empty()) add(row.knurl);
  if (row.limits) {
    add("measure \u00D8 " + limitsFor(*row.limits, step) +
        (row.roundsOut ? ": the readout's step is too coarse to show it" : ""));
  }
  if (row.unsuited) add("DON'T TURN YET: chosen to suit its mate, and no size does; see check");
  if (row.struckOut) add("to suit its mate, not the print's " + row.struckOut->text);
  if (!row.cutHere) add("cut in an earlier setup");
  if (row.disputed) add("in dispute: the print contradicts itself");
  if (!row.length.exact || (row.dia && !row.dia->exact)) add("no exact figure");
  return note;
}

std::string turnedFaultWords(const TurnedFault& fault, const Step& step) {
  switch (fault.kind) {
    case TurnedFaultKind::backToFront:
      return fault.id + " has no length: its two edges lie on one another";
    case TurnedFaultKind::taperUnsaid:
      return "the taper " + fault.id + " wants two of large, small, angle and taper per foot";
    case TurnedFaultKind::taperContradicts:
      return "the figures of the taper " + fault.id + " disagree by " + atStep(fault.by, step);
    case TurnedFaultKind::noSuchThread:
      return "the thread of " + fault.id + " is not one that is known";
    case TurnedFaultKind::noDiameter:
      return "nothing says how thick " + fault.id + " is: it is in none of the cuts";
    case TurnedFaultKind::grooveTooLarge:
      return "the floor of groove " + fault.id + " is not below " + fault.other + ": larger by " +
             atStep(fault.by, step);
    case TurnedFaultKind::twoSurfaces:
      return fault.id + " and " + fault.other + " lie over one another: only one can be there";
    case TurnedFaultKind::taperToNothing:
      return "the taper " + fault.id + " comes to nothing before its small end";
    case TurnedFaultKind::chamferTooLong:
      return "the chamfer " + fault.id + " is longer than " + fault.other;
    case TurnedFaultKind::drilledWithin:
      return fault.id + " is drilled at " + fault.other + ", which is no end of the part";
    case TurnedFaultKind::boreTooLarge:
      break;
  }
  return "the bore " + fault.id + " leaves no metal under " + fault.other + ": larger by " +
         atStep(fault.by, step);
}

std::vector<std::string> latheWarnings(const LatheWork& work) {
  std::vector<std::string> all;
  for (const TurnedFault& fault : work.shape.faults) {
    all.push_back(turnedFaultWords(fault, work.step));
  }
  if (work.partOffInJaws.ticks() > 0) {
    all.push_back("the parting tool would come " + atStep(work.partOffInJaws, work.step) +
                  " into the jaws: let more stand out");
  }
  for (const LatheRow& row : work.rows) {
    if (row.behind.empty() || !row.cutHere) continue;
    all.push_back(row.behind == row.id
                      ? row.id + " can't be bored from this end: nothing is bored in front of it"
                      : row.id + " lies behind " + row.behind +
                            ": sink it between its shoulders, or cut it from the other end");
  }
  if (work.zeroInChuck) {
    all.push_back("zero is on " + work.zeroAt + ", the end in the chuck: it can't be touched");
  }
  if (work.standsOutTooFar) {
    all.push_back("more stands out of the chuck than the part is long: is it held at all?");
  }
  if (work.zeroAssumed) all.push_back("nothing says where zero is: the free end was taken");
  if (!work.unplaced.empty()) all.push_back("no place yet for " + listed(work.unplaced));
  return all;
}

std::vector<std::string> latheLines(const LatheWork& work, const Lathe& lathe) {
  std::vector<std::string> lines{work.part + ", setup " + work.setup + ": in the lathe",
                                 std::string("  ") +
                                     (work.step.unit == Unit::inch ? "inches" : "millimetres") +
                                     " at a step of " + stepText(work.step),
                                 "  " + heldWords(work, lathe)};
  if (work.whole) lines.push_back("  over both ends " + work.whole->text);
  if (!work.rows.empty()) {
    lines.push_back("  " + padded("id", 8, false) + padded(lengthHeading(work), 14, true) +
                    padded(diaHeading(work), 14, true));
  }
  for (const LatheRow& row : work.rows) {
    std::string line = "  " + padded(row.id, 8, false) + padded(row.length.text, 14, true) +
                       padded(row.dia ? row.dia->text : "-", 14, true) + "  " + kindWords(row.kind);
    if (const std::string note = latheNote(row, work.step); !note.empty()) line += "; " + note;
    lines.push_back(line);
  }
  if (!work.cuts.empty()) lines.push_back("  Cuts in order");
  for (const Cut& cut : work.cuts) {
    std::string line = "    " + padded(cutWords(cut), 22, false);
    if (cut.length) line += "  " + work.carriageLetter + " " + cut.length->text;
    if (cut.dia) line += "  " + work.crossLetter + " " + cut.dia->text;
    if (const auto note = cutNote(cut, work.carriageLetter); !note.empty()) line += "  " + note;
    lines.push_back(line);
  }
  if (!work.inTheChuck.empty()) {
    lines.push_back("  not within reach here: " + joined(work.inTheChuck, ", "));
  }
  for (const std::string& warning : latheWarnings(work)) lines.push_back("  Mind: " + warning);
  return lines;
}

std::string latheAsCsv(const std::vector<LatheWork>& works) {
  std::string csv = "part,setup,unit,step,id,kind,length,dia\r\n";
  for (const LatheWork& work : works) {
    for (const LatheRow& row : work.rows) {
      csv += quoted(work.part) + ',' + quoted(work.setup) + ',' +
             std::string(nameOf(work.step.unit)) + ',' + stepText(work.step) + ',' +
             quoted(row.id) + ',' + std::string(nameOf(row.kind)) + ',' + row.length.text + ',' +
             (row.dia ? row.dia->text : "") + "\r\n";
    }
  }
  return csv;
}

}  // namespace inchwright
