#include "core/part/place_index.h"

#include <algorithm>
#include <string>

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

}  // namespace

bool isSoundId(std::string_view id) {
  if (id.empty() || id.size() > kLongestId) return false;
  if (id.front() == ' ' || id.back() == ' ') return false;
  return std::none_of(id.begin(), id.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x20 || byte == 0x7f;
  });
}

Result<PlaceIndex> PlaceIndex::of(const Part& part) {
  PlaceIndex index;
  index.features_.reserve(part.features.size());
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    const std::string pointer = "/features/" + std::to_string(i) + "/id";
    if (!isSoundId(feature.id)) {
      return Error{ErrorCode::badDocument,
                   "an id is 1 to 64 bytes without control characters or outer blanks", pointer};
    }
    if (index.features_.emplace(feature.id, &feature).second) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + feature.id + "` is there twice; give one of the two another",
                 pointer};
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
