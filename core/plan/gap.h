#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/limits.h"
#include "core/part/job.h"
#include "core/shop/fits.h"
#include "core/solution/solution.h"
#include "core/tolerance/stack.h"

namespace inchwright {

/// What a gap between parts comes to, and whether it comes out as it has to.
struct GapStack {
  Stack stack;
  std::optional<Length> least;
  std::optional<Length> greatest;

  bool keeps(const Span& span) const;
  /// How far a span goes beyond what is required: below the least, above the greatest; 0 where it
  /// keeps to it.
  Span beyond(const Span& span) const;

  bool operator==(const GapStack&) const = default;
};

/// The stack across a gap, from the prints of all the parts it runs through.
///
/// - A distance in a part goes in as the readings of the chain that joins its places
///   (`chainBetween`). Of a part of which the job has one, it is one piece throughout: a reading
///   that comes up again goes in once, with the sum of its factors, and may cancel. Of a part of
///   which there are several, each member is another piece.
/// - A distance between two holes that follow another part's (`pair`, drilled once through both)
/// goes
///   in as the leading part's, so that both share one error.
/// - A length goes in with the tolerance lettered with it, else with that of the title block of the
///   part it names, else with the customary one.
/// - A fit goes in as its float: the shaft may lie half the clearance to either side, so it adds
///   nothing to the nominal and may stray by half the greatest clearance. One that is always tight
///   does not stray. Measured sizes go in as they stand, or with the limits lettered with them. A
///   screw goes in at its full outside diameter, a clearance hole at the size of its drill.
///
/// So a screw's grip or how deep its thread engages is a gap like any other: its length, less
/// what it passes through. Requires: `checkPart` is fine for each part. Errors: `badRequest` when a
/// member is not one thing or lacks a part of it, or when no length lies within the limits;
/// `notFound` for a part, place, fit or screw that is not there; `unsolvable` when nothing joins
/// two places; `outOfRange`. The place of the error is a JSON pointer relative to the gap, such as
/// `/members/2/part`.
Result<GapStack> gapStack(const Job& job, const Gap& gap, double inflation = kCustomaryInflation);
/// The place of an error of one member, or the beginning of it: `/members/2`.
std::string placeOfMember(std::size_t member);

/// A part as it is made from the zero of one of its setups.
struct MadePart {
  std::string part;  ///< its name
  Setup setup;
  const Solution* solution = nullptr;  ///< of the part; has to outlive it
};

/// The same as the parts come out that are made from zeros: in each of those a distance is two
/// coordinates (`membersFromZero`), each held to ±`held` where that is given; the other parts come
/// out as their prints let them. Of a part of which the job has one, a coordinate that comes up
/// again goes in once, so where two distances from one zero meet it cancels. Lengths and fits are
/// as in `gapStack`. Errors: as `gapStack` and `membersFromZero`.
Result<GapStack> gapStackFromZeros(const Job& job, const Gap& gap,
                                   const std::vector<MadePart>& made, std::optional<Length> held,
                                   double inflation = kCustomaryInflation);

/// What was measured: a size of a place, a distance within a part; empty where nothing was.
struct FoundFigures {
  std::function<std::optional<SizeLimits>(const PartPlace&)> size;
  std::function<std::optional<SizeLimits>(const Part&, Axis, const Id& from, const Id& to)>
      distance;
};

/// The same with what was measured in place of the print's figures: a distance then is one member
/// with its error, a hole or shaft the size that was found. Errors: as `gapStack`.
Result<GapStack> gapStackAsFound(const Job& job, const Gap& gap, const FoundFigures& found,
                                 double inflation = kCustomaryInflation);

/// Why gaps of the job can't be added up, one error for each that can't, with the pointer from the
/// document's root. A document keeps such gaps: a part that is edited must not make it unreadable.
std::vector<Error> gapFaults(const Job& job);

}  // namespace inchwright
