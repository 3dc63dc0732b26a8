#include "core/seen/number.h"

#include <cmath>

namespace inchwright::seen {
namespace {

constexpr double kFloor = 1e-4;    // no glyph is less likely than this
constexpr double kSpace = 0.075;   // the least between words, inches of the sheet
constexpr double kHopeless = -16;  // nobody looks at a figure below it

using Row = std::vector<const Mark*>;

double logOdds(const Mark& m, char kind) {
  return std::log(std::max<double>(kFloor, oddsFor(m.odds, kind)));
}

/// What it costs to leave a mark unread: little for a blot, much for a plain figure.
double unread(const Mark& m, double inch) {
  if (std::max(m.box.w, m.box.h) < 0.045 * inch) return -0.2;
  return std::log(std::max(0.02, double(oddsFor(m.odds, '?'))));
}

void sortAlong(Row& row) {
  std::stable_sort(row.begin(), row.end(),
                   [](const Mark* a, const Mark* b) { return a->box.midX() < b->box.midX(); });
}

double meanHeight(const Row& row) {
  double sum = 0;
  for (const Mark* m : row) sum += m->box.h;
  return sum / static_cast<double>(std::max<std::size_t>(1, row.size()));
}

double lowestOf(const Row& row) {
  int low = row.front()->box.h;
  for (const Mark* m : row) low = std::min(low, m->box.h);
  return low;
}

double digits(const Row& row, int number) {
  const std::string text = std::to_string(number);
  if (text.size() != row.size()) return kHopeless;
  double sum = 0;
  for (std::size_t i = 0; i < row.size(); ++i) sum += logOdds(*row[i], text[i]);
  return sum;
}

/// Whole numbers for a row: 0 for an empty one.
std::vector<std::pair<double, int>> wholes(const Row& row) {
  std::vector<std::pair<double, int>> out;
  if (row.empty()) return {{0.0, 0}};
  if (row.size() > 2) return {};
  for (int n = row.size() == 1 ? 1 : 10; n < (row.size() == 1 ? 10 : 100); ++n) {
    out.emplace_back(digits(row, n), n);
  }
  std::sort(out.rbegin(), out.rend());
  out.resize(4);
  return out;
}

void addFractions(const Row& over, const Row& under, const Row& whole, double extra,
                  std::vector<FigureRead>& out) {
  if (over.empty() || under.empty() || over.size() > 2 || under.size() > 2) return;
  const auto before = wholes(whole);
  for (const int d : {2, 4, 8, 16, 32, 64}) {
    const double lower = digits(under, d);
    if (lower <= kHopeless) continue;
    for (int n = 1; n < d; n += 2) {
      const double upper = digits(over, n);
      if (upper <= kHopeless) continue;
      for (const auto& [odds, w] : before) {
        const double sum = lower + upper + odds + extra;
        if (sum <= kHopeless) continue;
        const std::string text =
            (w > 0 ? std::to_string(w) + " " : "") + std::to_string(n) + "/" + std::to_string(d);
        out.push_back({text, sum, static_cast<int>(over.size() + under.size() + whole.size())});
      }
    }
  }
}

void addStacked(const std::vector<Mark>& marks, const Box& bar, double inch,
                std::vector<FigureRead>& out) {
  Row over, under, whole;
  double extra = 0;
  for (const Mark& m : marks) {
    const double x = m.box.midX(), y = m.box.midY();
    const bool along = x >= bar.x - 0.03 * inch && x <= bar.right() + 0.03 * inch;
    const double away = y < bar.midY() ? bar.y - m.box.bottom() : m.box.y - bar.bottom();
    // A whole number may stand close to the bar, but it goes past it above and below.
    const bool past =
        x < bar.x && std::max(m.box.y - bar.y, bar.bottom() - m.box.bottom()) < -0.02 * inch;
    if (along && !past && m.box.h > 0.03 * inch && away < 0.09 * inch) {
      (y < bar.midY() ? over : under).push_back(&m);
    } else if (x < bar.x && m.box.h > 0.05 * inch && std::abs(y - bar.midY()) < 0.06 * inch) {
      whole.push_back(&m);
    } else {
      extra += unread(m, inch);
    }
  }
  for (Row* row : {&over, &under, &whole}) sortAlong(*row);
  if (!whole.empty() && !over.empty()) {
    // A whole number is higher than its fraction's figures, and stands next to them: a scrap of a
    // line is not, or does not.
    const double ratio = meanHeight(whole) / std::max(meanHeight(over), meanHeight(under));
    const double apart = bar.x - whole.back()->box.right();
    if (ratio < 1.05 || ratio > 2.0 || apart > 0.16 * inch) extra -= 4;
  }
  addFractions(over, under, whole, extra, out);
}

Row tallIn(Row::const_iterator from, Row::const_iterator past, double inch) {
  Row out;
  std::copy_if(from, past, std::back_inserter(out),
               [&](const Mark* m) { return m->box.h > 0.04 * inch; });
  return out;
}

/// What it costs to take a row of figures for a whole number and the upper figures of its fraction.
/// A whole number's are higher than those, or stand apart from them by a space.
double apart(const Row& whole, const Row& over, double inch) {
  double cost = 0;
  if (over.size() > 1) {
    if (over[1]->box.h < 0.85 * over[0]->box.h) cost -= 4;
    if (over[1]->box.x - over[0]->box.right() > kSpace * inch) cost -= 2;
  }
  if (whole.empty() || meanHeight(over) < 0.88 * lowestOf(whole)) return cost;
  const double gap = (over.front()->box.x - whole.back()->box.right()) / inch;
  return cost - std::clamp(0.5 + (kSpace - gap) * 80, 0.5, 4.0);
}

/// Fractions with a stroke between: `1-3/16` in one size, or raised and lowered small figures.
void addSlanted(const std::vector<Mark>& marks, double inch, std::vector<FigureRead>& out) {
  Row all;
  for (const Mark& m : marks) {
    if (m.box.h > 0.02 * inch || m.box.w > 0.03 * inch) all.push_back(&m);
  }
  sortAlong(all);
  for (std::size_t i = 1; i + 1 < all.size(); ++i) {
    const Mark& stroke = *all[i];
    if (oddsFor(stroke.odds, '/') < 0.2 || stroke.box.h < 0.07 * inch) continue;
    const double own = logOdds(stroke, '/');
    const Row under = tallIn(all.begin() + i + 1, all.end(), inch);
    std::size_t dash = i;
    for (std::size_t k = 0; k < i; ++k) {
      if (all[k]->box.h < 0.45 * stroke.box.h && all[k]->box.w > 1.2 * all[k]->box.h) dash = k;
    }
    if (dash < i) {
      addFractions(tallIn(all.begin() + dash + 1, all.begin() + i, inch), under,
                   tallIn(all.begin(), all.begin() + dash, inch), own, out);
      continue;
    }
    const Row before = tallIn(all.begin(), all.begin() + i, inch);
    for (std::size_t k = before.size() > 2 ? before.size() - 2 : 0; k < before.size(); ++k) {
      const Row whole(before.begin(), before.begin() + k), over(before.begin() + k, before.end());
      addFractions(over, under, whole, own + apart(whole, over, inch), out);
    }
  }
}

struct Digits {
  double odds;
  std::string text;
};

std::vector<Digits> likelyDigits(const Row& row) {
  std::vector<Digits> out{{0.0, ""}};
  for (const Mark* m : row) {
    std::vector<Digits> next;
    for (const Digits& d : out) {
      for (char c = '0'; c <= '9'; ++c) next.push_back({d.odds + logOdds(*m, c), d.text + c});
    }
    std::stable_sort(next.begin(), next.end(),
                     [](const Digits& a, const Digits& b) { return a.odds > b.odds; });
    if (next.size() > 24) next.resize(24);
    out = std::move(next);
  }
  return out;
}

/// Whole numbers and decimals: digits on one base line, with a point on it at most.
void addPlain(const std::vector<Mark>& marks, double inch, Unit unit,
              std::vector<FigureRead>& out) {
  int tall = 0;
  for (const Mark& m : marks) tall = std::max(tall, m.box.h);
  if (tall < 0.05 * inch) return;
  Row row, points;
  double extra = 0;
  int scraps = 0;
  std::vector<double> feet;
  for (const Mark& m : marks) {
    if (m.box.h > 0.6 * tall) feet.push_back(m.box.bottom());
  }
  std::nth_element(feet.begin(), feet.begin() + static_cast<std::ptrdiff_t>(feet.size() / 2),
                   feet.end());
  const double base = feet[feet.size() / 2];
  for (const Mark& m : marks) {
    const double off = std::abs(m.box.bottom() - base);
    if (std::max(m.box.w, m.box.h) < 0.36 * tall && off < 0.25 * tall) {
      points.push_back(&m);
    } else if (m.box.h > 0.6 * tall) {
      // Digits of a plain number share a base line: a lost bar once made 34 of 3/4.
      if (off > 0.22 * tall) extra -= 6;
      row.push_back(&m);
    } else {
      extra += unread(m, inch);
      ++scraps;
    }
  }
  sortAlong(row);
  // A lone figure among scraps may be what is left of a fraction too faint for this threshold.
  if (row.size() == 1 && points.empty()) extra -= scraps;
  if (row.empty() || row.size() > 6 || points.size() > 1) return;
  // A lone stroke is a one only at the height of one.
  if (row.size() == 1 && (tall < 0.09 * inch || tall > 0.18 * inch)) extra -= 4;
  for (std::size_t i = 1; i < row.size(); ++i) {
    if (row[i]->box.x - row[i - 1]->box.right() > 0.12 * inch) extra -= 3;
  }
  std::size_t point = row.size();
  if (!points.empty()) {
    point = 0;
    while (point < row.size() && row[point]->box.midX() < points[0]->box.midX()) ++point;
    if (point == row.size()) return;
  }
  for (const Digits& d : likelyDigits(row)) {
    const double sum = d.odds + extra;
    const int count = static_cast<int>(row.size());
    if (points.empty()) {
      if (d.text.size() > (unit == Unit::inch ? 2U : 3U) || d.text[0] == '0') continue;
      out.push_back({d.text, sum, count});
      continue;
    }
    const std::string whole = d.text.substr(0, point), part = d.text.substr(point);
    if (whole.size() > 1 && whole[0] == '0') continue;
    const bool odd = unit == Unit::inch && part.size() < 2;
    out.push_back({whole + "." + part, sum - (odd ? 3 : 0), count});
  }
}

}  // namespace

void settle(std::vector<FigureRead>& reads, std::size_t most) {
  std::stable_sort(reads.begin(), reads.end(),
                   [](const FigureRead& a, const FigureRead& b) { return a.odds > b.odds; });
  std::vector<FigureRead> once;
  for (FigureRead& r : reads) {
    if (once.size() == most) break;
    if (std::none_of(once.begin(), once.end(),
                     [&](const FigureRead& o) { return o.text == r.text; })) {
      once.push_back(std::move(r));
    }
  }
  reads = std::move(once);
}

std::vector<FigureRead> readNumber(const std::vector<Mark>& marks, const std::vector<Box>& bars,
                                   double inch, Unit unit) {
  std::vector<FigureRead> out;
  if (!bars.empty()) {
    const Box& widest = *std::max_element(bars.begin(), bars.end(),
                                          [](const Box& a, const Box& b) { return a.w < b.w; });
    addStacked(marks, widest, inch, out);
  }
  if (out.empty()) addSlanted(marks, inch, out);
  if (out.empty() && bars.empty()) addPlain(marks, inch, unit, out);
  settle(out, 24);
  return out;
}

}  // namespace inchwright::seen
