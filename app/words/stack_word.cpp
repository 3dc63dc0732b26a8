#include <limits>
#include <nlohmann/json.hpp>
#include <ostream>
#include <set>
#include <thread>

#include "app/words/console.h"
#include "app/words/gap_zeros.h"
#include "app/words/job_file.h"
#include "app/words/stack_note.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_json.h"
#include "app/words/words.h"
#include "core/base/ascii.h"
#include "core/base/listed.h"
#include "core/part/plain_decimal.h"
#include "core/plan/budget_from_zero.h"
#include "core/tolerance/placed_stack.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kStackHelp =
    R"(inchwright stack FILE --from A --to B --axis x|y|z|centres [options]
inchwright stack FILE --gap NAME [options]

How far the distance from A to B, or a gap between parts, may come out when each reading on the
way is anywhere within its tolerance: at worst, by root sum square, and by that widened,
though to no more than the worst case.

  --from A, --to B   the two places; the nominal is B's position less A's
  --axis x|y|z       along which of the print's axes; `centres` straight from A to B, as wheels
                     stand
  --part P           the part, where the document has several
  --gap NAME         instead of these: a gap of the document, with its limits
  --from-zero S      beside it, the same as made from the zero of setup S: two coordinates,
                     each held to its budget, or where nothing limits it to the machine's
                     accuracy; for a gap, setup S of each part that it measures in, or
                     PART=S,PART=S for some of them, the rest as drawn
  --held X           with --from-zero: each coordinate is held to ±X
  --least X          what it has to be at least, and
  --greatest X       at most (else the gap's own limits)
  --factor F         by how much to widen the root sum square (1.5)
  --runs N           put so many together at random and count
  --seed N           another seed gives other random ones (1)
  --spread normal|rectangular|triangular
                     how each reading spreads within its tolerance; normal takes that for three
                     standard deviations either way
  --no-shop          takes no notice of the tools (pins) kept for all jobs
  --json             one JSON object

  inchwright stack plate.inchwright --from A --to B --axis x --from-zero 1

Exit status: 0 fine; 1 printed, and there is something to look at: the worst case goes beyond
the limits, a clash or a loose feature (see check); 2 the words or the file could not be used.
)";

// A stack under the name it is shown by, with what it came to at random.
struct NamedStack {
  std::string title;
  GapStack sum;
  std::optional<Simulation> simulation;
};

// All that a call asked for and what came of it.
struct StackAnswer {
  Json about;  // the keys that say what was stacked
  std::string title;
  NamedStack drawn;
  std::optional<NamedStack> made;                           // from a setup's zero
  std::vector<std::pair<std::string, std::string>> setups;  // part and setup of that zero
  const Part* part = nullptr;                               // what is stacked within; of no gap
  UnassuredReadings unassured;
  bool findings = false;
};

Result<double> inflationIn(const Arguments& arguments) {
  const auto text = arguments.value("--factor");
  if (!text) return kCustomaryInflation;
  const auto factor = plainDecimal(*text);
  if (!factor || *factor < 1) {
    return Error{ErrorCode::badRequest, "“" + *text + "” is no factor of 1 or more", "--factor"};
  }
  return *factor;
}

Result<std::uint64_t> countIn(const Arguments& arguments, std::string_view option,
                              std::uint64_t otherwise) {
  const auto text = arguments.value(option);
  if (!text) return otherwise;
  std::uint64_t count = 0;
  bool good = !text->empty() && text->size() <= 18;
  for (const char c : *text) {
    good = good && isDigit(c);
    if (good) count = count * 10 + static_cast<std::uint64_t>(c - '0');
  }
  if (good) return count;
  return Error{ErrorCode::badRequest, "“" + *text + "” is no whole number of at most 18 figures",
               std::string(option)};
}

// What to draw at random; empty when nothing was asked for.
Result<std::optional<SimulationOptions>> simulationIn(const Arguments& arguments) {
  if (!arguments.has("--runs")) {
    for (const char* option : {"--seed", "--spread"}) {
      if (!arguments.has(option)) continue;
      return Error{ErrorCode::badRequest, "this goes with --runs", option};
    }
    return std::optional<SimulationOptions>();
  }
  SimulationOptions options;
  const Result<std::uint64_t> runs = countIn(arguments, "--runs", options.runs);
  if (!runs) return runs.error();
  if (*runs == 0 || *runs > kMostRuns) {
    return Error{ErrorCode::badRequest, "from 1 to 1000000000 runs can be made", "--runs"};
  }
  const Result<std::uint64_t> seed = countIn(arguments, "--seed", options.seed);
  if (!seed) return seed.error();
  options.runs = *runs;
  options.seed = *seed;
  options.threads = std::max(1U, std::thread::hardware_concurrency());
  if (const auto name = arguments.value("--spread")) {
    const auto spread = spreadNamed(*name);
    if (!spread) {
      return Error{ErrorCode::badRequest,
                   "“" + *name + "” is no spread; say normal, rectangular or triangular",
                   "--spread"};
    }
    options.spread = *spread;
  }
  return std::optional<SimulationOptions>(options);
}

// Limits from the command line go before those of the document.
Result<Done> setLimits(const Arguments& arguments, Unit unit, GapStack& sum) {
  const Result<std::optional<Length>> least = lengthOption(arguments, "--least", unit);
  if (!least) return least.error();
  const Result<std::optional<Length>> greatest = lengthOption(arguments, "--greatest", unit);
  if (!greatest) return greatest.error();
  if (*least) sum.least = *least;
  if (*greatest) sum.greatest = *greatest;
  if (sum.least && sum.greatest && *sum.greatest < *sum.least) {
    return Error{ErrorCode::badRequest, "the greatest is less than the least",
                 *greatest ? "--greatest" : "--least"};
  }
  return Done{};
}

// Nothing lies outside of a limit that is not there.
Result<Done> simulateInto(NamedStack& stack, const std::optional<SimulationOptions>& asked) {
  if (!asked) return Done{};
  SimulationOptions options = *asked;
  const GapStack& sum = stack.sum;
  if (sum.least || sum.greatest) {
    options.required = sum.stack.worst;
    if (sum.least) options.required->low = sum.least->ticks();
    if (sum.greatest) options.required->high = sum.greatest->ticks();
  }
  const Result<Simulation> simulation = simulate(sum.stack, options);
  if (!simulation) return simulation.error();
  stack.simulation = *simulation;
  return Done{};
}

Result<std::optional<Length>> heldIn(const Arguments& arguments, Unit unit) {
  const Result<std::optional<Length>> held = lengthOption(arguments, "--held", unit);
  if (!held || !*held || arguments.has("--from-zero")) return held;
  return Error{ErrorCode::badRequest, "this goes with --from-zero", "--held"};
}

Result<StackAnswer> gapAnswer(const Arguments& arguments, const OpenedJob& opened,
                              double inflation) {
  for (const char* option : {"--from", "--to", "--axis", "--part"}) {
    if (!arguments.has(option)) continue;
    return Error{ErrorCode::badRequest, "a gap says for itself what it runs through", option};
  }
  const std::string name = *arguments.value("--gap");
  const Gap* gap = opened.job.gap(name);
  if (!gap) {
    std::vector<std::string> names;
    for (const Gap& one : opened.job.gaps) names.push_back(one.name);
    return Error{ErrorCode::notFound,
                 "there is no gap “" + name + "” here" +
                     (names.empty() ? "" : "; there is " + listed(names)),
                 "--gap"};
  }
  const auto inDocument = [&](Error error) {
    error.place = "/gaps/" + std::to_string(gap - opened.job.gaps.data()) + error.place;
    return error;
  };
  const Result<GapStack> sum = gapStack(opened.job, *gap, inflation);
  if (!sum) return inDocument(sum.error());
  StackAnswer answer;
  answer.about = Json{{"gap", name}};
  answer.title = "Gap " + name;
  answer.drawn = {"as drawn", *sum, std::nullopt};
  std::set<std::string_view> through;
  for (const StackMember& member : sum->stack.members) through.insert(member.part);
  for (const OpenedJob::Solved& one : opened.solved) {
    const bool runs = through.count(opened.part(one).name) > 0;
    answer.findings = answer.findings || (runs && hasFindings(one.solution));
  }
  const Result<std::optional<Length>> held = heldIn(arguments, opened.job.unit);
  if (!held) return held.error();
  const auto named = arguments.value("--from-zero");
  if (!named) return answer;
  const Result<std::vector<MadePart>> zeros = gapZeros(*named, opened, *gap);
  if (!zeros) return zeros.error();
  const Result<GapStack> made = gapStackFromZeros(opened.job, *gap, *zeros, *held, inflation);
  if (!made) return inDocument(made.error());
  for (const MadePart& one : *zeros) answer.setups.emplace_back(one.part, one.setup.name);
  answer.made = NamedStack{titleOf(*zeros, *gap), *made, std::nullopt};
  return answer;
}

// Adds the stack as made from the zero of the setup that `--from-zero` names.
Result<Done> addMade(const Arguments& arguments, const OpenedJob& opened,
                     const OpenedJob::Solved& solved, std::optional<Axis> axis,
                     const std::string& from, const std::string& to, StackAnswer& answer) {
  const Part& part = opened.part(solved);
  const Result<std::optional<Length>> held = heldIn(arguments, opened.job.unit);
  if (!held) return held.error();
  if (!arguments.has("--from-zero")) return Done{};
  const Result<Setup> setup =
      theSetup(arguments.value("--from-zero"), "--from-zero", part, solved.solution);
  if (!setup) return setup.error();
  Result<Stack> stack = stackFromZero({part, solved.solution, *setup, opened.job.machine}, axis,
                                      from, to, *held, answer.drawn.sum.stack.inflation);
  if (!stack) return stack.error();
  answer.setups.emplace_back(part.name, setup->name);
  answer.made = NamedStack{"from zero of " + setup->name, {}, std::nullopt};
  answer.made->sum.stack = std::move(stack).value();
  return Done{};
}

Result<StackAnswer> partAnswer(const Arguments& arguments, const OpenedJob& opened,
                               double inflation) {
  const Result<const OpenedJob::Solved*> solved = theOnePart(opened);
  if (!solved) return solved.error();
  const Result<std::optional<Axis>> axis = axisOrCentres(arguments);
  if (!axis) return axis.error();
  const Result<std::string> from = needed(arguments, "--from");
  if (!from) return from.error();
  const Result<std::string> to = needed(arguments, "--to");
  if (!to) return to.error();
  const Part& part = opened.part(**solved);
  Result<Stack> stack = drawnStack(part, *axis, *from, *to, inflation);
  if (!stack) return stack.error();
  std::vector<Id> ids;
  for (const StackMember& member : stack->members) {
    if (const Id* reading = member.reading()) ids.push_back(*reading);
  }
  StackAnswer answer;
  const std::string named = *axis ? std::string(nameOf(**axis)) : std::string(kCentres);
  answer.about = Json{{"part", part.name}, {"axis", named}, {"from", *from}, {"to", *to}};
  answer.title = *from + " to " + *to + (*axis ? " along " + named : ", straight");
  answer.drawn.title = "as drawn";
  answer.drawn.sum.stack = std::move(stack).value();
  answer.findings = hasFindings((*solved)->solution);
  if (*axis && !ids.empty()) {
    const Result<ToleranceNetwork> network = toleranceNetworkOf(part, **axis);
    if (!network) return network.error();
    Result<UnassuredReadings> unassured = unassuredReadings(part, *network, ids);
    if (!unassured) return unassured.error();
    answer.part = &part;
    answer.unassured = std::move(unassured).value();
  }
  const Result<Done> made = addMade(arguments, opened, **solved, *axis, *from, *to, answer);
  if (!made) return made.error();
  return answer;
}

Result<StackAnswer> stackAnswer(const Arguments& arguments, const OpenedJob& opened) {
  const Result<double> inflation = inflationIn(arguments);
  if (!inflation) return inflation.error();
  const Result<std::optional<SimulationOptions>> asked = simulationIn(arguments);
  if (!asked) return asked.error();
  Result<StackAnswer> found = arguments.has("--gap") ? gapAnswer(arguments, opened, *inflation)
                                                     : partAnswer(arguments, opened, *inflation);
  if (!found) return found.error();
  StackAnswer answer = std::move(found).value();
  for (NamedStack* stack : {&answer.drawn, answer.made ? &*answer.made : nullptr}) {
    if (!stack) continue;
    const Result<Done> limited = setLimits(arguments, opened.job.unit, stack->sum);
    if (!limited) return limited.error();
    const Result<Done> simulated = simulateInto(*stack, *asked);
    if (!simulated) return simulated.error();
    answer.findings = answer.findings || !stack->sum.keeps(stack->sum.stack.worst);
  }
  return answer;
}

Json asJson(const NamedStack& stack, const Step& step) {
  Json entry = stackAsJson(stack.sum.stack, step);
  entry.update(limitsAsJson(stack.sum, step));
  if (stack.simulation) entry["simulation"] = simulationAsJson(*stack.simulation, step);
  return entry;
}

void printJson(const StackAnswer& answer, const Step& step, const Streams& streams) {
  Json all{{"inchwright", 1}};
  all.update(answer.about);
  all.update(asJson(answer.drawn, step));
  all["unassured"] = Json::array();
  if (answer.part) all["unassured"] = unassuredAsJson(*answer.part, answer.unassured.found, step);
  if (answer.made) {
    Json made{{"setup", nullptr}};
    if (!answer.setups.empty()) made["setup"] = answer.setups.front().second;
    for (const auto& [part, setup] : answer.setups) made["setups"][part] = setup;
    made.update(asJson(*answer.made, step));
    all["from_zero"] = std::move(made);
  }
  streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

void printText(const StackAnswer& answer, const Step& step, const Streams& streams) {
  printMembers(answer.title, answer.drawn.sum.stack, step, streams);
  std::vector<std::pair<std::string, const GapStack*>> stacks{
      {answer.drawn.title, &answer.drawn.sum}};
  if (answer.made) {
    printMembers(answer.title + ", " + answer.made->title, answer.made->sum.stack, step, streams);
    stacks.emplace_back(oneLine(answer.made->title), &answer.made->sum);
  }
  printOutcome(stacks, step, streams);
  if (answer.part) printUnassured(*answer.part, answer.unassured, step, streams);
  for (const NamedStack* stack : {&answer.drawn, answer.made ? &*answer.made : nullptr}) {
    if (!stack || !stack->simulation) continue;
    printSimulation(answer.title + ", " + stack->title, *stack->simulation, stack->sum, step,
                    streams);
  }
}

int runStack(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           kNoShop,
                                                           {"--part", true},
                                                           {"--from", true},
                                                           {"--to", true},
                                                           {"--axis", true},
                                                           {"--gap", true},
                                                           {"--from-zero", true},
                                                           {"--held", true},
                                                           {"--least", true},
                                                           {"--greatest", true},
                                                           {"--factor", true},
                                                           {"--runs", true},
                                                           {"--seed", true},
                                                           {"--spread", true}});
  if (!arguments) return refuse(streams, "stack", arguments.error());
  const Result<OpenedJob> opened = openJobInShop(*arguments);
  if (!opened) return refuse(streams, "stack", opened.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return refuse(streams, "stack", step.error(), opened->file);
  const Result<StackAnswer> answer = stackAnswer(*arguments, *opened);
  if (!answer) {
    const bool option = answer.error().place.starts_with("--");
    return refuse(streams, "stack", answer.error(), option ? "" : opened->file);
  }
  if (arguments->has("--json")) {
    printJson(*answer, *step, streams);
  } else {
    printText(*answer, *step, streams);
    if (answer->findings) sayDrafts(*opened, streams);
    sayWhosePins(*opened, streams);
  }
  return answer->findings ? kFindings : kFine;
}

}  // namespace

extern const Word kStackWord{"stack", "how far two places or a gap may be off, and why", kStackHelp,
                             runStack};

}  // namespace inchwright::app
