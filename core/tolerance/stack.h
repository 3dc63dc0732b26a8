#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// One member of a stack: a length that goes in with a factor and may stray within its limits.
struct StackMember {
  std::string label;  ///< the reading's id, or a name such as `row D` or `fit H7/g6 1/4`
  std::string text;   ///< as lettered; empty for what has no lettering
  Id from;            ///< where the walk over this member begins
  Id to;              ///< and ends
  /// ±1 in a plain chain; ±1/2 where a middle is taken; any where it is slanted
  Rational factor = 1;
  bool isSlanted = false;    ///< the factor is a slope, of the first order
  bool isAngle = false;      ///< nominal and limits are micro-arcseconds, the factor ticks for each
  std::int64_t nominal = 0;  ///< ticks, as lettered
  std::int64_t low = 0;
  std::int64_t high = 0;
  double share = 0;       ///< of the variance, when all members are alike in kind
  double worstShare = 0;  ///< of the worst case's width
  std::string part;       ///< whose print it stands on, where a stack runs through several

  int sign() const { return factor.sign(); }
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
