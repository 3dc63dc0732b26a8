#include "app/words/tolerance_note.h"

#include <algorithm>
#include <ostream>

#include "app/words/console.h"
#include "core/measure/limits.h"
#include "core/say/reading_words.h"

namespace inchwright::app {

std::string atStep(std::int64_t ticks, const Step& step) {
  return showAtStep(Rational(ticks), step).text;
}

namespace {

std::string withSign(std::string text) {
  return text.starts_with('-') ? text : "+" + text;
}

}  // namespace

std::string withSign(std::int64_t ticks, const Step& step) {
  return withSign(atStep(ticks, step));
}

std::array<std::string, 2> outwardsAt(const Span& span, const Step& step) {
  const ShownLimits shown = showOutwards(Length::ticks(span.low), Length::ticks(span.high), step);
  return {shown.low.text, shown.high.text};
}

std::array<std::string, 2> straysAt(const Span& span, std::int64_t nominal, const Step& step) {
  const auto [low, high] = outwardsAt({span.low - nominal, span.high - nominal}, step);
  return {withSign(low), withSign(high)};
}

std::string unassuredText(const Part& part, const Unassured& one, const Step& machine) {
  const Length least = Length::ticks(one.allowed.low), greatest = Length::ticks(one.allowed.high);
  const Step step = stepThatTells(Length::ticks(one.others.low), Length::ticks(one.others.high),
                                  least, greatest, machine);
  const auto [low, high] = outwardsAt(one.others, step);
  const auto most = [&](std::int64_t ticks) { return outwardsAt({0, ticks}, step)[1]; };
  const std::int64_t over = one.others.high - one.allowed.high;
  const std::int64_t under = one.allowed.low - one.others.low;
  std::string text = readingWords(part, one.reading) + " allows " + atStep(one.allowed.low, step) +
                     " to " + atStep(one.allowed.high, step) + ", but ";
  if (over > 0 && under > 0) {
    return text + sourcesWords(part, one.highBy) + " can make it " + low + " to " + high + ": " +
           most(std::max(over, under)) + " beyond it";
  }
  if (over > 0) {
    return text + sourcesWords(part, one.highBy) + " can make it " + high + ": " + most(over) +
           " too much";
  }
  return text + sourcesWords(part, one.lowBy) + " can make it " + low + ": " + most(under) +
         " too little";
}

void printUnassured(const Part& part, const UnassuredReadings& all, const Step& step,
                    const Streams& streams) {
  if (all.isCutShort) {
    streams.out << "  loops too many and too long: not every reading was looked at for whether the "
                   "others assure it\n";
  }
  if (all.found.empty()) return;
  streams.out << "  readings that the others do not assure:\n";
  for (const Unassured& one : all.found) {
    streams.out << "    " << toned(streams, Tone::doubt, oneLine(unassuredText(part, one, step)))
                << '\n';
  }
}

std::string contradictionText(const Part& part, const std::vector<Source>& sources) {
  if (sources.size() == 1)
    return sourceWords(part, sources.front()) + " can't hold: what is exact contradicts it";
  return sourcesWords(part, sources) + " can't all hold within their tolerances";
}

void printContradiction(const Part& part, const std::vector<Source>& readings,
                        const Streams& streams) {
  streams.out << "  " << toned(streams, Tone::doubt, oneLine(contradictionText(part, readings)))
              << '\n';
}

}  // namespace inchwright::app
