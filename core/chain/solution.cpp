#include "core/chain/solution.h"

#include <algorithm>

namespace inchwright {

std::string Suspect::reason() const {
  const std::string named = "looks like " + wouldBeText;
  const bool again = why.compare(0, named.size(), named) == 0 &&
                     (why.size() == named.size() || why[named.size()] == ';');
  return again ? "the two look alike" + why.substr(named.size()) : why;
}

std::vector<Id> Clash::readingIds() const {
  // The readings stand by their labels, which are their ids.
  std::vector<Id> ids;
  for (const LoopMember& member : loop) {
    if (member.source.kind == SourceKind::reading) ids.push_back(member.label);
  }
  return ids;
}

const Position* Solution::position(std::string_view id, Axis axis) const {
  const auto found = positions.find({Id(id), axis});
  return found == positions.end() ? nullptr : &found->second;
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

std::vector<Id> Solution::aloneIds() const {
  std::vector<Id> ids;
  for (const auto& [id, one] : status) {
    if (one == ReadingStatus::alone) ids.push_back(id);
  }
  return ids;
}

}  // namespace inchwright
