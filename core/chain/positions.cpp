#include "core/chain/positions.h"

#include <algorithm>
#include <utility>

namespace inchwright {

void Positions::set(Axis axis, Along along) {
  const auto number = static_cast<std::size_t>(axis);
  axes_[number] = std::move(along);
  numbers_[number] = IdNumbers(axes_[number].places);
}

const Position* Positions::find(std::string_view place, Axis axis) const {
  const Along& here = along(axis);
  const auto found = numbers_[static_cast<std::size_t>(axis)].find(here.places, place);
  return found ? &here.positions[*found] : nullptr;
}

Position& Positions::at(const Id& place, Axis axis) {
  Along& here = along(axis);
  const auto found = std::lower_bound(here.places.begin(), here.places.end(), place);
  const auto at = here.positions.begin() + (found - here.places.begin());
  if (found != here.places.end() && *found == place) return *at;
  here.places.insert(found, place);
  Position& made = *here.positions.insert(at, Position());
  numbers_[static_cast<std::size_t>(axis)] = IdNumbers(here.places);
  return made;
}

}  // namespace inchwright
