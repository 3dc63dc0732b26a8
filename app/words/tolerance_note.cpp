#include "app/words/tolerance_note.h"

#include <algorithm>
#include <ostream>

#include "app/words/console.h"

namespace inchwright::app {

std::string atStep(std::int64_t ticks, const Step& step) {
  return showAtStep(Rational(ticks), step).text;
}

std::string withSign(std::int64_t ticks, const Step& step) {
  const std::string text = atStep(ticks, step);
  return text.starts_with('-') ? text : "+" + text;
}

std::string listed(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

std::string unassuredText(const Unassured& one, const Step& step) {
  const std::int64_t over = one.others.high - one.allowed.high;
  const std::int64_t under = one.allowed.low - one.others.low;
  std::string text = one.reading + " allows " + atStep(one.allowed.low, step) + " to " +
                     atStep(one.allowed.high, step) + ", but ";
  if (over > 0 && under > 0) {
    return text + listed(one.highBy) + " can make it " + atStep(one.others.low, step) + " to " +
           atStep(one.others.high, step) + ": " + atStep(std::max(over, under), step) +
           " beyond it";
  }
  if (over > 0) {
    return text + listed(one.highBy) + " can make it " + atStep(one.others.high, step) + ": " +
           atStep(over, step) + " too much";
  }
  return text + listed(one.lowBy) + " can make it " + atStep(one.others.low, step) + ": " +
         atStep(under, step) + " too little";
}

void printUnassured(const std::vector<Unassured>& found, const Step& step, const Streams& streams) {
  if (found.empty()) return;
  streams.out << "  readings that the others do not assure:\n";
  for (const Unassured& one : found) {
    streams.out << "    " << toned(streams, Tone::doubt, oneLine(unassuredText(one, step))) << '\n';
  }
}

void printContradiction(const std::vector<Id>& readings, const Streams& streams) {
  streams.out << "  "
              << toned(streams, Tone::doubt,
                       oneLine(listed(readings) + " can't all hold within their tolerances"))
              << '\n';
}

}  // namespace inchwright::app
