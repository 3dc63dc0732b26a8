#pragma once

#include <string>
#include <vector>

#include "core/part/job.h"
#include "core/plan/drawn_part.h"
#include "core/plan/table.h"
#include "core/sheet/draw_list.h"
#include "core/sheet/tape_up.h"

namespace inchwright {

/// One setup of a part with its table, as the pages about the whole job need it. Refers only.
struct SetupInJob {
  const Setup& setup;
  const SetupTable& table;
  DrawnPart drawn;
  std::string number;     ///< of its sheet
  std::size_t pages = 0;  ///< of its sheet
};

/// A part of the job with what follows from it.
struct PartInJob {
  const Part& part;
  const Solution& solution;
  std::vector<SetupInJob> setups;
  std::vector<std::string> onLathe;  ///< names of its setups there
};

/// What the pages about the whole job draw on. Refers only: everything outlives them.
struct JobOnPaper {
  const Job& job;
  std::vector<PartInJob> parts;
  SheetOptions options;
};

/// Pictures a setup and numbers its sheet. Errors: as `workAt`.
Result<SetupInJob> setupInJob(const Job& job, const Part& part, const Solution& solution,
                              const Setup& setup, const SetupTable& table,
                              const SheetOptions& options);

/// All parts with how many there are, their setups and sheets, what is in doubt and what came out
/// wrong; last, where all parts are there, what may not go together.
std::vector<Page> coverPages(const JobOnPaper& job);

/// What to cut, part by part: the finished size as far as its outer sides are placed, with what is
/// left long in any setup, the pieces, and how much bar they take with a saw's kerf between them.
/// Of a turned part its length and largest diameter, what the parting tool takes, and what the
/// chuck holds by.
std::vector<Page> stockPages(const JobOnPaper& job);

/// What is fitted over the whole job, with where and how often; and what no table has.
std::vector<Page> toolPages(const JobOnPaper& job);

/// Every reading with its limits and a line to write on, part by part, then the sizes of the holes.
std::vector<Page> firstOffPages(const JobOnPaper& job);

/// Each two parts that may be mistaken for one another, drawn over each other from the zero of each
/// one's first setup, and in what they differ. Errors: as `differenceOf`.
Result<std::vector<Page>> differencePages(const JobOnPaper& job);

/// Each setup's face at full size, over several sheets where it is larger than the paper: with a
/// bar each way to be measured first, since printers stretch one. To scribe or lay a part on, not
/// to measure by.
std::vector<Page> layoutPages(const JobOnPaper& job);

/// How long the bars of a layout are: 4 in for an inch job, 100 mm for a metric one; mm.
double layoutBar(Unit unit);

/// What a saw takes: 1/16 in. From memory: hand hacksaws .032 to .050, bandsaws .035 and up.
Length customaryKerf();

}  // namespace inchwright
