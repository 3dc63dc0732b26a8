#include "core/checks/hole_body.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/shop/drill_work.h"

namespace inchwright {
namespace {

using Vector = std::array<double, 3>;

constexpr double kEndless = 1e4;  // inches; no part is as large
constexpr int kMostSteps = 4000;
constexpr double kSettled = 1e-9;

double inchesOf(Length length) {
  return length.toInches();
}

/// From and to of a body along its own axis.
struct Reach {
  double low;
  double high;
};
Reach reachOf(const HoleBody& body, double length) {
  const auto axis = static_cast<std::size_t>(body.axis);
  if (body.endless) return {-kEndless, kEndless};
  const double from = body.mouth[axis], to = from + body.inward * length;
  return {std::min(from, to), std::max(from, to)};
}

/// The nearest point of a body to a point, in the half plane of its axis: along and off it.
struct Half {
  double along;
  double off;
};
Half nearestInProfile(const HoleBody& body, Half p) {
  Half best{std::clamp(p.along, 0.0, body.length), std::min(p.off, body.radius)};
  if (body.point <= 0) return best;
  // The cone: from full diameter at `length` to its tip.
  const double fallen = p.along - body.length;
  if (fallen <= 0) return best;
  const double allowed = body.radius * std::max(0.0, 1 - fallen / body.point);
  if (fallen <= body.point && p.off <= allowed) return p;
  // Nearest on its slanted side.
  const double dx = body.point, dy = -body.radius;
  const double t =
      std::clamp((fallen * dx + (p.off - body.radius) * dy) / (dx * dx + dy * dy), 0.0, 1.0);
  return {body.length + t * dx, body.radius + t * dy};
}

double distanceOf(const Vector& a, const Vector& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/// The nearest points of two convex bodies by going from one to the other and back, which comes
/// together on them.
double settledWall(const HoleBody& a, const HoleBody& b) {
  Vector onA = nearestIn(a, b.mouth);
  double before = 1e9;
  for (int i = 0; i < kMostSteps; ++i) {
    const Vector onB = nearestIn(b, onA);
    onA = nearestIn(a, onB);
    const double now = distanceOf(onA, onB);
    if (now < kSettled || before - now < kSettled * 1e-3) return now;
    before = now;
  }
  return before;
}

double apartOf(Reach a, Reach b) {
  return std::max({0.0, a.low - b.high, b.low - a.high});
}

double sideBySide(const HoleBody& a, const HoleBody& b) {
  double square = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    if (i != static_cast<std::size_t>(a.axis)) {
      square += (a.mouth[i] - b.mouth[i]) * (a.mouth[i] - b.mouth[i]);
    }
  }
  const double beside = std::sqrt(square) - a.radius - b.radius;
  if (apartOf(reachOf(a, a.length), reachOf(b, b.length)) <= 0) return beside;
  const double wall = settledWall(a, b);
  return wall > kSettled ? wall : std::min(beside, 0.0);
}

double crossing(const HoleBody& a, const HoleBody& b) {
  const auto axisA = static_cast<std::size_t>(a.axis), axisB = static_cast<std::size_t>(b.axis);
  const std::size_t third = 3 - axisA - axisB;
  const double beside = std::abs(a.mouth[third] - b.mouth[third]) - a.radius - b.radius;
  const Reach reachA = reachOf(a, a.length), reachB = reachOf(b, b.length);
  const bool facing = b.mouth[axisA] >= reachA.low && b.mouth[axisA] <= reachA.high &&
                      a.mouth[axisB] >= reachB.low && a.mouth[axisB] <= reachB.high;
  if (facing) return beside;
  const double wall = settledWall(a, b);
  return wall > kSettled ? wall : std::min(beside, 0.0);
}

class BodyMaker {
 public:
  BodyMaker(const WorkBlock& block, std::vector<HoleBody>& bodies)
      : block_(block), bodies_(bodies) {}

  void add(const PlannedHole& hole, std::size_t index) {
    if (!hole.centre || hole.diameter <= Length()) return;
    HoleBody body;
    body.hole = index;
    const Axis across = axisAcross(hole.face);
    body.axis = static_cast<int>(across);
    body.inward = -outward(hole.face);
    const auto axes = axesIn(hole.face);
    for (std::size_t i = 0; i < 2; ++i) {
      body.mouth[static_cast<std::size_t>(axes[i])] = inchesOf((*hole.centre)[i]);
    }
    const auto face = block_.finished(hole.face);
    if (face) body.mouth[static_cast<std::size_t>(across)] = inchesOf(*face);
    body.adrift = !face;
    body.radius = inchesOf(hole.diameter) / 2;
    addCut(hole, body);
    addSeat(hole, body);
  }

 private:
  void addCut(const PlannedHole& hole, HoleBody body) {
    if (hole.drilled->depth.through || !hole.drilled->depth.length) {
      const auto thick = block_.sizeFinished(axisAcross(hole.face));
      body.endless = !thick;
      if (thick) body.length = inchesOf(*thick);
      bodies_.push_back(body);
      return;
    }
    body.length = inchesOf(hole.drilled->depth.length->value);
    const HoleStep* drill = nullptr;
    for (const HoleStep& step : hole.plan->steps) {
      const bool cuts = step.kind == ToolKind::drill && step.size && step.fullDepth;
      if (cuts && (!drill || *step.size > *drill->size)) drill = &step;
    }
    if (drill) {
      HoleBody deep = body;
      deep.radius = inchesOf(*drill->size) / 2;
      deep.length = inchesOf(Length::ticks(drill->fullDepth->ticks() - hole.onFace.ticks()));
      deep.point = inchesOf(pointLength(*drill->size));
      bodies_.push_back(deep);
      if (*drill->size >= hole.diameter) return;
    } else if (hole.drilled->make != Make::bore) {
      body.point = inchesOf(pointLength(hole.diameter));
    }
    bodies_.push_back(body);
  }

  void addSeat(const PlannedHole& hole, HoleBody body) {
    if (!hole.drilled->seatDiameter) return;
    body.radius = inchesOf(hole.drilled->seatDiameter->value) / 2;
    if (hole.drilled->seatDepth) body.length = inchesOf(hole.drilled->seatDepth->value);
    if (hole.drilled->make == Make::countersink) body.point = body.radius;
    bodies_.push_back(body);
  }

  const WorkBlock& block_;
  std::vector<HoleBody>& bodies_;
};

}  // namespace

std::array<double, 3> nearestIn(const HoleBody& body, const std::array<double, 3>& p) {
  const auto axis = static_cast<std::size_t>(body.axis);
  std::array<double, 3> off{};
  double radial = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    if (i == axis) continue;
    off[i] = p[i] - body.mouth[i];
    radial += off[i] * off[i];
  }
  radial = std::sqrt(radial);
  const double along = (p[axis] - body.mouth[axis]) * body.inward;
  const Half near = nearestInProfile(body, {body.endless ? 0 : along, radial});
  std::array<double, 3> result = body.mouth;
  for (std::size_t i = 0; i < 3; ++i) {
    if (i != axis) result[i] += radial > 0 ? off[i] / radial * std::min(near.off, radial) : 0;
  }
  result[axis] = body.endless ? p[axis] : body.mouth[axis] + body.inward * near.along;
  return result;
}

std::vector<HoleBody> holeBodies(const std::vector<PlannedHole>& holes, const WorkBlock& block) {
  std::vector<HoleBody> bodies;
  BodyMaker maker(block, bodies);
  for (std::size_t i = 0; i < holes.size(); ++i) maker.add(holes[i], i);
  return bodies;
}

double wallBetween(const HoleBody& a, const HoleBody& b) {
  const bool sameFace = a.axis == b.axis && a.inward == b.inward;
  const bool lost = (a.adrift && !a.endless) || (b.adrift && !b.endless);
  if (lost && !sameFace && !(a.axis == b.axis && (a.endless || b.endless))) {
    return std::numeric_limits<double>::infinity();
  }
  return a.axis == b.axis ? sideBySide(a, b) : crossing(a, b);
}

}  // namespace inchwright
