#pragma once

#include <cstdint>
#include <vector>

#include "core/tolerance/tolerance_network.h"

namespace inchwright {

/// low ≤ position(b) − position(a) ≤ high, in ticks.
struct DifferenceEdge {
  std::uint32_t a = 0;
  std::uint32_t b = 0;
  std::int64_t low = 0;
  std::int64_t high = 0;

  bool operator==(const DifferenceEdge&) const = default;
};

/// A tolerance network in which places that are fixed against one another exactly are one: those
/// in line, concentric, the holes of a row with an exact pitch, the ends of a slot.
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
