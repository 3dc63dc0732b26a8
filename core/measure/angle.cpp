#include "core/measure/angle.h"

#include <numbers>

#include "core/measure/figures.h"

namespace inchwright {
namespace {

using namespace reading;

constexpr std::int64_t kLargestDegrees = 360'000;

enum class Part { degrees, minutes, seconds };

constexpr std::int64_t sizeOf(Part part) {
  switch (part) {
    case Part::degrees:
      return Angle::kPerDegree;
    case Part::minutes:
      return Angle::kPerDegree / 60;
    case Part::seconds:
      break;
  }
  return Angle::kPerDegree / 3600;
}

/// Which part of an angle a unit names; empty for those of a length. The marks of feet and inches
/// are those of minutes and seconds too, their words are not.
std::optional<Part> partOf(const Token& token) {
  if (token.unit == UnitWord::degree) return Part::degrees;
  const bool mark = !token.loose;
  if (token.unit == UnitWord::minute || (mark && token.unit == UnitWord::foot)) {
    return Part::minutes;
  }
  if (token.unit == UnitWord::second || (mark && token.unit == UnitWord::inch)) {
    return Part::seconds;
  }
  return std::nullopt;
}

/// Unsigned: `55`, `22.5°`, `22° 30'`, `30'`, `30 1/2°`, in micro-arcseconds before rounding.
struct Sum {
  Rational total;
  bool marked = false;  ///< says what it is in
  bool finer = false;   ///< goes down to minutes or seconds
};

/// One figure and its mark. `before` is the part that came before it, if any.
bool readPart(Cursor& cursor, std::optional<Part>& before, bool& closed, Sum& sum) {
  Figure figure;
  if (!readFigure(cursor, figure)) return false;
  std::optional<Part> part;
  if (cursor.peek().kind == TokenKind::unit) {
    part = partOf(cursor.peek());
    if (!part) return cursor.failHere("an angle is in degrees, minutes and seconds");
    cursor.take();
    sum.marked = true;
    sum.finer |= part != Part::degrees;
  }
  if (!part) {
    if (before) return cursor.fail(figure.at, "say whether these are minutes or seconds");
    part = Part::degrees;
    closed = true;
  }
  if (before && *part <= *before) {
    return cursor.fail(figure.at, "degrees come first, then minutes, then seconds");
  }
  if (before && figure.number >= Rational(60)) {
    return cursor.fail(figure.at, "minutes and seconds must be less than 60");
  }
  if (figure.form != Form::whole) closed = true;
  if (figure.number > Rational(kLargestDegrees) && *part == Part::degrees) {
    return cursor.failRange(figure.at);
  }
  const auto size = figure.number.times(Rational(sizeOf(*part)));
  const auto total = size ? sum.total.plus(*size) : std::nullopt;
  if (!total) return cursor.failRange(figure.at);
  sum.total = *total;
  before = part;
  return true;
}

bool readParts(Cursor& cursor, Sum& sum) {
  std::optional<Part> before;
  bool closed = false;
  do {
    if (closed) return cursor.failHere("only the last part of an angle may have a fraction");
    if (!readPart(cursor, before, closed, sum)) return false;
  } while (startsFigure(cursor.peek()));
  return true;
}

bool settle(Cursor& cursor, std::size_t at, const Rational& total, Angle& angle) {
  const auto count = total.rounded();
  if (!count || *count > kLargestDegrees * Angle::kPerDegree) return cursor.failRange(at);
  angle = Angle::microArcseconds(*count);
  return true;
}

bool readTolerance(Cursor& cursor, const Sum& nominal, LetteredAngle& angle) {
  const std::size_t at = cursor.take().at;
  Sum plusMinus;
  if (!readParts(cursor, plusMinus)) return false;
  if (!plusMinus.marked && nominal.finer) {
    return cursor.fail(at, "say what the tolerance is in");
  }
  if (plusMinus.total.isZero()) return cursor.fail(at, "a tolerance of 0");
  Angle value;
  if (!settle(cursor, at, plusMinus.total, value)) return false;
  angle.plusMinus = value;
  return true;
}

/// Takes the brackets or the word REF off the ends.
void unwrap(const Token*& first, const Token*& last, LetteredAngle& angle) {
  const auto isRemark = [](const Token& token) {
    return token.kind == TokenKind::remark && token.remark != RemarkWord::basic;
  };
  for (;;) {
    if (first != last && isRemark(last[-1])) {
      angle.reference |= last[-1].remark == RemarkWord::reference;
      --last;
    } else if (last - first >= 2 && first->kind == TokenKind::open &&
               last[-1].kind == TokenKind::close) {
      angle.reference = true;
      ++first;
      --last;
    } else {
      return;
    }
  }
}

bool readTokens(const Tokens& tokens, Fault& fault, LetteredAngle& angle) {
  const Token* first = tokens.list.data();
  const Token* last = first + tokens.count;
  unwrap(first, last, angle);
  std::vector<std::string> questions;
  Cursor cursor(angle.text, first, last, fault, questions);
  if (cursor.atEnd()) return cursor.failHere("there is no angle to read");
  const std::size_t at = cursor.peek().at;
  const bool negative = cursor.peek().kind == TokenKind::minus;
  if (negative || cursor.peek().kind == TokenKind::plus) cursor.take();
  Sum sum;
  if (!readParts(cursor, sum) || !settle(cursor, at, sum.total, angle.value)) return false;
  if (negative) angle.value = Angle::microArcseconds(-angle.value.microArcseconds());
  if (cursor.peek().kind == TokenKind::plusMinus && !readTolerance(cursor, sum, angle)) {
    return false;
  }
  if (cursor.atEnd()) return true;
  if (cursor.peek().kind == TokenKind::plus || cursor.peek().kind == TokenKind::minus) {
    return cursor.failHere("an angle takes an equal tolerance, such as ±1/2°");
  }
  return cursor.failHere("this has no place in an angle");
}

}  // namespace

double Angle::toRadians() const {
  return toDegrees() * (std::numbers::pi / 180.0);
}

Result<LetteredAngle> readAngle(std::string_view text) {
  Tokens tokens;
  Fault fault;
  if (!tokenize(text, tokens, fault)) return fault.error();
  LetteredAngle angle;
  angle.text = text;
  if (!readTokens(tokens, fault, angle)) return fault.error();
  return angle;
}

}  // namespace inchwright
