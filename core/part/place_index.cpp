#include "core/part/place_index.h"

#include <algorithm>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/ascii.h"
#include "core/part/as_it_looks.h"

namespace inchwright {
namespace {

constexpr std::size_t kLongestId = 64;

}  // namespace

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
    const auto pointer = [i] { return "/features/" + std::to_string(i) + "/id"; };
    if (!isSoundId(feature.id)) {
      return Error{ErrorCode::badDocument,
                   "an id is 1 to 64 bytes without control characters or outer blanks", pointer()};
    }
    if (!isAscii(feature.id)) foreign.push_back(i);
    if (index.features_.emplace(feature.id, &feature).second) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + feature.id + "` is there twice; give one of the two another",
                 pointer()};
  }
  std::unordered_map<std::string, Id> looks;
  for (const std::size_t i : foreign) {
    const std::string& id = part.features[i].id;
    const std::string seen = asItLooks(id);
    const auto [other, isNew] = looks.emplace(seen, id);
    if (isNew && (seen == id || !index.find(seen))) continue;
    return Error{ErrorCode::badDocument,
                 "the id `" + id + "` looks like `" + (isNew ? seen : other->second) +
                     "` in other letters; give one another",
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
  if (found != features_.end()) return Entry{found->second, axesOf(*found->second), true};
  const Feature* owner = ownerOf(id);
  if (owner == nullptr) return std::nullopt;
  return Entry{owner, axesOf(*owner), false};
}

}  // namespace inchwright
