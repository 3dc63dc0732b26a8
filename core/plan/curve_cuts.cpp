#include "core/plan/curve_cuts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace inchwright {
namespace {

constexpr double kDegreesPerRadian = 180 / std::numbers::pi;
// A corner that turns by less than this is a touch: the way goes on.
constexpr double kTouchingSine = 0.02;

Length ticksOfInches(double inches) {
  return Length::ticks(std::llround(inches * static_cast<double>(Length::kTicksPerInch)));
}

// Readout coordinates of points of the face.
class Readout {
 public:
  static Result<Readout> of(const WorkAt& work, const FacePlane& plane) {
    Readout out(work);
    out.axes_ = axesIn(plane.face);
    out.own_ = ownDirections(plane.face);
    for (const std::size_t k : {0U, 1U}) {
      const Position* from = work.position(plane.from[k], out.axes_[k]);
      const TableAxis* along = work.along(out.axes_[k]);
      if (from == nullptr || along == nullptr || !along->zero) {
        return Error{ErrorCode::unsolvable, "nothing says where zero is", plane.from[k]};
      }
      out.from_[k] = from->ticks.toDouble();
    }
    return out;
  }

  Result<std::pair<Coordinate, Coordinate>> at(PlanePoint p) const {
    std::pair<Coordinate, Coordinate> shown;
    for (const std::size_t k : {0U, 1U}) {
      const double inches = own_[k] * (k == 0 ? p.x : p.y);
      Position position;
      position.ticks =
          Rational(std::llround(from_[k] + inches * static_cast<double>(Length::kTicksPerInch)));
      position.how = How::numeric;
      const TableAxis& along = *work_.along(axes_[k]);
      auto coordinate = work_.coordinate(along, position);
      if (!coordinate) return coordinate.error();
      (along.machine == MachineAxis::x ? shown.first : shown.second) = *std::move(coordinate);
    }
    return shown;
  }

 private:
  explicit Readout(const WorkAt& work) : work_(work) {}

  const WorkAt& work_;
  std::array<Axis, 2> axes_{Axis::x, Axis::y};
  std::array<int, 2> own_{1, 1};
  std::array<double, 2> from_{};
};

struct Found {
  const Outline* outline = nullptr;
  std::size_t piece = 0;
};

Found findPiece(const FaceOutlines& outlines, const Id& of) {
  for (const Outline& outline : outlines.outlines) {
    for (std::size_t i = 0; i < outline.pieces.size(); ++i) {
      if (outline.pieces[i].id == of) return {&outline, i};
    }
  }
  return {};
}

// Whether an outline turns away from the metal from one piece to the next.
bool turnsAway(const Outline& outline, const PathPiece& a, const PathPiece& b) {
  const PlanePoint from = wayAtEnd(a), to = wayAtStart(b);
  const double turn = from.x * to.y - from.y * to.x;
  return (outline.isInner ? -turn : turn) > kTouchingSine;
}

CurveAsItLies asItLies(const Found& found, int turn) {
  const Outline& outline = *found.outline;
  const std::size_t count = outline.pieces.size();
  const PathPiece& piece = *outline.pieces[found.piece].path;
  CurveAsItLies curve;
  curve.circle = *piece.circle;
  curve.isInside = (piece.sense > 0) == outline.isInner;
  curve.sweep = sweepOf(piece) * kDegreesPerRadian;
  if (piece.isWhole) return curve;
  const bool isAnticlockwise = piece.sense > 0;
  const PlanePoint first = isAnticlockwise ? piece.start : piece.end;
  curve.start = std::atan2(first.y - curve.circle.centre.y, first.x - curve.circle.centre.x) *
                    kDegreesPerRadian +
                turn;
  const PathPiece& before = *outline.pieces[(found.piece + count - 1) % count].path;
  const PathPiece& after = *outline.pieces[(found.piece + 1) % count].path;
  curve.startsInAir = turnsAway(outline, before, piece);
  curve.endsInAir = turnsAway(outline, piece, after);
  if (!isAnticlockwise) std::swap(curve.startsInAir, curve.endsInAir);
  return curve;
}

// The bore of the hole that a pin or a button would sit in.
std::optional<Length> boreAt(const WorkAt& work, const FacePlane& plane, PlanePoint centre) {
  for (const Feature& feature : work.part.features) {
    const Drilled* drilled = feature.drilled();
    if (drilled == nullptr || !drilled->diameter) continue;
    for (const Place& place : drivenPlaces(feature)) {
      const auto at = plane.places.find(place.id);
      if (at == plane.places.end() || distanceBetween(at->second, centre) > 1e-6) continue;
      return drilled->diameter->value;
    }
  }
  return std::nullopt;
}

class Cutting {
 public:
  Cutting(const WorkAt& work, const FaceOutlines& outlines, const Readout& readout)
      : work_(work), outlines_(outlines), readout_(readout) {}

  Result<Done> take(const GivenCurve& asked);
  CurveCuts done() { return std::move(out_); }

 private:
  Result<Done> takePoints(const GivenCurve& asked, CurveAsItLies curve, CurveCut& cut);
  void find(CurveTrouble trouble, const Id& of) { out_.findings.push_back({trouble, of}); }

  const WorkAt& work_;
  const FaceOutlines& outlines_;
  const Readout& readout_;
  CurveCuts out_;
};

Result<Done> Cutting::takePoints(const GivenCurve& asked, CurveAsItLies curve, CurveCut& cut) {
  // Points are told from zero, as the readout's axes run: back from how the work lies turned.
  curve.start -= work_.setup.turn;
  const double diameter = asked.cutter->value.toInches();
  std::optional<CutterPoints> points;
  if (asked.count) {
    points = pointsByCount(curve, diameter, *asked.count);
  } else {
    points = pointsByRidge(curve, diameter,
                           asked.ridge ? asked.ridge->value.toInches() : kCustomaryRidge);
  }
  if (!points || !points->ridge) find(CurveTrouble::tooFarApart, asked.of);
  if (!points) return Done{};
  for (const PlanePoint& p : points->points) {
    auto at = readout_.at(p);
    if (!at) return at.error();
    cut.points.push_back({std::move(at->first), std::move(at->second)});
  }
  if (points->ridge) cut.ridge = ticksOfInches(*points->ridge);
  return Done{};
}

Result<Done> Cutting::take(const GivenCurve& asked) {
  const Found found = findPiece(outlines_, asked.of);
  if (found.outline == nullptr) {
    return Error{ErrorCode::notFound, "no outline of this face follows `" + asked.of + "`",
                 asked.of};
  }
  const auto& path = found.outline->pieces[found.piece].path;
  if (!found.outline->isClosed || !path || !path->circle) {
    find(CurveTrouble::notClosed, asked.of);
    return Done{};
  }
  const CurveAsItLies curve = asItLies(found, work_.setup.turn);
  CurveCut cut;
  cut.of = asked.of;
  cut.way = asked.way;
  cut.radius = ticksOfInches(curve.circle.radius);
  cut.isInside = curve.isInside;
  cut.cutterAt = asked.cutterAt;
  if (asked.cutter) cut.cutter = asked.cutter->value;
  auto centre = readout_.at(curve.circle.centre);
  if (!centre) return centre.error();
  cut.x = std::move(centre->first);
  cut.y = std::move(centre->second);
  cut.pin = boreAt(work_, outlines_.plane, curve.circle.centre);
  if (asked.way == CurveWay::filingButtons) {
    if (curve.isInside || !cut.pin) {
      find(CurveTrouble::noHole, asked.of);
      return Done{};
    }
    cut.buttons = CurveCut::Buttons{ticksOfInches(2 * curve.circle.radius), *cut.pin, 2};
    out_.cuts.push_back(std::move(cut));
    return Done{};
  }
  const bool fits =
      !asked.cutter || spindleDistance(curve, asked.cutter->value.toInches()).has_value();
  if (!fits) find(CurveTrouble::cutterTooBig, asked.of);
  if (asked.way == CurveWay::points) {
    if (asked.cutter && fits) {
      const auto taken = takePoints(asked, curve, cut);
      if (!taken) return taken.error();
    }
    out_.cuts.push_back(std::move(cut));
    return Done{};
  }
  if (asked.cutter && fits) {
    cut.spindle = ticksOfInches(*spindleDistance(curve, asked.cutter->value.toInches()));
  }
  cut.dial = dialReadings(curve, asked.cutterAt, work_.machine.rotaryCounts == Sense::clockwise,
                          asked.overrun ? asked.overrun->value.toDegrees() : 0);
  if (cut.dial->overrunRefused) find(CurveTrouble::overrun, asked.of);
  out_.cuts.push_back(std::move(cut));
  return Done{};
}

}  // namespace

std::string_view nameOf(CurveTrouble trouble) {
  switch (trouble) {
    case CurveTrouble::notClosed:
      return "not_closed";
    case CurveTrouble::overrun:
      return "overrun";
    case CurveTrouble::tooFarApart:
      return "too_far_apart";
    case CurveTrouble::noHole:
      return "no_hole";
    case CurveTrouble::cutterTooBig:
      break;
  }
  return "cutter_too_big";
}

Result<CurveCuts> curveCuts(const WorkAt& work, const FaceOutlines& outlines,
                            const std::vector<GivenCurve>& asked) {
  if (asked.empty()) return CurveCuts{};
  const auto readout = Readout::of(work, outlines.plane);
  if (!readout) return readout.error();
  Cutting cutting(work, outlines, *readout);
  for (const GivenCurve& one : asked) {
    const auto taken = cutting.take(one);
    if (!taken) return taken.error();
  }
  return cutting.done();
}

CurveCuts curvesAt(const WorkAt& work) {
  if (work.setup.curves.empty()) return {};
  auto cuts = curveCuts(
      work, outlinesOf(work.part, work.solution.positions, work.solution.beyond, work.setup.face),
      work.setup.curves);
  if (cuts) return *std::move(cuts);
  CurveCuts none;
  for (const GivenCurve& one : work.setup.curves) {
    none.findings.push_back({CurveTrouble::notClosed, one.of});
  }
  return none;
}

std::vector<Id> curvesOf(const FaceOutlines& outlines) {
  std::vector<Id> ids;
  for (const Outline& outline : outlines.outlines) {
    for (const OutlinePiece& piece : outline.pieces) {
      if (piece.isCurve() && std::find(ids.begin(), ids.end(), piece.id) == ids.end()) {
        ids.push_back(piece.id);
      }
    }
  }
  return ids;
}

}  // namespace inchwright
