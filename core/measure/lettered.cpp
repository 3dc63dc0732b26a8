#include "core/measure/lettered.h"

#include <algorithm>

#include "core/measure/tolerance_tail.h"

namespace inchwright {
namespace {

using namespace reading;

/// Words and symbols round the figure.
struct Marks {
  bool reference = false;
  bool basic = false;
  bool typical = false;
  bool centres = false;
  SizeSymbol symbol = SizeSymbol::none;

  /// Takes a token that is a mark; false when it is none. A second, other symbol is a fault.
  bool take(const Token& token, Fault& fault) {
    if (token.kind == TokenKind::remark) {
      reference |= token.remark == RemarkWord::reference;
      basic |= token.remark == RemarkWord::basic;
      typical |= token.remark == RemarkWord::typical;
      centres |= token.remark == RemarkWord::centres;
      return true;
    }
    if (token.kind != TokenKind::symbol) return false;
    const auto found =
        token.symbol == SymbolWord::radius ? SizeSymbol::radius : SizeSymbol::diameter;
    if (symbol != SizeSymbol::none && symbol != found) {
      fault.set(token.at, "radius and diameter at once");
    }
    symbol = found;
    return true;
  }
};

/// The unit at the end of the text, which covers its bare figures; else the print's.
Bare bareOf(const Token* first, const Token* last, Unit print) {
  Bare bare;
  bare.print = print;
  bare.unit = *meaningOf(print == Unit::inch ? UnitWord::inch : UnitWord::millimetre);
  for (const Token* token = last; token != first;) {
    --token;
    if (startsFigure(*token) || token->kind == TokenKind::lowered) break;
    if (token->kind != TokenKind::unit) continue;
    const auto unit = meaningOf(token->unit);
    if (unit && unit->covers) {
      bare.unit = *unit;
      bare.covered = true;
    }
    break;
  }
  return bare;
}

/// The bracket that closes the one at `open`, or `last` when none does.
const Token* closing(const Token* open, const Token* last) {
  int depth = 0;
  for (const Token* token = open; token != last; ++token) {
    if (token->kind == TokenKind::open) ++depth;
    if (token->kind == TokenKind::close && --depth == 0) return token;
  }
  return last;
}

/// Takes the marks off both ends, and the brackets that enclose all that is left.
void unwrap(const Token*& first, const Token*& last, Marks& marks, Fault& fault) {
  for (;;) {
    while (first != last && marks.take(*first, fault)) ++first;
    while (first != last && marks.take(last[-1], fault)) --last;
    if (first == last || first->kind != TokenKind::open) return;
    const Token* close = closing(first, last);
    if (close == last) return;
    const std::ptrdiff_t behind = last - close - 1;
    if (behind == 1 && close[1].kind == TokenKind::unit) marks.reference = true;
    if (behind != 0) return;
    marks.reference = true;
    ++first;
    --last;
  }
}

bool readFigureAndTail(Cursor& cursor, const Bare& bare, Marks& marks, Fault& fault,
                       Outcome& outcome) {
  if (cursor.atEnd()) return cursor.failHere("there is no figure to read");
  if (cursor.peek().kind == TokenKind::plusMinus) {
    return cursor.failHere("the size before the tolerance is missing");
  }
  if (limitsAhead(cursor, bare)) return readLimits(cursor, bare, outcome);
  if (fault.text != nullptr) return false;
  if (!readSum(cursor, bare, outcome.nominal) || !toTicks(cursor, bare, outcome.nominal) ||
      !settle(cursor, outcome)) {
    return false;
  }
  while (marks.take(cursor.peek(), fault)) cursor.take();
  if (!tailAhead(cursor)) return true;
  return readTail(cursor, bare, outcome);
}

const char* whatStandsHere(const Token& token) {
  switch (token.kind) {
    case TokenKind::close:
      return "a closing bracket that nothing opened";
    case TokenKind::open:
      return "a figure in brackets beside another: type one of the two, or a sign between them";
    case TokenKind::number:
    case TokenKind::vulgar:
    case TokenKind::raised:
    case TokenKind::lowered:
      return "two figures side by side: a sign is missing, or they are two sizes";
    case TokenKind::unit:
      return "a unit without a figure";
    case TokenKind::plusMinus:
    case TokenKind::plus:
    case TokenKind::minus:
      return "something follows the tolerance";
    default:
      return "this has no place here";
  }
}

bool checkMarks(const Marks& marks, const Outcome& outcome, Cursor& cursor) {
  const std::size_t at = outcome.nominal.at;
  if (marks.basic && outcome.tolerance) {
    return cursor.fail(at, "a basic size carries no tolerance");
  }
  if (marks.symbol != SizeSymbol::none && outcome.value.ticks() <= 0) {
    return cursor.fail(at, "a radius or diameter must be greater than 0");
  }
  if (marks.symbol != SizeSymbol::none && outcome.nominal.multiplied) {
    return cursor.fail(at, "this may say how many places: type the size alone, such as 1/4 DIA");
  }
  if (marks.reference && outcome.tolerance) {
    cursor.ask("a reference size with a tolerance: is it one?");
  }
  if (outcome.tolerance && outcome.value.ticks() > 0 &&
      outcome.tolerance->lower.negated() >= outcome.value) {
    cursor.ask("the tolerance takes all of the size away: is it read right?");
  }
  if (marks.typical) cursor.ask("TYP: the size holds for all like places; enter it at each");
  return true;
}

void fill(const Outcome& outcome, const Marks& marks, Lettered& lettered) {
  const Quantity& nominal = outcome.nominal;
  lettered.value = outcome.value;
  lettered.exact = outcome.exact;
  lettered.unit = nominal.unit.family;
  lettered.tolerance = outcome.tolerance;
  if (lettered.unit == Unit::millimetre) {
    lettered.lettering = Lettering::millimetres;
    lettered.places = nominal.style.places;
  } else if (nominal.style.decimal && !nominal.style.fraction) {
    lettered.lettering = Lettering::decimal;
    lettered.places = nominal.style.places;
  }
  lettered.reference = marks.reference;
  lettered.basic = marks.basic;
  lettered.centres = marks.centres;
  lettered.symbol = marks.symbol;
  lettered.multiplied = nominal.multiplied;
}

bool readTokens(const Tokens& tokens, const ReadingOptions& options, Fault& fault,
                Lettered& lettered) {
  const Token* first = tokens.list.data();
  const Token* last = first + tokens.count;
  Marks marks;
  unwrap(first, last, marks, fault);
  const Bare bare = bareOf(first, last, options.bareUnit);
  Cursor cursor(lettered.text, first, last, fault, lettered.questions);
  cursor.metric = bare.unit.family == Unit::millimetre;
  Outcome outcome;
  if (!readFigureAndTail(cursor, bare, marks, fault, outcome)) return false;
  while (marks.take(cursor.peek(), fault)) cursor.take();
  if (!cursor.atEnd()) return cursor.failHere(whatStandsHere(cursor.peek()));
  if (!checkMarks(marks, outcome, cursor) || fault.text != nullptr) return false;
  fill(outcome, marks, lettered);
  return true;
}

}  // namespace

Result<Lettered> readLength(std::string_view text, const ReadingOptions& options) {
  Tokens tokens;
  Fault fault;
  if (!tokenize(text, tokens, fault)) return fault.error();
  Result<Lettered> result = Lettered();
  result->text = text;
  if (!readTokens(tokens, options, fault, *result)) return fault.error();
  return result;
}

}  // namespace inchwright
