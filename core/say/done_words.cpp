#include "core/say/done_words.h"

#include <algorithm>

#include "core/say/making_words.h"
#include "core/shop/drills.h"
#include "core/shop/threads.h"

namespace inchwright {
namespace {

/// Whether a tool as named, `15/64`, `to 1.5`, `1/4-20 UNC`, cuts this diameter.
bool cuts(std::string_view tool, Length diameter) {
  constexpr std::string_view kTo = "to ";
  if (tool.starts_with(kTo)) tool.remove_prefix(kTo.size());
  if (const Drill* drill = drillNamed(tool)) return drill->diameter == diameter;
  for (const Unit bare : {Unit::inch, Unit::millimetre}) {
    const Result<Lettered> figure = readLength(tool, {bare});
    if (figure && figure->value == diameter) return true;
  }
  const Result<Thread> thread = threadNamed(tool);
  return thread && thread->major == diameter;
}

bool names(std::string_view tick, const HoleStep& step) {
  if (tick == doneName(step)) return true;
  const std::string_view kind = nameOf(step.op);
  if (!tick.starts_with(kind) || !step.size) return false;
  tick.remove_prefix(kind.size());
  return tick.starts_with(' ') && cuts(tick.substr(1), *step.size);
}

}  // namespace

std::string doneName(const HoleStep& step) {
  return stepWords(step, Unit::inch);
}

bool isDone(const MadePlace& made, const HoleStep& step) {
  return std::any_of(made.ticks.begin(), made.ticks.end(),
                     [&](const std::string& tick) { return names(tick, step); });
}

MadePlace withDone(MadePlace made, const HoleStep& step, bool done) {
  std::erase_if(made.ticks, [&](const std::string& tick) { return names(tick, step); });
  if (done) made.ticks.push_back(doneName(step));
  return made;
}

}  // namespace inchwright
