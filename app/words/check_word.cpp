#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/check_note.h"
#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/words.h"
#include "core/plan/gap.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kCheckHelp =
    R"(inchwright check FILE [--part P] [--json]

Says whether the print adds up: what does not close and by how much, which figure may be
misread and why, what nothing places, which figures nothing checks, what was assumed. Gaps
between parts that can't be added up are named too; what they come to is for stack.

  --part P   only the part of that name, without gaps
  --json     one JSON object instead of a note

Exit status: 0 all adds up and is placed; 1 there is a clash, a loose feature, a figure that
was read twice and not alike, or a gap that can't be added up; 2 the words or the file could not
be used.
)";

/// A length of the solver at the readout's step.
std::string atStep(const Rational& ticks, const Step& step) {
  return showAtStep(ticks, step).text;
}

Json asJson(const Suspect& suspect, const Step& step) {
  return Json{{"reading", suspect.reading},
              {"would_be", atStep(suspect.wouldBe.rational(), step)},
              {"would_be_text", suspect.wouldBeText},
              {"would_be_ticks", suspect.wouldBe.ticks()},
              {"closes_all", suspect.closesAll},
              {"why", suspect.why}};
}

Json asJson(const Clash& clash, const Step& step) {
  Json entry;
  entry["axis"] = nameOf(clash.axis);
  entry["misses_by"] = atStep(clash.missesBy, step);
  entry["misses_by_ticks"] = clash.missesBy.rounded().value_or(0);
  entry["loop"] = clash.readingIds();
  entry["members"] = Json::array();
  for (const LoopMember& member : clash.loop) {
    entry["members"].push_back(Json{{"label", member.label},
                                    {"from", member.from},
                                    {"to", member.to},
                                    {"text", member.text},
                                    {"step", atStep(member.step, step)},
                                    {"running", atStep(member.running, step)}});
  }
  entry["suspects"] = Json::array();
  for (const Suspect& suspect : clash.suspects) entry["suspects"].push_back(asJson(suspect, step));
  return entry;
}

std::string_view wordFor(DoubtKind kind) {
  switch (kind) {
    case DoubtKind::loose:
      return "loose";
    case DoubtKind::clash:
      return "clash";
    case DoubtKind::alone:
      return "alone";
    case DoubtKind::assumed:
      return "assumed";
    case DoubtKind::unplacedKind:
      return "not_placed_yet";
    case DoubtKind::readTwice:
      return "read_twice";
    case DoubtKind::question:
      break;
  }
  return "question";
}

Json asJson(const Part& part, const Solution& solution, const Step& step) {
  Json entry;
  entry["part"] = part.name;
  entry["placed"] = solution.placed;
  entry["loose"] = Json::array();
  for (const Loose& loose : solution.loose) {
    entry["loose"].push_back(
        Json{{"id", loose.id}, {"axis", nameOf(loose.axis)}, {"advice", loose.advice}});
  }
  entry["clashes"] = Json::array();
  for (const Clash& clash : solution.clashes) entry["clashes"].push_back(asJson(clash, step));
  entry["alone"] = solution.aloneIds();
  entry["queries"] = Json::array();
  for (const Doubt& doubt : solution.doubts) {
    if (!isQuery(doubt)) continue;
    entry["queries"].push_back(Json{{"kind", wordFor(doubt.kind)},
                                    {"text", doubt.text},
                                    {"about", doubt.about},
                                    {"accepted", doubt.accepted}});
  }
  entry["draft"] = solution.isDraft();
  return entry;
}

// What is wrong with gaps, or nothing when only one part was asked for.
std::vector<Error> faultsOfGaps(const Arguments& arguments, const Job& job) {
  return arguments.has("--part") ? std::vector<Error>() : gapFaults(job);
}

int runCheck(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"}, {"--part", true}});
  if (!arguments) return refuse(streams, "check", arguments.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return refuse(streams, "check", opened.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return refuse(streams, "check", step.error(), opened->file);

  Json parts = Json::array();
  for (const OpenedJob::Solved& solved : opened->solved) {
    const Part& part = opened->part(solved);
    if (arguments->has("--json")) {
      parts.push_back(asJson(part, solved.solution, *step));
    } else {
      printCheckNote(part, solved.solution, opened->job.unit, streams);
    }
  }
  const std::vector<Error> faults = faultsOfGaps(*arguments, opened->job);
  for (const Error& fault : faults) {
    if (arguments->has("--json")) break;
    streams.out << toned(streams, Tone::doubt,
                         oneLine("A gap can't be added up: " + fault.place + ": " + fault.text))
                << '\n';
  }
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"parts", parts}, {"gaps", Json::array()}};
    for (const Error& fault : faults) {
      all["gaps"].push_back(Json{{"place", fault.place}, {"error", fault.text}});
    }
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return hasFindings(*opened) || !faults.empty() ? kFindings : kFine;
}

}  // namespace

extern const Word kCheckWord{"check", "whether the print adds up", kCheckHelp, runCheck};

}  // namespace inchwright::app
