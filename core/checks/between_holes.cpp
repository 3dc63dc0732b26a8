#include <algorithm>
#include <cmath>
#include <map>

#include "core/checks/checks.h"
#include "core/checks/hole_body.h"

namespace inchwright {
namespace {

struct BodyBox {
  std::array<double, 3> low;
  std::array<double, 3> high;
  std::size_t body;
};

constexpr double kBoundless = 1e5;  // inches

BodyBox boxOf(const HoleBody& body, std::size_t index, double margin) {
  BodyBox box{{}, {}, index};
  const auto axis = static_cast<std::size_t>(body.axis);
  for (std::size_t i = 0; i < 3; ++i) {
    const double reach = body.radius + margin;
    box.low[i] = body.mouth[i] - reach;
    box.high[i] = body.mouth[i] + reach;
  }
  const double end = body.mouth[axis] + body.inward * (body.length + body.point);
  box.low[axis] = std::min(body.mouth[axis], end) - margin;
  box.high[axis] = std::max(body.mouth[axis], end) + margin;
  if (body.endless || body.adrift) {
    box.low[axis] = -kBoundless;
    box.high[axis] = kBoundless;
  }
  return box;
}

bool overlap(const BodyBox& a, const BodyBox& b) {
  for (std::size_t i = 0; i < 3; ++i) {
    if (a.high[i] < b.low[i] || b.high[i] < a.low[i]) return false;
  }
  return true;
}

bool meets(const PlannedHole& a, const PlannedHole& b) {
  for (const Id& id : a.drilled->meets) {
    if (id == b.id || id == b.feature) return true;
  }
  return false;
}

}  // namespace

std::vector<Finding> checkBetweenHoles(const Part&, const WorkBlock& block,
                                       const std::vector<PlannedHole>& holes,
                                       const ToolsOwned& tools) {
  const double wanted = tools.marginWall().toInches();
  const std::vector<HoleBody> bodies = holeBodies(holes, block);
  std::vector<BodyBox> boxes;
  boxes.reserve(bodies.size());
  for (std::size_t i = 0; i < bodies.size(); ++i) boxes.push_back(boxOf(bodies[i], i, wanted / 2));
  std::sort(boxes.begin(), boxes.end(),
            [](const BodyBox& a, const BodyBox& b) { return a.low[0] < b.low[0]; });
  // The thinnest wall of each pair of holes.
  std::map<std::pair<std::size_t, std::size_t>, double> walls;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t j = i + 1; j < boxes.size() && boxes[j].low[0] <= boxes[i].high[0]; ++j) {
      if (!overlap(boxes[i], boxes[j])) continue;
      const HoleBody& a = bodies[boxes[i].body];
      const HoleBody& b = bodies[boxes[j].body];
      if (a.hole == b.hole) continue;
      const double wall = wallBetween(a, b);
      if (wall >= wanted) continue;
      const auto [entry, fresh] = walls.emplace(std::minmax(a.hole, b.hole), wall);
      if (!fresh) entry->second = std::min(entry->second, wall);
    }
  }
  std::vector<Finding> findings;
  for (const auto& [pair, wall] : walls) {
    const PlannedHole& a = holes[pair.first];
    const PlannedHole& b = holes[pair.second];
    if (meets(a, b) || meets(b, a)) continue;
    const Length by = Length::ticks(std::llround((wanted - wall) * Length::kTicksPerInch));
    if (by <= Length::ticks(1)) continue;  // no less than a wall as wanted, but for rounding
    Finding finding;
    finding.code = FindingCode::breaksInto;
    finding.places = {a.id, b.id};
    finding.by = by;
    finding.had = Length::ticks(std::llround(wall * Length::kTicksPerInch));
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace inchwright
