#include "core/solution/solution.h"

#include <algorithm>
#include <utility>

namespace inchwright {

bool Doubt::isFinding() const {
  switch (key.topic) {
    case DoubtTopic::assumed:
    case DoubtTopic::notPlaced:
    case DoubtTopic::question:
    case DoubtTopic::misfit:
    case DoubtTopic::alone:
      return false;
    default:
      return !accepted;
  }
}

std::vector<Id> Doubt::pointsAt() const {
  std::vector<Id> ids = key.readings;
  for (const std::vector<Id>* places : {&key.places, &nearby}) {
    for (const Id& place : *places) {
      if (std::find(ids.begin(), ids.end(), place) == ids.end()) ids.push_back(place);
    }
  }
  return ids;
}

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

std::optional<Rational> Solution::between(std::string_view a, std::string_view b, Axis axis) const {
  const Position* from = position(a, axis);
  const Position* to = position(b, axis);
  if (from == nullptr || to == nullptr || from->group != to->group) return std::nullopt;
  return to->ticks.minus(from->ticks);
}

bool Solution::isDraft() const {
  return std::any_of(doubts.begin(), doubts.end(),
                     [](const Doubt& doubt) { return doubt.holdsUp(); });
}

std::vector<Id> Solution::aloneIds(const Part& part) const {
  std::vector<Id> ids;
  for (std::size_t i = 0; i < status.size(); ++i) {
    if (status[i] == ReadingStatus::alone) ids.push_back(part.readings[i].id);
  }
  std::sort(ids.begin(), ids.end());
  return ids;
}

}  // namespace inchwright
