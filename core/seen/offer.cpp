#include "core/seen/offer.h"

#include <cmath>

#include "core/seen/dimension_lines.h"
#include "core/seen/notes.h"
#include "core/seen/rows.h"
#include "core/seen/shapes.h"
#include "core/seen/weigh.h"

namespace inchwright::seen {
namespace {

constexpr double kSmallest = 9;  // capitals that are read well, pixels of the picture

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
/// none. What has none and is not drawn plainly is no edge to work from, but a centre line or
/// dashes, and what lies apart from the face and has no dimension on it at all may be the paper's
/// own border: neither is offered. And nothing is taken so where no figure can be read: that may be
/// a picture of anything.
void heedDimensions(const std::vector<ReadingOffer>& readings, double near,
                    std::vector<FeatureOffer>& features) {
  const bool print = std::any_of(readings.begin(), readings.end(),
                                 [](const ReadingOffer& r) { return r.witnesses.ready(); });
  std::vector<int> views{0};
  std::erase_if(features, [&](FeatureOffer& f) {
    const bool plain = f.ready;
    f.ready = f.ready && print;
    if (f.kind != OfferedFeature::edge) return false;
    const bool has = hasDimension(f, readings, near);
    f.ready = f.ready && has;
    if (has) views.push_back(f.view);
    return !has && !plain;
  });
  std::erase_if(features, [&](const FeatureOffer& f) {
    return std::find(views.begin(), views.end(), f.view) == views.end();
  });
}

/// How far a place is from the line between a slot's ends.
double offSlot(const FeatureOffer& slot, PlanePoint p) {
  const double x = slot.to.x - slot.from.x, y = slot.to.y - slot.from.y;
  const double t =
      std::clamp(((p.x - slot.from.x) * x + (p.y - slot.from.y) * y) / (x * x + y * y), 0.0, 1.0);
  return std::hypot(p.x - slot.from.x - t * x, p.y - slot.from.y - t * y);
}

/// Slots and rings. A slot's end is no hole and no arc, nor are its sides edges.
void addShapes(const LookedAt& seen, const Outlines& outlines, const std::vector<Circle>& circles,
               const std::vector<Circle>& holes, const Stop& stop,
               std::vector<FeatureOffer>& features) {
  const Frame& frame = seen.squared.frame;
  for (const bool plumb : {false, true}) {
    for (FeatureOffer& f :
         slotsOf(plumb ? seen.plumb : seen.level, plumb, outlines, circles, frame, stop)) {
      std::erase_if(features, [&](const FeatureOffer& o) {
        const double past = f.drawnRadius + 0.02 * seen.inch / frame.perInch;
        return (o.kind == OfferedFeature::hole &&
                std::min(std::hypot(o.at.x - f.from.x, o.at.y - f.from.y),
                         std::hypot(o.at.x - f.to.x, o.at.y - f.to.y)) < f.drawnRadius) ||
               ((o.kind == OfferedFeature::edge || o.kind == OfferedFeature::arc) &&
                std::max(offSlot(f, o.from), offSlot(f, o.to)) < past);
      });
      features.push_back(f);
    }
  }
  for (FeatureOffer& f : ringsOf(holes, seen.level.cover, outlines, frame, seen.inch, stop))
    features.push_back(f);
}

/// What a note's figures say of something drawn so large, in inches of the face.
Weighed weighNote(const std::vector<FigureRead>& figures, const Box& box, double drawn,
                  double sheet, Unit unit) {
  Reads reads{box, false, false, figures};
  return weigh({{&reads, 0, false}}, {drawn, kSigma / sheet + kPicturing}, false, unit, {});
}

/// Gives the ring that a noted hole lies on the note, where it speaks of as many holes as the ring
/// has and of the circle they are on.
void sizeRing(const Note& note, const FeatureOffer& hole, double sheet, Unit unit,
              std::vector<FeatureOffer>& features) {
  for (FeatureOffer& f : features) {
    const double away = std::hypot(f.at.x - hole.at.x, f.at.y - hole.at.y);
    if (f.kind != OfferedFeature::ring || f.count != note.count || !f.size.empty() ||
        std::abs(away - f.drawnRadius) > 0.04 / sheet)
      continue;
    const Weighed pitch = weighNote(note.pcd, note.box, 2 * f.drawnRadius, sheet, unit);
    if (pitch.candidates.empty()) continue;
    f.pcd = pitch.candidates.front().text;
    f.pcdWitnesses = pitch.witnesses;
    f.takeSize(hole);
  }
}

/// Gives holes, rounds and rings the sizes that notes with leaders say.
void sizeByNotes(const LookedAt& seen, const std::vector<Circle>& circles,
                 const std::vector<Rounding>& rounds, const Options& options, const Net& net,
                 const Stop& stop, std::vector<FeatureOffer>& features) {
  const Frame& frame = seen.squared.frame;
  const double sheet = frame.perInch / seen.inch;
  const auto say = [&](const Note& note, OfferedFeature kind, PlanePoint at, double drawn) {
    const Weighed w = weighNote(note.size, note.box, drawn / frame.perInch, sheet, options.unit);
    if (w.candidates.empty()) return;
    for (FeatureOffer& f : features) {
      if (f.kind != kind || f.at != at || !f.size.empty()) continue;
      f.size = w.candidates.front().text;
      f.sizeTicks = w.candidates.front().ticks;
      f.sizeWitnesses = w.witnesses;
      f.note = note.word;
      if (note.word == "R") f.size = "R" + f.size, f.note.clear();
      f.noted = onPicture(seen.squared.toPicture, note.box.x, note.box.y, note.box.right(),
                          note.box.bottom());
      f.count = note.count;
      if (!note.pcd.empty()) return sizeRing(note, FeatureOffer(f), sheet, options.unit, features);
    }
  };
  const auto rows = noteRows(seen.whole, seen.inch, options.unit, net, stop);
  for (const Note& note : undisputed(notesOf(rows, circles, seen.level.cover, seen.inch, stop))) {
    if (note.of < 0) continue;
    const Circle& c = circles[note.of];
    say(note, OfferedFeature::hole, frame.inches(c.x, c.y), 2 * c.radius);
  }
  for (const Note& note : undisputed(radiiOf(rows, rounds, seen.level.cover, seen.inch, stop))) {
    if (note.of < 0) continue;
    const Rounding& r = rounds[note.of];
    say(note, OfferedFeature::round, frame.inches(r.centre.x, r.centre.y), r.radius);
  }
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
  const Outlines outlines = outlinesOf(seen.level, seen.plumb, circles, seen.squared.frame, stop);
  out.features = featuresOf(outlines, circles, seen.squared.frame, seen.inch);
  if (stop.asked()) return stopped();
  std::vector<Circle> holes;
  std::copy_if(circles.begin(), circles.end(), std::back_inserter(holes),
               [&](const Circle& c) { return isHole(c, seen.inch); });
  addShapes(seen, outlines, circles, holes, stop, out.features);
  sizeByNotes(seen, holes, outlines.rounds, options, nets.glyphs, stop, out.features);
  for (FeatureOffer& row :
       rowsOf(out.features, seen.level.cover, seen.squared.frame, seen.inch, stop))
    out.features.push_back(std::move(row));
  if (stop.asked()) return stopped();
  out.readings = dimensionLines(seen, outlines, holes, options, nets, stop);
  const double near = 0.03 * seen.inch / seen.squared.frame.perInch;
  settleRows(out.readings, near, out.features);
  heedDimensions(out.readings, near, out.features);
  return stop.asked() ? Result<Offers>(stopped()) : Result<Offers>(std::move(out));
}

}  // namespace inchwright::seen
