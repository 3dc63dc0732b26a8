#include "core/sheet/held_drawing.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/sheet/style.h"
#include "core/sheet/symbols.h"

namespace inchwright {
namespace {

const Stroke kHidden{Ink::black, 0.35, {2.2, 1.2}};
const Stroke kKeepClear{Ink::black, 0.35, {4, 1, 0.8, 1}};

std::string nameOf(const HeldThing& thing) {
  const std::string number = " " + std::to_string(thing.which + 1);
  switch (thing.code) {
    case FindingCode::parallel:
      return "PARALLEL" + number;
    case FindingCode::clamp:
      return "CLAMP" + number;
    default:
      return "KEEP CLEAR" + number;
  }
}

/// In the middle of the box or further along it, upright in one that is higher than wide.
void nameThing(Sketch& sketch, const PaperBox& box, const std::string& name, double hand,
               LabelPlacer& placer) {
  const bool upright = box.height() > box.width();
  for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85}) {
    TextItem text;
    text.text = name;
    text.height = 2.1 * hand;
    text.align = TextAlign::centre;
    text.turn = upright ? 90 : 0;
    text.at =
        upright
            ? PlanePoint{(box.left + box.right + text.height) / 2, box.top + box.height() * share}
            : PlanePoint{box.left + box.width() * share, (box.top + box.bottom + text.height) / 2};
    const PaperBox room = boundsOf(text).grownBy(0.3);
    if (!placer.isFree(room)) continue;
    sketch.fill(room, Ink::white);
    sketch.add(text);
    placer.keepOff(room);
    return;
  }
}

}  // namespace

PaperBox onPaper(const HeldThing& thing, const PartOnPaper& frame) {
  const PlanePoint a = frame.at(thing.low), b = frame.at(thing.high);
  const PaperBox& region = frame.region;
  const auto x = [&](double at) { return std::clamp(at, region.left, region.right); };
  const auto y = [&](double at) { return std::clamp(at, region.top, region.bottom); };
  return {x(std::min(a.x, b.x)), y(std::min(a.y, b.y)), x(std::max(a.x, b.x)),
          y(std::max(a.y, b.y))};
}

std::optional<TargetKind> targetOf(const HeldThing& thing) {
  switch (thing.code) {
    case FindingCode::parallel:
      return TargetKind::parallel;
    case FindingCode::clamp:
      return TargetKind::clamp;
    case FindingCode::clearOf:
      return TargetKind::clearOf;
    default:
      return std::nullopt;
  }
}

void drawHeld(Sketch& sketch, const DrawnHolding& held, const PartOnPaper& frame, double hand,
              LabelPlacer& placer) {
  for (const HeldThing& thing : held.things) {
    if (thing.code == FindingCode::jaw) continue;
    const PaperBox box = onPaper(thing, frame);
    if (thing.met) drawHatchedBox(sketch, box, 1.4, kHairline);
    Stroke stroke = thing.code == FindingCode::parallel  ? kHidden
                    : thing.code == FindingCode::clearOf ? kKeepClear
                                                         : Stroke{Ink::black, kMedium, {}};
    if (thing.met) stroke.width = kMedium;
    sketch.box(box, stroke);
    nameThing(sketch, box, nameOf(thing), hand, placer);
  }
}

void markFound(Sketch& sketch, PlanePoint centre, double radius, double hand, LabelPlacer& placer) {
  const double size = 3.4 * hand, off = (radius + size * 0.75) * 0.7072;
  const std::array<PlanePoint, 4> spots{{{centre.x + off, centre.y - off},
                                         {centre.x - off, centre.y - off},
                                         {centre.x + off, centre.y + off},
                                         {centre.x - off, centre.y + off}}};
  const auto boxAt = [&](const PlanePoint& at) {
    return PaperBox{at.x - size / 2, at.y - size / 2, at.x + size / 2, at.y + size / 2};
  };
  const auto free = std::find_if(spots.begin(), spots.end(),
                                 [&](const PlanePoint& at) { return placer.isFree(boxAt(at)); });
  const PlanePoint at = free == spots.end() ? spots[0] : *free;
  sketch.fill(boxAt(at), Ink::white);
  drawMindMark(sketch, at, size);
  placer.keepOff(boxAt(at));
}

}  // namespace inchwright
