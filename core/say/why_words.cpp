#include "core/say/why_words.h"

#include "core/base/listed.h"
#include "core/measure/writing.h"
#include "core/say/figure_words.h"
#include "core/say/placing_words.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"
#include "core/say/stack_words.h"

namespace inchwright {
namespace {

std::string pointText(const ReadoutPoint& at) {
  return "(" + at.x.text + ", " + at.y.text + ")";
}

std::string heldByText(const Part& part, const WhyHeld& held) {
  std::vector<std::string> names;
  for (const Id& id : held.readings) {
    names.push_back(readingWords(part, id));
  }
  for (const std::uint32_t one : held.understood) {
    names.push_back(labelOf(part, {SourceKind::understanding, one}));
  }
  return listed(names);
}

}  // namespace

std::string stepText(const Part& part, const Why& why, const WhyStep& step) {
  switch (step.source) {
    case WhyStep::Source::zero:
      return "from zero to " + step.member.to;
    case WhyStep::Source::placed:
      if (step.held) return "by " + heldByText(part, why.held[*step.held]);
      return "where centre distances, angles or the like put it";
    case WhyStep::Source::understood:
      // A middle takes half of what a reading says.
      return memberName(step.member) + ", in part";
    case WhyStep::Source::reading:
    case WhyStep::Source::shape:
      break;
  }
  return memberName(step.member);
}

std::string heldText(const Part& part, const WhyHeld& held, const Step& step) {
  std::string text = held.place + " is held by " + heldByText(part, held);
  if (!held.together.empty()) text += ", together with " + listed(held.together);
  std::vector<std::string> ends;
  for (const WhyHeld::End& end : held.ends) {
    ends.push_back("from " + end.place + " " + pointText(end.at) + " " + atStep(end.apart, step) +
                   " at " + degreesText(end.degrees));
  }
  if (!ends.empty()) text += ": " + joined(ends, ", ");
  text += ".";
  std::vector<std::string> others;
  for (const WhyHeld::Other& other : held.others) {
    others.push_back(pointText(other.at) + ", " + atStep(other.off, step) + " off");
  }
  if (others.empty()) return text;
  return text + " The same readings hold at " + joined(others, " and ") +
         "; the tracing shows this one.";
}

}  // namespace inchwright
