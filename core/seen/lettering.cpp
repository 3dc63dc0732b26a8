#include "core/seen/lettering.h"

#include <cmath>

#include "core/base/sets.h"

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostParts = 40000;  // what has more of them is no print
constexpr std::uint8_t kFaint = 51;        // light lettering is fainter than any line

void rubOut(Grey& cover, const std::vector<Stroke>& strokes, double inch, bool turned, Grey& ruled,
            const Stop& stop) {
  const Grey before = cover;
  std::size_t count = 0;
  for (const Stroke& s : strokes) {
    if (stop.askedAt(count++)) return;
    if (s.length() < 0.30 * inch) continue;
    const int most = static_cast<int>(s.thick * 1.5 + 2.5);
    for (int x = static_cast<int>(s.x0); x <= static_cast<int>(s.x1); ++x) {
      const int y = static_cast<int>(std::lround(s.yAt(x)));
      int top = y, low = y;
      while (y - top <= most && before.holds(x, top - 1) && before.row(top - 1)[x] > kFaint) --top;
      while (low - y <= most && before.holds(x, low + 1) && before.row(low + 1)[x] > kFaint) ++low;
      const int u = turned ? y : x, v = turned ? x : y;
      if (ruled.holds(u, v)) ruled.row(v)[u] |= turned ? 2 : 1;
      if (low - top + 1 > most) continue;
      for (int k = top - 1; k <= low + 1; ++k) {
        if (cover.holds(x, k)) cover.row(k)[x] = 0;
      }
    }
  }
}

void drawAlong(Grey& out, const std::vector<Chain>& chains, double inch, bool turned,
               const Stop& stop) {
  const int half = std::max(1, static_cast<int>(0.014 * inch));
  std::size_t count = 0;
  for (const Chain& c : chains) {
    if (stop.askedAt(count++)) return;
    const Stroke s = through(c);
    if (s.length() <= 0.5 * inch) continue;
    for (int x = static_cast<int>(s.x0 - 0.15 * inch); x <= s.x1 + 0.15 * inch; ++x) {
      const int y = static_cast<int>(std::lround(s.yAt(x)));
      for (int k = y - half; k <= y + half; ++k) {
        const int u = turned ? k : x, v = turned ? x : k;
        if (out.holds(u, v)) out.row(v)[u] = 1;
      }
    }
  }
}

bool dash(const Parts& parts, int n, const Grey& dashed, double inch) {
  const Box& b = parts.list[n].box;
  if (std::min(b.w, b.h) > 0.022 * inch + 1) return false;
  int along = 0;
  for (int y = b.y; y < b.bottom(); ++y) {
    for (int x = b.x; x < b.right(); ++x) along += parts.of.row(y)[x] == n && dashed.row(y)[x] != 0;
  }
  return along > 0.7 * parts.list[n].area;
}

}  // namespace

Lettering letteringOf(const Grey& cover, double inch, const Grey& dashed, const Stop& stop) {
  Lettering out;
  out.cover = cover;
  out.parts = partsOf(cover, kFaint, stop);
  if (stop.asked()) return out;
  std::vector<int> kept;
  for (std::size_t n = 0; n < out.parts.list.size(); ++n) {
    if (stop.askedAt(n)) return out;
    const Part& p = out.parts.list[n];
    const int size = std::max(p.box.w, p.box.h);
    if (size > 0.40 * inch || size < 0.012 * inch || p.area < 4) continue;
    if (!dashed.empty() && dash(out.parts, static_cast<int>(n), dashed, inch)) continue;
    kept.push_back(static_cast<int>(n));
  }
  if (kept.size() > kMostParts || stop.asked()) return out;
  // Neighbours by cells as wide as the widest part and the gap together.
  const double near = 0.085 * inch;
  std::sort(kept.begin(), kept.end(), [&](int a, int b) {
    return std::pair(out.parts.list[a].box.x, a) < std::pair(out.parts.list[b].box.x, b);
  });
  Sets sets(kept.size());
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (stop.askedAt(i)) return out;
    const Box& a = out.parts.list[kept[i]].box;
    for (std::size_t k = i + 1; k < kept.size(); ++k) {
      const Box& b = out.parts.list[kept[k]].box;
      if (b.x - a.right() >= near) {
        if (b.x - a.x > 0.5 * inch) break;
        continue;
      }
      if (std::max(a.y, b.y) - std::min(a.bottom(), b.bottom()) < near) {
        sets.unite(static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(k));
      }
    }
  }
  std::vector<int> number(kept.size(), -1);
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    int& n = number[sets.find(static_cast<std::uint32_t>(i))];
    const Box& box = out.parts.list[kept[i]].box;
    if (n < 0) {
      n = static_cast<int>(blocks.size());
      blocks.push_back({box, {}});
    }
    blocks[n].box = around(blocks[n].box, box);
    blocks[n].parts.push_back(kept[i]);
  }
  for (Block& b : blocks) {
    const int size = std::max(b.box.w, b.box.h);
    const bool any = std::any_of(b.parts.begin(), b.parts.end(), [&](int n) {
      return std::max(out.parts.list[n].box.w, out.parts.list[n].box.h) > 0.05 * inch;
    });
    if (!any || size <= 0.06 * inch) continue;
    std::sort(b.parts.begin(), b.parts.end());
    out.blocks.push_back(std::move(b));
  }
  return out;
}

Grey withoutLines(const Grey& cover, const std::vector<Stroke>& level,
                  const std::vector<Stroke>& plumb, double inch, Grey& ruled, const Stop& stop) {
  ruled = Grey(cover.width, cover.height);
  Grey out = cover;
  rubOut(out, level, inch, false, ruled, stop);
  Grey turned = transposed(out);
  rubOut(turned, plumb, inch, true, ruled, stop);
  return transposed(turned);
}

std::vector<int> rulesIn(const Lettering& from, const Box& box, bool plumb) {
  std::vector<int> out;
  if (from.ruled.empty()) return out;
  const int rows = plumb ? box.w : box.h, columns = plumb ? box.h : box.w;
  int first = -1, last = -1;
  for (int r = 0; r <= rows; ++r) {
    int count = 0;
    for (int c = 0; c < columns && r < rows; ++c) {
      // A line that rises shows in neighbouring rows.
      for (int k = -1; k <= 1; ++k) {
        const int x = plumb ? box.x + r + k : box.x + c, y = plumb ? box.y + c : box.y + r + k;
        if (!from.ruled.holds(x, y) || (from.ruled.row(y)[x] & (plumb ? 2 : 1)) == 0) continue;
        ++count;
        break;
      }
    }
    if (count > 0.7 * columns) {
      if (first < 0) first = r;
      last = r;
    } else if (first >= 0) {
      out.push_back((first + last) / 2);
      first = -1;
    }
  }
  return out;
}

Grey alongLines(int width, int height, const std::vector<Chain>& level,
                const std::vector<Chain>& plumb, double inch, const Stop& stop) {
  Grey out(width, height);
  drawAlong(out, level, inch, false, stop);
  drawAlong(out, plumb, inch, true, stop);
  return out;
}

Grey inkOf(const Lettering& from, const std::vector<int>& parts, const Box& box) {
  Grey out(box.w + 2, box.h + 2);
  Grey own(box.w + 2, box.h + 2);
  for (int y = 0; y < own.height; ++y) {
    for (int x = 0; x < own.width; ++x) {
      const int u = box.x - 1 + x, v = box.y - 1 + y;
      if (!from.parts.of.holds(u, v)) continue;
      const int n = from.parts.of.row(v)[u];
      own.row(y)[x] = n >= 0 && std::binary_search(parts.begin(), parts.end(), n);
    }
  }
  const Grey near = widened(own, 1);
  for (int y = 0; y < own.height; ++y) {
    for (int x = 0; x < own.width; ++x) {
      const int u = box.x - 1 + x, v = box.y - 1 + y;
      if (near.row(y)[x] != 0 && from.cover.holds(u, v)) out.row(y)[x] = from.cover.row(v)[u];
    }
  }
  return out;
}

}  // namespace inchwright::seen
