#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/say/making_words.h"
#include "core/say/setup_words.h"
#include "tests/core/plan/plates.h"

namespace inchwright::plates {

/// A table with what is said of it.
struct SaidTable {
  SetupTable table;
  SetupWords words;

  const SetupWords::Row& row(std::string_view id) const {
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      if (table.rows[i].id == id) return words.rows[i];
    }
    ADD_FAILURE() << "no row " << id;
    static const SetupWords::Row kNone;
    return kNone;
  }
};

inline SaidTable saidOf(const Plate& plate, const Setup& setup, const Job& job = jobWith(),
                        English english = English::uk, const TableOptions& options = {}) {
  const Result<SetupTable> table = makeTable(job, plate.part, plate.solution, setup, options);
  EXPECT_TRUE(table.ok()) << table.error().text;
  if (!table) return {};
  return {*table, setupWords(plate.part, *table, english)};
}

}  // namespace inchwright::plates
