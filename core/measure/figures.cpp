#include "core/measure/figures.h"

#include <numeric>

#include "core/base/checked.h"

namespace inchwright::reading {
namespace {

constexpr Int128 kFinestRuleFraction = 128;

bool isPowerOfTwo(Int128 value) {
  return value > 0 && (value & (value - 1)) == 0;
}
bool isRuleDenominator(Int128 value) {
  return isPowerOfTwo(value) && value >= 2 && value <= kFinestRuleFraction;
}

Int128 tenTo(int exponent) {
  Int128 power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

struct Fraction {
  Int128 over = 0;
  Int128 under = 0;
  std::size_t at = 0;
  std::size_t past = 0;
};

/// Whether a fraction stands `ahead`: ⅜, ³⁄₁₆, or a whole, a slash and a whole without spaces.
bool fractionAhead(const Cursor& cursor, std::ptrdiff_t ahead) {
  const Token& first = cursor.peek(ahead);
  if (first.kind == TokenKind::vulgar || first.kind == TokenKind::raised) return true;
  if (!first.whole() || cursor.peek(ahead + 1).kind != TokenKind::slash) return false;
  if (!cursor.tight(ahead + 1) || !cursor.tight(ahead + 2)) return false;
  const Token& bottom = cursor.peek(ahead + 2);
  return bottom.whole() || bottom.kind == TokenKind::lowered;
}

bool readBottom(Cursor& cursor, Fraction& fraction) {
  const Token& bottom = cursor.peek();
  if (!cursor.tight() || !(bottom.whole() || bottom.kind == TokenKind::lowered)) {
    return cursor.failHere("the bottom of the fraction is missing");
  }
  fraction.under = bottom.value;
  fraction.past = bottom.past;
  cursor.take();
  return true;
}

bool readFraction(Cursor& cursor, Fraction& fraction) {
  const Token top = cursor.take();
  fraction = {top.value, top.under, top.at, top.past};
  const bool single = top.kind == TokenKind::vulgar;
  if (!single) {
    if (cursor.peek().kind != TokenKind::slash || !cursor.tight()) {
      return cursor.fail(top.at, "raised figures are read as the top of a fraction only");
    }
    cursor.take();
  }
  if (fraction.under == 0 && !readBottom(cursor, fraction)) return false;
  if (fraction.over == 0) return cursor.fail(fraction.at, "a fraction with 0 on top");
  if (fraction.under == 0) return cursor.fail(fraction.at, "a fraction over 0");
  const Token& next = cursor.peek();
  if (next.kind == TokenKind::slash && cursor.tight() && startsFigure(cursor.peek(1)) &&
      cursor.tight(1)) {
    return cursor.failHere("two strokes run together: put spaces round the one that divides");
  }
  if (cursor.tight() && (startsFigure(next) || next.kind == TokenKind::lowered)) {
    return cursor.failHere("two figures run together");
  }
  return true;
}

void questionFraction(Cursor& cursor, const Fraction& fraction, bool afterWhole) {
  const auto quoted = [&] {
    return std::string(cursor.text().substr(fraction.at, fraction.past - fraction.at));
  };
  if (!isPowerOfTwo(fraction.under) || fraction.under > kFinestRuleFraction) {
    cursor.ask("is " + quoted() + " read right? Its denominator is on no rule");
  }
  if (!afterWhole && fraction.over >= fraction.under) {
    cursor.ask("is " + quoted() + " read right? It is 1 or more, and looks like a whole number " +
               "beside a fraction");
  }
  // Both halves even is all that a rule's fraction can have in common.
  if (fraction.over % 2 == 0 && fraction.under % 2 == 0) {
    cursor.ask("is " + quoted() + " read right? It is not in lowest terms");
  }
}

/// whole + fraction, into `figure`.
bool join(Cursor& cursor, Int128 whole, bool afterWhole, const Fraction& fraction, Figure& figure) {
  if (afterWhole && fraction.over >= fraction.under) {
    return cursor.fail(fraction.at, "the fraction after a whole number must be less than 1");
  }
  questionFraction(cursor, fraction, afterWhole);
  const auto scaled = multiplyChecked(whole, fraction.under);
  const auto over = scaled ? addChecked(*scaled, fraction.over) : std::nullopt;
  const auto number = over ? Rational::of(*over, fraction.under) : std::nullopt;
  if (!number) return cursor.failRange(figure.at);
  figure.number = *number;
  figure.form = Form::fraction;
  return true;
}

/// The digits after the mark of a decimal, as a whole number.
Int128 figuresAfterMark(const Token& decimal) {
  return decimal.value % tenTo(decimal.places);
}

bool readOldBritish(Cursor& cursor, Figure& figure) {
  const Token decimal = cursor.take();
  cursor.take();
  const Token bottom = cursor.take();
  const auto top = static_cast<std::size_t>(decimal.past - decimal.places);
  const Fraction fraction{figuresAfterMark(decimal), bottom.value, top, bottom.past};
  return join(cursor, decimal.value / tenTo(decimal.places), true, fraction, figure);
}

bool readDecimal(Cursor& cursor, Figure& figure) {
  const Token decimal = cursor.take();
  const Token& next = cursor.peek();
  if (next.kind == TokenKind::slash && cursor.tight() && cursor.peek(1).whole() &&
      cursor.tight(1) && cursor.peek(1).value != 0) {
    return cursor.fail(next.at,
                       "this may be a whole with a fraction, a division or two limits: "
                       "put spaces round a dividing stroke");
  }
  figure.number = *Rational::of(decimal.value, tenTo(decimal.places));
  figure.form = Form::decimal;
  figure.places = decimal.places;
  return true;
}

/// After a whole number: the fraction that belongs to it, if there is one.
bool readAfterWhole(Cursor& cursor, const Token& whole, Figure& figure) {
  const Token& next = cursor.peek();
  Fraction fraction;
  if (fractionAhead(cursor, 0)) {
    return readFraction(cursor, fraction) && join(cursor, whole.value, true, fraction, figure);
  }
  if (next.kind == TokenKind::also) {
    if (!fractionAhead(cursor, 1)) return cursor.failHere("a fraction must follow \"and\"");
    cursor.take();
    return readFraction(cursor, fraction) && join(cursor, whole.value, true, fraction, figure);
  }
  if (next.kind == TokenKind::minus && cursor.tight() && cursor.tight(1) &&
      fractionAhead(cursor, 1)) {
    if (next.loose) {
      return cursor.failHere(
          "a minus sign without spaces: put spaces round it to subtract, or "
          "a space in its place to join the fraction");
    }
    cursor.take();
    return readFraction(cursor, fraction) && join(cursor, whole.value, true, fraction, figure);
  }
  figure.number = *Rational::of(whole.value, 1);
  figure.form = Form::whole;
  return true;
}

}  // namespace

bool startsFigure(const Token& token) {
  return token.kind == TokenKind::number || token.kind == TokenKind::vulgar ||
         token.kind == TokenKind::raised;
}

bool oldBritishAhead(const Cursor& cursor) {
  const Token& decimal = cursor.peek();
  const Token& bottom = cursor.peek(2);
  if (cursor.metric || !decimal.decimal() || decimal.comma ||
      cursor.peek(1).kind != TokenKind::slash || !cursor.tight(1) || !bottom.whole() ||
      !cursor.tight(2)) {
    return false;
  }
  const Int128 scale = tenTo(decimal.places);
  const Int128 top = decimal.value % scale;
  const bool lostZero = top * 10 < scale;  // `1.03/16` is no whole and fraction
  return decimal.value >= scale && !lostZero && top % 2 == 1 && top < bottom.value &&
         isRuleDenominator(bottom.value);
}

bool readFigure(Cursor& cursor, Figure& figure) {
  const Token& first = cursor.peek();
  figure = {};
  figure.at = first.at;
  if (!startsFigure(first)) return cursor.failHere("a figure is missing here");
  if (fractionAhead(cursor, 0)) {
    Fraction fraction;
    return readFraction(cursor, fraction) && join(cursor, 0, false, fraction, figure);
  }
  if (oldBritishAhead(cursor)) return readOldBritish(cursor, figure);
  if (first.hasMark) return readDecimal(cursor, figure);
  const Token whole = cursor.take();
  return readAfterWhole(cursor, whole, figure);
}

}  // namespace inchwright::reading
