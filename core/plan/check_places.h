#pragma once

#include <optional>
#include <vector>

#include "core/plan/work_at.h"

namespace inchwright {

struct TableRow;

/// A place to drive to before cutting, and what should be seen there.
struct CheckPlace {
  enum class Look {
    overZero,      ///< over the middle of `place`, which zero is set on
    overCrossing,  ///< where the edges `place` and `other` cross: zero
    nought,        ///< the readout shows 0 and 0
    corner,        ///< over the corner of the work as it is, where sides `place` and `other` meet
    overMiddle,    ///< over the middle of `place`
    overEdge       ///< over the finished edge `place`
  };

  Coordinate x;
  Coordinate y;
  Look look = Look::nought;
  Id place = {};                         ///< corner: of the side along X
  Id other = {};                         ///< corner: of the side along Y
  FeatureKind kind = FeatureKind::hole;  ///< overMiddle: of the place's feature
  bool whole = true;                     ///< overMiddle: the feature, not one of its holes or ends
  TableSide sideX = TableSide::left;     ///< corner
  TableSide sideY = TableSide::near;     ///< corner
  bool ofStock = false;                  ///< corner: some is left on one of the two sides

  bool operator==(const CheckPlace&) const = default;
};

/// Two to four places to drive to and look before cutting: those the setup names, else zero itself,
/// the corner of the work as it is now that lies farthest from zero, and the two rows that lie
/// farthest from zero and from each other. Always the same ones for the same table.
/// Errors: `notFound` or `unsolvable` for a place the setup names, `outOfRange`.
Result<std::vector<CheckPlace>> checkPlaces(const WorkAt& work, const std::vector<TableRow>& rows);

}  // namespace inchwright
