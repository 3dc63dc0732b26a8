#pragma once

#include <cstddef>
#include <cstdint>

#include "core/geometry/homography.h"

namespace inchwright {

/// Pixels of four bytes each, in any order of channels. Rows are `stride` bytes apart.
struct PixelsIn {
  const std::uint8_t* data = nullptr;
  int width = 0;
  int height = 0;
  std::ptrdiff_t stride = 0;
};

struct PixelsOut {
  std::uint8_t* data = nullptr;
  int width = 0;
  int height = 0;
  std::ptrdiff_t stride = 0;
};

enum class WarpPath { plain, avx2 };
/// The fastest path this processor can take.
WarpPath fastestWarpPath();

/// Squares a picture up: every pixel of rows `rowBegin` up to but not `rowEnd` of `out` becomes
/// the bilinear blend of the four pixels of `in` round where `outToIn` (pixel centres at whole
/// numbers, both frames y down) sends it; outside `in` it becomes `outside`.
///
/// Weights are multiples of 1/64 of a pixel, so a channel is within 5 of the exact blend; all paths
/// give the same bytes. Rows are independent, so threads can share one `out`.
/// Requires: both pictures below 32 768 pixels a side, `in` at least 2 × 2, the horizon of
/// `outToIn` not through `out`.
void warpRows(const PixelsIn& in, const PixelsOut& out, const Homography& outToIn, int rowBegin,
              int rowEnd, std::uint32_t outside = 0xFFFFFFFFu, WarpPath path = fastestWarpPath());

}  // namespace inchwright
