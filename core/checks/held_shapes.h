#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>

#include "core/checks/checks.h"
#include "core/checks/plan_shapes.h"

namespace inchwright {

/// The vice about the work as it is now: which axis of the face goes from jaw to jaw, which along.
struct ViceFrame {
  std::size_t across = 0;  ///< index of the face's axis square to the jaws
  std::size_t along = 1;
  Side fixedSide = Side::front;
  Side movingSide = Side::back;
  int into = 1;  ///< the direction from the fixed jaw into the work, along `across`
  std::int64_t fixedAt = 0;
  std::int64_t movingAt = 0;
  std::optional<std::int64_t> lowEnd;  ///< of the work now, along the jaws
  std::optional<std::int64_t> highEnd;
  bool fromHighEnd = false;  ///< parallels are measured from the upper end
};

/// Empty where the work is not in the vice, or how wide it is between the jaws is not known.
std::optional<ViceFrame> viceOf(const CheckedWork& work);

/// What a parallel covers.
Rectangle rectangleOf(const LaidParallel& one, const ViceFrame& vice);
/// A jaw at `at`: all that lies beyond its side of the work, but where the work stands out of the
/// jaws.
Rectangle jawRectangle(Side side, std::int64_t at, const CheckedWork& work, const ViceFrame& vice);
/// The stop likewise; empty without one.
std::optional<Rectangle> stopRectangle(const CheckedWork& work);
/// A clamp, or what is to be kept clear of; empty where the side it is measured from is not placed.
std::optional<Rectangle> rectangleOf(const Obstacle& obstacle, const CheckedWork& work);

}  // namespace inchwright
