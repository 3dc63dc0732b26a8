#pragma once

#include <string>

#include "core/part/extra.h"

namespace inchwright {

/// The name of a feature, a place of one, or a reading. Unique among its kind within a part.
using Id = std::string;

/// A place of a part of the job, such as hole `A` of the back plate.
struct PartPlace {
  std::string part;  ///< its name
  Id place;
  Extra extra;

  bool operator==(const PartPlace&) const = default;
};

}  // namespace inchwright
