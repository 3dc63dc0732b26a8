#include "app/words/sheet_pages.h"

#include <algorithm>
#include <array>

#include "core/kit/solved_kit.h"
#include "core/say/kit_words.h"
#include "core/say/part_warnings.h"
#include "core/sheet/job_pages.h"
#include "core/sheet/lathe_sheet.h"
#include "core/sheet/tablet_page.h"

namespace inchwright::app {
namespace {

constexpr std::array<std::string_view, 7> kNames{"setup",  "cover",     "stock",     "tools",
                                                 "layout", "first_off", "difference"};

Result<JobOnPaper> jobOnPaper(const OpenedJob& opened, const std::vector<PlannedSetup>& planned,
                              const std::vector<SheetOptions>& options) {
  JobOnPaper paper{opened.job, {}, options.front()};
  for (std::size_t i = 0; i < opened.solved.size(); ++i) {
    const Part& part = opened.part(opened.solved[i]);
    const Solution& solution = opened.solved[i].solution;
    PartInJob in{part, solution, {}, {}};
    for (std::size_t k = 0; k < planned.size(); ++k) {
      if (planned[k].solved != i) continue;
      if (planned[k].lathe) {
        in.onLathe.push_back(planned[k].setup.name);
        continue;
      }
      Result<SetupInJob> setup =
          setupInJob(opened.job, part, solution, planned[k].setup, planned[k].table, options[k]);
      if (!setup) return setup.error();
      in.setups.push_back(*std::move(setup));
    }
    paper.parts.push_back(std::move(in));
  }
  return paper;
}

std::vector<Page> setupSheets(const OpenedJob& opened, const std::vector<PlannedSetup>& planned,
                              const std::vector<SheetOptions>& options) {
  std::vector<Page> pages;
  for (std::size_t i = 0; i < planned.size(); ++i) {
    const OpenedJob::Solved& solved = opened.solved[planned[i].solved];
    const Part& part = opened.part(solved);
    const std::vector<Page> more =
        planned[i].lathe
            ? latheSheet(opened.job, part, solved.solution, *planned[i].lathe,
                         latheFor(opened.job, planned[i].options), options[i])
            : tapeUpSheet(opened.job, part, solved.solution, planned[i].table, options[i]);
    pages.insert(pages.end(), more.begin(), more.end());
  }
  return pages;
}

Result<std::vector<Page>> pagesOf(PageKind kind, const JobOnPaper& paper) {
  switch (kind) {
    case PageKind::cover:
      return coverPages(paper);
    case PageKind::stock:
      return stockPages(paper);
    case PageKind::tools:
      return toolPages(paper);
    case PageKind::layout:
      return layoutPages(paper);
    case PageKind::difference:
      return differencePages(paper);
    default:
      return firstOffPages(paper);
  }
}

}  // namespace

Result<std::vector<PageKind>> pageKindsNamed(std::string_view text) {
  std::vector<PageKind> kinds;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(',', at), text.size());
    const std::string_view name = text.substr(at, end - at);
    const auto found = std::find(kNames.begin(), kNames.end(), name);
    if (found == kNames.end()) {
      return Error{ErrorCode::badRequest,
                   "“" + std::string(name) +
                       "” are no pages; say setup, cover, stock, tools, layout, first_off or "
                       "difference, with commas between",
                   "--pages"};
    }
    const auto kind = static_cast<PageKind>(found - kNames.begin());
    if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) kinds.push_back(kind);
    at = end + 1;
  }
  return kinds;
}

Result<std::vector<Page>> pagesOf(const std::vector<PageKind>& kinds, const OpenedJob& opened,
                                  const std::vector<PlannedSetup>& planned,
                                  const std::vector<SheetOptions>& options) {
  const bool more = std::any_of(kinds.begin(), kinds.end(),
                                [](PageKind kind) { return kind != PageKind::setup; });
  std::optional<JobOnPaper> paper;
  if (more) {
    Result<JobOnPaper> made = jobOnPaper(opened, planned, options);
    if (!made) return made.error();
    paper.emplace(*std::move(made));
  }
  std::vector<Page> pages;
  for (const PageKind kind : kinds) {
    const Result<std::vector<Page>> some =
        kind == PageKind::setup ? setupSheets(opened, planned, options) : pagesOf(kind, *paper);
    if (!some) return some.error();
    pages.insert(pages.end(), some->begin(), some->end());
  }
  return pages;
}

Result<std::vector<SheetOptions>> optionsOf(const OpenedJob& opened,
                                            const std::vector<PlannedSetup>& planned,
                                            const SheetOptions& common, bool closeness) {
  SolvedKit kit(opened.job);
  for (const OpenedJob::Solved& one : opened.solved) kit.give(one.part, one.solution);
  std::vector<SheetOptions> all;
  for (const PlannedSetup& one : planned) {
    const OpenedJob::Solved& solved = opened.solved[one.solved];
    SheetOptions options = common;
    if (!one.lathe) {
      const Result<WorkAt> work =
          workAt(opened.job, opened.part(solved), solved.solution, one.setup, one.options);
      if (!work) return work.error();
      auto close = closenessOnSheet(*work, one.table, closeness);
      if (!close) return close.error();
      options.closeness = std::move(close).value();
    }
    options.warnings =
        partWarnings(opened.job, solved.part, kit.likeOthers(solved.part), one.step());
    all.push_back(std::move(options));
  }
  return all;
}

std::string tabletOf(const OpenedJob& opened, const std::vector<PlannedSetup>& planned,
                     const std::vector<SheetOptions>& options) {
  const ToolsOwned tools(opened.job.shop);
  std::vector<TabletSetup> setups;
  for (std::size_t i = 0; i < planned.size(); ++i) {
    const PlannedSetup& one = planned[i];
    const OpenedJob::Solved& solved = opened.solved[one.solved];
    const Part& part = opened.part(solved);
    const bool draft = solved.solution.isDraft();
    const English english = options[i].english;
    TabletNotes notes{options[i].warnings, {}};
    std::string lost = notCarriedOver(opened.job, part, one.setup.name);
    if (!lost.empty()) notes.warnings.push_back(std::move(lost));
    if (const Result<KitOfPart> kit = kitOfPart(opened.job, part, solved.solution)) {
      notes.kit = kitLines(*kit, one.step());
    }
    if (one.lathe) {
      const Lathe lathe = latheFor(opened.job, one.options);
      setups.push_back(tabletSetup(*one.lathe, lathe, draft, english, notes));
      continue;
    }
    const CheckedSetup checked = planAndCheck(opened.job, part, solved.solution, one.setup, tools);
    setups.push_back(tabletSetup(part, one.table, checked, draft, english, notes));
  }
  return tabletPage(opened.job.title, opened.job.print, options.front().date, setups);
}

}  // namespace inchwright::app
