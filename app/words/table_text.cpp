#include "app/words/table_text.h"

#include <algorithm>
#include <ostream>

#include "app/words/console.h"
#include "core/say/figure_words.h"
#include "core/say/making_words.h"
#include "core/say/setup_words.h"

namespace inchwright::app {
namespace {

void printLines(const Streams& streams, const std::vector<std::string>& lines) {
  for (const std::string& line : lines) streams.out << "  " << line << '\n';
}

void printRows(const SetupTable& table, const SetupWords& words, const Streams& streams) {
  std::vector<std::vector<std::string>> rows{
      {"id", "X", "Y", "X print", "Y print", "size", "make", "note"}};
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const TableRow& row = table.rows[i];
    const auto shown = [&](const Coordinate& at) {
      return goesByCoordinates(*row.plan) ? signedText(at) : "(" + signedText(at) + ")";
    };
    rows.push_back({row.id, shown(row.x), shown(row.y), row.xFraction, row.yFraction,
                    words.rows[i].size, stepsWords(row, table.step.unit), words.rows[i].note});
  }
  const std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::right, Justify::right, Justify::right,
                         Justify::right, Justify::left, Justify::left, Justify::left});
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const bool disputed = i > 0 && table.rows[i - 1].disputed;
    streams.out << "  "
                << (i == 0     ? toned(streams, Tone::quiet, lines[i])
                    : disputed ? toned(streams, Tone::doubt, lines[i])
                               : lines[i])
                << '\n';
  }
}

void printEdges(const SetupTable& table, const Streams& streams) {
  if (table.edges.empty()) return;
  std::vector<std::vector<std::string>> rows{{"", "", "", ""}};
  for (const EdgeRow& edge : table.edges) {
    std::string note = edge.disputed ? "in dispute" : "";
    if (edge.stock) {
      note += (note.empty() ? "" : "; ") + figureText(*edge.stock, table.step.unit) +
              " still to come off";
    }
    rows.push_back({edge.id, std::string(1, letterOf(edge.axis)), signedText(edge.value), note});
  }
  std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::left, Justify::right, Justify::left});
  lines.erase(lines.begin());
  streams.out << "  Edges\n";
  for (std::size_t i = 0; i < lines.size(); ++i) {
    streams.out << "    "
                << (table.edges[i].disputed ? toned(streams, Tone::doubt, lines[i]) : lines[i])
                << '\n';
  }
}

}  // namespace

void printTableText(const Part& part, const SetupTable& table, const Streams& streams) {
  const SetupWords words = setupWords(part, table);
  streams.out << toned(streams, Tone::heading,
                       oneLine(table.part + ", setup " + table.setup + ": " +
                               std::string(nameOf(table.face)) + " up, turned " +
                               std::to_string(table.turn) + "°"))
              << '\n';
  printLines(streams, {std::string(table.step.unit == Unit::inch ? "inches" : "millimetres") +
                           " at a step of " + stepText(table.step),
                       oneLine(words.zero), countsWords(table, English::uk)});
  for (std::size_t i = 0; i < table.touchOff.size(); ++i) {
    const SetupWords::Touch& touch = words.touchOff[i];
    streams.out << "  " << table.touchOff[i].axis.letter() << " zero: " << oneLine(touch.what)
                << '\n';
    int number = 0;
    for (const std::string& step : touch.steps) {
      streams.out << "    " << ++number << ". " << oneLine(step) << '\n';
    }
  }
  streams.out << '\n';
  if (!table.rows.empty()) printRows(table, words, streams);
  if (!words.milled.empty()) streams.out << "  Slots and pockets: the cutter's centre\n";
  for (const std::string& line : words.milled) streams.out << "    " << oneLine(line) << '\n';
  printEdges(table, streams);
  if (!table.checks.empty()) streams.out << "  Drive there and look before cutting\n";
  for (std::size_t i = 0; i < table.checks.size(); ++i) {
    const CheckPlace& check = table.checks[i];
    streams.out << "    X " << signedText(check.x) << "  Y " << signedText(check.y) << "  "
                << oneLine(words.checks[i]) << '\n';
  }
  for (std::size_t i = 0; i < table.unplaced.size(); ++i) {
    const Loose& loose = table.unplaced[i];
    streams.out << "  "
                << toned(streams, Tone::doubt,
                         oneLine(loose.id + " has no place along " +
                                 std::string(nameOf(loose.axis)) + ": " + words.unplaced[i]))
                << '\n';
  }
  for (const std::string& warning : words.warnings) {
    streams.out << "  " << toned(streams, Tone::doubt, "Mind: " + oneLine(warning)) << '\n';
  }
}

}  // namespace inchwright::app
