#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/base/rational.h"
#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// What stands behind a link or a relation.
enum class SourceKind {
  reading,        ///< index into Part::readings
  understanding,  ///< index into Part::understood
  feature,        ///< index into Part::features: the pitch of a row, a ring's geometry, a radius
};

struct Source {
  SourceKind kind = SourceKind::reading;
  std::uint32_t index = 0;

  bool operator==(const Source&) const = default;
};

/// position(to) − position(from) = ticks.
struct AxisLink {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::int64_t ticks = 0;
  bool exact = true;  ///< false where the length was rounded to the tick (rings, divided figures)
  Source source;
};

/// Σ coefficient · position(node) = 0, for midway, symmetric and equal spaces.
struct AxisRelation {
  std::vector<std::pair<std::uint32_t, std::int32_t>> terms;
  Source source;
};

/// One axis of a part as a graph: places are nodes, what fixes one against another are links, what
/// joins more than two are relations. Node numbers follow the order of features in the part.
struct AxisNetwork {
  Axis axis = Axis::x;
  std::vector<Id> places;
  std::vector<AxisLink> links;
  std::vector<AxisRelation> relations;
};

/// Reads the networks of the three axes out of a part, from all faces and views alike.
/// Requires: `checkPart(part)` is fine. Errors: `outOfRange` when a length overflows.
Result<AxisNetwork> networkOf(const Part& part, Axis axis);

}  // namespace inchwright
