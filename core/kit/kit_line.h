#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// What a line about the kit is about.
enum class KitThing { mate, gap, otherHand };

struct KitLineOutcome {
  Job job;
  KitThing thing = KitThing::mate;
  std::string name;      ///< of the mate, the gap, or the part begun
  bool removed = false;  ///< it was taken away

  bool operator==(const KitLineOutcome&) const = default;
};

/// Whether a line is one about what goes together in the job, well formed or not: it begins with
/// `mate`, `gap` or `other hand`, or with `change` or `delete` and one of the first two.
bool isKitLine(std::string_view line);

/// Does to a job what one line of text says; the job itself is left as it was.
///
///     mate bush in the plate: hole A of Plate, shaft P of Bush, fit LN2
///     mate arbor: hole .3755/.3750, shaft P of Arbor, least .0005, greatest .0015
///     mate pillars: hole A of Plate, shaft S of Pillar, least .001, greatest .004, places A B C D
///     gap end shake: x S to E of Pillar; - z N to T of Plate; - length .031 ±.001 of Bush;
///         least .0015; greatest .025
///     gap mesh: centres A to B of Plate; fit RC4 at 3/32; hole A of Plate, shaft P of Bush
///     gap grip: length .375 called screw under its head; - screw #8-32 fit close
///     change mate arbor: …        delete mate arbor        (gap likewise)
///     other hand of Right cock across x called Left cock
///
/// Members of a gap stand between semicolons, with a minus where they take from it. Of a distance
/// the axis is left out where its two ends share only one. Bare figures are in the job's unit. The
/// names of parts may hold anything, blanks and commas too.
/// Errors: `badText` with the byte offset in `at`, and those of kit_edits.h.
Result<KitLineOutcome> applyKitLine(const Job& job, std::string_view line);

/// The line as far as it goes: what it does not say yet is empty, and whether all of it is there is
/// not looked at. `line` begins with `mate` or `gap`.
Result<Mate> readMateLine(const Job& job, std::string_view line);
Result<Gap> readGapLine(const Job& job, std::string_view line);

/// The line that says this, so that it can be put right: read again it gives the same, but for what
/// is not known here. Of a gap's member whose part is of several pieces, each time is said.
std::string mateLine(const Mate& mate);
std::string gapLine(const Gap& gap);

}  // namespace inchwright
