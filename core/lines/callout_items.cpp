#include "core/lines/callout_items.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <utility>

#include "core/base/ascii.h"
#include "core/base/near_word.h"
#include "core/lines/line_words.h"
#include "core/measure/glyphs.h"
#include "core/part/axis.h"

namespace inchwright {
namespace {

struct Spelling {
  std::string_view text;
  CalloutWord word;
};

// Capitals, and without the points, strokes and apostrophes of abbreviations. From prints of
// both sides of the Atlantic; common practice, no source.
constexpr Spelling kSpellings[] = {
    {"DRILL", CalloutWord::drill},
    {"DRILLED", CalloutWord::drill},
    {"DR", CalloutWord::drill},
    {"DRL", CalloutWord::drill},
    {"REAM", CalloutWord::ream},
    {"REAMED", CalloutWord::ream},
    {"REAMER", CalloutWord::ream},
    {"RM", CalloutWord::ream},
    {"BORE", CalloutWord::bore},
    {"BORED", CalloutWord::bore},
    {"TAP", CalloutWord::tap},
    {"TAPPED", CalloutWord::tap},
    {"TAPT", CalloutWord::tap},
    {"TPD", CalloutWord::tap},
    {"COUNTERBORE", CalloutWord::counterbore},
    {"COUNTERBORED", CalloutWord::counterbore},
    {"CBORE", CalloutWord::counterbore},
    {"CBORED", CalloutWord::counterbore},
    {"CB", CalloutWord::counterbore},
    {"CBR", CalloutWord::counterbore},
    {"COUNTERSINK", CalloutWord::countersink},
    {"COUNTERSUNK", CalloutWord::countersink},
    {"CSINK", CalloutWord::countersink},
    {"CSUNK", CalloutWord::countersink},
    {"CSK", CalloutWord::countersink},
    {"CTSK", CalloutWord::countersink},
    {"CS", CalloutWord::countersink},
    {"SPOTFACE", CalloutWord::spotface},
    {"SPOTFACED", CalloutWord::spotface},
    {"SFACE", CalloutWord::spotface},
    {"SF", CalloutWord::spotface},
    {"DEEP", CalloutWord::deep},
    {"DEPTH", CalloutWord::deep},
    {"DP", CalloutWord::deep},
    {"THROUGH", CalloutWord::through},
    {"THRU", CalloutWord::through},
    {"THRO", CalloutWord::through},
    {"THRUALL", CalloutWord::through},
    {"HOLE", CalloutWord::count},
    {"HOLES", CalloutWord::count},
    {"HLS", CalloutWord::count},
    {"PLACE", CalloutWord::count},
    {"PLACES", CalloutWord::count},
    {"PLCS", CalloutWord::count},
    {"PLS", CalloutWord::count},
    {"PL", CalloutWord::count},
    {"POSITIONS", CalloutWord::count},
    {"POSNS", CalloutWord::count},
    {"POSN", CalloutWord::count},
    {"OFF", CalloutWord::count},
    {"REQD", CalloutWord::count},
    {"SLOTS", CalloutWord::count},
    {"CORNERS", CalloutWord::count},
    {"SPACE", CalloutWord::spaces},
    {"SPACES", CalloutWord::spaces},
    {"SPCS", CalloutWord::spaces},
    {"WIDE", CalloutWord::wide},
    {"WIDTH", CalloutWord::wide},
    {"LONG", CalloutWord::longAll},
    {"LG", CalloutWord::longAll},
    {"LENGTH", CalloutWord::longAll},
    {"CENTRES", CalloutWord::centres},
    {"CENTERS", CalloutWord::centres},
    {"CRS", CalloutWord::centres},
    {"CTRS", CalloutWord::centres},
    {"CC", CalloutWord::centres},
    {"PITCH", CalloutWord::centres},
    {"APART", CalloutWord::centres},
    {"PCD", CalloutWord::pitchCircle},
    {"PC", CalloutWord::pitchCircle},
    {"BC", CalloutWord::pitchCircle},
    {"BCD", CalloutWord::pitchCircle},
    {"BHC", CalloutWord::pitchCircle},
    {"CIRCLE", CalloutWord::pitchCircle},
    {"R", CalloutWord::radius},
    {"RAD", CalloutWord::radius},
    {"RADIUS", CalloutWord::radius},
    {"RADII", CalloutWord::radius},
    {"FILLET", CalloutWord::radius},
    {"DIA", CalloutWord::diameter},
    {"DIAM", CalloutWord::diameter},
    {"DIAMETER", CalloutWord::diameter},
    {"ON", CalloutWord::on},
    {"NO", CalloutWord::number},
    {"NUMBER", CalloutWord::number},
    {"LETTER", CalloutWord::letter},
    {"LTR", CalloutWord::letter},
    {"CHAM", CalloutWord::chamfer},
    {"CHAMFER", CalloutWord::chamfer},
    {"CHAMFERED", CalloutWord::chamfer},
    {"BEVEL", CalloutWord::chamfer},
    {"BREAK", CalloutWord::chamfer},
    {"DEG", CalloutWord::degrees},
    {"DEGREE", CalloutWord::degrees},
    {"DEGREES", CalloutWord::degrees},
    {"IN", CalloutWord::unit},
    {"INCH", CalloutWord::unit},
    {"INS", CalloutWord::unit},
    {"MM", CalloutWord::unit},
    {"CLEARANCE", CalloutWord::clearance},
    {"CLEAR", CalloutWord::clearance},
    {"CLG", CalloutWord::clearance},
    {"FOR", CalloutWord::forWhat},
    {"ASSEMBLY", CalloutWord::assembly},
    {"ASSY", CalloutWord::assembly},
    {"ASSEMBLED", CalloutWord::assembly},
    {"POSITION", CalloutWord::assembly},
};

constexpr std::string_view kFillers[] = {
    "AND", "THE",     "EQ",      "EQUI",    "EQUALLY", "EQUISPACED", "SPACED",
    "SP",  "TYP",     "TYPICAL", "SLOT",    "AT",      "TO",         "OF",
    "A",   "BOLT",    "HOLED",   "BETWEEN", "INCL",    "INCLUDED",   "SIZE",
    "ALL", "OVERALL", "OA",      "KEYWAY",  "KEYSLOT", "FULL",       "WITH",
    "BY",  "THREAD",  "THD",     "ROUND",   "EQUAL"};

std::string normal(std::string_view raw) {
  std::string out;
  for (const char c : raw) {
    if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
      out += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    }
  }
  return out;
}

CalloutWord wordOf(std::string_view raw) {
  const std::string word = normal(raw);
  for (const Spelling& one : kSpellings) {
    if (one.text == word) return one.word;
  }
  for (const std::string_view filler : kFillers) {
    if (filler == word) return CalloutWord::filler;
  }
  return CalloutWord::unknown;
}

bool isLetter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

/// Signs beyond ASCII that prints use, and what they stand for.
struct Sign {
  std::string_view bytes;
  CalloutItemKind kind;
  CalloutWord word;
};
constexpr Sign kSigns[] = {
    {"×", CalloutItemKind::times, CalloutWord::unknown},
    {"Ø", CalloutItemKind::symbol, CalloutWord::unknown},
    {"ø", CalloutItemKind::symbol, CalloutWord::unknown},
    {"⌀", CalloutItemKind::symbol, CalloutWord::unknown},
    {"±", CalloutItemKind::symbol, CalloutWord::unknown},
    {"°", CalloutItemKind::angleMark, CalloutWord::degrees},
    {"⌴", CalloutItemKind::word, CalloutWord::counterbore},
    {"⌵", CalloutItemKind::word, CalloutWord::countersink},
    {"↧", CalloutItemKind::word, CalloutWord::deep},
    {"″", CalloutItemKind::word, CalloutWord::unit},
    {"”", CalloutItemKind::word, CalloutWord::unit},
    {"\"", CalloutItemKind::word, CalloutWord::unit},
    {"#", CalloutItemKind::word, CalloutWord::number},
    {"+", CalloutItemKind::symbol, CalloutWord::unknown},
};

class Cutter {
 public:
  explicit Cutter(std::string_view text) : text_(text) {}

  std::vector<CalloutItem> cut() {
    while (at_ < text_.size()) {
      const std::size_t from = at_;
      cutOne();
      if (at_ == from) ++at_;
    }
    return std::move(items_);
  }

 private:
  char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }

  void put(CalloutItemKind kind, std::size_t from, CalloutWord word = CalloutWord::unknown) {
    items_.push_back({kind, word, from, at_, gap_, false});
    gap_ = false;
  }

  void cutOne() {
    const char c = peek();
    if (c == ' ' || c == '\t') {
      gap_ = true;
      return;
    }
    // `DRILL "H"`: a letter in quotes is no inch.
    if (c == '"' && isLetter(peek(1)) && peek(2) == '"') {
      const std::size_t from = ++at_;
      ++at_;
      put(CalloutItemKind::word, from, wordOf(text_.substr(from, 1)));
      ++at_;
      return;
    }
    for (const Sign& sign : kSigns) {
      if (text_.substr(at_).substr(0, sign.bytes.size()) != sign.bytes) continue;
      const std::size_t from = at_;
      at_ += sign.bytes.size();
      return put(sign.kind, from, sign.word);
    }
    // `,5` where nothing stands before it is a decimal; `1/8 DRILL,1/2 DEEP` goes on.
    const bool marked = c == '.' || (c == ',' && (items_.empty() || gap_));
    if (isFigure() || (marked && isDigit(peek(1)))) return cutNumber();
    if (isLetter(c)) return cutWord();
    cutSign();
  }

  // What is neither figure nor word: no sign that nobody knows is passed over.
  void cutSign() {
    const std::size_t from = at_;
    const reading::Glyph glyph = here();
    at_ += glyph.length;
    if (glyph.kind == reading::GlyphKind::space) {
      gap_ = true;
    } else if (glyph.kind == reading::GlyphKind::dash || glyph.kind == reading::GlyphKind::minus) {
      put(CalloutItemKind::dash, from);
    } else if (glyph.kind == reading::GlyphKind::unknown && !isPunctuation(text_[from])) {
      put(CalloutItemKind::word, from);
    } else {
      put(CalloutItemKind::separator, from);
    }
  }

  static bool isPunctuation(char c) {
    return std::string_view("&@;:!").find(c) != std::string_view::npos;
  }

  reading::Glyph here() const { return reading::glyphAt(text_, at_); }

  // A digit, or what stands for one in a fraction: `½`, `³⁄₁₆`.
  bool isFigure() const {
    const reading::GlyphKind kind = here().kind;
    return kind == reading::GlyphKind::digit || kind == reading::GlyphKind::vulgar ||
           kind == reading::GlyphKind::raisedDigit || kind == reading::GlyphKind::loweredDigit;
  }

  // `1/4`, `.375`, `.2490/.2493`, `1½`.
  void cutNumber() {
    const std::size_t from = at_;
    if (!isFigure()) ++at_;
    while (isFigure() || isStroke() ||
           ((peek() == '.' || peek() == ',' || peek() == '/') &&
            (isDigit(peek(1)) || (peek() == '/' && peek(1) == '.')))) {
      at_ += here().length;
    }
    put(CalloutItemKind::number, from);
    items_.back().whole =
        text_.substr(from, at_ - from).find_first_not_of("0123456789") == std::string_view::npos;
  }

  // `C'BORE`, `P.C.D.`, `C/SINK`, `C-BORE`, `EQ.`: marks inside a word belong to it.
  void cutWord() {
    const std::size_t from = at_;
    while (isLetter(peek()) || (peek() == '-' && at_ == from + 1 && isLetter(peek(1))) ||
           (isMark() && (isLetter(peek(markLength())) || peek() != '/'))) {
      at_ += isLetter(peek()) || peek() == '-' ? 1 : markLength();
    }
    const std::string_view raw = text_.substr(from, at_ - from);
    if (raw == "x" || raw == "X") return put(CalloutItemKind::times, from);
    // `PITCH CIRCLE` is no pitch.
    if (!items_.empty() && items_.back().word == CalloutWord::centres &&
        wordOf(raw) == CalloutWord::pitchCircle) {
      items_.back().word = CalloutWord::filler;
    }
    put(CalloutItemKind::word, from, wordOf(raw));
  }

  // The stroke of a fraction that is no `/`.
  bool isStroke() const {
    const reading::Glyph glyph = here();
    if (glyph.kind != reading::GlyphKind::slash || glyph.length < 2) return false;
    const reading::GlyphKind next = reading::glyphAt(text_, at_ + glyph.length).kind;
    return next == reading::GlyphKind::digit || next == reading::GlyphKind::loweredDigit;
  }

  bool isMark() const { return markLength() > 0; }
  std::size_t markLength() const {
    if (peek() == '.' && isDigit(peek(1))) return 0;  // `R.375`
    if (peek() == '\'' || peek() == '.' || peek() == '/') return 1;
    return text_.substr(at_).substr(0, 3) == "’" ? 3 : 0;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  bool gap_ = false;
  std::vector<CalloutItem> items_;
};

}  // namespace

std::vector<CalloutItem> calloutItems(std::string_view text) {
  return Cutter(text).cut();
}

std::string_view calloutWordMeantBy(std::string_view raw) {
  std::vector<std::string_view> known;
  for (const Spelling& one : kSpellings) known.push_back(one.text);
  const auto meant = nearestWord(normal(raw), known);
  if (!meant) return {};
  const auto spelt = [&](auto is) {
    return *std::find_if(std::begin(kSpellings), std::end(kSpellings), is);
  };
  const Spelling near = spelt([&](const Spelling& one) { return one.text == *meant; });
  // The first spelling of each is the plain one.
  return spelt([&](const Spelling& one) { return one.word == near.word; }).text;
}

bool tellsOfSlotEnds(std::string_view word) {
  const std::string raw = normal(word);
  return raw == "BOTH" || raw == "END" || raw == "ENDS" || raw == "MILL" || raw == "RD";
}

bool namesSlot(std::string_view word) {
  const std::string raw = normal(word);
  return raw == "SLOT" || raw == "SLOTS" || raw == "SLOTTED" || raw == "KEYWAY" || raw == "KEYSLOT";
}

bool tellsOfSlot(std::string_view line) {
  for (LineWords words(line); !words.empty(); words.take()) {
    if (words.peek() == "by" || axisNamed(words.peek()) || namesSlot(words.peek())) return true;
  }
  const std::vector<CalloutItem> items = calloutItems(line);
  return std::any_of(items.begin(), items.end(), [](const CalloutItem& item) {
    return item.word == CalloutWord::wide || item.word == CalloutWord::longAll ||
           item.word == CalloutWord::centres;
  });
}

}  // namespace inchwright
