#include "core/say/plan_words.h"

namespace inchwright {
namespace {

/// Words one finding at a step.
class FindingWords {
 public:
  FindingWords(const Finding& finding, const Step& shown) : finding_(finding), shown_(shown) {}

  std::string text() const {
    switch (finding_.code) {
      case FindingCode::parallel:
        return parallel();
      case FindingCode::jaw:
        return tool() + " runs into the " + jaw() + " jaw by " + by() +
               ": higher parallels, or hold it elsewhere";
      case FindingCode::stop:
        return tool() + " runs into the stop" + side() + " by " + by() +
               ": take it away once the work is held";
      case FindingCode::clamp:
        return tool() + " runs into clamp " + which() + " by " + by() + ": shift the clamp";
      case FindingCode::clearOf:
        return tool() + " comes " + by() + " too near to what it is to keep clear of (" + which() +
               ")";
      case FindingCode::viceBed:
        return tool() + " goes " + wanted() + " below the work, and only " + had() +
               " is free above the vice's bed: higher parallels";
      case FindingCode::breaksInto:
        if (*finding_.had >= Length()) return "the wall between them is " + thin();
        return "they run into each other by " + at(finding_.had->negated());
      case FindingCode::breaksOut:
      case FindingCode::thinWall:
        return outline();
      case FindingCode::breaksThrough:
        return tool() + (*finding_.had < Length()
                             ? " breaks through the far side by " + at(finding_.had->negated())
                             : " ends only " + had() + " short of the far side");
      default:
        return ofTools();
    }
  }

 private:
  std::string ofTools() const {
    switch (finding_.code) {
      case FindingCode::cutterTooBig:
        return "the cutter " + had() + " is wider than the slot by " + by();
      case FindingCode::cornerTooTight:
        return "the corner is " + by() + " tighter than the smallest cutter";
      case FindingCode::tooDeep:
        return tool() + " has flutes of " + had() + ", and " + wanted() + " is to be cut";
      case FindingCode::noTool:
        return wordsOf(*finding_.lacking, shown_);
      case FindingCode::drillAtReamSize:
        return "drill " + finding_.tool +
               " was ticked off, as large as the reamer: nothing is left to ream";
      case FindingCode::grip:
        if (finding_.axis) {
          return "the work is " + wanted() + " from jaw to jaw, and the vice opens " + had() +
                 ": hold it otherwise";
        }
        return "the vice holds " + had() + " of the work, and " + wanted() +
               " is wanted: lower parallels";
      case FindingCode::travel:
        return "they lie " + wanted() + " apart along the machine's " +
               (finding_.axis == Axis::y ? "Y" : "X") + ", " + by() + " more than it travels";
      case FindingCode::headroom:
        return "the tools differ by " + wanted() + " in how far they stand out (" + finding_.tool +
               " the furthest), " + by() +
               " more than the quill comes down: the knee or head has to move. Settle it before "
               "the first hole; where the head moves on a round column, find zero again";
      default:
        return "piece " + finding_.piece + " is " + by() + " too short along " +
               std::string(nameOf(finding_.axis.value_or(Axis::x))) + ": the " +
               std::string(nameOf(finding_.side.value_or(Side::right))) + " side does not clean up";
    }
  }

  std::string parallel() const {
    const std::string text = tool() + " runs into the parallel at the " + jaw() + " jaw by " + by();
    if (!finding_.shift) return text;
    return text + ": shift it " + at(finding_.shift->magnitude()) +
           (*finding_.shift > Length() ? " away from" : " towards") + " that jaw";
  }

  std::string outline() const {
    if (finding_.code == FindingCode::thinWall) {
      return "the wall" + side() + " is " + thin() +
             (finding_.nowToo ? "" : " once that side is cut down");
    }
    const std::string out = "it breaks out of the part" + side() + " by " + by();
    if (!finding_.tool.empty()) return out;
    return out + (finding_.nowToo
                      ? ": an end mill before a bar, which cuts by turns; a drill wanders"
                      : ": drill it before that side is cut down");
  }

  std::string thin() const { return "only " + had() + " thick, " + by() + " too thin"; }
  std::string at(Length length) const {
    return showAtStep(length.rational(), shown_).text +
           (shown_.unit == Unit::millimetre ? " mm" : "");
  }
  std::string by() const { return at(*finding_.by); }
  std::string had() const { return at(*finding_.had); }
  std::string wanted() const { return at(*finding_.wanted); }
  std::string which() const { return std::to_string(*finding_.which + 1); }
  std::string jaw() const { return std::string(nameOf(finding_.jaw.value_or(Jaw::fixed))); }
  std::string side() const {
    return finding_.side ? " on the " + std::string(nameOf(*finding_.side)) + " side" : "";
  }
  std::string tool() const { return finding_.tool.empty() ? "what is cut" : finding_.tool; }

  const Finding& finding_;
  const Step& shown_;
};

}  // namespace

std::string wordsOf(Unsaid unsaid) {
  switch (unsaid) {
    case Unsaid::standsOn:
      return "what the work stands on: parallels and the vice's bed";
    case Unsaid::jawHeight:
      return "how high the jaws are: tools in the jaws, and how much is held";
    case Unsaid::stickOut:
      return "how far the tools stand out and the quill comes down: whether the knee has to move";
    case Unsaid::travel:
      return "how far the table travels";
    case Unsaid::thickness:
      break;
  }
  return "how thick the work is: points and floors against the far side";
}

std::string wordsOf(const Finding& finding, const Step& shown) {
  std::string names;
  for (std::size_t i = 0; i < finding.places.size(); ++i) {
    if (i > 0) names += i + 1 == finding.places.size() ? " and " : ", ";
    names += finding.places[i];
  }
  const std::string text = FindingWords(finding, shown).text();
  return names.empty() ? text : names + ": " + text;
}

}  // namespace inchwright
