#include "app/words/table_text.h"

#include <algorithm>
#include <ostream>

#include "app/words/console.h"

namespace inchwright::app {
namespace {

std::string_view axisName(bool alongX) {
  return alongX ? "X" : "Y";
}

std::string_view axisName(const TouchOff& touch) {
  return touch.depth ? "Z" : axisName(touch.alongX);
}

std::string countsText(const SetupTable& table) {
  return std::string("X counts up to the ") + (table.xCountsRight ? "right" : "left") +
         ", Y counts up " + (table.yCountsAway ? "away from you" : "towards you");
}

void printLines(const Streams& streams, const std::vector<std::string>& lines) {
  for (const std::string& line : lines) streams.out << "  " << line << '\n';
}

void printRows(const SetupTable& table, const Streams& streams) {
  std::vector<std::vector<std::string>> rows{
      {"id", "X", "Y", "X print", "Y print", "size", "make", "note"}};
  for (const TableRow& row : table.rows) {
    rows.push_back({row.id, signedText(row.x), signedText(row.y), row.xFraction, row.yFraction,
                    row.size, stepsText(row), row.note});
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
    rows.push_back({edge.id, std::string(axisName(edge.alongX)), signedText(edge.value),
                    edge.stockLeft.isZero()
                        ? ""
                        : writePlain(edge.stockLeft, table.step.unit) + " still to come off"});
  }
  std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::left, Justify::right, Justify::left});
  lines.erase(lines.begin());
  streams.out << "  Edges\n";
  for (const std::string& line : lines) streams.out << "    " << line << '\n';
}

std::string quoted(const std::string& field) {
  if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
  std::string text = "\"";
  for (const char c : field) text.append(c == '"' ? 2 : 1, c);
  return text + "\"";
}

std::string csvLine(const std::vector<std::string>& fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i) line += (i == 0 ? "" : ",") + quoted(fields[i]);
  return line + "\r\n";
}

}  // namespace

std::string_view nameOf(StepKind kind) {
  switch (kind) {
    case StepKind::spot:
      return "spot";
    case StepKind::drill:
      return "drill";
    case StepKind::ream:
      return "ream";
    case StepKind::bore:
      return "bore";
    case StepKind::tap:
      return "tap";
    case StepKind::counterbore:
      return "counterbore";
    case StepKind::countersink:
      return "countersink";
    case StepKind::spotface:
      return "spotface";
    case StepKind::mark:
      break;
  }
  return "mark";
}

std::string stepText(const Step& step) {
  return showAtStep(step.size.rational(), step).text;
}

std::string stepWords(const MakingStep& step) {
  const std::string kind(nameOf(step.kind));
  if (step.tool.empty()) return kind;
  return step.tool.find(kind) == std::string::npos ? kind + " " + step.tool : step.tool;
}

std::string stepsText(const TableRow& row) {
  std::string text;
  for (const MakingStep& step : row.steps) {
    text += text.empty() ? "" : ", ";
    text += stepWords(step);
  }
  return text;
}

void printTableText(const SetupTable& table, const Streams& streams) {
  streams.out << toned(streams, Tone::heading,
                       oneLine(table.part + ", setup " + table.setup + ": " +
                               std::string(nameOf(table.face)) + " up, turned " +
                               std::to_string(table.turn) + "°"))
              << '\n';
  printLines(streams, {std::string(table.step.unit == Unit::inch ? "inches" : "millimetres") +
                           " at a step of " + stepText(table.step),
                       oneLine(table.zero), countsText(table)});
  for (const TouchOff& touch : table.touchOff) {
    streams.out << "  " << axisName(touch) << " zero: " << oneLine(touch.what) << '\n';
    int number = 0;
    for (const std::string& step : touch.steps) {
      streams.out << "    " << ++number << ". " << oneLine(step) << '\n';
    }
  }
  streams.out << '\n';
  if (!table.rows.empty()) printRows(table, streams);
  printEdges(table, streams);
  if (!table.checks.empty()) streams.out << "  Drive there and look before cutting\n";
  for (const CheckPlace& check : table.checks) {
    streams.out << "    X " << signedText(check.x) << "  Y " << signedText(check.y) << "  "
                << oneLine(check.look) << '\n';
  }
  for (const Loose& loose : table.unplaced) {
    streams.out << "  "
                << toned(streams, Tone::doubt,
                         oneLine(loose.id + " has no place along " +
                                 std::string(nameOf(loose.axis)) + ": " + loose.advice))
                << '\n';
  }
  for (const std::string& warning : table.warnings) {
    streams.out << "  " << toned(streams, Tone::doubt, "Mind: " + oneLine(warning)) << '\n';
  }
}

std::string tablesAsCsv(const std::vector<SetupTable>& tables) {
  std::string csv = csvLine({"part", "setup", "unit", "step", "id", "kind", "x", "y", "x_ticks",
                             "y_ticks", "exact", "x_print", "y_print", "size", "make", "note"});
  for (const SetupTable& table : tables) {
    for (const TableRow& row : table.rows) {
      csv += csvLine({table.part, table.setup, std::string(nameOf(table.step.unit)),
                      stepText(table.step), row.id, std::string(nameOf(row.kind)), row.x.text,
                      row.y.text, std::to_string(row.x.value.ticks()),
                      std::to_string(row.y.value.ticks()),
                      row.x.exact && row.y.exact ? "true" : "false", row.xFraction, row.yFraction,
                      row.size, stepsText(row), row.note});
    }
  }
  return csv;
}

}  // namespace inchwright::app
