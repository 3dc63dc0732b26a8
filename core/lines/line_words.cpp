#include "core/lines/line_words.h"

#include <algorithm>

namespace inchwright {

LineWords::LineWords(std::string_view line) : line_(line) {
  constexpr std::string_view kBlanks = " \t\r\n";
  std::size_t begin = line.find_first_not_of(kBlanks);
  while (begin != std::string_view::npos) {
    const std::size_t end = std::min(line.find_first_of(kBlanks, begin), line.size());
    words_.push_back({line.substr(begin, end - begin), begin});
    begin = line.find_first_not_of(kBlanks, end);
  }
}

std::string_view LineWords::peek(std::size_t ahead) const {
  return next_ + ahead < words_.size() ? words_[next_ + ahead].text : std::string_view{};
}

std::string_view LineWords::take() {
  return empty() ? std::string_view{} : words_[next_++].text;
}

std::string_view LineWords::span(std::size_t count) const {
  if (count == 0) return {};
  const LineWord& last = words_[next_ + count - 1];
  const std::size_t begin = words_[next_].at;
  return line_.substr(begin, last.at + last.text.size() - begin);
}

std::string_view LineWords::take(std::size_t count) {
  const std::string_view text = span(count);
  next_ += count;
  return text;
}

bool LineWords::takeIf(std::string_view word) {
  if (empty() || peek() != word) return false;
  ++next_;
  return true;
}

std::string_view LineWords::takeUntil(const std::vector<std::string_view>& stops) {
  const std::size_t first = next_;
  while (!empty() && std::find(stops.begin(), stops.end(), peek()) == stops.end()) ++next_;
  if (next_ == first) return {};
  const LineWord& last = words_[next_ - 1];
  const std::size_t begin = words_[first].at;
  return line_.substr(begin, last.at + last.text.size() - begin);
}

std::string_view LineWords::takeRest() {
  return takeUntil({});
}

std::size_t LineWords::at() const {
  return empty() ? line_.size() : words_[next_].at;
}

std::size_t LineWords::at(std::string_view taken) const {
  return taken.data() == nullptr ? line_.size()
                                 : static_cast<std::size_t>(taken.data() - line_.data());
}

Error LineWords::refuse(std::string text) const {
  return Error{ErrorCode::badText, std::move(text), {}, at()};
}

}  // namespace inchwright
