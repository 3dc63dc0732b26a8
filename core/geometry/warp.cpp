#include "core/geometry/warp.h"

#include <algorithm>
#include <array>
#include <cstring>

#if defined(__x86_64__) && defined(__GNUC__)
#define INCHWRIGHT_WARP_AVX2 1
#include <immintrin.h>
#endif

namespace inchwright {
namespace {

constexpr int kBits = 6;
constexpr int kOne = 1 << kBits;
constexpr int kHalf = 1 << (2 * kBits - 1);

/// The map along one row of `out`: source x = (ax·i + bx)/(aw·i + bw), y likewise. All paths do
/// the same single-precision operations in the same order, hence the same bytes; the position is
/// good to about 1/500 pixel.
struct RowMap {
  float ax, bx, ay, by, aw, bw;
};

RowMap rowMap(const Homography& outToIn, int row) {
  const auto& m = outToIn.matrix();
  const double y = row;
  // Scaled so that the denominator is near 1 and single precision is spent where it matters.
  const double w = m[7] * y + m[8];
  const double scale = w != 0 ? 1 / w : 1;
  return {static_cast<float>(m[0] * scale), static_cast<float>((m[1] * y + m[2]) * scale),
          static_cast<float>(m[3] * scale), static_cast<float>((m[4] * y + m[5]) * scale),
          static_cast<float>(m[6] * scale), static_cast<float>(w * scale)};
}

void warpPixel(const PixelsIn& in, const RowMap& map, int column, std::uint32_t outside,
               std::uint8_t* to) {
  const auto i = static_cast<float>(column);
  const float w = map.aw * i + map.bw;
  const float x = (map.ax * i + map.bx) / w;
  const float y = (map.ay * i + map.by) / w;
  const bool inside = x >= 0 && x <= static_cast<float>(in.width - 1) && y >= 0 &&
                      y <= static_cast<float>(in.height - 1);
  if (!inside) {
    std::memcpy(to, &outside, 4);
    return;
  }
  const int fixedX = static_cast<int>(x * kOne + 0.5f);
  const int fixedY = static_cast<int>(y * kOne + 0.5f);
  const int column0 = std::min(fixedX >> kBits, in.width - 2);
  const int row0 = std::min(fixedY >> kBits, in.height - 2);
  const int right = fixedX - column0 * kOne;
  const int down = fixedY - row0 * kOne;
  const std::uint8_t* top = in.data + row0 * in.stride + column0 * 4;
  const std::uint8_t* bottom = top + in.stride;
  for (int c = 0; c < 4; ++c) {
    const int upper = top[c] * (kOne - right) + top[c + 4] * right;
    const int lower = bottom[c] * (kOne - right) + bottom[c + 4] * right;
    to[c] =
        static_cast<std::uint8_t>((upper * (kOne - down) + lower * down + kHalf) >> (2 * kBits));
  }
}

#ifdef INCHWRIGHT_WARP_AVX2

/// Where eight neighbouring pixels of a row come from.
struct Eight {
  __m256i offset;  ///< bytes from the start of the picture to the upper left pixel
  __m256i right;   ///< weight of the right column, 0 … 64
  __m256i down;    ///< weight of the lower row
  bool allInside;
};

__attribute__((target("avx2"))) inline __m256 alongRow(float a, float b, __m256 i) {
  return _mm256_add_ps(_mm256_mul_ps(_mm256_set1_ps(a), i), _mm256_set1_ps(b));
}

__attribute__((target("avx2"))) inline __m256i inSixtyFourths(__m256 v) {
  return _mm256_cvttps_epi32(
      _mm256_add_ps(_mm256_mul_ps(v, _mm256_set1_ps(kOne)), _mm256_set1_ps(0.5f)));
}

__attribute__((target("avx2"))) inline Eight locateEight(const PixelsIn& in, const RowMap& map,
                                                         int column) {
  const __m256 lane = _mm256_setr_ps(0, 1, 2, 3, 4, 5, 6, 7);
  const __m256 i = _mm256_add_ps(_mm256_set1_ps(static_cast<float>(column)), lane);
  const __m256 w = alongRow(map.aw, map.bw, i);
  const __m256 x = _mm256_div_ps(alongRow(map.ax, map.bx, i), w);
  const __m256 y = _mm256_div_ps(alongRow(map.ay, map.by, i), w);
  const __m256 zero = _mm256_setzero_ps();
  const __m256 insideX =
      _mm256_and_ps(_mm256_cmp_ps(x, zero, _CMP_GE_OQ),
                    _mm256_cmp_ps(x, _mm256_set1_ps(static_cast<float>(in.width - 1)), _CMP_LE_OQ));
  const __m256 insideY = _mm256_and_ps(
      _mm256_cmp_ps(y, zero, _CMP_GE_OQ),
      _mm256_cmp_ps(y, _mm256_set1_ps(static_cast<float>(in.height - 1)), _CMP_LE_OQ));
  const __m256i fixedX = inSixtyFourths(x), fixedY = inSixtyFourths(y);
  const __m256i column0 =
      _mm256_min_epi32(_mm256_srai_epi32(fixedX, kBits), _mm256_set1_epi32(in.width - 2));
  const __m256i row0 =
      _mm256_min_epi32(_mm256_srai_epi32(fixedY, kBits), _mm256_set1_epi32(in.height - 2));
  Eight eight;
  eight.right = _mm256_sub_epi32(fixedX, _mm256_slli_epi32(column0, kBits));
  eight.down = _mm256_sub_epi32(fixedY, _mm256_slli_epi32(row0, kBits));
  eight.offset =
      _mm256_add_epi32(_mm256_mullo_epi32(row0, _mm256_set1_epi32(static_cast<int>(in.stride))),
                       _mm256_slli_epi32(column0, 2));
  eight.allInside = _mm256_movemask_ps(_mm256_and_ps(insideX, insideY)) == 0xFF;
  return eight;
}

/// Blends four pixels; the result holds each channel in 16 bits.
__attribute__((target("avx2"))) inline __m256i blendFour(const PixelsIn& in, __m128i offset,
                                                         __m128i right, __m128i down) {
  const auto* base = reinterpret_cast<const long long*>(in.data);
  const auto* below = reinterpret_cast<const long long*>(in.data + in.stride);
  const __m256i pairBytes = _mm256_setr_epi8(0, 4, 1, 5, 2, 6, 3, 7, 8, 12, 9, 13, 10, 14, 11, 15,
                                             0, 4, 1, 5, 2, 6, 3, 7, 8, 12, 9, 13, 10, 14, 11, 15);
  const __m256i top = _mm256_shuffle_epi8(_mm256_i32gather_epi64(base, offset, 1), pairBytes);
  const __m256i bottom = _mm256_shuffle_epi8(_mm256_i32gather_epi64(below, offset, 1), pairBytes);
  const __m128i one = _mm_set1_epi32(kOne);
  const __m256i across = _mm256_shuffle_epi8(
      _mm256_cvtepu32_epi64(_mm_or_si128(_mm_sub_epi32(one, right), _mm_slli_epi32(right, 8))),
      _mm256_setr_epi8(0, 1, 0, 1, 0, 1, 0, 1, 8, 9, 8, 9, 8, 9, 8, 9, 0, 1, 0, 1, 0, 1, 0, 1, 8, 9,
                       8, 9, 8, 9, 8, 9));
  const __m256i upper = _mm256_maddubs_epi16(top, across);
  const __m256i lower = _mm256_maddubs_epi16(bottom, across);
  const __m256i along =
      _mm256_cvtepu32_epi64(_mm_or_si128(_mm_sub_epi32(one, down), _mm_slli_epi32(down, 16)));
  const __m256i alongFirst = _mm256_shuffle_epi32(along, 0x00);
  const __m256i alongSecond = _mm256_shuffle_epi32(along, 0xAA);
  const __m256i half = _mm256_set1_epi32(kHalf);
  const __m256i first =
      _mm256_add_epi32(_mm256_madd_epi16(_mm256_unpacklo_epi16(upper, lower), alongFirst), half);
  const __m256i second =
      _mm256_add_epi32(_mm256_madd_epi16(_mm256_unpackhi_epi16(upper, lower), alongSecond), half);
  return _mm256_packs_epi32(_mm256_srli_epi32(first, 2 * kBits),
                            _mm256_srli_epi32(second, 2 * kBits));
}

__attribute__((target("avx2"))) void warpRowAvx2(const PixelsIn& in, const RowMap& map, int width,
                                                 std::uint32_t outside, std::uint8_t* to) {
  int column = 0;
  for (; column + 8 <= width; column += 8) {
    const Eight eight = locateEight(in, map, column);
    if (!eight.allInside) {
      for (int i = column; i < column + 8; ++i) warpPixel(in, map, i, outside, to + 4 * i);
      continue;
    }
    const __m256i low =
        blendFour(in, _mm256_castsi256_si128(eight.offset), _mm256_castsi256_si128(eight.right),
                  _mm256_castsi256_si128(eight.down));
    const __m256i high = blendFour(in, _mm256_extracti128_si256(eight.offset, 1),
                                   _mm256_extracti128_si256(eight.right, 1),
                                   _mm256_extracti128_si256(eight.down, 1));
    const __m256i pixels = _mm256_permute4x64_epi64(_mm256_packus_epi16(low, high), 0xD8);
    _mm256_storeu_si256(reinterpret_cast<__m256i*>(to + 4 * column), pixels);
  }
  for (; column < width; ++column) warpPixel(in, map, column, outside, to + 4 * column);
}

#endif

}  // namespace

WarpPath fastestWarpPath() {
#ifdef INCHWRIGHT_WARP_AVX2
  static const bool hasAvx2 = __builtin_cpu_supports("avx2");
  if (hasAvx2) return WarpPath::avx2;
#endif
  return WarpPath::plain;
}

void warpRows(const PixelsIn& in, const PixelsOut& out, const Homography& outToIn, int rowBegin,
              int rowEnd, std::uint32_t outside, WarpPath path) {
  for (int row = rowBegin; row < rowEnd; ++row) {
    const RowMap map = rowMap(outToIn, row);
    std::uint8_t* to = out.data + row * out.stride;
#ifdef INCHWRIGHT_WARP_AVX2
    // Byte offsets are 32 bits wide in the fast path.
    if (path == WarpPath::avx2 && in.stride * in.height < (std::ptrdiff_t{1} << 31)) {
      warpRowAvx2(in, map, out.width, outside, to);
      continue;
    }
#endif
    for (int column = 0; column < out.width; ++column) {
      warpPixel(in, map, column, outside, to + 4 * column);
    }
  }
}

}  // namespace inchwright
