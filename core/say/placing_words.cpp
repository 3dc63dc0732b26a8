#include "core/say/placing_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/listed.h"
#include "core/measure/writing.h"
#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"

namespace inchwright {
namespace {

std::string toTenthsOfAThou(Length length) {
  return showAtStep(length.rational(), Step{Length::ticks(254'000), Unit::inch}).text;
}

std::string answersText(const SeveralAnswers& several) {
  std::vector<std::string> others;
  for (const auto& at : several.answers) others.push_back(pointText(at));
  const bool isAlone = others.size() == 1;
  if (isAlone && several.isTaken) {
    return listed(several.about) +
           " hang on each other and are taken to lie where they are traced, " + several.place +
           " at " + others[0] + "; other ways for them to lie were not looked for";
  }
  if (isAlone) {
    return listed(several.about) + " hang on each other: " + several.place + " may lie at " +
           others[0] + " or elsewhere; trace them closer, or say which way round they lie";
  }
  if (several.isLine) {
    return several.place + " may run through " + joined(others, " or ") +
           "; say on which side of it what it touches lies";
  }
  if (!several.isTaken) {
    return several.place + " may lie at " + joined(others, " or ") +
           "; say which way round it lies, or on which side";
  }
  const std::string taken = others.front();
  others.erase(others.begin());
  return several.place + " is taken to lie at " + taken + ", where it is traced; " +
         joined(others, " or ") + " would do as well";
}

// What is parallel or square alone misses by an angle, in radians.
bool isOfDirections(const Part& part, const CentresClash& clash) {
  const auto tells = [&](std::uint32_t index) {
    const UnderstandingKind kind = part.understood[index].kind;
    return kind == UnderstandingKind::parallel || kind == UnderstandingKind::square;
  };
  return clash.members.empty() && !clash.understood.empty() &&
         std::all_of(clash.understood.begin(), clash.understood.end(), tells);
}

std::string clashText(const Part& part, const CentresClash& clash) {
  std::vector<std::string> names;
  for (const std::uint32_t member : clash.members) {
    names.push_back(readingWords(part, part.readings[member]));
  }
  // Where no figure is in it, what is understood contradicts itself.
  for (std::size_t i = 0; clash.members.empty() && i < clash.understood.size(); ++i) {
    const Understanding& what = part.understood[clash.understood[i]];
    const bool isOnOne = what.kind == UnderstandingKind::on;
    names.push_back("that " + listed(what.of) + (what.of.size() == 1 ? " is " : " are ") +
                    kindWords(what.kind) + (isOnOne ? " " + what.about : ""));
  }
  if (names.empty()) names.push_back("the sizes as entered");
  if (isOfDirections(part, clash)) {
    return listed(names) + " can't be: their directions miss it by " +
           degreesText(std::abs(clash.missesBy) * 180 / std::numbers::pi);
  }
  const auto miss = std::llround(std::abs(clash.missesBy) * Length::kTicksPerInch);
  const std::string by = toTenthsOfAThou(Length::ticks(miss));
  if (!clash.spare) return listed(names) + " do not meet: they miss each other by " + by;
  if (names.size() == 1) return names[0] + " does not agree with the rest: it misses by " + by;
  return listed(names) + " do not agree: " + readingWords(part, part.readings[*clash.spare]) +
         " misses by " + by;
}

}  // namespace

std::string kindWords(UnderstandingKind kind) {
  std::string words(nameOf(kind));
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string pointText(const std::array<Length, 2>& at) {
  return "(" + toTenthsOfAThou(at[0]) + ", " + toTenthsOfAThou(at[1]) + ")";
}

std::string degreesText(double degrees) {
  const auto hundredths = std::llround(degrees * 100);
  const auto size = std::abs(hundredths);
  std::string text = std::to_string(size / 100);
  if (size % 100 != 0) {
    text += "." + std::to_string(size % 100 / 10);
    if (size % 10 != 0) text += std::to_string(size % 10);
  }
  return (hundredths < 0 ? "−" : "") + text + "°";
}

std::string placingText(const Part& part, const Solution& solution, const Doubt& doubt) {
  const BeyondChains& beyond = solution.beyond;
  if (doubt.placing == PlacingDoubt::answers) return answersText(beyond.answers[doubt.index]);
  if (doubt.placing == PlacingDoubt::clashes) {
    const std::string text = clashText(part, beyond.clashes[doubt.index]);
    const auto& suspects = solution.centreSuspects[doubt.index];
    return suspects.empty() ? text : text + "; " + suspectText(part, suspects.front());
  }
  const WeakPlace& weak = beyond.weak[doubt.index];
  return weak.place + " is weakly held: a thou in " +
         readingWords(part, part.readings[weak.reading]) + " moves it over " +
         std::to_string(std::llround(std::floor(weak.factor))) + " thou";
}

std::string reasonText(const Part& part, const CentreSuspect& suspect) {
  switch (suspect.look) {
    case AngleLook::none:
      return lookText(suspect.reason);
    case AngleLook::otherAxis:
      return "measured from the other axis";
    case AngleLook::otherTurn:
      return part.readings[suspect.reading].sense == Sense::clockwise
                 ? "as lettered, but anticlockwise"
                 : "as lettered, but clockwise";
    case AngleLook::otherEnd:
      return "measured from the other end";
    case AngleLook::otherPlace:
      return "from the other place";
    case AngleLook::minutesAsPoints:
      return "minutes read as a decimal";
    case AngleLook::alike:
      return "looks like " + suspect.wouldBeText + "°";
    case AngleLook::swapped:
      break;
  }
  return "two figures swapped";
}

std::string suspectText(const Part& part, const CentreSuspect& suspect) {
  const std::string reason = reasonText(part, suspect);
  return readingWords(part, part.readings[suspect.reading]) + " may be " + suspect.wouldBeText +
         (suspect.degrees ? "°" : "") + (reason.empty() ? "" : ": " + reason);
}

std::string freeText(const FreePlace& free) {
  switch (free.way) {
    case FreeWay::swings:
      return "it can still swing about " + free.about;
    case FreeWay::slides:
      return "it can still slide along " +
             (free.about.empty() ? "a line" : "a straight way through " + free.about);
    case FreeWay::together:
      break;
  }
  return "it can still move together with what it hangs on";
}

}  // namespace inchwright
