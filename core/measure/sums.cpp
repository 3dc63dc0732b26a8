#include "core/measure/sums.h"

#include <algorithm>

#include "core/measure/lettered.h"

namespace inchwright::reading {
namespace {

constexpr int kDeepestBrackets = 16;
/// Wider than this, 0.020 in, no deviation lettered in decimals is expected to be.
constexpr std::int64_t kWidestDeviation = Length::kTicksPerInch / 50;

bool isSign(const Token& token) {
  return token.kind == TokenKind::plus || token.kind == TokenKind::minus;
}

bool isDecimalOrZero(const Token& token) {
  return token.decimal() || (token.whole() && token.value == 0);
}

/// Sets `target` or reports that the exact arithmetic overflowed.
bool keep(Cursor& cursor, std::size_t at, const std::optional<Rational>& value, Rational& target) {
  if (!value) return cursor.failRange(at);
  target = *value;
  return true;
}

bool applyUnit(Cursor& cursor, const UnitMeaning& unit, Quantity& quantity) {
  if (unit.family == Unit::millimetre && quantity.style.fraction) {
    cursor.ask("a fraction of a millimetre: is it inches?");
  } else if (quantity.style.fraction && unit.ticks > Length::kTicksPerInch) {
    cursor.ask("a fraction of a foot: is it inches?");
  } else if (quantity.style.fraction && unit.ticks < Length::kTicksPerInch) {
    cursor.ask("a fraction of a thou: is it inches?");
  }
  quantity.bare = quantity.count = false;
  quantity.unit = unit;
  if (unit.placesShift > 0) quantity.style.decimal = true;
  if (quantity.style.decimal) {
    quantity.style.fraction = false;
    quantity.style.places = std::max(0, quantity.style.places + unit.placesShift);
  }
  return keep(cursor, quantity.at, quantity.number.times(Rational(unit.ticks)), quantity.number);
}

/// The inches after feet: `2 3/8"` of `1' 2 3/8"`, joined by a space, by nothing or by a dash.
bool readInches(Cursor& cursor, bool wholeFeet, Quantity& quantity) {
  if (cursor.peek().kind == TokenKind::minus) cursor.take();
  const std::size_t at = cursor.peek().at;
  if (!wholeFeet) return cursor.fail(at, "inches follow whole feet only");
  Figure inches;
  if (!readFigure(cursor, inches)) return false;
  if (cursor.peek().kind == TokenKind::unit) {
    if (cursor.peek().unit != UnitWord::inch) return cursor.failHere("inches must follow feet");
    cursor.take();
  }
  if (inches.number >= Rational(12)) cursor.ask("12 inches or more after feet: is it read right?");
  const auto ticks = inches.number.times(Rational(Length::kTicksPerInch));
  quantity.unit = *meaningOf(UnitWord::inch);
  quantity.style.fraction = inches.form == Form::fraction;
  quantity.style.decimal = inches.form == Form::decimal;
  quantity.style.places = inches.places;
  return keep(cursor, at, ticks ? quantity.number.plus(*ticks) : std::nullopt, quantity.number);
}

bool readAfterFeet(Cursor& cursor, bool wholeFeet, Quantity& quantity) {
  const Token& next = cursor.peek();
  if (startsFigure(next)) return readInches(cursor, wholeFeet, quantity);
  if (next.kind != TokenKind::minus || !startsFigure(cursor.peek(1))) return true;
  if (cursor.tight() && cursor.tight(1)) return readInches(cursor, wholeFeet, quantity);
  if (next.spaceBefore && !cursor.tight(1)) {
    return cursor.failHere(
        "a dash after feet may join or subtract: leave it out to join, put the "
        "feet in brackets to subtract");
  }
  return true;
}

bool applyUnitWord(Cursor& cursor, Quantity& quantity) {
  const Token word = cursor.take();
  const auto unit = meaningOf(word.unit);
  if (!unit)
    return cursor.fail(word.at,
                       "degrees and minutes belong to an angle, and a least size alone is no size");
  const bool whole = quantity.count;
  if (!applyUnit(cursor, *unit, quantity)) return false;
  return word.unit != UnitWord::foot || readAfterFeet(cursor, whole, quantity);
}

bool readGroup(Cursor& cursor, const Bare& bare, Quantity& quantity) {
  const std::size_t at = cursor.take().at;
  if (++cursor.depth > kDeepestBrackets) return cursor.fail(at, "too many brackets");
  if (!readSum(cursor, bare, quantity)) return false;
  if (!cursor.skip(TokenKind::close)) {
    if (isSign(cursor.peek())) {
      return cursor.failHere("put spaces on both sides of a sign that adds or subtracts");
    }
    return cursor.failHere(cursor.atEnd() ? "a closing bracket is missing"
                                          : "this has no place inside the brackets");
  }
  --cursor.depth;
  quantity.at = at;
  if (cursor.peek().kind != TokenKind::unit) return true;
  if (!quantity.bare) return cursor.failHere("a unit stands inside the brackets already");
  return applyUnitWord(cursor, quantity);
}

bool readFactor(Cursor& cursor, const Bare& bare, Quantity& quantity) {
  if (cursor.peek().kind == TokenKind::open) return readGroup(cursor, bare, quantity);
  return readMeasure(cursor, quantity);
}

/// `4X Ø 1/4` says how many places, not how long: the letter stands against the count there.
bool checkTimes(Cursor& cursor, const Token& times) {
  static constexpr const char* kCountsPlaces =
      "this may say how many places: type the size alone, or spaces on both sides to multiply";
  const Token& next = cursor.peek();
  if (next.kind == TokenKind::symbol) return cursor.fail(times.at, kCountsPlaces);
  // `2x1/2` against `3 x 9/16`; a sign that only multiplies asks nothing.
  if (times.loose && !times.spaceBefore) {
    if (times.capital && next.spaceBefore) return cursor.fail(times.at, kCountsPlaces);
    cursor.ask(kPlacesOrProduct);
  }
  return true;
}

/// `1/16 x 45` is a chamfer's lettering.
bool looksLikeDegrees(const Quantity& by) {
  return by.number == Rational(30) || by.number == Rational(45) || by.number == Rational(60);
}

bool multiply(Cursor& cursor, const Token& times, const Quantity& by, Quantity& product) {
  if (!product.count && !by.count) {
    return cursor.fail(times.at, "two sizes are not multiplied: one must be a whole number");
  }
  if (product.number.isZero() || by.number.isZero()) {
    return cursor.fail(times.at, "a product with 0");
  }
  if (!product.count && looksLikeDegrees(by)) {
    return cursor.fail(times.at, "this may be a chamfer and its degrees: type the size alone");
  }
  const std::size_t at = product.at;
  Quantity result = product.count ? by : product;
  result.count = product.count && by.count;
  result.multiplied = true;
  result.at = at;
  if (!keep(cursor, at, product.number.times(by.number), result.number)) return false;
  product = result;
  return true;
}

bool divide(Cursor& cursor, const Token& stroke, const Quantity& by, Quantity& quotient) {
  if (!by.bare) return cursor.fail(by.at, "a length divided by a length is no length");
  if (by.number.isZero()) return cursor.fail(stroke.at, "nothing can be divided by 0");
  quotient.count = false;
  return keep(cursor, quotient.at, quotient.number.over(by.number), quotient.number);
}

/// A stroke divides when it stands free, or beside a bracket or a unit; else it could be a
/// fraction's or stand between limits.
bool strokeDivides(const Cursor& cursor, TokenKind before) {
  const Token& stroke = cursor.peek();
  const Token& next = cursor.peek(1);
  return stroke.spaceBefore || next.spaceBefore || before == TokenKind::close ||
         before == TokenKind::unit || next.kind == TokenKind::open || next.kind == TokenKind::end;
}

bool readTerm(Cursor& cursor, const Bare& bare, Quantity& term) {
  if (!readFactor(cursor, bare, term)) return false;
  for (;;) {
    const Token sign = cursor.peek();
    if (sign.kind == TokenKind::slash && !strokeDivides(cursor, cursor.previous().kind)) {
      return cursor.failHere("put spaces round a stroke that divides");
    }
    const bool divides = sign.kind == TokenKind::slash || sign.kind == TokenKind::divide;
    if (!divides && sign.kind != TokenKind::times) return true;
    cursor.take();
    if (!divides && !checkTimes(cursor, sign)) return false;
    Quantity by;
    if (!readFactor(cursor, bare, by)) return false;
    if (!(divides ? divide(cursor, sign, by, term) : multiply(cursor, sign, by, term))) {
      return false;
    }
  }
}

/// A bare term beside one with a unit, in ticks; refused where its unit would be a guess.
bool coverBeside(Cursor& cursor, const Bare& bare, const UnitMeaning& beside, Quantity& term) {
  static constexpr const char* kSayUnit = "beside other units this term needs its own";
  const bool whole = !term.style.fraction && !term.style.decimal;
  if (beside.ticks == 0 || beside.family != bare.unit.family ||
      (!beside.covers && (whole || beside.ticks > Length::kTicksPerInch))) {
    return cursor.fail(term.at, kSayUnit);
  }
  if (bare.covered && bare.unit.family != bare.print && !term.style.fraction) {
    cursor.ask("taken with the unit at the end, which is not the print's");
  }
  return toTicks(cursor, bare, term);
}

UnitMeaning unitOfBoth(const UnitMeaning& a, const UnitMeaning& b) {
  if (a.ticks == b.ticks && a.ticks != 0) return a;
  if (a.ticks == 0 || b.ticks == 0 || a.family != b.family) return {0, a.family};
  return *meaningOf(a.family == Unit::inch ? UnitWord::inch : UnitWord::millimetre);
}

bool add(Cursor& cursor, const Bare& bare, bool subtract, Quantity term, Quantity& sum) {
  if (sum.bare != term.bare) {
    Quantity& without = sum.bare ? sum : term;
    const UnitMeaning beside = sum.bare ? term.unit : sum.unit;
    if (!coverBeside(cursor, bare, beside, without)) return false;
  }
  // Places of the other system say nothing about how close this one's figure is wanted.
  if (sum.bare || sum.unit.family == term.unit.family) sum.style.merge(term.style);
  if (!sum.bare) sum.unit = unitOfBoth(sum.unit, term.unit);
  sum.count = sum.count && term.count;
  sum.multiplied |= term.multiplied;
  const auto total = subtract ? sum.number.minus(term.number) : sum.number.plus(term.number);
  return keep(cursor, term.at, total, sum.number);
}

/// Whether a decimal is as small as deviations are.
bool looksLikeDeviation(const Bare& bare, const Quantity& term) {
  if (!term.style.decimal) return false;
  const auto ticks = term.bare ? term.number.times(Rational(bare.unit.ticks)) : term.number;
  return ticks && *ticks <= Rational(kWidestDeviation);
}

/// Whether `2 - 1/32` is all there is: draughtsmen letter 2 1/32 so as well.
bool looksLikeMixed(const Quantity& whole, const Quantity& term) {
  return whole.count && term.bare && term.style.fraction && term.number < Rational(1);
}

/// What a sum of decimals could also have meant.
bool checkTerm(Cursor& cursor, const Bare& bare, const Token& sign, bool tight, const Quantity& sum,
               const Quantity& term) {
  if (term.number.isZero()) {
    return cursor.fail(sign.at, "adding 0: a tolerance is written without a space after its sign");
  }
  if (tight && sum.style.decimal && looksLikeDeviation(bare, term)) {
    return cursor.fail(sign.at,
                       "this may be a sum or a tolerance: put spaces on both sides to add");
  }
  return true;
}

}  // namespace

void Style::merge(const Style& other) {
  const bool both = decimal && other.decimal;
  places = both ? std::min(places, other.places) : std::max(places, other.places);
  fraction = fraction || other.fraction;
  decimal = decimal || other.decimal;
}

std::optional<UnitMeaning> meaningOf(UnitWord word) {
  constexpr std::int64_t kInch = Length::kTicksPerInch;
  constexpr std::int64_t kMillimetre = Length::kTicksPerMillimetre;
  switch (word) {
    case UnitWord::inch:
      return UnitMeaning{kInch, Unit::inch, true, 0};
    case UnitWord::foot:
      return UnitMeaning{12 * kInch, Unit::inch, false, 0};
    case UnitWord::thou:
      return UnitMeaning{kInch / 1000, Unit::inch, false, 3};
    case UnitWord::millimetre:
      return UnitMeaning{kMillimetre, Unit::millimetre, true, 0};
    case UnitWord::centimetre:
      return UnitMeaning{10 * kMillimetre, Unit::millimetre, true, -1};
    case UnitWord::micrometre:
      return UnitMeaning{kMillimetre / 1000, Unit::millimetre, false, 3};
    case UnitWord::degree:
    case UnitWord::minute:
    case UnitWord::second:
      break;
  }
  return std::nullopt;
}

bool toTicks(Cursor& cursor, const Bare& bare, Quantity& quantity) {
  if (!quantity.bare) return true;
  if (bare.covered && bare.unit.family == Unit::millimetre && quantity.style.fraction) {
    return cursor.fail(quantity.at, "inches or millimetres? Give this fraction its own unit");
  }
  return applyUnit(cursor, bare.unit, quantity);
}

bool readMeasure(Cursor& cursor, Quantity& quantity) {
  Figure figure;
  if (!readFigure(cursor, figure)) return false;
  quantity = {};
  quantity.number = figure.number;
  quantity.at = figure.at;
  quantity.style = {figure.form == Form::fraction, figure.form == Form::decimal, figure.places};
  quantity.count = figure.form == Form::whole;
  if (cursor.peek().kind != TokenKind::unit) return true;
  return applyUnitWord(cursor, quantity);
}

bool toleranceAhead(const Cursor& cursor) {
  if (cursor.peek().kind == TokenKind::plusMinus) return true;
  if (!isSign(cursor.peek()) || !cursor.tight(1) || !startsFigure(cursor.peek(1))) return false;
  if (cursor.peek().spaceBefore) return true;
  // Without any spaces: `.500+.002-.000`.
  if (!isDecimalOrZero(cursor.peek(1))) return false;
  std::ptrdiff_t ahead = 2;
  if (cursor.peek(ahead).kind == TokenKind::unit) ++ahead;
  if (cursor.peek(ahead).kind == TokenKind::slash) ++ahead;
  return isSign(cursor.peek(ahead)) && isDecimalOrZero(cursor.peek(ahead + 1)) &&
         !isSign(cursor.peek(ahead + 2));
}

bool readSum(Cursor& cursor, const Bare& bare, Quantity& sum) {
  const Token first = cursor.peek();
  const bool negative = first.kind == TokenKind::minus;
  if (isSign(first)) cursor.take();
  if (!readTerm(cursor, bare, sum)) return false;
  sum.at = first.at;
  if (negative) {
    sum.number = sum.number.negated();
    sum.count = false;
  }
  int plus = 0, minus = 0, small = 0;
  const bool isDecimal = sum.style.decimal && !looksLikeDeviation(bare, sum);
  while (isSign(cursor.peek()) && !toleranceAhead(cursor)) {
    const Token sign = cursor.take();
    const bool subtract = sign.kind == TokenKind::minus;
    const bool tight = cursor.tight();
    if (subtract && !(sign.spaceBefore && !tight)) {
      return cursor.fail(sign.at, "put spaces on both sides of a sign that subtracts");
    }
    Quantity term;
    if (!readTerm(cursor, bare, term)) return false;
    if (!checkTerm(cursor, bare, sign, tight, sum, term)) return false;
    const bool decimals = sum.style.decimal && term.style.decimal;
    if (looksLikeDeviation(bare, term)) ++small;
    if (subtract && plus + minus == 0 && looksLikeMixed(sum, term)) {
      cursor.ask("taken as one less the other: a fraction joined to its whole is 2-1/32");
    }
    ++(subtract ? minus : plus);
    if (!add(cursor, bare, subtract, term, sum)) return false;
    if (subtract && decimals && sum.number.sign() < 0) {
      return cursor.fail(sign.at, "less than 0: limits are written with a stroke between them");
    }
  }
  const bool asBilateral = plus == 1 && minus == 1 && small == 2;
  const bool asOneSided = isDecimal && plus + minus == 1 && small == 1;
  if (asBilateral || asOneSided) {
    cursor.ask("taken as a sum: a tolerance is written without a space after its signs");
  }
  return true;
}

}  // namespace inchwright::reading
