#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_note.h"
#include "app/words/words.h"
#include "core/tolerance/adjust.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kAdjustHelp =
    R"(inchwright adjust FILE --axis x|y|z [--from A] [--part P] [--json]

A compromise by weighted least squares, for a worn sample or a measured casting whose figures do
not agree: each reading weighs by its tolerance, taken as three standard deviations. It averages
misses away; for a print that should close, use check.

  --axis x|y|z   along which of the print's axes
  --from A       the place that is held at 0; else the first by name
  --part P       the part, where the document has several
  --json         one JSON object

Exit status: 0 fine; 1 printed, and a reading stands out as a likely blunder; 2 the words or the
file could not be used.
)";

std::int64_t tick(double value) {
  return std::llround(value);
}

struct Adjusted {
  ToleranceNetwork network;
  std::vector<Observation> observed;
  Adjustment result;
};

// Holds one place and adjusts all that is joined to it.
Result<Adjusted> adjustAxis(const Part& part, Axis axis, const std::optional<std::string>& from) {
  Result<ToleranceNetwork> network = toleranceNetworkOf(part, axis);
  if (!network) return network.error();
  std::vector<Observation> observed = observationsOf(part, *network);
  if (observed.empty()) {
    return Error{ErrorCode::unsolvable, "no reading stands along this axis", ""};
  }
  std::uint32_t held = observed.front().from;
  for (const Observation& one : observed) held = std::min({held, one.from, one.to});
  if (from) {
    const Result<std::uint32_t> node = nodeAlong(part, *network, *from);
    if (!node) return node.error();
    held = *node;
  }
  const auto nodes = static_cast<std::uint32_t>(network->places.size());
  Result<Adjustment> result = adjustDifferences(nodes, observed, {{held, 0.0}});
  if (!result) return result.error();
  return Adjusted{std::move(network).value(), std::move(observed), std::move(result).value()};
}

Json asJson(const Adjusted& adjusted, const Step& step) {
  const Adjustment& result = adjusted.result;
  Json entry;
  entry["adjusted"] = Json::array();
  for (const Adjustment::Place& place : result.places) {
    entry["adjusted"].push_back(Json{{"id", adjusted.network.places[place.node]},
                                     {"value", atStep(tick(place.value), step)},
                                     {"sd", atStep(tick(place.deviation), step)},
                                     {"value_ticks", tick(place.value)},
                                     {"sd_ticks", tick(place.deviation)}});
  }
  entry["residuals"] = Json::array();
  for (std::size_t i = 0; i < result.residuals.size(); ++i) {
    entry["residuals"].push_back(Json{{"reading", adjusted.observed[i].label},
                                      {"value", atStep(tick(result.residuals[i].value), step)},
                                      {"value_ticks", tick(result.residuals[i].value)},
                                      {"normalised", result.residuals[i].normalised}});
  }
  entry["s0"] = result.s0;
  entry["freedom"] = result.freedom;
  entry["chance"] = nullptr;
  if (result.chance) entry["chance"] = *result.chance;
  entry["blunder"] = nullptr;
  if (result.blunder) entry["blunder"] = adjusted.observed[*result.blunder].label;
  return entry;
}

void print(const Adjusted& adjusted, const Step& step, const Streams& streams) {
  const Adjustment& result = adjusted.result;
  std::vector<std::vector<std::string>> places{{"place", "adjusted", "sd"}};
  for (const Adjustment::Place& place : result.places) {
    places.push_back({oneLine(adjusted.network.places[place.node]), atStep(tick(place.value), step),
                      atStep(tick(place.deviation), step)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line : alignedRows(places, {left, right, right})) {
    streams.out << "  " << line << '\n';
  }
  std::vector<std::vector<std::string>> readings{{"reading", "left over"}};
  for (std::size_t i = 0; i < result.residuals.size(); ++i) {
    readings.push_back(
        {oneLine(adjusted.observed[i].label), withSign(tick(result.residuals[i].value), step)});
  }
  for (const std::string& line : alignedRows(readings, {left, right})) {
    streams.out << "  " << line << '\n';
  }
  streams.out << "  s0 " << result.s0 << " with " << result.freedom << " to spare";
  if (result.chance)
    streams.out << "; by chance it would be greater in " << *result.chance * 100 << " %";
  streams.out << '\n';
  if (result.blunder) {
    streams.out << "  "
                << toned(streams, Tone::doubt,
                         oneLine(adjusted.observed[*result.blunder].label +
                                 " stands out: likely a blunder, look at it again"))
                << '\n';
  }
}

int runAdjust(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "adjust", error, file);
  };
  const Result<Arguments> arguments =
      sortArguments(args, {{"--json"}, {"--part", true}, {"--axis", true}, {"--from", true}});
  if (!arguments) return stop(arguments.error());
  const Result<Axis> axis = neededAxis(*arguments);
  if (!axis) return stop(axis.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<const OpenedJob::Solved*> solved = theOnePart(*opened);
  if (!solved) return stop(solved.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return stop(step.error(), opened->file);
  const Part& part = opened->part(**solved);
  const Result<Adjusted> adjusted = adjustAxis(part, *axis, arguments->value("--from"));
  if (!adjusted) return stop(adjusted.error(), opened->file);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"part", part.name}, {"axis", nameOf(*axis)}};
    all.update(asJson(*adjusted, *step));
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    streams.out << toned(streams, Tone::heading,
                         oneLine(part.name + ", adjusted along " + std::string(nameOf(*axis))))
                << '\n';
    print(*adjusted, *step, streams);
  }
  return adjusted->result.blunder ? kFindings : kFine;
}

}  // namespace

extern const Word kAdjustWord{"adjust", "a compromise by least squares where figures do not agree",
                              kAdjustHelp, runAdjust};

}  // namespace inchwright::app
