#include "core/place/told_answers.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "core/geometry/path.h"

namespace inchwright {
namespace {

class ToldAnswers {
 public:
  ToldAnswers(const Part& part, const std::array<AxisSystem, 3>& systems, const PartPlane& plane,
              const PlaneOutcome& outcome, PlacedPart& out)
      : part_(part), systems_(systems), plane_(plane), outcome_(outcome), out_(out) {}

  void tell();

 private:
  void tellOfLine(const PlacedBlock& block);
  void keep(SeveralAnswers several);
  std::vector<Id> movingWith(const Block& block) const;
  std::uint32_t shownOf(const PlacedBlock& block) const;
  double lowerEnd(std::size_t axis) const;
  std::array<Length, 2> fromLowerEnds(PlanePoint at) const;

  const Part& part_;
  const std::array<AxisSystem, 3>& systems_;
  const PartPlane& plane_;
  const PlaneOutcome& outcome_;
  PlacedPart& out_;
};

// The point of a line that lies nearest to a point beside it.
PlanePoint foot(const PlaneLine& line, PlanePoint p) {
  const double off = leftOf(line, p);
  return {p.x + off * std::sin(line.direction), p.y - off * std::cos(line.direction)};
}

// Every place whose position hangs on what a block moves.
std::vector<Id> ToldAnswers::movingWith(const Block& block) const {
  std::vector<Id> ids;
  for (const std::size_t which : {0U, 1U}) {
    const AxisSystem& system = systems_[static_cast<std::size_t>(plane_.axes[which])];
    std::set<std::uint32_t> own;
    for (const auto& [mine, variable] : plane_.variables[which]) {
      if (std::binary_search(block.variables.begin(), block.variables.end(), variable)) {
        own.insert(mine);
      }
    }
    for (std::uint32_t node = 0; node < system.nodeCount(); ++node) {
      for (const AxisSystem::Term& term : system.termsOf(node)) {
        if (own.contains(term.variable)) ids.push_back(system.network().places[node]);
      }
    }
  }
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  return ids;
}

// Where the outer side at the lower end lies; 0 where there is none.
double ToldAnswers::lowerEnd(std::size_t axis) const {
  for (const Feature& feature : part_.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge == nullptr || static_cast<std::size_t>(edge->axis) != axis || !edge->side ||
        outward(*edge->side) > 0) {
      continue;
    }
    const auto node = systems_[axis].node(feature.id);
    if (node && out_.positions[axis][*node].group == 0) {
      return out_.positions[axis][*node].ticks.toDouble();
    }
  }
  return 0;
}

// The place by which a block's answers are told: one both of whose coordinates it settles.
std::uint32_t ToldAnswers::shownOf(const PlacedBlock& block) const {
  const auto found =
      std::find_if(block.points.begin(), block.points.end(), [&](std::uint32_t point) {
        return outcome_.isSettled(plane_.problem.points[point].x, &block.block) &&
               outcome_.isSettled(plane_.problem.points[point].y, &block.block);
      });
  return found == block.points.end() ? block.points.front() : *found;
}

// Kept once, though planes are solved more than once.
void ToldAnswers::keep(SeveralAnswers several) {
  const auto isTold = [&](const SeveralAnswers& one) {
    return one.axes == several.axes && one.place == several.place;
  };
  if (std::any_of(out_.answers.begin(), out_.answers.end(), isTold)) return;
  out_.answers.push_back(std::move(several));
}

void ToldAnswers::tell() {
  std::vector<double> at = outcome_.variables;
  for (const PlacedBlock& block : outcome_.blocks) {
    const bool isTaken = block.fate == BlockFate::mirrorTaken;
    if (!isTaken && block.fate != BlockFate::twoAnswers) continue;
    if (block.points.empty()) {
      if (!isTaken) tellOfLine(block);
      continue;
    }
    SeveralAnswers several;
    several.axes = plane_.axes;
    several.isTaken = isTaken;
    several.mayHaveMore = block.mayHaveMore;
    several.about = movingWith(block.block);
    const std::uint32_t shown = shownOf(block);
    several.place = plane_.pointIds[shown];
    const PlacedPoint& point = plane_.problem.points[shown];
    for (const Answer& answer : block.answers) {
      for (std::size_t i = 0; i < answer.values.size(); ++i) {
        at[block.block.variables[i]] = answer.values[i];
      }
      several.answers.push_back(fromLowerEnds(
          {outcome_.equations.valueOf(point.x, at), outcome_.equations.valueOf(point.y, at)}));
    }
    for (const std::uint32_t one : block.block.variables) {
      at[one] = outcome_.variables[one];
    }
    keep(std::move(several));
  }
}

std::array<Length, 2> ToldAnswers::fromLowerEnds(PlanePoint at) const {
  std::array<Length, 2> coordinates;
  for (const std::size_t which : {0U, 1U}) {
    const double low = lowerEnd(static_cast<std::size_t>(plane_.axes[which]));
    const double ticks =
        (which == 0 ? at.x : at.y) * static_cast<double>(Length::kTicksPerInch) - low;
    coordinates[which] = Length::ticks(std::llround(ticks));
  }
  return coordinates;
}

// A line that can run in several ways is shown by where it passes the place, of those that hold it,
// whose feet on the lines lie furthest apart.
void ToldAnswers::tellOfLine(const PlacedBlock& block) {
  if (block.lines.empty() || block.answers.size() < 2) return;
  const PlacedLine& line = plane_.problem.lines[block.lines[0]];
  std::vector<double> at = outcome_.variables;
  std::vector<PlaneLine> lines;
  for (const Answer& answer : block.answers) {
    for (std::size_t i = 0; i < answer.values.size(); ++i) {
      at[block.block.variables[i]] = answer.values[i];
    }
    lines.push_back({outcome_.equations.valueOf(line.direction, at),
                     outcome_.equations.valueOf(line.offset, at)});
  }
  std::vector<PlanePoint> shown;
  double widest = -1;
  for (const std::uint32_t index : block.block.rows) {
    const Row& row = outcome_.equations.rows()[index];
    if (row.kind != RowKind::off) continue;
    const PlanePoint past{outcome_.equations.valueOf(row.of[0], at),
                          outcome_.equations.valueOf(row.of[1], at)};
    std::vector<PlanePoint> feet;
    double apart = std::numeric_limits<double>::infinity();
    for (const PlaneLine& one : lines) {
      const PlanePoint passed = foot(one, past);
      for (const PlanePoint& other : feet) {
        apart = std::min(apart, distanceBetween(passed, other));
      }
      feet.push_back(passed);
    }
    if (apart <= widest) continue;
    widest = apart;
    shown = std::move(feet);
  }
  SeveralAnswers several;
  several.axes = plane_.axes;
  several.isLine = true;
  for (const auto& [id, number] : plane_.lines) {
    if (number == block.lines[0]) several.place = id;
  }
  several.about = {several.place};
  for (const PlanePoint& one : shown) several.answers.push_back(fromLowerEnds(one));
  if (!several.answers.empty()) keep(std::move(several));
}

}  // namespace

void tellAnswers(const Part& part, const std::array<AxisSystem, 3>& systems, const PartPlane& plane,
                 const PlaneOutcome& outcome, PlacedPart& out) {
  ToldAnswers(part, systems, plane, outcome, out).tell();
}

}  // namespace inchwright
