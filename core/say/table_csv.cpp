#include "core/say/table_csv.h"

#include "core/say/figure_words.h"
#include "core/say/making_words.h"
#include "core/say/setup_words.h"

namespace inchwright {
namespace {

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

std::string tablesAsCsv(const std::vector<TableOfPart>& tables) {
  std::string csv = csvLine({"part", "setup", "unit", "step", "id", "kind", "x", "y", "x_ticks",
                             "y_ticks", "exact", "x_print", "y_print", "size", "make", "note"});
  for (const auto& [part, table] : tables) {
    const Unit unit = table.step.unit;
    const SetupWords words = setupWords(part, table);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      const TableRow& row = table.rows[i];
      csv += csvLine({table.part, table.setup, std::string(nameOf(unit)), stepText(table.step),
                      row.id, std::string(nameOf(row.kind)), row.x.text, row.y.text,
                      std::to_string(row.x.value.ticks()), std::to_string(row.y.value.ticks()),
                      row.x.exact && row.y.exact ? "true" : "false", row.xFraction, row.yFraction,
                      words.rows[i].size, stepsWords(row, unit), words.rows[i].note});
    }
  }
  return csv;
}

}  // namespace inchwright
