#include "core/seen/figure.h"

#include <cmath>
#include <optional>

#include "core/seen/number.h"

namespace inchwright::seen {
namespace {

constexpr double kNoBar = 0.3;  // what a bar costs that can't be seen for a line

/// What stands round a number: brackets, a letter before it, a degree behind it.
struct Dress {
  bool brackets = false;
  bool radius = false;
  bool diameter = false;
  bool degree = false;

  std::string on(const std::string& text) const {
    std::string out = radius ? "R" + text : diameter ? "Ø" + text : text;
    if (degree) out += "°";
    return brackets ? "(" + out + ")" : out;
  }
};

Dress undress(std::vector<Mark>& marks, double inch) {
  Dress dress;
  std::erase_if(marks, [&](const Mark& m) {
    const bool bracket = oddsFor(m.odds, '(') + oddsFor(m.odds, ')') > 0.6F &&
                         m.box.h > 0.09 * inch && m.box.w < 0.5 * m.box.h;
    dress.brackets = dress.brackets || bracket;
    return bracket;
  });
  const auto first = std::min_element(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) {
    return a.box.midX() < b.box.midX();
  });
  if (first != marks.end() && marks.size() > 1 && first->box.h > 0.07 * inch) {
    dress.radius = oddsFor(first->odds, 'R') > 0.6F;
    dress.diameter = oddsFor(first->odds, kDiameterGlyph) > 0.6F;
    if (dress.radius || dress.diameter) marks.erase(first);
  }
  const auto last = std::max_element(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) {
    return a.box.midX() < b.box.midX();
  });
  if (last != marks.end() && marks.size() > 1) {
    int tall = 0, base = 0;
    for (const Mark& m : marks)
      tall = std::max(tall, m.box.h), base = std::max(base, m.box.bottom());
    dress.degree = oddsFor(last->odds, kDegreeGlyph) > 0.5F && last->box.h < 0.7 * tall &&
                   last->box.bottom() < base - 0.25 * tall;
    if (dress.degree) marks.erase(last);
  }
  return dress;
}

/// Whether a ± begins a row of its own under the figure: whatever else there is stands in its row
/// behind it, or wholly above that row.
bool beginsRow(const Mark& sign, const std::vector<Mark>& marks, double inch) {
  bool over = false;
  for (const Mark& m : marks) {
    const bool inRow =
        m.box.midY() > sign.box.y - 0.03 * inch && m.box.midY() < sign.box.bottom() + 0.06 * inch;
    if (inRow && m.box.midX() < sign.box.x) return false;
    if (!inRow && m.box.bottom() > sign.box.y - 0.01 * inch) return false;
    over = over || !inRow;
  }
  return over;
}

/// The marks of the tolerance that a ± begins, behind the figure or in a row under it, and the bars
/// among them.
bool takeTail(std::vector<Mark>& marks, std::vector<Box>& bars, std::vector<Mark>& tail,
              std::vector<Box>& tailBars, double inch) {
  const Mark* found = nullptr;
  for (const Mark& m : marks) {
    if (oddsFor(m.odds, kPlusMinusGlyph) > 0.5F && (found == nullptr || m.box.x < found->box.x))
      found = &m;
  }
  if (found == nullptr) return false;
  const Box sign = found->box;
  const bool under = beginsRow(*found, marks, inch);
  const auto isOver = [&](const Box& b) { return under && b.midY() < sign.y; };
  for (const Mark& m : marks) {
    if (!isOver(m.box) && m.box.midX() > sign.midX() + 0.02 * inch) tail.push_back(m);
  }
  std::copy_if(bars.begin(), bars.end(), std::back_inserter(tailBars),
               [&](const Box& b) { return !isOver(b) && b.midX() > sign.midX(); });
  // The sign's own two strokes may have been taken for a bar.
  std::erase_if(bars, [&](const Box& b) { return under ? !isOver(b) : b.right() > sign.midX(); });
  std::erase_if(marks, [&](const Mark& m) {
    return under ? !isOver(m.box) : m.box.midX() >= sign.midX() - 0.02 * inch;
  });
  return true;
}

/// Two rows, one above the other, each a decimal: the limits of a size.
std::vector<FigureRead> readLimits(const std::vector<Mark>& marks, double inch, Unit unit) {
  int top = 1 << 30, low = 0;
  for (const Mark& m : marks) top = std::min(top, m.box.y), low = std::max(low, m.box.bottom());
  if (marks.size() < 4 || low - top < 0.22 * inch) return {};
  std::vector<Mark> upper, lower;
  int upperEnd = top, lowerTop = low;
  for (const Mark& m : marks) {
    const bool up = m.box.midY() < (top + low) / 2.0;
    (up ? upper : lower).push_back(m);
    if (up) upperEnd = std::max(upperEnd, m.box.bottom());
    if (!up) lowerTop = std::min(lowerTop, m.box.y);
  }
  if (lowerTop - upperEnd < 0.015 * inch) return {};
  std::vector<FigureRead> out;
  auto a = readNumber(upper, {}, inch, unit), b = readNumber(lower, {}, inch, unit);
  settle(a, 4);
  settle(b, 4);
  for (const FigureRead& u : a) {
    for (const FigureRead& l : b) {
      if (u.text.find('.') == std::string::npos || l.text.find('.') == std::string::npos) continue;
      out.push_back({u.text + "/" + l.text, u.odds + l.odds, u.glyphs + l.glyphs});
    }
  }
  return out;
}

/// The bar that a line along a row may have been: as wide as the figures that stand clear above
/// and below it.
std::optional<Box> barAlong(const std::vector<Mark>& marks, int row, double inch) {
  std::optional<Box> over, under;
  for (const Mark& m : marks) {
    if (m.box.h < 0.04 * inch) continue;
    const double slack = 0.02 * inch;
    if (m.box.bottom() <= row + slack) over = over ? around(*over, m.box) : m.box;
    if (m.box.y >= row - slack) under = under ? around(*under, m.box) : m.box;
  }
  if (!over || !under) return std::nullopt;
  const int x = std::min(over->x, under->x), past = std::max(over->right(), under->right());
  const int shared = std::min(over->right(), under->right()) - std::max(over->x, under->x);
  if (shared < 0.5 * std::min(over->w, under->w)) return std::nullopt;
  return Box{x, row, past - x, 1};
}

}  // namespace

std::vector<Mark> marksOf(const Pieces& pieces, const Net& net) {
  std::vector<Mark> out;
  for (const Piece& p : pieces.glyphs) out.push_back({p.box, oddsOf(net, patchOf(p.ink))});
  return out;
}

std::vector<FigureRead> readMarks(std::vector<Mark> marks, const std::vector<Box>& bars,
                                  double inch, Unit unit) {
  std::vector<FigureRead> out;
  const bool any =
      std::any_of(marks.begin(), marks.end(), [&](const Mark& m) { return m.box.h > 0.04 * inch; });
  if (!any || marks.size() > 24) return out;
  std::vector<Mark> tail;
  std::vector<Box> own = bars, tailBars;
  const bool tolerance = takeTail(marks, own, tail, tailBars, inch);
  const Dress dress = undress(marks, inch);
  std::vector<FigureRead> behind{{"", 0, 0}};
  if (tolerance) {
    behind = readNumber(tail, tailBars, inch, unit);
    settle(behind, 3);
  }
  std::vector<FigureRead> numbers = readNumber(marks, own, inch, unit);
  if (own.empty() && !tolerance) {
    std::vector<FigureRead> limits = readLimits(marks, inch, unit);
    std::move(limits.begin(), limits.end(), std::back_inserter(numbers));
  }
  for (const FigureRead& n : numbers) {
    for (const FigureRead& t : behind) {
      const std::string text = dress.on(n.text + (tolerance ? " ±" + t.text : ""));
      out.push_back({text, n.odds + t.odds, n.glyphs + t.glyphs});
    }
  }
  settle(out, 24);
  return out;
}

std::vector<FigureRead> readFigure(const Grey& cut, const std::vector<int>& rules, double inch,
                                   Unit unit, const Net& net) {
  std::vector<FigureRead> all;
  for (const std::uint8_t above : kThresholds) {
    const Pieces pieces = piecesOf(cut, above, inch);
    if (pieces.glyphs.empty() || pieces.glyphs.size() > 24) continue;
    const std::vector<Mark> marks = marksOf(pieces, net);
    auto reads = readMarks(marks, pieces.bars, inch, unit);
    std::move(reads.begin(), reads.end(), std::back_inserter(all));
    if (!pieces.bars.empty()) continue;
    for (const int row : rules) {
      const std::optional<Box> bar = barAlong(marks, row, inch);
      if (!bar) continue;
      for (FigureRead& r : readMarks(marks, {*bar}, inch, unit)) {
        if (r.text.find('/') == std::string::npos) continue;
        r.odds -= kNoBar;
        all.push_back(std::move(r));
      }
    }
  }
  settle(all, 24);
  return all;
}

}  // namespace inchwright::seen
