#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/check_note.h"
#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/making_json.h"
#include "app/words/tolerance_json.h"
#include "app/words/tolerance_note.h"
#include "app/words/words.h"
#include "core/base/listed.h"
#include "core/kit/kit_of_part.h"
#include "core/plan/gap.h"
#include "core/plan/table.h"
#include "core/say/doubt_words.h"
#include "core/say/edition_words.h"
#include "core/say/kit_words.h"
#include "core/say/lathe_words.h"
#include "core/say/placing_words.h"
#include "core/say/plan_words.h"
#include "core/say/setup_words.h"
#include "core/say/source_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kCheckHelp =
    R"(inchwright check FILE [--part P] [--json]

Says whether the print adds up: what does not close and by how much, which figure may be
misread and why, what nothing places, which figures nothing checks, what was assumed. Gaps
and mates of the job that may not go together are named at the end; stack and made say what they
come to.

Odd figures of stock, of a zero's offset, of a cutter and of the finder are asked about, as by
table. Lettered tolerances that can't all hold are named, as three steps that together may come
out longer than their overall allows.

Findings before cutting are named as well: holes that run into each other, break out or through,
tools in the way of parallels, jaws, stop and clamps, tools not owned (see plan).

  --part P   only the part of that name, without gaps
  --no-shop  takes no notice of the tools kept for all jobs
  --json     one JSON object instead of a note

Exit status: 0 all adds up and is placed; 1 there is a clash, a loose feature, a place outside
the part or in another's way, a figure that something else contradicts, tolerances that can't
all hold, a finding before cutting, or a gap that can't be added up; 2 the words or the file
could not be used.
)";

/// A length of the solver at the readout's step.
std::string atStep(const Rational& ticks, const Step& step) {
  return showAtStep(ticks, step).text;
}

Json asJson(const Part& part, const Suspect& suspect, const Step& step) {
  return Json{{"reading", suspect.reading},
              {"would_be", atStep(suspect.wouldBe.rational(), step)},
              {"would_be_text", wouldBeText(part, suspect)},
              {"would_be_ticks", suspect.wouldBe.ticks()},
              {"closes_all", suspect.closesAll},
              {"why", suspicionText(part, suspect)}};
}

Json asJson(const Part& part, const Clash& clash, const std::vector<Suspect>& suspects,
            const Step& step) {
  Json entry;
  entry["axis"] = nameOf(clash.axis);
  entry["misses_by"] = atStep(clash.missesBy, step);
  entry["misses_by_ticks"] = clash.missesBy.rounded().value_or(0);
  entry["loop"] = clash.readingIds(part);
  entry["members"] = Json::array();
  for (const LoopMember& member : clash.loop) {
    const Lettered* figure = figureOf(part, member.source);
    entry["members"].push_back(Json{{"label", labelOf(part, member.source)},
                                    {"from", member.from},
                                    {"to", member.to},
                                    {"text", figure == nullptr ? std::string() : figure->text},
                                    {"step", atStep(member.step, step)},
                                    {"running", atStep(member.running, step)}});
  }
  entry["suspects"] = Json::array();
  for (const Suspect& suspect : suspects) {
    entry["suspects"].push_back(asJson(part, suspect, step));
  }
  return entry;
}

std::string_view wordFor(DoubtTopic topic) {
  switch (topic) {
    case DoubtTopic::notPlaced:
      return "not_placed_yet";
    case DoubtTopic::readTwice:
      return "read_twice";
    case DoubtTopic::size:
      return "question";
    case DoubtTopic::crossedSides:
      return "crossed_sides";
    case DoubtTopic::sameSide:
      return "same_side";
    case DoubtTopic::breaksEdge:
      return "breaks_edge";
    case DoubtTopic::holesMeet:
      return "holes_meet";
    case DoubtTopic::noSetup:
      return "no_setup";
    case DoubtTopic::swappedEnds:
      return "swapped_ends";
    case DoubtTopic::wrongWay:
      return "wrong_way";
    case DoubtTopic::offTrace:
      return "off_trace";
    case DoubtTopic::oddSizes:
      return "odd_sizes";
    case DoubtTopic::millimetres:
      return "millimetres";
    default:
      break;
  }
  return nameOf(topic);
}

// Contradictions of centre distances and angles, chains among them.
Json asJson(const Part& part, const CentresClash& clash, const std::vector<CentreSuspect>& suspects,
            const Step& step) {
  const auto ticks = static_cast<std::int64_t>(
      std::llround(clash.missesBy * static_cast<double>(Length::kTicksPerInch)));
  Json entry{{"axis", "centres"},
             {"misses_by", atStep(Rational(ticks), step)},
             {"misses_by_ticks", ticks},
             {"loop", Json::array()},
             {"suspects", Json::array()}};
  for (const std::uint32_t member : clash.members) {
    entry["loop"].push_back(part.readings[member].id);
  }
  for (const CentreSuspect& suspect : suspects) {
    Json one{{"reading", part.readings[suspect.reading].id}};
    if (suspect.degrees) {
      one["would_be"] = std::round(*suspect.degrees * 1e6) / 1e6;
    } else {
      one["would_be"] = atStep(suspect.wouldBe.rational(), step);
      one["would_be_ticks"] = suspect.wouldBe.ticks();
    }
    one["would_be_text"] = suspect.wouldBeText;
    one["closes_all"] = suspect.closesAll;
    one["why"] = reasonText(part, suspect);
    entry["suspects"].push_back(std::move(one));
  }
  return entry;
}

Json asJson(const SeveralAnswers& several, const std::string& text, const Step& step) {
  Json entry{{"kind", several.isTaken ? "mirror_taken" : "two_answers"},
             {"text", text},
             {"place", several.place},
             {"about", several.about},
             {"answers", Json::array()},
             {"answers_ticks", Json::array()}};
  for (const auto& [first, second] : several.answers) {
    entry["answers"].push_back({atStep(first.rational(), step), atStep(second.rational(), step)});
    entry["answers_ticks"].push_back({first.ticks(), second.ticks()});
  }
  return entry;
}

// Tolerances that can't all hold, of readings that do not clash.
Result<std::vector<ToleranceFault>> toleranceFaultsOf(const Part& part, const Solution& solution) {
  std::vector<Id> clashing;
  for (const Clash& clash : solution.clashes) {
    for (const Id& id : clash.readingIds(part)) clashing.push_back(id);
  }
  return toleranceFaults(part, clashing);
}

std::string toleranceText(const Part& part, const ToleranceFault& fault, const Step& step) {
  if (fault.contradiction.empty()) return unassuredText(part, fault.unassured, step);
  return contradictionText(part, fault.contradiction);
}

Json asJson(const Part& part, const ToleranceFault& fault, const Step& step) {
  Json entry{{"axis", nameOf(fault.axis)}};
  if (fault.contradiction.empty()) {
    entry.update(unassuredAsJson(part, {fault.unassured}, step)[0]);
  } else {
    entry["contradiction"] = labelsOf(part, fault.contradiction);
    entry["text"] = contradictionText(part, fault.contradiction);
  }
  return entry;
}

Json asJson(const Part& part, const Solution& solution, const std::vector<Finding>& findings,
            const Step& step) {
  Json entry;
  entry["part"] = part.name;
  entry["placed"] = solution.placed;
  entry["loose"] = Json::array();
  for (const Loose& loose : solution.loose) {
    entry["loose"].push_back(
        Json{{"id", loose.id}, {"axis", nameOf(loose.axis)}, {"advice", adviceText(loose)}});
  }
  entry["clashes"] = Json::array();
  for (std::size_t i = 0; i < solution.clashes.size(); ++i) {
    entry["clashes"].push_back(asJson(part, solution.clashes[i], solution.suspects[i], step));
  }
  for (std::size_t i = 0; i < solution.beyond.clashes.size(); ++i) {
    entry["clashes"].push_back(
        asJson(part, solution.beyond.clashes[i], solution.centreSuspects[i], step));
  }
  entry["alone"] = solution.aloneIds(part);
  entry["queries"] = Json::array();
  for (const Doubt& doubt : solution.doubts) {
    if (!isQuery(doubt)) continue;
    if (doubt.placing == PlacingDoubt::answers) {
      const SeveralAnswers& several = solution.beyond.answers[doubt.index];
      entry["queries"].push_back(asJson(several, doubtText(part, solution, doubt), step));
      entry["queries"].back()["accepted"] = doubt.accepted;
      continue;
    }
    entry["queries"].push_back(Json{{"kind", wordFor(doubt.key.topic)},
                                    {"text", doubtText(part, solution, doubt)},
                                    {"key", doubt.key.text()},
                                    {"about", doubt.pointsAt()},
                                    {"accepted", doubt.accepted}});
  }
  entry["findings"] = findingsAsJson(findings, step);
  entry["draft"] = solution.isDraft();
  return entry;
}

// What is said of the whole job, where not only one part was asked for.
struct OfTheJob {
  std::vector<Error> faults;       ///< gaps that can't be added up
  std::vector<std::string> apart;  ///< what stands in the way of going together
  std::vector<Misspelt> misspelt;
  std::vector<std::string> crooked;  ///< pictures that no print was taken by

  bool any() const {
    return !faults.empty() || !apart.empty() || !misspelt.empty() || !crooked.empty();
  }
};

Result<OfTheJob> ofTheJob(const Arguments& arguments, const OpenedJob& opened, const Step& step) {
  OfTheJob all;
  if (arguments.has("--part")) return all;
  all.faults = gapFaults(opened.job);
  all.misspelt = misspeltOutsideParts(opened.job);
  for (const Picture& picture : opened.job.pictures) {
    const auto crooked = crookedBy(picture.points);
    if (crooked) all.crooked.push_back("Picture " + picture.name + ": " + crookedText(*crooked));
  }
  std::vector<Solution> solutions;
  for (const OpenedJob::Solved& one : opened.solved) solutions.push_back(one.solution);
  const Result<AsMade> made = asMade(opened.job, solutions);
  if (!made) return made.error();
  all.apart = kitDoubtLines(*made, step);
  return all;
}

// Sheets that were printed and would be others now.
std::vector<std::string> outdatedSheets(const OpenedJob& opened) {
  std::vector<std::string> lines;
  for (const OpenedJob::Solved& solved : opened.solved) {
    const Part& part = opened.part(solved);
    for (const PrintedNow& one : printedNow(opened.job, part, solved.solution)) {
      if (!one.edition.isNew()) continue;
      lines.push_back(part.name + ", setup " + one.setup + ": " + newEditionWords(one.edition) +
                      ". " + joined(one.edition.changes, "; "));
    }
  }
  return lines;
}

// Figures of the milling setups and of the machine's finder that a careful reader would ask about.
// A setup that can't be worked out yet is told elsewhere.
Result<std::vector<std::string>> oddInSetups(const OpenedJob& opened,
                                             const OpenedJob::Solved& solved) {
  const Part& part = opened.part(solved);
  std::vector<Setup> setups = part.setups;
  if (setups.empty()) setups.push_back(defaultSetup(part, solved.solution));
  std::vector<std::string> lines;
  for (const Setup& setup : setups) {
    if (setup.chucked) continue;
    const Result<SetupTable> table = makeTable(opened.job, part, solved.solution, setup);
    if (!table && table.error().code == ErrorCode::unsolvable) continue;
    if (!table) return table.error();
    for (const SetupWarning& warning : table->warnings) {
      const bool isOdd = warning.kind == SetupWarning::Kind::oddFigure ||
                         warning.kind == SetupWarning::Kind::finderUnlikely;
      if (!isOdd) continue;
      lines.push_back(part.name + ", setup " + setup.name + ": " +
                      warningWords(warning, *table, English::uk));
    }
  }
  return lines;
}

struct OfTheLathe {
  std::vector<std::string> minded;
  bool faulty = false;
};

// What to mind in the lathe setups of a part. One that can't be worked out yet is told elsewhere.
Result<OfTheLathe> ofTheLathe(const OpenedJob& opened, const OpenedJob::Solved& solved) {
  const Part& part = opened.part(solved);
  OfTheLathe all;
  for (const Setup& setup : part.setups) {
    if (!setup.chucked) continue;
    const Result<LatheWork> work = latheWorkToSuit(opened.job, part, solved.solution, setup);
    if (!work && work.error().code == ErrorCode::unsolvable) continue;
    if (!work) return work.error();
    all.faulty = all.faulty || work->isFaulty();
    for (const std::string& warning : latheWarnings(*work)) {
      all.minded.push_back(part.name + ", setup " + setup.name + ": " + warning);
    }
  }
  return all;
}

int runCheck(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"}, kNoShop, {"--part", true}});
  if (!arguments) return refuse(streams, "check", arguments.error());
  const Result<OpenedJob> opened = openJobInShop(*arguments);
  if (!opened) return refuse(streams, "check", opened.error());
  const Result<Step> step = readStep(opened->job.machine.step, opened->job.machine.unit);
  if (!step) return refuse(streams, "check", step.error(), opened->file);

  const ToolsOwned tools(opened->job.shop);
  bool found = hasFindings(*opened);
  Json parts = Json::array();
  std::vector<std::string> lathe, setups;
  for (const OpenedJob::Solved& solved : opened->solved) {
    const Part& part = opened->part(solved);
    const std::vector<Finding> findings = findingsOf(opened->job, part, solved.solution, tools);
    const auto tolerances = toleranceFaultsOf(part, solved.solution);
    if (!tolerances) return refuse(streams, "check", tolerances.error(), opened->file);
    found = found || !findings.empty() || !tolerances->empty();
    if (arguments->has("--json")) {
      parts.push_back(asJson(part, solved.solution, findings, *step));
      parts.back()["tolerances"] = Json::array();
      for (const ToleranceFault& fault : *tolerances) {
        parts.back()["tolerances"].push_back(asJson(part, fault, *step));
      }
      continue;
    }
    printCheckNote(part, solved.solution, opened->job.unit, streams);
    for (const ToleranceFault& fault : *tolerances) {
      streams.out << "  tolerances along " << nameOf(fault.axis) << ": "
                  << toned(streams, Tone::doubt, oneLine(toleranceText(part, fault, *step)))
                  << '\n';
    }
    for (const Finding& finding : findings) {
      streams.out << "  before cutting: "
                  << toned(streams, Tone::doubt, oneLine(wordsOf(finding, *step))) << '\n';
    }
  }
  for (const OpenedJob::Solved& solved : opened->solved) {
    const auto odd = oddInSetups(*opened, solved);
    if (!odd) return refuse(streams, "check", odd.error(), opened->file);
    setups.insert(setups.end(), odd->begin(), odd->end());
    const Result<OfTheLathe> turning = ofTheLathe(*opened, solved);
    if (!turning) return refuse(streams, "check", turning.error(), opened->file);
    found = found || turning->faulty;
    lathe.insert(lathe.end(), turning->minded.begin(), turning->minded.end());
  }
  const std::vector<std::string> outdated = outdatedSheets(*opened);
  const Result<OfTheJob> whole = ofTheJob(*arguments, *opened, *step);
  if (!whole) return refuse(streams, "check", whole.error(), opened->file);
  if (arguments->has("--json")) {
    Json all{{"inchwright", 1}, {"parts", parts}, {"gaps", Json::array()}};
    for (const Error& fault : whole->faults) {
      all["gaps"].push_back(Json{{"place", fault.place}, {"error", fault.text}});
    }
    all["together"] = whole->apart;
    all["misspelt"] = Json::array();
    for (const Misspelt& one : whole->misspelt) {
      all["misspelt"].push_back(
          Json{{"object", one.object}, {"name", one.name}, {"meant", one.meant}});
    }
    all["pictures"] = whole->crooked;
    all["setups"] = setups;
    all["lathe"] = lathe;
    if (!opened->ownTools.empty()) all["own_tools"] = opened->ownTools;
    all["outdated"] = outdated;
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    for (const Error& fault : whole->faults) {
      streams.out << toned(streams, Tone::doubt,
                           oneLine("A gap can't be added up: " + fault.place + ": " + fault.text))
                  << '\n';
    }
    for (const Misspelt& one : whole->misspelt) {
      streams.out << toned(streams, Tone::doubt, oneLine(misspeltText(one))) << '\n';
    }
    for (const std::string& line : whole->crooked) {
      streams.out << toned(streams, Tone::doubt, oneLine(line)) << '\n';
    }
    for (const std::string& line : setups) {
      streams.out << toned(streams, Tone::doubt, oneLine(line)) << '\n';
    }
    for (const std::string& line : lathe) {
      streams.out << toned(streams, Tone::doubt, oneLine(line)) << '\n';
    }
    for (const std::string& line : outdated) {
      streams.out << toned(streams, Tone::doubt, oneLine(line)) << '\n';
    }
    for (const std::string& line : whole->apart) {
      streams.out << toned(streams, Tone::doubt, oneLine(line)) << '\n';
    }
    sayWhoseTools(*opened, streams);
  }
  return found || !outdated.empty() || whole->any() ? kFindings : kFine;
}

}  // namespace

extern const Word kCheckWord{"check", "whether the print adds up", kCheckHelp, runCheck};

}  // namespace inchwright::app
