#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace inchwright {

/// Bytes as base64 text (RFC 4648, section 4), with padding and without line breaks: `foob` →
/// `Zm9vYg==`.
void appendBase64(std::string& out, std::string_view bytes);

/// The bytes again; empty-handed for a character outside the alphabet, padding that is missing or
/// misplaced, or bits behind the last byte that are not 0.
std::optional<std::string> fromBase64(std::string_view text);

}  // namespace inchwright
