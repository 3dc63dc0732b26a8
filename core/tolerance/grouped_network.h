#pragma once

#include <cstdint>
#include <vector>

#include "core/graph/difference_edge.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// A tolerance network in which places that are fixed against one another exactly are one: those
/// in line, concentric, the holes of a row with an exact pitch, the ends of a slot. A row D of two
/// at 1 3/16: one group, D2 offset by 3 016 250 000 ticks.
struct GroupedNetwork {
  std::uint32_t groups = 0;
  std::vector<std::uint32_t> group;  ///< by place
  std::vector<std::int64_t> offset;  ///< by place: its position less that of its group, ticks
  std::vector<DifferenceEdge> edges;
  std::vector<std::uint32_t> linkOf;  ///< by edge: its link in the tolerance network
  /// Links inside one group that what fixes the group contradicts, each by itself.
  std::vector<std::uint32_t> impossible;
  /// Links inside one group that hold whatever happens elsewhere.
  std::vector<std::uint32_t> inner;
};

/// What fixes places against one another.
enum class Rigid {
  shapes,  ///< understandings and shapes; a basic figure, exact by intent, is an edge of one length
  shapesAndBasic,  ///< basic figures too
};

/// Groups are numbered by their lowest place. Linear in places and links.
GroupedNetwork groupRigidly(const ToleranceNetwork& network, Rigid by = Rigid::shapes);

}  // namespace inchwright
