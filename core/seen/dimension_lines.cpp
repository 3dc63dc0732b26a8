#include "core/seen/dimension_lines.h"

#include <cmath>
#include <numbers>
#include <set>

#include "core/seen/angles.h"
#include "core/seen/slanted.h"
#include "core/seen/spans.h"
#include "core/seen/weigh.h"

namespace inchwright::seen {
namespace {

constexpr double kLeastOdds = 0.5;  // odds of an end
constexpr double kSureWithoutFigure = 0.8;
constexpr double kOnCarrier = 0.03;    // of a line that carries an end out, inches of the sheet
constexpr double kPastCarrier = 0.15;  // and how far it may stop short of the end
constexpr int kRounds = 6;             // of finding whose a figure is

/// Lengths that close along an axis with what has been confirmed, for a line from `from` to `to`:
/// sums along every way of at most five readings whose ends meet within `near`.
std::vector<Length> closing(const std::vector<Confirmed>& all, OfferedReading kind, double from,
                            double to, double near) {
  std::vector<Length> out;
  struct Step {
    double at;
    Length sum;
    std::vector<std::size_t> used;
  };
  std::vector<Step> open{{from, Length(), {}}};
  for (std::size_t i = 0; i < open.size() && open.size() < 4000; ++i) {
    const Step step = open[i];
    if (!step.used.empty() && std::abs(step.at - to) < near) {
      out.push_back(step.sum);
      continue;
    }
    if (step.used.size() == 5) continue;
    for (std::size_t k = 0; k < all.size(); ++k) {
      const Confirmed& c = all[k];
      if (c.kind != kind || std::find(step.used.begin(), step.used.end(), k) != step.used.end())
        continue;
      for (const bool forward : {true, false}) {
        if (std::abs((forward ? c.from : c.to) - step.at) >= near) continue;
        const auto sum = forward ? step.sum.plus(c.value) : step.sum.minus(c.value);
        if (!sum) continue;
        std::vector<std::size_t> used = step.used;
        used.push_back(k);
        open.push_back({forward ? c.to : c.from, *sum, std::move(used)});
      }
    }
  }
  return out;
}

IsLettered letteredAlong(const Lettering& lettering, double inch, bool plumb) {
  std::vector<Box> boxes;
  for (const Block& block : lettering.blocks) {
    for (const int n : block.parts) {
      Box b = lettering.parts.list[n].box;
      if (std::max(b.w, b.h) <= 0.045 * inch) continue;
      if (plumb) b = {b.y, b.x, b.h, b.w};
      boxes.push_back(b);
    }
  }
  return [boxes = std::move(boxes), inch](double x0, double x1, double y, double reach) {
    return std::any_of(boxes.begin(), boxes.end(), [&](const Box& b) {
      return b.x > x0 - 0.06 * inch && b.right() < x1 + 0.06 * inch && b.y < y + reach * inch &&
             b.bottom() > y - reach * inch;
    });
  };
}

/// A reading, and what its figure is sought among.
struct Line {
  ReadingOffer reading;
  Drawn drawn;
  std::vector<NearFigure> near;
  std::vector<Length> closing;
  Box figure;
  double far = 0;
  bool outside = false;                   ///< its arrows stand outside
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;  ///< what it takes up without its figure, pixels
};

/// Finds the line's figure among what is near.
void read(Line& line, const LookedAt& seen, Unit unit) {
  ReadingOffer& r = line.reading;
  const Weighed w =
      weigh(line.near, line.drawn, r.kind == OfferedReading::angle, unit, line.closing);
  r.candidates = w.candidates;
  r.witnesses = w.witnesses;
  r.figure = {};
  line.figure = {};
  double x0 = line.x0, y0 = line.y0, x1 = line.x1, y1 = line.y1;
  if (!w.candidates.empty()) {
    line.figure = w.box;
    line.far = w.far;
    r.figure = onPicture(seen.squared.toPicture, w.box.x, w.box.y, w.box.right(), w.box.bottom());
    x0 = std::min<double>(x0, w.box.x), x1 = std::max<double>(x1, w.box.right());
    y0 = std::min<double>(y0, w.box.y), y1 = std::max<double>(y1, w.box.bottom());
  }
  const double margin = 0.2 * seen.inch;
  r.cut = onPicture(seen.squared.toPicture, x0 - margin, y0 - margin, x1 + margin, y1 + margin);
}

bool shareFigure(const Box& a, const Box& b) {
  const int w = std::min(a.right(), b.right()) - std::max(a.x, b.x);
  const int h = std::min(a.bottom(), b.bottom()) - std::max(a.y, b.y);
  return w > 0 && h > 0 && 2.0 * w * h >= std::min(a.w * a.h, b.w * b.h);
}

/// A plain line is offered without its figure; what only looks like one is not. Two ends that point
/// at one another with nothing lettered for them are those of two neighbours.
bool stands(const Line& line) {
  const ReadingOffer& r = line.reading;
  const bool along = r.kind == OfferedReading::alongX || r.kind == OfferedReading::alongY;
  const bool bare = line.outside && r.candidates.empty();
  return r.witnesses.plain || r.witnesses.unsure ||
         (along && !bare && r.sure >= kSureWithoutFigure);
}

/// A figure belongs to one line: to one that it fits, plainly or at all, else to that beside whose
/// middle it stands.
/// The others that took it for theirs go. And what fits one line does not stand against another's
/// own figure: those look again without it.
void settleOwners(std::vector<Line>& lines, const LookedAt& seen, Unit unit) {
  const auto rank = [](const Line& l) {
    const Witnesses& w = l.reading.witnesses;
    return std::tuple(!w.ready(), !w.scale, l.far, -l.reading.sure);
  };
  for (int round = 0; round < kRounds; ++round) {
    std::vector<bool> again(lines.size(), false), gone(lines.size(), false);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (gone[i] || lines[i].figure.w == 0 || !stands(lines[i])) continue;
      for (std::size_t k = 0; k < lines.size(); ++k) {
        Line& other = lines[k];
        if (k == i || gone[k]) continue;
        if (shareFigure(lines[i].figure, other.figure)) {
          if (std::tuple(rank(lines[i]), i) < std::tuple(rank(other), k)) gone[k] = true;
        } else if (lines[i].reading.witnesses.ready() && !other.reading.witnesses.ready()) {
          const auto taken = [&](const NearFigure& n) {
            return shareFigure(n.reads->box, lines[i].figure);
          };
          if (std::erase_if(other.near, taken) > 0) again[k] = true;
        }
      }
    }
    std::size_t at = 0;
    std::erase_if(lines, [&](const Line&) { return gone[at++]; });
    at = 0;
    std::erase_if(again, [&](bool) { return gone[at++]; });
    if (std::none_of(again.begin(), again.end(), [](bool b) { return b; })) return;
    for (std::size_t k = 0; k < lines.size(); ++k) {
      if (again[k]) read(lines[k], seen, unit);
    }
  }
}

/// A head belongs to one line. What has no figure goes where a line that has one, drawn the other
/// way, ends on its end: it is the line that carries that end out.
void dropCarriers(std::vector<Line>& lines, double near) {
  const auto reads = [](const Line& l) {
    return l.reading.witnesses.plain || l.reading.witnesses.unsure;
  };
  const auto meet = [&](const ReadingOffer& a, const ReadingOffer& b) {
    for (const PlanePoint p : {a.from, a.to}) {
      for (const PlanePoint q : {b.from, b.to}) {
        if (std::hypot(p.x - q.x, p.y - q.y) < near) return true;
      }
    }
    return false;
  };
  std::vector<bool> gone;
  for (const Line& l : lines) {
    gone.push_back(!reads(l) && std::any_of(lines.begin(), lines.end(), [&](const Line& o) {
      return o.reading.kind != l.reading.kind && reads(o) && meet(l.reading, o.reading);
    }));
  }
  std::size_t at = 0;
  std::erase_if(lines, [&](const Line&) { return gone[at++]; });
}

/// Inches of the face that a drawn distance strays by.
double sigma(const LookedAt& seen) {
  return kSigma * seen.inch / seen.squared.frame.perInch + kPicturing;
}

/// The view that a line is of: the one that the lines which carry its ends out come from. Where
/// none does, or from two views, the nearest.
int viewOf(const Span& s, bool plumb, const std::vector<Stroke>& carriers, double inch,
           const Outlines& outlines) {
  const auto at = [&](double along, double across) {
    return plumb ? viewAt(outlines, across, along) : viewAt(outlines, along, across);
  };
  std::set<int> from;
  for (const double end : {s.x1, s.x2}) {
    const Stroke* longest = nullptr;
    for (const Stroke& c : carriers) {
      const bool here = std::abs(c.yAt(s.y) - end) < kOnCarrier * inch &&
                        c.x0 < s.y + kPastCarrier * inch && c.x1 > s.y - kPastCarrier * inch;
      if (here && (longest == nullptr || c.length() > longest->length())) longest = &c;
    }
    if (longest == nullptr) continue;
    from.insert(at(end, s.y - longest->x0 > longest->x1 - s.y ? longest->x0 : longest->x1));
  }
  return from.size() == 1 ? *from.begin() : at((s.x1 + s.x2) / 2, s.y);
}

Line lineOf(const Span& s, bool plumb, const LookedAt& seen, FigureShelf& shelf,
            const Options& options) {
  const Frame& frame = seen.squared.frame;
  Line line;
  ReadingOffer& r = line.reading;
  r.kind = plumb ? OfferedReading::alongY : OfferedReading::alongX;
  const auto at = [&](double along) {
    return plumb ? frame.inches(s.y, along) : frame.inches(along, s.y);
  };
  r.from = plumb ? at(s.x2) : at(s.x1);
  r.to = plumb ? at(s.x1) : at(s.x2);
  r.sure = s.sure;
  line.drawn = {(s.x2 - s.x1) / frame.perInch, sigma(seen)};
  const double near = 0.03 * seen.inch / frame.perInch;
  const double from = plumb ? r.from.y : r.from.x, to = plumb ? r.to.y : r.to.x;
  line.closing = closing(options.confirmed, r.kind, from, to, near);
  line.near = shelf.near(plumb, s.x1, s.x2, s.y, !s.outside);
  line.outside = s.outside;
  line.x0 = plumb ? s.y : s.x1, line.x1 = plumb ? s.y : s.x2;
  line.y0 = plumb ? s.x1 : s.y, line.y1 = plumb ? s.x2 : s.y;
  return line;
}

Line centreLineOf(const CentreLine& c, const std::vector<Circle>& holes, const LookedAt& seen,
                  FigureShelf& shelf) {
  const Frame& frame = seen.squared.frame;
  const Circle &a = holes[c.from], &b = holes[c.to];
  Line line;
  ReadingOffer& r = line.reading;
  r.kind = OfferedReading::centres;
  r.from = frame.inches(a.x, a.y);
  r.to = frame.inches(b.x, b.y);
  r.sure = c.sure;
  line.drawn = {std::hypot(b.x - a.x, b.y - a.y) / frame.perInch, sigma(seen)};
  line.near = shelf.round(c.figure.x, c.figure.y, 0.2 * seen.inch);
  line.x0 = a.x, line.x1 = b.x;
  line.y0 = std::min(a.y, b.y), line.y1 = std::max(a.y, b.y);
  return line;
}

Line angleLineOf(const AngleArc& arc, const LookedAt& seen, FigureShelf& shelf) {
  const Frame& frame = seen.squared.frame;
  Line line;
  ReadingOffer& r = line.reading;
  r.kind = OfferedReading::angle;
  r.from = frame.inches(arc.corner.x, arc.corner.y);
  r.to = frame.inches(arc.to.x, arc.to.y);
  r.sure = arc.sure;
  const double reach = std::hypot(arc.to.x - arc.corner.x, arc.to.y - arc.corner.y);
  line.drawn = {std::abs(arc.degrees),
                std::atan(2 * kSigma * seen.inch / reach) * 180 / std::numbers::pi};
  line.near = shelf.round(arc.figure.x, arc.figure.y, 0.05 * seen.inch);
  line.x0 = arc.corner.x, line.x1 = std::max(arc.corner.x + arc.radius, arc.to.x);
  line.y0 = std::min(arc.corner.y, arc.to.y), line.y1 = std::max(arc.corner.y, arc.to.y);
  return line;
}

}  // namespace

/// A box of the raster as one of the picture that holds it.
PictureBox onPicture(const Homography& toPicture, double x0, double y0, double x1, double y1) {
  double left = 1e18, top = 1e18, right = -1e18, low = -1e18;
  for (const double x : {x0, x1}) {
    for (const double y : {y0, y1}) {
      const PlanePoint p = toPicture.map({x, y});
      left = std::min(left, p.x);
      right = std::max(right, p.x);
      top = std::min(top, p.y);
      low = std::max(low, p.y);
    }
  }
  return {left, top, right - left, low - top};
}

std::vector<ReadingOffer> dimensionLines(const LookedAt& seen, const Outlines& outlines,
                                         const std::vector<Circle>& holes, const Options& options,
                                         const Nets& nets, const Stop& stop) {
  FigureShelf shelf(seen.whole, seen.bare, seen.inch, options.unit, nets.glyphs);
  std::vector<Line> lines;
  for (const bool plumb : {false, true}) {
    const View& view = plumb ? seen.plumb : seen.level;
    std::vector<End> ends = placesOfEnds(view, stop);
    judge(view, nets.ends, ends, stop);
    std::vector<Stroke> carriers;
    std::transform(view.plumbs.begin(), view.plumbs.end(), std::back_inserter(carriers), through);
    for (const Span& s :
         spansOf(view, ends, letteredAlong(seen.bare, seen.inch, plumb), kLeastOdds, stop)) {
      if (stop.asked()) return {};
      lines.push_back(lineOf(s, plumb, seen, shelf, options));
      lines.back().reading.view = viewOf(s, plumb, carriers, seen.inch, outlines);
    }
  }
  for (const CentreLine& c : centreLinesOf(holes, seen.level.cover, seen.whole, seen.inch, stop))
    lines.push_back(centreLineOf(c, holes, seen, shelf));
  for (const AngleArc& arc :
       angleArcsOf(outlines, holes, seen.level.cover, seen.whole, seen.bare, seen.inch, stop))
    lines.push_back(angleLineOf(arc, seen, shelf));
  for (Line& line : lines) {
    if (stop.asked()) return {};
    read(line, seen, options.unit);
  }
  settleOwners(lines, seen, options.unit);
  dropCarriers(lines, 0.04 * seen.inch / seen.squared.frame.perInch);
  std::vector<ReadingOffer> out;
  for (Line& line : lines) {
    if (stands(line)) out.push_back(std::move(line.reading));
  }
  return out;
}

}  // namespace inchwright::seen
