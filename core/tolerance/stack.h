#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/part/mate.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// What a member of a stack is; `memberName` (core/say) names it.
namespace member {

/// A reading of the print.
struct Read {
  Id reading;
  bool operator==(const Read&) const = default;
};
/// A figure of a feature's own, such as the pitch of a row.
struct Shape {
  FeatureKind kind = FeatureKind::row;
  Id feature;
  bool operator==(const Shape&) const = default;
};
/// A place worked to from zero; where the stack is slanted, along one axis.
struct FromZero {
  Id place;
  std::optional<Axis> axis = {};
  bool operator==(const FromZero&) const = default;
};
/// What the document gives a name of its own.
struct Named {
  std::string name;
  bool operator==(const Named&) const = default;
};
/// A length by itself; its figure is the member's text.
struct Alone {
  bool operator==(const Alone&) const = default;
};
/// The float of a fit by its name: `H7/g6` on a size as lettered.
struct Fitted {
  std::string fit;
  std::string size;
  bool operator==(const Fitted&) const = default;
};
/// That of a screw in a clearance hole by its fit and drill, or in a hole of its own.
struct Screwed {
  std::string thread;
  std::string fit;
  std::string drill;
  bool operator==(const Screwed&) const = default;
};
struct ScrewedIn {
  std::string thread;
  SizeOrPlace hole;
  bool operator==(const ScrewedIn&) const = default;
};
/// That of a shaft in a hole, each a size as lettered or a place.
struct Shafted {
  SizeOrPlace hole;
  SizeOrPlace shaft;
  bool operator==(const Shafted&) const = default;
};
/// A distance as it was found on the part.
struct Found {
  bool operator==(const Found&) const = default;
};

}  // namespace member

using MemberKind = std::variant<member::Read, member::Shape, member::FromZero, member::Named,
                                member::Alone, member::Fitted, member::Screwed, member::ScrewedIn,
                                member::Shafted, member::Found>;

/// One member of a stack: a length that goes in with a factor and may stray within its limits.
struct StackMember {
  MemberKind what;
  std::string text;  ///< as lettered; empty for what has no lettering
  Id from;           ///< where the walk over this member begins; empty for zero
  Id to;             ///< and ends
  /// ±1 in a plain chain; ±1/2 where a middle is taken; any where it is slanted
  Rational factor = 1;
  bool isSlanted = false;    ///< the factor is a slope, of the first order
  bool isAngle = false;      ///< nominal and limits are micro-arcseconds, the factor ticks for each
  std::int64_t nominal = 0;  ///< ticks, as lettered
  std::int64_t low = 0;
  std::int64_t high = 0;
  double share = 0;       ///< of the variance, when all members are alike in kind
  double worstShare = 0;  ///< of the worst case's width
  Rational rest = {};     ///< what nominal and limits have beyond ticks, at most half a tick
  std::string part;       ///< whose print it stands on, where a stack runs through several

  int sign() const { return factor.sign(); }
  /// The reading it is; null for anything else.
  const Id* reading() const {
    const auto* read = std::get_if<member::Read>(&what);
    return read != nullptr ? &read->reading : nullptr;
  }
  bool operator==(const StackMember&) const = default;
};

/// Ticks from least to greatest.
struct Span {
  std::int64_t low = 0;
  std::int64_t high = 0;

  std::int64_t width() const { return high - low; }
  bool operator==(const Span&) const = default;
};

/// How far a chain of lengths may come out from what the print says.
///
/// `nominal` is the print's. Unequal tolerances and limits spread about their own middle, so the
/// statistical spans lie about `middle`: the sum of the members' middles. `worst` is exact (rounded
/// outwards to the tick where a factor is a fraction); `rss` and `inflated` are the root sum square
/// of the members' halves, and that times `inflation`, to the nearest tick. Of a few members that
/// would be more than they can come to at worst, so `inflated` ends where `worst` does.
struct Stack {
  Rational nominal;
  Rational middle;
  Span worst;
  Span rss;
  Span inflated;
  bool inflatedIsHeld = false;  ///< the factor would have taken `inflated` beyond `worst`
  double inflation = 1.5;
  /// How far the corners of the worst case come out beyond `worst`, which is of the first order;
  /// empty where that is a tenth of its width or less, and of chains.
  std::optional<std::int64_t> secondOrder;
  std::vector<StackMember> members;

  bool operator==(const Stack&) const = default;
};

/// A root sum square by itself trusts that every member is centred and normal; shops widen it by
/// about a half, which is the factor taken here unless another is given (common practice).
inline constexpr double kCustomaryInflation = 1.5;

/// A slope as a fraction, to 2⁻³².
Rational fractionOf(double slope);

/// Adds the members up, to `base` where it is said. Fills in their shares. Errors: `outOfRange`;
/// `badRequest` when the factor is below 1 or no number, or when a member's low is above its high.
Result<Stack> stackOf(std::vector<StackMember> members, double inflation = kCustomaryInflation,
                      const Rational& base = 0);

/// The members that join two places along an axis as the print dimensions them, in walking order:
/// the chain with the fewest toleranced members, among those the one of the least width, then of
/// the lowest ids. Where only a middle or equal spaces join them, the members have fractions for
/// factors and stand in the order of their ids. Members without length or tolerance are left out.
///
/// The choice depends on the ids alone; from B to A it is the same chain backwards.
/// Errors: as `nodeAlong`; `unsolvable` when nothing toleranced joins the two.
Result<std::vector<StackMember>> chainBetween(const Part& part, const ToleranceNetwork& network,
                                              std::string_view from, std::string_view to);

}  // namespace inchwright
