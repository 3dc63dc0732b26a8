#include "app/picture/askew.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace inchwright::app {
namespace {

constexpr int kSide = 900;           // pixels: the picture is made so small before it is looked at
constexpr double kMostLean = 0.35;   // radians: 20 degrees
constexpr double kLeanStep = 0.002;  // radians: a pixel in 500
constexpr double kLeastShare = 1.0 / 6;  // of the picture's smaller side: a line as long as that
constexpr double kDrawnShare = 0.7;      // of its length a line is drawn
constexpr int kMostLines = 24;           // of each sort
constexpr int kPaperReach = 12;          // pixels about a place whose paper it is set against
constexpr int kInkContrast = 28;         // of 255
constexpr double kNear = 1.6;            // pixels: as far from a line its ink may lie
constexpr std::size_t kFewest = 4;       // lines of a sort, to tell how they differ
constexpr double kFlat = 0.007;          // radians: 0.4 degrees, a hundredth of the picture's size
constexpr double kLeansLittle = 0.06;  // radians: a line of a squared-up print that was to be level

struct Dot {
  double along = 0;  ///< from the middle of the picture
  double across = 0;
};

/// What is darker than the paper about it, in a grey picture; what is lighter, where that is more,
/// as on a blueprint.
std::vector<QPoint> inkIn(const QImage& grey) {
  const int width = grey.width(), height = grey.height();
  // Sums over all pixels above and to the left.
  std::vector<std::int64_t> sums(static_cast<std::size_t>(width + 1) * (height + 1));
  const auto sum = [&](int x, int y) -> std::int64_t& {
    return sums[static_cast<std::size_t>(y) * (width + 1) + x];
  };
  for (int y = 0; y < height; ++y) {
    const uchar* line = grey.constScanLine(y);
    std::int64_t row = 0;
    for (int x = 0; x < width; ++x) {
      row += line[x];
      sum(x + 1, y + 1) = sum(x + 1, y) + row;
    }
  }
  std::vector<QPoint> dark, light;
  for (int y = 0; y < height; ++y) {
    const uchar* line = grey.constScanLine(y);
    const int top = std::max(0, y - kPaperReach), low = std::min(height, y + kPaperReach + 1);
    for (int x = 0; x < width; ++x) {
      const int left = std::max(0, x - kPaperReach), right = std::min(width, x + kPaperReach + 1);
      const std::int64_t all = sum(right, low) - sum(left, low) - sum(right, top) + sum(left, top);
      const std::int64_t paper = all / (static_cast<std::int64_t>(right - left) * (low - top));
      if (paper - line[x] > kInkContrast) dark.emplace_back(x, y);
      if (line[x] - paper > kInkContrast) light.emplace_back(x, y);
    }
  }
  return dark.size() >= light.size() ? dark : light;
}

/// Votes for straight lines by lean and by how far from the middle they pass. Lines are taken out
/// one after the other, the longest first.
class Votes {
 public:
  Votes(std::vector<Dot> dots, double reach)
      : dots_(std::move(dots)),
        reach_(static_cast<int>(std::ceil(reach)) + 2),
        votes_(static_cast<std::size_t>(kLeans) * (2 * reach_ + 1)) {
    for (const Dot& dot : dots_) vote(dot, 1);
  }

  /// Lean and offset of the line with the most ink; empty below `least`.
  std::optional<std::pair<double, double>> most(int least) const {
    const auto best = std::max_element(votes_.begin(), votes_.end());
    if (*best < least) return std::nullopt;
    const auto index = static_cast<int>(best - votes_.begin());
    const int wide = 2 * reach_ + 1;
    return std::pair(leanAt(index / wide), static_cast<double>(index % wide - reach_));
  }

  /// The ink near a line, which is taken out.
  std::vector<Dot> takeAlong(double lean, double offset) {
    std::vector<Dot> taken;
    const auto on = [&](const Dot& dot) {
      return std::abs(dot.across * std::cos(lean) - dot.along * std::sin(lean) - offset) <= kNear;
    };
    const auto rest =
        std::stable_partition(dots_.begin(), dots_.end(), [&](const Dot& dot) { return !on(dot); });
    taken.assign(rest, dots_.end());
    dots_.erase(rest, dots_.end());
    for (const Dot& dot : taken) vote(dot, -1);
    return taken;
  }

 private:
  static constexpr int kLeans = static_cast<int>(2 * kMostLean / kLeanStep) + 1;
  static double leanAt(int index) { return index * kLeanStep - kMostLean; }

  void vote(const Dot& dot, int count) {
    static const auto kTurns = [] {
      std::array<std::pair<double, double>, kLeans> turns{};
      for (int i = 0; i < kLeans; ++i) {
        turns[static_cast<std::size_t>(i)] = {std::cos(leanAt(i)), std::sin(leanAt(i))};
      }
      return turns;
    }();
    int* row = votes_.data();
    for (const auto& [cosine, sine] : kTurns) {
      // Rounded from above zero, which takes no call.
      row[static_cast<int>(dot.across * cosine - dot.along * sine + reach_ + 0.5)] += count;
      row += 2 * reach_ + 1;
    }
  }

  std::vector<Dot> dots_;
  int reach_;
  std::vector<int> votes_;
};

/// The straight line through ink, by least squares; empty where it is no drawn line.
std::optional<LongLine> through(std::vector<Dot> ink, double least) {
  if (static_cast<double>(ink.size()) < least * kDrawnShare) return std::nullopt;
  std::sort(ink.begin(), ink.end(), [](const Dot& a, const Dot& b) { return a.along < b.along; });
  // The longest stretch without a gap; beyond it lies ink of other things.
  const double gap = least / 6;
  std::size_t from = 0, first = 0, last = 0;
  for (std::size_t i = 1; i <= ink.size(); ++i) {
    if (i < ink.size() && ink[i].along - ink[i - 1].along <= gap) continue;
    if (ink[i - 1].along - ink[from].along > ink[last].along - ink[first].along) {
      first = from;
      last = i - 1;
    }
    from = i;
  }
  const double length = ink[last].along - ink[first].along;
  if (length < least) return std::nullopt;
  double count = 0, along = 0, across = 0;
  int covered = 0;
  for (std::size_t i = first; i <= last; ++i) {
    ++count;
    along += ink[i].along;
    across += ink[i].across;
    covered += i == first || std::floor(ink[i].along) > std::floor(ink[i - 1].along);
  }
  if (covered < kDrawnShare * length) return std::nullopt;
  along /= count;
  across /= count;
  double both = 0, square = 0;
  for (std::size_t i = first; i <= last; ++i) {
    both += (ink[i].along - along) * (ink[i].across - across);
    square += (ink[i].along - along) * (ink[i].along - along);
  }
  LongLine line;
  line.lean = std::atan2(both, square);
  line.at = across;
  line.along = along;
  line.length = length;
  return line;
}

std::vector<LongLine> linesOf(const std::vector<QPoint>& ink, const QSize& size, bool upright) {
  const double middleX = size.width() / 2.0, middleY = size.height() / 2.0;
  std::vector<Dot> dots;
  dots.reserve(ink.size());
  for (const QPoint& at : ink) {
    const double x = at.x() + 0.5 - middleX, y = at.y() + 0.5 - middleY;
    dots.push_back(upright ? Dot{y, x} : Dot{x, y});
  }
  const double least = kLeastShare * std::min(size.width(), size.height());
  Votes votes(std::move(dots), std::hypot(middleX, middleY));
  std::vector<LongLine> lines;
  // Ink that makes no line is taken out as well, so there is an end.
  for (int tries = 0; tries < 3 * kMostLines; ++tries) {
    const auto best = votes.most(static_cast<int>(kDrawnShare * least));
    if (!best || static_cast<int>(lines.size()) == kMostLines) break;
    auto line = through(votes.takeAlong(best->first, best->second), least);
    if (!line) continue;
    // The picture's y runs down: what leans up to the right falls in pixels; an upright line that
    // leans to the left at its top leans anticlockwise.
    line->upright = upright;
    if (!upright) line->lean = -line->lean;
    line->at += upright ? middleX : middleY;
    line->along += upright ? middleY : middleX;
    lines.push_back(*line);
  }
  return lines;
}

/// How the lean of lines changes from one side of the picture to the other: a straight line
/// through them, in which one that leans otherwise than the rest, such as a slanted edge, counts
/// little.
struct Trend {
  double middle = 0;  ///< lean in the middle of the picture
  double change = 0;  ///< from one side to the other
};

std::optional<Trend> trendOf(const std::vector<LongLine>& lines, bool upright, double side) {
  std::vector<LongLine> own;
  for (const LongLine& line : lines) {
    if (line.upright == upright) own.push_back(line);
  }
  if (own.size() < kFewest) return std::nullopt;
  const auto [low, high] = std::minmax_element(
      own.begin(), own.end(), [](const LongLine& a, const LongLine& b) { return a.at < b.at; });
  if (high->at - low->at < side / 4) return std::nullopt;
  // The slope that most pairs agree on (Theil and Sen, from memory), and the middle of what is
  // left: neither minds a few lines that were drawn slanted.
  std::vector<double> slopes, rests;
  for (std::size_t i = 0; i < own.size(); ++i) {
    for (std::size_t j = i + 1; j < own.size(); ++j) {
      const double apart = own[j].at - own[i].at;
      if (std::abs(apart) > side / 8) slopes.push_back((own[j].lean - own[i].lean) / apart);
    }
  }
  if (slopes.empty()) return std::nullopt;
  const auto median = [](std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
  };
  const double slope = median(slopes);
  for (const LongLine& line : own) rests.push_back(line.lean - slope * (line.at - side / 2));
  return Trend{median(rests), slope * side};
}

}  // namespace

std::vector<LongLine> longLines(const QImage& image) {
  const int side = std::max(image.width(), image.height());
  const double scale = side > kSide ? static_cast<double>(kSide) / side : 1;
  const QImage small = (scale < 1 ? image.scaled(image.size() * scale, Qt::IgnoreAspectRatio,
                                                 Qt::SmoothTransformation)
                                  : image)
                           .convertToFormat(QImage::Format_Grayscale8);
  const std::vector<QPoint> ink = inkIn(small);
  std::vector<LongLine> lines;
  for (const bool upright : {false, true}) {
    for (LongLine line : linesOf(ink, small.size(), upright)) {
      line.at /= scale;
      line.along /= scale;
      line.length /= scale;
      lines.push_back(line);
    }
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const LongLine& a, const LongLine& b) { return a.length > b.length; });
  return lines;
}

bool Askew::isFlat() const {
  return worst() < kFlat;
}

bool Askew::runsTogether() const {
  return std::max(std::abs(levels), std::abs(uprights)) >= kFlat;
}

double Askew::worst() const {
  return std::max({std::abs(levels), std::abs(uprights), std::abs(square)});
}

std::optional<Askew> askewOf(const QImage& image) {
  const std::vector<LongLine> lines = longLines(image);
  const auto levels = trendOf(lines, false, image.height());
  const auto uprights = trendOf(lines, true, image.width());
  if (!levels && !uprights) return std::nullopt;
  Askew askew;
  if (levels) askew.levels = levels->change;
  if (uprights) askew.uprights = uprights->change;
  if (levels && uprights) askew.square = levels->middle - uprights->middle;
  return askew;
}

std::optional<double> leanOf(const QImage& squared, double pixelsPerInch) {
  std::vector<double> off;
  for (const LongLine& line : longLines(squared)) {
    if (std::abs(line.lean) > kLeansLittle) continue;
    off.push_back(std::abs(std::sin(line.lean)));
  }
  if (off.size() < kFewest) return std::nullopt;
  // Three lines of four lean no more; over half of the picture that is so far.
  const auto most = off.begin() + static_cast<std::ptrdiff_t>(off.size() * 3 / 4);
  std::nth_element(off.begin(), most, off.end());
  return *most * std::min(squared.width(), squared.height()) / 2 / pixelsPerInch;
}

}  // namespace inchwright::app
