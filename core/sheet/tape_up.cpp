#include "core/sheet/tape_up.h"

#include <utility>

#include "core/sheet/content.h"

namespace inchwright {
struct TapeUpSheet::State {
  struct Pictured {
    DrawnPart part;
    HeldWork held;
  };

  static std::optional<Pictured> drawnFor(const Job& job, const Part& part,
                                          const Solution& solution, const SetupTable& table) {
    const Setup* named = part.setup(table.setup);
    const Setup setup = named ? *named : defaultSetup(part, solution);
    const Result<WorkAt> work = workAt(job, part, solution, setup);
    if (!work) return std::nullopt;
    return Pictured{drawnPart(*work), heldWork(*work)};
  }

  State(const Job& job, const Part& part, const Solution& solution, const SetupTable& table,
        const SheetOptions& given)
      : options(given), picture(drawnFor(job, part, solution, table)) {
    SheetContent content{job, part, solution, table, nullptr, options};
    if (picture) {
      content.picture = &picture->part;
      content.held = &picture->held;
    }
    composition.emplace(std::move(content));
    drawn.resize(composition->pageCount());
  }

  explicit State(std::vector<Page> pages) : drawn(std::move(pages)) {}

  SheetOptions options;
  std::optional<Pictured> picture;
  std::optional<Composition> composition;
  std::vector<Page> drawn;
};

TapeUpSheet::TapeUpSheet(const Job& job, const Part& part, const Solution& solution,
                         const SetupTable& table, const SheetOptions& options)
    : state_(std::make_unique<State>(job, part, solution, table, options)) {}
TapeUpSheet::TapeUpSheet(std::vector<Page> pages)
    : state_(std::make_unique<State>(std::move(pages))) {}
TapeUpSheet::~TapeUpSheet() = default;
TapeUpSheet::TapeUpSheet(TapeUpSheet&&) noexcept = default;
TapeUpSheet& TapeUpSheet::operator=(TapeUpSheet&&) noexcept = default;

std::string TapeUpSheet::number() const {
  return state_->composition ? state_->composition->number() : std::string();
}

std::size_t TapeUpSheet::pageCount() const {
  return state_->drawn.size();
}

double TapeUpSheet::width() const {
  return state_->composition ? state_->composition->width() : state_->drawn.front().width;
}

double TapeUpSheet::height() const {
  return state_->composition ? state_->composition->height() : state_->drawn.front().height;
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
