#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/chain/network.h"
#include "core/chain/position.h"
#include "core/part/job.h"

namespace inchwright {

/// A place that nothing fixes against the rest of the part along an axis.
struct Loose {
  Id id;
  Axis axis = Axis::x;
  std::string advice;  ///< what would place it, as a colleague would say it

  bool operator==(const Loose&) const = default;
};

/// One member of a loop, in walking order.
struct LoopMember {
  Source source;
  std::string label;  ///< the reading's id, or a name such as `A midway F–K`
  std::string text;   ///< as lettered; empty for an understanding
  int sign = 1;       ///< −1 when the loop walks it from `to` to `from`
  Id from;            ///< where this step of the walk begins
  Id to;              ///< and ends
  Rational step;      ///< ticks, signed as walked
  Rational running;   ///< ticks, sum up to and including this member

  bool operator==(const LoopMember&) const = default;
};

/// A reading that, read otherwise, would close the loops.
struct Suspect {
  Id reading;
  Length wouldBe;           ///< what it would have to say
  std::string wouldBeText;  ///< lettered as the print would: `1 1/8`
  std::string why;          ///< `looks like 1 7/16`, `a whole inch dropped`, `half for full` …
  double weight = 0;        ///< higher is likelier; comparable within a solution only
  bool closesAll = false;   ///< alone it closes every missing loop of its group

  /// Why, to be said right after what it would be: without naming that again.
  std::string reason() const;

  bool operator==(const Suspect&) const = default;
};

/// A loop that does not close.
struct Clash {
  Axis axis = Axis::x;
  /// What the loop's last member says less what the others make; ticks. Positive: the print's
  /// closing figure is longer than the chain.
  Rational missesBy;
  std::vector<LoopMember> loop;
  std::vector<Suspect> suspects;  ///< likeliest first

  /// The ids of the readings in the loop, in walking order.
  std::vector<Id> readingIds() const;
  bool operator==(const Clash&) const = default;
};

enum class DoubtKind { loose, clash, alone, assumed, unplacedKind, question, readTwice };

/// One thing to ask the print or the draughtsman about, worded for people.
struct Doubt {
  DoubtKind kind = DoubtKind::question;
  /// Names the doubt from one run to the next, such as `loose:C:y`; kept in Part::accepted.
  std::string key;
  std::string text;
  std::vector<Id> about;  ///< places and readings to point at
  bool accepted = false;
  /// Whether it makes the sheet a DRAFT: everything but `alone` does until it is accepted.
  bool holdsUp() const { return !accepted && kind != DoubtKind::alone; }

  bool operator==(const Doubt&) const = default;
};

enum class ReadingStatus { agrees, clashes, alone, unused };

/// All that follows from a part's readings. A pure function of the part; the order in which
/// features and readings are listed never changes it (lists are ordered by id).
///
/// Group 0 along an axis is the component with the most outer sides (edges with a `side`), then
/// the most places, then the first id: that is the part, and what is not in it is loose.
struct Solution {
  /// By place and axis; every place that has the axis is there.
  std::map<std::pair<Id, Axis>, Position> positions;
  std::vector<Id> placed;  ///< features placed along each of their axes, in the part's order
  std::vector<Loose> loose;
  std::vector<Clash> clashes;
  std::map<Id, ReadingStatus> status;  ///< by reading
  std::vector<Doubt> doubts;           ///< clashes first, then loose, assumed, questions, alone

  const Position* position(std::string_view id, Axis axis) const;
  /// Ticks from a to b along an axis; empty when nothing fixes them against each other.
  std::optional<Rational> between(std::string_view a, std::string_view b, Axis axis) const;
  bool isDraft() const;  ///< any doubt holds it up
  std::vector<Id> aloneIds() const;
};

struct SolveOptions {
  bool findSuspects = true;
};

/// Requires: `checkPart(part)` is fine. Errors: `outOfRange` when a sum leaves its exact type.
Result<Solution> solve(const Part& part, const SolveOptions& options = {});

}  // namespace inchwright
