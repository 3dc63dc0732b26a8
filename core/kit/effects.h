#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/kit/ways_out.h"

namespace inchwright {

/// A hole as a way out leaves it: bored to 3/8, on its place again with an eccentric bush.
struct HoleThen {
  FoundSize size;
  bool whereFound = true;          ///< it stays off by what it is off; else it is on its place
  std::optional<FoundSize> shaft;  ///< of one mate, made to suit
  std::string shaftOf = {};        ///< that mate's name
};

/// The mates of the job that a hole is in.
std::vector<const Mate*> matesOfHole(const Job& job, std::string_view part, std::string_view place);

/// Works out what becomes of every reading, mate and gap that one measured hole has a part in.
class Effects {
 public:
  Effects(const Job& job, std::span<const Solution> solutions, const Part& part,
          const MadeRow& row);

  std::vector<Effect> with(const HoleThen& then) const;

 private:
  void addMates(const HoleThen& then, std::vector<Effect>& all) const;
  void addReadings(const HoleThen& then, std::vector<Effect>& all) const;
  void addGaps(const HoleThen& then, std::vector<Effect>& all) const;

  const Job& job_;
  const Part& part_;
  const MadeRow& row_;
  std::span<const Solution> solutions_;
  std::vector<const Mate*> mates_;
  /// How far the found centre is off along each axis of the part, where that was measured.
  std::vector<std::pair<Axis, Length>> off_;
};

}  // namespace inchwright
