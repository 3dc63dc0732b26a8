#include "core/place/placing.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/chain/axis_solver.h"
#include "core/place/contradictions.h"
#include "core/place/outline_corners.h"
#include "core/place/part_plane.h"
#include "core/place/plane_rows.h"
#include "core/place/told_answers.h"

namespace inchwright {
namespace {

constexpr double kTicksPerInch = static_cast<double>(Length::kTicksPerInch);
// A position beyond this is no part of any machine; ticks would not hold it.
constexpr double kFarthest = 3e9;

class PartPlacing {
 public:
  PartPlacing(const Part& part, const std::array<AxisSystem, 3>& systems,
              const std::array<std::vector<Position>, 3>& positions,
              const PlacePartOptions& options)
      : part_(part), systems_(systems), options_(options) {
    out_.positions = positions;
  }

  Result<PlacedPart> run();

 private:
  struct Solved {
    PartPlane plane;
    PlaneOutcome outcome;
  };
  Solved solve(std::size_t which) const;
  Result<bool> takeOver(const Solved& solved);
  void keepCarriers(std::size_t which, const Solved& solved);
  void keepHeld(const Solved& solved);
  void tellFree(const Solved& solved, std::vector<FreePlace>& told) const;
  void tellWeak(const Solved& solved);
  std::set<std::pair<std::size_t, std::uint32_t>> disputedBy(const Solved& solved) const;

  const Part& part_;
  const std::array<AxisSystem, 3>& systems_;
  const PlacePartOptions& options_;
  std::array<std::vector<FreePlace>, 3> free_;
  PlacedPart out_;
};

PartPlacing::Solved PartPlacing::solve(std::size_t which) const {
  Solved solved;
  solved.plane = planeOf(part_, systems_, out_.positions, kPlanes[which]);
  if (solved.plane.isEmpty()) return solved;
  solved.outcome = placeInPlane(solved.plane.problem, options_.plane);
  const bool isWeak =
      std::any_of(solved.outcome.blocks.begin(), solved.outcome.blocks.end(),
                  [&](const PlacedBlock& one) { return one.leverage > options_.plane.weakFrom; });
  const bool isApart =
      std::any_of(solved.outcome.blocks.begin(), solved.outcome.blocks.end(),
                  [](const PlacedBlock& one) { return one.fate == BlockFate::apart; });
  if (solved.outcome.spares.empty() && !isWeak && !isApart) return solved;
  // Once more with the chains' own figures: what is checked, and what would close a contradiction,
  // may be one of those.
  solved.plane = planeOf(part_, systems_, out_.positions, kPlanes[which], {true});
  solved.outcome = placeInPlane(solved.plane.problem, options_.plane);
  return solved;
}

// Variables of the systems that a reading which does not agree throws doubt on.
std::set<std::pair<std::size_t, std::uint32_t>> PartPlacing::disputedBy(
    const Solved& solved) const {
  std::set<std::pair<std::size_t, std::uint32_t>> disputed;
  const auto behind = variablesBehindClashes(solved.plane, solved.outcome);
  for (const std::size_t which : {0U, 1U}) {
    for (const auto& [own, variable] : solved.plane.variables[which]) {
      if (behind.contains(variable)) disputed.insert({which, own});
    }
  }
  return disputed;
}

// Hands what was placed back to the chains; true when anything was.
Result<bool> PartPlacing::takeOver(const Solved& solved) {
  const auto disputed = disputedBy(solved);
  bool any = false;
  for (const std::size_t which : {0U, 1U}) {
    std::vector<AxisSystem::Placed> placed;
    for (const auto& [own, variable] : solved.plane.variables[which]) {
      if (!solved.outcome.isPlaced[variable]) continue;
      const double inches = solved.outcome.variables[variable];
      if (!(std::abs(inches) < kFarthest)) {
        return Error{
            ErrorCode::outOfRange, "a place leaves the exact range",
            systems_[static_cast<std::size_t>(solved.plane.axes[which])].network().places[0]};
      }
      placed.push_back({own, Rational(std::llround(inches * kTicksPerInch)), How::numeric,
                        solved.outcome.residual * kTicksPerInch, disputed.contains({which, own})});
    }
    if (placed.empty()) continue;
    any = true;
    const auto axis = static_cast<std::size_t>(solved.plane.axes[which]);
    if (!systems_[axis].place(placed, out_.positions[axis])) {
      return Error{ErrorCode::outOfRange, "a sum of readings leaves the exact range", ""};
    }
  }
  return any;
}

void PartPlacing::keepCarriers(std::size_t which, const Solved& solved) {
  const PartPlane& plane = solved.plane;
  const PlaneOutcome& outcome = solved.outcome;
  const auto isPlaced = [&](std::uint32_t quantity) { return outcome.isSettled(quantity); };
  const auto value = [&](std::uint32_t quantity) {
    return outcome.equations.valueOf(quantity, outcome.variables);
  };
  for (const auto& [id, number] : plane.lines) {
    const PlacedLine& line = plane.problem.lines[number];
    if (!isPlaced(line.direction) || !isPlaced(line.offset)) continue;
    out_.lines[which][id] = {value(line.direction), value(line.offset)};
  }
  for (const auto& [id, circle] : plane.circles) {
    if (!isPlaced(circle.x) || !isPlaced(circle.y) || !isPlaced(circle.radius)) continue;
    out_.circles[which][id] = {{value(circle.x), value(circle.y)}, value(circle.radius)};
  }
}

// What each block was solved from, for every place that it settled.
void PartPlacing::keepHeld(const Solved& solved) {
  const PlaneProblem& problem = solved.plane.problem;
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> pointBy;
  for (std::uint32_t i = 0; i < problem.points.size(); ++i) {
    pointBy.emplace(std::pair(problem.points[i].x, problem.points[i].y), i);
  }
  for (const PlacedBlock& block : solved.outcome.blocks) {
    if (block.fate != BlockFate::placed && block.fate != BlockFate::mirrorTaken) continue;
    const std::set<std::uint32_t> own(block.points.begin(), block.points.end());
    std::set<std::uint32_t> readings, understood;
    std::set<Id> from;
    for (const std::uint32_t index : block.block.rows) {
      const Source& source = solved.plane.sources[index];
      if (source.kind == SourceKind::reading) readings.insert(source.index);
      if (source.kind == SourceKind::understanding) understood.insert(source.index);
      const Row& row = solved.outcome.equations.rows()[index];
      for (std::size_t i = 0; i + 1 < operandsOf(row.kind); ++i) {
        const auto found = pointBy.find({row.of[i], row.of[i + 1]});
        if (found == pointBy.end() || own.contains(found->second)) continue;
        from.insert(solved.plane.pointIds[found->second]);
      }
    }
    for (const std::uint32_t point : block.points) {
      HeldBy held{solved.plane.axes,
                  {readings.begin(), readings.end()},
                  {understood.begin(), understood.end()},
                  {from.begin(), from.end()},
                  {}};
      for (const std::uint32_t other : block.points) {
        if (other != point) held.together.push_back(solved.plane.pointIds[other]);
      }
      std::sort(held.together.begin(), held.together.end());
      out_.held.insert_or_assign(solved.plane.pointIds[point], std::move(held));
    }
  }
}

// How a place whose two coordinates have one row between them can still move.
void PartPlacing::tellFree(const Solved& solved, std::vector<FreePlace>& told) const {
  const PlaneProblem& problem = solved.plane.problem;
  const auto tell = [&](std::uint32_t point, const std::vector<std::uint32_t>& rows) {
    FreePlace free{solved.plane.pointIds[point], FreeWay::together, {}};
    const PlacedPoint& own = problem.points[point];
    std::size_t holding = 0;
    for (const std::uint32_t index : rows) {
      const Row& row = solved.outcome.equations.rows()[index];
      const std::size_t mine = row.of[0] == own.x && row.of[1] == own.y ? 0 : 2;
      if (mine == 2 && (row.of[2] != own.x || row.of[3] != own.y)) continue;
      ++holding;
      if (row.kind == RowKind::off) {
        free.way = FreeWay::slides;
        continue;
      }
      if (row.kind != RowKind::distance && row.kind != RowKind::direction) continue;
      for (std::uint32_t other = 0; other < problem.points.size(); ++other) {
        const PlacedPoint& there = problem.points[other];
        if (there.x != row.of[2 - mine] || there.y != row.of[3 - mine]) continue;
        free.about = solved.plane.pointIds[other];
      }
      free.way = row.kind == RowKind::distance ? FreeWay::swings : FreeWay::slides;
    }
    if (holding == 0) return;
    if (holding > 1) free = {free.place, FreeWay::together, {}};
    told.push_back(std::move(free));
  };
  const auto isLoose = [&](std::uint32_t quantity) {
    const auto terms = solved.outcome.equations.termsOf(quantity);
    return std::any_of(terms.begin(), terms.end(), [&](const Term& term) {
      return std::find(solved.outcome.loose.begin(), solved.outcome.loose.end(), term.variable) !=
             solved.outcome.loose.end();
    });
  };
  if (!solved.outcome.slack.empty()) {
    for (std::uint32_t point = 0; point < problem.points.size(); ++point) {
      if (isLoose(problem.points[point].x) || isLoose(problem.points[point].y)) {
        tell(point, solved.outcome.slack);
      }
    }
  }
  for (const PlacedBlock& block : solved.outcome.blocks) {
    if (block.fate != BlockFate::free) continue;
    for (const std::uint32_t point : block.points) tell(point, block.block.rows);
  }
}

void PartPlacing::tellWeak(const Solved& solved) {
  const bool isWeak =
      std::any_of(solved.outcome.blocks.begin(), solved.outcome.blocks.end(),
                  [&](const PlacedBlock& one) { return one.leverage > options_.plane.weakFrom; });
  if (!isWeak) return;
  const auto slopes = slopesByFigure(solved.plane.problem, solved.outcome);
  std::map<std::uint32_t, std::uint32_t> readingOf;
  for (const auto& [reading, variable] : solved.plane.figures) readingOf[variable] = reading;
  for (std::uint32_t i = 0; i < solved.plane.problem.points.size(); ++i) {
    const PlacedPoint& point = solved.plane.problem.points[i];
    std::map<std::uint32_t, std::array<double, 2>> moved;
    for (const std::size_t which : {0U, 1U}) {
      for (const Term& term : solved.outcome.equations.termsOf(which == 0 ? point.x : point.y)) {
        for (const auto& [figure, slope] : slopes[term.variable]) {
          moved[figure][which] += term.factor * slope;
        }
      }
    }
    WeakPlace weak{solved.plane.pointIds[i], 0, 0};
    for (const auto& [figure, way] : moved) {
      const std::uint32_t reading = readingOf.at(figure);
      if (part_.readings[reading].kind == ReadingKind::angle) continue;
      const double factor = std::hypot(way[0], way[1]);
      if (factor <= std::max(weak.factor, options_.plane.weakFrom)) continue;
      weak.factor = factor;
      weak.reading = reading;
    }
    if (weak.factor > 0) out_.weak.push_back(std::move(weak));
  }
}

Result<PlacedPart> PartPlacing::run() {
  // A place in one plane may free another along the axis they share: each plane once, and again
  // while others place something and it still leaves something loose.
  std::array<bool, 3> isDone{};
  for (int round = 0; round < 3; ++round) {
    bool any = false;
    for (std::size_t which = 0; which < kPlanes.size(); ++which) {
      if (isDone[which]) continue;
      const Solved solved = solve(which);
      free_[which].clear();
      if (solved.plane.isEmpty()) {
        isDone[which] = true;
        continue;
      }
      const auto took = takeOver(solved);
      if (!took) return took.error();
      any = any || *took;
      isDone[which] = solved.outcome.slack.empty();
      keepCarriers(which, solved);
      keepHeld(solved);
      out_.residual = std::max(out_.residual, solved.outcome.residual);
      tellAnswers(part_, systems_, solved.plane, solved.outcome, out_);
      tellFree(solved, free_[which]);
      tellWeak(solved);
      tellContradictions(part_, solved.plane, solved.outcome, options_.findContradictions, out_);
    }
    if (!any) break;
  }
  // The widest miss first: a misread figure rather than a sum of roundings.
  std::stable_sort(out_.clashes.begin(), out_.clashes.end(),
                   [](const CentresClash& a, const CentresClash& b) {
                     return std::abs(a.missesBy) > std::abs(b.missesBy);
                   });
  for (auto& free : free_) out_.free.insert(out_.free.end(), free.begin(), free.end());
  return std::move(out_);
}

}  // namespace

Result<PlacedPart> placePart(const Part& part, const std::array<AxisSystem, 3>& systems,
                             const std::array<std::vector<Position>, 3>& positions,
                             const PlacePartOptions& options) {
  const auto sound = options.plane.isValid();
  if (!sound) return sound.error();
  if (!speaksOfPlanes(part)) {
    PlacedPart chains;
    chains.positions = positions;
    placeOutlineCorners(part, systems, chains.positions);
    return chains;
  }
  auto placed = PartPlacing(part, systems, positions, options).run();
  if (placed) placeOutlineCorners(part, systems, placed->positions);
  return placed;
}

Result<WholePlaced> placeWhole(const Part& part, const PlacePartOptions& options) {
  auto systems = systemsOf(part);
  if (!systems) return systems.error();
  std::array<std::vector<Position>, 3> positions;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    auto outcome = solveAxis(part, (*systems)[i]);
    if (!outcome) return outcome.error();
    positions[i] = std::move(outcome->positions);
  }
  auto placed = placePart(part, *systems, positions, options);
  if (!placed) return placed.error();
  WholePlaced whole;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    whole.positions.set((*systems)[i].axis(),
                        {(*systems)[i].network().places, std::move(placed->positions[i])});
  }
  whole.beyond = std::move(static_cast<BeyondChains&>(*placed));
  return whole;
}

}  // namespace inchwright
