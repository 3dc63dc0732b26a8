#include "core/say/milled_words.h"

#include <algorithm>

#include "core/base/listed.h"
#include "core/say/curve_words.h"
#include "core/say/figure_words.h"

namespace inchwright {
namespace {

std::string placeText(const CutterStands& at) {
  return "X " + signedText(at.x) + ", Y " + signedText(at.y);
}

std::string beginningText(const MilledCut& cut, const Step& shown) {
  std::string text = cut.id + ": ";
  if (cut.disputed) text += "IN DISPUTE, a loop it lies on does not close; ";
  if (cut.assumed) text += "its place rests on an assumption; ";
  text += cut.tool;
  if (cut.passes.size() == 1) text += ", " + atStep(cut.passes.front(), shown) + " deep";
  if (cut.passes.size() > 1) {
    std::vector<std::string> depths;
    for (const Length pass : cut.passes) depths.push_back(atStep(pass, shown));
    text += ", all of it at each depth in turn: " + joined(depths, ", ");
  }
  if (cut.passes.empty()) text += "; how deep is not known";
  if (cut.depthUnsaid) text += ". No depth is said: taken right through";
  if (cut.drillFirst) {
    text += ". It is not known to cut over its centre: first drill " + cut.drill + " at " +
            placeText(*cut.drillFirst) + " and go in there";
  }
  return text;
}

void addAbout(const MilledCut& cut, const Step& shown, std::vector<std::string>& lines) {
  const MilledCut::About& about = *cut.about;
  std::vector<std::string> off;
  for (const Length spindle : about.spindle) off.push_back(atStep(spindle, shown));
  std::string text = cut.id + " on the rotary table, set true under " + placeText(about.centre) +
                     ": spindle off its centre by " + joined(off, ", then ");
  if (about.from && about.to) {
    text += "; from " + placeText(*about.from) + " to " + placeText(*about.to) + ", " +
            dialText(about.degrees) + "° on, the shorter way round";
  } else {
    text += ", a whole turn anticlockwise each time, so that the cutter never climbs. Or bored";
  }
  lines.push_back(text);
}

std::string leftText(const LeftStanding& left, const Step& shown) {
  const std::string most = left.height ? atStep(*left.height, shown) : "";
  switch (left.why) {
    case LeftStanding::Why::endOfSlot:
      return "beside the middle of its round ends up to " + most + ": file it";
    case LeftStanding::Why::roundCorner:
      return "in the round " + left.of + " up to " + most +
             ", since it is larger than the cutter: by points or on the rotary table (curve)";
    case LeftStanding::Why::standsIn:
      return "the round " + left.of + ", which stands in: by points or on the rotary table (curve)";
    case LeftStanding::Why::squareCorner:
      break;
  }
  return "in corners without a round " + most +
         " from the corner, round as the cutter is: ask the print, or file it";
}

bool isAskew(const CutterRun& run) {
  return run.from.x.value != run.to.x.value && run.from.y.value != run.to.y.value;
}

/// What to mind between runs.
void addMinded(const MilledCut& cut, std::vector<std::string>& lines) {
  const bool askew = std::any_of(cut.runs.begin(), cut.runs.end(), isAskew);
  if (cut.cutShort) {
    lines.push_back(cut.id + ": more runs than a sheet holds: take a larger cutter first");
  }
  if (cut.liftBetween) {
    lines.push_back(cut.id +
                    ": lift the cutter between runs that do not meet, else it cuts into the wall "
                    "on its way");
  }
  if (askew) {
    lines.push_back(cut.id +
                    ": no slide runs askew: turn the work so that it does, or go down "
                    "point by point");
  }
}

}  // namespace

std::string whatWords(CutterRun::What what) {
  switch (what) {
    case CutterRun::What::middle:
      return "down the middle";
    case CutterRun::What::side:
      return "along the wall";
    case CutterRun::What::clearing:
      return "clearing";
    case CutterRun::What::leaving:
      return "round, leaving 1/64 in";
    case CutterRun::What::wall:
      break;
  }
  return "round, to size";
}

std::string purposeOf(const MilledCut& cut, const CutterRun& run) {
  return whatWords(run.what) + (cut.disputed ? ", IN DISPUTE" : "");
}

std::string runWords(const CutterRun& run) {
  const auto fromTo = [](const char* letter, const Coordinate& from, const Coordinate& to) {
    return letter + signedText(from) + " to " + signedText(to);
  };
  const bool alongX = run.from.y.value == run.to.y.value;
  if (alongX) {
    return fromTo("X ", run.from.x, run.to.x) + ", Y " + signedText(run.from.y);
  }
  if (!isAskew(run)) return fromTo("Y ", run.from.y, run.to.y) + ", X " + signedText(run.from.x);
  return "askew from " + placeText(run.from) + " to " + placeText(run.to);
}

std::vector<std::string> milledNotes(const MilledCut& cut, const Step& shown) {
  std::vector<std::string> lines{beginningText(cut, shown)};
  if (cut.offCircle) {
    lines.push_back(cut.id +
                    ": its ends do not lie equally far from its centre: not milled by "
                    "these figures, ask the print");
    return lines;
  }
  if (cut.about) addAbout(cut, shown, lines);
  addMinded(cut, lines);
  if (cut.width) {
    lines.push_back(cut.id + ": width " + figureText(*cut.width, shown.unit) +
                    " wanted, measured ________. One cut at full width comes out a little over; a "
                    "second run at the same figures cleans it up");
  }
  for (const LeftStanding& left : cut.left) {
    lines.push_back(cut.id + ": stays " + leftText(left, shown));
  }
  return lines;
}

std::vector<std::string> milledWords(const MilledCut& cut, const Step& shown) {
  std::vector<std::string> lines = milledNotes(cut, shown);
  std::vector<std::string> runs;
  for (const CutterRun& run : cut.runs) {
    runs.push_back(cut.id + " " + purposeOf(cut, run) + ": " + runWords(run));
  }
  lines.insert(lines.begin() + 1, runs.begin(), runs.end());
  return lines;
}

}  // namespace inchwright
