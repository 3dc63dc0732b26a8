#include "app/picture/line_snap.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace inchwright::app {
namespace {

constexpr int kLargestReach = 160;    // pixels
constexpr int kLeastContrast = 40;    // of 255, between paper and the darkest line
constexpr double kInkShare = 0.35;    // of that contrast: darker than this is a line
constexpr int kHalfWidth = 3;         // pixels: of the widest line
constexpr double kLeastCover = 0.62;  // of the half of the cut a line runs through, at least

/// A square cut of a picture, turned so that lines sought run down its columns.
class Cut {
 public:
  Cut(const QImage& image, QPoint middle, int reach, bool turned) : reach_(reach) {
    const int side = 2 * reach + 1;
    grey_.reserve(static_cast<std::size_t>(side) * side);
    for (int row = -reach; row <= reach; ++row) {
      for (int column = -reach; column <= reach; ++column) {
        const QPoint at = middle + (turned ? QPoint(row, column) : QPoint(column, row));
        grey_.push_back(image.valid(at) ? qGray(image.pixel(at)) : 255);
      }
    }
  }

  /// The column, from the middle, of the line nearest to `wanted`; empty where none runs.
  std::optional<double> lineNear(double wanted) const {
    std::vector<int> sorted = grey_;
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
    std::nth_element(sorted.begin(), middle, sorted.end());
    const int paper = *middle, darkest = *std::min_element(grey_.begin(), grey_.end());
    if (paper - darkest < kLeastContrast) return std::nullopt;
    const int ink = paper - static_cast<int>(kInkShare * (paper - darkest));
    std::optional<int> best;
    double most = 0;
    for (int column = -reach_; column <= reach_; ++column) {
      const double cover = coverOf(column, ink);
      const double far = (column - wanted) / (0.4 * reach_);
      const double worth = cover * std::exp(-far * far / 2);
      if (cover < kLeastCover || worth <= most) continue;
      most = worth;
      best = column;
    }
    if (!best) return std::nullopt;
    return centreOf(*best, paper);
  }

 private:
  int at(int column, int row) const {
    return grey_[static_cast<std::size_t>((row + reach_) * (2 * reach_ + 1) + column + reach_)];
  }

  /// How much of the upper or of the lower half a line covers: a corner has only one of them.
  double coverOf(int column, int ink) const {
    int above = 0, below = 0;
    for (int row = 1; row <= reach_; ++row) {
      above += at(column, -row) < ink;
      below += at(column, row) < ink;
    }
    return static_cast<double>(std::max(above, below)) / reach_;
  }

  double inkOf(int column, int paper) const {
    double ink = 0;
    for (int row = -reach_; row <= reach_; ++row) ink += std::max(0, paper - at(column, row));
    return ink;
  }

  /// The middle of a line some pixels wide, by its ink.
  double centreOf(int column, int paper) const {
    const double enough = 0.4 * inkOf(column, paper);
    // Not further than a line is wide: the circle about a cross has ink on either side.
    const int least = std::max(-reach_, column - kHalfWidth);
    const int most = std::min(reach_, column + kHalfWidth);
    int left = column, right = column;
    while (left > least && inkOf(left - 1, paper) > enough) --left;
    while (right < most && inkOf(right + 1, paper) > enough) ++right;
    double sum = 0, weighed = 0;
    for (int one = left; one <= right; ++one) {
      const double ink = inkOf(one, paper);
      sum += ink;
      weighed += ink * one;
    }
    return weighed / sum;
  }

  int reach_;
  std::vector<int> grey_;
};

}  // namespace

QPointF snapToLines(const QImage& image, QPointF at, double reach) {
  if (!QRectF(image.rect()).contains(at)) return at;
  const int pixels = std::clamp(static_cast<int>(std::lround(reach)), 3, kLargestReach);
  const QPoint middle(static_cast<int>(std::floor(at.x())), static_cast<int>(std::floor(at.y())));
  // The centre of a pixel lies half a pixel from its corner.
  const QPointF within = at - QPointF(middle) - QPointF(0.5, 0.5);
  QPointF snapped = at;
  // The cross on a small hole is too short for the whole reach.
  const auto line = [&](bool turned, double wanted) {
    const auto far = Cut(image, middle, pixels, turned).lineNear(wanted);
    return far ? far : Cut(image, middle, std::max(3, pixels / 2), turned).lineNear(wanted);
  };
  if (const auto x = line(false, within.x())) snapped.setX(middle.x() + *x + 0.5);
  if (const auto y = line(true, within.y())) snapped.setY(middle.y() + *y + 0.5);
  return snapped;
}

}  // namespace inchwright::app
