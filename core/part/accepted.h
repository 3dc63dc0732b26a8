#pragma once

#include <string>
#include <utility>

#include "core/part/extra.h"

namespace inchwright {

/// A doubt that was looked at and let stand.
///
/// In the document it is its key alone, such as `loose:C:y`, or
/// `{"key": "loose:C:y", "about": "1/16 too long", "reason": "the maker's own plate is so"}`.
/// What it was about (figures, the miss) is kept as it was then: where the doubt is now about
/// something else, it stands again.
struct AcceptedDoubt {
  std::string key;
  std::string about = {};   ///< empty: of older documents, accepted whatever it is about
  std::string reason = {};  ///< in the words of whoever accepted it; may be empty
  Extra extra = {};

  AcceptedDoubt() = default;
  // Implicit on purpose: a key alone is an accepted doubt of the older form.
  AcceptedDoubt(std::string of) : key(std::move(of)) {}
  AcceptedDoubt(const char* of) : key(of) {}

  /// Whether it lets a doubt stand that has this key and is about this.
  bool covers(const std::string& doubt, const std::string& isAbout) const {
    return key == doubt && (about.empty() || about == isAbout);
  }
  bool operator==(const AcceptedDoubt&) const = default;
};

}  // namespace inchwright
