#include "core/measure/tolerance_tail.h"

#include <algorithm>
#include <utility>

namespace inchwright::reading {
namespace {

/// Sizes below this keep every later difference and sum of two within 64 bits.
constexpr std::int64_t kLargest = std::int64_t{1} << 62;
constexpr std::int64_t kLargestDeviation = std::int64_t{1} << 61;
/// Limits are closer than a tenth of the size, or than 0.030 in.
constexpr std::int64_t kNear = Length::kTicksPerInch * 3 / 100;
constexpr int kNearShare = 10;

struct LimitShape {
  const Token* low = nullptr;
  const Token* high = nullptr;
  bool tight = false;
  UnitMeaning unit;
};

std::optional<UnitMeaning> unitAt(const Cursor& cursor, std::ptrdiff_t ahead) {
  const Token& token = cursor.peek(ahead);
  return token.kind == TokenKind::unit ? meaningOf(token.unit) : std::nullopt;
}

std::optional<Rational> valueOf(const Token& number, std::int64_t ticks) {
  Int128 scale = 1;
  for (int i = 0; i < number.places; ++i) scale *= 10;
  return Rational::of(number.value, scale)->times(Rational(ticks));
}

/// number [unit] stroke number [unit], and nothing that would go on with a sum.
std::optional<LimitShape> shapeAhead(const Cursor& cursor, const Bare& bare) {
  LimitShape shape;
  shape.low = &cursor.peek();
  const bool unitBetween = unitAt(cursor, 1).has_value();
  const std::ptrdiff_t stroke = unitBetween ? 2 : 1;
  const Token& second = cursor.peek(stroke + 1);
  if (shape.low->kind != TokenKind::number || cursor.peek(stroke).kind != TokenKind::slash ||
      second.kind != TokenKind::number) {
    return std::nullopt;
  }
  shape.high = &second;
  shape.tight = cursor.tight(stroke) && cursor.tight(stroke + 1);
  std::ptrdiff_t after = stroke + 2;
  shape.unit = unitBetween ? *unitAt(cursor, 1) : bare.unit;
  if (const auto unit = unitAt(cursor, after)) {
    if (unitBetween && unit->ticks != shape.unit.ticks) return std::nullopt;
    shape.unit = *unit;
    ++after;
  }
  switch (cursor.peek(after).kind) {
    case TokenKind::end:
    case TokenKind::close:
    case TokenKind::symbol:
    case TokenKind::remark:
      return shape;
    default:
      return std::nullopt;
  }
}

bool areNear(const Rational& a, const Rational& b) {
  const auto wide = a < b ? b.minus(a) : a.minus(b);
  const auto scaled = wide ? wide->times(Rational(kNearShare)) : std::nullopt;
  return scaled && (*wide <= Rational(kNear) || *scaled <= std::max(a, b));
}

bool fits(Int128 value, std::int64_t bound) {
  return value < bound && value > -bound;
}

/// A deviation: its sign, 0 for none, and its size.
struct Deviation {
  int sign = 0;
  Quantity size;
  std::size_t at = 0;
};

bool readDeviation(Cursor& cursor, Deviation& deviation) {
  deviation.at = cursor.peek().at;
  if (cursor.skip(TokenKind::plus)) {
    deviation.sign = 1;
  } else if (cursor.skip(TokenKind::minus)) {
    deviation.sign = -1;
  }
  return readMeasure(cursor, deviation.size);
}

/// Gives a deviation without unit that of `unit`.
bool giveUnit(Cursor& cursor, const Bare& bare, const UnitMeaning& unit, Deviation& deviation) {
  Quantity& size = deviation.size;
  if (!size.bare) return true;
  if (unit.ticks == 0 || unit.ticks > Length::kTicksPerInch) {
    return cursor.fail(size.at, "say the unit of the tolerance");
  }
  if (size.count && !size.number.isZero() && unit.ticks == Length::kTicksPerInch) {
    return cursor.fail(size.at, "a tolerance of whole inches: write its point, or its unit");
  }
  Bare own = bare;
  own.unit = unit;
  return toTicks(cursor, own, size);
}

/// What deviations without any unit are in.
UnitMeaning unitOfTail(const Bare& bare, const Quantity& nominal) {
  return bare.covered ? bare.unit : nominal.unit;
}

bool keepTolerance(Cursor& cursor, std::size_t at, const Rational& low, const Rational& high,
                   Outcome& outcome) {
  const Int128 upper = high.floor();
  const Int128 lower = low.ceiling();
  if (!fits(upper, kLargestDeviation) || !fits(lower, kLargestDeviation)) {
    return cursor.failRange(at);
  }
  if (upper <= lower) return cursor.fail(at, "a tolerance with no room between its ends");
  // Wider than the size itself, and too wide for a small size: a point is missing.
  const Int128 size = outcome.value.magnitude().ticks();
  if (size != 0 && (upper > size || -lower > size) && upper - lower > 2 * Int128{kNear}) {
    return cursor.fail(at, "the tolerance is wider than the size: is a point or unit missing?");
  }
  outcome.tolerance = Tolerance{Length::ticks(static_cast<std::int64_t>(upper)),
                                Length::ticks(static_cast<std::int64_t>(lower))};
  return true;
}

bool readSymmetric(Cursor& cursor, const Bare& bare, Outcome& outcome) {
  const std::size_t at = cursor.take().at;
  Deviation deviation;
  if (!readDeviation(cursor, deviation)) return false;
  if (deviation.sign != 0) return cursor.fail(deviation.at, "a sign after ±");
  if (!giveUnit(cursor, bare, unitOfTail(bare, outcome.nominal), deviation)) return false;
  const Rational& size = deviation.size.number;
  return keepTolerance(cursor, at, size.negated(), size, outcome);
}

bool readPair(Cursor& cursor, const Bare& bare, Outcome& outcome) {
  static constexpr const char* kBoth =
      "a tolerance needs both deviations, such as +.002 -.000: to add or subtract, put spaces on "
      "both sides of the sign";
  Deviation first, second;
  if (!readDeviation(cursor, first)) return false;
  cursor.skip(TokenKind::slash);
  if (!tailAhead(cursor) && !cursor.peek().whole() && !cursor.peek().decimal()) {
    return cursor.fail(first.at, kBoth);
  }
  if (!readDeviation(cursor, second)) return false;
  for (const Deviation& one : {first, second}) {
    if (one.sign == 0 && !one.size.number.isZero()) {
      return cursor.fail(one.at, "the sign of this deviation is missing");
    }
  }
  const UnitMeaning shared = unitOfTail(bare, outcome.nominal);
  const UnitMeaning forFirst = second.size.bare ? shared : second.size.unit;
  const UnitMeaning forSecond = first.size.bare ? shared : first.size.unit;
  if (!giveUnit(cursor, bare, forFirst, first) || !giveUnit(cursor, bare, forSecond, second)) {
    return false;
  }
  Rational high = first.sign < 0 ? first.size.number.negated() : first.size.number;
  Rational low = second.sign < 0 ? second.size.number.negated() : second.size.number;
  if (high < low) std::swap(high, low);
  return keepTolerance(cursor, first.at, low, high, outcome);
}

}  // namespace

bool limitsAhead(Cursor& cursor, const Bare& bare) {
  if (oldBritishAhead(cursor)) return false;
  const auto shape = shapeAhead(cursor, bare);
  if (!shape) return false;
  const bool bothDecimal = shape->low->hasMark && shape->high->hasMark;
  const bool oneDecimal = shape->low->hasMark || shape->high->hasMark;
  const bool metric = shape->unit.family == Unit::millimetre;
  if (!bothDecimal && !(oneDecimal && shape->tight && metric)) return false;
  const auto a = valueOf(*shape->low, shape->unit.ticks);
  const auto b = valueOf(*shape->high, shape->unit.ticks);
  if (!a || !b) return false;
  if (areNear(*a, *b)) return true;
  if (shape->tight) {
    cursor.fail(shape->low->at, "too far apart for limits: put spaces round a stroke that divides");
  }
  return false;
}

bool readLimits(Cursor& cursor, const Bare& bare, Outcome& outcome) {
  const LimitShape shape = *shapeAhead(cursor, bare);
  const std::size_t at = shape.low->at;
  auto low = *valueOf(*shape.low, shape.unit.ticks);
  auto high = *valueOf(*shape.high, shape.unit.ticks);
  if (high < low) std::swap(low, high);
  const Int128 lowest = low.ceiling();
  const Int128 highest = high.floor();
  if (!fits(lowest, kLargest) || !fits(highest, kLargest)) return cursor.failRange(at);
  if (lowest >= highest) return cursor.fail(at, "limits with no room between them");
  const Rational middle = *Rational::of(lowest + highest, 2);
  outcome.value = *nearestTick(middle);
  outcome.exact = middle.isWhole();
  const std::int64_t value = outcome.value.ticks();
  outcome.tolerance = Tolerance{Length::ticks(static_cast<std::int64_t>(highest - value)),
                                Length::ticks(static_cast<std::int64_t>(lowest - value))};
  outcome.nominal.at = at;
  outcome.nominal.style.decimal = true;
  outcome.nominal.style.places = std::max<int>(shape.low->places, shape.high->places);
  outcome.nominal.style.places = std::max(0, outcome.nominal.style.places + shape.unit.placesShift);
  outcome.nominal.unit = shape.unit;
  outcome.nominal.bare = false;
  // The two numbers, the stroke and what units there are.
  while (cursor.peek().kind == TokenKind::number || cursor.peek().kind == TokenKind::slash ||
         cursor.peek().kind == TokenKind::unit) {
    cursor.take();
  }
  return true;
}

bool tailAhead(const Cursor& cursor) {
  if (toleranceAhead(cursor)) return true;
  const Token& token = cursor.peek();
  if (token.kind == TokenKind::plus || token.kind == TokenKind::minus) {
    return startsFigure(cursor.peek(1)) && cursor.tight(1);
  }
  if (token.kind != TokenKind::number || token.value != 0) return false;
  const TokenKind next = cursor.peek(1).kind;
  return next == TokenKind::slash || next == TokenKind::plus || next == TokenKind::minus;
}

bool readTail(Cursor& cursor, const Bare& bare, Outcome& outcome) {
  if (cursor.peek().kind == TokenKind::plusMinus) return readSymmetric(cursor, bare, outcome);
  return readPair(cursor, bare, outcome);
}

bool settle(Cursor& cursor, Outcome& outcome) {
  const auto value = nearestTick(outcome.nominal.number);
  if (!value || !fits(value->ticks(), kLargest)) return cursor.failRange(outcome.nominal.at);
  outcome.value = *value;
  outcome.exact = outcome.nominal.number.isWhole();
  return true;
}

}  // namespace inchwright::reading
