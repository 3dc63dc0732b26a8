#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_note.h"
#include "app/words/words.h"
#include "core/plan/budget_from_zero.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kBudgetHelp =
    R"(inchwright budget FILE [--part P] [--setup S] [--json]

How closely each coordinate has to be worked to from a setup's zero, so that every toleranced
reading of the print holds for any part within: the tightest as wide as possible, then the next.
Targets run along the part's own axes from this zero. Readings that the machine can't guarantee
this way (see accuracy and finder_error of the machine) are named, to be checked directly.

  --part P    the part, where the document has several
  --setup S   the setup, where the part has several
  --json      one JSON object

Exit status: 0 fine; 1 printed, and there is something to look at: a reading that is not
guaranteed, a clash or a loose feature (see check); 2 the words or the file could not be used.
)";

struct SetupBudget {
  std::vector<std::pair<Axis, Budget>> axes;
  std::vector<Source> notGuaranteed;
};

Result<SetupBudget> budgetFor(const Part& part, const Solution& solution, const Setup& setup,
                              const Machine& machine) {
  SetupBudget all;
  for (const Axis axis : axesIn(setup.face)) {
    Result<Budget> budget = budgetAlong({part, solution, setup, machine}, axis);
    if (!budget) return budget.error();
    for (const Source& one : budget->notGuaranteed) {
      // What holds along both axes is told once.
      auto& told = all.notGuaranteed;
      if (std::find(told.begin(), told.end(), one) == told.end()) told.push_back(one);
    }
    all.axes.emplace_back(axis, std::move(budget).value());
  }
  return all;
}

// A budget at the step is rounded down: what is shown must be safe to use up.
std::string inwards(std::int64_t ticks, const Step& step) {
  return atStep(ticks / step.size.ticks() * step.size.ticks(), step);
}

std::int64_t leftOf(const PlaceBudget& one, const Step& step) {
  const Shown dialled = showAtStep(Rational(one.target), step);
  return leftAfterRounding(*one.plusMinus, one.target, dialled.value.ticks());
}

Json asJson(const Part& part, Axis axis, const PlaceBudget& one, const Step& step) {
  Json entry{{"id", one.id}, {"axis", nameOf(axis)}, {"target", atStep(one.target, step)}};
  entry["plus_minus"] = nullptr;
  entry["target_ticks"] = one.target;
  entry["plus_minus_ticks"] = nullptr;
  entry["printed_ticks"] = one.printed;
  entry["left_after_rounding_ticks"] = nullptr;
  if (one.plusMinus) {
    entry["plus_minus"] = inwards(*one.plusMinus, step);
    entry["plus_minus_ticks"] = *one.plusMinus;
    entry["left_after_rounding_ticks"] = one.isZero ? 0 : leftOf(one, step);
  }
  entry["held_by"] = labelsOf(part, one.heldBy);
  return entry;
}

void print(const Part& part, const Setup& setup, const SetupBudget& all, const Step& step,
           const Streams& streams) {
  streams.out << toned(streams, Tone::heading,
                       oneLine(part.name + ", setup " + setup.name + ": work to"))
              << '\n';
  std::vector<std::vector<std::string>> rows{
      {"place", "axis", "target", "within", "left once dialled", "held by"}};
  for (const auto& [axis, budget] : all.axes) {
    for (const PlaceBudget& one : budget.places) {
      const bool open = !one.plusMinus;
      rows.push_back({oneLine(one.id), std::string(nameOf(axis)), withSign(one.target, step),
                      one.isZero ? "zero"
                      : open     ? "no reading limits it"
                                 : "±" + inwards(*one.plusMinus, step),
                      open || one.isZero ? "" : "±" + inwards(leftOf(one, step), step),
                      oneLine(listed(labelsOf(part, one.heldBy)))});
    }
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line : alignedRows(rows, {left, left, right, left, left, left})) {
    streams.out << "  " << line << '\n';
  }
  for (const Source& source : all.notGuaranteed) {
    streams.out << "  "
                << toned(streams, Tone::doubt,
                         oneLine(sourceWords(part, source) +
                                 " is not guaranteed this way: check it directly"))
                << '\n';
  }
}

int runBudget(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "budget", error, file);
  };
  const Result<Arguments> arguments =
      sortArguments(args, {{"--json"}, {"--part", true}, {"--setup", true}});
  if (!arguments) return stop(arguments.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<const OpenedJob::Solved*> solved = theOnePart(*opened);
  if (!solved) return stop(solved.error());
  const Part& part = opened->part(**solved);
  const Solution& solution = (*solved)->solution;
  const Result<Setup> setup = theSetup(arguments->value("--setup"), "--setup", part, solution);
  if (!setup) return stop(setup.error());
  const Machine& machine = opened->job.machine;
  const Result<Step> step = readStep(machine.step, machine.unit);
  if (!step) return stop(step.error(), opened->file);
  const Result<SetupBudget> all = budgetFor(part, solution, *setup, machine);
  if (!all) return stop(all.error(), opened->file);

  if (arguments->has("--json")) {
    Json whole{{"inchwright", 1}, {"part", part.name}, {"setup", setup->name}};
    whole["budget"] = Json::array();
    for (const auto& [axis, budget] : all->axes) {
      for (const PlaceBudget& one : budget.places) {
        whole["budget"].push_back(asJson(part, axis, one, *step));
      }
    }
    whole["not_guaranteed"] = labelsOf(part, all->notGuaranteed);
    streams.out << whole.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    print(part, *setup, *all, *step, streams);
    sayDrafts(*opened, streams);
  }
  return !all->notGuaranteed.empty() || hasFindings(solution) ? kFindings : kFine;
}

}  // namespace

extern const Word kBudgetWord{"budget", "how closely to work to each coordinate from a zero",
                              kBudgetHelp, runBudget};

}  // namespace inchwright::app
