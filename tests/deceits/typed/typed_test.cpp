// The table of deceits in what is typed at the strip and pointed at in the desk (`cases.txt`): each
// with the word that must be said of it, or the document left as it was. A new one is one line.

#include <gtest/gtest.h>

#include <fstream>

#include "tests/deceits/typed/typed_row.h"

namespace inchwright::app {
namespace {

struct Table {
  TypedDesk::Begins begins;
  std::vector<TypedDeceit> rows;
};

Table table() {
  Table table;
  std::ifstream in(INCHWRIGHT_SOURCE_DIR "/tests/deceits/typed/cases.txt");
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const auto begin = piecesOf(line, " = ");
    const auto cells = piecesOf(line, " | ");
    if (cells.size() == 3) {
      table.rows.push_back({line, cells[0], piecesOf(cells[1], " ; "), piecesOf(cells[2], " ; ")});
    } else if (cells.size() == 1 && begin.size() == 2) {
      table.begins[begin[0]] = begin[1];
    } else {
      ADD_FAILURE() << "no row: " << line;
    }
  }
  return table;
}

void expectSaid(const TypedDeceit& row, const TypedDesk::Begins& begins) {
  TypedDesk deceived(row.begin, begins), sound(row.begin, begins);
  for (const std::string& step : row.steps) {
    deceived.step(step, false);
    sound.step(step, true);
  }
  EXPECT_TRUE(sound.allTaken()) << row.line << "\nis not taken without the deceit either\n"
                                << sound.told();
  for (const std::string& demand : row.said) {
    EXPECT_TRUE(deceived.says(demand)) << row.line << "\nis not said: " << demand << "\n"
                                       << deceived.told();
    EXPECT_FALSE(sound.says(demand))
        << row.line << "\nis said without the deceit as well: " << demand << "\n"
        << sound.told();
  }
}

TEST(TypedDeceits, EveryOne) {
  deskApplication();
  const Table all = table();
  EXPECT_GE(all.rows.size(), 150u);
  for (const TypedDeceit& row : all.rows) {
    try {
      expectSaid(row, all.begins);
    } catch (const std::exception& fault) {
      ADD_FAILURE() << row.line << "\n" << fault.what();
    }
  }
}

}  // namespace
}  // namespace inchwright::app
