#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/sheet/job_pages.h"
#include "core/sheet/label_placer.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/part_drawing.h"
#include "core/sheet/plain_pages.h"
#include "core/sheet/style.h"
#include "core/sheet/text_measure.h"

namespace inchwright {
namespace {

/// How much of the drawing stands on two neighbouring sheets, mm.
constexpr double kOverlap = 8;
/// More sheets than this nobody lays edge to edge.
constexpr int kMostSheets = 64;
/// Room for the bar below and the bar at the left.
constexpr double kBarRoom = 9;
const Stroke kScribed{Ink::black, 0.18, {}};

/// The stretch of a line within a box; empty where none is.
std::optional<std::pair<PlanePoint, PlanePoint>> within(const PaperBox& box, PlanePoint a,
                                                        PlanePoint b) {
  double from = 0, to = 1;
  const PlanePoint way = b - a;
  const auto cut = [&](double along, double room) {
    // Keeps the shares t with along · t at most room.
    if (along == 0) return room >= 0;
    const double at = room / along;
    if (along > 0) to = std::min(to, at);
    if (along < 0) from = std::max(from, at);
    return from <= to;
  };
  const bool any = cut(way.x, box.right - a.x) && cut(-way.x, a.x - box.left) &&
                   cut(way.y, box.bottom - a.y) && cut(-way.y, a.y - box.top);
  if (!any) return std::nullopt;
  return std::pair{a + way * from, a + way * to};
}

/// A face at full size, millimetres from its upper left corner, y down.
class FullSize {
 public:
  explicit FullSize(const DrawnPart& drawn) : drawn_(drawn) {
    std::vector<PlanePoint> points = drawn.outline;
    points.insert(points.end(), drawn.stock.begin(), drawn.stock.end());
    const auto add = [&](PlanePoint centre, double radius) {
      points.push_back(centre - PlanePoint{radius, radius});
      points.push_back(centre + PlanePoint{radius, radius});
    };
    for (const DrawnHole& hole : drawn.circles) add(hole.centre, armOf(hole));
    for (const DrawnMark& mark : drawn.marks) add(mark.at, kArm);
    for (const DrawnRound& round : drawn.rounds) add(round.centre, round.radius);
    for (const DrawnSlot& slot : drawn.slots) {
      add(slot.from, slot.width / 2);
      add(slot.to, slot.width / 2);
    }
    if (points.empty()) points.push_back({});
    left_ = right_ = points[0].x;
    near_ = far_ = points[0].y;
    for (const PlanePoint point : points) {
      left_ = std::min(left_, point.x);
      right_ = std::max(right_, point.x);
      near_ = std::min(near_, point.y);
      far_ = std::max(far_, point.y);
    }
  }

  double width() const { return right_ - left_; }
  double height() const { return far_ - near_; }

  /// Draws what lies in `box` of the drawing, moved by `by`, with the names of what has its middle
  /// there.
  void draw(const PaperBox& box, PlanePoint by, Sketch& sketch) const {
    const Window window{box, by, sketch};
    drawSides(window);
    window.loop(onPaper(drawn_.stock), {Ink::black, 0.18, {2.2, 1.2}});
    for (const DrawnEdge& edge : drawn_.edges) {
      if (!edge.side) window.line(at(edge.from), at(edge.to), kScribed);
    }
    // An outline that is known as it is has its ends in it.
    for (const DrawnRound& round : drawn_.rounds) {
      if (drawn_.outline.size() > 4) break;
      window.loop(ringAbout(at(round.centre), round.radius), kScribed);
    }
    for (const DrawnSlot& slot : drawn_.slots) window.loop(slotRing(slot), kScribed);
    for (const DrawnMilled& milled : drawn_.milled) window.loop(onPaper(milled.ring), kScribed);
    for (const DrawnMark& mark : drawn_.marks) window.cross(at(mark.at), kArm);
    for (const DrawnHole& hole : drawn_.circles) drawHole(window, hole);
    nameAll(window);
  }

 private:
  static constexpr double kArm = 2.5;
  static constexpr Sketch::Look kName{2.5, Typeface::bold};
  static constexpr int kParts = 96;

  /// What of the drawing is on one sheet, and where.
  struct Window {
    PaperBox box;
    PlanePoint by;
    Sketch& sketch;

    bool holds(PlanePoint point) const { return box.holds({point.x, point.y, point.x, point.y}); }
    void line(PlanePoint a, PlanePoint b, const Stroke& stroke) const {
      if (const auto part = within(box, a, b)) {
        sketch.line(part->first + by, part->second + by, stroke);
      }
    }
    void loop(const std::vector<PlanePoint>& points, const Stroke& stroke) const {
      for (std::size_t i = 0; i < points.size(); ++i) {
        line(points[i], points[(i + 1) % points.size()], stroke);
      }
    }
    void cross(PlanePoint centre, double arm) const {
      line(centre - PlanePoint{arm, 0}, centre + PlanePoint{arm, 0}, kScribed);
      line(centre - PlanePoint{0, arm}, centre + PlanePoint{0, arm}, kScribed);
    }
  };

  void drawSides(const Window& window) const {
    const std::vector<PlanePoint> outline = onPaper(drawn_.outline);
    if (outline.empty()) return;
    PaperBox all{outline[0].x, outline[0].y, outline[0].x, outline[0].y};
    for (const PlanePoint point : outline) {
      all = {std::min(all.left, point.x), std::min(all.top, point.y), std::max(all.right, point.x),
             std::max(all.bottom, point.y)};
    }
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const PlanePoint a = outline[i], b = outline[(i + 1) % outline.size()];
      // Nobody may saw to a side that nothing places.
      if (!isGuessed(drawn_, a, b, all)) window.line(a, b, {Ink::black, 0.35, {}});
    }
  }

  void drawHole(const Window& window, const DrawnHole& hole) const {
    const PlanePoint centre = at(hole.centre);
    window.cross(centre, armOf(hole));
    for (const double diameter : {hole.diameter, hole.seatDiameter}) {
      const std::vector<PlanePoint> ring = ringAbout(centre, diameter / 2);
      for (std::size_t i = 0; i < ring.size() && diameter > 0; ++i) {
        // In dispute: broken.
        if (hole.disputed && i / 4 % 2 == 1) continue;
        window.line(ring[i], ring[(i + 1) % ring.size()], kScribed);
      }
    }
  }

  void nameAll(const Window& window) const {
    const PaperBox room{window.box.left + window.by.x, window.box.top + window.by.y,
                        window.box.right + window.by.x, window.box.bottom + window.by.y};
    struct Named {
      const Id& id;
      PlanePoint centre;
      double radius;
    };
    std::vector<Named> all;
    const auto add = [&](const Id& id, PlanePoint centre, double radius) {
      if (window.holds(centre)) all.push_back({id, centre + window.by, radius});
    };
    for (const DrawnHole& hole : drawn_.circles) add(hole.id, at(hole.centre), armOf(hole));
    for (const DrawnMark& mark : drawn_.marks) add(mark.id, at(mark.at), kArm);
    for (const DrawnSlot& slot : drawn_.slots) {
      add(slot.id, at((slot.from + slot.to) * 0.5), slot.width / 2);
    }
    LabelPlacer placer(room);
    for (const Named& one : all) placer.keepOff(one.centre, one.radius);
    for (const std::vector<PlanePoint>& loop : {onPaper(drawn_.outline), onPaper(drawn_.stock)}) {
      for (std::size_t i = 0; i < loop.size(); ++i) {
        placer.avoid(loop[i] + window.by, loop[(i + 1) % loop.size()] + window.by);
      }
    }
    for (const Named& one : all) {
      if (placer.placeAround(window.sketch, one.id, kName, one.centre, one.radius)) continue;
      // Crowded: over whatever is there rather than not at all.
      const LaidLine laid = stacked(layText(one.id, kName, room.width()));
      const double wide = std::min(textWidth(one.id, kName.height, kName.face), room.width());
      window.sketch.add(laid.sketch, std::clamp(one.centre.x, room.left, room.right - wide),
                        std::clamp(one.centre.y - one.radius - laid.height, room.top,
                                   std::max(room.top, room.bottom - laid.height)));
    }
  }

  static double armOf(const DrawnHole& hole) {
    return std::max(hole.diameter, hole.seatDiameter) / 2 + kArm;
  }

  PlanePoint at(PlanePoint point) const { return {point.x - left_, far_ - point.y}; }
  std::vector<PlanePoint> onPaper(const std::vector<PlanePoint>& points) const {
    std::vector<PlanePoint> all;
    for (const PlanePoint point : points) all.push_back(at(point));
    return all;
  }

  static std::vector<PlanePoint> ringAbout(PlanePoint centre, double radius) {
    std::vector<PlanePoint> points;
    for (int i = 0; i < kParts; ++i) {
      const double angle = 2 * std::numbers::pi * i / kParts;
      points.push_back(centre + PlanePoint{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
  }

  std::vector<PlanePoint> slotRing(const DrawnSlot& slot) const {
    const PlanePoint from = at(slot.from), to = at(slot.to), way = to - from;
    const double along = std::atan2(way.y, way.x);
    std::vector<PlanePoint> points;
    for (int end = 0; end < 2; ++end) {
      for (int i = 0; i <= kParts / 2; ++i) {
        const double angle = along + std::numbers::pi * (end - 0.5 + 2.0 * i / kParts);
        points.push_back((end == 0 ? to : from) +
                         PlanePoint{std::cos(angle), std::sin(angle)} * (slot.width / 2));
      }
    }
    return points;
  }

  const DrawnPart& drawn_;
  double left_ = 0, right_ = 0, near_ = 0, far_ = 0;
};

/// A bar with ticks at its ends and what it has to measure.
void drawBar(Sketch& sketch, PlanePoint from, bool upright, Unit unit) {
  const double length = layoutBar(unit);
  const PlanePoint way = upright ? PlanePoint{0, -1} : PlanePoint{1, 0};
  const PlanePoint across = upright ? PlanePoint{1, 0} : PlanePoint{0, 1};
  const Stroke stroke{Ink::black, kThin, {}};
  sketch.line(from, from + way * length, stroke);
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    const double tick = share == 0 || share == 1 ? 2 : 1;
    const PlanePoint at = from + way * (length * share);
    sketch.line(at - across * tick, at + across * tick, stroke);
  }
  const std::string words =
      std::string(unit == Unit::inch ? "4 in" : "100 mm") + ": measure this bar before use";
  const PlanePoint text = from + way * 3 + (upright ? PlanePoint{-1, 0} : PlanePoint{0, -1});
  sketch.text(text.x, text.y, words,
              {2.1, Typeface::regular, TextAlign::left, Ink::black, upright ? 90.0 : 0.0});
}

std::string listed(const std::vector<std::string>& all) {
  std::string words;
  for (const std::string& one : all) words += (words.empty() ? "" : ", ") + one;
  return words;
}

// Why a layout is not to be worked from as it is; empty where nothing is open.
std::string openWords(const PartInJob& in, const SetupInJob& one) {
  std::string words;
  if (in.solution.isDraft()) words = "DRAFT: settle what the cover page asks before scribing.";
  std::vector<std::string> disputed, unplaced, sides;
  for (const DrawnHole& hole : one.drawn.circles) {
    if (hole.disputed) disputed.push_back(hole.id);
  }
  for (const Loose& loose : one.table.unplaced) {
    if (unplaced.empty() || unplaced.back() != loose.id) unplaced.push_back(loose.id);
  }
  for (const TableSide side : one.drawn.missing) sides.emplace_back(nameOf(side));
  const auto add = [&](const std::string& what) { words += (words.empty() ? "" : " ") + what; };
  if (!disputed.empty()) add("In dispute, drawn broken: " + listed(disputed) + ".");
  if (!unplaced.empty()) add("Not placed, not drawn: " + listed(unplaced) + ".");
  if (!sides.empty()) add("Sides that nothing places are left out: " + listed(sides) + ".");
  return words;
}

/// Which of its sheets one is.
struct SheetOf {
  int row = 0, column = 0, down = 1, across = 1;
  bool isAlone() const { return down * across == 1; }
};

double drawWords(const JobOnPaper& job, const PartInJob& in, const SetupInJob& one,
                 const SheetOf& sheet, double top, Sketch& sketch) {
  std::string words = "To scribe or lay the part on, not to measure by.";
  if (!sheet.isAlone()) {
    words += " Sheet " + std::to_string(sheet.row + 1) + " down, " +
             std::to_string(sheet.column + 1) + " across of " + std::to_string(sheet.down) +
             " by " + std::to_string(sheet.across) + "; neighbours share " +
             std::to_string(static_cast<int>(kOverlap)) +
             " mm, and the corner crosses lie on each other.";
  }
  const std::pair<std::string, Typeface> paragraphs[] = {{words, Typeface::regular},
                                                         {openWords(in, one), Typeface::bold}};
  for (const auto& [text, face] : paragraphs) {
    if (text.empty()) continue;
    const LaidLine laid = stacked(layText(text, {2.4, face}, plainWidth(job)));
    sketch.add(laid.sketch, kPlainMargin, top);
    top += laid.height;
  }
  return top + 1.5;
}

Page tooLarge(const JobOnPaper& job, const std::string& title, double top) {
  const PageSize size = uprightSize(job.options.paper);
  Sketch sketch;
  drawPlainFrame(job, title, 1, 1, sketch);
  const std::string words =
      "This face is too large to be laid out on this paper: it would take "
      "more than " +
      std::to_string(kMostSheets) + " sheets.";
  sketch.add(stacked(layText(words, {2.4, Typeface::bold}, plainWidth(job))).sketch, kPlainMargin,
             top);
  return sketch.onPage(size.width, size.height);
}

void layFace(const JobOnPaper& job, const PartInJob& in, const SetupInJob& one,
             std::vector<Page>& all) {
  const PageSize size = uprightSize(job.options.paper);
  const FullSize face(one.drawn);
  const std::string title = in.part.name + ", " + std::string(nameOf(one.setup.face)) +
                            " face, full size \u00B7 setup " + one.setup.name;
  Sketch measured;
  const double head = drawPlainFrame(job, title, 1, 1, measured) - 1;
  const double left = kPlainMargin + kBarRoom;
  const double roomX = size.width - kPlainMargin - left;
  // As many words as there may have to be.
  const double top = drawWords(job, in, one, {9, 9, 10, 10}, head, measured);
  const double roomY = plainBottom(job) - kBarRoom - top;
  const auto sheets = [](double length, double room) {
    return length <= room ? 1.0 : std::ceil((length - kOverlap) / (room - kOverlap));
  };
  if (sheets(face.width(), roomX) * sheets(face.height(), roomY) > kMostSheets) {
    all.push_back(tooLarge(job, title, head));
    return;
  }
  SheetOf sheet;
  sheet.across = static_cast<int>(sheets(face.width(), roomX));
  sheet.down = static_cast<int>(sheets(face.height(), roomY));
  for (sheet.row = 0; sheet.row < sheet.down; ++sheet.row) {
    for (sheet.column = 0; sheet.column < sheet.across; ++sheet.column) {
      Sketch sketch;
      const auto number = static_cast<std::size_t>(sheet.row * sheet.across + sheet.column + 1);
      drawPlainFrame(job, title, number, static_cast<std::size_t>(sheet.across * sheet.down),
                     sketch);
      drawWords(job, in, one, sheet, head, sketch);
      const PlanePoint start{sheet.column * (roomX - kOverlap), sheet.row * (roomY - kOverlap)};
      const PaperBox part{start.x, start.y, start.x + roomX, start.y + roomY};
      const PlanePoint by = PlanePoint{left, top} - start;
      face.draw(part, by, sketch);
      if (!sheet.isAlone()) {
        for (const double x : {part.left + kOverlap / 2, part.right - kOverlap / 2}) {
          for (const double y : {part.top + kOverlap / 2, part.bottom - kOverlap / 2}) {
            const PlanePoint cross = PlanePoint{x, y} + by;
            sketch.line(cross - PlanePoint{2, 0}, cross + PlanePoint{2, 0}, kScribed);
            sketch.line(cross - PlanePoint{0, 2}, cross + PlanePoint{0, 2}, kScribed);
          }
        }
      }
      drawBar(sketch, {left, plainBottom(job) - 3}, false, job.job.unit);
      drawBar(sketch, {kPlainMargin + 4, plainBottom(job) - kBarRoom}, true, job.job.unit);
      all.push_back(sketch.onPage(size.width, size.height));
    }
  }
}

}  // namespace

double layoutBar(Unit unit) {
  return unit == Unit::inch ? 4 * 25.4 : 100;
}

std::vector<Page> layoutPages(const JobOnPaper& job) {
  std::vector<Page> all;
  for (const PartInJob& in : job.parts) {
    for (const SetupInJob& one : in.setups) layFace(job, in, one, all);
  }
  return all;
}

}  // namespace inchwright
