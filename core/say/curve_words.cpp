#include "core/say/curve_words.h"

namespace inchwright {
namespace {

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

std::string curveFindingWords(const CurveFinding& finding) {
  return finding.of + ": " + troubleWords(finding.trouble);
}

}  // namespace inchwright
