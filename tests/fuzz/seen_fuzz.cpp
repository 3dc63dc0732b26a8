#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <vector>

#include "core/measure/lettered.h"
#include "core/seen/offer.h"

// Any picture under any map is looked at or refused; what is offered is finite, and every candidate
// is a length as its own text says.

namespace {

using namespace inchwright;

void require(bool holds) {
  if (!holds) std::abort();
}

constexpr std::size_t kHeader = 12;

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < kHeader) return 0;
  const int width = 1 + data[0], scale = 1 + data[1] % 6;
  std::array<double, 9> m{0.01, 0, 0, 0, -0.01, 2, 0, 0, 1};
  for (std::size_t i = 0; i < 9; ++i)
    m[i] += (data[2 + i] - 128) * (i >= 6 ? 1e-5 : 1e-4) * (data[11] % 2);
  const std::size_t rows = (size - kHeader) / static_cast<std::size_t>(width);
  if (rows == 0) return 0;
  // Every byte a square of pixels, so that short inputs make strokes.
  const int w = width * scale, h = static_cast<int>(rows) * scale;
  std::vector<std::uint8_t> bytes(static_cast<std::size_t>(w) * static_cast<std::size_t>(h));
  for (int y = 0; y < h; ++y) {
    for (int x = 0; x < w; ++x)
      bytes[static_cast<std::size_t>(y) * w + x] =
          data[kHeader + static_cast<std::size_t>(y / scale) * width + x / scale];
  }
  const auto offers = seen::offer({bytes.data(), w, h, w}, Homography(m));
  if (!offers) {
    require(!offers.error().text.empty());
    return 0;
  }
  for (const seen::FeatureOffer& f : offers->features)
    require(std::isfinite(f.at.x) && std::isfinite(f.at.y));
  for (const seen::ReadingOffer& r : offers->readings) {
    require(std::isfinite(r.from.x) && std::isfinite(r.to.y));
    require(!r.witnesses.ready() || !r.candidates.empty());
    require(r.candidates.size() <= 6);
    for (const seen::Candidate& c : r.candidates) {
      const auto read = readLength(c.text);
      require(read.ok() && read->value.ticks() == c.ticks && c.ticks > 0);
    }
  }
  return 0;
}
