#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/chain/clash.h"
#include "core/chain/positions.h"
#include "core/part/job.h"
#include "core/place/beyond_chains.h"
#include "core/suspect/centre_suspects.h"
#include "core/suspect/rounding.h"
#include "core/suspect/suspect.h"

namespace inchwright {

/// A place that nothing fixes against the rest of the part along an axis, and what would place it.
struct Loose {
  enum class Lacks {
    distance,       ///< a reading, or what it is in line with
    pitchDiameter,  ///< of ring `of`
    firstAngle,     ///< of ring `of`
    anything,       ///< nothing on the print says anything of it
    side,           ///< which outer side the edge `of` is: the round lies inside it
  };

  Id id;
  Axis axis = Axis::x;
  Lacks lacks = Lacks::distance;
  Id of = {};                          ///< the ring or edge that lacks it
  Id fixed = {};                       ///< a placed one to measure from; empty when there is none
  std::vector<Id> kin = {};            ///< the first few that it hangs together with
  bool moreKin = false;                ///< and others
  std::optional<FreePlace> free = {};  ///< how it can still move, where it is held half

  bool operator==(const Loose&) const = default;
};

/// So many ids are named one by one before others are only said to be there.
inline constexpr std::size_t kMostNamed = 4;

/// What does not go together in the sizes of one feature or of a part's title block.
struct SizeOddity {
  enum class What {
    seatNotWider,   ///< a seat of `figure` is no wider than its hole, `other`
    seatNotSaid,    ///< a counterbore, countersink or spotface without a diameter
    sizeNotSaid,    ///< a hole, and nothing says how large
    limitsUnknown,  ///< limits of a class, `figure`, that no table here has
    shaftLimits,    ///< limits of a shaft's class, `figure`, at a hole
    seatTooDeep,    ///< a seat of `figure` reaches the end of its hole, `other` deep
    threadNotSaid,  ///< tapped, and no thread is named
    notTapped,      ///< a thread is named, and it is not tapped
    offThread,      ///< `figure` is neither the outside nor the tapping size of its thread, `other`
    offLimits,      ///< `figure` lies outside of its own limits, `other`
    deeperThanPart,  ///< cut `figure` deep into a part `other` thick
    pastFullTurn,    ///< an angle of `figure`, a full turn or more
    oneHole,         ///< a ring or row of a single hole
    generalOrder,    ///< three places, `figure`, are allowed more than two, `other`
    generalOdd,      ///< a general tolerance of `figure` is an odd figure
  };
  What what = What::seatNotWider;
  std::string figure = {};  ///< as lettered
  std::string other = {};

  bool operator==(const SizeOddity&) const = default;
};

/// A member of the document that is nearly one that is known: `stok`, `stock`.
struct Misspelt {
  std::string name;
  std::string meant;
  std::string object = {};  ///< which of the document's, where it is none of a part's: `machine`

  bool operator==(const Misspelt&) const = default;
};

/// What placing beyond the chains has to ask, by the list of `BeyondChains` that it stands in.
enum class PlacingDoubt { none, answers, clashes, weak };

/// One thing to ask the print or the draughtsman about. What it is about is in its key; the rest
/// are the figures, which `about` tells as one text for an accepted doubt to be held against.
struct Doubt {
  DoubtKey key;
  std::string about = {};
  /// Index into `Solution::clashes` (a clash), `roundings` (rounded, misfit), `loose`, or the list
  /// of `Solution::beyond` that `placing` names.
  std::size_t index = 0;
  PlacingDoubt placing = PlacingDoubt::none;
  std::optional<Source> source = {};        ///< the reading, understanding or feature in question
  std::optional<Length> by = {};            ///< how far outside, over the edge or into one another
  std::optional<Length> drawn = {};         ///< as traced, to a 64th
  std::optional<int> drawnDegrees = {};     ///< of an angle instead
  std::vector<Id> nearby = {};              ///< places to point at beside those of the key
  std::vector<std::string> questions = {};  ///< what is odd about a figure
  std::string entered = {};                 ///< the size that a reading contradicts, as lettered
  bool saysRadius = false;                  ///< and the reading is a radius, that a diameter
  std::vector<SizeOddity> sizes = {};       ///< of a feature or title block
  std::vector<Misspelt> misspelt = {};
  bool accepted = false;
  std::string reason = {};  ///< why it was accepted, in the user's words

  /// All but what is only remarked makes the sheet a DRAFT until it is accepted.
  bool holdsUp() const {
    return !accepted && key.topic != DoubtTopic::alone && key.topic != DoubtTopic::misfit;
  }
  /// Contradicts something: to be looked at before the part is made, whatever else is assumed.
  bool isFinding() const;
  /// Places and readings to point at.
  std::vector<Id> pointsAt() const;

  bool operator==(const Doubt&) const = default;
};

/// All that follows from a part's readings. A pure function of the part; the order in which
/// features and readings are listed never changes it (lists are ordered by id).
struct Solution {
  // What copies it is compiled once, not anew in every room.
  Solution();
  Solution(const Solution& other);
  Solution(Solution&& other) noexcept;
  Solution& operator=(const Solution& other);
  Solution& operator=(Solution&& other) noexcept;
  ~Solution();

  Positions positions;     ///< every place that has the axis is there
  std::vector<Id> placed;  ///< features placed along each of their axes, in the part's order
  std::vector<Loose> loose;
  std::vector<Clash> clashes;
  std::vector<std::vector<Suspect>> suspects;  ///< by clash, likeliest first
  /// Loops that miss by no more than rounding their decimals takes, each with the fractions that
  /// close it; none where no fractions do.
  std::vector<Rounding> roundings;
  BeyondChains beyond;  ///< what placing found where chains did not lead
  std::vector<std::vector<CentreSuspect>>
      centreSuspects;                 ///< by clash of `beyond`, likeliest first
  std::vector<ReadingStatus> status;  ///< by index into Part::readings
  std::vector<Doubt> doubts;          ///< most pressing topics first

  const Position* position(std::string_view id, Axis axis) const {
    return positions.find(id, axis);
  }
  /// Ticks from a to b along an axis; empty when nothing fixes them against each other.
  std::optional<Rational> between(std::string_view a, std::string_view b, Axis axis) const;
  bool isDraft() const;  ///< any doubt holds it up
  std::vector<Id> aloneIds(const Part& part) const;
};

struct SolveOptions {
  bool findSuspects = true;
};

/// Requires: `checkPart(part)` is fine. Errors: `outOfRange` when a sum leaves its exact type.
Result<Solution> solve(const Part& part, const SolveOptions& options = {});

/// Members outside of the parts that are nearly known ones: of the whole, the job, the machine, the
/// lathe, the shop, gaps and mates. Those of a part stand among its doubts.
std::vector<Misspelt> misspeltOutsideParts(const Job& job);

}  // namespace inchwright
