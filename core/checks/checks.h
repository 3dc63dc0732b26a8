#pragma once

#include <array>
#include <vector>

#include "core/checks/finding.h"
#include "core/plan/milled_work.h"

namespace inchwright {

/// What is looked at: one setup of a part with its holes planned. Everything outlives it.
struct CheckedWork {
  const Job& job;
  const Part& part;
  const Solution& solution;
  const Setup& setup;
  const WorkBlock& block;
  const std::vector<PlannedHole>& holes;  ///< of all faces
  const ToolsOwned& tools;
  const std::vector<PlannedSlot>& milled;  ///< slots and pockets of the setup's face
};

/// What one measured piece of stock leaves at each side of the part, where a side of its axis is
/// fixed: the stop and the fixed jaw, and what it stands on, keep their own side's stock, and the
/// rest is left opposite; below 0 where it does not clean up.
struct PieceLeft {
  std::string name;
  bool cleansUp = true;
  std::array<std::optional<Length>, 6> left;  ///< by Side

  bool operator==(const PieceLeft&) const = default;
};

/// Holes that run into each other or leave too thin a wall, of all faces, whatever the setup.
std::vector<Finding> checkBetweenHoles(const Part& part, const WorkBlock& block,
                                       const std::vector<PlannedHole>& holes,
                                       const ToolsOwned& tools);

/// Slots and pockets of all faces against holes, against each other and, where they are blind, the
/// far side, whatever the setup. A hole that lies wholly within one of its own face is taken as
/// meant.
std::vector<Finding> checkMilled(const Part& part, const Solution& solution, const WorkBlock& block,
                                 const std::vector<PlannedHole>& holes, const ToolsOwned& tools);

/// Holes of one face against the outline: breaks_out, thin_wall, breaks_through.
std::vector<Finding> checkOutline(const CheckedWork& work, Face face);

/// What tools of the setup's face come into: parallels, jaws, stop, clamps, clear_of, the vice's
/// bed.
std::vector<Finding> checkInTheWay(const CheckedWork& work);

/// Tools that are not owned, cutters and flutes that do not do, tools of unlike length, the grip,
/// the travel.
std::vector<Finding> checkTools(const CheckedWork& work);
std::vector<Finding> checkRoom(const CheckedWork& work);

std::vector<PieceLeft> piecesLeft(const Setup& setup, const WorkBlock& block);
std::vector<Finding> checkPieces(const Setup& setup, const WorkBlock& block);

/// What nobody said, so that the checks it is wanted for are not made.
enum class Unsaid {
  standsOn,   ///< parallels, or the vice's bed
  jawHeight,  ///< jaws and grip
  stickOut,   ///< how far tools stand out, or the quill comes down: headroom
  travel,
  thickness  ///< how thick the work is: points and floors against the far side
};
std::string_view nameOf(Unsaid unsaid);  ///< `stands_on`, `jaw_height` …
std::vector<Unsaid> unsaidOf(const CheckedWork& work);

/// All of these for a setup: first what holds of the holes in any setup, then its own, in the order
/// of `FindingCode`, then of the places.
std::vector<Finding> checkSetupWork(const CheckedWork& work);

}  // namespace inchwright
