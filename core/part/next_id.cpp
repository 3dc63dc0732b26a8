#include <algorithm>
#include <charconv>
#include <cstdint>
#include <set>
#include <string_view>

#include "core/part/edit.h"

namespace inchwright {
namespace {

/// The alphabet without the letters of the sides and those that look like figures.
constexpr std::string_view kLetters = "ABCDEGHJMNPQSVWXYZ";
/// By Side: top, bottom, front, back, left, right.
constexpr std::string_view kSideLetters = "TUFKLR";

/// 0 is A, and behind Z follow AA, AB …
Id lettersFor(std::size_t number) {
  Id id;
  for (std::size_t rest = number + 1; rest > 0; rest = (rest - 1) / kLetters.size()) {
    id.insert(id.begin(), kLetters[(rest - 1) % kLetters.size()]);
  }
  return id;
}

std::string_view withoutNumber(std::string_view id) {
  while (!id.empty() && id.back() >= '0' && id.back() <= '9') id.remove_suffix(1);
  return id;
}

}  // namespace

Id nextFeatureId(const Part& part, std::optional<Side> side) {
  // A place ends in its feature's name and a number, so the features' own ids are enough.
  std::set<std::string_view> taken;
  for (const Feature& feature : part.features) {
    taken.insert(feature.id);
    taken.insert(withoutNumber(feature.id));
  }
  for (const MadePlace& made : part.made) taken.insert(withoutNumber(made.place));
  for (const Mended& mended : part.mended) taken.insert(withoutNumber(mended.place));
  if (side) {
    const Id letter(1, kSideLetters[static_cast<std::size_t>(*side)]);
    if (!taken.contains(letter)) return letter;
  }
  std::size_t number = 0;
  while (taken.contains(lettersFor(number))) ++number;
  return lettersFor(number);
}

Id nextReadingId(const Part& part) {
  std::uint64_t highest = 0;
  for (const Reading& reading : part.readings) {
    if (!reading.id.starts_with('r')) continue;
    std::uint64_t number = 0;
    const char* end = reading.id.data() + reading.id.size();
    const auto [stopped, fault] = std::from_chars(reading.id.data() + 1, end, number);
    constexpr std::uint64_t kMost = 1'000'000'000'000;
    if (fault == std::errc() && stopped == end && number < kMost) {
      highest = std::max(highest, number);
    }
  }
  return "r" + std::to_string(highest + 1);
}

}  // namespace inchwright
