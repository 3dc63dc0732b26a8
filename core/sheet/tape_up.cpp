#include "core/sheet/tape_up.h"

#include <utility>

#include "core/sheet/content.h"

namespace inchwright {
namespace {

/// What the other rooms worded, in the English of the sheet. Names and notes are the user's.
struct Reworded {
  SetupTable table;
  std::vector<Doubt> doubts;
};

Reworded reworded(const Part& part, const Solution& solution, const SetupTable& table,
                  English english) {
  Reworded out{table, solution.doubts};
  const auto isName = [&part](std::string_view word) { return part.feature(word) != nullptr; };
  const auto put = [&](std::string& text) { text = inEnglish(text, english, isName); };
  put(out.table.zero);
  for (TableRow& row : out.table.rows) {
    put(row.size);
    put(row.note);
    for (MakingStep& step : row.steps) put(step.tool);
  }
  for (Loose& loose : out.table.unplaced) put(loose.advice);
  for (TouchOff& touch : out.table.touchOff) {
    put(touch.what);
    for (std::string& step : touch.steps) put(step);
  }
  for (CheckPlace& check : out.table.checks) put(check.look);
  for (std::string& warning : out.table.warnings) put(warning);
  for (Doubt& doubt : out.doubts) put(doubt.text);
  return out;
}

}  // namespace

std::vector<Page> tapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                              const SetupTable& table, const SheetOptions& options) {
  const Setup* named = part.setup(table.setup);
  const Setup setup = named ? *named : defaultSetup(part, solution);
  const Result<PartPicture> picture = pictureOf(part, solution, setup, job.machine);
  const PartPicture* drawn = picture.ok() ? &picture.value() : nullptr;
  if (options.english == English::uk) {
    return composeSheet({job, part, solution, table, drawn, options});
  }
  Reworded words = reworded(part, solution, table, options.english);
  Solution said = solution;
  said.doubts = std::move(words.doubts);
  return composeSheet({job, part, said, words.table, drawn, options});
}

}  // namespace inchwright
