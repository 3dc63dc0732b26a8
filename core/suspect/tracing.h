#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/chain/network.h"
#include "core/graph/branches.h"
#include "core/part/job.h"
#include "core/suspect/missing_block.h"

namespace inchwright {

/// One reading read otherwise: by how many ticks longer.
struct Correction {
  std::uint32_t link = 0;  ///< network number
  std::int64_t longer = 0;

  bool operator==(const Correction&) const = default;
};

/// What the traced positions say about a block that misses, in inches as drawn. Evidence only: all
/// here is `double`, and no size comes from it.
///
/// The model: traced = scale · position + shift + error, one scale an axis (near 1, a copy may be
/// stretched), one shift for each view and each tree of places fixed against each other. Errors
/// are normal with a deviation fitted between 1/128 and 1/8 in; one place in two hundred is
/// traced badly and may be anywhere.
class Tracing {
 public:
  Tracing(const Part& part, const AxisNetwork& network, const ConditionSpace& space,
          const MissingBlock& block);

  /// At least two places of the block can be compared.
  bool isUsable() const { return usable_; }
  /// −log likelihood in nats, up to a constant of the block, with the readings corrected so.
  double cost(const std::vector<Correction>& corrections) const;
  /// A link's length in inches as the tracing has it, its scale taken off; empty when an end is
  /// not traced or the two belong to different views.
  std::optional<double> lengthOf(std::uint32_t link) const;

  /// How many traced places take part.
  std::size_t size() const { return nodes_.size(); }
  /// How a link's length bears on a place, as its tree of links has it: 1, −1 or 0.
  int shareOf(std::uint32_t place, std::uint32_t link) const;

 private:
  struct Node {
    std::uint32_t place = 0;
    int shift = 0;        ///< which of the shifts is its own
    double traced = 0;    ///< inches
    double position = 0;  ///< inches, as the tree of uncorrected readings has it
  };
  struct Fit {
    double scale;
    std::vector<double> shift;
  };

  double moved(const Node& node, const Correction& correction) const;
  void gatherScale(const Part& part);
  void gatherNodes(const ConditionSpace& space, const MissingBlock& block);
  void numberTrees(const Forest& forest);
  double costAt(double deviation, const std::vector<double>& positions, Fit& fit) const;
  void refit(double deviation, const std::vector<double>& positions,
             const std::vector<double>& weights, Fit& fit) const;

  const AxisNetwork& network_;
  const Forest& forest_;
  Branches branches_;
  std::vector<std::optional<double>> traced_;  ///< by place
  std::vector<int> view_;                      ///< by place
  std::vector<std::uint32_t> entered_, left_;  ///< by place: numbering of the walk over its tree
  std::vector<std::uint32_t> root_;
  std::vector<ConditionSpace::TreeOffset> offsets_;  ///< by position in `offsetRoots_`
  std::vector<std::uint32_t> offsetRoots_;
  std::vector<Node> nodes_;
  int shifts_ = 0;
  double scale_ = 1;
  double scaleDeviation_ = 0.03;
  bool usable_ = false;
};

}  // namespace inchwright
