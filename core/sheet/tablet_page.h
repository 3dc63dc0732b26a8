#pragma once

#include <string>
#include <vector>

#include "core/base/english.h"
#include "core/checks/whole_part.h"
#include "core/plan/table.h"
#include "core/say/kit_words.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// One place to drive to in a step at the machine.
struct TabletRow {
  Id place;
  std::string x;  ///< as the readout will show it, with its sign
  std::string y;
  std::string what;  ///< depth and the like

  bool operator==(const TabletRow&) const = default;
};

/// One step at the machine: what to do or fit, and where. All for people.
struct TabletStep {
  std::string title;  ///< `Fit C`
  std::vector<std::string> lines;
  std::string struckOut;  ///< a size never to be drilled here, as lettered
  std::vector<TabletRow> rows;
  bool measures = false;  ///< what is found is to be put down

  bool operator==(const TabletStep&) const = default;
};

/// One setup on a page for a tablet or phone.
struct TabletSetup {
  std::string part;
  std::string setup;
  std::string heading;  ///< `Front plate, setup 1`
  std::string zero;
  std::string counts;
  bool draft = false;
  bool millimetres = false;             ///< the readout's
  std::string letters[2] = {"X", "Y"};  ///< of the readout's two figures
  bool turned = false;                  ///< of the lathe: only sizes are measured
  std::vector<std::string> before;      ///< to be put right before anything is cut
  std::vector<KitLine> kit;             ///< what was made so far, and what it goes with
  std::vector<TabletStep> steps;

  bool operator==(const TabletSetup&) const = default;
};

/// What else a sheet of a setup has to say: `SheetOptions::warnings` and `kitLines`.
struct TabletNotes {
  std::vector<std::string> warnings;
  std::vector<KitLine> kit;
};

/// The steps of a setup: finding zero, places to drive to and look, then one tool after another in
/// the order of use, slots and points, last what was made, to be measured. `part` is the one that
/// was planned.
TabletSetup tabletSetup(const Part& part, const SetupTable& table, const CheckedSetup& checked,
                        bool draft, English english, const TabletNotes& notes = {});

/// The steps of a setup of the lathe: what to mind, one cut after another, last what was turned, to
/// be measured.
TabletSetup tabletSetup(const LatheWork& work, const Lathe& lathe, bool draft, English english,
                        const TabletNotes& notes = {});

/// One self-contained page (HTML 5) with all setups: nothing is fetched from anywhere, and it says
/// so to the browser. Big figures, one step at a time, by touch; without scripts all steps stand
/// below one another. Ticks are kept where the browser keeps anything for a file, else the page
/// says first that they are not. What is measured comes back as one line to type in
/// (core/lines/found_line.h).
std::string tabletPage(const std::string& title, const std::string& edition,
                       const std::string& date, const std::vector<TabletSetup>& setups);

}  // namespace inchwright
