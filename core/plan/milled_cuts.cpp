#include "core/plan/milled_cuts.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/geometry/inset.h"
#include "core/place/curve.h"

namespace inchwright {
namespace {

using What = CutterRun::What;

// Inches: what lies no further apart is one spot.
constexpr double kSameSpot = 1e-6;

Length lengthAtTick(double inches) {
  return Length::ticks(std::llround(inches * static_cast<double>(Length::kTicksPerInch)));
}

/// What stays in a hollow of this radius and turn between two places a standing cutter went to.
Length leftBetween(double radius, double cutter, double degrees) {
  const CurveAsItLies curve{{{}, radius}, 0, degrees, true, false, false};
  const auto ridge = ridgeBetween(curve, cutter, degrees);
  // Too far apart to meet: all that lies beyond the chord between the two.
  const double most = radius - (radius - cutter / 2) * std::cos(degrees * std::numbers::pi / 360);
  return lengthAtTick(ridge.value_or(most));
}

class Milling {
 public:
  explicit Milling(const WorkAt& work) : work_(work), frame_(work.setup.face) {}

  bool hasZero() const {
    return std::all_of(frame_.axes.begin(), frame_.axes.end(), [&](Axis axis) {
      const TableAxis* along = work_.along(axis);
      return along && along->zero;
    });
  }

  std::optional<MilledCut> cutOf(const PlannedSlot& planned) {
    if (!planned.plan) return std::nullopt;
    cut_ = {};
    cut_.id = planned.id;
    cut_.isPocket = planned.shape.isPocket;
    cut_.disputed = planned.shape.disputed;
    cut_.assumed = planned.shape.assumed;
    cut_.depthUnsaid = planned.shape.depthUnsaid;
    cut_.tool = planned.plan->tool;
    cut_.cutter = planned.plan->size;
    cut_.passes = planned.plan->passes;
    cutter_ = planned.plan->size.toInches();
    lost_ = false;
    entry_.reset();
    last_.reset();
    if (planned.shape.isPocket) {
      addPocket(planned);
    } else {
      addSlot(planned);
    }
    if (lost_) return std::nullopt;
    if (planned.plan->first) {
      cut_.drill = planned.plan->first->drill.name;
      if (entry_) cut_.drillFirst = shown(*entry_);
    }
    return std::move(cut_);
  }

 private:
  CutterStands shown(PlanePoint p) {
    CutterStands stands;
    for (const std::size_t k : {0U, 1U}) {
      const TableAxis& along = *work_.along(frame_.axes[k]);
      Position position;
      position.ticks = frame_.along(k, p).rational();
      auto coordinate = work_.coordinate(along, position);
      if (!coordinate) {
        lost_ = true;
        continue;
      }
      (along.machine == MachineAxis::x ? stands.x : stands.y) = *std::move(coordinate);
    }
    return stands;
  }

  void run(What what, PlanePoint from, PlanePoint to) {
    if (cut_.runs.size() >= kMostCutterRuns) {
      cut_.cutShort = true;
      return;
    }
    cut_.runs.push_back({what, shown(from), shown(to)});
    // In a slot the ends are round; in a pocket what lies between is looked at.
    const bool goesOn = !last_ || distanceBetween(*last_, from) < kSameSpot;
    if (!goesOn && (what == What::side || !staysClear(*last_, from))) cut_.liftBetween = true;
    last_ = to;
  }

  /// Whether a cutter that goes along either slide and then the other keeps off a pocket's wall.
  bool staysClear(PlanePoint from, PlanePoint to) const {
    if (!wall_) return true;
    constexpr int kLooks = 16;
    for (int i = 0; i <= 2 * kLooks; ++i) {
      const double on = static_cast<double>(i) / kLooks;
      const double first = std::min(on, 1.0), then = std::max(on - 1.0, 0.0);
      for (const bool x : {true, false}) {
        const PlanePoint p{from.x + (to.x - from.x) * (x ? first : then),
                           from.y + (to.y - from.y) * (x ? then : first)};
        if (!isInside(*wall_, p)) return false;
        for (const PathPiece& piece : *wall_) {
          if (distanceTo(piece, p) < cutter_ / 2 - kSameSpot) return false;
        }
      }
    }
    return true;
  }

  /// How far off the middle the cutter goes to either side, in turn: at most two thirds of it
  /// further each time.
  std::vector<double> sidewards(double width) const {
    std::vector<double> off;
    const double most = (width - cutter_) / 2;
    if (most * Length::kTicksPerInch < 1) return off;
    const int times = static_cast<int>(std::ceil(most / (cutter_ * 2 / 3) - 1e-9));
    constexpr int kMostTimes = 1000;  // beyond that the runs are cut short anyway
    for (int i = 1; i <= std::min(times, kMostTimes); ++i) off.push_back(most * i / times);
    return off;
  }

  void addSlot(const PlannedSlot& planned) {
    cut_.width = work_.part.feature(planned.id)->as<kind::Slot>()->width;
    cut_.offCircle = planned.shape.offCircle;
    lost_ = planned.shape.way.empty() && !cut_.offCircle;
    if (planned.shape.way.empty()) return;
    const PathPiece& way = planned.shape.way.front();
    wall_ = nullptr;
    entry_ = way.start;
    if (way.circle) {
      addCurvedSlot(way, planned.shape.radius);
    } else {
      addStraightSlot(way.start, way.end, planned.shape.radius);
    }
    if (planned.shape.radius - cutter_ / 2 < Length::ticks(1).toInches()) return;
    cut_.left.push_back(
        {LeftStanding::Why::endOfSlot, planned.id, leftBetween(planned.shape.radius, cutter_, 90)});
  }

  void addStraightSlot(PlanePoint a, PlanePoint b, double radius) {
    const double length = distanceBetween(a, b);
    PlanePoint way{1, 0};
    if (length > 0) way = {(b.x - a.x) / length, (b.y - a.y) / length};
    const auto at = [&](PlanePoint p, double on, double left) {
      return PlanePoint{p.x + on * way.x - left * way.y, p.y + on * way.y + left * way.x};
    };
    // Along its whole length, where the cutter is narrower than its ends are round.
    const double further = radius - cutter_ / 2;
    run(What::middle, at(a, -further, 0), at(b, further, 0));
    for (const double off : sidewards(2 * radius)) {
      // The wall lies to the left of each run: clockwise.
      run(What::side, at(a, 0, off), at(b, 0, off));
      run(What::side, at(b, 0, -off), at(a, 0, -off));
    }
  }

  void addCurvedSlot(const PathPiece& way, double radius) {
    MilledCut::About about;
    about.centre = shown(way.circle->centre);
    about.from = shown(way.start);
    about.to = shown(way.end);
    about.degrees = sweepOf(way) * 180 / std::numbers::pi;
    about.spindle.push_back(lengthAtTick(way.circle->radius));
    for (const double off : sidewards(2 * radius)) {
      about.spindle.push_back(lengthAtTick(way.circle->radius + off));
      about.spindle.push_back(lengthAtTick(way.circle->radius - off));
    }
    cut_.about = std::move(about);
  }

  void addPocket(const PlannedSlot& planned) {
    const double by = cutter_ / 2;
    wall_ = &planned.shape.way;
    const auto last = insetOf(planned.shape.way, by);
    lost_ = !last;
    if (lost_) return;
    if (last->size() == 1 && last->front().isWhole) return addRoundPocket(last->front());
    // From the last way round, not from the wall: corners that the cutter fills stay corners.
    const auto leaving = insetOf(*last, kLeftForLast.toInches());
    addClearing(leaving ? *leaving : *last);
    if (leaving) addRound(What::leaving, *leaving);
    addRound(What::wall, *last);
    addCorners(planned);
  }

  void addRoundPocket(const PathPiece& way) {
    MilledCut::About about;
    about.centre = shown(way.circle->centre);
    entry_ = way.circle->centre;
    const double most = way.circle->radius;
    const int times = std::max(1, static_cast<int>(std::ceil(most / (cutter_ * 2 / 3) - 1e-9)));
    for (int i = 1; i <= times && about.spindle.size() < kMostCutterRuns; ++i) {
      about.spindle.push_back(lengthAtTick(most * i / times));
    }
    cut_.about = std::move(about);
  }

  /// Level runs there and back, at most two thirds of the cutter apart.
  void addClearing(const std::vector<PathPiece>& way) {
    const auto [low, high] = extentsOf(way);
    const double height = high.y - low.y, step = cutter_ * 2 / 3;
    const double count = std::max(1.0, std::ceil(height / step - 1e-9));
    bool back = false;
    for (double i = 0; i < count && !cut_.cutShort; ++i) {
      const double y = low.y + height * (i + 0.5) / count;
      for (const auto& [from, to] : levelRunsInside(way, y)) {
        if (!entry_) entry_ = PlanePoint{from, y};
        run(What::clearing, {back ? to : from, y}, {back ? from : to, y});
      }
      back = !back;
    }
  }

  /// The straight pieces of a way round, clockwise.
  void addRound(What what, const std::vector<PathPiece>& way) {
    for (const PathPiece& piece : turnedRound(way)) {
      if (!piece.circle) run(what, piece.start, piece.end);
    }
  }

  void addCorners(const PlannedSlot& planned) {
    using Why = LeftStanding::Why;
    const std::vector<PathPiece>& wall = planned.shape.way;
    const auto idOf = [&](std::size_t i) {
      return i < planned.shape.follows.size() ? planned.shape.follows[i] : Id();
    };
    for (std::size_t i = 0; i < wall.size(); ++i) {
      const PathPiece& piece = wall[i];
      if (piece.circle && piece.sense < 0) cut_.left.push_back({Why::standsIn, idOf(i), {}});
      if (piece.circle && piece.sense > 0 && piece.circle->radius > cutter_ / 2 + 1e-6) {
        const double degrees = sweepOf(piece) * 180 / std::numbers::pi;
        cut_.left.push_back(
            {Why::roundCorner, idOf(i), leftBetween(piece.circle->radius, cutter_, degrees)});
      }
      const PlanePoint a = wayAtEnd(piece), b = wayAtStart(wall[(i + 1) % wall.size()]);
      const double sine = a.x * b.y - a.y * b.x, cosine = a.x * b.x + a.y * b.y;
      if (sine < 1e-6) continue;
      // Half the angle between the two walls.
      const double half = (std::numbers::pi - std::atan2(sine, cosine)) / 2;
      const Length height = lengthAtTick(cutter_ / 2 * (1 / std::sin(half) - 1));
      const bool known = std::any_of(cut_.left.begin(), cut_.left.end(), [&](const auto& one) {
        return one.why == Why::squareCorner && one.height == height;
      });
      if (!known) cut_.left.push_back({Why::squareCorner, {}, height});
    }
  }

  const WorkAt& work_;
  SeenFrame frame_;
  double cutter_ = 0;
  const std::vector<PathPiece>* wall_ = nullptr;  ///< of a pocket
  std::optional<PlanePoint> entry_;               ///< where a hole is drilled first
  std::optional<PlanePoint> last_;                ///< where the last run ended
  bool lost_ = false;
  MilledCut cut_;
};

}  // namespace

std::vector<MilledCut> milledCuts(const WorkAt& work) {
  const bool any = std::any_of(work.part.features.begin(), work.part.features.end(),
                               [&](const Feature& one) {
                                 return one.is<kind::Slot>() && one.face == work.setup.face;
                               }) ||
                   std::any_of(work.part.outlines.begin(), work.part.outlines.end(),
                               [&](const GivenOutline& one) {
                                 return one.isInner && one.face == work.setup.face;
                               });
  std::vector<MilledCut> cuts;
  Milling milling(work);
  if (!any || !milling.hasZero()) return cuts;
  const WorkBlock block(work.part, work.solution, &work.setup);
  const ToolsOwned tools(work.job.shop);
  for (const PlannedSlot& one :
       planSlots({&work.job, &work.part, &work.solution, &work.setup}, block, tools)) {
    if (auto cut = milling.cutOf(one)) cuts.push_back(*std::move(cut));
  }
  return cuts;
}

}  // namespace inchwright
