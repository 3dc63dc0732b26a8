#include "core/seen/squared.h"

#include <cmath>
#include <limits>

namespace inchwright::seen {
namespace {

constexpr double kFurthest = 3;  // the face is looked at so many picture widths out at most

/// Inches a pixel spans at a place of the picture, along x and y together.
double inchesAPixel(const Homography& map, PlanePoint p) {
  const PlanePoint o = map.map(p), u = map.map({p.x + 1, p.y}), v = map.map({p.x, p.y + 1});
  const double area = std::abs((u.x - o.x) * (v.y - o.y) - (u.y - o.y) * (v.x - o.x));
  return std::isfinite(area) ? std::sqrt(area) : 0;
}

struct Window {
  double left, right, bottom, top;
};

/// What of the face the picture shows, kept within reason where it shows the horizon.
Window windowOf(const GreyPicture& picture, const Homography& map) {
  const PlanePoint middle{picture.width / 2.0, picture.height / 2.0};
  const PlanePoint c = map.map(middle);
  const double reach =
      inchesAPixel(map, middle) * kFurthest * std::max(picture.width, picture.height) / 2;
  Window w{c.x, c.x, c.y, c.y};
  for (int i = 0; i <= 8; ++i) {
    for (int side = 0; side < 4; ++side) {
      const double t = i / 8.0;
      const PlanePoint p = map.map({picture.width * (side == 0   ? t
                                                     : side == 1 ? 1 - t
                                                     : side == 2 ? 0
                                                                 : 1),
                                    picture.height * (side == 0   ? 0
                                                      : side == 1 ? 1
                                                                  : t)});
      if (!std::isfinite(p.x) || !std::isfinite(p.y)) continue;
      w.left = std::min(w.left, std::max(p.x, c.x - reach));
      w.right = std::max(w.right, std::min(p.x, c.x + reach));
      w.bottom = std::min(w.bottom, std::max(p.y, c.y - reach));
      w.top = std::max(w.top, std::min(p.y, c.y + reach));
    }
  }
  return w;
}

/// The picture's own bytes, `by` × `by` of them gathered into one.
Grey gathered(const GreyPicture& picture, int by, const Stop& stop) {
  Grey all(std::max(1, picture.width / by), std::max(1, picture.height / by));
  for (int y = 0; y < all.height && !stop.asked(); ++y) {
    Grey strip(picture.width, std::min(by, picture.height));
    for (int j = 0; j < strip.height; ++j) {
      const std::uint8_t* from = picture.data + picture.stride * (y * by + j);
      std::copy(from, from + picture.width, strip.row(j));
    }
    const Grey one = shrunk(strip, by);
    std::copy(one.row(0), one.row(0) + all.width, all.row(y));
  }
  return all;
}

std::uint8_t toneOfRim(const Grey& g) {
  std::uint64_t sum = 0, count = 0;
  for (int x = 0; x < g.width; ++x) sum += g.row(0)[x] + g.row(g.height - 1)[x], count += 2;
  for (int y = 0; y < g.height; ++y) sum += g.row(y)[0] + g.row(y)[g.width - 1], count += 2;
  return static_cast<std::uint8_t>(sum / count);
}

Homography rasterToInches(const Frame& f) {
  return Homography({1 / f.perInch, 0, f.left, 0, -1 / f.perInch, f.top, 0, 0, 1});
}

void fill(const Grey& from, const Homography& toSource, Grey& to, std::uint8_t outside,
          const Stop& stop) {
  const auto& m = toSource.matrix();
  for (int y = 0; y < to.height && !stop.asked(); ++y) {
    std::uint8_t* out = to.row(y);
    double a = m[1] * y + m[2], b = m[4] * y + m[5], c = m[7] * y + m[8];
    for (int x = 0; x < to.width; ++x, a += m[0], b += m[3], c += m[6]) {
      const double u = a / c, v = b / c;
      if (!(u >= 0 && v >= 0 && u < from.width - 1 && v < from.height - 1)) {
        out[x] = outside;
        continue;
      }
      const int i = static_cast<int>(u), j = static_cast<int>(v);
      const int fx = static_cast<int>((u - i) * 256), fy = static_cast<int>((v - j) * 256);
      const std::uint8_t* p = from.row(j) + i;
      const int upper = p[0] * (256 - fx) + p[1] * fx;
      const int lower = p[from.width] * (256 - fx) + p[from.width + 1] * fx;
      out[x] = static_cast<std::uint8_t>((upper * (256 - fy) + lower * fy + 32768) >> 16);
    }
  }
}

}  // namespace

double densityOf(const GreyPicture& picture, const Homography& pixelToInches) {
  double least = std::numeric_limits<double>::infinity();
  for (const double t : {0.2, 0.5, 0.8}) {
    for (const double s : {0.2, 0.5, 0.8}) {
      const double one = inchesAPixel(pixelToInches, {picture.width * t, picture.height * s});
      if (one > 0) least = std::min(least, one);
    }
  }
  return std::isfinite(least) ? 1 / least : 0;
}

Squared square(const GreyPicture& picture, const Homography& pixelToInches, double perInch,
               double most, const Stop& stop) {
  const Window w = windowOf(picture, pixelToInches);
  const double wide = std::max(w.right - w.left, 1e-9), high = std::max(w.top - w.bottom, 1e-9);
  // Long strips are bounded along either side as well.
  const double scale =
      std::min({perInch, std::sqrt(most / (wide * high)), 20000 / std::max(wide, high)});
  Squared out;
  out.frame = {scale, w.left, w.top};
  const int by = std::clamp(static_cast<int>(densityOf(picture, pixelToInches) / scale), 1,
                            std::max(1, std::min(picture.width, picture.height) / 2));
  const Grey source = gathered(picture, by, stop);
  const Homography toPicture = pixelToInches.inverse().after(rasterToInches(out.frame));
  const double shift = (1.0 / by - 1) / 2;
  const Homography toSource =
      Homography({1.0 / by, 0, shift, 0, 1.0 / by, shift, 0, 0, 1}).after(toPicture);
  out.toPicture = toPicture;
  out.grey = Grey(std::max(1, static_cast<int>(wide * scale)),
                  std::max(1, static_cast<int>(high * scale)));
  if (source.width < 2 || source.height < 2) {
    std::fill(out.grey.at.begin(), out.grey.at.end(), source.at.front());
    return out;
  }
  fill(source, toSource, out.grey, toneOfRim(source), stop);
  if (stop.asked()) out.grey = {};
  return out;
}

}  // namespace inchwright::seen
