#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/measure/tokens.h"

namespace inchwright::reading {

/// A walk over a range of tokens, with the one fault that ends it and the questions on the way.
class Cursor {
 public:
  Cursor(std::string_view text, const Token* first, const Token* last, Fault& fault,
         std::vector<std::string>& questions)
      : text_(text), next_(first), last_(last), fault_(fault), questions_(questions) {}

  /// The token `ahead` places on; the closing one beyond the range.
  const Token& peek(std::ptrdiff_t ahead = 0) const {
    return last_ - next_ > ahead ? next_[ahead] : end();
  }
  bool atEnd() const { return next_ == last_; }
  /// Requires: something was taken.
  const Token& previous() const { return next_[-1]; }
  const Token& take() {
    const Token& token = peek();
    if (!atEnd()) ++next_;
    return token;
  }
  bool skip(TokenKind kind) {
    if (peek().kind != kind) return false;
    take();
    return true;
  }
  /// Whether the token `ahead` stands against the one before it, without a space.
  bool tight(std::ptrdiff_t ahead = 0) const {
    return peek(ahead).kind != TokenKind::end && !peek(ahead).spaceBefore;
  }

  std::string_view text() const { return text_; }
  /// Whether bare figures are metric, where `15.7/16` is no old British lettering.
  bool metric = false;
  int depth = 0;  ///< of brackets

  bool fail(std::size_t at, const char* what) { return fault_.set(at, what); }
  bool failHere(const char* what) { return fail(peek().at, what); }
  bool failRange(std::size_t at) {
    return fault_.set(at, "this comes out beyond what a length can hold", ErrorCode::outOfRange);
  }
  void ask(std::string question) { questions_.push_back(std::move(question)); }

 private:
  /// Stands for the end of the range, at the offset of what follows it.
  const Token& end() const {
    end_.kind = TokenKind::end;
    end_.at = end_.past = last_->at;
    end_.spaceBefore = last_->spaceBefore;
    end_.hasMark = false;
    return end_;
  }

  std::string_view text_;
  const Token* next_;
  const Token* last_;  ///< the first token beyond the range, which may be looked at
  Fault& fault_;
  std::vector<std::string>& questions_;
  mutable Token end_;
};

enum class Form : std::uint8_t { whole, fraction, decimal };

/// One number without unit or sign: `2`, `.375`, `3/16`, `1 3/16`, `1-3/16`, `1.3/16`, `1⅜`.
struct Figure {
  Rational number;
  Form form = Form::whole;
  int places = 0;
  std::size_t at = 0;
};

/// Whether a figure can begin at this token.
bool startsFigure(const Token& token);

/// Whether `1.3/16` stands at the cursor: the old British lettering of a whole and a fraction,
/// told from a decimal divided by a whole in that the fraction is one of a rule's: proper, in
/// lowest terms, its denominator a power of two up to 128.
bool oldBritishAhead(const Cursor& cursor);

/// Reads one figure. Asks about fractions that a print would not letter so.
bool readFigure(Cursor& cursor, Figure& figure);

}  // namespace inchwright::reading
