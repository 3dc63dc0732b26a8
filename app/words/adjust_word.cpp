#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/stack_note.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_note.h"
#include "app/words/words.h"
#include "core/part/plain_decimal.h"
#include "core/say/reading_words.h"
#include "core/say/source_words.h"
#include "core/tolerance/adjust.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kAdjustHelp =
    R"(inchwright adjust FILE --axis x|y|z [options]

For a worn sample or a measured casting whose figures do not agree: where each place comes
to when every figure gives way a little, the more the looser it is toleranced, what to measure
again, and what the other figures make it. It spreads misses; for a print that should close,
use check. Basic figures, middles, equal spaces and the shapes of rows and rings stay exact.
Give or take is what holds nineteen times in twenty, a tolerance being three deviations.

  --axis x|y|z   along which of the print's axes
  --from A       the place that figures run from; else the first one held, or the first by name
  --hold A       stays where the print puts it; may be given again for others
  --weight r3=4  reading r3 counts four times; may be given again for others
  --part P       the part, where the document has several
  --json         one JSON object

  inchwright adjust sample.inchwright --axis x --hold A --weight r3=4

Exit status: 0 fine; 1 printed, and a reading is to be measured again; 2 the words or the
file could not be used.
)";

/// By chance alone as bad as this in one of twenty: said to be worse than the tolerances explain.
constexpr double kSeldom = 0.05;

std::int64_t tick(double value) {
  return std::llround(value);
}

Result<std::map<Id, double>> weightsIn(const Arguments& arguments) {
  std::map<Id, double> weights;
  for (const std::string& text : arguments.values("--weight")) {
    const std::size_t equals = text.rfind('=');
    const auto weight =
        equals == std::string::npos ? std::nullopt : plainDecimal(text.substr(equals + 1));
    if (!weight || !(*weight > 0)) {
      return Error{ErrorCode::badRequest, "“" + text + "” is no weight; say one above 0 as r3=4",
                   "--weight"};
    }
    weights[text.substr(0, equals)] = *weight;
  }
  return weights;
}

Result<AdjustRequest> requestIn(const Arguments& arguments, const Solution& solution, Axis axis) {
  AdjustRequest request;
  const std::vector<std::string> held = arguments.values("--hold");
  request.from = arguments.value("--from").value_or(held.empty() ? "" : held.front());
  for (const std::string& id : held) {
    if (id == request.from) continue;
    const auto position = solution.between(request.from, id, axis);
    if (!position) {
      return Error{ErrorCode::unsolvable,
                   "the print does not place " + id + " against " + request.from + " along " +
                       std::string(nameOf(axis)),
                   "--hold"};
    }
    request.held.emplace_back(id, *position);
  }
  Result<std::map<Id, double>> weights = weightsIn(arguments);
  if (!weights) return weights.error();
  request.weights = std::move(weights).value();
  return request;
}

Json asJson(const Part& part, const AdjustedAxis& adjusted, const Step& step) {
  const Adjustment& result = adjusted.result;
  Json entry{{"from", adjusted.from}};
  entry["adjusted"] = Json::array();
  for (const AdjustedAxis::Place& place : adjusted.places) {
    entry["adjusted"].push_back(Json{{"id", place.id},
                                     {"value", atStep(tick(place.value), step)},
                                     {"sd", atStep(tick(place.deviation), step)},
                                     {"value_ticks", tick(place.value)},
                                     {"sd_ticks", tick(place.deviation)}});
  }
  entry["residuals"] = Json::array();
  for (std::size_t i = 0; i < result.residuals.size(); ++i) {
    entry["residuals"].push_back(Json{{"reading", labelOf(part, adjusted.observed[i].source)},
                                      {"value", atStep(tick(result.residuals[i].value), step)},
                                      {"value_ticks", tick(result.residuals[i].value)},
                                      {"normalised", result.residuals[i].normalised}});
  }
  entry["s0"] = result.s0;
  entry["freedom"] = result.freedom;
  entry["chance"] = nullptr;
  if (result.chance) entry["chance"] = *result.chance;
  entry["blunder"] = nullptr;
  if (result.blunder) entry["blunder"] = labelOf(part, adjusted.observed[*result.blunder].source);
  entry["not_joined"] = adjusted.notJoined;
  return entry;
}

void printPlaces(const AdjustedAxis& adjusted, const Step& step, const Streams& streams) {
  std::vector<std::vector<std::string>> rows{{"place", "comes to", "give or take"}};
  for (const AdjustedAxis::Place& place : adjusted.places) {
    rows.push_back({oneLine(place.id), atStep(tick(place.value), step),
                    "±" + atStep(tick(2 * place.deviation), step)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line : alignedRows(rows, {left, right, right})) {
    streams.out << "  " << line << '\n';
  }
}

/// What a reading's two ends come to.
std::optional<double> comesTo(const AdjustedAxis& adjusted, const Reading& reading) {
  const auto at = [&](const Id& id) {
    return std::find_if(adjusted.places.begin(), adjusted.places.end(),
                        [&](const AdjustedAxis::Place& one) { return one.id == id; });
  };
  const auto from = at(reading.from);
  const auto to = at(reading.to);
  if (from == adjusted.places.end() || to == adjusted.places.end()) return std::nullopt;
  return to->value - from->value;
}

void printReadings(const Part& part, const AdjustedAxis& adjusted, const Step& step,
                   const Streams& streams) {
  std::vector<std::vector<std::string>> rows{
      {"reading", "from – to", "lettered", "comes to", "moved by"}};
  for (std::size_t i = 0; i < adjusted.observed.size(); ++i) {
    const Source& source = adjusted.observed[i].source;
    const Reading* reading =
        source.kind == SourceKind::reading ? &part.readings[source.index] : nullptr;
    const auto length = reading ? comesTo(adjusted, *reading) : std::nullopt;
    rows.push_back({oneLine(labelOf(part, source)),
                    reading ? oneLine(reading->from + " to " + reading->to) : "",
                    reading ? oneLine(reading->figure.text) : "",
                    length ? atStep(tick(*length), step) : "",
                    withSign(tick(adjusted.result.residuals[i].value), step)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line : alignedRows(rows, {left, left, right, right, right})) {
    streams.out << "  " << line << '\n';
  }
}

/// The one reading that is off by most for its tolerance; none where others are as bad.
std::optional<std::size_t> worstOf(const Adjustment& result) {
  std::optional<std::size_t> worst;
  double most = 0;
  for (std::size_t i = 0; i < result.residuals.size(); ++i) {
    const double off = std::abs(result.residuals[i].normalised);
    if (off > most * 1.01) worst = i;
    if (off > most * 0.99 && off <= most * 1.01) worst.reset();
    most = std::max(most, off);
  }
  return worst;
}

/// What to do about it.
std::string verdictText(const Part& part, const AdjustedAxis& adjusted) {
  const Adjustment& result = adjusted.result;
  if (result.freedom == 0) return "nothing is read twice over, so each figure stands as lettered";
  const std::string spare =
      std::to_string(result.freedom) +
      (result.freedom == 1 ? " figure more than needed: " : " figures more than needed: ");
  if (*result.chance >= kSeldom) {
    return spare + "they agree as well as their tolerances let one expect; work to these places";
  }
  const auto worst = worstOf(result);
  return spare + "they disagree by more than their tolerances explain; measure again" +
         (worst ? ", first " + sourceWords(part, adjusted.observed[*worst].source)
                : " what was moved");
}

/// The statistics that say so.
std::string statisticsText(const Adjustment& result) {
  const std::int64_t hundredths = std::llround(100 * result.s0);
  const std::string behind = std::to_string(hundredths % 100);
  return "behind it: least squares, s0 " + std::to_string(hundredths / 100) + "." +
         (behind.size() < 2 ? "0" : "") + behind + ", by chance greater in " +
         percentText(*result.chance);
}

/// What the others make a reading; empty where they don't join its ends.
std::optional<double> othersMake(const Part& part, const AdjustedAxis& adjusted, Axis axis,
                                 AdjustRequest request, const Source& source) {
  if (source.kind != SourceKind::reading) return std::nullopt;
  Part without = part;
  without.readings[source.index].figure.reference = true;
  const Result<ToleranceNetwork> network = toleranceNetworkOf(without, axis);
  if (!network) return std::nullopt;
  request.from = adjusted.from;
  request.weights.erase(part.readings[source.index].id);
  const Result<AdjustedAxis> rest = adjustAxis(without, *network, request);
  return rest ? comesTo(*rest, part.readings[source.index]) : std::nullopt;
}

std::string blunderText(const Part& part, const Source& source, std::optional<double> otherwise,
                        const Step& step) {
  return "measure " + sourceWords(part, source) + " again: " +
         (otherwise ? "the others make it " + atStep(tick(*otherwise), step)
                    : "the others speak against it by far more than chance");
}

void print(const Part& part, const AdjustedAxis& adjusted, const AdjustRequest& request, Axis axis,
           const Step& step, const Streams& streams) {
  printPlaces(adjusted, step, streams);
  printReadings(part, adjusted, step, streams);
  if (adjusted.result.blunder) {
    const Source& source = adjusted.observed[*adjusted.result.blunder].source;
    const auto otherwise = othersMake(part, adjusted, axis, request, source);
    streams.out << "  "
                << toned(streams, Tone::doubt, oneLine(blunderText(part, source, otherwise, step)))
                << '\n';
  } else {
    streams.out << "  " << oneLine(verdictText(part, adjusted)) << '\n';
  }
  if (!adjusted.notJoined.empty()) {
    streams.out << "  left out, since no reading joins them to " << oneLine(adjusted.from) << ": "
                << oneLine(listed(adjusted.notJoined)) << '\n';
  }
  if (adjusted.result.freedom > 0) {
    streams.out << "  " << statisticsText(adjusted.result) << '\n';
  }
}

int runAdjust(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "adjust", error, file);
  };
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           {"--part", true},
                                                           {"--axis", true},
                                                           {"--from", true},
                                                           {"--hold", true, true},
                                                           {"--weight", true, true}});
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
  const Result<AdjustRequest> request = requestIn(*arguments, (*solved)->solution, *axis);
  if (!request) return stop(request.error());
  const Result<ToleranceNetwork> network = toleranceNetworkOf(part, *axis);
  if (!network) return stop(network.error(), opened->file);
  const Result<AdjustedAxis> adjusted = adjustAxis(part, *network, *request);
  if (!adjusted) return stop(adjusted.error(), opened->file);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"part", part.name}, {"axis", nameOf(*axis)}};
    all.update(asJson(part, *adjusted, *step));
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    streams.out << toned(streams, Tone::heading,
                         oneLine(part.name + ", adjusted along " + std::string(nameOf(*axis)) +
                                 " from " + adjusted->from))
                << '\n';
    print(part, *adjusted, *request, *axis, *step, streams);
  }
  return adjusted->result.blunder ? kFindings : kFine;
}

}  // namespace

extern const Word kAdjustWord{"adjust",
                              "where places come to when the figures of a worn sample do not agree",
                              kAdjustHelp, runAdjust};

}  // namespace inchwright::app
