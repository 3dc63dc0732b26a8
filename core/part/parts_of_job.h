#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

// Edits of the job's list of parts, pure like those of `edit.h`. Errors: `notFound` for a part that
// is not there, `badRequest` as said.

/// The job in which a part, counted from 0, becomes `next` (of the same name). Its other hands
/// follow it. Where a feature of it is called otherwise by then, the mates, gaps and holes of other
/// parts that name it do so too, so that none of them comes to mean another hole.
///
/// Plate `A` → `B`: the mate "arbor in plate" is that of `B`. `badRequest` where one of them would
/// be left without a place it names; the text says which: a place that takes the name later would
/// be taken for it. Requires: there is such a part, and `next` is sound. Time linear in both.
Result<Job> withPartEdited(const Job& job, std::size_t part, Part next);

/// The part stands at another place of the list, counted from 0; beyond the end: last.
Result<Job> movePart(const Job& job, std::string_view name, std::size_t to);

/// A similar part to begin with, right behind the one it is copied from: all that the print says of
/// it, its setups and pictures, and nothing of what was done to it, accepted or chosen. Mates and
/// gaps stay with the original. `badRequest` where the new name is empty or taken.
Result<Job> copyPart(const Job& job, std::string_view name, std::string_view copy);

/// Renames a part and every mention of it: by mates, gaps, other hands and holes made with a mate.
/// `badRequest` where the new name is empty or taken.
Result<Job> renamePart(const Job& job, std::string_view name, std::string_view newName);

/// What of the job mentions a part besides itself, worded for people: `mate arbor`, `gap end
/// shake`, `hole A of back plate`, `left cock, its other hand`.
std::vector<std::string> mentionsOfPart(const Job& job, std::string_view name);

}  // namespace inchwright
