#include <algorithm>
#include <optional>
#include <utility>

#include "core/base/ascii.h"
#include "core/document/document.h"
#include "core/document/json_string.h"
#include "core/document/json_text.h"

namespace inchwright {
namespace {

constexpr std::size_t kMostValues = 10'000'000;
/// Up to so many names are compared pair by pair, more are sorted.
constexpr std::size_t kFewNames = 16;

std::optional<std::string> twiceIn(std::vector<std::string>& names) {
  if (names.size() > kFewNames) {
    std::sort(names.begin(), names.end());
    const auto twice = std::adjacent_find(names.begin(), names.end());
    if (twice == names.end()) return std::nullopt;
    return *twice;
  }
  for (std::size_t i = 1; i < names.size(); ++i) {
    const auto end = names.begin() + static_cast<std::ptrdiff_t>(i);
    if (std::find(names.begin(), end, names[i]) != end) return names[i];
  }
  return std::nullopt;
}

}  // namespace

/// Walks the text once with a stack of the open arrays and objects; never calls itself.
class JsonParser {
 public:
  explicit JsonParser(std::string_view text) { parsed_.text_ = text; }

  Result<JsonText> run() {
    if (text().size() > kLargestDocument) return tooLarge("a document has at most 100 MB");
    if (text().starts_with("\xEF\xBB\xBF")) at_ = 3;
    while (!fault_ && expect_ != Expect::end) step();
    if (fault_) return *fault_;
    skipBlanks();
    if (at_ < text().size()) return faultHere("nothing may follow the document's closing brace");
    return std::move(parsed_);
  }

 private:
  enum class Expect { value, firstItem, firstName, name, separator, end };

  std::string_view text() const { return parsed_.text_; }

  void skipBlanks() {
    while (at_ < text().size()) {
      const char c = text()[at_];
      if (c != ' ' && c != '\n' && c != '\r' && c != '\t') return;
      ++at_;
    }
  }

  void step() {
    skipBlanks();
    if (at_ >= text().size()) return fail("the text ends too early: is the file cut short?");
    const char c = text()[at_];
    switch (expect_) {
      case Expect::firstItem:
        if (c == ']') return close();
        return value();
      case Expect::value:
        return value();
      case Expect::firstName:
        if (c == '}') return close();
        return name();
      case Expect::name:
        return name();
      case Expect::separator:
        return separator();
      case Expect::end:
        return;
    }
  }

  void value() {
    switch (text()[at_]) {
      case '{':
        return open(JsonKind::object, Expect::firstName);
      case '[':
        return open(JsonKind::array, Expect::firstItem);
      case '"':
        string();
        return afterValue();
      case 't':
        return word("true", JsonKind::boolean);
      case 'f':
        return word("false", JsonKind::boolean);
      case 'n':
        return word("null", JsonKind::null);
      default:
        number();
        return afterValue();
    }
  }

  void open(JsonKind kind, Expect next) {
    if (open_.size() >= static_cast<std::size_t>(kDeepestDocument)) {
      fault_ = tooLarge("nested deeper than " + std::to_string(kDeepestDocument) + " levels");
      return;
    }
    open_.push_back(static_cast<std::uint32_t>(parsed_.nodes_.size()));
    add(kind, at_, at_ + 1);
    ++at_;
    expect_ = next;
  }

  void close() {
    ++at_;
    JsonText::Node& node = parsed_.nodes_[open_.back()];
    node.end = static_cast<std::uint32_t>(at_);
    node.next = static_cast<std::uint32_t>(parsed_.nodes_.size());
    if (node.kind == JsonKind::object) refuseTwice();
    if (fault_) return;
    open_.pop_back();
    afterValue();
  }

  void afterValue() { expect_ = open_.empty() ? Expect::end : Expect::separator; }

  void separator() {
    const bool object = parsed_.nodes_[open_.back()].kind == JsonKind::object;
    const char c = text()[at_];
    if (c == (object ? '}' : ']')) return close();
    if (c != ',') {
      return fail(object ? "a comma or the closing `}` is missing here"
                         : "a comma or the closing `]` is missing here");
    }
    ++at_;
    expect_ = object ? Expect::name : Expect::value;
  }

  void name() {
    if (text()[at_] != '"') return fail("a name in double quotes is missing here");
    string();
    if (fault_) return;
    skipBlanks();
    if (at_ >= text().size() || text()[at_] != ':') return fail("a colon is missing here");
    ++at_;
    expect_ = Expect::value;
  }

  void word(std::string_view expected, JsonKind kind) {
    if (text().substr(at_, expected.size()) != expected) return fail("this is no JSON value");
    add(kind, at_, at_ + expected.size());
    at_ += expected.size();
    afterValue();
  }

  std::size_t digitsFrom(std::size_t at) const {
    while (at < text().size() && isDigit(text()[at])) ++at;
    return at;
  }

  char charAt(std::size_t at) const { return at < text().size() ? text()[at] : '\0'; }

  void number() {
    const std::size_t start = at_;
    std::size_t at = charAt(start) == '-' ? start + 1 : start;
    if (!isDigit(charAt(at))) return fail("this is no JSON value");
    at = charAt(at) == '0' ? at + 1 : digitsFrom(at);
    if (isDigit(charAt(at))) return fail("a number starts with no needless 0");
    if (charAt(at) == '.') {
      if (!isDigit(charAt(at + 1))) return failAt(at, "a figure is missing behind the point");
      at = digitsFrom(at + 1);
    }
    if (charAt(at) == 'e' || charAt(at) == 'E') {
      ++at;
      if (charAt(at) == '+' || charAt(at) == '-') ++at;
      if (!isDigit(charAt(at))) return failAt(at, "the exponent is missing here");
      at = digitsFrom(at);
    }
    add(JsonKind::number, start, at);
    at_ = at;
  }

  void string() {
    const std::size_t start = at_++;
    bool escapes = false;
    while (at_ < text().size() && text()[at_] != '"') {
      const unsigned char c = static_cast<unsigned char>(text()[at_]);
      if (c < 0x20) return fail("a control character may not stand in a string: write its escape");
      if (c == '\\') {
        escapes = true;
        escape();
        if (fault_) return;
        continue;
      }
      const std::size_t length = utf8LengthAt(text(), at_);
      if (length == 0) return fail("this byte is no UTF-8: save the file as UTF-8");
      at_ += length;
    }
    if (at_ >= text().size()) return failAt(start, "the string that starts here has no end");
    ++at_;
    add(JsonKind::string, start, at_);
    if (!fault_) parsed_.nodes_.back().escaped = escapes;
  }

  void escape() {
    const char c = charAt(at_ + 1);
    if (c == 'u') return unicodeEscape();
    if (c == '\0' || std::string_view("\"\\/bfnrt").find(c) == std::string_view::npos) {
      return fail("this is no escape that JSON knows");
    }
    at_ += 2;
  }

  void unicodeEscape() {
    const std::optional<std::uint32_t> code = hexFourAt(text(), at_ + 2);
    if (!code) return fail("four hexadecimal figures follow \\u");
    if (*code >= 0xDC00 && *code < 0xE000) return fail("half a surrogate pair");
    if (*code >= 0xD800 && *code < 0xDC00) {
      const bool escaped = charAt(at_ + 6) == '\\' && charAt(at_ + 7) == 'u';
      const std::optional<std::uint32_t> low = escaped ? hexFourAt(text(), at_ + 8) : std::nullopt;
      if (!low || *low < 0xDC00 || *low >= 0xE000) return fail("half a surrogate pair");
      at_ += 6;
    }
    at_ += 6;
  }

  void add(JsonKind kind, std::size_t begin, std::size_t end) {
    if (parsed_.nodes_.size() >= kMostValues) {
      fault_ = tooLarge("more than ten million values");
      return;
    }
    const auto next = static_cast<std::uint32_t>(parsed_.nodes_.size() + 1);
    parsed_.nodes_.push_back(
        {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end), next, kind, false});
  }

  void refuseTwice() {
    const std::uint32_t object = open_.back();
    const auto& nodes = parsed_.nodes_;
    names_.clear();
    for (std::uint32_t i = object + 1; i < nodes[object].next; i = nodes[i + 1].next) {
      names_.push_back(parsed_.stringAt(i));
    }
    if (const std::optional<std::string> twice = twiceIn(names_)) {
      fault_ = Error{ErrorCode::badDocument, "the name `" + *twice + "` is there twice",
                     pointerOfOpen() + pointerStep(*twice)};
    }
  }

  /// The pointer of the innermost open array or object.
  std::string pointerOfOpen() const {
    const auto& nodes = parsed_.nodes_;
    std::string pointer;
    for (std::size_t level = 1; level < open_.size(); ++level) {
      const std::uint32_t outer = open_[level - 1];
      const std::uint32_t inner = open_[level];
      if (nodes[outer].kind == JsonKind::object) {
        pointer += pointerStep(parsed_.stringAt(inner - 1));
        continue;
      }
      std::size_t count = 0;
      for (std::uint32_t i = outer + 1; i < inner; i = nodes[i].next) ++count;
      pointer += "/" + std::to_string(count);
    }
    return pointer;
  }

  Error tooLarge(std::string text) const {
    return Error{ErrorCode::tooLarge, std::move(text), lineAndColumn(at_), at_};
  }

  std::string lineAndColumn(std::size_t offset) const {
    std::size_t line = 1;
    std::size_t column = 1;
    for (std::size_t i = 0; i < std::min(offset, text().size()); ++i) {
      const unsigned char c = static_cast<unsigned char>(text()[i]);
      if (c == '\n') {
        ++line;
        column = 1;
      } else if ((c & 0xC0) != 0x80) {
        ++column;
      }
    }
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
  }

  Error faultHere(std::string text) const {
    return Error{ErrorCode::badDocument, std::move(text), lineAndColumn(at_), at_};
  }

  void fail(std::string text) { fault_ = faultHere(std::move(text)); }

  void failAt(std::size_t at, std::string text) {
    at_ = at;
    fail(std::move(text));
  }

  JsonText parsed_;
  std::size_t at_ = 0;
  Expect expect_ = Expect::value;
  std::vector<std::uint32_t> open_;
  std::vector<std::string> names_;
  std::optional<Error> fault_;
};

Result<JsonText> JsonText::parse(std::string_view text) {
  return JsonParser(text).run();
}

}  // namespace inchwright
