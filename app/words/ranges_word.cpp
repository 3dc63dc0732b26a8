#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/tolerance_job.h"
#include "app/words/tolerance_json.h"
#include "app/words/tolerance_note.h"
#include "app/words/words.h"
#include "core/say/source_words.h"
#include "core/tolerance/placed_stack.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kRangesHelp =
    R"(inchwright ranges FILE --from A --axis x|y|z [--part P] [--json]

Where every feature may lie, measured from A, when each reading of the print is anywhere within
its tolerance; exact, with the readings that set each end. What centre distances and angles
place is of the first order. Readings that can't all hold are named, and those that the others
do not assure.

  --from A       the place to measure from
  --axis x|y|z   along which of the print's axes
  --part P       the part, where the document has several
  --json         one JSON object

Exit status: 0 fine; 1 printed, and there is something to look at: tolerances that contradict
each other, a clash or a loose feature (see check); 2 the words or the file could not be used. A
reading that the others do not assure is no fault, only dimensioned loosely: it is named.
)";

Json asJson(const Part& part, const PlaceRange& one, const Step& step) {
  const auto [low, high] = outwardsAt(one.span, step);
  return Json{{"id", one.id},
              {"nominal", atStep(one.nominal, step)},
              {"low", low},
              {"high", high},
              {"nominal_ticks", one.nominal},
              {"low_ticks", one.span.low},
              {"high_ticks", one.span.high},
              {"low_by", labelsOf(part, one.lowBy)},
              {"high_by", labelsOf(part, one.highBy)}};
}

Json asJson(const Part& part, const Ranges& ranges, const UnassuredReadings& unassured,
            const Step& step) {
  Json entry;
  if (!ranges.contradiction.empty()) {
    entry["contradiction"] = labelsOf(part, ranges.contradiction);
    return entry;
  }
  entry["ranges"] = Json::array();
  for (const PlaceRange& one : ranges.places) entry["ranges"].push_back(asJson(part, one, step));
  entry["left_out"] = labelsOf(part, ranges.leftOut);
  entry["jumping"] = ranges.jumping;
  entry["unassured"] = unassuredAsJson(part, unassured.found, step);
  entry["unassured_cut_short"] = unassured.isCutShort;
  return entry;
}

void print(const Part& part, const Ranges& ranges, const Step& step, const Streams& streams) {
  std::vector<std::vector<std::string>> rows{
      {"place", "lettered", "least", "greatest", "under", "over", "set by"}};
  for (const PlaceRange& one : ranges.places) {
    const std::string lowBy = listed(labelsOf(part, one.lowBy));
    const std::string highBy = listed(labelsOf(part, one.highBy));
    const auto [low, high] = outwardsAt(one.span, step);
    const auto [under, over] = straysAt(one.span, one.nominal, step);
    rows.push_back({oneLine(one.id), atStep(one.nominal, step), low, high, under, over,
                    oneLine(lowBy == highBy ? lowBy : lowBy + " / " + highBy)});
  }
  const Justify left = Justify::left;
  const Justify right = Justify::right;
  for (const std::string& line :
       alignedRows(rows, {left, right, right, right, right, right, left})) {
    streams.out << "  " << line << '\n';
  }
  for (const std::string& label : labelsOf(part, ranges.leftOut)) {
    streams.out << "  not reckoned with: " << oneLine(label) << "; ranges may be narrower\n";
  }
  for (const Id& id : ranges.jumping) {
    streams.out << "  " << oneLine(id) << ": a thou in a reading makes it jump elsewhere\n";
  }
}

int runRanges(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "ranges", error, file);
  };
  const Result<Arguments> arguments =
      sortArguments(args, {{"--json"}, {"--part", true}, {"--from", true}, {"--axis", true}});
  if (!arguments) return stop(arguments.error());
  const Result<Axis> axis = neededAxis(*arguments);
  if (!axis) return stop(axis.error());
  const Result<std::string> from = needed(*arguments, "--from");
  if (!from) return stop(from.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<const OpenedJob::Solved*> solved = theOnePart(*opened);
  if (!solved) return stop(solved.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return stop(step.error(), opened->file);

  const Part& part = opened->part(**solved);
  const Result<ToleranceNetwork> network = toleranceNetworkOf(part, *axis);
  if (!network) return stop(network.error(), opened->file);
  Result<Ranges> ranges = rangesFrom(part, *network, *from);
  if (!ranges) return stop(ranges.error(), opened->file);
  const Result<Done> placed = addPlacedRanges(part, (*solved)->solution, *axis, *from, *ranges);
  if (!placed) return stop(placed.error(), opened->file);
  const Result<UnassuredReadings> unassured = unassuredReadings(part, *network);
  if (!unassured) return stop(unassured.error(), opened->file);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"part", part.name}, {"axis", nameOf(*axis)}, {"from", *from}};
    all.update(asJson(part, *ranges, *unassured, *step));
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    streams.out << toned(streams, Tone::heading,
                         oneLine(part.name + ", from " + *from + " along " +
                                 std::string(nameOf(*axis))))
                << '\n';
    if (!ranges->contradiction.empty()) {
      printContradiction(part, ranges->contradiction, streams);
    } else {
      print(part, *ranges, *step, streams);
      printUnassured(part, *unassured, *step, streams);
    }
    sayDrafts(*opened, streams);
  }
  const bool findings = !ranges->contradiction.empty() || !ranges->jumping.empty();
  return findings || hasFindings((*solved)->solution) ? kFindings : kFine;
}

}  // namespace

extern const Word kRangesWord{"ranges", "where every feature may lie within the tolerances",
                              kRangesHelp, runRanges};

}  // namespace inchwright::app
