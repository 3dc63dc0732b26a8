#include "app/words/job_file.h"

#include <algorithm>
#include <ostream>

#include "app/session/preferences.h"
#include "app/words/console.h"
#include "core/document/document.h"
#include "core/kit/kit_of_part.h"

namespace inchwright::app {
namespace {

Error within(const std::string& place, Error error) {
  error.place = error.place.empty() ? place : place + ": " + error.place;
  return error;
}

Error notAmong(const std::string& kind, const std::string& name,
               const std::vector<std::string>& there) {
  std::string names;
  for (const std::string& one : there) names += (names.empty() ? "" : ", ") + one;
  return {ErrorCode::notFound,
          "there is no " + kind + " “" + name + "” here" +
              (names.empty() ? std::string() : "; there are: " + names),
          "--" + kind};
}

/// The setups of a part that were asked for; none when the one named is not there.
std::vector<Setup> wantedSetups(const std::optional<std::string>& name, const Part& part,
                                const Solution& solution) {
  if (name) {
    const Setup* const setup = part.setup(*name);
    return setup == nullptr ? std::vector<Setup>{} : std::vector<Setup>{*setup};
  }
  if (part.setups.empty()) return {defaultSetup(part, solution)};
  return part.setups;
}

}  // namespace

void sayWhoseTools(const OpenedJob& opened, const Streams& streams) {
  if (opened.ownTools.empty()) return;
  const std::string whose = opened.carriesTools
                                ? "Tools: the document's, else those kept for all jobs in "
                                : "Tools: those kept for all jobs in ";
  streams.out << oneLine(whose + opened.ownTools + " (--no-shop leaves them out)") << '\n';
}

void sayWhosePins(const OpenedJob& opened, const Streams& streams) {
  if (opened.job.shop.pins) sayWhoseTools(opened, streams);
}

void sayDrafts(const OpenedJob& opened, const Streams& streams) {
  for (const OpenedJob::Solved& one : opened.solved) {
    if (!one.solution.isDraft()) continue;
    streams.out << toned(streams, Tone::doubt,
                         "DRAFT: " + oneLine(opened.part(one).name) +
                             " is still in doubt, and these figures with it; `inchwright check` "
                             "says why")
                << '\n';
  }
}

Result<OpenedJob> openJob(const Arguments& arguments) {
  if (arguments.rest.size() != 1) {
    return Error{
        ErrorCode::badRequest,
        arguments.rest.empty() ? "name the document to work on" : "one document at a time, please",
        {}};
  }
  OpenedJob opened;
  opened.file = arguments.rest.front();
  Result<Job> job = loadDocument(opened.file);
  if (!job) {
    Error error = job.error();
    if (error.place == opened.file) error.place.clear();
    return within(opened.file, error);
  }
  opened.job = std::move(job).value();
  const auto name = arguments.value("--part");
  for (std::size_t i = 0; i < opened.job.parts.size(); ++i) {
    const Part& part = opened.job.parts[i];
    if (name && part.name != *name) continue;
    Result<Solution> solution = solve(part);
    if (!solution) return within(opened.file + ": " + part.name, solution.error());
    opened.solved.push_back({i, std::move(solution).value()});
  }
  if (opened.solved.empty()) {
    if (name) {
      std::vector<std::string> there;
      for (const Part& part : opened.job.parts) there.push_back(part.name);
      return within(opened.file, notAmong("part", *name, there));
    }
    return Error{ErrorCode::notFound, "the document has no part yet", opened.file};
  }
  return opened;
}

Result<OpenedJob> openJobInShop(const Arguments& arguments) {
  Result<OpenedJob> opened = openJob(arguments);
  if (!opened || arguments.has(kNoShop.name)) return opened;
  const Result<Shop> own = Preferences::shop();
  if (!own) {
    return Error{own.error().code, own.error().text + "; --no-shop leaves them out",
                 own.error().place};
  }
  Shop shop = shopFor(opened->job.shop, *own);
  if (shop == opened->job.shop) return opened;
  opened->ownTools = Preferences::file().toStdString();
  opened->carriesTools = !opened->job.shop.saysNothing();
  opened->job.shop = std::move(shop);
  return opened;
}

Result<std::vector<PlannedSetup>> planJob(const Arguments& arguments, const OpenedJob& opened) {
  const Result<std::optional<Unit>> unit = namedUnit(arguments);
  if (!unit) return unit.error();
  const TableOptions options{*unit, arguments.value("--step")};
  const auto name = arguments.value("--setup");
  std::vector<PlannedSetup> planned;
  std::vector<std::string> there;
  for (std::size_t i = 0; i < opened.solved.size(); ++i) {
    const Solution& solution = opened.solved[i].solution;
    const Part& part = opened.part(opened.solved[i]);
    for (const Setup& setup : part.setups) there.push_back(setup.name);
    for (const Setup& setup : wantedSetups(name, part, solution)) {
      if (setup.chucked) {
        Result<LatheWork> work = latheWorkToSuit(opened.job, part, solution, setup, options);
        if (!work) {
          return within(opened.file + ": " + part.name + ": setup " + setup.name, work.error());
        }
        planned.push_back({i, setup, options, {}, std::move(work).value()});
        continue;
      }
      Result<SetupTable> table = makeTable(opened.job, part, solution, setup, options);
      if (!table) {
        return within(opened.file + ": " + part.name + ": setup " + setup.name, table.error());
      }
      planned.push_back({i, setup, options, std::move(table).value(), std::nullopt});
    }
  }
  if (planned.empty()) return within(opened.file, notAmong("setup", *name, there));
  return planned;
}

bool hasFindings(const Solution& solution) {
  return !solution.clashes.empty() || !solution.loose.empty() ||
         std::any_of(solution.doubts.begin(), solution.doubts.end(),
                     [](const Doubt& doubt) { return doubt.isFinding(); });
}

bool hasFindings(const OpenedJob& opened) {
  return std::any_of(opened.solved.begin(), opened.solved.end(),
                     [](const OpenedJob::Solved& one) { return hasFindings(one.solution); });
}

Result<std::optional<Unit>> namedUnit(const Arguments& arguments) {
  const auto unit = arguments.value("--unit");
  if (!unit) return std::optional<Unit>();
  if (*unit == "in") return std::optional(Unit::inch);
  if (*unit == "mm") return std::optional(Unit::millimetre);
  return Error{ErrorCode::badRequest, "“" + *unit + "” is no unit; say in or mm", "--unit"};
}

}  // namespace inchwright::app
