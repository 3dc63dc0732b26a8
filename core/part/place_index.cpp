#include "core/part/place_index.h"

#include <algorithm>
#include <optional>

namespace inchwright {
namespace {

constexpr std::size_t kLongestId = 64;

AxisSet setOf(const std::vector<Axis>& axes) {
  AxisSet set;
  for (Axis axis : axes) set.add(axis);
  return set;
}

/// Counted before any is made: a few bytes of a document can ask for a thousand places.
std::optional<Error> refuseTooMany(const Part& part) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    count += 1 + static_cast<std::size_t>(std::clamp(part.features[i].holes, 0, kMostHoles));
    if (count <= kMostPlaces) continue;
    return Error{ErrorCode::tooLarge,
                 "more than " + std::to_string(kMostPlaces) + " places in one part",
                 "/features/" + std::to_string(i)};
  }
  return std::nullopt;
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
  if (const std::optional<Error> tooMany = refuseTooMany(part)) return *tooMany;
  PlaceIndex index;
  index.entries_.reserve(part.features.size());
  for (std::size_t i = 0; i < part.features.size(); ++i) {
    const Feature& feature = part.features[i];
    const std::string pointer = "/features/" + std::to_string(i) + "/id";
    if (!isSoundId(feature.id)) {
      return Error{ErrorCode::badDocument,
                   "an id is 1 to 64 bytes without control characters or outer blanks", pointer};
    }
    std::vector<Place> places = placesOf(feature);
    if (places.empty()) places.push_back({feature.id, {}});
    for (const Place& place : places) {
      const Entry entry{&feature, setOf(place.axes), place.id == feature.id};
      if (index.entries_.emplace(place.id, entry).second) continue;
      return Error{ErrorCode::badDocument,
                   "the id `" + place.id + "` is there twice; give one of the two another",
                   pointer};
    }
  }
  return index;
}

const PlaceIndex::Entry* PlaceIndex::find(const Id& id) const {
  const auto found = entries_.find(id);
  return found == entries_.end() ? nullptr : &found->second;
}

}  // namespace inchwright
