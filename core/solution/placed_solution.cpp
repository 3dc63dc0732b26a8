#include "core/solution/placed_solution.h"

#include <utility>

#include "core/place/placing.h"

namespace inchwright {
namespace {

void setStatuses(const BeyondChains& beyond, Solution& solution) {
  for (const std::uint32_t index : beyond.used) {
    solution.status[index] = ReadingStatus::alone;
  }
  for (const std::uint32_t index : beyond.checked) {
    ReadingStatus& status = solution.status[index];
    if (status == ReadingStatus::alone) status = ReadingStatus::agrees;
  }
  for (const CentresClash& clash : beyond.clashes) {
    for (const std::uint32_t index : clash.members) {
      solution.status[index] = ReadingStatus::clashes;
    }
  }
}

}  // namespace

Result<Done> placeBeyondChains(const Part& part, const std::array<AxisSystem, 3>& systems,
                               bool findSuspects, Solution& solution) {
  std::array<std::vector<Position>, 3> positions;
  for (std::size_t i = 0; i < positions.size(); ++i) {
    positions[i] = std::move(solution.positions.along(systems[i].axis()).positions);
  }
  PlacePartOptions options;
  options.findContradictions = findSuspects;
  auto placed = placePart(part, systems, positions, options);
  if (!placed) return placed.error();
  for (std::size_t i = 0; i < positions.size(); ++i) {
    solution.positions.along(systems[i].axis()).positions = std::move(placed->positions[i]);
  }
  solution.beyond = std::move(static_cast<BeyondChains&>(*placed));
  setStatuses(solution.beyond, solution);
  for (const CentresClash& clash : solution.beyond.clashes) {
    solution.centreSuspects.push_back(rankCentreSuspects(part, clash));
  }
  return Done{};
}

}  // namespace inchwright
