#include "core/checks/put_in_otherwise.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/plan/table_rows.h"

namespace inchwright {
namespace {

class Turning {
 public:
  Turning(const WorkAt& work, const WorkBlock& block) : work_(work), block_(block) {}

  /// One piece, or several that are alike.
  std::optional<PutInOtherwise> put(PutInOtherwise::How how, const PieceLeft& piece) const {
    PutInOtherwise put;
    put.how = how;
    put.pieces = {piece.name};
    const Side stop = *work_.setup.stop, jaw = *work_.setup.jaw;
    put.atStop = how == PutInOtherwise::How::endForEnd ? oppositeOf(stop) : stop;
    put.atJaw = oppositeOf(jaw);
    put.leftAtStop = leftOf(piece, put.atStop);
    put.leftAtJaw = leftOf(piece, put.atJaw);
    for (const Feature& feature : work_.part.features) {
      if (!makesRows(feature, work_.setup.face)) continue;
      for (const Place& place : drivenPlaces(feature)) {
        PutInOtherwise::Row row;
        row.id = place.id;
        const bool known = set(row, place.id, stop, put.atStop, put.leftAtStop) &&
                           set(row, place.id, jaw, put.atJaw, put.leftAtJaw);
        if (known) put.rows.push_back(std::move(row));
      }
    }
    if (put.rows.empty()) return std::nullopt;
    return put;
  }

 private:
  Length leftOf(const PieceLeft& piece, Side side) const {
    return piece.left[static_cast<std::size_t>(side)].value_or(block_.stock(side));
  }

  /// Where a place is along the axis of a side that was `before` and is now `now`. What is as far
  /// from the one as the place is from the other stands there in the setup as it is.
  bool set(PutInOtherwise::Row& row, const Id& id, Side before, Side now, Length left) const {
    const Axis axis = axisAcross(before);
    const TableAxis* along = work_.along(axis);
    const Position* position = work_.position(id, axis);
    const auto there = block_.now(before), here = block_.finished(now);
    if (!along || !along->zero || !position || !there || !here) return false;
    Position moved = *position;
    if (now != before) {
      const std::int64_t ends = there->ticks() + here->ticks() + outward(now) * left.ticks();
      const auto ticks = position->ticks.negated().plus(Rational(ends));
      if (!ticks) return false;
      moved.ticks = *ticks;
    }
    auto coordinate = work_.coordinate(*along, moved);
    if (!coordinate) return false;
    (along->machine == MachineAxis::x ? row.x : row.y) = *std::move(coordinate);
    return true;
  }

  const WorkAt& work_;
  const WorkBlock& block_;
};

}  // namespace

std::vector<PutInOtherwise> putInOtherwise(const WorkAt& work, const WorkBlock& block) {
  const Setup& setup = work.setup;
  std::vector<PutInOtherwise> all;
  if (setup.held.pieces.empty() || !setup.stop || !setup.jaw) return all;
  const Axis along = axisAcross(*setup.stop), across = axisAcross(*setup.jaw);
  if (along == across || along == axisAcross(setup.face) || across == axisAcross(setup.face)) {
    return all;
  }
  const Turning turning(work, block);
  for (const auto how : {PutInOtherwise::How::endForEnd, PutInOtherwise::How::turnedOver}) {
    const std::size_t first = all.size();
    for (const PieceLeft& piece : piecesLeft(setup, block)) {
      if (!piece.cleansUp) continue;
      auto put = turning.put(how, piece);
      if (!put) continue;
      const auto same =
          std::find_if(all.begin() + static_cast<std::ptrdiff_t>(first), all.end(),
                       [&](const PutInOtherwise& one) { return one.rows == put->rows; });
      if (same == all.end()) {
        all.push_back(*std::move(put));
      } else {
        same->pieces.push_back(piece.name);
      }
    }
  }
  return all;
}

}  // namespace inchwright
