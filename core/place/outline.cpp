#include "core/place/outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace inchwright {
namespace {

// Nearer than this to touching is touching: what is left of a touch after rounding.
constexpr double kSureTouch = 1e-9;
// Crossings that are chosen between together; more are taken one by one.
constexpr std::size_t kMostOpenCorners = 10;

struct Carrier {
  const Feature* feature = nullptr;
  const PlaneLine* line = nullptr;
  const PlaneCircle* circle = nullptr;

  bool isPlaced() const { return line != nullptr || circle != nullptr; }
};

struct Corner {
  std::vector<PlanePoint> candidates;
  std::size_t taken = 0;
  bool isSettled = false;
  double misses = 0;
};

template <class Map>
auto find(const Map& map, const Id& id) {
  const auto found = map.find(id);
  return found == map.end() ? nullptr : &found->second;
}

Carrier carrierOf(const Part& part, const FacePlane& plane, const Id& id) {
  return {part.feature(id), find(plane.lines, id), find(plane.circles, id)};
}

// How deep two carriers reach into each other: below 0 they miss, at 0 they touch.
double depthBetween(const Carrier& a, const Carrier& b) {
  if (a.line != nullptr && b.line != nullptr) return std::numeric_limits<double>::infinity();
  if (a.line != nullptr) return b.circle->radius - std::abs(leftOf(*a.line, b.circle->centre));
  if (b.line != nullptr) return depthBetween(b, a);
  const double apart = distanceBetween(a.circle->centre, b.circle->centre);
  return std::min(a.circle->radius + b.circle->radius - apart,
                  apart - std::abs(a.circle->radius - b.circle->radius));
}

Corner cornerBetween(const Carrier& a, const Carrier& b) {
  Corner corner;
  const double depth = depthBetween(a, b);
  if (std::abs(depth) < kTouchInches && std::abs(depth) > 100 * kSureTouch) {
    corner.misses = std::abs(depth);
  }
  const double within = depth < 0 ? kTouchInches : kSureTouch;
  if (a.line != nullptr && b.line != nullptr) {
    corner.candidates = meetings(*a.line, *b.line);
  } else if (a.line != nullptr) {
    corner.candidates = meetings(*a.line, *b.circle, within);
  } else if (b.line != nullptr) {
    corner.candidates = meetings(*b.line, *a.circle, within);
  } else {
    corner.candidates = meetings(*a.circle, *b.circle, within);
  }
  corner.isSettled = corner.candidates.size() < 2;
  return corner;
}

// Where a side lies in a face as it is seen.
std::optional<PlanePoint> wayTo(Side side, Face face) {
  const auto axes = axesIn(face);
  const auto own = ownDirections(face);
  if (axisAcross(side) == axes[0]) return PlanePoint{1.0 * own[0] * outward(side), 0};
  if (axisAcross(side) == axes[1]) return PlanePoint{0, 1.0 * own[1] * outward(side)};
  return std::nullopt;
}

void takeFurthest(Corner& corner, PlanePoint way) {
  const auto along = [&](PlanePoint p) { return p.x * way.x + p.y * way.y; };
  corner.taken = along(corner.candidates[0]) >= along(corner.candidates[1]) ? 0 : 1;
  corner.isSettled = true;
}

// The tracing of a straight neighbour ends near its corners.
void takeByTracing(Corner& corner, const FacePlane& plane, const Id& a, const Id& b) {
  double best = std::numeric_limits<double>::infinity();
  for (const Id* id : {&a, &b}) {
    const auto* traced = find(plane.traced, *id);
    if (traced == nullptr || traced->size() < 2 || find(plane.lines, *id) == nullptr) continue;
    for (const PlanePoint& end : {traced->front(), traced->back()}) {
      for (std::size_t i = 0; i < corner.candidates.size(); ++i) {
        const double off = distanceBetween(end, corner.candidates[i]);
        if (off >= best) continue;
        best = off;
        corner.taken = i;
        corner.isSettled = true;
      }
    }
  }
}

// Nothing of a part lies beyond its outer sides.
void dropWhatLiesOutside(Corner& corner, const Part& part, const FacePlane& plane) {
  if (corner.candidates.size() < 2) return;
  const auto isOutside = [&](PlanePoint p) {
    return std::any_of(part.features.begin(), part.features.end(), [&](const Feature& feature) {
      const auto* edge = feature.as<kind::Edge>();
      const PlaneLine* line = find(plane.lines, feature.id);
      const auto way = edge != nullptr && edge->side && line != nullptr
                           ? wayTo(*edge->side, plane.face)
                           : std::nullopt;
      if (!way) return false;
      const double off = leftOf(*line, p);
      const bool isLeftOutward =
          std::cos(line->direction) * way->y - std::sin(line->direction) * way->x > 0;
      return (isLeftOutward ? off : -off) > kTouchInches;
    });
  };
  std::vector<PlanePoint> within = corner.candidates;
  std::erase_if(within, isOutside);
  if (within.size() != 1) return;
  corner.candidates = std::move(within);
  corner.isSettled = true;
}

class Joining {
 public:
  Joining(const Part& part, const FacePlane& plane, const OutlineRequest& request)
      : part_(part), plane_(plane), request_(request) {
    for (const Id& id : request.follows) carriers_.push_back(carrierOf(part, plane, id));
  }

  Outline run();

 private:
  std::size_t size() const { return carriers_.size(); }
  std::size_t before(std::size_t i) const { return (i + size() - 1) % size(); }
  void findCorners();
  void chooseByArea();
  std::vector<PathPiece> pieces() const;
  int senseOf(std::size_t i, const std::vector<PathPiece>& chords) const;

  const Part& part_;
  const FacePlane& plane_;
  const OutlineRequest& request_;
  std::vector<Carrier> carriers_;
  std::vector<Corner> corners_;  // each between a carrier and the next
};

void Joining::findCorners() {
  for (std::size_t i = 0; i < size(); ++i) {
    const std::size_t next = (i + 1) % size();
    if (!carriers_[i].isPlaced() || !carriers_[next].isPlaced()) {
      corners_.emplace_back();
      continue;
    }
    Corner corner = cornerBetween(carriers_[i], carriers_[next]);
    dropWhatLiesOutside(corner, part_, plane_);
    for (const std::size_t k : {i, next}) {
      if (corner.isSettled || carriers_[k].feature == nullptr) continue;
      const auto side = sideOf(*carriers_[k].feature);
      const bool isRound = carriers_[k].feature->is<kind::Round>();
      const auto way = side && isRound ? wayTo(*side, plane_.face) : std::nullopt;
      if (way) takeFurthest(corner, *way);
    }
    if (!corner.isSettled) {
      takeByTracing(corner, plane_, request_.follows[i], request_.follows[next]);
    }
    corners_.push_back(std::move(corner));
  }
}

// Which way an arc is followed: on from a straight neighbour without a break where there is none;
// else a round anticlockwise, as an end of the work is, and an arc the shorter way.
int Joining::senseOf(std::size_t i, const std::vector<PathPiece>& chords) const {
  const PathPiece& own = chords[i];
  const PlanePoint c = own.circle->centre;
  for (const bool atStart : {true, false}) {
    const PathPiece& other = chords[atStart ? before(i) : (i + 1) % size()];
    const PlanePoint p = atStart ? own.start : own.end;
    if (other.circle || distanceBetween(other.start, other.end) < 1e-6) continue;
    const PlanePoint way = wayAtStart(other);
    const double turn = ((p.x - c.x) * way.y - (p.y - c.y) * way.x) / own.circle->radius;
    if (std::abs(turn) > 0.98) return turn > 0 ? 1 : -1;
  }
  if (carriers_[i].feature != nullptr && carriers_[i].feature->is<kind::Round>()) return 1;
  const double left = (own.end.x - own.start.x) * (c.y - own.start.y) -
                      (own.end.y - own.start.y) * (c.x - own.start.x);
  return left >= 0 ? 1 : -1;
}

std::vector<PathPiece> Joining::pieces() const {
  std::vector<PathPiece> chords;
  for (std::size_t i = 0; i < size(); ++i) {
    PathPiece piece;
    piece.start = corners_[before(i)].candidates[corners_[before(i)].taken];
    piece.end = corners_[i].candidates[corners_[i].taken];
    if (carriers_[i].circle != nullptr) piece.circle = *carriers_[i].circle;
    chords.push_back(piece);
  }
  std::vector<PathPiece> path = chords;
  for (std::size_t i = 0; i < size(); ++i) {
    if (path[i].circle) path[i].sense = senseOf(i, chords);
  }
  return path;
}

void Joining::chooseByArea() {
  std::vector<std::size_t> open;
  for (std::size_t i = 0; i < size(); ++i) {
    if (!corners_[i].isSettled && open.size() < kMostOpenCorners) open.push_back(i);
  }
  double greatest = -std::numeric_limits<double>::infinity();
  std::size_t best = 0;
  const auto take = [&](std::size_t choice) {
    for (std::size_t k = 0; k < open.size(); ++k) corners_[open[k]].taken = choice >> k & 1;
  };
  for (std::size_t choice = 0; choice < std::size_t{1} << open.size(); ++choice) {
    take(choice);
    const double area = areaOf(pieces());
    if (area <= greatest) continue;
    greatest = area;
    best = choice;
  }
  take(best);
}

Outline Joining::run() {
  Outline outline;
  outline.face = plane_.face;
  outline.from = plane_.from;
  outline.isInner = request_.isInner;
  for (std::size_t i = 0; i < size(); ++i) {
    const Feature* feature = carriers_[i].feature;
    outline.pieces.push_back(
        {request_.follows[i], feature != nullptr ? feature->kind() : FeatureKind::edge, {}, 0});
  }
  if (size() == 1 && carriers_[0].circle != nullptr) {
    outline.pieces[0].path = PathPiece{{}, {}, *carriers_[0].circle, 1, true};
    outline.isClosed = true;
    return outline;
  }
  if (size() < 2) return outline;
  findCorners();
  outline.isClosed = std::none_of(corners_.begin(), corners_.end(),
                                  [](const Corner& one) { return one.candidates.empty(); });
  for (std::size_t i = 0; i < size(); ++i) outline.pieces[i].missesNext = corners_[i].misses;
  if (outline.isClosed) {
    chooseByArea();
    const std::vector<PathPiece> path = pieces();
    for (std::size_t i = 0; i < size(); ++i) outline.pieces[i].path = path[i];
    return outline;
  }
  for (std::size_t i = 0; i < size(); ++i) {
    const Corner &start = corners_[before(i)], &end = corners_[i];
    if (start.candidates.empty() || end.candidates.empty()) continue;
    PathPiece piece{start.candidates[start.taken], end.candidates[end.taken], {}, 1, false};
    if (carriers_[i].circle != nullptr) piece.circle = *carriers_[i].circle;
    outline.pieces[i].path = piece;
  }
  return outline;
}

// The four ways round a face as it is seen, anticlockwise from the lower side.
constexpr std::array<PlanePoint, 4> kWaysRound{{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}};

// The round that stands in place of a side: about an end, touching that side where it is drawn too,
// and meeting what lies on either hand.
const Feature* roundEnd(const Part& part, const FacePlane& plane, PlanePoint way, const Id& edge,
                        const std::array<Id, 2>& neighbours) {
  for (const Feature& feature : part.features) {
    const auto* round = feature.as<kind::Round>();
    const PlaneCircle* circle = find(plane.circles, feature.id);
    if (round == nullptr || circle == nullptr || round->about.empty() || !round->side) continue;
    const auto own = wayTo(*round->side, plane.face);
    if (!own || *own != way) continue;
    const Carrier carrier{&feature, nullptr, circle};
    if (const PlaneLine* line = find(plane.lines, edge)) {
      if (std::abs(depthBetween({nullptr, line, nullptr}, carrier)) > kTouchInches) continue;
    }
    const bool meetsBoth = std::all_of(neighbours.begin(), neighbours.end(), [&](const Id& id) {
      const PlaneLine* line = find(plane.lines, id);
      return line == nullptr || depthBetween({nullptr, line, nullptr}, carrier) > -kTouchInches;
    });
    if (meetsBoth) return &feature;
  }
  return nullptr;
}

const Feature* cornerRound(const Part& part, const FacePlane& plane, const Id& a, const Id& b) {
  for (const Feature& feature : part.features) {
    const auto* round = feature.as<kind::Round>();
    if (round == nullptr || round->corner.size() != 2 || !plane.circles.contains(feature.id)) {
      continue;
    }
    const auto& corner = round->corner;
    if ((corner[0] == a && corner[1] == b) || (corner[0] == b && corner[1] == a)) return &feature;
  }
  return nullptr;
}

const OutlinePiece* nearestPiece(const Outline& outline, PlanePoint p, double& least) {
  const OutlinePiece* nearest = nullptr;
  for (const OutlinePiece& piece : outline.pieces) {
    const double distance = distanceTo(*piece.path, p);
    if (distance >= least) continue;
    least = distance;
    nearest = &piece;
  }
  return nearest;
}

}  // namespace

std::vector<PathPiece> Outline::path() const {
  std::vector<PathPiece> path;
  for (const OutlinePiece& piece : pieces) {
    if (piece.path) path.push_back(*piece.path);
  }
  return path;
}

std::pair<PlanePoint, PlanePoint> Outline::extents() const {
  return extentsOf(path());
}

double Outline::area() const {
  return areaOf(path());
}

Outline joinOutline(const Part& part, const FacePlane& plane, const OutlineRequest& request) {
  return Joining(part, plane, request).run();
}

std::optional<OutlineRequest> outlineByItself(const Part& part, const FacePlane& plane) {
  std::array<Id, 4> sides;
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || !edge->side || !plane.lines.contains(feature.id)) continue;
    const auto way = wayTo(*edge->side, plane.face);
    if (!way) continue;
    const auto found = std::find(kWaysRound.begin(), kWaysRound.end(), *way);
    Id& side = sides[static_cast<std::size_t>(found - kWaysRound.begin())];
    if (side.empty() || feature.id < side) side = feature.id;
  }
  OutlineRequest request;
  std::array<Id, 4> followed = sides;
  for (std::size_t i = 0; i < 4; ++i) {
    const Feature* round =
        roundEnd(part, plane, kWaysRound[i], sides[i], {sides[(i + 3) % 4], sides[(i + 1) % 4]});
    if (round != nullptr) followed[i] = round->id;
    if (followed[i].empty()) return std::nullopt;
  }
  for (std::size_t i = 0; i < 4; ++i) {
    request.follows.push_back(followed[i]);
    const Feature* corner = cornerRound(part, plane, followed[i], followed[(i + 1) % 4]);
    if (corner != nullptr) request.follows.push_back(corner->id);
  }
  return request;
}

std::vector<Wall> wallsOf(const Part& part, const FacePlane& plane,
                          const std::vector<Outline>& outlines) {
  std::vector<Wall> walls;
  if (outlines.empty() || !outlines[0].isClosed) return walls;
  const std::vector<PathPiece> outer = outlines[0].path();
  for (const Feature& feature : part.features) {
    const Drilled* drilled = feature.drilled();
    if (drilled == nullptr || feature.face != plane.face || !drilled->diameter) continue;
    const double radius = drilled->diameter->value.toInches() / 2;
    for (const Place& place : drivenPlaces(feature)) {
      const PlanePoint* at = find(plane.places, place.id);
      if (at == nullptr) continue;
      double least = std::numeric_limits<double>::infinity();
      const OutlinePiece* beside = nullptr;
      for (const Outline& outline : outlines) {
        if (!outline.isClosed) continue;
        const OutlinePiece* nearest = nearestPiece(outline, *at, least);
        if (nearest != nullptr) beside = nearest;
      }
      if (beside == nullptr) continue;
      const bool isIn = isInside(outer, *at);
      if (!isIn && least > radius) continue;
      walls.push_back({place.id, (isIn ? least : -least) - radius, beside->id, drilled->breaksOut});
    }
  }
  return walls;
}

}  // namespace inchwright
