#pragma once

#include <cstdint>
#include <vector>

#include "core/base/rational.h"
#include "core/chain/axis_system.h"
#include "core/part/job.h"

namespace inchwright {

/// Links and relations that check each other and do not all hold, as exact linear conditions.
///
/// Condition i says Σ columns[j][i] · ticks(readings[j]) + (the rest) = 0 and misses by misses[i].
/// A reading j read δ longer closes everything when misses[i] + δ · columns[j][i] = 0 for every i;
/// whether it does depends on the print alone, not on which conditions were chosen.
struct MissingBlock {
  std::vector<std::uint32_t> links;      ///< all links of it, by network number, ascending
  std::vector<std::uint32_t> relations;  ///< all relations of it, ascending
  std::vector<std::uint32_t> readings;   ///< those of `links` that are readings along the axis
  std::vector<std::vector<std::int64_t>> columns;  ///< by reading, then by condition
  std::vector<Int128> misses;                      ///< by condition, in ticks times its factor
  std::vector<Int128> slack;  ///< by condition: how far rounded members let it miss
};

/// One axis's conditions and the forest that its positions hang on.
class ConditionSpace {
 public:
  /// Requires: `system` outlives this.
  ConditionSpace(const Part& part, const AxisSystem& system);

  /// The blocks in which something misses; empty as well when the exact range is left or the work
  /// would go beyond some tens of millions of steps.
  const std::vector<MissingBlock>& blocks() const { return blocks_; }
  const AxisSystem& system() const { return system_; }
  const Forest& forest() const { return system_.forest(); }

  /// What relations make of a tree's place: root's position = Σ factor · ticks(link) + that of
  /// `base`, free of links. Trees with the same `base` are fixed against each other.
  struct TreeOffset {
    Sparse base;   ///< by root: 1 for a tree that nothing else fixes
    Sparse links;  ///< by link number
  };
  TreeOffset offsetOf(std::uint32_t root) const;

 private:
  struct Condition {
    Sparse links;
    std::vector<std::uint32_t> relations;
  };

  bool takeLoops(std::vector<Condition>& conditions) const;
  bool takeRelations(std::vector<Condition>& conditions) const;
  Rational missOf(const Condition& condition) const;
  /// How far a condition may miss: by rounded members, and by the last places of decimals if so.
  Rational slackOf(const Part& part, const Condition& condition, bool lastPlaces) const;
  void gather(const Part& part, const std::vector<Condition>& conditions);
  bool addCondition(const Part& part, const Condition& condition, bool lastPlaces,
                    MissingBlock& block) const;

  const AxisSystem& system_;
  const AxisNetwork& network_;
  std::vector<MissingBlock> blocks_;
};

}  // namespace inchwright
