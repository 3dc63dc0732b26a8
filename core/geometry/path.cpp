#include "core/geometry/path.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

PlanePoint normalOf(const PlaneLine& line) {
  return {-std::sin(line.direction), std::cos(line.direction)};
}

double angleOf(const PlaneCircle& circle, PlanePoint p) {
  return std::atan2(p.y - circle.centre.y, p.x - circle.centre.x);
}

// How far an angle lies on from another, anticlockwise: 0 … 2π.
double onFrom(double from, double to) {
  const double turned = std::fmod(to - from, kTurn);
  return turned < 0 ? turned + kTurn : turned;
}

PlanePoint pointAt(const PlaneCircle& circle, double angle) {
  return {circle.centre.x + circle.radius * std::cos(angle),
          circle.centre.y + circle.radius * std::sin(angle)};
}

bool passes(const PathPiece& piece, double angle) {
  if (piece.isWhole) return true;
  const double from = angleOf(*piece.circle, piece.start);
  const double on = piece.sense > 0 ? onFrom(from, angle) : onFrom(angle, from);
  return on <= sweepOf(piece);
}

}  // namespace

double leftOf(const PlaneLine& line, PlanePoint p) {
  const PlanePoint n = normalOf(line);
  return n.x * p.x + n.y * p.y - line.offset;
}

double distanceBetween(PlanePoint a, PlanePoint b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

std::vector<PlanePoint> meetings(const PlaneLine& a, const PlaneLine& b) {
  const PlanePoint m = normalOf(a), n = normalOf(b);
  const double sine = m.x * n.y - m.y * n.x;
  if (std::abs(sine) < 1e-9) return {};
  return {{(a.offset * n.y - b.offset * m.y) / sine, (m.x * b.offset - n.x * a.offset) / sine}};
}

std::vector<PlanePoint> meetings(const PlaneLine& line, const PlaneCircle& circle, double within) {
  const double off = leftOf(line, circle.centre);
  const PlanePoint n = normalOf(line);
  const PlanePoint foot{circle.centre.x - off * n.x, circle.centre.y - off * n.y};
  const double depth = circle.radius - std::abs(off);
  if (depth < -within) return {};
  if (depth <= within) return {foot};
  const double half = std::sqrt(depth * (circle.radius + std::abs(off)));
  return {{foot.x - half * n.y, foot.y + half * n.x}, {foot.x + half * n.y, foot.y - half * n.x}};
}

std::vector<PlanePoint> meetings(const PlaneCircle& a, const PlaneCircle& b, double within) {
  const double apart = distanceBetween(a.centre, b.centre);
  if (apart < 1e-9) return {};
  const double ux = (b.centre.x - a.centre.x) / apart;
  const double uy = (b.centre.y - a.centre.y) / apart;
  const double outside = a.radius + b.radius - apart;
  const double inside = apart - std::abs(a.radius - b.radius);
  if (outside < -within || inside < -within) return {};
  if (outside <= within || inside <= within) {
    const bool isOutside = outside <= within;
    const double way = isOutside || a.radius > b.radius ? a.radius : -a.radius;
    return {{a.centre.x + way * ux, a.centre.y + way * uy}};
  }
  const double along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const double half = std::sqrt(std::max(0.0, a.radius * a.radius - along * along));
  const PlanePoint foot{a.centre.x + along * ux, a.centre.y + along * uy};
  return {{foot.x - half * uy, foot.y + half * ux}, {foot.x + half * uy, foot.y - half * ux}};
}

double sweepOf(const PathPiece& piece) {
  if (!piece.circle) return 0;
  if (piece.isWhole) return kTurn;
  const double from = angleOf(*piece.circle, piece.start);
  const double to = angleOf(*piece.circle, piece.end);
  const double sweep = piece.sense > 0 ? onFrom(from, to) : onFrom(to, from);
  return sweep > 0 ? sweep : kTurn;
}

PlanePoint wayAtStart(const PathPiece& piece) {
  if (piece.circle) {
    const double angle = angleOf(*piece.circle, piece.start);
    return {-piece.sense * std::sin(angle), piece.sense * std::cos(angle)};
  }
  const double length = std::max(distanceBetween(piece.start, piece.end), 1e-300);
  return {(piece.end.x - piece.start.x) / length, (piece.end.y - piece.start.y) / length};
}

PlanePoint wayAtEnd(const PathPiece& piece) {
  if (!piece.circle) return wayAtStart(piece);
  const double angle = angleOf(*piece.circle, piece.end);
  return {-piece.sense * std::sin(angle), piece.sense * std::cos(angle)};
}

double areaOf(std::span<const PathPiece> path) {
  double twice = 0;
  for (const PathPiece& piece : path) {
    if (!piece.isWhole) twice += piece.start.x * piece.end.y - piece.end.x * piece.start.y;
    if (!piece.circle) continue;
    // What lies between the chord and the arc.
    const double sweep = sweepOf(piece);
    twice += piece.sense * piece.circle->radius * piece.circle->radius *
             (sweep - (piece.isWhole ? 0 : std::sin(sweep)));
  }
  return twice / 2;
}

std::pair<PlanePoint, PlanePoint> extentsOf(std::span<const PathPiece> path) {
  bool isFirst = true;
  PlanePoint low, high;
  const auto take = [&](PlanePoint p) {
    if (isFirst) low = high = p;
    isFirst = false;
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  };
  for (const PathPiece& piece : path) {
    if (!piece.isWhole) {
      take(piece.start);
      take(piece.end);
    }
    for (int quarter = 0; piece.circle && quarter < 4; ++quarter) {
      static constexpr std::array<std::array<double, 2>, 4> kWays{
          {{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
      if (!passes(piece, quarter * kTurn / 4)) continue;
      const auto& way = kWays[static_cast<std::size_t>(quarter)];
      take({piece.circle->centre.x + way[0] * piece.circle->radius,
            piece.circle->centre.y + way[1] * piece.circle->radius});
    }
  }
  return {low, high};
}

bool isInside(std::span<const PathPiece> path, PlanePoint p) {
  // How often the path goes round the point: its chords by the angle they turn through, and what
  // lies between a chord and its arc.
  double turned = 0;
  for (const PathPiece& piece : path) {
    const bool inCircle =
        piece.circle && distanceBetween(piece.circle->centre, p) < piece.circle->radius;
    if (piece.isWhole) {
      if (inCircle) turned += piece.sense * kTurn;
      continue;
    }
    const PlanePoint a = piece.start, b = piece.end;
    const double cross = (a.x - p.x) * (b.y - p.y) - (a.y - p.y) * (b.x - p.x);
    const double turn = std::atan2(cross, (a.x - p.x) * (b.x - p.x) + (a.y - p.y) * (b.y - p.y));
    turned += turn;
    // By the turn itself: the centre of a round end lies on its chord, to one side or the other.
    if (inCircle && piece.sense * turn < 0) turned += piece.sense * kTurn;
  }
  return std::abs(turned) > std::numbers::pi;
}

PlanePoint nearestOn(const PathPiece& piece, PlanePoint p) {
  if (piece.circle) {
    const PlaneCircle& circle = *piece.circle;
    if (distanceBetween(circle.centre, p) < 1e-12) {
      return piece.isWhole ? pointAt(circle, 0) : piece.start;
    }
    const double angle = angleOf(circle, p);
    if (passes(piece, angle)) return pointAt(circle, angle);
  } else {
    const double dx = piece.end.x - piece.start.x, dy = piece.end.y - piece.start.y;
    const double square = dx * dx + dy * dy;
    if (square > 0) {
      const double along = ((p.x - piece.start.x) * dx + (p.y - piece.start.y) * dy) / square;
      if (along > 0 && along < 1) return {piece.start.x + along * dx, piece.start.y + along * dy};
    }
  }
  return distanceBetween(piece.start, p) <= distanceBetween(piece.end, p) ? piece.start : piece.end;
}

double distanceTo(const PathPiece& piece, PlanePoint p) {
  if (piece.circle && piece.isWhole) {
    return std::abs(distanceBetween(piece.circle->centre, p) - piece.circle->radius);
  }
  return distanceBetween(nearestOn(piece, p), p);
}

}  // namespace inchwright
