#include "app/words/check_note.h"

#include <algorithm>
#include <cstdlib>
#include <ostream>

#include "app/words/console.h"
#include "core/base/listed.h"
#include "core/measure/writing.h"
#include "core/say/doubt_words.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"

namespace inchwright::app {
namespace {

/// A figure as the print would letter it; a rounded one only where the solver had to round.
std::string plain(const Rational& ticks, Unit unit) {
  const std::optional<Length> length = nearestTick(ticks);
  if (!length) return "a figure out of range";
  return (length->ticks() < 0 ? "-" : "") + writePlain(length->magnitude(), unit);
}

std::string magnitude(const Rational& ticks, Unit unit) {
  return plain(ticks.magnitude(), unit);
}

/// `3/8 + 1 3/16 - 7/16`, leaving out what adds nothing (features in line with one another).
std::string sumText(const std::vector<LoopMember>& loop, std::size_t count, Unit unit) {
  std::string sum;
  for (std::size_t i = 0; i < count; ++i) {
    if (loop[i].step.isZero()) continue;
    if (sum.empty()) {
      sum = plain(loop[i].step, unit);
    } else {
      sum += (loop[i].step.sign() < 0 ? " - " : " + ") + magnitude(loop[i].step, unit);
    }
  }
  return sum.empty() ? "0" : sum;
}

/// One line a member: its name, from where to where, its step as walked and the sum so far.
std::vector<std::string> loopLines(const Part& part, const std::vector<LoopMember>& loop,
                                   std::size_t count, Unit unit) {
  std::vector<std::vector<std::string>> rows{{"", "", "", ""}};
  for (std::size_t i = 0; i < count; ++i) {
    const LoopMember& member = loop[i];
    rows.push_back({labelOf(part, member.source), member.from + " to " + member.to,
                    plain(member.step, unit), "makes " + plain(member.running, unit)});
  }
  std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::left, Justify::left, Justify::left});
  lines.erase(lines.begin());
  return lines;
}

std::string suspectLine(const Suspect& suspect, const Part& part) {
  const std::string line = readingWords(part, suspect.reading);
  const bool turned = suspect.reason.look == Likeness::endsSwapped;
  return line + (turned ? " may run " : " may be ") + wouldBeText(part, suspect) + ": " +
         reasonText(part, suspect) +
         (suspect.closesAll || (suspect.ofMany == 0 && !suspect.together.empty())
              ? ""
              : " (leaves another loop open)");
}

std::string saidBy(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading ? "the print says "
                                            : labelOf(part, source) + " asks for ";
}

std::string endsOf(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading
             ? " from " + endsWords(part, part.readings[source.index])
             : "";
}

std::vector<std::string> clashLines(const Part& part, const Clash& clash, Unit unit) {
  if (clash.loop.empty()) return {};
  const std::size_t others = clash.loop.size() - 1;
  const LoopMember& last = clash.loop.back();
  const Rational made = others == 0 ? Rational(0) : clash.loop[others - 1].running;
  const Rational said = made.plus(clash.missesBy).value_or(made);
  const std::string_view way = clash.missesBy.sign() > 0 ? " too long" : " too short";
  std::vector<std::string> lines;
  lines.push_back(std::string(nameOf(clash.axis)) + ": " + sumText(clash.loop, others, unit) +
                  " = " + plain(made, unit) + ", " + saidBy(part, last.source) + plain(said, unit) +
                  endsOf(part, last.source) + ": " + magnitude(clash.missesBy, unit) +
                  std::string(way));
  for (std::string& line : loopLines(part, clash.loop, others, unit))
    lines.push_back(std::move(line));
  return lines;
}

std::vector<std::string> aloneLines(const Part& part, const std::vector<Id>& alone) {
  std::vector<std::string> lines;
  for (const Id& id : alone) lines.push_back(id + "  " + readingWords(part, id));
  return lines;
}

void printList(const Streams& streams, std::string_view heading,
               const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  streams.out << "  " << heading << '\n';
  for (const std::string& line : lines) streams.out << "    " << oneLine(line) << '\n';
}

}  // namespace

bool isQuery(const Doubt& doubt) {
  return doubt.key.topic != DoubtTopic::loose && doubt.key.topic != DoubtTopic::clash &&
         doubt.key.topic != DoubtTopic::alone;
}

void printCheckNote(const Part& part, const Solution& solution, Unit unit, const Streams& streams) {
  streams.out << toned(streams, Tone::heading, oneLine(part.name)) << '\n';
  for (std::size_t number = 0; number < solution.clashes.size(); ++number) {
    const std::vector<std::string> lines = clashLines(part, solution.clashes[number], unit);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const std::string line = oneLine(lines[i]);
      streams.out << (i == 0 ? "  " + toned(streams, Tone::doubt, line) : "      " + line) << '\n';
    }
    for (const Suspect& suspect : solution.suspects[number]) {
      streams.out << "      " << oneLine(suspectLine(suspect, part)) << '\n';
    }
  }
  std::vector<std::string> loose;
  for (const Loose& one : solution.loose) {
    loose.push_back(one.id + " along " + std::string(nameOf(one.axis)) + ": " + adviceText(one));
  }
  printList(streams, "Nothing says where these lie:", loose);
  // What contradicts itself stands before what is only asked.
  std::vector<std::string> findings, queries;
  std::vector<Id> notLookedAt;
  for (const Doubt& doubt : solution.doubts) {
    if (!isQuery(doubt)) continue;
    std::string text = doubtText(part, solution, doubt);
    if (doubt.accepted) text += " (accepted)";
    (doubt.isFinding() ? findings : queries).push_back(std::move(text));
    if (doubt.key.topic == DoubtTopic::notPlaced) {
      notLookedAt.push_back(readingWords(part, doubt.pointsAt().front()));
    }
  }
  for (const std::string& text : findings) {
    streams.out << "  " << toned(streams, Tone::doubt, oneLine(text)) << '\n';
  }
  printList(streams, "To ask the print or its draughtsman:", queries);
  const std::vector<Id> alone = solution.aloneIds(part);
  if (!alone.empty())
    printList(streams, "Nothing checks these readings; read them twice:", aloneLines(part, alone));
  // Readings off the chains that contradict each other are among the queries.
  const bool noClash = std::find(solution.status.begin(), solution.status.end(),
                                 ReadingStatus::clashes) == solution.status.end() &&
                       solution.beyond.clashes.empty();
  const bool fine = noClash && solution.loose.empty() && findings.empty();
  const bool all = notLookedAt.empty();
  // A line, or a stretch of turned work, has no place of its own.
  const auto placeable =
      std::count_if(part.features.begin(), part.features.end(),
                    [](const Feature& feature) { return !axesOf(feature).empty(); });
  streams.out << "  "
              << (!fine ? ""
                  : all ? "It adds up: "
                        : "What was looked at adds up: ")
              << solution.placed.size() << " of " << placeable << " features placed"
              << (noClash ? ", no clash" : "") << ".\n";
  if (!all) streams.out << "  Not looked at: " << oneLine(joined(notLookedAt, ", ")) << ".\n";
}

}  // namespace inchwright::app
