#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/tolerance_job.h"
#include "app/words/words.h"
#include "core/plan/why.h"
#include "core/say/figure_words.h"
#include "core/say/why_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kWhyHelp =
    R"(inchwright why FILE --place A [--axis x] [--part P] [--setup S] [--json]

The sum behind a figure on my sheet, reading by reading from the setup's zero, as its readout
will show it, and what rounding to its step cost.

  --place A   the place
  --axis x    along this axis of the part; without it along both of the face
  --part P    the part, where the document has several
  --setup S   the setup, where the part has several
  --json      one JSON object

Exit status: 0 fine; 1 the print contradicts itself about it; 2 the words or the file could not
be used, or nothing fixes the place yet.
)";

const char* keyOf(WhyStep::Source source) {
  switch (source) {
    case WhyStep::Source::reading:
      return "reading";
    case WhyStep::Source::understood:
    case WhyStep::Source::zero:
    case WhyStep::Source::placed:
      return "understood";
    case WhyStep::Source::shape:
      break;
  }
  return "shape";
}

std::int64_t ticksOf(const Rational& ticks) {
  const auto nearest = nearestTick(ticks);
  return nearest ? nearest->ticks() : 0;
}

Json asJson(const ReadoutPoint& at) {
  return Json{{"x", at.x.text},
              {"y", at.y.text},
              {"x_ticks", at.x.value.ticks()},
              {"y_ticks", at.y.value.ticks()}};
}

Json asJson(const Part& part, const WhyHeld& held, const Step& step) {
  Json entry{{"place", held.place},
             {"at", asJson(held.at)},
             {"readings", held.readings},
             {"together", held.together},
             {"ends", Json::array()},
             {"others", Json::array()},
             {"text", heldText(part, held, step)}};
  for (const WhyHeld::End& end : held.ends) {
    Json one{{"place", end.place}};
    one.update(asJson(end.at));
    one["distance"] = atStep(end.apart, step);
    one["distance_ticks"] = end.apart.ticks();
    one["angle"] = std::round(end.degrees * 1e6) / 1e6;
    entry["ends"].push_back(std::move(one));
  }
  for (const WhyHeld::Other& other : held.others) {
    Json one = asJson(other.at);
    one["off"] = atStep(other.off, step);
    one["off_ticks"] = other.off.ticks();
    entry["others"].push_back(std::move(one));
  }
  return entry;
}

Json asJson(const Part& part, const Why& why, const Step& step) {
  Json entry{{"axis", nameOf(why.axis)}, {"value", why.value.text}};
  entry["value_ticks"] = why.value.value.ticks();
  entry["exact"] = why.value.exact;
  entry["steps"] = Json::array();
  for (const WhyStep& one : why.steps) {
    entry["steps"].push_back(Json{{keyOf(one.source), stepText(part, why, one)},
                                  {"from", one.member.from},
                                  {"to", one.member.to},
                                  {"text", one.member.text},
                                  {"adds", showAtStep(one.adds, step).text},
                                  {"adds_ticks", ticksOf(one.adds)},
                                  {"running", showAtStep(one.running, step).text},
                                  {"running_ticks", ticksOf(one.running)}});
  }
  entry["held"] = Json::array();
  for (const WhyHeld& one : why.held) entry["held"].push_back(asJson(part, one, step));
  entry["shown"] = why.value.text;
  entry["rounding"] = atStep(why.value.rounding, {Length::ticks(1), step.unit});
  entry["rounding_ticks"] = why.value.rounding.ticks();
  entry["disputed"] = why.disputed;
  return entry;
}

void print(const Part& part, const Why& why, const Step& step, const std::string& place,
           const Streams& streams) {
  streams.out << toned(streams, Tone::heading,
                       oneLine(place + " along " + std::string(nameOf(why.axis)) + ": " +
                               signedText(why.value)))
              << '\n';
  std::vector<std::vector<std::string>> rows{{"", "from – to", "lettered", "adds", "makes"}};
  for (const WhyStep& one : why.steps) {
    rows.push_back({oneLine(stepText(part, why, one)),
                    one.member.from.empty() ? std::string()
                                            : oneLine(one.member.from + " to " + one.member.to),
                    oneLine(one.member.text), showAtStep(one.adds, step).text,
                    showAtStep(one.running, step).text});
  }
  for (const std::string& line : alignedRows(
           rows, {Justify::left, Justify::left, Justify::right, Justify::right, Justify::right})) {
    streams.out << "  " << line << '\n';
  }
  for (const WhyHeld& one : why.held) {
    streams.out << "  " << oneLine(heldText(part, one, step)) << '\n';
  }
  if (!why.value.rounding.isZero()) {
    streams.out << "  rounded to the step: exactly " << writeDecimal(why.value.value, step.unit)
                << '\n';
  }
  if (why.disputed) {
    streams.out << "  "
                << toned(streams, Tone::doubt,
                         "The print contradicts itself here: another way makes something else.")
                << '\n';
  }
}

int runWhy(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "why", error, file);
  };
  const Result<Arguments> arguments = sortArguments(
      args, {{"--json"}, {"--part", true}, {"--setup", true}, {"--place", true}, {"--axis", true}});
  if (!arguments) return stop(arguments.error());
  const Result<std::string> place = needed(*arguments, "--place");
  if (!place) return stop(place.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<const OpenedJob::Solved*> solved = theOnePart(*opened);
  if (!solved) return stop(solved.error());
  const Part& part = opened->part(**solved);
  const Solution& solution = (*solved)->solution;
  const Result<Setup> setup = theSetup(arguments->value("--setup"), "--setup", part, solution);
  if (!setup) return stop(setup.error());
  if (setup->chucked) {
    return stop({ErrorCode::badRequest,
                 "setup `" + setup->name + "` is of the lathe: its lengths stand in `table`",
                 "--setup"});
  }
  const std::array<Axis, 2> both = axesIn(setup->face);
  std::vector<Axis> axes(both.begin(), both.end());
  if (arguments->has("--axis")) {
    const Result<Axis> axis = neededAxis(*arguments);
    if (!axis) return stop(axis.error());
    axes = {*axis};
  }
  const Result<WorkAt> work = workAt(opened->job, part, solution, *setup);
  if (!work) return stop(work.error(), opened->file);
  std::vector<Why> all;
  for (const Axis axis : axes) {
    Result<Why> why = whyOf(*work, *place, axis);
    if (!why) return stop(why.error(), opened->file);
    all.push_back(*std::move(why));
  }
  Json whole{{"inchwright", 1}, {"part", part.name}, {"setup", setup->name}};
  whole["place"] = *place;
  whole["why"] = Json::array();
  bool disputed = false;
  for (const Why& why : all) {
    disputed = disputed || why.disputed;
    if (arguments->has("--json")) {
      whole["why"].push_back(asJson(part, why, work->step));
    } else {
      print(part, why, work->step, *place, streams);
    }
  }
  if (arguments->has("--json")) {
    streams.out << whole.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return disputed ? kFindings : kFine;
}

}  // namespace

extern const Word kWhyWord{"why", "the sum behind a figure, reading by reading", kWhyHelp, runWhy};

}  // namespace inchwright::app
