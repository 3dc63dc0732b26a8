#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "core/place/plane.h"

namespace inchwright {

std::vector<std::map<std::uint32_t, double>> slopesByFigure(const PlaneProblem& problem,
                                                            const PlaneOutcome& outcome) {
  std::vector<std::map<std::uint32_t, double>> slopes(problem.kinds.size());
  for (const PlacedBlock& placed : outcome.blocks) {
    const Block& block = placed.block;
    if (block.variables.empty() || !outcome.isPlaced[block.variables[0]]) continue;
    const auto size = static_cast<Eigen::Index>(block.variables.size());
    Eigen::MatrixXd own = Eigen::MatrixXd::Zero(size, size);
    std::vector<std::map<std::uint32_t, double>> right(block.rows.size());
    for (std::size_t i = 0; i < block.rows.size(); ++i) {
      const Row& row = outcome.equations.rows()[block.rows[i]];
      const RowValue value = outcome.equations.evaluate(row, outcome.variables);
      outcome.equations.forEachSlope(row, value, [&](std::uint32_t variable, double slope) {
        if (slope == 0) return;
        if (problem.kinds[variable] == VariableKind::figure) {
          right[i][variable] -= slope;
          return;
        }
        const auto found =
            std::lower_bound(block.variables.begin(), block.variables.end(), variable);
        if (found != block.variables.end() && *found == variable) {
          own(static_cast<Eigen::Index>(i), found - block.variables.begin()) += slope;
          return;
        }
        for (const auto& [figure, share] : slopes[variable]) right[i][figure] -= slope * share;
      });
    }
    const Eigen::MatrixXd inverse = own.fullPivLu().inverse();
    for (Eigen::Index j = 0; j < size; ++j) {
      auto& sum = slopes[block.variables[static_cast<std::size_t>(j)]];
      for (Eigen::Index i = 0; i < size; ++i) {
        if (inverse(j, i) == 0) continue;
        for (const auto& [figure, share] : right[static_cast<std::size_t>(i)]) {
          sum[figure] += inverse(j, i) * share;
        }
      }
      std::erase_if(sum, [](const auto& entry) { return std::abs(entry.second) < 1e-12; });
    }
  }
  return slopes;
}

}  // namespace inchwright
