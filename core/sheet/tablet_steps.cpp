#include <algorithm>
#include <map>

#include "core/base/listed.h"
#include "core/plan/tools_in_order.h"
#include "core/say/figure_words.h"
#include "core/say/lathe_words.h"
#include "core/say/milled_words.h"
#include "core/say/plan_words.h"
#include "core/say/setup_words.h"
#include "core/sheet/tablet_page.h"

namespace inchwright {
namespace {

std::string verbOf(const ToolUse& use) {
  switch (use.op) {
    case Op::spot:
      return "Spot";
    case Op::deburr:
      return "Break the edges";
    case Op::bore:
      return "Bore";
    case Op::press:
      return use.tool == "press plug" ? "Press in the plug" : "Press in the bush";
    case Op::pilot:
    case Op::drill:
      return use.tool.starts_with("end mill") ? "Fit " + use.tool : "Fit drill " + use.tool;
    default:
      return "Fit " + use.tool;
  }
}

class StepGatherer {
 public:
  StepGatherer(const SetupTable& table, const CheckedSetup& checked)
      : table_(table), checked_(checked) {
    for (const TableRow& row : table.rows) rows_.emplace(row.id, &row);
    for (const PlannedHole& hole : checked.holes) holes_.emplace(hole.id, &hole);
  }

  std::vector<TabletStep> toolSteps() const {
    std::vector<TabletStep> steps;
    for (const ToolUse& use : toolsInOrder(checked_.holes, checked_.milled, table_.face)) {
      TabletStep step;
      step.title = verbOf(use);
      if (use.elsewhere) step.title += ": not by coordinates";
      for (const TableRow& row : table_.rows) {
        if (std::find(use.places.begin(), use.places.end(), row.id) == use.places.end()) continue;
        addUse(step, use, row);
      }
      for (const MilledCut& cut : table_.milled) {
        if (std::find(use.places.begin(), use.places.end(), cut.id) == use.places.end()) continue;
        addMilled(step, use, cut);
      }
      if (!step.rows.empty()) steps.push_back(std::move(step));
    }
    return steps;
  }

  /// Points to be marked, before anything is cut.
  TabletStep marking() const {
    TabletStep step;
    step.title = "Mark the points";
    for (const TableRow& row : table_.rows) {
      if (row.kind == FeatureKind::point) step.rows.push_back(rowOf(row, ""));
    }
    return step;
  }

  TabletStep measuring() const {
    TabletStep step;
    step.title = "Measure before it is taken out";
    step.measures = true;
    for (const TableRow& row : table_.rows) {
      const auto hole = holes_.find(row.id);
      if (hole == holes_.end()) continue;
      const HolePlan& plan = *hole->second->plan;
      step.rows.push_back(rowOf(row, pinWords(plan, table_.step)));
    }
    return step;
  }

 private:
  TabletRow rowOf(const TableRow& row, std::string what) const {
    if (goesByCoordinates(*row.plan)) {
      return {row.id, signedText(row.x), signedText(row.y), std::move(what)};
    }
    return {row.id, "(" + signedText(row.x) + ")", "(" + signedText(row.y) + ")", std::move(what)};
  }

  /// The drill before a cutter at one place, the cutter run by run.
  void addMilled(TabletStep& step, const ToolUse& use, const MilledCut& cut) const {
    const auto add = [&](const CutterStands& at, std::string what) {
      step.rows.push_back({cut.id, signedText(at.x), signedText(at.y), std::move(what)});
    };
    if (use.op != Op::mill) {
      if (!cut.drillFirst) return;
      std::string what = "for the cutter to go in";
      for (const PlannedSlot& slot : checked_.milled) {
        if (slot.id == cut.id) what += ", " + wordsOf(slot.steps->steps.front(), table_.step);
      }
      return add(*cut.drillFirst, std::move(what));
    }
    for (const std::string& line : milledNotes(cut, table_.step)) step.lines.push_back(line);
    for (const CutterRun& run : cut.runs) {
      add(run.from, purposeOf(cut, run) + ", from here");
      add(run.to, "to here");
    }
    if (!cut.about) return;
    add(cut.about->centre, "the rotary table's centre under the spindle");
    if (cut.about->from) add(*cut.about->from, "from here");
    if (cut.about->to) add(*cut.about->to, "to here");
  }

  void addUse(TabletStep& step, const ToolUse& use, const TableRow& row) const {
    const PlannedHole& hole = *holes_.at(row.id);
    std::string what;
    for (const HoleStep& made : hole.plan->steps) {
      const bool same = made.tool == use.tool && made.inBush == use.inBush &&
                        (made.op == use.op || use.op == Op::drill || use.op == Op::pilot);
      if (!same) continue;
      if (made.dial || use.op == Op::bore) {
        step.rows.push_back(rowOf(row, wordsOf(made, table_.step)));
        continue;
      }
      what = wordsOf(made, table_.step);
      if (!made.struckOut.empty()) step.struckOut = made.struckOut;
    }
    if (use.op == Op::bore) return;
    step.rows.push_back(rowOf(row, std::move(what)));
    for (const HoleNote note : hole.plan->notes) {
      const std::string words = row.id + ": " + wordsOf(note, hole.plan->with);
      const bool last = use.op == Op::ream || use.op == Op::tap;
      if (last || use.elsewhere) step.lines.push_back(words);
    }
  }

  const SetupTable& table_;
  const CheckedSetup& checked_;
  std::map<std::string_view, const TableRow*> rows_;
  std::map<std::string_view, const PlannedHole*> holes_;
};

void addNotes(TabletSetup& setup, const TabletNotes& notes, English english) {
  for (const std::string& warning : notes.warnings) {
    setup.before.push_back(inEnglish(warning, english));
  }
  setup.kit = notes.kit;
  for (KitLine& line : setup.kit) line.words = inEnglish(line.words, english);
}

}  // namespace

TabletSetup tabletSetup(const Part& part, const SetupTable& table, const CheckedSetup& checked,
                        bool draft, English english, const TabletNotes& notes) {
  const SetupWords words = setupWords(part, table, english);
  TabletSetup setup;
  setup.part = table.part;
  setup.setup = table.setup;
  setup.heading = table.part + ", setup " + table.setup;
  setup.zero = words.zero;
  setup.counts = countsWords(table, english);
  setup.draft = draft;
  setup.millimetres = table.step.unit == Unit::millimetre;
  for (const std::string& warning : words.warnings) setup.before.push_back(warning);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const HolePlan& plan = *table.rows[i].plan;
    if (!plan.putRight) continue;
    setup.before.push_back(table.rows[i].id + ": " + words.rows[i].size + "; " +
                           words.rows[i].note);
  }
  addNotes(setup, notes, english);
  for (const Finding& finding : checked.findings) {
    setup.before.push_back(inEnglish(wordsOf(finding, table.step), english));
  }
  for (const SetupWords::Touch& touch : words.touchOff) {
    setup.steps.push_back({"Find zero: " + touch.what, touch.steps, "", {}, false});
  }
  TabletStep look{"Drive there and look before cutting", {}, "", {}, false};
  for (std::size_t i = 0; i < table.checks.size(); ++i) {
    look.rows.push_back({"check " + std::to_string(i + 1), signedText(table.checks[i].x),
                         signedText(table.checks[i].y), words.checks[i]});
  }
  if (!look.rows.empty()) setup.steps.push_back(std::move(look));
  const StepGatherer gatherer(table, checked);
  TabletStep marking = gatherer.marking();
  if (!marking.rows.empty()) setup.steps.push_back(std::move(marking));
  for (TabletStep& step : gatherer.toolSteps()) setup.steps.push_back(std::move(step));
  TabletStep measuring = gatherer.measuring();
  if (!measuring.rows.empty()) setup.steps.push_back(std::move(measuring));
  return setup;
}

TabletSetup tabletSetup(const LatheWork& work, const Lathe& lathe, bool draft, English english,
                        const TabletNotes& notes) {
  TabletSetup setup;
  setup.part = work.part;
  setup.setup = work.setup;
  setup.heading = work.part + ", setup " + work.setup + ": in the lathe";
  setup.zero = inEnglish(heldWords(work, lathe), english);
  setup.counts = work.crossLetter + (work.halved ? " counts the radius" : " counts the diameter");
  setup.draft = draft;
  setup.millimetres = work.step.unit == Unit::millimetre;
  setup.letters[0] = work.carriageLetter;
  setup.letters[1] = work.crossLetter;
  setup.turned = true;
  for (const std::string& warning : latheWarnings(work)) {
    setup.before.push_back(inEnglish(warning, english));
  }
  addNotes(setup, notes, english);
  const auto noteOf = [&](const Id& id) {
    const auto row = std::find_if(work.rows.begin(), work.rows.end(),
                                  [&](const LatheRow& one) { return one.id == id; });
    return row == work.rows.end() ? std::string() : latheNote(*row, work.step);
  };
  TabletStep measuring{"Measure before it is taken out", {}, "", {}, true};
  for (const Cut& cut : work.cuts) {
    std::string title = inEnglish(cutWords(cut), english);
    if (title[0] >= 'a' && title[0] <= 'z') title[0] = static_cast<char>(title[0] - 'a' + 'A');
    const bool toSize = cut.op == CutOp::finish || cut.op == CutOp::bore ||
                        cut.op == CutOp::groove || cut.op == CutOp::thread;
    const std::string note =
        toSize && cut.of.size() == 1 ? inEnglish(noteOf(cut.of.front()), english) : std::string();
    TabletRow row{joined(cut.of, ", "), cut.length ? cut.length->text : "",
                  cut.dia ? cut.dia->text : "", note};
    if (toSize && cut.dia && cut.of.size() == 1) {
      measuring.rows.push_back({cut.of.front(), "", cut.dia->text, note});
    }
    setup.steps.push_back({std::move(title), {}, "", {std::move(row)}, false});
  }
  if (!measuring.rows.empty()) setup.steps.push_back(std::move(measuring));
  return setup;
}

}  // namespace inchwright
