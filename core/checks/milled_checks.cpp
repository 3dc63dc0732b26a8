#include <algorithm>
#include <cmath>
#include <limits>

#include "core/checks/checks.h"
#include "core/checks/hole_body.h"

namespace inchwright {
namespace {

using Spatial = std::array<double, 3>;

/// As deep as anything goes where nothing says how thick the work is, inches.
constexpr double kBottomless = 1e4;

double apart(const Spatial& a, const Spatial& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

PlanePoint partWay(PlanePoint a, PlanePoint b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/// What a slot or pocket takes away: its shape in the face, from the face to its floor. Inches.
class MilledBody {
 public:
  MilledBody(const MilledShape& shape, const WorkBlock& block) : shape_(shape), frame_(shape.face) {
    across_ = static_cast<std::size_t>(axisAcross(shape.face));
    const auto face = block.finished(shape.face);
    const auto thick = block.sizeFinished(axisAcross(shape.face));
    adrift_ = !face;
    const double at = face ? face->toInches() : 0;
    const double deep = shape.depth ? shape.depth->toInches()
                        : thick     ? thick->toInches()
                                    : kBottomless;
    const double floor = at - outward(shape.face) * deep;
    low_ = std::min(at, floor);
    high_ = std::max(at, floor);
  }

  /// Nothing says where its face is: what other faces have beside it can't be told.
  bool isAdrift() const { return adrift_; }
  const MilledShape& shape() const { return shape_; }
  double low() const { return low_; }
  double high() const { return high_; }
  std::size_t across() const { return across_; }

  PlanePoint seen(const Spatial& p) const {
    return {frame_.own[0] * p[static_cast<std::size_t>(frame_.axes[0])],
            frame_.own[1] * p[static_cast<std::size_t>(frame_.axes[1])]};
  }

  /// The point of it that is nearest to another.
  Spatial nearest(const Spatial& p) const {
    PlanePoint at = seen(p);
    if (shape_.edgeFrom(at) > 0) {
      PlanePoint on = nearestOn(shape_.way.front(), at);
      for (const PathPiece& piece : shape_.way) {
        const PlanePoint other = nearestOn(piece, at);
        if (distanceBetween(other, at) < distanceBetween(on, at)) on = other;
      }
      const double away = distanceBetween(on, at);
      at = partWay(on, at, std::min(1.0, shape_.radius / std::max(away, 1e-300)));
    }
    Spatial result{};
    result[static_cast<std::size_t>(frame_.axes[0])] = frame_.own[0] * at.x;
    result[static_cast<std::size_t>(frame_.axes[1])] = frame_.own[1] * at.y;
    result[across_] = std::clamp(p[across_], low_, high_);
    return result;
  }

 private:
  const MilledShape& shape_;
  SeenFrame frame_;
  std::size_t across_ = 2;
  bool adrift_ = false;
  double low_ = 0;
  double high_ = 0;
};

/// Going from one body to the other and back, which comes together on their nearest points where
/// both are convex; from several beginnings, since a pocket need not be.
template <class NearestInOther>
double settled(const MilledBody& body, NearestInOther other, const std::vector<Spatial>& from) {
  double least = std::numeric_limits<double>::infinity();
  for (const Spatial& begin : from) {
    Spatial on = body.nearest(begin);
    double before = std::numeric_limits<double>::infinity();
    constexpr int kMostTurns = 500;
    for (int i = 0; i < kMostTurns; ++i) {
      const Spatial there = other(on);
      on = body.nearest(there);
      const double now = apart(there, on);
      if (before - now < 1e-10) break;
      before = now;
    }
    least = std::min(least, before);
    if (least < 1e-9) return 0;
  }
  return least;
}

/// Below 0 where they run into each other.
double wallTo(const MilledBody& body, const HoleBody& hole) {
  const auto axis = static_cast<std::size_t>(hole.axis);
  const double end = hole.mouth[axis] + hole.inward * hole.length;
  const double tip = end + hole.inward * hole.point;
  if (axis == body.across()) {
    const double beside = body.shape().edgeFrom(body.seen(hole.mouth)) - hole.radius;
    const double low = std::min(hole.mouth[axis], end), high = std::max(hole.mouth[axis], end);
    const bool level = hole.endless || (high > body.low() && low < body.high());
    if (level) return beside;
  }
  std::vector<Spatial> from;
  constexpr int kBeginnings = 8;
  for (int i = 0; i <= kBeginnings; ++i) {
    Spatial p = hole.mouth;
    p[axis] += (tip - hole.mouth[axis]) * i / kBeginnings;
    from.push_back(p);
  }
  const double wall = settled(
      body, [&](const Spatial& p) { return nearestIn(hole, p); }, from);
  if (wall > 0) return wall;
  // They meet: by how much the hole's own edge lies within, where its axis comes nearest.
  double deepest = 0;
  for (const Spatial& p : from) {
    const bool level = p[body.across()] >= body.low() && p[body.across()] <= body.high();
    if (level) deepest = std::min(deepest, body.shape().edgeFrom(body.seen(p)) - hole.radius);
  }
  return deepest;
}

/// Whether a hole lies wholly within what is milled, in its own face: it goes down from the floor.
bool liesWithin(const MilledShape& shape, const PlannedHole& hole) {
  if (hole.face != shape.face || !hole.centre) return false;
  const SeenFrame frame(shape.face);
  const PlanePoint at{frame.own[0] * (*hole.centre)[0].toInches(),
                      frame.own[1] * (*hole.centre)[1].toInches()};
  return shape.edgeFrom(at) <= -hole.diameter.toInches() / 2 + 1e-9;
}

/// The same of two slots or pockets. In plan the nearest two points of their ways.
double wallTo(const MilledBody& a, const MilledBody& b) {
  std::vector<Spatial> from;
  const SeenFrame frame(b.shape().face);
  double beside = std::numeric_limits<double>::infinity();
  for (const PathPiece& piece : b.shape().way) {
    constexpr int kLooks = 32;
    const double begins = piece.circle ? std::atan2(piece.start.y - piece.circle->centre.y,
                                                    piece.start.x - piece.circle->centre.x)
                                       : 0;
    for (int i = 0; i <= kLooks; ++i) {
      const double share = double(i) / kLooks;
      PlanePoint at = partWay(piece.start, piece.end, share);
      if (piece.circle) {
        const double angle = (piece.isWhole ? 0 : begins) + piece.sense * share * sweepOf(piece);
        at = {piece.circle->centre.x + piece.circle->radius * std::cos(angle),
              piece.circle->centre.y + piece.circle->radius * std::sin(angle)};
      }
      Spatial p{};
      p[static_cast<std::size_t>(frame.axes[0])] = frame.own[0] * at.x;
      p[static_cast<std::size_t>(frame.axes[1])] = frame.own[1] * at.y;
      p[b.across()] = (b.low() + b.high()) / 2;
      from.push_back(p);
      if (a.across() != b.across()) continue;
      beside = std::min(beside, a.shape().edgeFrom(a.seen(p)) - b.shape().radius);
    }
  }
  const bool level = a.across() == b.across() && a.high() > b.low() && a.low() < b.high();
  if (level && beside <= 0) return beside;
  const double wall = settled(
      a, [&](const Spatial& p) { return b.nearest(p); }, from);
  return wall > 0 ? wall : std::min(beside, 0.0);
}

bool isMeant(const MilledShape& shape, const PlannedHole& hole) {
  const auto& meets = hole.drilled->meets;
  if (shape.isNamedBy(meets)) return true;
  return std::any_of(shape.meets.begin(), shape.meets.end(),
                     [&](const Id& one) { return one == hole.id || one == hole.feature; });
}

bool boxesMeet(const MilledBody& body, const HoleBody& hole, double margin) {
  if (hole.endless || hole.adrift) return true;
  const auto axis = static_cast<std::size_t>(hole.axis);
  const double tip = hole.mouth[axis] + hole.inward * (hole.length + hole.point);
  const double low = std::min(hole.mouth[axis], tip), high = std::max(hole.mouth[axis], tip);
  if (axis == body.across() && (low > body.high() + margin || high < body.low() - margin)) {
    return false;
  }
  const auto [least, most] = extentsOf(body.shape().way);
  PlanePoint a = body.seen(hole.mouth);
  Spatial ends = hole.mouth;
  ends[axis] = tip;
  const PlanePoint b = body.seen(ends);
  const double reach = hole.radius + body.shape().radius + margin;
  return std::max(a.x, b.x) + reach >= least.x && std::min(a.x, b.x) - reach <= most.x &&
         std::max(a.y, b.y) + reach >= least.y && std::min(a.y, b.y) - reach <= most.y;
}

class MilledChecker {
 public:
  MilledChecker(const WorkBlock& block, const ToolsOwned& tools) : block_(block), tools_(tools) {}

  void add(const std::vector<Id>& places, double wall) {
    const double wanted = tools_.marginWall().toInches();
    const Length by = ticksOf(wanted - wall);
    if (by <= Length::ticks(2)) return;  // no less than a wall as wanted, but for rounding
    Finding finding;
    finding.code = FindingCode::breaksInto;
    finding.places = places;
    finding.by = by;
    finding.had = ticksOf(wall);
    findings.push_back(std::move(finding));
  }

  void checkFloor(const MilledShape& shape) {
    const auto thick = block_.sizeFinished(axisAcross(shape.face));
    if (!shape.depth || !thick) return;
    const auto left = thick->minus(*shape.depth);
    if (!left || *left >= tools_.marginWall()) return;
    Finding finding;
    finding.code = FindingCode::breaksThrough;
    finding.places = {shape.id};
    finding.by = tools_.marginWall().minus(*left);
    finding.tool = "end mill";
    finding.side = oppositeOf(shape.face);
    finding.had = left;
    findings.push_back(std::move(finding));
  }

  /// Of a pocket that comes too near an outer side, or through it; of a slot only where it lies
  /// within all of them: slots that are open at an end are common.
  void checkSides(const MilledShape& shape) {
    const SeenFrame frame(shape.face);
    const auto [low, high] = extentsOf(shape.way);
    const std::int64_t radius = ticksOf(shape.radius).ticks();
    std::optional<Side> nearest;
    std::int64_t wall = tools_.marginWall().ticks(), now = 0;
    for (const std::size_t k : {0U, 1U}) {
      const auto [a, b] = std::minmax({frame.along(k, low), frame.along(k, high)});
      for (const bool upper : {false, true}) {
        const Side side = sideAt(frame.axes[k], upper);
        const auto at = block_.finished(side), stands = block_.now(side);
        if (!at || !stands) continue;
        const std::int64_t edge = upper ? b.ticks() + radius : a.ticks() - radius;
        const std::int64_t here = (at->ticks() - edge) * (upper ? 1 : -1);
        if (here >= wall - 2) continue;
        wall = here;
        now = (stands->ticks() - edge) * (upper ? 1 : -1);
        nearest = side;
      }
    }
    if (!nearest || (wall < 0 && !shape.isPocket)) return;
    const Length wanted = wall < 0 ? Length() : tools_.marginWall();
    Finding finding;
    finding.code = wall < 0 ? FindingCode::breaksOut : FindingCode::thinWall;
    finding.places = {shape.id};
    finding.by = Length::ticks(wanted.ticks() - wall);
    finding.side = nearest;
    finding.tool = "end mill";
    finding.nowToo = now < wanted.ticks();
    finding.had = Length::ticks(wall);
    findings.push_back(std::move(finding));
  }

  std::vector<Finding> findings;

 private:
  static Length ticksOf(double inches) {
    return Length::ticks(std::llround(inches * static_cast<double>(Length::kTicksPerInch)));
  }

  const WorkBlock& block_;
  const ToolsOwned& tools_;
};

}  // namespace

std::vector<Finding> checkMilled(const Part& part, const Solution& solution, const WorkBlock& block,
                                 const std::vector<PlannedHole>& holes, const ToolsOwned& tools) {
  MilledChecker checker(block, tools);
  const std::vector<MilledShape> shapes = milledShapes(part, solution);
  if (shapes.empty()) return {};
  std::vector<MilledBody> bodies;
  for (const MilledShape& shape : shapes) {
    checker.checkFloor(shape);
    if (!shape.way.empty()) checker.checkSides(shape);
    if (!shape.way.empty()) bodies.emplace_back(shape, block);
  }
  const double margin = tools.marginWall().toInches();
  const std::vector<HoleBody> drilled = holeBodies(holes, block);
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    const MilledShape& shape = bodies[i].shape();
    std::vector<double> walls(holes.size(), margin);
    for (const HoleBody& body : drilled) {
      const PlannedHole& hole = holes[body.hole];
      const bool isLost = bodies[i].isAdrift() || body.adrift;
      if (isLost && hole.face != shape.face) continue;
      if (!boxesMeet(bodies[i], body, margin) || isMeant(shape, hole) || liesWithin(shape, hole)) {
        continue;
      }
      walls[body.hole] = std::min(walls[body.hole], wallTo(bodies[i], body));
    }
    for (std::size_t k = 0; k < holes.size(); ++k) {
      checker.add({shape.id, holes[k].id}, walls[k]);
    }
    for (std::size_t j = i + 1; j < bodies.size(); ++j) {
      const MilledShape& other = bodies[j].shape();
      const bool isLost = bodies[i].isAdrift() || bodies[j].isAdrift();
      if (isLost && other.face != shape.face) continue;
      if (shape.isNamedBy(other.meets) || other.isNamedBy(shape.meets)) continue;
      checker.add({shape.id, other.id}, std::min(margin, wallTo(bodies[i], bodies[j])));
    }
  }
  return std::move(checker.findings);
}

}  // namespace inchwright
