#include "core/part/place_index.h"

#include <algorithm>
#include <string>
#include <vector>

#include "core/base/ascii.h"

namespace inchwright {
namespace {

constexpr std::size_t kLongestId = 64;

AxisSet axisSetOf(const Feature& feature) {
  AxisSet set;
  switch (feature.kind()) {
    case FeatureKind::line:
      break;
    case FeatureKind::edge:
      set.add(feature.as<kind::Edge>()->axis);
      break;
    default:
      if (isTurned(feature.kind())) break;
      for (Axis axis : axesIn(feature.face)) set.add(axis);
  }
  return set;
}

/// How long the mark here is that nobody sees on paper (blanks of all widths but the plain one,
/// joiners, marks of direction, the byte order mark); 0 where there is none.
std::size_t unseenAt(std::string_view id, std::size_t i) {
  constexpr std::string_view kUnseen[] = {"\xC2\xA0",     "\xC2\xAD",     "\xE3\x80\x80",
                                          "\xEF\xBB\xBF", "\xE2\x80\xAF", "\xE2\x81\x9F"};
  for (const std::string_view mark : kUnseen) {
    if (id.substr(i, mark.size()) == mark) return mark.size();
  }
  // U+2000 to U+200F, U+2028 to U+202E, U+2060 to U+206F.
  if (i + 2 >= id.size() || static_cast<unsigned char>(id[i]) != 0xE2) return 0;
  const auto second = static_cast<unsigned char>(id[i + 1]);
  const auto third = static_cast<unsigned char>(id[i + 2]);
  const bool isBlank = second == 0x80 && (third <= 0x8F || (third >= 0xA8 && third <= 0xAE));
  return isBlank || (second == 0x81 && third >= 0xA0 && third <= 0xAF) ? 3 : 0;
}

bool holdsUnseen(std::string_view id) {
  for (std::size_t i = 0; i < id.size(); ++i) {
    if (unseenAt(id, i) > 0) return true;
  }
  return false;
}

/// An id as it looks: capitals of other scripts that look like Latin ones stand for those.
std::string asSeen(std::string_view id) {
  struct Alike {
    std::string_view other;
    char latin;
  };
  constexpr Alike kAlike[] = {
      {"А", 'A'}, {"В", 'B'}, {"С", 'C'}, {"Е", 'E'}, {"Н", 'H'}, {"К", 'K'}, {"М", 'M'},
      {"О", 'O'}, {"Р", 'P'}, {"Т", 'T'}, {"Х", 'X'}, {"Ѕ", 'S'}, {"І", 'I'}, {"Ј", 'J'},
      {"Α", 'A'}, {"Β", 'B'}, {"Ε", 'E'}, {"Ζ", 'Z'}, {"Η", 'H'}, {"Ι", 'I'}, {"Κ", 'K'},
      {"Μ", 'M'}, {"Ν", 'N'}, {"Ο", 'O'}, {"Ρ", 'P'}, {"Τ", 'T'}, {"Υ", 'Y'}, {"Χ", 'X'}};
  std::string seen;
  for (std::size_t i = 0; i < id.size();) {
    const auto* alike = std::find_if(std::begin(kAlike), std::end(kAlike), [&](const Alike& one) {
      return id.substr(i, one.other.size()) == one.other;
    });
    if (alike != std::end(kAlike)) {
      seen += alike->latin;
      i += alike->other.size();
    } else {
      seen += id[i++];
    }
  }
  return seen;
}

}  // namespace

std::string asItLooks(std::string_view name) {
  std::string plain;
  for (std::size_t i = 0; i < name.size();) {
    const std::size_t unseen = unseenAt(name, i);
    if (unseen == 0) plain += name[i];
    i += std::max<std::size_t>(1, unseen);
  }
  const auto from = plain.find_first_not_of(' ');
  if (from == std::string::npos) return "";
  return asSeen(std::string_view(plain).substr(from, plain.find_last_not_of(' ') - from + 1));
}

bool isSoundId(std::string_view id) {
  if (id.empty() || id.size() > kLongestId || holdsUnseen(id)) return false;
  if (id.front() == ' ' || id.back() == ' ') return false;
  return std::none_of(id.begin(), id.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7f;
  });
}

Result<PlaceIndex> PlaceIndex::of(const Part& part) {
  PlaceIndex index;
  index.features_.reserve(part.features.size());
  std::vector<std::size_t> foreign;  // ids that are not plain ASCII
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    const std::string pointer = "/features/" + std::to_string(i) + "/id";
    if (!isSoundId(feature.id)) {
      return Error{ErrorCode::badDocument,
                   "an id is 1 to 64 bytes without control characters or outer blanks", pointer};
    }
    const bool plain = std::all_of(feature.id.begin(), feature.id.end(),
                                   [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    if (!plain) foreign.push_back(i);
    if (index.features_.emplace(feature.id, &feature).second) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + feature.id + "` is there twice; give one of the two another",
                 pointer};
  }
  for (const std::size_t i : foreign) {
    const std::string& id = part.features[i].id;
    const std::string seen = asSeen(id);
    if (seen == id || !index.find(seen)) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + id + "` looks like `" + seen + "` in other letters; give one another",
                 "/features/" + std::to_string(i) + "/id"};
  }
  // Holes of two features can't share an id unless one feature bears the id of the other's hole:
  // in `A11` of `A1` the figures behind `A` make a number larger than that of `A1` itself.
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    const Feature* owner = index.ownerOf(part.features[i].id);
    if (owner == nullptr) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + part.features[i].id + "` is also a hole or end of `" + owner->id +
                     "`; give one of the two another",
                 "/features/" + std::to_string(i) + "/id"};
  }
  return index;
}

const Feature* PlaceIndex::ownerOf(std::string_view id) const {
  for (std::size_t end = id.size(); end > 1 && isDigit(id[end - 1]); --end) {
    const auto found = features_.find(id.substr(0, end - 1));
    if (found != features_.end() && isNamedBy(*found->second, id)) return found->second;
  }
  return nullptr;
}

std::optional<PlaceIndex::Entry> PlaceIndex::find(std::string_view id) const {
  const auto found = features_.find(id);
  if (found != features_.end()) return Entry{found->second, axisSetOf(*found->second), true};
  const Feature* owner = ownerOf(id);
  if (owner == nullptr) return std::nullopt;
  return Entry{owner, axisSetOf(*owner), false};
}

}  // namespace inchwright
