#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/words/arguments.h"
#include "app/words/streams.h"
#include "core/base/result.h"
#include "core/part/job.h"
#include "core/plan/table.h"
#include "core/solution/solution.h"
#include "core/turned/lathe_work.h"

namespace inchwright::app {

/// A document as a word opened it, with what follows from the parts it was asked for.
struct OpenedJob {
  struct Solved {
    std::size_t part = 0;  ///< index into job.parts
    Solution solution;
  };

  std::string file;
  Job job;
  std::string ownTools;       ///< the file of the tools kept for all jobs, where they say something
  bool carriesTools = false;  ///< the document's shop says something as well
  std::vector<Solved> solved;  ///< in the document's order; all parts when none was named

  const Part& part(const Solved& one) const { return job.parts[one.part]; }
};

/// Leaves out the tools that the user keeps for all jobs.
inline constexpr Option kNoShop{"--no-shop"};

/// Opens the one FILE among the arguments and solves the part `--part` names, or all.
/// Errors: `badRequest` when there is not exactly one FILE, else those of loading and solving;
/// `place` names the file first.
Result<OpenedJob> openJob(const Arguments& arguments);

/// The same where tools matter: as on the desk, those kept for all jobs stand in for what the
/// document's shop does not say, but for `--no-shop`. Errors: as `openJob`; tools that can't be
/// read, with their file.
Result<OpenedJob> openJobInShop(const Arguments& arguments);

/// Says in one line whose tools are taken, where it is not only the document's or customary ones.
void sayWhoseTools(const OpenedJob& opened, const Streams& streams);
/// The same where nothing but the pins matters.
void sayWhosePins(const OpenedJob& opened, const Streams& streams);

/// Says in one line of each part whose print is still in doubt that it is a draft.
void sayDrafts(const OpenedJob& opened, const Streams& streams);

/// One setup of a solved part with its table.
struct PlannedSetup {
  std::size_t solved = 0;  ///< index into OpenedJob::solved
  Setup setup;
  TableOptions options;            ///< the table was made with
  SetupTable table;                ///< says nothing where it is of the lathe
  std::optional<LatheWork> lathe;  ///< a setup of the lathe

  const Step& step() const { return lathe ? lathe->step : table.step; }
};

/// Tables of the setup `--setup` names in every part that has it, or of all; a part without any
/// gets the default one. `--unit` and `--step` are heeded. Errors: `notFound`, `badRequest`, and
/// those of planning.
Result<std::vector<PlannedSetup>> planJob(const Arguments& arguments, const OpenedJob& opened);

/// Whether a part has what exit status 1 stands for: a clash, a loose feature, or a figure that
/// was read twice and not alike.
bool hasFindings(const Solution& solution);
bool hasFindings(const OpenedJob& opened);

/// The unit `--unit` names, empty without it. Errors: `badRequest`.
Result<std::optional<Unit>> namedUnit(const Arguments& arguments);

}  // namespace inchwright::app
