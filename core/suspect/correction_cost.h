#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/part/job.h"
#include "core/suspect/missing_block.h"
#include "core/suspect/suspect.h"
#include "core/suspect/tracing.h"

namespace inchwright {

/// A ratio that need not be in lowest terms.
struct Ratio {
  Int128 over = 0;
  Int128 under = 1;
};

/// A reading longer by so many ticks: a whole number of them, or empty. Where what it closes may
/// miss by `slack`, since members are rounded, the nearest figure that a print would have.
std::optional<Correction> nearestCorrection(const AxisNetwork& network, std::uint32_t link,
                                            Ratio longer, Int128 slack);

/// What it costs to believe that one reading was misread: −log of the probability, in nats.
class CorrectionCost {
 public:
  CorrectionCost(const Part& part, const AxisNetwork& network, const ConditionSpace& space,
                 const Tracing& tracing);

  struct Figure {
    double cost = 0;
    Reason reason = {};
    bool possible = false;  ///< the corrected length is above 0 and in range, or its ends swapped
  };
  /// By its figure alone: the look of it, and how well either fits the print's denominators or
  /// last decimals.
  const Figure& figure(const Correction& correction);
  /// As `figure`, with the traced distance between its two ends set against it. A first guess:
  /// the whole tracing may judge otherwise.
  double guess(const Correction& correction);
  /// When another place lies where the reading would be right as lettered, once all
  /// `corrections` are made: measured from A rather than L, if that is likelier than `figure`.
  Figure withEnds(const Correction& correction, const std::vector<Correction>& corrections);

  /// What the traced distance would make of a link's figure, as corrections; likeliest first, with
  /// their guesses, no more than `most`.
  std::vector<std::pair<double, Correction>> suggestedBy(std::uint32_t link, std::size_t most);

 private:
  double unusual(const Lettered& seen, Length length) const;
  double traceChange(const Correction& correction) const;
  Int128 movedTicks(std::uint32_t node, const std::vector<Correction>& corrections) const;
  const Lettered& lettered(std::uint32_t link) const;

  void learnLettering();

  const Part& part_;
  const AxisNetwork& network_;
  const ConditionSpace& space_;
  const Tracing& tracing_;
  std::array<double, 9> byDenominator_{};  ///< by power of two; the last: no such fraction
  std::array<double, 10> byLastDigit_{};   ///< of decimals
  std::map<std::uint32_t, std::vector<std::uint32_t>> trees_;
  std::map<std::pair<std::uint32_t, std::int64_t>, Figure> figures_;
};

}  // namespace inchwright
