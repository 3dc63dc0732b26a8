#include "core/measure/writing.h"
#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"

namespace inchwright {
namespace {

std::string inchesText(int inches, const char* what) {
  return inches == 1 ? std::string("a whole inch ") + what
                     : std::to_string(inches) + " whole inches " + what;
}

std::string tracedText(const Part& part, const Suspect& suspect) {
  const Reading* reading = part.reading(suspect.reading);
  if (!suspect.traced || reading == nullptr) return {};
  if (suspect.reason.look == Likeness::endsSwapped) return "the tracing has them so";
  return "the tracing puts it at about " +
         (reading->figure.lettering == Lettering::fraction
              ? writeFraction(*suspect.traced)
              : writeDecimal(*suspect.traced, reading->figure.unit));
}

std::string allReasons(const Part& part, const Suspect& suspect, std::string text) {
  const auto append = [&](const std::string& more) {
    if (more.empty()) return;
    if (!text.empty()) text += "; ";
    text += more;
  };
  append(tracedText(part, suspect));
  std::string with;
  for (const Id& id : suspect.together)
    with += (with.empty() ? "together with " : " and ") + readingWords(part, id);
  const bool bare = text.empty();
  const bool many = suspect.ofMany > 1;
  if (many) {
    append("closes " + std::to_string(suspect.ofMany) + " loops at once");
  } else if (bare) {
    append(suspect.closesAll                      ? "alone closes every loop"
           : suspect.ofMany == 0 && !with.empty() ? "closes every loop"
                                                  : "closes this loop");
  }
  if (with.empty()) return text;
  return text + (bare || many ? " " : "; ") + with;
}

}  // namespace

std::string lookText(const Reason& reason) {
  if (reason.wrongEnd != Reason::End::none) {
    const char* way = reason.wrongEnd == Reason::End::from ? "measured from " : "measured to ";
    return way + reason.rather + " rather than " + reason.than;
  }
  switch (reason.look) {
    case Likeness::none:
      break;
    case Likeness::alike:
      return "looks like " + reason.looksAs;
    case Likeness::swapped:
      return "figures swapped";
    case Likeness::inchesDropped:
      return inchesText(reason.inches, "dropped");
    case Likeness::inchesAdded:
      return inchesText(reason.inches, "added");
    case Likeness::halfForFull:
      return "half for full";
    case Likeness::fullForHalf:
      return "full for half";
    case Likeness::pointShifted:
      return "decimal point shifted";
    case Likeness::fractionDropped:
      return "the fraction dropped";
    case Likeness::endsSwapped:
      return "its two ends are swapped";
  }
  return {};
}

std::string suspicionText(const Part& part, const Suspect& suspect, English english) {
  return reworded(part, allReasons(part, suspect, lookText(suspect.reason)), english);
}

std::string reasonText(const Part& part, const Suspect& suspect, English english) {
  const Reason& reason = suspect.reason;
  const bool again = reason.wrongEnd == Reason::End::none && reason.look == Likeness::alike &&
                     reason.looksAs == suspect.wouldBeText;
  return reworded(part, allReasons(part, suspect, again ? "the two look alike" : lookText(reason)),
                  english);
}

std::string wouldBeText(const Part& part, const Suspect& suspect) {
  const Reading* reading = part.reading(suspect.reading);
  if (suspect.reason.look != Likeness::endsSwapped || reading == nullptr)
    return suspect.wouldBeText;
  return "from " + reading->to + " to " + reading->from;
}

}  // namespace inchwright
