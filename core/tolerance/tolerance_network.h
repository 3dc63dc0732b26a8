#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/chain/network.h"
#include "core/part/job.h"

namespace inchwright {

/// low ≤ position(to) − position(from) ≤ high, in ticks.
struct TolerancedLink {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  std::int64_t nominal = 0;  ///< as lettered; unequal limits need not have it in their middle
  std::int64_t low = 0;
  std::int64_t high = 0;
  /// A toleranced reading of the print, or a row's pitch lettered with a tolerance. Else it is
  /// what the print understands, the shape of a feature or a basic figure: low = high.
  bool toleranced = false;
  Source source;
  Rational rest = {};  ///< what all three have beyond ticks, see `AxisLink`

  std::int64_t width() const { return high - low; }
};

/// What a part's readings allow along one axis: every member may stray within its own limits.
///
/// Reference readings take no part. Places and links are in the order of
/// `AxisNetwork`, so nothing that is worked out of it depends on how the print was listed.
struct ToleranceNetwork {
  Axis axis = Axis::x;
  std::vector<Id> places;
  std::vector<TolerancedLink> links;
  std::vector<AxisRelation> relations;  ///< midway, symmetric and equal spaces: exact
  Int128 reach = 0;                     ///< all lengths together, below `kFarthestReach`

  std::optional<std::uint32_t> node(std::string_view place) const;
};

inline constexpr Int128 kFarthestReach = Int128{1} << 61;

/// Requires: `checkPart(part)` is fine. Errors: `outOfRange` when a limit does not fit, or when
/// all lengths together could leave 61 bits, so that sums over the links need no check later, nor
/// those between groups, where a length can go in twice.
Result<ToleranceNetwork> toleranceNetworkOf(const Part& part, Axis axis);

/// The node of a place that is asked for. Errors: `notFound` when the part has no such place,
/// `badRequest` when it has no position along the axis.
Result<std::uint32_t> nodeAlong(const Part& part, const ToleranceNetwork& network,
                                std::string_view place);

}  // namespace inchwright
