#include "app/words/stack_note.h"

#include <cmath>
#include <ostream>

#include "app/words/console.h"
#include "app/words/tolerance_note.h"

namespace inchwright::app {
namespace {

std::string percent(double share) {
  return std::to_string(std::lround(share * 100)) + " %";
}

std::string spanLine(const Span& span, const Rational& nominal, const Step& step) {
  const std::int64_t middle = nominal.rounded().value_or(0);
  return atStep(span.low, step) + " to " + atStep(span.high, step) + "  (" +
         withSign(span.low - middle, step) + " " + withSign(span.high - middle, step) + ")";
}

}  // namespace

std::string factorText(const Rational& factor) {
  std::string text = factor.sign() < 0 ? "-" : "+";
  const Rational size = factor.sign() < 0 ? factor.negated() : factor;
  if (size == Rational(1)) return text;
  text += std::to_string(static_cast<std::int64_t>(size.numerator()));
  if (!size.isWhole()) text += "/" + std::to_string(static_cast<std::int64_t>(size.denominator()));
  return text;
}

void printStack(const std::string& title, const Stack& stack, const Step& step,
                const Streams& streams) {
  streams.out << toned(streams, Tone::heading,
                       oneLine(title) + ": " + showAtStep(stack.nominal, step).text)
              << '\n';
  std::vector<std::vector<std::string>> rows{
      {"reading", "from – to", "", "lettered", "may be over", "may be under", "share"}};
  for (const StackMember& member : stack.members) {
    rows.push_back({oneLine(member.label), oneLine(member.from + " to " + member.to),
                    factorText(member.factor),
                    oneLine(member.text.empty() ? atStep(member.nominal, step) : member.text),
                    withSign(member.high - member.nominal, step),
                    withSign(member.low - member.nominal, step), percent(member.share)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line :
       alignedRows(rows, {left, left, right, right, right, right, right})) {
    streams.out << "  " << line << '\n';
  }
  std::string factor = std::to_string(stack.inflation);
  factor.erase(factor.find_last_not_of('0') + 1);
  if (factor.back() == '.') factor.pop_back();
  streams.out << "  worst case:       " << spanLine(stack.worst, stack.nominal, step) << '\n'
              << "  root sum square:  " << spanLine(stack.rss, stack.nominal, step) << '\n'
              << "  widened by " << factor << ":   "
              << spanLine(stack.inflated, stack.nominal, step) << '\n';
}

}  // namespace inchwright::app
