#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/chain/axis_system.h"
#include "core/chain/clash.h"
#include "core/part/job.h"
#include "core/suspect/suspect.h"

namespace inchwright {

/// Names, for every clash, the readings of its loop that may have been misread, likeliest first.
///
/// A reading is suspected when, read otherwise, alone or together with as few others as it takes,
/// it would close every loop that misses and open none that closes; exact arithmetic decides that.
/// Which of those is likeliest is weighed: how easily the one figure is taken for the other,
/// whether the figure fits the print's own denominators, and, where places were traced, how well
/// the positions that follow fit the tracing (robustly: its scale is fitted, one bad point is
/// forgiven). Where two misreadings are needed, each heads the list of a clash as far as there are
/// enough. Where no few readings explain a block, those come first of which each explains most
/// together with the others (`explainMany`).
///
/// Requires: `systems` are those of `part`, and `clashes` its loops that miss.
/// Outcome: a list for each clash, in their order. Weights are log probabilities up to a constant.
/// The result does not depend on the order of features and readings.
/// Cost: linear in the axis's links, then about the square of those in the blocks that miss.
std::vector<std::vector<Suspect>> suspectsOf(const Part& part,
                                             const std::array<AxisSystem, 3>& systems,
                                             std::span<const Clash> clashes);

}  // namespace inchwright
