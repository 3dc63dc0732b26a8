#include "core/solution/solution.h"

#include <algorithm>
#include <utility>

namespace inchwright {

Solution::Solution() = default;
Solution::Solution(const Solution& other) = default;
Solution::Solution(Solution&& other) noexcept = default;
Solution& Solution::operator=(const Solution& other) = default;
Solution& Solution::operator=(Solution&& other) noexcept = default;
Solution::~Solution() = default;

bool Doubt::isFinding() const {
  if (placing == PlacingDoubt::clashes) return !accepted;
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
