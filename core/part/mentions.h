#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "core/part/feature_members.h"
#include "core/part/job.h"

namespace inchwright {

/// A feature's own id, or that of a hole or end of it, as it is once the feature is called `newId`;
/// any other id stays. `G3` of the ring `G`, renamed to `H` → `H3`.
inline Id renamedPlace(const Feature& feature, const Id& id, std::string_view newId) {
  return isNamedBy(feature, id) ? std::string(newId) + id.substr(feature.id.size()) : id;
}

/// Gives every id that a feature's members name to a function.
template <class Visit>
class IdMembers : public NoMembers {
 public:
  explicit IdMembers(Visit& visit) : visit_(visit) {}

  template <class Name>
  void id(std::string_view, Name& name) {
    if (!name.empty()) visit_(name);
  }
  template <class Names>
  void ids(std::string_view, Names& names) {
    for (auto& name : names) visit_(name);
  }
  template <class Names>
  void pair(std::string_view, Names& names) {
    for (auto& name : names) visit_(name);
  }

 private:
  Visit& visit_;
};

/// Calls `visit` for every id that names a place, in the order of the part: who names it, worded
/// for people, and the id, to be looked at or changed.
template <class PartType, class Visit>
void forEachMention(PartType& part, Visit visit) {
  for (auto& feature : part.features) {
    const std::string who = std::string(nameOf(feature.kind())) + " " + feature.id;
    const auto named = [&](auto& id) { visit(who, id); };
    IdMembers<decltype(named)> members(named);
    visitMembers(feature, members);
  }
  for (auto& reading : part.readings) {
    const std::string who = "reading " + reading.id;
    visit(who, reading.from);
    if (!reading.to.empty()) visit(who, reading.to);
    for (auto& id : reading.against) visit(who, id);
  }
  std::size_t number = 0;
  for (auto& understanding : part.understood) {
    const std::string who = "understanding " + std::to_string(++number);
    for (auto& id : understanding.of) visit(who, id);
    for (auto& id : understanding.between) visit(who, id);
    if (!understanding.about.empty()) visit(who, understanding.about);
  }
  for (auto& setup : part.setups) {
    const std::string zeroWho = "zero of setup " + setup.name;
    for (auto& zero : setup.zero) {
      for (auto& id : zero.middle) visit(zeroWho, id);
      if (!zero.at.empty()) visit(zeroWho, zero.at);
    }
    const std::string checkWho = "check place of setup " + setup.name;
    for (auto& id : setup.checks) visit(checkWho, id);
    const std::string curveWho = "curve of setup " + setup.name;
    for (auto& curve : setup.curves) visit(curveWho, curve.of);
  }
  number = 0;
  for (auto& outline : part.outlines) {
    const std::string who = "outline " + std::to_string(++number);
    for (auto& id : outline.follows) visit(who, id);
  }
}

}  // namespace inchwright
