#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <unordered_map>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// Every id that readings, understandings and setups may name, looked up in constant time.
///
/// Holds only the features' own ids; a hole or an end is found by taking its number off. Refers to
/// the part it was made from: that has to outlive it, unchanged.
class PlaceIndex {
 public:
  struct Entry {
    const Feature* feature = nullptr;
    AxisSet axes;           ///< empty for a line or an arc
    bool isFeature = true;  ///< else one hole of a ring or row, or the end of a slot
  };

  /// Errors: `badDocument` for an id that is empty, malformed or there twice; the place is a JSON
  /// pointer relative to the part. Time linear in the features, whatever they hold.
  static Result<PlaceIndex> of(const Part& part);

  /// Empty when nothing bears the id.
  std::optional<Entry> find(std::string_view id) const;

 private:
  /// The feature one of whose holes or ends bears the id; null when there is none.
  const Feature* ownerOf(std::string_view id) const;

  std::unordered_map<std::string_view, const Feature*> features_;
};

/// Whether an id can be lettered, typed and found again: 1 to 64 bytes, no control characters, no
/// blank at either end.
bool isSoundId(std::string_view id);

}  // namespace inchwright
