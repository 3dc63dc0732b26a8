#pragma once

#include <string>
#include <vector>

#include "core/checks/checks.h"
#include "core/plan/work_at.h"

namespace inchwright {

/// What the readout shows at each place when pieces are put back against the same stop and fixed
/// jaw another way round, with zero left where it is: facts, worded by `core/say`.
struct PutInOtherwise {
  enum class How {
    endForEnd,  ///< turned half round on the table: the other end at the stop
    turnedOver  ///< rolled over along the jaws: the same end at the stop, the face down
  };
  struct Row {
    Id id;
    Coordinate x, y;

    bool operator==(const Row&) const = default;
  };

  How how = How::endForEnd;
  std::vector<std::string> pieces;  ///< those that have the same left on the sides concerned
  Side atStop = Side::left;         ///< which side of the part is there then
  Side atJaw = Side::front;
  Length leftAtStop;  ///< still to come off there
  Length leftAtJaw;
  std::vector<Row> rows;

  bool operator==(const PutInOtherwise&) const = default;
};

/// For a setup with pieces, a stop and a jaw that lie along different axes of the face; else empty.
/// Pieces that do not clean up are left out: they are findings.
///
///     a plate 3 long with 1/16 left at its right end, zero on its left at the stop, a hole at 1/2:
///     end for end it is at 2 1/2 and 1/16 more
std::vector<PutInOtherwise> putInOtherwise(const WorkAt& work, const WorkBlock& block);

}  // namespace inchwright
