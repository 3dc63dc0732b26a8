#include "core/say/curve_words.h"

#include <cmath>

#include "core/measure/writing.h"
#include "core/say/figure_words.h"

namespace inchwright {
namespace {

// Where the spindle stands in a setting whose zero is the table's centre.
std::string spindleText(const SetupTable& table, const CurveCut& cut) {
  const bool isX = cut.cutterAt == CutterAt::right || cut.cutterAt == CutterAt::left;
  const bool isUp = cut.cutterAt == CutterAt::right || cut.cutterAt == CutterAt::away;
  const int counts = (isX ? table.x.counts : table.y.counts) * (isUp ? 1 : -1);
  return std::string(isX ? "X " : "Y ") + (counts > 0 ? "+" : "-") +
         atStep(*cut.spindle, table.step) + ", the other at 0";
}

std::string sideText(CutterAt at) {
  switch (at) {
    case CutterAt::right:
      return "to its right";
    case CutterAt::away:
      return "away from you";
    case CutterAt::left:
      return "to its left";
    case CutterAt::towards:
      break;
  }
  return "towards you";
}

std::string rotaryText(const SetupTable& table, const CurveCut& cut) {
  std::string text = "on the rotary table. Spindle true to its bore, X0 Y0 there; ";
  text += cut.pin ? "the hole over it on a pin of " + atStep(*cut.pin, table.step)
                  : "the centre over it by touching two sides, or on a plate that carries a pin";
  text += "; at dial 0 the work lies as pictured. ";
  if (cut.spindle) {
    text += atStep(*cut.cutter, table.step) + " cutter " + sideText(cut.cutterAt) + ": " +
            spindleText(table, cut) + ", slides locked. ";
  }
  return text + "Dial " + dialText(cut.dial->start) + "° to " + dialText(cut.dial->end) +
         "°, the table turned " + (cut.dial->isTurnedClockwise ? "clockwise" : "anticlockwise") +
         "; a test turn first shows which way its dial goes up.";
}

std::string pointsText(const SetupTable& table, const CurveCut& cut) {
  if (cut.points.empty()) return "by points: say with what cutter";
  std::string text =
      "by points of the cutter's centre: go down at each, never feed from one to "
      "the next";
  if (cut.ridge) text += ", and file off ridges of " + atStep(*cut.ridge, table.step);
  text += ". X, Y";
  for (const CurveCut::At& at : cut.points) text += " · " + at.x.text + ", " + at.y.text;
  return text;
}

std::string buttonsText(const SetupTable& table, const CurveCut::Buttons& buttons) {
  return "filed between two buttons, one each side, hard, free to turn on a bolt: outside " +
         atStep(buttons.outside, table.step) + ", bore " + atStep(buttons.bore, table.step) +
         ", about a quarter inch thick. File until it rides on both.";
}

std::string troubleWords(CurveTrouble trouble) {
  switch (trouble) {
    case CurveTrouble::notClosed:
      return "the outline about it does not close there, so it has no ends to cut between";
    case CurveTrouble::overrun:
      return "an overrun is asked for at an end that runs into the metal; it is left out there";
    case CurveTrouble::tooFarApart:
      return "between its points stands a ridge that no cutter has reached: take more points or a "
             "larger cutter";
    case CurveTrouble::noHole:
      return "filing buttons sit on a pin in a hole at its centre, and guide outside curves only";
    case CurveTrouble::cutterTooBig:
      break;
  }
  return "the cutter is too large for this hollow";
}

}  // namespace

std::string dialText(double degrees) {
  const auto thousandths = std::llround(degrees * 1000) % 360000;
  std::string digits = std::to_string(thousandths);
  if (digits.size() < 4) digits.insert(0, 4 - digits.size(), '0');
  return digits.insert(digits.size() - 3, ".");
}

std::string curveFindingWords(const CurveFinding& finding) {
  return finding.of + ": " + troubleWords(finding.trouble);
}

std::vector<std::string> curveWords(const Part& part, const SetupTable& table, English english) {
  std::vector<std::string> texts;
  const auto isName = [&](std::string_view word) { return part.feature(word) != nullptr; };
  for (const CurveCut& cut : table.curves.cuts) {
    std::string text = cut.of + ", " + (cut.isInside ? "hollow of radius " : "radius ") +
                       atStep(cut.radius, table.step) + ", centre at " + cut.x.text + ", " +
                       cut.y.text + ": ";
    if (cut.dial) text += rotaryText(table, cut);
    if (cut.way == CurveWay::points) text += pointsText(table, cut);
    if (cut.buttons) text += buttonsText(table, *cut.buttons);
    texts.push_back(inEnglish(text, english, isName));
  }
  for (const CurveFinding& finding : table.curves.findings) {
    texts.push_back(inEnglish(curveFindingWords(finding), english, isName));
  }
  return texts;
}

}  // namespace inchwright
