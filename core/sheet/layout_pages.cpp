#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/sheet/job_pages.h"
#include "core/sheet/paragraph.h"
#include "core/sheet/plain_pages.h"
#include "core/sheet/style.h"

namespace inchwright {
namespace {

/// How much of the drawing stands on two neighbouring sheets, mm.
constexpr double kOverlap = 8;
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
    for (const DrawnHole& hole : drawn.circles) {
      const double radius = std::max(hole.diameter, hole.seatDiameter) / 2 + kArm;
      points.push_back(hole.centre - PlanePoint{radius, radius});
      points.push_back(hole.centre + PlanePoint{radius, radius});
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

  /// Draws what lies in `box` of the drawing, moved by `by`.
  void draw(const PaperBox& box, PlanePoint by, Sketch& sketch) const {
    const auto line = [&](PlanePoint a, PlanePoint b, const Stroke& stroke) {
      if (const auto part = within(box, a, b)) {
        sketch.line(part->first + by, part->second + by, stroke);
      }
    };
    const auto loop = [&](const std::vector<PlanePoint>& points, const Stroke& stroke) {
      for (std::size_t i = 0; i < points.size(); ++i) {
        line(at(points[i]), at(points[(i + 1) % points.size()]), stroke);
      }
    };
    loop(drawn_.outline, {Ink::black, 0.35, {}});
    loop(drawn_.stock, {Ink::black, 0.18, {2.2, 1.2}});
    for (const DrawnEdge& edge : drawn_.edges) {
      if (!edge.side) line(at(edge.from), at(edge.to), kScribed);
    }
    for (const DrawnHole& hole : drawn_.circles) {
      const PlanePoint centre = at(hole.centre);
      const double arm = std::max(hole.diameter, hole.seatDiameter) / 2 + kArm;
      line(centre - PlanePoint{arm, 0}, centre + PlanePoint{arm, 0}, kScribed);
      line(centre - PlanePoint{0, arm}, centre + PlanePoint{0, arm}, kScribed);
      for (const double diameter : {hole.diameter, hole.seatDiameter}) {
        if (diameter > 0) loop(ringAbout(hole.centre, diameter / 2), kScribed);
      }
      const PlanePoint name = centre + PlanePoint{arm * 0.72 + 0.6, -arm * 0.72 - 0.6};
      if (box.left <= name.x && name.x <= box.right - 6 && box.top + 3 <= name.y &&
          name.y <= box.bottom) {
        sketch.text(name.x + by.x, name.y + by.y, hole.id, {2.5, Typeface::bold});
      }
    }
    for (const DrawnSlot& slot : drawn_.slots) loop(slotRing(slot), kScribed);
  }

 private:
  static constexpr double kArm = 2.5;
  static constexpr int kParts = 96;

  PlanePoint at(PlanePoint point) const { return {point.x - left_, far_ - point.y}; }

  static std::vector<PlanePoint> ringAbout(PlanePoint centre, double radius) {
    std::vector<PlanePoint> points;
    for (int i = 0; i < kParts; ++i) {
      const double angle = 2 * std::numbers::pi * i / kParts;
      points.push_back(centre + PlanePoint{std::cos(angle), std::sin(angle)} * radius);
    }
    return points;
  }

  static std::vector<PlanePoint> slotRing(const DrawnSlot& slot) {
    const PlanePoint way = slot.to - slot.from;
    const double along = std::atan2(way.y, way.x);
    std::vector<PlanePoint> points;
    for (int end = 0; end < 2; ++end) {
      for (int i = 0; i <= kParts / 2; ++i) {
        const double angle = along + std::numbers::pi * (end - 0.5 + 2.0 * i / kParts);
        points.push_back((end == 0 ? slot.to : slot.from) +
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

void layFace(const JobOnPaper& job, const PartInJob& in, const SetupInJob& one,
             std::vector<Page>& all) {
  const PageSize size = uprightSize(job.options.paper);
  const FullSize face(one.drawn);
  const std::string title = in.part.name + ", " + std::string(nameOf(one.setup.face)) +
                            " face, full size \u00B7 setup " + one.setup.name;
  Sketch measured;
  const double top = drawPlainFrame(job, title, 1, 1, measured) + 5;
  const double left = kPlainMargin + kBarRoom;
  const double roomX = size.width - kPlainMargin - left;
  const double roomY = plainBottom(job) - kBarRoom - top;
  const auto sheets = [](double length, double room) {
    return length <= room ? 1
                          : static_cast<int>(std::ceil((length - kOverlap) / (room - kOverlap)));
  };
  const int across = sheets(face.width(), roomX), down = sheets(face.height(), roomY);
  for (int row = 0; row < down; ++row) {
    for (int column = 0; column < across; ++column) {
      Sketch sketch;
      const auto number = static_cast<std::size_t>(row * across + column + 1);
      drawPlainFrame(job, title, number, static_cast<std::size_t>(across * down), sketch);
      std::string words = "To scribe or lay the part on, not to measure by.";
      if (across * down > 1) {
        words += " Sheet " + std::to_string(row + 1) + " down, " + std::to_string(column + 1) +
                 " across of " + std::to_string(down) + " by " + std::to_string(across) +
                 "; neighbours share " + std::to_string(static_cast<int>(kOverlap)) +
                 " mm, and the corner crosses lie on each other.";
      }
      sketch.add(stacked(layText(words, {2.4}, plainWidth(job))).sketch, kPlainMargin, top - 6);
      const PlanePoint start{column * (roomX - kOverlap), row * (roomY - kOverlap)};
      const PaperBox part{start.x, start.y, start.x + roomX, start.y + roomY};
      const PlanePoint by = PlanePoint{left, top} - start;
      face.draw(part, by, sketch);
      if (across * down > 1) {
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
