#include "app/words/check_note.h"

#include <algorithm>
#include <cstdlib>
#include <ostream>

#include "app/words/console.h"
#include "core/measure/writing.h"

namespace inchwright::app {
namespace {

/// A figure as the print would letter it; a rounded one only where the solver had to round.
std::string plain(const Rational& ticks, Unit unit) {
  const std::optional<Length> length = nearestTick(ticks);
  if (!length) return "a figure out of range";
  return (length->ticks() < 0 ? "-" : "") + writePlain(length->magnitude(), unit);
}

std::string magnitude(const Rational& ticks, Unit unit) {
  return plain(ticks.sign() < 0 ? ticks.negated() : ticks, unit);
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
std::vector<std::string> loopLines(const std::vector<LoopMember>& loop, std::size_t count,
                                   Unit unit) {
  std::vector<std::vector<std::string>> rows{{"", "", "", ""}};
  for (std::size_t i = 0; i < count; ++i) {
    const LoopMember& member = loop[i];
    rows.push_back({member.label, member.from + " to " + member.to, plain(member.step, unit),
                    "makes " + plain(member.running, unit)});
  }
  std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::left, Justify::left, Justify::left});
  lines.erase(lines.begin());
  return lines;
}

std::string suspectLine(const Suspect& suspect, const Part& part) {
  std::string line = suspect.reading;
  const Reading* const reading = part.reading(suspect.reading);
  if (reading != nullptr) line += " " + reading->figure.text;
  return line + " may be " + suspect.wouldBeText + ": " + suspect.reason() +
         (suspect.closesAll ? "" : " (leaves another loop open)");
}

std::vector<std::string> clashLines(const Clash& clash, Unit unit) {
  if (clash.loop.empty()) return {};
  const std::size_t others = clash.loop.size() - 1;
  const LoopMember& last = clash.loop.back();
  const Rational made = others == 0 ? Rational(0) : clash.loop[others - 1].running;
  const Rational said = made.plus(clash.missesBy).value_or(made);
  const std::string_view way = clash.missesBy.sign() > 0 ? " too long" : " too short";
  std::vector<std::string> lines;
  lines.push_back(std::string(nameOf(clash.axis)) + ": " + sumText(clash.loop, others, unit) +
                  " = " + plain(made, unit) + ", the print says " + plain(said, unit) + " (" +
                  last.label + "): " + magnitude(clash.missesBy, unit) + std::string(way));
  for (std::string& line : loopLines(clash.loop, others, unit)) lines.push_back(std::move(line));
  return lines;
}

void printList(const Streams& streams, std::string_view heading,
               const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  streams.out << "  " << heading << '\n';
  for (const std::string& line : lines) streams.out << "    " << oneLine(line) << '\n';
}

std::string joined(const std::vector<Id>& ids) {
  std::string all;
  for (const Id& id : ids) all += (all.empty() ? "" : ", ") + id;
  return all;
}

}  // namespace

bool isQuery(const Doubt& doubt) {
  return doubt.kind != DoubtKind::loose && doubt.kind != DoubtKind::clash &&
         doubt.kind != DoubtKind::alone;
}

void printCheckNote(const Part& part, const Solution& solution, Unit unit, const Streams& streams) {
  streams.out << toned(streams, Tone::heading, oneLine(part.name)) << '\n';
  for (const Clash& clash : solution.clashes) {
    const std::vector<std::string> lines = clashLines(clash, unit);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const std::string line = oneLine(lines[i]);
      streams.out << (i == 0 ? "  " + toned(streams, Tone::doubt, line) : "      " + line) << '\n';
    }
    for (const Suspect& suspect : clash.suspects) {
      streams.out << "      " << oneLine(suspectLine(suspect, part)) << '\n';
    }
  }
  std::vector<std::string> loose;
  for (const Loose& one : solution.loose) {
    loose.push_back(one.id + " along " + std::string(nameOf(one.axis)) + ": " + one.advice);
  }
  printList(streams, "Nothing says where these lie:", loose);
  std::vector<std::string> queries;
  for (const Doubt& doubt : solution.doubts) {
    if (isQuery(doubt)) queries.push_back(doubt.text + (doubt.accepted ? " (accepted)" : ""));
  }
  printList(streams, "To ask the print or its draughtsman:", queries);
  const std::vector<Id> alone = solution.aloneIds();
  if (!alone.empty())
    printList(streams, "Nothing checks these readings; read them twice:", {joined(alone)});
  const bool fine = solution.clashes.empty() && solution.loose.empty();
  streams.out << "  " << (fine ? "It adds up: " : "") << solution.placed.size() << " of "
              << part.features.size() << " features placed"
              << (solution.clashes.empty() ? ", no clash" : "") << ".\n";
}

}  // namespace inchwright::app
