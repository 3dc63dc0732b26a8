#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace inchwright {

/// The length in bytes of the well-formed UTF-8 character that starts at `at`; 0 when there is
/// none (overlong forms, surrogates and values above U+10FFFF are none: Unicode, table 3-7).
/// Requires: at < text.size().
std::size_t utf8LengthAt(std::string_view text, std::size_t at);

/// Appends `text` as a JSON string with its quotes. Only what has to be is escaped; a byte that is
/// no UTF-8 becomes U+FFFD, so that what is written can always be read.
void appendQuoted(std::string& out, std::string_view text);

/// The value of the four hexadecimal figures at `at`; empty when they are not there.
std::optional<std::uint32_t> hexFourAt(std::string_view text, std::size_t at);

/// Undoes the escapes between the quotes of a JSON string. Requires: it was checked to be one.
std::string unescaped(std::string_view between);

}  // namespace inchwright
