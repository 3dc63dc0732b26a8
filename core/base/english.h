#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

namespace inchwright {

/// The English that words for people are in. The document and what is typed are the same in both.
enum class English : std::uint8_t { uk, us };

/// A text of our own, which the rooms word in UK English, in the other one: `centre` becomes
/// `center`, `PCD` the bolt circle. Whole words only, in the case they stand in. Left as it is:
/// what stands between backticks, and a word of which `isName` says that somebody named a thing so.
/// Idempotent. Time linear in the text.
std::string inEnglish(std::string_view text, English english,
                      const std::function<bool(std::string_view)>& isName = {});

}  // namespace inchwright
