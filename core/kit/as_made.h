#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/making/drawn_size.h"
#include "core/making/found_size.h"
#include "core/part/job.h"
#include "core/plan/gap.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// What one place was to be and what it came out as.
struct MadeRow {
  std::string part;
  Id place;
  std::string setup;
  std::string piece;
  /// As the setup's readout shows it; empty where the place has no row there.
  std::optional<Coordinate> wantedX;
  std::optional<Coordinate> wantedY;
  std::optional<DrawnSize> wantedSize;
  std::optional<Length> foundX;
  std::optional<Length> foundY;
  FoundSize foundSize;
  /// Found less wanted; empty where it was not measured.
  std::optional<Length> offX;
  std::optional<Length> offY;
  /// One of the size; `offPlace` beside it where a coordinate is off by more than its budget.
  std::vector<Verdict> verdicts;
  bool unlikely = false;  ///< the size: see `isUnlikely`
  /// It came out over, under or off its place, and no way out is chosen for it; of `asMade` alone.
  bool open = false;

  bool has(Verdict verdict) const;
  /// Over, under or off its place.
  bool cameOutWrong() const;
  bool operator==(const MadeRow&) const = default;
};

/// A hole on its shaft: the clearance on the diameter, negative where it is tight.
struct MateState {
  std::string name;
  FoundSize clearance;  ///< as made wherever something was measured, else as drawn
  FoundSize clearanceAsDrawn;
  FoundSize wanted;
  Verdict verdict = Verdict::notMeasured;
  bool measured = false;  ///< one of the two was
  /// As lettered the hole is smaller than what is to run in it.
  bool tightAsLettered = false;
  bool toBeSuited = false;     ///< see `isToBeSuited`: nothing stands in the way then
  std::optional<Error> fault;  ///< why it can't be worked out; then the rest says nothing

  bool operator==(const MateState&) const = default;
};

struct GapState {
  std::string name;
  Span asDrawn;  ///< worst case
  Span asMade;
  std::optional<Length> least;
  std::optional<Length> greatest;
  bool keepsAsDrawn = false;
  bool keeps = false;
  std::optional<Error> fault;

  bool operator==(const GapState&) const = default;
};

/// Something measured at a place or in a setup that the part no longer has.
struct MadeNowhere {
  std::string part;
  Id place;
  std::string setup;  ///< empty where it is the place that is gone

  bool operator==(const MadeNowhere&) const = default;
};

/// A way out that was chosen for a place, and has other figures since something else was measured.
struct ChangedChoice {
  std::string part;
  Id place;
  WayOut way = WayOut::leave;
  ChosenFigures was;

  bool operator==(const ChangedChoice&) const = default;
};

/// All that was measured in a job, and what follows from it for what goes together.
struct AsMade {
  std::vector<MadeRow> rows;  ///< in the document's order
  std::vector<MadeNowhere> nowhere;
  std::vector<MateState> mates;
  std::vector<GapState> gaps;
  std::vector<ChangedChoice> changed;

  bool operator==(const AsMade&) const = default;
};

/// `solutions` are those of the job's parts, in their order. Entries of places that are no
/// longer there are left out of `rows`, and told in `nowhere` with those of setups. A mate or gap
/// that can't be worked out says why. Errors: `outOfRange`, and those of a setup's table.
Result<AsMade> asMade(const Job& job, std::span<const Solution> solutions);

/// Whether a place of this part came out wrong, with no way out chosen.
bool hasOpen(const AsMade& made, std::string_view part);

/// What of it touches one part: its own rows, and the mates and gaps it is a member of.
/// `all` is `asMade(job, …)`.
AsMade concerning(const Job& job, const AsMade& all, std::string_view part);

/// Of one part alone, and of the mates alone.
Result<std::vector<MadeRow>> madeRows(const Job& job, const Part& part, const Solution& solution);
std::vector<MateState> mateStates(const Job& job);
/// Of one gap, as drawn and as made.
GapState gapState(const Job& job, const Gap& gap, std::span<const Solution> solutions);

/// The size of a hole or shaft as it is now: found where it was measured, else as drawn.
/// Of several pieces all that any may be; of several entries for one piece the last.
struct SizeNow {
  FoundSize size;
  Length nominal;
  bool measured = false;
  bool unlikely = false;  ///< see `isUnlikely`; nothing is to be made to suit it

  bool operator==(const SizeNow&) const = default;
};

Result<SizeNow> sizeNow(const Job& job, const SizeOrPlace& side);
Result<SizeNow> sizeAsDrawn(const Job& job, const SizeOrPlace& side);

/// The clearance of a hole on a shaft; an end is empty where one of the two does not say it.
FoundSize clearanceOf(const FoundSize& hole, const FoundSize& shaft);
/// What a mate asks for. Errors: as `fitByName` and `drawnSize`; `badRequest` for one that asks for
/// nothing.
Result<FoundSize> wantedClearance(const Job& job, const Mate& mate);
/// The holes of a mate: its one, or the places of its pattern.
std::vector<SizeOrPlace> holesOf(const Mate& mate);

/// Found sizes and distances for `gapStack`: what was measured, with its error.
FoundFigures foundFigures(const Job& job, std::span<const Solution> solutions);

}  // namespace inchwright
