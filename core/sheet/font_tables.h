#pragma once

#include <cstdint>
#include <span>

#include "core/sheet/draw_list.h"

namespace inchwright {

/// Consecutive characters (Unicode code points, both ends included) that are equally wide.
struct AdvanceRun {
  std::uint32_t first;
  std::uint32_t last;
  std::uint16_t advance;  ///< in 1/2000 em
};

/// The height of a figure and of a capital in every face, in 1/2000 em.
inline constexpr double kFigureHeight = 1500;

/// The advances of the faces that come with the program, in order of code point.
std::span<const AdvanceRun> advancesOf(Typeface face);

}  // namespace inchwright
