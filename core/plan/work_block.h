#pragma once

#include <array>
#include <optional>

#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright {

/// The outer sides of a part as finished and, in a setup, as the stock is now: the block that is
/// held, drilled and measured. Ticks along the part's own axes, rounded once.
class WorkBlock {
 public:
  /// The sides that are placed; `setup` says what is still to come off, null for nothing.
  WorkBlock(const Part& part, const Solution& solution, const Setup* setup);

  /// Where a side lies along its axis; empty when it is not placed.
  std::optional<Length> finished(Side side) const { return sides_[static_cast<std::size_t>(side)]; }
  std::optional<Length> now(Side side) const;
  /// How much is still to come off a side; never below 0.
  Length stock(Side side) const { return stock_[static_cast<std::size_t>(side)]; }
  /// Which edge or round is that side, empty when none is.
  const Id& idOf(Side side) const { return ids_[static_cast<std::size_t>(side)]; }

  /// From side to side along an axis; empty where one is not placed.
  std::optional<Length> sizeFinished(Axis axis) const;
  std::optional<Length> sizeNow(Axis axis) const;

 private:
  std::array<std::optional<Length>, 6> sides_;
  std::array<Length, 6> stock_{};
  std::array<Id, 6> ids_;
};

/// The side opposite to another: right of left, bottom of top.
Side oppositeOf(Side side);
/// The side of an axis at its lower end (left, front, bottom) or at its upper.
Side sideAt(Axis axis, bool upper);

}  // namespace inchwright
