#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/stack_note.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_json.h"
#include "app/words/words.h"
#include "core/part/plain_decimal.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kStackHelp =
    R"(inchwright stack FILE --from A --to B --axis x|y|z [--part P] [--factor F] [--json]

How far the distance from A to B may come out when each reading on the way is anywhere within its
tolerance: at worst, by root sum square, and by that widened.

  --from A, --to B   the two places; the nominal is B's position less A's
  --axis x|y|z       along which of the print's axes
  --part P           the part, where the document has several
  --factor F         by how much to widen the root sum square (1.5)
  --json             one JSON object

  inchwright stack plate.inchwright --from A --to B --axis x

Exit status: 0 fine; 1 printed, and there is something to look at: a member that other readings
contradict at their worst, a clash or a loose feature (see check); 2 the words or the file could not be used.
)";

Json asJson(const Stack& stack, const Step& step) {
  Json entry;
  entry["nominal"] = showAtStep(stack.nominal, step).text;
  entry["nominal_ticks"] = stack.nominal.rounded().value_or(0);
  entry["middle"] = showAtStep(stack.middle, step).text;
  entry["middle_ticks"] = stack.middle.rounded().value_or(0);
  entry["worst"] = spanAt(stack.worst, step);
  entry["worst_ticks"] = ticksOf(stack.worst);
  entry["rss"] = spanAt(stack.rss, step);
  entry["rss_ticks"] = ticksOf(stack.rss);
  entry["inflated"] = spanAt(stack.inflated, step);
  entry["inflated_ticks"] = ticksOf(stack.inflated);
  entry["inflation"] = stack.inflation;
  entry["members"] = Json::array();
  for (const StackMember& member : stack.members) {
    const std::int64_t plus = member.high - member.nominal;
    const std::int64_t minus = member.nominal - member.low;
    entry["members"].push_back(Json{{"reading", member.label},
                                    {"text", member.text},
                                    {"from", member.from},
                                    {"to", member.to},
                                    {"sign", member.sign()},
                                    {"factor", factorText(member.factor)},
                                    {"nominal", atStep(member.nominal, step)},
                                    {"nominal_ticks", member.nominal},
                                    {"plus", atStep(plus, step)},
                                    {"minus", atStep(minus, step)},
                                    {"plus_ticks", plus},
                                    {"minus_ticks", minus},
                                    {"share", member.share},
                                    {"worst_share", member.worstShare}});
  }
  return entry;
}

Result<double> inflationIn(const Arguments& arguments) {
  const auto text = arguments.value("--factor");
  if (!text) return kCustomaryInflation;
  const auto factor = plainDecimal(*text);
  if (!factor || *factor < 1) {
    return Error{ErrorCode::badRequest, "“" + *text + "” is no factor of 1 or more", "--factor"};
  }
  return *factor;
}

Result<Stack> asDrawn(const Part& part, const ToleranceNetwork& network, const std::string& from,
                      const std::string& to, double inflation) {
  Result<std::vector<StackMember>> members = chainBetween(part, network, from, to);
  if (!members) return members.error();
  return stackOf(std::move(members).value(), inflation);
}

// The members of a stack that other readings of the print run beside without assuring them.
Result<std::vector<Unassured>> unassuredMembers(const Part& part, const ToleranceNetwork& network,
                                                const Stack& stack) {
  std::vector<Id> ids;
  for (const StackMember& member : stack.members) ids.push_back(member.label);
  if (ids.empty()) return std::vector<Unassured>{};
  return unassuredReadings(part, network, ids);
}

int runStack(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "stack", error, file);
  };
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           {"--part", true},
                                                           {"--from", true},
                                                           {"--to", true},
                                                           {"--axis", true},
                                                           {"--factor", true}});
  if (!arguments) return stop(arguments.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<const OpenedJob::Solved*> solved = theOnePart(*opened);
  if (!solved) return stop(solved.error());
  const Result<Axis> axis = neededAxis(*arguments);
  if (!axis) return stop(axis.error());
  const Result<std::string> from = needed(*arguments, "--from");
  if (!from) return stop(from.error());
  const Result<std::string> to = needed(*arguments, "--to");
  if (!to) return stop(to.error());
  const Result<double> inflation = inflationIn(*arguments);
  if (!inflation) return stop(inflation.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return stop(step.error(), opened->file);

  const Part& part = opened->part(**solved);
  const Result<ToleranceNetwork> network = toleranceNetworkOf(part, *axis);
  if (!network) return stop(network.error(), opened->file);
  const Result<Stack> drawn = asDrawn(part, *network, *from, *to, *inflation);
  if (!drawn) return stop(drawn.error(), opened->file);
  const Result<std::vector<Unassured>> unassured = unassuredMembers(part, *network, *drawn);
  if (!unassured) return stop(unassured.error(), opened->file);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1},
             {"part", part.name},
             {"axis", nameOf(*axis)},
             {"from", *from},
             {"to", *to}};
    all.update(asJson(*drawn, *step));
    all["unassured"] = unassuredAsJson(*unassured, *step);
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    printStack(*from + " to " + *to + " along " + std::string(nameOf(*axis)), *drawn, *step,
               streams);
    printUnassured(*unassured, *step, streams);
  }
  return !unassured->empty() || hasFindings((*solved)->solution) ? kFindings : kFine;
}

}  // namespace

extern const Word kStackWord{"stack", "how far two places may be off, along the print's chain",
                             kStackHelp, runStack};

}  // namespace inchwright::app
