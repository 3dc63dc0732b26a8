#pragma once

#include <cstdint>
#include <vector>

#include "core/graph/difference_edge.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// A tolerance network in which places that are fixed against one another exactly are one: those
/// in line, concentric, the holes of a row with an exact pitch, the ends of a slot. A row D of two
/// at 1 3/16: one group, D2 offset by 3 016 250 000 ticks.
///
/// Half a slot and the offset of a ring's hole need not be whole ticks. All lengths here are
/// counted in parts of a tick in which they are whole, so that whoever tells one rounds it once.
struct GroupedNetwork {
  /// Parts of a tick, a power of two, 1 where all is whole ticks. So many that all is exact; fewer
  /// where the lengths together would leave 61 bits (at 2^20, those of rings, beyond 20 m).
  std::int64_t scale = 1;
  std::uint32_t groups = 0;
  std::vector<std::uint32_t> group;  ///< by place
  std::vector<std::int64_t> offset;  ///< by place: its position less that of its group
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

/// A length in parts of a tick as the ticks at or below it, at or above it, nearest to it (halves
/// away from zero): 7 halves are 3, 4 and 4.
std::int64_t ticksBelow(std::int64_t parts, std::int64_t scale);
std::int64_t ticksAbove(std::int64_t parts, std::int64_t scale);
std::int64_t nearestTick(std::int64_t parts, std::int64_t scale);

/// Groups are numbered by their lowest place. Linear in places and links.
GroupedNetwork groupRigidly(const ToleranceNetwork& network, Rigid by = Rigid::shapes);

}  // namespace inchwright
