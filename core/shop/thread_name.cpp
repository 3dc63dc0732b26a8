#include "core/shop/thread_name.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <utility>

#include "core/base/ascii.h"
#include "core/shop/sizes.h"

namespace inchwright {
namespace {

/// Walks along a thread's name. Capitals do not matter; spaces are skipped where asked.
class Walker {
 public:
  explicit Walker(std::string_view text) : text_(text) {}

  bool atEnd() const { return at_ >= text_.size(); }
  std::size_t at() const { return at_; }
  char peek(std::size_t ahead = 0) const {
    if (at_ + ahead >= text_.size()) return '\0';
    return static_cast<char>(std::toupper(static_cast<unsigned char>(text_[at_ + ahead])));
  }
  void passOver(std::size_t bytes) { at_ = std::min(at_ + bytes, text_.size()); }
  void skipSpaces() {
    while (peek() == ' ') ++at_;
  }
  bool take(std::string_view upper) {
    for (std::size_t i = 0; i < upper.size(); ++i) {
      // Bytes beyond ASCII have no capitals.
      const char c = static_cast<unsigned char>(upper[i]) < 0x80 ? peek(i)
                     : at_ + i < text_.size()                    ? text_[at_ + i]
                                                                 : '\0';
      if (c != upper[i]) return false;
    }
    at_ += upper.size();
    return true;
  }
  /// A word of a series: it must not run on into another letter.
  bool takeWord(std::string_view upper) {
    if (!(peek(upper.size()) == '\0' ||
          !std::isalpha(static_cast<unsigned char>(peek(upper.size()))))) {
      return false;
    }
    return take(upper);
  }
  /// Up to four digits; empty when there is none or more.
  std::optional<int> takeNumber() {
    const std::size_t start = at_;
    int value = 0;
    while (isDigit(peek()) && at_ - start < 4) value = value * 10 + (text_[at_++] - '0');
    if (at_ == start || isDigit(peek())) return std::nullopt;
    return value;
  }
  /// Digits behind a point in ten-thousandths, at most four of them.
  std::optional<int> takeDecimals() {
    if (peek() != '.' && peek() != ',') return std::nullopt;
    ++at_;
    int value = 0, scale = 1000;
    const std::size_t start = at_;
    while (isDigit(peek()) && scale > 0) {
      value += (text_[at_++] - '0') * scale;
      scale /= 10;
    }
    if (at_ == start || isDigit(peek())) return std::nullopt;
    return value;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

Error refuse(std::string what, std::size_t at) {
  return {ErrorCode::badText, std::move(what), {}, at};
}

// A decimal figure in ten-thousandths of whatever unit.
std::optional<std::int64_t> takeDecimalFigure(Walker& walker) {
  std::int64_t value = 0;
  const std::optional<int> whole = walker.takeNumber();
  if (whole) value = std::int64_t{*whole} * 10'000;
  if (walker.peek() == '.' || walker.peek() == ',') {
    const std::optional<int> decimals = walker.takeDecimals();
    if (!decimals) return std::nullopt;
    return value + *decimals;
  }
  if (!whole) return std::nullopt;
  return value;
}

Length tenthsOfMicron(std::int64_t count) {
  return Length::ticks(count * (Length::kTicksPerMillimetre / 10'000));
}

bool takeSize(Walker& walker, ThreadName& name) {
  if (walker.take("#") || walker.take("NO.") || walker.take("NO")) name.gaugeMarked = true;
  walker.skipSpaces();
  if (name.gaugeMarked) {
    name.gauge = walker.takeNumber();
    return name.gauge.has_value();
  }
  if (walker.peek() == '.' || walker.peek() == ',' ||
      (walker.peek() == '0' && (walker.peek(1) == '.' || walker.peek(1) == ','))) {
    const std::optional<std::int64_t> figure = takeDecimalFigure(walker);
    if (!figure) return false;
    name.size = tenThousandths(*figure);
    return true;
  }
  const std::optional<int> over = walker.takeNumber();
  if (!over) return false;
  if (walker.peek() != '/') {
    name.gauge = over;
    name.size = sixtyFourths(std::int64_t{*over} * 64);
    return true;
  }
  walker.take("/");
  name.fraction = true;
  const std::optional<int> under = walker.takeNumber();
  if (!under || *under == 0 || 64 % *under != 0) return false;
  name.size = sixtyFourths(std::int64_t{*over} * (64 / *under));
  return true;
}

bool takeTimes(Walker& walker) {
  return walker.take("X") || walker.take("\xC3\x97");
}

// Digits, then `TPI` or nothing; a `-` or `x` or a space stands before them.
bool takePerInch(Walker& walker, ThreadName& name) {
  walker.take("\"");
  walker.skipSpaces();
  const bool marked = walker.take("-") || takeTimes(walker);
  walker.skipSpaces();
  if (!isDigit(walker.peek())) return !marked;
  name.perInch = walker.takeNumber();
  walker.skipSpaces();
  walker.takeWord("TPI");
  return name.perInch.has_value();
}

void takeSeries(Walker& walker, ThreadName& name) {
  constexpr std::array<std::pair<std::string_view, ThreadSeries>, 16> kWords{{
      {"UNC", ThreadSeries::unc},
      {"UNF", ThreadSeries::unf},
      {"NC", ThreadSeries::unc},
      {"NF", ThreadSeries::unf},
      {"B.A.", ThreadSeries::ba},
      {"BA", ThreadSeries::ba},
      {"B.S.W.", ThreadSeries::bsw},
      {"BSW", ThreadSeries::bsw},
      {"WHITWORTH", ThreadSeries::bsw},
      {"WHIT", ThreadSeries::bsw},
      {"B.S.F.", ThreadSeries::bsf},
      {"BSF", ThreadSeries::bsf},
      {"M.E.", ThreadSeries::me},
      {"ME", ThreadSeries::me},
      {"BRASS", ThreadSeries::brass},
      {"BSB", ThreadSeries::brass},
  }};
  for (const auto& [word, series] : kWords) {
    if (!walker.takeWord(word)) continue;
    name.series = series;
    walker.take(".");
    return;
  }
}

// A class of fit says nothing about the tap drill: `-2B`, `3A`, `-6H`.
void passOverClass(Walker& walker) {
  std::size_t digit = 0;
  if (walker.peek() == '-') {
    ++digit;
    while (walker.peek(digit) == ' ') ++digit;
  }
  const char grade = walker.peek(digit), letter = walker.peek(digit + 1);
  const bool inchClass = grade >= '1' && grade <= '3' && (letter == 'A' || letter == 'B');
  const bool metricClass = grade >= '3' && grade <= '8' && (letter == 'G' || letter == 'H');
  if (inchClass || metricClass) walker.passOver(digit + 2);
}

Result<ThreadName> readMetric(Walker& walker, std::string_view text) {
  ThreadName name;
  name.metric = true;
  name.series = ThreadSeries::metric;
  walker.skipSpaces();
  const std::optional<std::int64_t> size = takeDecimalFigure(walker);
  if (!size) return refuse("a size in millimetres stands behind M", walker.at());
  name.size = tenthsOfMicron(*size);
  walker.skipSpaces();
  if (takeTimes(walker)) {
    walker.skipSpaces();
    const std::optional<std::int64_t> pitch = takeDecimalFigure(walker);
    if (!pitch) return refuse("a pitch in millimetres stands behind x", walker.at());
    name.pitch = tenthsOfMicron(*pitch);
    walker.skipSpaces();
  }
  passOverClass(walker);
  walker.skipSpaces();
  if (!walker.atEnd())
    return refuse("can't read the end of thread " + std::string(text), walker.at());
  return name;
}

}  // namespace

Result<ThreadName> readThreadName(std::string_view text) {
  Walker walker(text);
  walker.skipSpaces();
  if (walker.atEnd()) return refuse("no thread is named", 0);
  // `ME` never begins a name, so an M does begin a metric one.
  if (walker.take("M")) return readMetric(walker, text);
  ThreadName name;
  if (!takeSize(walker, name)) {
    return refuse("a thread begins with its size, such as 1/4, #8, 2 BA or M3", walker.at());
  }
  if (!takePerInch(walker, name)) return refuse("threads to the inch are missing", walker.at());
  walker.skipSpaces();
  takeSeries(walker, name);
  walker.skipSpaces();
  passOverClass(walker);
  walker.skipSpaces();
  if (!walker.atEnd()) {
    return refuse("can't read the end of thread " + std::string(text), walker.at());
  }
  if (!name.series && !name.perInch) {
    return refuse(std::string(text) + " names neither threads to the inch nor a series",
                  walker.at());
  }
  // No thread of whole inches is that fine: `8-34` is a gauge number, .060 and .013 for each number
  // in (ASME B1.1).
  constexpr int kFinestOfInches = 20;
  if (name.gauge && (name.gaugeMarked || name.perInch.value_or(0) > kFinestOfInches)) {
    name.size = Length::ticks(Length::kTicksPerInch / 1000 * (60 + 13 * *name.gauge));
  }
  return name;
}

}  // namespace inchwright
