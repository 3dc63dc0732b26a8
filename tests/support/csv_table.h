#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>
#include <vector>

namespace inchwright::test {

/// A row of a table of comma-separated values, its cells by the heading of their column.
using CsvRow = std::map<std::string, std::string>;

inline std::vector<std::string> csvCells(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (c == '"') {
      if (quoted && i + 1 < line.size() && line[i + 1] == '"') {
        cells.back() += line[++i];
      } else {
        quoted = !quoted;
      }
    } else if (c == ',' && !quoted) {
      cells.emplace_back();
    } else if (c != '\r') {
      cells.back() += c;
    }
  }
  return cells;
}

/// The rows of `tests/outside/tables/NAME.csv`, figures of published tables as their sources print
/// them. Fails the test when there are none.
inline std::vector<CsvRow> publishedTable(const std::string& name) {
  std::ifstream in(INCHWRIGHT_SOURCE_DIR "/tests/outside/tables/" + name + ".csv");
  std::vector<CsvRow> rows;
  std::vector<std::string> head;
  for (std::string line; std::getline(in, line);) {
    const std::vector<std::string> cells = csvCells(line);
    if (head.empty()) {
      head = cells;
      continue;
    }
    CsvRow row;
    for (std::size_t i = 0; i < head.size() && i < cells.size(); ++i) row[head[i]] = cells[i];
    rows.push_back(std::move(row));
  }
  EXPECT_FALSE(rows.empty()) << name;
  return rows;
}

}  // namespace inchwright::test
