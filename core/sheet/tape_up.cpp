#include "core/sheet/tape_up.h"

#include <utility>

#include "core/sheet/content.h"

namespace inchwright {
namespace {

/// The English of the sheet in what the other rooms worded. Names and notes are the user's.
class Rewording {
 public:
  Rewording(const Part& part, English english) : part_(part), english_(english) {}

  SetupTable of(SetupTable table) const {
    put(table.zero);
    for (TableRow& row : table.rows) {
      put(row.size);
      put(row.note);
      for (MakingStep& step : row.steps) put(step.tool);
    }
    for (Loose& loose : table.unplaced) put(loose.advice);
    for (TouchOff& touch : table.touchOff) {
      put(touch.what);
      for (std::string& step : touch.steps) put(step);
    }
    for (CheckPlace& check : table.checks) put(check.look);
    for (std::string& warning : table.warnings) put(warning);
    return table;
  }

  Solution of(Solution solution) const {
    for (Doubt& doubt : solution.doubts) put(doubt.text);
    return solution;
  }

 private:
  void put(std::string& text) const {
    text = inEnglish(text, english_,
                     [this](std::string_view word) { return part_.feature(word) != nullptr; });
  }

  const Part& part_;
  English english_;
};

Result<PartPicture> pictured(const Job& job, const Part& part, const Solution& solution,
                             const SetupTable& table) {
  const Setup* named = part.setup(table.setup);
  return pictureOf(part, solution, named ? *named : defaultSetup(part, solution), job.machine);
}

}  // namespace

struct TapeUpSheet::State {
  State(const Job& job, const Part& part, const Solution& solution, const SetupTable& table,
        const SheetOptions& given)
      : options(given), picture(pictured(job, part, solution, table)) {
    if (options.english != English::uk) {
      const Rewording rewording(part, options.english);
      said = rewording.of(solution);
      worded = rewording.of(table);
    }
    composition.emplace(SheetContent{job, part, said ? *said : solution, worded ? *worded : table,
                                     picture.ok() ? &picture.value() : nullptr, options});
    drawn.resize(composition->pageCount());
  }

  SheetOptions options;
  Result<PartPicture> picture;
  std::optional<Solution> said;
  std::optional<SetupTable> worded;
  std::optional<Composition> composition;
  std::vector<Page> drawn;
};

TapeUpSheet::TapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                         const SetupTable& table, const SheetOptions& options)
    : state_(std::make_unique<State>(job, part, solution, table, options)) {}
TapeUpSheet::~TapeUpSheet() = default;
TapeUpSheet::TapeUpSheet(TapeUpSheet&&) noexcept = default;
TapeUpSheet& TapeUpSheet::operator=(TapeUpSheet&&) noexcept = default;

std::size_t TapeUpSheet::pageCount() const {
  return state_->drawn.size();
}

double TapeUpSheet::width() const {
  return state_->composition->width();
}

double TapeUpSheet::height() const {
  return state_->composition->height();
}

const Page& TapeUpSheet::page(std::size_t index) const {
  Page& page = state_->drawn[index];
  // Every page has a head.
  if (page.items.empty()) page = state_->composition->page(index);
  return page;
}

const std::vector<Page>& TapeUpSheet::pages() const {
  for (std::size_t i = 0; i < pageCount(); ++i) page(i);
  return state_->drawn;
}

std::vector<Page> tapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                              const SetupTable& table, const SheetOptions& options) {
  return TapeUpSheet(job, part, solution, table, options).pages();
}

}  // namespace inchwright
