#include "core/sheet/half_section.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/sheet/style.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr double kLabel = 3.2;
constexpr double kBesideChuck = 9;  ///< of the jaws, left of the work
constexpr double kAboveAndBelow = 11;

/// Inches on the part, for the picture alone.
double inchesOf(const Rational& ticks) {
  return ticks.toDouble() / Length::kTicksPerInch;
}

/// What lies between two neighbouring edges: radii at both ends, in inches.
struct Slice {
  double from = 0;
  double to = 0;
  double outerFrom = 0;
  double outerTo = 0;
  double inner = 0;
};

class Section {
 public:
  Section(const LatheWork& work, const Setup& setup) : work_(work), setup_(setup) {
    for (const auto& [id, at] : work.shape.edges) cuts_.insert(inchesOf(at));
    if (cuts_.size() < 2) return;
    for (auto to = std::next(cuts_.begin()); to != cuts_.end(); ++to) {
      slices_.push_back(sliceBetween(*std::prev(to), *to));
    }
    for (const Slice& one : slices_) largest_ = std::max({largest_, one.outerFrom, one.outerTo});
  }

  bool empty() const { return slices_.empty() || largest_ <= 0; }

  Piece piece(double width, double mostHeight) {
    const double length = *cuts_.rbegin() - *cuts_.begin();
    scale_ = std::min((width - 2 * kBesideChuck) / length,
                      (mostHeight - 2 * kAboveAndBelow) / (2 * largest_));
    left_ = (width - length * scale_) / 2;
    axis_ = kAboveAndBelow + largest_ * scale_;
    Piece piece;
    piece.height = 2 * axis_ + kLabel;
    Sketch& sketch = piece.sketch;
    for (const Slice& one : slices_) drawSlice(sketch, one);
    drawCentreLine(sketch, width);
    drawChuck(sketch);
    drawNames(sketch);
    drawZero(sketch);
    sketch.text(0, piece.height - 0.6,
                "As it lies in the lathe, cut open above the axis. Not for measuring.",
                {2.2, Typeface::regular});
    return piece;
  }

 private:
  static double radiusAt(const TurnedStretch& one, double x) {
    const double from = inchesOf(*one.left), to = inchesOf(*one.right);
    const double share = to > from ? (x - from) / (to - from) : 0;
    const double a = one.atLeft->toInches() / 2, b = one.atRight->toInches() / 2;
    return a + (b - a) * share;
  }

  static bool covers(const TurnedStretch& one, double from, double to) {
    return one.left && one.atLeft && one.atRight && inchesOf(*one.left) <= from + 1e-9 &&
           inchesOf(*one.right) >= to - 1e-9;
  }

  Slice sliceBetween(double from, double to) const {
    Slice slice{from, to, 0, 0, 0};
    bool grooved = false;
    for (const TurnedStretch& one : work_.shape.stretches) {
      if (!covers(one, from, to)) continue;
      const double a = radiusAt(one, from), b = radiusAt(one, to);
      if (one.inner) {
        slice.inner = std::max(slice.inner, std::max(a, b));
      } else if (one.isGroove()) {
        slice.outerFrom = slice.outerTo = a;
        grooved = true;
      } else if (!grooved && std::max(a, b) > std::max(slice.outerFrom, slice.outerTo)) {
        slice.outerFrom = a;
        slice.outerTo = b;
      }
    }
    return slice;
  }

  /// Across the page: the chuck is at the left whichever end it holds.
  double across(double x) const {
    const double from = *cuts_.begin(), to = *cuts_.rbegin();
    return left_ + (work_.held == Side::left ? x - from : to - x) * scale_;
  }

  void drawSlice(Sketch& sketch, const Slice& one) const {
    const double a = across(one.from), b = across(one.to);
    const Stroke outline{Ink::black, kMedium, {}};
    for (const int side : {-1, 1}) {
      const auto at = [&](double radius) { return axis_ + side * radius * scale_; };
      sketch.polyline({{a, axis_}, {a, at(one.outerFrom)}, {b, at(one.outerTo)}, {b, axis_}},
                      outline);
    }
    const double least = std::min(one.outerFrom, one.outerTo);
    if (least > one.inner) {
      drawHatchedBox(
          sketch,
          {std::min(a, b), axis_ - least * scale_, std::max(a, b), axis_ - one.inner * scale_}, 1.6,
          kHairline);
    }
    if (one.inner > 0) {
      const double bore = axis_ - one.inner * scale_;
      sketch.line({a, bore}, {b, bore}, outline);
      const Stroke hidden{Ink::black, kThin, {2, 1}};
      const double below = axis_ + one.inner * scale_;
      sketch.line({a, below}, {b, below}, hidden);
    }
  }

  void drawCentreLine(Sketch& sketch, double width) const {
    sketch.line({left_ - 7, axis_}, {std::min(width, across(freeEnd()) + 7), axis_},
                {Ink::black, kThin, {6, 1.2, 1.2, 1.2}});
  }

  double freeEnd() const { return work_.held == Side::left ? *cuts_.rbegin() : *cuts_.begin(); }

  /// Two jaws over what does not stand out.
  void drawChuck(Sketch& sketch) const {
    double jawEnd = left_;
    if (setup_.chucked->standsOut) {
      const double out = setup_.chucked->standsOut->value.toInches() * scale_;
      jawEnd = std::max(left_, across(freeEnd()) - out);
    }
    double radius = 0;
    for (const Slice& one : slices_) {
      const bool mirrored = work_.held != Side::left;
      const double end = across(mirrored ? one.to : one.from);
      if (end < jawEnd || end <= left_ + 0.01) {
        radius = std::max(radius, mirrored ? one.outerTo : one.outerFrom);
      }
    }
    if (radius <= 0) radius = largest_;
    const double reach = radius * scale_;
    const double right = std::max(jawEnd, left_ + 1.5);
    drawHatchedBox(sketch, {left_ - kBesideChuck, axis_ - reach - 6, right, axis_ - reach}, 1,
                   kThin);
    drawHatchedBox(sketch, {left_ - kBesideChuck, axis_ + reach, right, axis_ + reach + 6}, 1,
                   kThin);
  }

  /// Each over its middle, two rows in turn so that short stretches keep apart.
  void drawNames(Sketch& sketch) const {
    std::map<double, std::string> names;
    for (const LatheRow& row : work_.rows) {
      const TurnedStretch* one = work_.shape.stretch(row.id);
      const double middle = (across(inchesOf(*one->left)) + across(inchesOf(*one->right))) / 2;
      std::string& text = names[middle];
      text += (text.empty() ? "" : ", ") + row.id;
    }
    double ends[2] = {-1e9, -1e9};
    for (const auto& [middle, text] : names) {
      const double half = textWidth(text, kLabel, Typeface::bold) / 2;
      const double left = middle - half;
      const auto isFree = [&ends, left](std::size_t row) { return left > ends[row] + 1; };
      const std::size_t sooner = ends[0] <= ends[1] ? 0 : 1;
      const std::size_t row = isFree(0) ? 0 : isFree(1) ? 1 : sooner;
      // Where neither row has room above its stretch, it stands behind the last name.
      const double at = std::max({middle, half, ends[row] + 1 + half});
      const double y = axis_ - largest_ * scale_ - 1.6 - (row == 0 ? 0 : kLabel * 1.5);
      sketch.text(at, y, text, {kLabel, Typeface::bold, TextAlign::centre});
      ends[row] = at + half;
    }
  }

  void drawZero(Sketch& sketch) const {
    const auto at = work_.shape.edgeAt(work_.zeroAt);
    if (!at) return;
    const double x = across(inchesOf(*at));
    const double y = axis_ + largest_ * scale_ + 1;
    sketch.fill({{x, y}, {x - 1.6, y + 3}, {x + 1.6, y + 3}});
    sketch.text(x, y + 3.6 + kLabel, work_.carriageLetter + "0",
                {kLabel, Typeface::bold, TextAlign::centre});
  }

  const LatheWork& work_;
  const Setup& setup_;
  std::set<double> cuts_;
  std::vector<Slice> slices_;
  double largest_ = 0;
  double scale_ = 1;
  double left_ = 0;
  double axis_ = 0;
};

}  // namespace

Piece halfSectionPiece(const LatheWork& work, const Setup& setup, double width, double mostHeight) {
  Section section(work, setup);
  return section.empty() ? Piece{} : section.piece(width, mostHeight);
}

}  // namespace inchwright
