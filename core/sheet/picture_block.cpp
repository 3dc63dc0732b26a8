#include "core/sheet/picture_block.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/say/figure_words.h"
#include "core/sheet/held_drawing.h"
#include "core/sheet/label_placer.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/part_drawing.h"
#include "core/sheet/part_on_paper.h"
#include "core/sheet/symbols.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

constexpr std::size_t kFewNames = 60;  // so many are placed at once
constexpr double kJawDepth = 4.6;
constexpr double kStopDepth = 3.2;
constexpr std::array kShares{0.25, 0.75, 0.5, 0.1, 0.9, 0.38, 0.62};

TableSide acrossFrom(TableSide side) {
  switch (side) {
    case TableSide::left:
      return TableSide::right;
    case TableSide::right:
      return TableSide::left;
    case TableSide::far:
      return TableSide::near;
    case TableSide::near:
      break;
  }
  return TableSide::far;
}

/// A side of the work on paper: its ends, and the way out.
struct SideLine {
  PlanePoint from;
  PlanePoint to;
  double outX = 0;
  double outY = 0;
};

SideLine sideLine(TableSide side, const PaperBox& box) {
  switch (side) {
    case TableSide::left:
      return {{box.left, box.bottom}, {box.left, box.top}, -1, 0};
    case TableSide::right:
      return {{box.right, box.bottom}, {box.right, box.top}, 1, 0};
    case TableSide::far:
      return {{box.left, box.top}, {box.right, box.top}, 0, -1};
    case TableSide::near:
      break;
  }
  return {{box.left, box.bottom}, {box.right, box.bottom}, 0, 1};
}

/// The box from `start` to `end` along a side (mm from its first end), `depth` deep outwards from
/// `off`.
PaperBox boxAlong(const SideLine& side, double start, double end, double off, double depth) {
  const double length = std::hypot(side.to.x - side.from.x, side.to.y - side.from.y);
  const double alongX = length > 0 ? (side.to.x - side.from.x) / length : -side.outY;
  const double alongY = length > 0 ? (side.to.y - side.from.y) / length : side.outX;
  const PlanePoint a{side.from.x + alongX * start + side.outX * off,
                     side.from.y + alongY * start + side.outY * off};
  const PlanePoint b{side.from.x + alongX * end + side.outX * (off + depth),
                     side.from.y + alongY * end + side.outY * (off + depth)};
  return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

class PictureDrawer {
 public:
  PictureDrawer(const SheetContent& content, const PartOnPaper& frame)
      : content_(content), picture_(*content.picture), frame_(frame), placer_(frame.region) {}

  Sketch draw();
  int namesLeftOut() const { return namesLeftOut_; }

 private:
  void drawAxes();
  struct AxisLine {
    PlanePoint tail;
    PlanePoint tip;
  };
  AxisLine axisLine(MachineAxis axis) const;
  void drawAxis(MachineAxis axis);
  void drawJaw();
  void addTarget(const PaperBox& box, TargetKind kind);
  void drawStop();
  /// The moving jaw, parallels, clamps, and a mark beside each place of which something was found.
  void drawHolding();
  void nameHoles();
  void nameEdges();
  /// What can be pointed at in the picture: the holes last, as they lie on top.
  void markTargets();
  /// Inside `inner` when it fits there, else outside `outer`.
  void name(const Id& id, bool disputed, PlanePoint centre, double inner, double outer);
  /// Sets a word in the middle of a box, upright beside a standing one, where it is free.
  std::optional<TextItem> wordIn(const PaperBox& box, bool upright, std::string_view word) const;

  const SheetContent& content_;
  const DrawnPart& picture_;
  const PartOnPaper& frame_;
  LabelPlacer placer_;
  Sketch sketch_;
  int namesLeftOut_ = 0;
};

Sketch PictureDrawer::draw() {
  drawWork(sketch_, picture_, frame_, placer_);
  drawAxes();
  if (picture_.jaw) drawJaw();
  if (picture_.stop) drawStop();
  if (content_.held) drawHolding();
  nameHoles();
  nameEdges();
  markTargets();
  return std::move(sketch_);
}

void PictureDrawer::markTargets() {
  if (content_.held) {
    for (const HeldThing& thing : content_.held->drawn.things) {
      const std::optional<TargetKind> kind = targetOf(thing);
      if (!kind) continue;
      const PaperBox box = onPaper(thing, frame_);
      const auto way = [&](PlanePoint step) {
        return PlanePoint{step.x * frame_.scale, -step.y * frame_.scale};
      };
      sketch_.target({{},
                      {box.left, box.top},
                      {box.right, box.bottom},
                      0,
                      *kind,
                      thing.which,
                      way(thing.away),
                      way(thing.up)});
    }
  }
  for (const DrawnEdge& edge : picture_.edges) {
    sketch_.target({edge.id, frame_.at(edge.from), frame_.at(edge.to)});
  }
  for (const DrawnSlot& slot : picture_.slots) {
    sketch_.target({slot.id, frame_.at(slot.from), frame_.at(slot.to)});
  }
  for (const DrawnMark& mark : picture_.marks) {
    sketch_.target({mark.id, frame_.at(mark.at), frame_.at(mark.at)});
  }
  for (const DrawnHole& hole : picture_.circles) {
    const PlanePoint centre = frame_.at(hole.centre);
    sketch_.target({hole.id, centre, centre, radiusOnPaper(hole, frame_)});
  }
}

PictureDrawer::AxisLine PictureDrawer::axisLine(MachineAxis axis) const {
  const bool alongX = axis == MachineAxis::x;
  const PaperBox& region = frame_.region;
  const bool right = picture_.xCountsRight;
  const bool away = picture_.yCountsAway;
  if (frame_.zeroInside) {
    // Right through the work, to the edge of the picture.
    const PlanePoint zero = frame_.at(picture_.zero);
    if (alongX) {
      return {{right ? frame_.work.left - 4 : frame_.work.right + 4, zero.y},
              {right ? region.right : region.left, zero.y}};
    }
    return {{zero.x, away ? frame_.work.bottom + 4 : frame_.work.top - 4},
            {zero.x, away ? region.top : region.bottom}};
  }
  // Zero lies elsewhere: two short arrows at the near left corner say the directions only.
  constexpr double kShort = 21;
  const PlanePoint corner{region.left + (right ? 3 : 3 + kShort),
                          region.bottom - (away ? 3 : 3 + kShort)};
  if (alongX) return {corner, {corner.x + (right ? kShort : -kShort), corner.y}};
  return {corner, {corner.x, corner.y + (away ? -kShort : kShort)}};
}

void PictureDrawer::drawAxis(MachineAxis axis) {
  const bool alongX = axis == MachineAxis::x;
  constexpr double kHead = 4.6;
  const auto [tail, tip] = axisLine(axis);
  sketch_.line(tail, tip, {Ink::black, kThin, {5, 1.1, 0.9, 1.1}});
  const double dx = alongX ? (picture_.xCountsRight ? 1 : -1) : 0;
  const double dy = alongX ? 0 : (picture_.yCountsAway ? -1 : 1);
  drawArrowHead(sketch_, tip, dx, dy, kHead);
  placer_.avoid(tail, tip);
  const PaperBox head{std::min(tip.x, tip.x - dx * kHead), std::min(tip.y, tip.y - dy * kHead),
                      std::max(tip.x, tip.x - dx * kHead), std::max(tip.y, tip.y - dy * kHead)};
  placer_.keepOff(head.grownBy(1.8));

  // The name beside the head, on either side of the line; further back when that is taken.
  const Sketch::Look look{content_.style.label(), Typeface::bold};
  const std::string name = alongX ? "X+" : "Y+";
  const double wide = textWidth(name, look.height, look.face);
  for (const double back : {0.0, 6.0, 12.0, 20.0, 30.0}) {
    for (const double side : {1.0, -1.0}) {
      TextItem text{{}, name, look.height, TextAlign::left, look.face};
      if (alongX) {
        const double end = tip.x - dx * back;
        text.at = {dx > 0 ? end - wide : end, side > 0 ? tip.y - 2.6 : tip.y + 2.6 + look.height};
      } else {
        const double end = tip.y - dy * back;
        text.at = {side > 0 ? tip.x + 2.6 : tip.x - 2.6 - wide,
                   dy < 0 ? end + look.height * 1.05 : end - look.height * 0.05};
      }
      const PaperBox box = boundsOf(text);
      if (!placer_.isClear(box)) continue;
      placer_.keepOff(box.grownBy(0.4));
      sketch_.add(text);
      return;
    }
  }
}

void PictureDrawer::drawAxes() {
  drawAxis(MachineAxis::x);
  drawAxis(MachineAxis::y);
  if (!frame_.zeroInside) return;
  const double size = 2.3 * content_.style.hand;
  drawZeroMark(sketch_, frame_.at(picture_.zero), size);
  placer_.keepOff(frame_.at(picture_.zero), size);
}

std::optional<TextItem> PictureDrawer::wordIn(const PaperBox& box, bool upright,
                                              std::string_view word) const {
  TextItem text;
  text.text = std::string(word);
  text.height = 2.3 * content_.style.hand;
  text.face = Typeface::bold;
  text.align = TextAlign::centre;
  const double middleX = (box.left + box.right) / 2;
  const double middleY = (box.top + box.bottom) / 2;
  text.turn = upright ? 90 : 0;
  text.at = upright ? PlanePoint{middleX + text.height / 2, middleY}
                    : PlanePoint{middleX, middleY + text.height / 2};
  if (!placer_.isFree(boundsOf(text).grownBy(0.3))) return std::nullopt;
  return text;
}

void PictureDrawer::drawJaw() {
  const SideLine side = sideLine(*picture_.jaw, frame_.work);
  const bool upright = side.outX != 0;
  const double length = std::hypot(side.to.x - side.from.x, side.to.y - side.from.y);
  const double depth = kJawDepth * content_.style.hand;
  const double over = std::max(5.0, (32.0 * content_.style.hand - length) / 2);
  PaperBox jaw = boxAlong(side, -over, length + over, 0.35, depth);
  if (upright) {
    jaw.top = std::max(jaw.top, frame_.region.top);
    jaw.bottom = std::min(jaw.bottom, frame_.region.bottom);
  } else {
    jaw.left = std::max(jaw.left, frame_.region.left);
    jaw.right = std::min(jaw.right, frame_.region.right);
  }
  drawHatchedBox(sketch_, jaw, 1.1, kThin);
  sketch_.box(jaw, {Ink::black, kMedium, {}});
  const double extent = upright ? jaw.height() : jaw.width();
  const double room = textWidth("FIXED JAW", 2.3 * content_.style.hand, Typeface::bold) + 3;
  for (const double share : {0.5, 0.3, 0.7, 0.2, 0.8}) {
    const double start =
        -over + std::clamp(extent * share - room / 2, 0.0, std::max(0.0, extent - room));
    const PaperBox plate = boxAlong(side, start, start + room, 0.65, depth - 0.6);
    const std::optional<TextItem> word = wordIn(plate, upright, "FIXED JAW");
    if (!word) continue;
    sketch_.fill(plate, Ink::white);
    sketch_.add(*word);
    break;
  }
  placer_.keepOff(jaw.grownBy(0.3));
  addTarget(jaw, TargetKind::fixedJaw);
}

void PictureDrawer::addTarget(const PaperBox& box, TargetKind kind) {
  sketch_.target({{}, {box.left, box.top}, {box.right, box.bottom}, 0, kind});
}

void PictureDrawer::drawStop() {
  const SideLine side = sideLine(*picture_.stop, frame_.work);
  const bool upright = side.outX != 0;
  const double length = std::hypot(side.to.x - side.from.x, side.to.y - side.from.y);
  const double half = 3.5 * content_.style.hand;
  const double off = picture_.stop == picture_.jaw ? kJawDepth * content_.style.hand + 0.8 : 0.35;
  for (const double share : kShares) {
    const double centre = length * share;
    const PaperBox block =
        boxAlong(side, centre - half, centre + half, off, kStopDepth * content_.style.hand);
    const PaperBox beyond =
        boxAlong(side, centre - half * 1.6, centre + half * 1.6,
                 off + kStopDepth * content_.style.hand + 0.5, 3.1 * content_.style.hand);
    const std::optional<TextItem> word = wordIn(beyond, upright, "STOP");
    if (!word || !placer_.isFree(block)) continue;
    sketch_.fill(block);
    addTarget(block, TargetKind::stop);
    sketch_.add(*word);
    placer_.keepOff(block.grownBy(0.3));
    placer_.keepOff(boundsOf(*word).grownBy(0.3));
    return;
  }
  const PaperBox block = boxAlong(side, length / 2 - half, length / 2 + half, off, kStopDepth);
  sketch_.fill(block);
  addTarget(block, TargetKind::stop);
}

void PictureDrawer::drawHolding() {
  const double hand = content_.style.hand;
  const DrawnHolding& held = content_.held->drawn;
  for (const HeldThing& thing : held.things) {
    if (thing.code != FindingCode::jaw) continue;
    const TableSide at = *thing.jaw == Jaw::fixed ? *picture_.jaw : acrossFrom(*picture_.jaw);
    const SideLine side = sideLine(at, frame_.work);
    const PaperBox along = onPaper(thing, frame_);
    PaperBox jaw = boxAlong(side, 0, std::hypot(side.to.x - side.from.x, side.to.y - side.from.y),
                            0.35, 1.6 * hand);
    (side.outX != 0 ? jaw.top : jaw.left) = side.outX != 0 ? along.top : along.left;
    (side.outX != 0 ? jaw.bottom : jaw.right) = side.outX != 0 ? along.bottom : along.right;
    if (*thing.jaw == Jaw::moving) {
      drawHatchedBox(sketch_, jaw, 2.2, kHairline);
      sketch_.box(jaw, {Ink::black, kThin, {}});
      addTarget(jaw, TargetKind::movingJaw);
      placer_.keepOff(jaw.grownBy(0.3));
    }
    if (thing.met) {
      markFound(sketch_, {(jaw.left + jaw.right) / 2, (jaw.top + jaw.bottom) / 2}, 0, hand,
                placer_);
    }
  }
  drawHeld(sketch_, held, frame_, hand, placer_);
  for (const FoundAt& one : held.found) {
    double radius = 1;
    for (const DrawnHole& hole : picture_.circles) {
      if (hole.id == one.place) radius = radiusOnPaper(hole, frame_);
    }
    markFound(sketch_, frame_.at(one.at), radius, hand, placer_);
  }
}

void PictureDrawer::name(const Id& id, bool disputed, PlanePoint centre, double inner,
                         double outer) {
  const Sketch::Look look{content_.style.label(), Typeface::bold};
  const std::string words = disputed ? id + " ?" : id;
  if (!placer_.placeInside(sketch_, words, look, centre, inner) &&
      !placer_.placeAround(sketch_, words, look, centre, outer)) {
    ++namesLeftOut_;
  }
}

void PictureDrawer::nameHoles() {
  for (const DrawnHole& hole : picture_.circles) {
    name(hole.id, hole.disputed, frame_.at(hole.centre), hole.diameter / 2 * frame_.scale,
         radiusOnPaper(hole, frame_));
  }
  for (const DrawnSlot& slot : picture_.slots) {
    const PlanePoint from = frame_.at(slot.from);
    const PlanePoint to = frame_.at(slot.to);
    name(slot.id, false, {(from.x + to.x) / 2, (from.y + to.y) / 2}, 0,
         slot.width / 2 * frame_.scale);
  }
  for (const DrawnMilled& milled : picture_.milled) {
    const PlanePoint at = frame_.at(milled.ring.front());
    name(milled.id, false, at, 0, 1.3);
  }
  for (const DrawnMark& mark : picture_.marks) name(mark.id, false, frame_.at(mark.at), 0, 1.3);
}

void PictureDrawer::nameEdges() {
  const Sketch::Look look{content_.style.label() * 0.8, Typeface::regular};
  for (const DrawnEdge& edge : picture_.edges) {
    SideLine line{frame_.at(edge.from), frame_.at(edge.to), 0, 0};
    if (edge.side) {
      line = sideLine(*edge.side, frame_.work);
      line.from =
          edge.axis == MachineAxis::x ? PlanePoint{line.from.x, frame_.at(edge.from).y} : line.from;
      line.to = edge.axis == MachineAxis::x ? PlanePoint{line.to.x, frame_.at(edge.to).y} : line.to;
    } else {
      (edge.axis == MachineAxis::x ? line.outX : line.outY) = edge.axis == MachineAxis::x ? 1 : -1;
    }
    if (!placer_.placeAlong(sketch_, edge.id, look, line.from, line.to, line.outX, line.outY) &&
        !placer_.placeAlong(sketch_, edge.id, look, line.from, line.to, -line.outX, -line.outY)) {
      ++namesLeftOut_;
    }
  }
}

std::string stockInWords(const SheetContent& content) {
  std::string words;
  for (const DrawnEdge& drawn : content.picture->edges) {
    if (!drawn.side) continue;
    for (const EdgeRow& edge : content.table.edges) {
      if (edge.id != drawn.id || edge.axis != drawn.axis || !edge.stock) continue;
      words += (words.empty() ? "" : ", ") + std::string(nameOf(*drawn.side)) + " " +
               figureText(*edge.stock, content.job.unit);
    }
  }
  return words;
}

std::string captionOf(const SheetContent& content, const PartOnPaper& frame, int leftOut) {
  const DrawnPart& picture = *content.picture;
  std::string words = "As it lies on the table, seen from the spindle. Not for measuring.";
  if (!picture.stock.empty()) {
    const std::string stock = stockInWords(content);
    words += " Hatched: still to come off" + (stock.empty() ? "." : " (" + stock + ").");
  }
  const bool held = content.held && !content.held->drawn.found.empty();
  if (held) words += " A triangle: see MIND.";
  if (!frame.zeroInside) words += " Zero lies off this picture.";
  for (const TableSide side : picture.missing) {
    words += " The " + std::string(nameOf(side)) + " side is not placed: drawn dashed, by guess.";
  }
  const bool disputed = std::any_of(picture.circles.begin(), picture.circles.end(),
                                    [](const DrawnHole& hole) { return hole.disputed; });
  if (disputed) words += " Dashed holes with ? are in dispute.";
  if (leftOut > 0) {
    words += " Names left out for want of room: " + std::to_string(leftOut) + ".";
  }
  return words;
}

PartOnPaper fittedFrame(const SheetContent& content, double width, double mostHeight) {
  constexpr double kCaptionRoom = 11;
  const double hand = content.style.hand;
  return laidOnPaper(*content.picture, width, std::max(mostHeight - kCaptionRoom * hand, 20.0),
                     hand);
}

/// What stands below the picture; returns where it ends.
double drawBelow(const SheetContent& content, const PartOnPaper& frame, int leftOut, double width,
                 Sketch& sketch) {
  const Style& style = content.style;
  const Sketch::Look small{2.1 * style.hand, Typeface::regular};
  double y = frame.region.bottom + 0.8;
  const double middle = width / 2;
  const double mark = 1.6 * style.hand;
  const std::string here = "you stand here";
  const double half = textWidth(here, small.height) / 2;
  sketch.fill({{middle - half - 2.6, y + 0.7},
               {middle - half - 2.6 + mark * 0.6, y + 0.7 + mark},
               {middle - half - 2.6 - mark * 0.6, y + 0.7 + mark}});
  sketch.text(middle, y + small.height * 1.15, here,
              {small.height, Typeface::regular, TextAlign::centre});
  y += small.height * 1.5;
  const LaidLine caption = stacked(layText(captionOf(content, frame, leftOut), small, width));
  sketch.add(caption.sketch, 0, y);
  return y + caption.height + 1.2;
}

}  // namespace

double pictureScale(const SheetContent& content, double width, double mostHeight) {
  return content.picture ? fittedFrame(content, width, mostHeight).scale : 0;
}

Piece picturePiece(const SheetContent& content, double width, double mostHeight) {
  Piece piece;
  if (!content.picture) return piece;
  const PartOnPaper frame = fittedFrame(content, width, mostHeight);
  if (content.picture->circles.size() <= kFewNames) {
    PictureDrawer drawer(content, frame);
    piece.sketch = drawer.draw();
    piece.height = drawBelow(content, frame, drawer.namesLeftOut(), width, piece.sketch);
    return piece;
  }
  // Names are placed when the page is drawn; most likely some have no room, so that is where the
  // caption's room is kept for saying so.
  Sketch unused;
  const int all = static_cast<int>(content.picture->circles.size());
  piece.height = drawBelow(content, frame, all, width, unused);
  piece.later = [&content, frame, width](Sketch& sketch) {
    PictureDrawer drawer(content, frame);
    sketch = drawer.draw();
    drawBelow(content, frame, drawer.namesLeftOut(), width, sketch);
  };
  return piece;
}

}  // namespace inchwright
