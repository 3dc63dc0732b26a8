#pragma once

#include <string>
#include <vector>

namespace inchwright {

/// A member of a document object that this version does not know.
struct UnknownMember {
  std::string name;
  std::string json = {};  ///< its value, on one line
  /// A member that is known there, is not given, and is spelt nearly so: `stock` for `stok`. Empty
  /// for what another program may well have added.
  std::string meant = {};

  /// What was meant follows from what else stands there, so it makes no difference.
  bool operator==(const UnknownMember& other) const {
    return name == other.name && json == other.json;
  }
};

/// Unknown members in the order they stood. They are written back behind the known ones.
using Extra = std::vector<UnknownMember>;

}  // namespace inchwright
