#include "core/kit/kit_cursor.h"

#include <algorithm>
#include <array>

namespace inchwright {
namespace {

constexpr std::string_view kBlanks = " \t";
/// What a figure or a fit's name ends at.
constexpr std::array<std::string_view, 9> kKeywords{"hole", "shaft",  "fit", "least", "greatest",
                                                    "at",   "places", "of",  "called"};

std::size_t wordLength(std::string_view text) {
  return std::min(text.find_first_of(" \t;"), text.size());
}

}  // namespace

std::string_view KitCursor::peek() const {
  const std::string_view word = rest().substr(0, wordLength(rest()));
  return word.ends_with(',') ? word.substr(0, word.size() - 1) : word;
}

std::string_view KitCursor::takeWord() {
  const std::string_view word = peek();
  forward(word.size());
  return word;
}

bool KitCursor::takeIf(std::string_view word) {
  if (atEnd() || peek() != word) return false;
  forward(word.size());
  return true;
}

bool KitCursor::takeSemicolon() {
  if (!rest().starts_with(';')) return false;
  forward(1);
  return true;
}

bool KitCursor::isAtKeyword() const {
  return std::find(kKeywords.begin(), kKeywords.end(), peek()) != kKeywords.end();
}

std::string_view KitCursor::takeText() {
  const std::size_t begin = at_;
  std::size_t end = begin;
  while (!atEndOfPiece() && !isAtKeyword()) {
    const std::size_t word = wordLength(rest());
    end = at_ + word;
    forward(word);
  }
  std::string_view text = line_.substr(begin, end - begin);
  while (text.ends_with(',')) text.remove_suffix(1);
  return text;
}

std::string KitCursor::takeName() {
  const std::string_view piece = rest().substr(0, rest().find(';'));
  std::string name(trimmed(piece));
  forward(piece.size());
  return name;
}

Result<Lettered> KitCursor::takeFigure() {
  const std::size_t begin = at_;
  const std::string_view text = takeText();
  if (text.empty()) return refuse("a figure is wanted here");
  Result<Lettered> figure = readLength(text, {job_.unit});
  if (figure) return figure;
  Error error = figure.error();
  error.at = begin + error.at.value_or(0);
  return error;
}

std::optional<std::pair<std::string, std::string>> KitCursor::takePlaceOf() {
  const std::string_view piece = rest().substr(0, rest().find(';'));
  const std::size_t of = piece.find(" of ");
  if (of == piece.npos) return std::nullopt;
  std::string place(trimmed(piece.substr(0, of)));
  KitCursor behind = *this;
  behind.forward(of + 4);
  std::string part = behind.takePart();
  if (part.empty()) return std::nullopt;
  at_ = behind.at_;
  return std::pair(std::move(place), std::move(part));
}

Result<SizeOrPlace> KitCursor::takeSide(const char* what) {
  // A size ends where the next word begins; behind a place stands `of`.
  KitCursor ahead = *this;
  const std::string_view text = ahead.takeText();
  if (!ahead.takeIf("of") && !text.empty()) {
    auto figure = takeFigure();
    if (!figure) return figure.error();
    return SizeOrPlace(std::move(figure).value());
  }
  if (auto place = takePlaceOf()) {
    return SizeOrPlace(PartPlace{std::move(place->second), std::move(place->first), {}});
  }
  if (text.empty()) {
    return refuse(std::string("say which ") + what + ", such as `A of Plate`, or its size");
  }
  const std::size_t at = ahead.at();
  return Error{
      ErrorCode::notFound, "the job has no part `" + std::string(ahead.takeText()) + "`", {}, at};
}

std::string_view KitCursor::trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == text.npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

std::string KitCursor::take(std::string_view front) {
  std::string taken(front);
  forward(taken.size());
  return taken;
}

void KitCursor::forward(std::size_t by) {
  at_ = std::min(at_ + by, line_.size());
  skip();
}

void KitCursor::skip() {
  while (!atEnd()) {
    const bool comma = line_[at_] == ',' &&
                       (at_ + 1 == line_.size() || kBlanks.find(line_[at_ + 1]) != kBlanks.npos);
    if (!comma && kBlanks.find(line_[at_]) == kBlanks.npos) return;
    ++at_;
  }
}

}  // namespace inchwright
