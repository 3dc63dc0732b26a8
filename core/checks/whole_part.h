#pragma once

#include <vector>

#include "core/checks/checks.h"

namespace inchwright {

/// One setup worked out: its holes with their plans, what was found, the pieces.
struct CheckedSetup {
  std::vector<PlannedHole> holes;   ///< of all faces
  std::vector<PlannedSlot> milled;  ///< slots of the setup's face
  std::vector<Finding> findings;
  std::vector<PieceLeft> pieces;
  std::vector<Unsaid> unsaid;  ///< so that this was not looked at
};

/// Plans the holes of a part and looks for what would go wrong in one of its setups. The part
/// outlives the outcome, which points into it.
CheckedSetup planAndCheck(const Job& job, const Part& part, const Solution& solution,
                          const Setup& setup, const ToolsOwned& tools);

/// What is found in any of a part's setups, each once (in the one it has by default, where it names
/// none), and of the holes of faces that no setup turns up. A hole 1/16 in from an edge of a plate
/// with two setups: one finding, of the thin wall.
std::vector<Finding> findingsOf(const Job& job, const Part& part, const Solution& solution,
                                const ToolsOwned& tools);

}  // namespace inchwright
