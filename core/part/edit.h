#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

// Edits are pure: each makes a new part (or job) and leaves the one it was given as it is. The
// result passes `checkPart` when the given one did; else the edit is refused with the error of
// `checkPart` (its place points into the part as it would have become), `notFound` for what is not
// there, or `badRequest`. Time linear in the part.

/// The part as a turned one: it lies along X and has its centre line `CL` among its features. A
/// feature of that id which it has already stays as it is.
Part turnedPart(Part part);

Result<Part> addFeature(const Part& part, const Feature& feature);
/// The feature keeps its place in the list. With another id it is renamed as well.
Result<Part> replaceFeature(const Part& part, std::string_view id, const Feature& feature);
/// Renames a feature and every mention of it and of its holes and ends: in readings,
/// understandings, other features, zeros, check places, accepted doubts, what was made and mended.
/// Mentions by other parts, mates and gaps: `withPartEdited`.
Result<Part> renameFeature(const Part& part, std::string_view id, std::string_view newId);
/// Moves a feature's trace; the values as `Feature::traced`, empty for none.
Result<Part> moveTrace(const Part& part, std::string_view id,
                       const std::vector<std::string>& traced);

/// What mentions a feature or a place of it, worded for people: `reading r3`, `understanding 1`,
/// `zero of setup 1`, `round G`.
std::vector<std::string> mentionsOf(const Part& part, std::string_view id);

/// A part without a feature, and what went with it, worded as by `mentionsOf`.
struct Removal {
  Part part;
  std::vector<std::string> gone;

  bool operator==(const Removal&) const = default;
};

/// Removes a feature with all that mentions it: its readings, zeros and check places go; an
/// understanding goes unless it stays true and complete without it (in line, concentric, parallel);
/// a round struck about it stays and is loose.
Result<Removal> removeFeature(const Part& part, std::string_view id);

Result<Part> addReading(const Part& part, const Reading& reading);
/// The reading keeps its place in the list; its id may change.
Result<Part> replaceReading(const Part& part, std::string_view id, const Reading& reading);
Result<Part> removeReading(const Part& part, std::string_view id);

Result<Part> addUnderstanding(const Part& part, const Understanding& understanding);
Result<Part> removeUnderstanding(const Part& part, std::size_t index);

Result<Part> addSetup(const Part& part, const Setup& setup);
/// The setup keeps its place in the list; its name may change.
Result<Part> replaceSetup(const Part& part, std::string_view name, const Setup& setup);
Result<Part> removeSetup(const Part& part, std::string_view name);

/// A doubt let stand, in place of what was accepted of it before. A figure that came from clicks
/// (`assumed:::G`) is confirmed by that: its ring or row no longer says that it did.
Part withAccepted(const Part& part, const AcceptedDoubt& accepted);

/// Puts down how far a place has got; what says nothing is removed. Ids that the part does not have
/// are kept: a place may come back by undo.
Part withMade(const Part& part, const MadePlace& made);
/// What is known of a place in a setup, of whichever piece stands first; an empty one when nothing
/// is.
MadePlace madeAt(const Part& part, std::string_view place, std::string_view setup);
/// The same of one piece.
MadePlace madeOfPiece(const Part& part, std::string_view place, std::string_view setup,
                      std::string_view piece);
/// Writes down the way out that was chosen for a place of a piece, instead of one chosen before.
Part withMended(const Part& part, const Mended& mended);

Result<Job> addPart(const Job& job, const Part& part);
Result<Job> removePart(const Job& job, std::string_view name);

/// The id a new feature gets. Outer sides: `L` left, `R` right, `F` front, `K` back, `T` top, `U`
/// bottom, while free. Everything else: the first free of A, B, C … Z, AA, AB …, without I and O,
/// which look like 1 and 0, and without the letters of the sides. A name is free when neither it
/// nor it with a number behind is taken, so that it can become a ring's or a slot's; and when
/// nothing is known to have been made or mended under it, which would be taken for the new one's.
Id nextFeatureId(const Part& part, std::optional<Side> side = std::nullopt);
/// `r` and a number above those of all other readings, so that a removed one's is not given again
/// while a later one stands.
Id nextReadingId(const Part& part);

}  // namespace inchwright
