#include "core/seen/pieces.h"

#include <cmath>

#include "core/seen/parts.h"
#include "core/seen/strokes.h"

namespace inchwright::seen {
namespace {

// A bar that figures touch is so much wider than what of them is above or below it.
constexpr double kWider = 1.06;
constexpr double kMuchWider = 1.3;  // where it is short: letters have short bars of their own
constexpr double kCovered = 0.3;    // and no plus sign, of whose bar the stem is as little

/// Ink of some rows: in how many of them there is any, and from which column to which.
struct Band {
  int rows = 0;
  int from = 0;
  int past = 0;
  int width() const { return past - from; }
};

Band bandOf(const Grey& g, std::uint8_t above, int x0, int x1, int y0, int y1) {
  Band band{0, x1, x0};
  for (int y = std::max(0, y0); y < std::min(g.height, y1); ++y) {
    bool any = false;
    for (int x = std::max(0, x0); x < std::min(g.width, x1); ++x) {
      if (g.row(y)[x] <= above) continue;
      any = true;
      band.from = std::min(band.from, x);
      band.past = std::max(band.past, x + 1);
    }
    band.rows += any;
  }
  return band;
}

/// Whether everything that touches a stroke is no higher than a line is thick: it stands alone.
bool alone(const Parts& parts, const Box& b, double inch) {
  for (int y = std::max(0, b.y); y < std::min(parts.of.height, b.bottom()); ++y) {
    for (int x = b.x; x < std::min(parts.of.width, b.right()); ++x) {
      const int n = parts.of.row(y)[x];
      if (n >= 0 && parts.list[n].box.h > 0.05 * inch + 2) return false;
    }
  }
  return true;
}

/// Whether ink stands close above a bar and close below it: a row of letters further down does not.
bool figuresAt(const Grey& cut, std::uint8_t above, const Box& b, double inch) {
  const int close = static_cast<int>(0.05 * inch);
  return bandOf(cut, above, b.x, b.right(), b.y - close, b.y).rows > 0 &&
         bandOf(cut, above, b.x, b.right(), b.bottom(), b.bottom() + close).rows > 0;
}

/// Whether a stem runs through an end of a stroke, as at the bars of H and R.
bool stemAt(const Grey& cut, std::uint8_t above, const Box& b, int x) {
  constexpr int kStem = 3;
  return bandOf(cut, above, x - 1, x + 2, b.y - kStem, b.y).rows == kStem &&
         bandOf(cut, above, x - 1, x + 2, b.bottom(), b.bottom() + kStem).rows == kStem;
}

std::vector<Box> barsOf(const Grey& cut, std::uint8_t above, double inch) {
  std::vector<Box> bars;
  const std::vector<Stroke> strokes = levelStrokes(cut, inch, 0.058 * inch);
  if (strokes.empty()) return bars;
  const Parts parts = partsOf(cut, above);
  for (const Stroke& s : strokes) {
    const double y = (s.y0 + s.y1) / 2,
                 half = std::max(1.0, s.thick / 2 + 0.6) + std::abs(s.y1 - s.y0) / 2;
    if (2 * half > 0.05 * inch + 4) continue;
    const int x0 = static_cast<int>(s.x0), x1 = static_cast<int>(s.x1) + 1;
    const Box box{x0, static_cast<int>(std::floor(y - half + 0.5)), x1 - x0,
                  std::max(1, static_cast<int>(std::ceil(2 * half)))};
    const int far = static_cast<int>(0.14 * inch), near = static_cast<int>(0.10 * inch);
    const Band over = bandOf(cut, above, x0, x1, box.y - far, box.y);
    const Band under = bandOf(cut, above, x0, x1, box.bottom(), box.bottom() + far);
    if (over.rows <= 0.045 * inch || under.rows <= 0.045 * inch) continue;
    const int up = bandOf(cut, above, x0, x1, box.y - near, box.y).width();
    const int down = bandOf(cut, above, x0, x1, box.bottom(), box.bottom() + near).width();
    const bool free = figuresAt(cut, above, box, inch) && !stemAt(cut, above, box, x0) &&
                      !stemAt(cut, above, box, x1 - 1);
    const double covers = std::max(up, down), least = std::min(up, down);
    const bool wide = box.w >= kWider * covers && box.w > 0.10 * inch;
    const bool narrow =
        box.w >= kMuchWider * covers && least >= kCovered * box.w && box.w > 0.07 * inch;
    const bool fits = box.w >= 0.8 * covers && alone(parts, box, inch);
    if ((free && (wide || narrow)) || fits) bars.push_back(box);
  }
  return bars;
}

Grey inkOfPart(const Grey& cut, const Parts& parts, int n) {
  const Box& b = parts.list[n].box;
  Grey ink(b.w, b.h);
  for (int y = 0; y < b.h; ++y) {
    for (int x = 0; x < b.w; ++x) {
      bool near = false;
      for (int v = std::max(0, b.y + y - 1); v <= std::min(cut.height - 1, b.y + y + 1); ++v) {
        for (int u = std::max(0, b.x + x - 1); u <= std::min(cut.width - 1, b.x + x + 1); ++u) {
          near = near || parts.of.row(v)[u] == n;
        }
      }
      if (near) ink.row(y)[x] = cut.row(b.y + y)[b.x + x];
    }
  }
  return ink;
}

/// The columns from `from` to `past` of a piece, with what is bare above and below left off.
void addColumns(const Piece& piece, int from, int past, std::vector<Piece>& out) {
  const Band rows = bandOf(piece.ink, kInk, from, past, 0, piece.ink.height);
  int first = -1, last = -1;
  for (int y = 0; y < piece.ink.height; ++y) {
    if (bandOf(piece.ink, kInk, from, past, y, y + 1).rows == 0) continue;
    if (first < 0) first = y;
    last = y;
  }
  if (rows.rows < 3 || past - from < 2) return;
  const Box box{from, first, past - from, last - first + 1};
  out.push_back({{piece.box.x + box.x, piece.box.y + box.y, box.w, box.h}, cut(piece.ink, box)});
}

void addSplit(const Piece& piece, std::vector<Piece>& out) {
  const int w = piece.box.w;
  int thinnest = w / 2, least = -1;
  for (int x = w * 3 / 10; x < w * 7 / 10; ++x) {
    int sum = 0;
    for (int y = 0; y < piece.box.h; ++y) sum += piece.ink.row(y)[x];
    if (least < 0 || sum < least) least = sum, thinnest = x;
  }
  addColumns(piece, 0, thinnest, out);
  addColumns(piece, thinnest, w, out);
}

}  // namespace

Pieces piecesOf(const Grey& whole, std::uint8_t above, double inch) {
  Pieces out;
  out.bars = barsOf(whole, above, inch);
  Grey rest = whole;
  for (const Box& b : out.bars) {
    for (int y = std::max(0, b.y); y < std::min(rest.height, b.bottom()); ++y) {
      std::fill(rest.row(y) + b.x, rest.row(y) + std::min(rest.width, b.right()), std::uint8_t{0});
    }
  }
  const Parts parts = partsOf(rest, above);
  for (std::size_t n = 0; n < parts.list.size(); ++n) {
    const Part& part = parts.list[n];
    if (std::max(part.box.w, part.box.h) < 0.010 * inch || part.area < 4) continue;
    Piece piece{part.box, inkOfPart(rest, parts, static_cast<int>(n))};
    const bool two =
        part.box.w > 1.25 * part.box.h && part.box.h > 0.045 * inch && part.box.w > 0.09 * inch;
    if (two) {
      addSplit(piece, out.glyphs);
    } else {
      out.glyphs.push_back(std::move(piece));
    }
  }
  return out;
}

}  // namespace inchwright::seen
