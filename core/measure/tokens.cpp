#include "core/measure/tokens.h"

#include "core/measure/glyphs.h"

namespace inchwright::reading {
namespace {

/// More digits than any measure has; keeps every product below in 128 bits or caught by a check.
constexpr int kMostDigits = 24;
constexpr std::size_t kLongestWord = 12;

struct Word {
  std::string_view text;
  TokenKind kind;
  std::uint8_t which = 0;
};

template <class Which>
constexpr Word word(std::string_view text, TokenKind kind, Which which) {
  return {text, kind, static_cast<std::uint8_t>(which)};
}

constexpr Word kWords[] = {
    word("in", TokenKind::unit, UnitWord::inch),
    word("ins", TokenKind::unit, UnitWord::inch),
    word("inch", TokenKind::unit, UnitWord::inch),
    word("inches", TokenKind::unit, UnitWord::inch),
    word("ft", TokenKind::unit, UnitWord::foot),
    word("foot", TokenKind::unit, UnitWord::foot),
    word("feet", TokenKind::unit, UnitWord::foot),
    word("mm", TokenKind::unit, UnitWord::millimetre),
    word("cm", TokenKind::unit, UnitWord::centimetre),
    word("thou", TokenKind::unit, UnitWord::thou),
    word("thous", TokenKind::unit, UnitWord::thou),
    word("um", TokenKind::unit, UnitWord::micrometre),
    word("deg", TokenKind::unit, UnitWord::degree),
    word("degree", TokenKind::unit, UnitWord::degree),
    word("degrees", TokenKind::unit, UnitWord::degree),
    word("min", TokenKind::unit, UnitWord::minute),
    word("sec", TokenKind::unit, UnitWord::second),
    word("r", TokenKind::symbol, SymbolWord::radius),
    word("rad", TokenKind::symbol, SymbolWord::radius),
    word("radius", TokenKind::symbol, SymbolWord::radius),
    word("d", TokenKind::symbol, SymbolWord::diameter),
    word("dia", TokenKind::symbol, SymbolWord::diameter),
    word("diam", TokenKind::symbol, SymbolWord::diameter),
    word("diameter", TokenKind::symbol, SymbolWord::diameter),
    word("ref", TokenKind::remark, RemarkWord::reference),
    word("reference", TokenKind::remark, RemarkWord::reference),
    word("bsc", TokenKind::remark, RemarkWord::basic),
    word("basic", TokenKind::remark, RemarkWord::basic),
    word("typ", TokenKind::remark, RemarkWord::typical),
    word("typical", TokenKind::remark, RemarkWord::typical),
    word("crs", TokenKind::remark, RemarkWord::centres),
    word("ctrs", TokenKind::remark, RemarkWord::centres),
    word("ctr", TokenKind::remark, RemarkWord::centres),
    word("centres", TokenKind::remark, RemarkWord::centres),
    word("centers", TokenKind::remark, RemarkWord::centres),
    word("c/c", TokenKind::remark, RemarkWord::centres),
    word("o/a", TokenKind::remark, RemarkWord::shown),
    word("overall", TokenKind::remark, RemarkWord::shown),
    word("stk", TokenKind::remark, RemarkWord::shown),
    word("stock", TokenKind::remark, RemarkWord::shown),
    word("thk", TokenKind::remark, RemarkWord::shown),
    word("thick", TokenKind::remark, RemarkWord::shown),
    {"x", TokenKind::times},
    {"and", TokenKind::also},
};

const char* unknownWord(std::string_view word) {
  if (word == "mil" || word == "mils") {
    return "a mil is 0.001 in to some and 1 mm to others: write thou or mm";
  }
  if (word == "m" || word == "metre" || word == "meter" || word == "metres") {
    return "metres are not read: write millimetres";
  }
  if (word == "max" || word == "min" || word == "mx" || word == "mn") {
    return "a size with one limit only can't be kept: give both limits, such as .498/.500";
  }
  if (word == "full" || word == "bare" || word == "scant") {
    return "full and bare say a little over or under: give both limits, or type the figure alone";
  }
  if (word == "ga" || word == "gauge" || word == "gage" || word == "swg" || word == "awg") {
    return "a gauge number is no length: type the thickness";
  }
  return "this word has no place in a size: type the figure alone";
}

const char* unknownGlyph(char byte) {
  switch (byte) {
    case '[':
    case ']':
      return "square brackets letter the same size in another unit: type one of the two";
    case '#':
      return "a drill or screw number is no length: type its size";
    case '=':
    case '<':
    case '>':
    case ':':
    case ';':
      return "this sign has no place in a size: type one figure";
    default:
      return "this character has no place in a size";
  }
}

class Scanner {
 public:
  Scanner(std::string_view text, Tokens& tokens, Fault& fault)
      : text_(text), tokens_(tokens), fault_(fault) {}

  bool run() {
    tokens_.count = 0;
    bool space = false;
    for (;;) {
      const Glyph glyph = glyphAt(text_, at_);
      if (glyph.kind == GlyphKind::space) {
        space = true;
        at_ += glyph.length;
        continue;
      }
      token_ = &tokens_.list[tokens_.count];
      begin(space);
      space = false;
      if (glyph.kind == GlyphKind::end) {
        token_->kind = TokenKind::end;
        token_->past = token_->at;
        return true;
      }
      if (!scan(glyph)) return false;
      token_->past = static_cast<std::uint16_t>(at_);
      ++tokens_.count;
    }
  }

 private:
  void begin(bool space) {
    token_->spaceBefore = space;
    token_->hasMark = token_->comma = token_->loose = token_->capital = false;
    token_->under = 0;
    token_->places = 0;
    token_->at = static_cast<std::uint16_t>(at_);
    token_->value = 0;
  }

  bool take(const Glyph& glyph, TokenKind kind) {
    token_->kind = kind;
    at_ += glyph.length;
    return true;
  }

  bool takeUnit(const Glyph& glyph, UnitWord unit) {
    token_->unit = unit;
    return take(glyph, TokenKind::unit);
  }

  bool scan(const Glyph& glyph) {
    switch (glyph.kind) {
      case GlyphKind::digit:
      case GlyphKind::point:
      case GlyphKind::comma:
        return scanNumber();
      case GlyphKind::letter:
        return scanWord();
      case GlyphKind::slash:
        return take(glyph, TokenKind::slash);
      case GlyphKind::divide:
        return take(glyph, TokenKind::divide);
      case GlyphKind::plus:
        return scanPlus(glyph);
      case GlyphKind::minus:
        token_->loose = true;
        return take(glyph, TokenKind::minus);
      case GlyphKind::dash:
        return take(glyph, TokenKind::minus);
      case GlyphKind::plusMinus:
        return take(glyph, TokenKind::plusMinus);
      case GlyphKind::times:
        return take(glyph, TokenKind::times);
      case GlyphKind::open:
        return take(glyph, TokenKind::open);
      case GlyphKind::close:
        return take(glyph, TokenKind::close);
      case GlyphKind::inchMark:
        return takeUnit(glyph, UnitWord::inch);
      case GlyphKind::footMark:
        return scanFootMark(glyph);
      case GlyphKind::degree:
        return takeUnit(glyph, UnitWord::degree);
      case GlyphKind::diameter:
        token_->symbol = SymbolWord::diameter;
        return take(glyph, TokenKind::symbol);
      case GlyphKind::vulgar:
        token_->value = glyph.value;
        token_->under = glyph.under;
        return take(glyph, TokenKind::vulgar);
      case GlyphKind::raisedDigit:
        return scanRun(GlyphKind::raisedDigit, TokenKind::raised);
      case GlyphKind::loweredDigit:
        return scanRun(GlyphKind::loweredDigit, TokenKind::lowered);
      case GlyphKind::unknown:
      case GlyphKind::space:
      case GlyphKind::end:
        break;
    }
    return fault_.set(at_, unknownGlyph(text_[at_]));
  }

  /// Appends the digits of one kind that stand at `at_`; how many there were.
  int digits(GlyphKind kind) {
    int count = 0;
    for (Glyph glyph = glyphAt(text_, at_); glyph.kind == kind; glyph = glyphAt(text_, at_)) {
      if (token_->value != 0 || glyph.value != 0) ++significant_;
      // Beyond the limit the figure is refused, so what it holds no longer matters.
      if (significant_ <= kMostDigits) token_->value = token_->value * 10 + glyph.value;
      at_ += glyph.length;
      ++count;
    }
    return count;
  }

  bool tooLong() {
    return fault_.set(token_->at, "this number has more figures than any measure",
                      ErrorCode::outOfRange);
  }

  bool scanRun(GlyphKind glyphs, TokenKind kind) {
    token_->kind = kind;
    significant_ = 0;
    digits(glyphs);
    return significant_ <= kMostDigits || tooLong();
  }

  bool scanNumber() {
    token_->kind = TokenKind::number;
    significant_ = 0;
    const int before = digits(GlyphKind::digit);
    if (before > 1 && text_[token_->at] == '0') {
      return fault_.set(token_->at, "0 before other figures: a point may be missing");
    }
    const std::size_t mark = at_;
    const Glyph glyph = glyphAt(text_, at_);
    if (glyph.kind == GlyphKind::point || glyph.kind == GlyphKind::comma) {
      at_ += glyph.length;
      token_->hasMark = true;
      token_->comma = glyph.kind == GlyphKind::comma;
      const int after = digits(GlyphKind::digit);
      if (after == 0) {
        return fault_.set(mark, before == 0 ? "a point without figures"
                                            : "no figure follows the point: one may be lost");
      }
      token_->places = static_cast<std::uint16_t>(after);
      if (token_->comma && after == 3 && before >= 1 && text_[token_->at] != '0') {
        return fault_.set(
            mark, "this comma may divide or only group the figures: write a point, or no mark");
      }
      const Glyph next = glyphAt(text_, at_);
      if (next.kind == GlyphKind::point || next.kind == GlyphKind::comma) {
        return fault_.set(at_, "a number has one decimal mark only");
      }
    }
    return (significant_ <= kMostDigits && token_->places <= kMostDigits) || tooLong();
  }

  bool scanPlus(const Glyph& plus) {
    take(plus, TokenKind::plus);
    // `+/-` and `+-` are how ± is typed.
    std::size_t next = at_;
    Glyph glyph = glyphAt(text_, next);
    if (glyph.kind == GlyphKind::slash) {
      next += glyph.length;
      glyph = glyphAt(text_, next);
    }
    if (glyph.kind == GlyphKind::dash || glyph.kind == GlyphKind::minus) {
      token_->kind = TokenKind::plusMinus;
      at_ = next + glyph.length;
    }
    return true;
  }

  bool scanFootMark(const Glyph& mark) {
    takeUnit(mark, UnitWord::foot);
    const Glyph next = glyphAt(text_, at_);
    if (next.kind == GlyphKind::footMark) takeUnit(next, UnitWord::inch);
    return true;
  }

  bool scanWord() {
    char letters[kLongestWord];
    std::size_t length = 0;
    const std::size_t start = at_;
    Glyph glyph = glyphAt(text_, at_);
    token_->capital = glyph.capital;
    for (; glyph.kind == GlyphKind::letter; glyph = glyphAt(text_, at_)) {
      if (length < kLongestWord) letters[length] = static_cast<char>(glyph.value);
      ++length;
      at_ += glyph.length;
    }
    if (length == 1) takeSecondLetter(letters, length, glyph);
    const std::string_view found(letters, length < kLongestWord ? length : kLongestWord);
    if (length > kLongestWord || !keepWord(found)) {
      return fault_.set(start, unknownWord(found));
    }
    // The point of an abbreviation, as in `DIA.`, unless a figure follows it, as in `R.375`.
    if (token_->kind != TokenKind::times && glyph.kind == GlyphKind::point &&
        glyphAt(text_, at_ + glyph.length).kind != GlyphKind::digit) {
      at_ += glyph.length;
    }
    return true;
  }

  /// `C/C`, `C-C` and `O.A.` are words; `CC` and `OA` are names of places.
  void takeSecondLetter(char (&letters)[kLongestWord], std::size_t& length, Glyph& glyph) {
    if (glyph.kind != GlyphKind::slash && glyph.kind != GlyphKind::dash &&
        glyph.kind != GlyphKind::point) {
      return;
    }
    const std::size_t second = at_ + glyph.length;
    const Glyph letter = glyphAt(text_, second);
    if (letter.kind != GlyphKind::letter) return;
    const bool isPair =
        (letters[0] == 'c' && letter.value == 'c') || (letters[0] == 'o' && letter.value == 'a');
    const Glyph behind = glyphAt(text_, second + letter.length);
    if (!isPair || behind.kind == GlyphKind::letter) return;
    letters[length++] = '/';
    letters[length++] = static_cast<char>(letter.value);
    at_ = second + letter.length;
    glyph = behind;
  }

  bool keepWord(std::string_view found) {
    for (const Word& known : kWords) {
      if (known.text != found) continue;
      token_->kind = known.kind;
      token_->unit = static_cast<UnitWord>(known.which);
      token_->symbol = static_cast<SymbolWord>(known.which);
      token_->remark = static_cast<RemarkWord>(known.which);
      token_->loose = known.kind == TokenKind::times || known.kind == TokenKind::unit;
      return true;
    }
    return false;
  }

  std::string_view text_;
  Tokens& tokens_;
  Fault& fault_;
  Token* token_ = nullptr;
  std::size_t at_ = 0;
  int significant_ = 0;
};

}  // namespace

bool tokenize(std::string_view text, Tokens& tokens, Fault& fault) {
  if (text.size() > kLongestText) {
    return fault.set(kLongestText, "this text is too long for a size");
  }
  return Scanner(text, tokens, fault).run();
}

}  // namespace inchwright::reading
