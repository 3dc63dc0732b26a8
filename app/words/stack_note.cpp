#include "app/words/stack_note.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <ostream>

#include "app/words/console.h"
#include "app/words/tolerance_note.h"
#include "core/measure/angle.h"
#include "core/measure/limits.h"
#include "core/say/stack_words.h"

namespace inchwright::app {
namespace {

constexpr std::array<std::string_view, 3> kSpreadNames{"normal", "rectangular", "triangular"};

std::string spanText(const Span& span, const Rational& nominal, const Step& step) {
  const auto [low, high] = outwardsAt(span, step);
  const auto [under, over] = straysAt(span, nominal.rounded().value_or(0), step);
  return low + " to " + high + "  (" + under + " " + over + ")";
}

std::string widenedText(const Stack& stack, const Step& step) {
  const std::string text = spanText(stack.inflated, stack.nominal, step);
  return stack.inflatedIsHeld ? text + ", held to the worst case" : text;
}

std::string limitsText(const GapStack& sum, const Step& step) {
  if (!sum.greatest) return atStep(sum.least->ticks(), step) + " or more";
  const std::string greatest = atStep(sum.greatest->ticks(), step);
  return sum.least ? atStep(sum.least->ticks(), step) + " to " + greatest : greatest + " or less";
}

std::string verdictText(const GapStack& sum, const Span& span, const Step& step) {
  const Span beyond = sum.beyond(span);
  if (beyond == Span{}) return "keeps to it";
  const auto most = [&](std::int64_t ticks) { return outwardsAt({0, ticks}, step)[1]; };
  std::string text;
  if (beyond.low > 0) text = "may be " + most(beyond.low) + " too little";
  if (beyond.high > 0) {
    text += (text.empty() ? "may be " : " or ") + most(beyond.high) + " too much";
  }
  return text;
}

void printAligned(const std::vector<std::vector<std::string>>& rows,
                  const std::vector<Justify>& columns, const Streams& streams) {
  for (const std::string& line : alignedRows(rows, columns)) streams.out << "  " << line << '\n';
}

// `+0.574` inch an inch, `-0.0128/°` inch a degree.
std::string slantText(const StackMember& member) {
  char digits[32];
  const auto end = std::to_chars(digits, digits + sizeof digits, slopeOf(member),
                                 std::chars_format::fixed, member.isAngle ? 4 : 3);
  return (member.sign() < 0 ? "-" : "+") + std::string(digits, end.ptr) +
         (member.isAngle ? "/°" : "");
}

}  // namespace

std::string percentText(double share) {
  const bool small = share > 0 && share < 0.1;
  const long tenths = std::lround(share * 1000);
  if (!small) return std::to_string(std::lround(share * 100)) + " %";
  if (tenths == 0) return "under 0.1 %";
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
}

double slopeOf(const StackMember& member) {
  const double slope = std::fabs(member.factor.toDouble());
  return member.isAngle ? slope * static_cast<double>(Angle::kPerDegree) / Length::kTicksPerInch
                        : slope;
}

std::string degreesText(std::int64_t microArcseconds) {
  char digits[32];
  const auto end =
      std::to_chars(digits, digits + sizeof digits,
                    static_cast<double>(microArcseconds) / static_cast<double>(Angle::kPerDegree));
  return std::string(digits, end.ptr);
}

std::string_view spreadName(Spread spread) {
  return kSpreadNames[static_cast<std::size_t>(spread)];
}

std::optional<Spread> spreadNamed(std::string_view name) {
  for (std::size_t i = 0; i < kSpreadNames.size(); ++i) {
    if (kSpreadNames[i] == name) return static_cast<Spread>(i);
  }
  return std::nullopt;
}

std::string factorText(const Rational& factor) {
  std::string text = factor.sign() < 0 ? "-" : "+";
  const Rational size = factor.magnitude();
  if (size == Rational(1)) return text;
  text += std::to_string(static_cast<std::int64_t>(size.numerator()));
  if (!size.isWhole()) text += "/" + std::to_string(static_cast<std::int64_t>(size.denominator()));
  return text;
}

void printMembers(const std::string& title, const Stack& stack, const Step& step,
                  const Streams& streams) {
  streams.out << toned(streams, Tone::heading,
                       oneLine(title) + ": " + showAtStep(stack.nominal, step).text)
              << '\n';
  std::vector<std::vector<std::string>> rows{
      {"part", "reading", "from – to", "", "lettered", "may be over", "may be under", "share"}};
  for (const StackMember& member : stack.members) {
    auto [under, over] = straysAt({member.low, member.high}, member.nominal, step);
    if (member.isAngle) {
      over = "+" + degreesText(member.high - member.nominal) + "°";
      under = degreesText(member.low - member.nominal) + "°";
    }
    const std::string ends = member.to.empty() ? "" : beginsAt(member) + " to " + member.to;
    rows.push_back({oneLine(member.part), oneLine(memberName(member)), oneLine(ends),
                    member.isSlanted ? slantText(member) : factorText(member.factor),
                    oneLine(member.text.empty() ? atStep(member.nominal, step) : member.text), over,
                    under, percentText(member.share)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  printAligned(rows, {left, left, left, right, right, right, right, right}, streams);
}

void printOutcome(const std::vector<std::pair<std::string, const GapStack*>>& stacks,
                  const Step& machine, const Streams& streams) {
  // Fine enough that the figures bear out what is said of the limits.
  Step step = machine;
  for (const auto& [name, sum] : stacks) {
    for (const Span& span : {sum->stack.worst, sum->stack.rss}) {
      step = stepThatTells(Length::ticks(span.low), Length::ticks(span.high), sum->least,
                           sum->greatest, step);
    }
  }
  const GapStack& first = *stacks.front().second;
  char digits[32];  // as short as it reads back, in every locale
  const auto end = std::to_chars(digits, digits + sizeof digits, first.stack.inflation);
  const std::string factor(digits, end.ptr);
  const bool limited = first.least || first.greatest;
  std::vector<std::vector<std::string>> rows{
      {""}, {"worst case"}, {"root sum square"}, {"widened by " + factor}};
  if (limited) {
    rows.push_back({"has to be"});
    rows.push_back({"worst case"});
    rows.push_back({"root sum square"});
  }
  for (const auto& [name, sum] : stacks) {
    rows[0].push_back(name);
    rows[1].push_back(spanText(sum->stack.worst, sum->stack.nominal, step));
    rows[2].push_back(spanText(sum->stack.rss, sum->stack.nominal, step));
    rows[3].push_back(widenedText(sum->stack, step));
    if (!limited) continue;
    rows[4].push_back(limitsText(*sum, step));
    rows[5].push_back(verdictText(*sum, sum->stack.worst, step));
    rows[6].push_back(verdictText(*sum, sum->stack.rss, step));
  }
  if (stacks.size() == 1) rows.erase(rows.begin());
  printAligned(rows, std::vector<Justify>(stacks.size() + 1, Justify::left), streams);
  for (const auto& [name, sum] : stacks) {
    if (!sum->stack.secondOrder) continue;
    streams.out << "  " << name << ": bent beyond that by up to "
                << outwardsAt({0, *sum->stack.secondOrder}, step)[1]
                << ", since its tolerances are wide for its angles\n";
  }
}

void printSimulation(const std::string& title, const Simulation& simulation, const GapStack& sum,
                     const Step& step, const Streams& streams) {
  const auto at = [&](std::size_t i) { return atStep(simulation.percentiles[i], step); };
  const auto runs = static_cast<double>(simulation.runs);
  streams.out << toned(streams, Tone::heading, oneLine(title)) << ": " << simulation.runs
              << " put together at random, spread " << spreadName(simulation.spread) << ", seed "
              << simulation.seed << '\n'
              << "  in the middle " << at(2) << "; 95 in 100 from " << at(1) << " to " << at(3)
              << "; all but 27 in 10000 from " << at(0) << " to " << at(4) << '\n';
  if (sum.least || sum.greatest) {
    streams.out << "  out of limits: "
                << percentText(static_cast<double>(simulation.below + simulation.above) / runs)
                << " (" << percentText(static_cast<double>(simulation.below) / runs)
                << " too little, " << percentText(static_cast<double>(simulation.above) / runs)
                << " too much)\n";
  }
  constexpr std::size_t kLines = 16;
  constexpr std::size_t kPerLine = Simulation::kBars / kLines;
  constexpr double kLongest = 40;
  std::array<std::uint64_t, kLines> lines{};
  for (std::size_t i = 0; i < Simulation::kBars; ++i) lines[i / kPerLine] += simulation.bars[i];
  const std::uint64_t most = *std::max_element(lines.begin(), lines.end());
  const auto full = [](std::uint64_t count) { return count > 0; };
  const auto first = std::find_if(lines.begin(), lines.end(), full) - lines.begin();
  const auto last = lines.rend() - std::find_if(lines.rbegin(), lines.rend(), full);
  // As fine as it takes for the classes to be told apart.
  Step classStep = step;
  while (classStep.size.ticks() > simulation.range.width() / static_cast<std::int64_t>(kLines) &&
         classStep.size.ticks() % 10 == 0) {
    classStep.size = Length::ticks(classStep.size.ticks() / 10);
  }
  std::vector<std::vector<std::string>> rows;
  for (auto i = first; i < last; ++i) {
    const std::uint64_t count = lines[static_cast<std::size_t>(i)];
    const double from = static_cast<double>(simulation.range.low) +
                        static_cast<double>(simulation.range.width()) * static_cast<double>(i) /
                            static_cast<double>(kLines);
    const double length = kLongest * static_cast<double>(count) / static_cast<double>(most);
    rows.push_back({atStep(std::llround(from), classStep),
                    percentText(static_cast<double>(count) / runs),
                    std::string(static_cast<std::size_t>(std::lround(length)), '#')});
  }
  rows.insert(rows.begin(), {"from", "share", ""});
  printAligned(rows, {Justify::right, Justify::right, Justify::left}, streams);
}

}  // namespace inchwright::app
