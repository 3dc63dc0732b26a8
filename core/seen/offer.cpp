#include "core/seen/offer.h"

#include <cmath>
#include <numbers>

#include "core/seen/angles.h"
#include "core/seen/drawn_features.h"
#include "core/seen/looked_at.h"
#include "core/seen/notes.h"
#include "core/seen/shapes.h"
#include "core/seen/slanted.h"
#include "core/seen/spans.h"
#include "core/seen/weigh.h"

namespace inchwright::seen {
namespace {

constexpr double kLeastOdds = 0.5;  // odds of an end
constexpr double kSureWithoutFigure = 0.95;
constexpr double kSigma = 0.010;       // of a drawn distance, inches of the sheet
constexpr double kPicturing = 0.0005;  // and of squaring up, inches of the face
constexpr double kSmallest = 9;        // capitals that are read well, pixels of the picture

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

/// A reading with what tells whose a figure is.
struct Line {
  ReadingOffer reading;
  Box figure;
  double far = 0;
};

/// A figure belongs to one line: to that beside whose middle it stands. The others go.
void keepOwners(std::vector<Line>& lines) {
  std::vector<bool> gone(lines.size(), false);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const Box &a = lines[i].figure, &b = lines[k].figure;
      const int w = std::min(a.right(), b.right()) - std::max(a.x, b.x);
      const int h = std::min(a.bottom(), b.bottom()) - std::max(a.y, b.y);
      if (w <= 0 || h <= 0 || 2.0 * w * h < std::min(a.w * a.h, b.w * b.h)) continue;
      const bool second = std::pair(lines[i].far, -lines[i].reading.sure) <
                          std::pair(lines[k].far, -lines[k].reading.sure);
      gone[second ? k : i] = true;
    }
  }
  std::size_t at = 0;
  std::erase_if(lines, [&](const Line&) { return gone[at++]; });
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
  const double sheet = frame.perInch / seen.inch;  // inches of the sheet to one of the face
  const Drawn drawn{(s.x2 - s.x1) / frame.perInch, kSigma / sheet + kPicturing};
  const double near = 0.03 / sheet;
  const double from = plumb ? r.from.y : r.from.x, to = plumb ? r.to.y : r.to.x;
  const Weighed w = weigh(shelf.near(plumb, s.x1, s.x2, s.y, !s.outside), drawn, false,
                          options.unit, closing(options.confirmed, r.kind, from, to, near));
  r.candidates = w.candidates;
  r.witnesses = w.witnesses;
  double x0 = plumb ? s.y : s.x1, x1 = plumb ? s.y : s.x2, y0 = plumb ? s.x1 : s.y,
         y1 = plumb ? s.x2 : s.y;
  if (!w.candidates.empty()) {
    line.figure = w.box;
    line.far = w.far;
    r.figure = onPicture(seen.squared.toPicture, w.box.x, w.box.y, w.box.right(), w.box.bottom());
    x0 = std::min<double>(x0, w.box.x), x1 = std::max<double>(x1, w.box.right());
    y0 = std::min<double>(y0, w.box.y), y1 = std::max<double>(y1, w.box.bottom());
  }
  const double margin = 0.2 * seen.inch;
  r.cut = onPicture(seen.squared.toPicture, x0 - margin, y0 - margin, x1 + margin, y1 + margin);
  return line;
}

bool hasDimension(const FeatureOffer& edge, const std::vector<ReadingOffer>& readings,
                  double near) {
  return std::any_of(readings.begin(), readings.end(), [&](const ReadingOffer& r) {
    const bool x = r.kind == OfferedReading::alongX;
    if (r.view != edge.view || x != edge.alongX || (!x && r.kind != OfferedReading::alongY))
      return false;
    const double at = x ? edge.at.x : edge.at.y;
    return std::abs((x ? r.from.x : r.from.y) - at) < near ||
           std::abs((x ? r.to.x : r.to.y) - at) < near;
  });
}

/// An edge is taken with one Enter only where a dimension ends on it: the frame of a sheet has
/// none. What lies apart from the face and has no dimension on it at all may be the paper's own
/// border, and is not offered. And nothing is taken so where no figure can be read: that may be a
/// picture of anything.
void heedDimensions(const std::vector<ReadingOffer>& readings, double near,
                    std::vector<FeatureOffer>& features) {
  const bool print = std::any_of(readings.begin(), readings.end(),
                                 [](const ReadingOffer& r) { return r.witnesses.ready(); });
  std::vector<int> views{0};
  for (FeatureOffer& f : features) {
    f.ready = f.ready && print;
    if (f.kind != OfferedFeature::edge) continue;
    const bool has = hasDimension(f, readings, near);
    f.ready = f.ready && has;
    if (has) views.push_back(f.view);
  }
  std::erase_if(features, [&](const FeatureOffer& f) {
    return std::find(views.begin(), views.end(), f.view) == views.end();
  });
}

/// Slots and rings. A slot's end is no hole.
void addShapes(const LookedAt& seen, const Outlines& outlines, const std::vector<Circle>& circles,
               const std::vector<Circle>& holes, std::vector<FeatureOffer>& features) {
  const Frame& frame = seen.squared.frame;
  for (const bool plumb : {false, true}) {
    for (FeatureOffer& f :
         slotsOf(plumb ? seen.plumb : seen.level, plumb, outlines, circles, frame)) {
      std::erase_if(features, [&](const FeatureOffer& h) {
        return h.kind == OfferedFeature::hole &&
               std::min(std::hypot(h.at.x - f.from.x, h.at.y - f.from.y),
                        std::hypot(h.at.x - f.to.x, h.at.y - f.to.y)) < f.drawnRadius;
      });
      features.push_back(f);
    }
  }
  for (FeatureOffer& f : ringsOf(holes, seen.level.cover, outlines, frame, seen.inch))
    features.push_back(f);
}

/// Gives holes the sizes that notes with leaders say.
void sizeByNotes(const LookedAt& seen, const std::vector<Circle>& circles, const Options& options,
                 const Net& net, std::vector<FeatureOffer>& features) {
  const Frame& frame = seen.squared.frame;
  const double sheet = frame.perInch / seen.inch;
  const auto rows = noteRows(seen.whole, seen.inch, options.unit, net);
  for (const Note& note : notesOf(rows, circles, seen.level.cover, seen.inch)) {
    if (note.circle < 0) continue;
    const Circle& c = circles[note.circle];
    Reads reads{note.box, false, false, note.size};
    const Weighed w =
        weigh({{&reads, 0}}, {2 * c.radius / frame.perInch, kSigma / sheet + kPicturing}, false,
              options.unit, {});
    if (w.candidates.empty()) continue;
    const PlanePoint at = frame.inches(c.x, c.y);
    for (FeatureOffer& f : features) {
      if (f.kind != OfferedFeature::hole || f.at != at || !f.size.empty()) continue;
      f.size = w.candidates.front().text;
      f.sizeTicks = w.candidates.front().ticks;
      f.sizeWitnesses = w.witnesses;
      f.note = note.word;
      f.noted = onPicture(seen.squared.toPicture, note.box.x, note.box.y, note.box.right(),
                          note.box.bottom());
      f.count = note.count;
    }
  }
}

Line centreLineOf(const CentreLine& c, const std::vector<Circle>& holes, const LookedAt& seen,
                  FigureShelf& shelf, const Options& options) {
  const Frame& frame = seen.squared.frame;
  const Circle &a = holes[c.from], &b = holes[c.to];
  Line line;
  ReadingOffer& r = line.reading;
  r.kind = OfferedReading::centres;
  r.from = frame.inches(a.x, a.y);
  r.to = frame.inches(b.x, b.y);
  r.sure = c.sure;
  const double sheet = frame.perInch / seen.inch;
  const Drawn drawn{std::hypot(b.x - a.x, b.y - a.y) / frame.perInch, kSigma / sheet + kPicturing};
  const Weighed w =
      weigh(shelf.round(c.figure.x, c.figure.y, 0.2 * seen.inch), drawn, false, options.unit, {});
  r.candidates = w.candidates;
  r.witnesses = w.witnesses;
  line.figure = w.box;
  line.far = w.far;
  r.figure = onPicture(seen.squared.toPicture, w.box.x, w.box.y, w.box.right(), w.box.bottom());
  const double m = 0.2 * seen.inch;
  r.cut = onPicture(seen.squared.toPicture, a.x - m, std::min(a.y, b.y) - m, b.x + m,
                    std::max(a.y, b.y) + m);
  return line;
}

Line angleLineOf(const AngleArc& arc, const LookedAt& seen, FigureShelf& shelf,
                 const Options& options) {
  const Frame& frame = seen.squared.frame;
  Line line;
  ReadingOffer& r = line.reading;
  r.kind = OfferedReading::angle;
  r.from = frame.inches(arc.corner.x, arc.corner.y);
  r.to = frame.inches(arc.to.x, arc.to.y);
  r.sure = arc.sure;
  const double reach = std::hypot(arc.to.x - arc.corner.x, arc.to.y - arc.corner.y);
  const Drawn drawn{std::abs(arc.degrees),
                    std::atan(2 * kSigma * seen.inch / reach) * 180 / std::numbers::pi};
  const Weighed w = weigh(shelf.round(arc.figure.x, arc.figure.y, 0.05 * seen.inch), drawn, true,
                          options.unit, {});
  r.candidates = w.candidates;
  r.witnesses = w.witnesses;
  line.figure = w.box;
  line.far = w.far;
  r.figure = onPicture(seen.squared.toPicture, w.box.x, w.box.y, w.box.right(), w.box.bottom());
  const double m = 0.2 * seen.inch, x = arc.corner.x + arc.radius;
  r.cut = onPicture(seen.squared.toPicture, arc.corner.x - m, std::min(arc.corner.y, arc.to.y) - m,
                    std::max(x, arc.to.x) + m, std::max(arc.corner.y, arc.to.y) + m);
  return line;
}

}  // namespace

std::string Witnesses::letters() const {
  std::string out = plain ? "G" : unsure ? "g" : "";
  if (scale) out += out.empty() ? "S" : " S";
  if (closes) out += out.empty() ? "C" : " C";
  return out;
}

Result<Offers> offer(const GreyPicture& picture, const Homography& pixelToInches,
                     const Options& options) {
  const Stop stop(options.stop);
  const Nets& nets = options.nets != nullptr ? *options.nets : builtInNets();
  Result<LookedAt> looked = lookAt(picture, pixelToInches, options.capitals, nets, stop);
  if (!looked) return looked.error();
  const LookedAt& seen = *looked;
  const auto stopped = [] { return Error{ErrorCode::notFound, "stopped"}; };
  Offers out;
  out.lettering = seen.capitals * densityOf(picture, pixelToInches) / seen.squared.frame.perInch;
  out.tooCoarse = seen.capitals > 0 && out.lettering < kSmallest;
  const std::vector<Circle> circles = circlesOf(seen.level.cover, seen.inch, stop);
  if (stop.asked()) return stopped();
  const Outlines outlines = outlinesOf(seen.level, seen.plumb, circles, seen.squared.frame);
  out.features = featuresOf(outlines, circles, seen.squared.frame, seen.inch);
  if (stop.asked()) return stopped();
  std::vector<Circle> holes;
  std::copy_if(circles.begin(), circles.end(), std::back_inserter(holes),
               [&](const Circle& c) { return isHole(c, seen.inch); });
  addShapes(seen, outlines, circles, holes, out.features);
  sizeByNotes(seen, holes, options, nets.glyphs, out.features);
  if (stop.asked()) return stopped();
  FigureShelf shelf(seen.whole, seen.bare, seen.inch, options.unit, nets.glyphs);
  std::vector<Line> lines;
  for (const bool plumb : {false, true}) {
    const View& view = plumb ? seen.plumb : seen.level;
    std::vector<End> ends = placesOfEnds(view);
    judge(view, nets.ends, ends, stop);
    for (const Span& s :
         spansOf(view, ends, letteredAlong(seen.bare, seen.inch, plumb), kLeastOdds)) {
      if (stop.asked()) return stopped();
      Line line = lineOf(s, plumb, seen, shelf, options);
      const Witnesses& w = line.reading.witnesses;
      if (!w.plain && !w.unsure && s.sure < kSureWithoutFigure) continue;
      const double along = (s.x1 + s.x2) / 2;
      line.reading.view = viewAt(outlines, plumb ? s.y : along, plumb ? along : s.y);
      lines.push_back(std::move(line));
    }
  }
  for (const CentreLine& c : centreLinesOf(holes, seen.level.cover, seen.whole, seen.inch, stop)) {
    Line line = centreLineOf(c, holes, seen, shelf, options);
    if (line.reading.witnesses.plain || line.reading.witnesses.unsure)
      lines.push_back(std::move(line));
  }
  for (const AngleArc& arc :
       angleArcsOf(outlines, holes, seen.level.cover, seen.whole, seen.inch, stop)) {
    Line line = angleLineOf(arc, seen, shelf, options);
    if (line.reading.witnesses.plain || line.reading.witnesses.unsure)
      lines.push_back(std::move(line));
  }
  keepOwners(lines);
  for (Line& line : lines) out.readings.push_back(std::move(line.reading));
  heedDimensions(out.readings, 0.03 * seen.inch / seen.squared.frame.perInch, out.features);
  return stop.asked() ? Result<Offers>(stopped()) : Result<Offers>(std::move(out));
}

}  // namespace inchwright::seen
