#include "core/say/edition_words.h"

#include <algorithm>

#include "core/base/listed.h"
#include "core/kit/kit_of_part.h"
#include "core/say/figure_words.h"
#include "core/say/lathe_words.h"
#include "core/say/making_words.h"
#include "core/say/setup_words.h"

namespace inchwright {
namespace {

std::string readoutWords(const Step& step) {
  return std::string(step.unit == Unit::inch ? "inches" : "millimetres") + " at a step of " +
         stepText(step);
}

const PrintedSheet* lastOf(const Part& part, std::string_view setup) {
  const auto found = std::find_if(part.printed.begin(), part.printed.end(),
                                  [&](const PrintedSheet& one) { return one.setup == setup; });
  return found == part.printed.end() ? nullptr : &*found;
}

/// The n-th row of a place: a lathe's cuts name a place more than once.
const PrintedRow* rowOf(const std::vector<PrintedRow>& rows, const Id& place, std::size_t number) {
  for (const PrintedRow& row : rows) {
    if (row.place == place && number-- == 0) return &row;
  }
  return nullptr;
}

std::size_t numberOf(const std::vector<PrintedRow>& rows, const PrintedRow& wanted) {
  std::size_t number = 0;
  for (const PrintedRow& row : rows) {
    if (&row == &wanted) break;
    number += row.place == wanted.place;
  }
  return number;
}

std::string saidOrNothing(const std::string& text) {
  return text.empty() ? "nothing" : text;
}

void compareRow(const PrintedRow& row, const PrintedRow& was,
                const std::vector<std::string>& letters, std::vector<std::string>& changes) {
  std::vector<std::string> what;
  if (row.first != was.first) what.push_back(letters[0] + " " + row.first + ", was " + was.first);
  if (row.second != was.second) {
    what.push_back(letters[1] + " " + saidOrNothing(row.second) + ", was " +
                   saidOrNothing(was.second));
  }
  if (row.made != was.made) {
    what.push_back(saidOrNothing(row.made) + ", was " + saidOrNothing(was.made));
  }
  if (what.empty()) return;
  std::string line = row.place + ": ";
  for (std::size_t i = 0; i < what.size(); ++i) line += (i == 0 ? "" : "; ") + what[i];
  changes.push_back(std::move(line));
}

std::vector<std::string> changesOf(const Part& part, const PrintedSheet& now,
                                   const PrintedSheet& was) {
  std::vector<std::string> changes;
  if (now.readout != was.readout) {
    // All figures are others then, and none of them is news.
    changes.push_back("all figures are in " + now.readout + ", were in " + was.readout);
    return changes;
  }
  if (now.zero != was.zero) changes.push_back("zero: " + now.zero + ", was: " + was.zero);
  const Setup* setup = part.setup(now.setup);
  const bool turned = setup ? setup->chucked.has_value() : part.turned;
  const std::vector<std::string> letters =
      turned ? std::vector<std::string>{"length", "dia"} : std::vector<std::string>{"X", "Y"};
  std::vector<Id> fresh, gone;
  for (const PrintedRow& row : now.rows) {
    const PrintedRow* before = rowOf(was.rows, row.place, numberOf(now.rows, row));
    if (before) {
      compareRow(row, *before, letters, changes);
    } else if (std::find(fresh.begin(), fresh.end(), row.place) == fresh.end()) {
      fresh.push_back(row.place);
    }
  }
  for (const PrintedRow& row : was.rows) {
    const bool there = rowOf(now.rows, row.place, numberOf(was.rows, row)) != nullptr;
    if (!there && std::find(gone.begin(), gone.end(), row.place) == gone.end()) {
      gone.push_back(row.place);
    }
  }
  if (!fresh.empty()) changes.push_back("new here: " + joined(fresh, ", "));
  if (!gone.empty()) changes.push_back("no longer here: " + joined(gone, ", "));
  const bool renumbered = !now.number.empty() && !was.number.empty() && now.number != was.number;
  if (changes.empty() && renumbered) {
    changes.push_back("no figure; what is said or drawn beside them");
  }
  return changes;
}

}  // namespace

bool wasPrinted(const Part& part, std::string_view setup) {
  return lastOf(part, setup) != nullptr;
}

PrintedSheet sheetNow(const Part& part, const SetupTable& table, const std::string& number) {
  PrintedSheet now;
  now.setup = table.setup;
  now.number = number;
  now.readout = readoutWords(table.step);
  now.zero = zeroLine(table, English::uk);
  const SetupWords words = setupWords(part, table);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const TableRow& row = table.rows[i];
    std::string made = words.rows[i].size;
    const std::string steps = stepsWords(row, table.step.unit);
    if (!steps.empty()) made += (made.empty() ? "" : ": ") + steps;
    now.rows.push_back({row.id, signedText(row.x), signedText(row.y), std::move(made)});
  }
  return now;
}

PrintedSheet sheetNow(const LatheWork& work, const Lathe& lathe) {
  PrintedSheet now;
  now.setup = work.setup;
  now.readout = readoutWords(work.step) + (work.halved ? ", half diameters" : "");
  now.zero = heldWords(work, lathe);
  for (const LatheRow& row : work.rows) {
    now.rows.push_back(
        {row.id, row.length.text, row.dia ? row.dia->text : "", latheNote(row, work.step)});
  }
  for (const Cut& cut : work.cuts) {
    now.rows.push_back(
        {cutWords(cut), cut.length ? cut.length->text : "", cut.dia ? cut.dia->text : "", {}});
  }
  return now;
}

SheetEdition editionOf(const Part& part, const PrintedSheet& now) {
  SheetEdition edition;
  const PrintedSheet* was = lastOf(part, now.setup);
  if (!was) return edition;
  edition.before = was->edition;
  edition.when = was->when;
  edition.changes = changesOf(part, now, *was);
  edition.number = was->edition + (edition.changes.empty() ? 0 : 1);
  return edition;
}

std::vector<PrintedNow> printedNow(const Job& job, const Part& part, const Solution& solution) {
  std::vector<PrintedNow> all;
  for (const PrintedSheet& was : part.printed) {
    const Setup* named = part.setup(was.setup);
    if (!named && !part.setups.empty()) continue;
    const Setup setup = named ? *named : defaultSetup(part, solution);
    std::optional<PrintedSheet> now;
    std::string why;
    if (setup.chucked) {
      const Result<LatheWork> work = latheWorkToSuit(job, part, solution, setup);
      if (work) now = sheetNow(*work, latheFor(job, {}));
      if (!work) why = work.error().text;
    } else {
      const Result<SetupTable> table = makeTable(job, part, solution, setup);
      if (table) now = sheetNow(part, *table);
      if (!table) why = table.error().text;
    }
    if (now) {
      all.push_back({was.setup, editionOf(part, *now)});
    } else {
      all.push_back({was.setup, {was.edition + 1, was.edition, was.when, {why}}});
    }
  }
  return all;
}

std::string newEditionWords(const SheetEdition& edition) {
  return "my sheet is edition " + std::to_string(edition.number) + " now: take down edition " +
         std::to_string(edition.before) + (edition.when.empty() ? "" : ", printed " + edition.when);
}

std::string editionName(const SheetEdition& edition, bool isNoted) {
  if (isNoted || (edition.before != 0 && !edition.isNew())) return std::to_string(edition.number);
  return edition.before == 0 ? "none noted" : "after " + std::to_string(edition.before);
}

std::string changedSinceWords(const SheetEdition& edition) {
  return "CHANGED SINCE EDITION " + std::to_string(edition.before) +
         (edition.when.empty() ? "" : ", printed " + edition.when);
}

Part withPrinted(const Part& part, PrintedSheet now, const std::string& when) {
  Part noted = part;
  now.edition = editionOf(part, now).number;
  now.when = when;
  const auto there = std::find_if(noted.printed.begin(), noted.printed.end(),
                                  [&](const PrintedSheet& one) { return one.setup == now.setup; });
  if (there == noted.printed.end()) {
    noted.printed.push_back(std::move(now));
  } else {
    now.extra = there->extra;
    *there = std::move(now);
  }
  return noted;
}

}  // namespace inchwright
