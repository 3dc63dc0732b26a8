#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/lathe_json.h"
#include "app/words/making_json.h"
#include "app/words/words.h"
#include "core/plan/tools_in_order.h"
#include "core/say/lathe_words.h"
#include "core/say/milled_words.h"
#include "core/say/piece_words.h"
#include "core/say/plan_words.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kPlanHelp =
    R"(inchwright plan FILE [--part P] [--setup S] [--unit in|mm] [--step STEP] [--json]

How each hole is made with the tools owned, step by step: what to fit, how deep to full diameter
and to the tool's end from the face as it is now, which rule chose it, the size never to drill
before a reamer or tap, each boring cut's dial. Then the tools in the order of use, and what
would go wrong before anything is cut: tools in parallels, jaws, stop or clamps, holes that run
into each other or break out, tools that are not owned, work that is not held, pieces that don't
clean up.

What is owned is in the document's shop, else among the tools kept for all jobs on the desk; of
what neither says anything, all usual sizes are taken.

  --part P, --setup S   only those of that name, else all
  --unit in|mm          the unit of the figures, else the machine's
  --step STEP           the step of the readout, else the machine's
  --no-shop             takes no notice of the tools kept for all jobs
  --json                one JSON object

Exit status: 0 fine; 1 printed, and there is something to look at: a finding, a clash or a loose
feature (see check); 2 the words or the file could not be used.
)";

/// A setup with its plan, its holes in the order of the table.
struct SetupPlan {
  const PlannedSetup* planned = nullptr;
  const Part* part = nullptr;
  CheckedSetup checked;
  std::vector<const PlannedHole*> holes;  ///< of the setup's face
  std::vector<PutInOtherwise> otherwise;
};

SetupPlan planOf(const OpenedJob& opened, const PlannedSetup& planned, const ToolsOwned& tools) {
  SetupPlan plan;
  plan.planned = &planned;
  const OpenedJob::Solved& solved = opened.solved[planned.solved];
  plan.part = &opened.part(solved);
  if (planned.lathe) return plan;
  plan.checked = planAndCheck(opened.job, *plan.part, solved.solution, planned.setup, tools);
  if (const auto work =
          workAt(opened.job, *plan.part, solved.solution, planned.setup, planned.options)) {
    plan.otherwise = putInOtherwise(*work, WorkBlock(*plan.part, solved.solution, &planned.setup));
  }
  std::map<std::string_view, std::size_t> rank;
  for (const TableRow& row : planned.table.rows) rank.emplace(row.id, rank.size());
  for (const PlannedHole& hole : plan.checked.holes) {
    if (hole.face == planned.setup.face) plan.holes.push_back(&hole);
  }
  const auto rankOf = [&](const PlannedHole* hole) {
    const auto found = rank.find(hole->id);
    return found == rank.end() ? rank.size() : found->second;
  };
  std::stable_sort(
      plan.holes.begin(), plan.holes.end(),
      [&](const PlannedHole* a, const PlannedHole* b) { return rankOf(a) < rankOf(b); });
  return plan;
}

/// How far the readout goes each way from zero.
Json roomAsJson(const SetupTable& table) {
  Json room = Json::object();
  if (table.rows.empty()) return room;
  for (const bool x : {true, false}) {
    const auto value = [x](const TableRow& row) { return x ? row.x.value : row.y.value; };
    Length low, high;  // zero itself is driven to
    for (const TableRow& row : table.rows) {
      low = std::min(low, value(row));
      high = std::max(high, value(row));
    }
    const std::string name = x ? "x" : "y";
    room[name] = {lengthAt(low, table.step), lengthAt(high, table.step)};
    room[name + "_ticks"] = {low.ticks(), high.ticks()};
  }
  return room;
}

Json asJson(const SetupPlan& plan) {
  const bool lathe = plan.planned->lathe.has_value();
  const Step& step = lathe ? plan.planned->lathe->step : plan.planned->table.step;
  Json entry{{"part", plan.part->name},
             {"setup", plan.planned->setup.name},
             {"unit", nameOf(step.unit)},
             {"holes", Json::array()},
             {"tools", Json::array()}};
  if (lathe) {
    entry["cuts"] = cutsAsJson(*plan.planned->lathe);
    entry["findings"] = Json::array();
    return entry;
  }
  for (const PlannedHole* hole : plan.holes) entry["holes"].push_back(holeAsJson(*hole, step));
  for (const ToolUse& use :
       toolsInOrder(plan.checked.holes, plan.checked.milled, plan.planned->setup.face)) {
    const Json name = use.tool;
    if (entry["tools"].empty() || entry["tools"].back() != name) entry["tools"].push_back(name);
  }
  Json milled = Json::array();
  for (const PlannedSlot& slot : plan.checked.milled) {
    if (slot.plan) milled.push_back(slotAsJson(slot, step));
  }
  entry["slots"] = std::move(milled);
  entry["findings"] = findingsAsJson(plan.checked.findings, step);
  entry["pieces"] = piecesAsJson(plan.checked.pieces, step);
  if (!plan.otherwise.empty()) entry["put_in_otherwise"] = otherwiseAsJson(plan.otherwise, step);
  entry["room"] = roomAsJson(plan.planned->table);
  entry["not_looked_at"] = Json::array();
  for (const Unsaid unsaid : plan.checked.unsaid) {
    entry["not_looked_at"].push_back(nameOf(unsaid));
  }
  return entry;
}

void printSteps(const HolePlan& plan, const Step& step, const Streams& streams) {
  std::vector<std::vector<std::string>> rows{{"", "", "", ""}};
  for (const HoleStep& one : plan.steps) {
    rows.push_back({std::string(nameOf(one.op)), oneLine(one.tool), oneLine(wordsOf(one, step)),
                    wordsOf(one.rule)});
  }
  const std::vector<std::string> lines =
      alignedRows(rows, {Justify::left, Justify::left, Justify::left, Justify::left});
  for (std::size_t i = 1; i < lines.size(); ++i) streams.out << "    " << lines[i] << '\n';
  for (const HoleNote note : plan.notes) streams.out << "    " << wordsOf(note, plan.with) << '\n';
}

void printHole(const PlannedHole& hole, const Step& step, const Streams& streams) {
  streams.out << "  " << oneLine(hole.id);
  const std::string pins = pinWords(*hole.plan, step);
  if (!pins.empty()) streams.out << "  " << pins;
  streams.out << '\n';
  printSteps(*hole.plan, step, streams);
}

void printRoom(const SetupTable& table, const Streams& streams) {
  const Json room = roomAsJson(table);
  if (room.empty()) return;
  streams.out << "  Room wanted from zero: X " << room["x"][0].get<std::string>() << " to "
              << room["x"][1].get<std::string>() << ", Y " << room["y"][0].get<std::string>()
              << " to " << room["y"][1].get<std::string>() << '\n';
}

/// The cuts of a setup of the lathe, one a line.
void printCuts(const LatheWork& work, const Streams& streams) {
  for (const Cut& cut : work.cuts) {
    std::string of;
    for (const Id& id : cut.of) of += (of.empty() ? "" : " ") + id;
    const std::string note = cutNote(cut, work.carriageLetter);
    streams.out << "  "
                << oneLine(std::string(nameOf(cut.op)) + "  " + of +
                           (note.empty() ? "" : "  " + note))
                << '\n';
  }
}

void print(const SetupPlan& plan, const Streams& streams) {
  const Step& step = plan.planned->table.step;
  streams.out << toned(streams, Tone::heading,
                       oneLine(plan.part->name + ", setup " + plan.planned->setup.name))
              << '\n';
  if (plan.planned->lathe) return printCuts(*plan.planned->lathe, streams);
  const PlannedHole* last = nullptr;
  for (const PlannedHole* hole : plan.holes) {
    if (last && hole->plan.isOf(last->plan)) {
      streams.out << "  " << oneLine(hole->id) << "  as the one before\n";
    } else {
      printHole(*hole, step, streams);
    }
    last = hole;
  }
  for (const PlannedSlot& slot : plan.checked.milled) {
    streams.out << "  " << oneLine(slot.id) << '\n';
    printSteps(*slot.steps, step, streams);
    for (const MilledCut& cut : plan.planned->table.milled) {
      if (cut.id != slot.id) continue;
      for (const std::string& line : milledWords(cut, step)) {
        streams.out << "    " << oneLine(line) << '\n';
      }
    }
  }
  streams.out << "  In this order:\n";
  std::optional<OrderRule> rule;
  for (const ToolUse& use :
       toolsInOrder(plan.checked.holes, plan.checked.milled, plan.planned->setup.face)) {
    if (!rule || *rule != use.rule) streams.out << "    " << wordsOf(use.rule) << '\n';
    rule = use.rule;
    std::string places;
    for (const Id& id : use.places) places += (places.empty() ? "" : " ") + id;
    streams.out << "      " << oneLine(use.tool + ": " + places) << '\n';
  }
  for (const PieceLeft& piece : plan.checked.pieces) {
    streams.out << "  " << oneLine(pieceWords(piece, step)) << '\n';
  }
  for (const PutInOtherwise& put : plan.otherwise) {
    std::string indent = "  ";
    for (const std::string& line : otherwiseWords(put, step)) {
      streams.out << indent << oneLine(line) << '\n';
      indent = "    ";
    }
  }
  printRoom(plan.planned->table, streams);
  for (const Unsaid unsaid : plan.checked.unsaid) {
    streams.out << "  Nobody said " << wordsOf(unsaid) << ": not looked at\n";
  }
  for (const Finding& finding : plan.checked.findings) {
    streams.out << "  " << toned(streams, Tone::doubt, oneLine(wordsOf(finding, step))) << '\n';
  }
}

int runPlan(std::span<const std::string> args, Streams& streams) {
  const Result<Arguments> arguments = sortArguments(args, {{"--json"},
                                                           kNoShop,
                                                           {"--part", true},
                                                           {"--setup", true},
                                                           {"--unit", true},
                                                           {"--step", true}});
  if (!arguments) return refuse(streams, "plan", arguments.error());
  const Result<OpenedJob> opened = openJobInShop(*arguments);
  if (!opened) return refuse(streams, "plan", opened.error());
  const Result<std::vector<PlannedSetup>> planned = planJob(*arguments, *opened);
  if (!planned) return refuse(streams, "plan", planned.error());

  if (!arguments->has("--json")) sayWhoseTools(*opened, streams);
  const ToolsOwned tools(opened->job.shop);
  bool found = hasFindings(*opened);
  Json plans = Json::array();
  for (const PlannedSetup& one : *planned) {
    const SetupPlan plan = planOf(*opened, one, tools);
    found = found || !plan.checked.findings.empty();
    if (arguments->has("--json")) {
      plans.push_back(asJson(plan));
    } else {
      print(plan, streams);
    }
  }
  if (!arguments->has("--json")) sayDrafts(*opened, streams);
  if (arguments->has("--json")) {
    Json whole{{"inchwright", 1}, {"plans", plans}};
    if (!opened->ownTools.empty()) whole["own_tools"] = opened->ownTools;
    streams.out << whole.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return found ? kFindings : kFine;
}

}  // namespace

extern const Word kPlanWord{"plan",
                            "how each hole is made with the tools owned, and what is in the way",
                            kPlanHelp, runPlan};

}  // namespace inchwright::app
