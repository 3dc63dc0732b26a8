#pragma once

#include <string_view>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

// Edits of what goes together in a job, pure: each makes a new job. What can only be a slip is
// refused: a part or place that is not there, hole and shaft the wrong way round, limits that
// cross, a fit that no table has. What the print merely does not say yet (a size, a distance) is no
// reason: `asMade` tells it until it is there. Errors: `badRequest`, `notFound`; the text says what
// is wrong.

/// A mate in place of the one called `was`, which keeps its place in the list; of an empty `was` a
/// further one. Members of `was` that are not known here are kept.
Result<Job> withMate(const Job& job, std::string_view was, Mate mate);
Result<Job> withoutMate(const Job& job, std::string_view name);

/// The same of a gap. Of several pieces of one part each member is another.
Result<Job> withGap(const Job& job, std::string_view was, Gap gap);
Result<Job> withoutGap(const Job& job, std::string_view name);

/// Begins the other hand of a part right behind it: all of it mirrored, and following it from then
/// on but for what is changed of its own. `across` x: left becomes right; y: front becomes back.
/// `badRequest` also where that part is itself another's other hand.
Result<Job> withOtherHand(const Job& job, std::string_view of, Axis across, std::string_view name);

/// A part that is another's other hand stands for itself from now on, as it is.
Result<Job> standingAlone(const Job& job, std::string_view name);

}  // namespace inchwright
