#include "core/seen/figures_of_spans.h"

#include <cmath>

namespace inchwright::seen {
namespace {

constexpr double kLongest = 1.9;        // of a figure, inches of the sheet
constexpr std::size_t kNearest = 4;     // places looked at for one line
constexpr std::size_t kMostReads = 14;  // with those that stand apart put together

constexpr double kAtEnd = 0.03;        // of an end is what comes so near, inches of the sheet
constexpr double kLeastHead = 0.07;    // of a head with its line, inches of the sheet
constexpr double kHighestHead = 0.06;  // either way of the line
constexpr double kHeadDrawn = 0.85;    // of its way along the line
constexpr double kBehind = 0.12;       // a line so near behind a figure may hide its last digit
constexpr double kCrowds = 0.15;       // lettering no further off may belong to the figure

struct Scored {
  double far;
  bool beside;
  std::vector<int> places;
  Box box;
};

double gap(int a0, int a1, int b0, int b1) {
  return std::max(a0, b0) - std::min(a1, b1);
}

}  // namespace

FigureShelf::FigureShelf(const Lettering& whole, const Lettering& bare, double inch, Unit unit,
                         const Net& net)
    : whole_(whole), bare_(bare), inch_(inch), unit_(unit), net_(net) {
  for (const Lettering* from : {&whole_, &bare_}) {
    for (const Block& b : from->blocks) {
      if (std::max(b.box.w, b.box.h) > kLongest * inch) continue;
      known_[{from, b.parts}] = static_cast<int>(places_.size());
      places_.push_back({from, b, {}});
    }
  }
}

const Reads& FigureShelf::read(const std::vector<int>& places, bool turned) {
  auto& slot = read_[{places, turned}];
  if (slot) return *slot;
  slot = std::make_unique<Reads>();
  const Lettering* from = places_[places.front()].from;
  std::vector<int> parts;
  Box box = places_[places.front()].block.box;
  for (const int p : places) {
    parts.insert(parts.end(), places_[p].block.parts.begin(), places_[p].block.parts.end());
    box = around(box, places_[p].block.box);
  }
  std::sort(parts.begin(), parts.end());
  std::vector<int> known = parts;
  for (const int p : places)
    known.insert(known.end(), places_[p].heads.begin(), places_[p].heads.end());
  std::sort(known.begin(), known.end());
  Grey ink = inkOf(*from, parts, box);
  if (turned) ink = turnedUpright(ink);
  // The cut has a pixel round its box; turned, its rows are the columns from the left.
  std::vector<int> rules = rulesIn(*from, box, turned);
  for (int& row : rules) ++row;
  *slot = {box, turned, crowds(*from, known, box, turned) || lineBehind(box, turned),
           readFigure(ink, rules, inch_, unit_, net_)};
  return *slot;
}

bool FigureShelf::lineBehind(const Box& box, bool turned) const {
  const int reach = static_cast<int>(kBehind * inch_), high = turned ? box.w : box.h;
  for (int k = 0; k <= reach; ++k) {
    int on = 0;
    for (int i = 0; i < high; ++i) {
      // A line that leans shows in neighbouring columns.
      for (int lean = -1; lean <= 1; ++lean) {
        const int x = turned ? box.x + i : box.right() + k + lean,
                  y = turned ? box.y - 1 - k + lean : box.y + i;
        if (!bare_.ruled.holds(x, y) || (bare_.ruled.row(y)[x] & (turned ? 1 : 2)) == 0) continue;
        ++on;
        break;
      }
    }
    if (on > high / 2) return true;
  }
  return false;
}

bool FigureShelf::crowds(const Lettering& from, const std::vector<int>& known, const Box& box,
                         bool turned) const {
  for (const Block& block : from.blocks) {
    if (gap(block.box.x, block.box.right(), box.x, box.right()) > kCrowds * inch_ ||
        gap(block.box.y, block.box.bottom(), box.y, box.bottom()) > kCrowds * inch_) {
      continue;
    }
    for (const int n : block.parts) {
      const Box& b = from.parts.list[n].box;
      if (std::max(b.w, b.h) < 0.045 * inch_ || std::binary_search(known.begin(), known.end(), n)) {
        continue;
      }
      const double along = turned ? gap(b.y, b.bottom(), box.y, box.bottom())
                                  : gap(b.x, b.right(), box.x, box.right());
      const double across = turned ? gap(b.x, b.right(), box.x, box.right())
                                   : gap(b.y, b.bottom(), box.y, box.bottom());
      if (along < kCrowds * inch_ && across < 0) return true;
    }
  }
  return false;
}

bool FigureShelf::isHead(const Lettering& lettering, int part, const Along& line) const {
  const Box& b = lettering.parts.list[part].box;
  const double low = line.plumb ? b.y : b.x, high = line.plumb ? b.bottom() : b.right();
  const bool first = low < line.from + kAtEnd * inch_;
  const double begin = first ? line.from : std::max(low, line.from),
               past = first ? std::min(high, line.to) : line.to;
  if (past - begin < kLeastHead * inch_) return false;
  // What is higher than a head, and not at the end, may be a figure that touches it.
  for (int y = b.y; y < b.bottom(); ++y) {
    for (int x = b.x; x < b.right(); ++x) {
      if (lettering.parts.of.row(y)[x] != part) continue;
      const double u = line.plumb ? y : x, off = std::abs((line.plumb ? x : y) - line.across);
      const double inside = first ? u - line.from : line.to - u;
      if (off > kHighestHead * inch_ && inside > 2 * kAtEnd * inch_) return false;
    }
  }
  int on = 0, count = 0;
  for (double u = begin; u < past; u += 1, ++count) {
    for (int k = -2; k <= 2; ++k) {
      const int x = static_cast<int>(line.plumb ? line.across + k : u),
                y = static_cast<int>(line.plumb ? u : line.across + k);
      if (!lettering.parts.of.holds(x, y) || lettering.parts.of.row(y)[x] != part) continue;
      ++on;
      break;
    }
  }
  return on > kHeadDrawn * count;
}

void FigureShelf::addPartAlong(const Lettering& lettering, const Block& block, const Along& line) {
  Block part;
  std::vector<int> heads;
  for (const int n : block.parts) {
    const Box& b = lettering.parts.list[n].box;
    const double low = line.plumb ? b.y : b.x, high = line.plumb ? b.bottom() : b.right();
    const double mid = (low + high) / 2;
    if (mid < line.from || mid > line.to) continue;
    const bool atEnd = low < line.from + kAtEnd * inch_ || high > line.to - kAtEnd * inch_;
    if (line.inside && atEnd && isHead(lettering, n, line)) {
      heads.push_back(n);
      continue;
    }
    part.box = part.parts.empty() ? b : around(part.box, b);
    part.parts.push_back(n);
  }
  // Where heads are told apart, so is what else stands on the lines that carry the ends out.
  if (!heads.empty()) {
    std::erase_if(part.parts, [&](int n) {
      const Box& b = lettering.parts.list[n].box;
      const double low = line.plumb ? b.y : b.x, high = line.plumb ? b.bottom() : b.right();
      return low < line.from + kAtEnd * inch_ || high > line.to - kAtEnd * inch_;
    });
    part.box = {};
    for (const int n : part.parts) {
      const Box& b = lettering.parts.list[n].box;
      part.box = part.box.w == 0 ? b : around(part.box, b);
    }
  }
  if (part.parts.empty() || part.parts.size() == block.parts.size()) return;
  if (std::max(part.box.w, part.box.h) > kLongest * inch_) return;
  if (known_.try_emplace({&lettering, part.parts}, static_cast<int>(places_.size())).second) {
    places_.push_back({&lettering, std::move(part), std::move(heads)});
  }
}

std::vector<NearFigure> FigureShelf::near(bool plumb, double from, double to, double across,
                                          bool inside) {
  for (const Lettering* lettering : {&whole_, &bare_}) {
    for (const Block& block : lettering->blocks) {
      const Box& b = block.box;
      const double low = plumb ? b.y : b.x, high = plumb ? b.bottom() : b.right();
      const double near = plumb ? b.x : b.y, far = plumb ? b.right() : b.bottom();
      if (across < near - 0.3 * inch_ || across > far + 0.3 * inch_) continue;
      if (low > to || high < from) continue;
      addPartAlong(*lettering, block, {plumb, from, to, across, inside});
    }
  }
  const double mid = (from + to) / 2, half = (to - from) / 2;
  // Beyond both ends, or across one: an end amid a figure is a stroke of its own, more likely, and
  // a line with its figure beside it may be the tail of a neighbour's arrow, whose figure that is.
  const auto astray = [&](const Box& b) {
    const double off = std::abs((plumb ? b.midY() : b.midX()) - mid),
                 halfU = (plumb ? b.h : b.w) / 2.0;
    return off + std::min(halfU, half) - half > 0.05 * inch_;
  };
  std::vector<Scored> found;
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const Box& b = places_[i].block.box;
    const double u = plumb ? b.midY() : b.midX(), w = plumb ? b.midX() : b.midY();
    const double halfU = (plumb ? b.h : b.w) / 2.0, halfW = (plumb ? b.w : b.h) / 2.0;
    const double off = std::abs(w - across);
    if (off > halfW + 0.13 * inch_) continue;
    const double out = std::max(0.0, std::abs(u - mid) + std::min(halfU, half) - half);
    const bool beside = to - from < inch_ && std::abs(u - mid) < half + halfU + 0.55 * inch_;
    if (out > 0.05 * inch_ && !beside) continue;
    found.push_back({(out + 0.4 * off + 0.15 * std::abs(u - mid)) / inch_,
                     astray(b),
                     {static_cast<int>(i)},
                     b});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Scored& a, const Scored& b) { return a.far < b.far; });
  if (found.size() > 2 * kNearest) found.resize(2 * kNearest);
  // A whole number may stand apart from its fraction, and a tolerance from its figure.
  const std::size_t single = found.size();
  for (std::size_t i = 0; i < single && found.size() < kMostReads; ++i) {
    for (std::size_t k = 0; k < places_.size() && found.size() < kMostReads; ++k) {
      const int own = found[i].places.front();
      if (static_cast<int>(k) == own || places_[k].from != places_[own].from) continue;
      const Box &a = found[i].box, &b = places_[k].block.box;
      if (gap(a.x, a.right(), b.x, b.right()) >= 0.17 * inch_ ||
          gap(a.y, a.bottom(), b.y, b.bottom()) >= 0.17 * inch_)
        continue;
      const Box both = around(a, b);
      if (std::max(both.w, both.h) >= kLongest * inch_) continue;
      std::vector<int> places{own, static_cast<int>(k)};
      std::sort(places.begin(), places.end());
      const bool had = std::any_of(found.begin(), found.end(),
                                   [&](const Scored& s) { return s.places == places; });
      if (!had) found.push_back({found[i].far + 0.02, astray(both), places, both});
    }
  }
  std::vector<NearFigure> out;
  for (const Scored& s : found) {
    out.push_back({&read(s.places, false), s.far, s.beside});
    if (plumb) out.push_back({&read(s.places, true), s.far, s.beside});
  }
  return out;
}

std::vector<NearFigure> FigureShelf::round(double x, double y, double reach) {
  std::vector<NearFigure> out;
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const Box& b = places_[i].block.box;
    const double far = std::hypot(std::max(0.0, std::abs(b.midX() - x) - b.w / 2.0),
                                  std::max(0.0, std::abs(b.midY() - y) - b.h / 2.0));
    if (far < reach) out.push_back({&read({static_cast<int>(i)}, false), far / inch_, false});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const NearFigure& a, const NearFigure& b) { return a.far < b.far; });
  return out;
}

}  // namespace inchwright::seen
