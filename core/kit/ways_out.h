#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/kit/as_made.h"
#include "core/making/put_right.h"
#include "core/part/mate.h"

namespace inchwright {

/// What a way out does to one thing that the hole has a part in.
struct Effect {
  enum class Of { reading, mate, gap };

  Of of = Of::mate;
  std::string name;  ///< the reading's id, the mate's or gap's name
  /// As it is now and as it then would be: a distance, a clearance, a gap; an end is empty where
  /// nothing says it.
  FoundSize before;
  FoundSize after;
  bool holds = false;  ///< all that it may then be lies within what is asked

  bool operator==(const Effect&) const = default;
};

std::string_view nameOf(Effect::Of of);

/// A way to put a hole right that came out wrong, with its figures and what it costs.
struct Way {
  WayOut way = WayOut::leave;
  std::string setup;  ///< where the figures count: the readout of this setup
  std::optional<Length> centreX;
  std::optional<Length> centreY;
  std::optional<Bushing> bushing;  ///< of a bush, an eccentric bush or a plug
  /// The shaft that suits; where the first is larger than the second there is none.
  std::optional<FoundSize> shaft;
  std::optional<Length> size;  ///< the next size up
  std::string sizeName;        ///< `5/16`, `#10-32 UNF`
  /// From the found centre to the wanted one, as the readout shows; 0, 0 where it is not off.
  Length towardX;
  Length towardY;
  std::vector<Effect> effects;

  bool operator==(const Way&) const = default;
};

/// What of a way out is kept with the choice, to tell later whether it is another.
ChosenFigures figuresOf(const Way& way);

/// All ways out of a hole, in the order in which they are to be thought of; `leave` is always the
/// last. A shaft to suit needs a mate; an eccentric bush a hole that is off its place.
///
/// A hole of .2500 to .2506 found .2518 ± .0003 whose shaft needs .0002 to .0013 → a shaft of .2508
/// to .2513, or a bush in a bore of 5/16.
/// `solutions` are those of the job's parts. Errors: `notFound` for a part or place; `badRequest`
/// for a place that is no hole, or where nothing was measured; as `asMade`, `bushOnWantedCentre`.
Result<std::vector<Way>> waysOut(const Job& job, std::span<const Solution> solutions,
                                 std::string_view part, std::string_view place);

/// The same figures for one measured row of a part, without what they do to the rest of the job.
Result<std::vector<Way>> waysWithoutEffects(const Job& job, const Part& part, const MadeRow& row);

}  // namespace inchwright
