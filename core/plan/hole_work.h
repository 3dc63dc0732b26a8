#pragma once

#include <array>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "core/making/hole_plan.h"
#include "core/plan/work_block.h"

namespace inchwright {

/// One hole of a part, or one of a ring or row, with how it is to be made: `G3` of ring `G`, 1/4
/// reamed, by spotting, drilling 15/64 and reaming.
struct PlannedHole {
  Id id;
  Id feature;
  Face face = Face::top;
  /// Of the part, which outlives this; of a hole put right by the next size that of its plan.
  const Drilled* drilled = nullptr;
  /// Its centre along the face's two axes, in the part's own axes, rounded to the tick; empty where
  /// it is loose along one.
  std::optional<std::array<Length, 2>> centre;
  /// Finished: the outside of a thread; 0 where the print says none; of a hole that is lined that
  /// of what is pressed in.
  Length diameter;
  bool closePlace = false;
  Length onFace;    ///< still to come off the face it is cut from: depths of the plan include it
  SharedPlan plan;  ///< shared by holes that are alike
};

/// What is known of the holes before any plan: for `planHoles`.
struct HolesAsked {
  const Job* job = nullptr;
  const Part* part = nullptr;
  const Solution* solution = nullptr;
  const Setup* setup = nullptr;  ///< whose stock counts, for holes of its face; may be null
};

/// All holes of all faces in the order of the features, each with its plan. Those of the setup's
/// face count depths from the face as it is now, the others from the finished one.
std::vector<PlannedHole> planHoles(const HolesAsked& asked, const WorkBlock& block,
                                   const ToolsOwned& tools);

/// Places whose position is lettered closer than a fraction: three places or more, or a tolerance
/// that is tighter than that of a fraction.
std::set<std::string_view> closelyLettered(const Part& part);

/// The finished diameter of what is drilled; empty where the print does not say.
std::optional<Length> finishedDiameter(const Drilled& drilled);

}  // namespace inchwright
