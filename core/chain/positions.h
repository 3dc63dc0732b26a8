#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "core/chain/position.h"
#include "core/part/feature.h"
#include "core/part/id_numbers.h"

namespace inchwright {

/// Positions by place and axis.
class Positions {
 public:
  struct Along {
    std::vector<Id> places;           ///< ascending
    std::vector<Position> positions;  ///< by place
  };

  const Along& along(Axis axis) const { return axes_[static_cast<std::size_t>(axis)]; }
  /// The positions there may be changed, the places not: for that there is `set`.
  Along& along(Axis axis) { return axes_[static_cast<std::size_t>(axis)]; }
  void set(Axis axis, Along along);
  /// Null when the place has no position along the axis.
  const Position* find(std::string_view place, Axis axis) const;
  /// The position of a place, made where there is none. Linear in the places.
  Position& at(const Id& place, Axis axis);

 private:
  std::array<Along, 3> axes_;
  std::array<IdNumbers, 3> numbers_;  // of their places
};

}  // namespace inchwright
