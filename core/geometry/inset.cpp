#include "core/geometry/inset.h"

#include <algorithm>
#include <cmath>

namespace inchwright {
namespace {

constexpr double kSettledInset = 1e-9;
// A corner that turns by less than this is a touch, and the way goes on.
constexpr double kTouchSine = 1e-6;

PlanePoint leftBy(PlanePoint p, PlanePoint way, double by) {
  return {p.x - by * way.y, p.y + by * way.x};
}

PlaneLine lineThrough(PlanePoint p, PlanePoint way) {
  PlaneLine line{std::atan2(way.y, way.x), 0};
  line.offset = leftOf(line, p);
  return line;
}

/// A piece moved to its left, not yet joined to its neighbours.
std::optional<PathPiece> movedLeft(const PathPiece& piece, double by) {
  PathPiece moved = piece;
  moved.start = leftBy(piece.start, wayAtStart(piece), by);
  moved.end = leftBy(piece.end, wayAtEnd(piece), by);
  if (!piece.circle) return moved;
  const double radius = piece.circle->radius - piece.sense * by;
  if (radius < -kSettledInset) return std::nullopt;
  moved.circle->radius = std::max(radius, 0.0);
  return moved;
}

/// Where two moved pieces meet, nearest to where they did before.
std::optional<PlanePoint> joint(const PathPiece& a, const PathPiece& b, PlanePoint before) {
  std::vector<PlanePoint> at;
  constexpr double kWithin = 1e-9;
  if (a.circle && b.circle) {
    at = meetings(*a.circle, *b.circle, kWithin);
  } else if (a.circle) {
    at = meetings(lineThrough(b.start, wayAtStart(b)), *a.circle, kWithin);
  } else if (b.circle) {
    at = meetings(lineThrough(a.start, wayAtStart(a)), *b.circle, kWithin);
  } else {
    at = meetings(lineThrough(a.start, wayAtStart(a)), lineThrough(b.start, wayAtStart(b)));
  }
  const auto nearest = std::min_element(at.begin(), at.end(), [&](PlanePoint p, PlanePoint q) {
    return distanceBetween(p, before) < distanceBetween(q, before);
  });
  if (nearest == at.end()) return std::nullopt;
  return *nearest;
}

PlanePoint pointOn(const PathPiece& piece, double share) {
  if (!piece.circle) {
    return {piece.start.x + share * (piece.end.x - piece.start.x),
            piece.start.y + share * (piece.end.y - piece.start.y)};
  }
  const PlanePoint centre = piece.circle->centre;
  const double from = std::atan2(piece.start.y - centre.y, piece.start.x - centre.x);
  const double angle = from + piece.sense * share * sweepOf(piece);
  return {centre.x + piece.circle->radius * std::cos(angle),
          centre.y + piece.circle->radius * std::sin(angle)};
}

/// Whether a disc whose centre goes that way touches the path and never cuts into it.
bool keepsOff(std::span<const PathPiece> path, const std::vector<PathPiece>& way, double by) {
  constexpr int kLooks = 16;
  for (const PathPiece& piece : way) {
    for (int i = 0; i <= kLooks; ++i) {
      const PlanePoint p = pointOn(piece, static_cast<double>(i) / kLooks);
      if (!isInside(path, p)) return false;
      for (const PathPiece& wall : path) {
        if (distanceTo(wall, p) < by - 1e-7) return false;
      }
    }
  }
  return true;
}

/// Whether a joined piece still runs the way it did.
bool runsOn(const PathPiece& before, const PathPiece& now) {
  if (now.circle) return true;
  const PlanePoint way = wayAtStart(before);
  return (now.end.x - now.start.x) * way.x + (now.end.y - now.start.y) * way.y >= -kSettledInset;
}

}  // namespace

std::optional<std::vector<PathPiece>> insetOf(std::span<const PathPiece> path, double by) {
  std::vector<PathPiece> way;
  for (const PathPiece& piece : path) {
    const auto moved = movedLeft(piece, by);
    if (!moved) return std::nullopt;
    way.push_back(*moved);
  }
  if (way.size() == 1 && way[0].isWhole) return way;
  for (std::size_t i = 0; i < way.size(); ++i) {
    const std::size_t next = (i + 1) % way.size();
    const PlanePoint a = wayAtEnd(path[i]), b = wayAtStart(path[next]);
    if (std::abs(a.x * b.y - a.y * b.x) < kTouchSine) continue;
    const auto at = joint(way[i], way[next], path[i].end);
    if (!at) return std::nullopt;
    way[i].end = way[next].start = *at;
  }
  for (std::size_t i = 0; i < way.size(); ++i) {
    if (!runsOn(path[i], way[i])) return std::nullopt;
  }
  // A round that the disc just fills is a point.
  std::erase_if(way, [](const PathPiece& piece) {
    return piece.circle && piece.circle->radius < kSettledInset;
  });
  if (way.empty() || !keepsOff(path, way, by)) return std::nullopt;
  return way;
}

std::vector<std::pair<double, double>> levelRunsInside(std::span<const PathPiece> path, double y) {
  std::vector<double> at;
  const PlaneLine level{0, y};
  for (const PathPiece& piece : path) {
    if (!piece.circle) {
      // Of its two ends one counts, so that a corner is met once.
      const bool below = piece.start.y < y, endsBelow = piece.end.y < y;
      if (below == endsBelow) continue;
      const double share = (y - piece.start.y) / (piece.end.y - piece.start.y);
      at.push_back(piece.start.x + share * (piece.end.x - piece.start.x));
      continue;
    }
    for (const PlanePoint& p : meetings(level, *piece.circle, 0)) {
      if (distanceTo(piece, p) < kSettledInset) at.push_back(p.x);
    }
  }
  std::sort(at.begin(), at.end());
  std::vector<std::pair<double, double>> runs;
  for (std::size_t i = 0; i + 1 < at.size(); ++i) {
    if (at[i + 1] - at[i] < kSettledInset) continue;
    if (!isInside(path, {(at[i] + at[i + 1]) / 2, y})) continue;
    if (!runs.empty() && at[i] - runs.back().second < kSettledInset) {
      runs.back().second = at[i + 1];
    } else {
      runs.emplace_back(at[i], at[i + 1]);
    }
  }
  return runs;
}

std::vector<PathPiece> turnedRound(std::span<const PathPiece> path) {
  std::vector<PathPiece> other(path.rbegin(), path.rend());
  for (PathPiece& piece : other) {
    std::swap(piece.start, piece.end);
    piece.sense = -piece.sense;
  }
  return other;
}

}  // namespace inchwright
