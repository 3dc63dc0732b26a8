#include "core/document/json_string.h"

#include <charconv>
#include <cstdint>

namespace inchwright {
namespace {

unsigned byteAt(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

bool isTail(std::string_view text, std::size_t at, unsigned low = 0x80, unsigned high = 0xBF) {
  return at < text.size() && byteAt(text, at) >= low && byteAt(text, at) <= high;
}

void appendUtf8(std::string& out, std::uint32_t code) {
  const auto put = [&out](std::uint32_t byte) { out += static_cast<char>(byte); };
  if (code < 0x80) {
    put(code);
  } else if (code < 0x800) {
    put(0xC0 | (code >> 6));
    put(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    put(0xE0 | (code >> 12));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  } else {
    put(0xF0 | (code >> 18));
    put(0x80 | ((code >> 12) & 0x3F));
    put(0x80 | ((code >> 6) & 0x3F));
    put(0x80 | (code & 0x3F));
  }
}

char plainEscape(char c) {
  switch (c) {
    case 'b':
      return '\b';
    case 'f':
      return '\f';
    case 'n':
      return '\n';
    case 'r':
      return '\r';
    case 't':
      return '\t';
    default:
      return c;  // the quote, the backslash and the slash stand for themselves
  }
}

void appendControl(std::string& out, char c) {
  constexpr char kHex[] = "0123456789abcdef";
  switch (c) {
    case '\b':
      out += "\\b";
      break;
    case '\f':
      out += "\\f";
      break;
    case '\n':
      out += "\\n";
      break;
    case '\r':
      out += "\\r";
      break;
    case '\t':
      out += "\\t";
      break;
    default:
      out += "\\u00";
      out += kHex[(c >> 4) & 0xF];
      out += kHex[c & 0xF];
  }
}

}  // namespace

std::size_t utf8LengthAt(std::string_view text, std::size_t at) {
  const unsigned lead = byteAt(text, at);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return isTail(text, at + 1) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
    const unsigned high = lead == 0xED ? 0x9F : 0xBF;
    return isTail(text, at + 1, low, high) && isTail(text, at + 2) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
    const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
    const bool well = isTail(text, at + 1, low, high) && isTail(text, at + 2);
    return well && isTail(text, at + 3) ? 4 : 0;
  }
  return 0;
}

void appendQuoted(std::string& out, std::string_view text) {
  out += '"';
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    const std::size_t length = utf8LengthAt(text, i);
    if (length == 0) {
      out += "\xEF\xBF\xBD";
      ++i;
      continue;
    }
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (length == 1 && static_cast<unsigned char>(c) < 0x20) {
      appendControl(out, c);
    } else {
      out.append(text, i, length);
    }
    i += length;
  }
  out += '"';
}

std::optional<std::uint32_t> hexFourAt(std::string_view text, std::size_t at) {
  if (text.size() < 4 || at > text.size() - 4) return std::nullopt;
  std::uint32_t code = 0;
  const char* end = text.data() + at + 4;
  const auto [stopped, fault] = std::from_chars(text.data() + at, end, code, 16);
  if (fault != std::errc() || stopped != end) return std::nullopt;
  return code;
}

std::string unescaped(std::string_view between) {
  std::string out;
  out.reserve(between.size());
  for (std::size_t i = 0; i < between.size(); ++i) {
    if (between[i] != '\\') {
      out += between[i];
      continue;
    }
    ++i;
    if (between[i] != 'u') {
      out += plainEscape(between[i]);
      continue;
    }
    std::uint32_t code = hexFourAt(between, i + 1).value_or(0);
    i += 4;
    if (code >= 0xD800 && code < 0xDC00) {
      const std::uint32_t low = hexFourAt(between, i + 3).value_or(0xDC00);
      code = 0x10000 + ((code - 0xD800) << 10) + (low - 0xDC00);
      i += 6;
    }
    appendUtf8(out, code);
  }
  return out;
}

}  // namespace inchwright
