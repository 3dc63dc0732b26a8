#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <utility>
#include <vector>

#include "core/place/answers.h"
#include "core/place/plane.h"
#include "core/place/points_by_cell.h"

namespace inchwright {

/// One run of `placeInPlane` (plane.h), block after block in the order in which they hang: each has
/// its answers found, what can't be is dropped, and one is taken or none.
class Placing {
 public:
  Placing(const PlaneProblem& problem, const PlaneOptions& options)
      : problem_(problem), options_(options), kinds_(problem.kinds) {
    out_.equations = problem.equations;
    out_.variables = problem.start;
    for (const VariableKind kind : kinds_) out_.isPlaced.push_back(kind == VariableKind::figure);
  }

  PlaneOutcome run();

 private:
  // The spare rows that can speak of a block's answers once some blocks, itself among them, are
  // placed.
  struct FurtherOn {
    std::vector<std::uint32_t> spares;
    std::set<std::uint32_t> blocks;
  };
  // Spare rows that an answer does not agree with (false), blocks that have none after it (true).
  using Against = std::set<std::pair<bool, std::uint32_t>>;

  std::vector<double> genericStart() const;
  void mapVariables();
  void place(PlacedBlock& placed);
  void seeWhatMoves(PlacedBlock& placed) const;
  bool isKnown(std::uint32_t row, const Block* with = nullptr) const;
  bool isThere(std::uint32_t point, const Block* with = nullptr) const;

  void put(const Block& block, const Answer& answer);
  Answer asItStands(const Block& block) const;
  PlanePoint pointAt(std::uint32_t point) const;
  bool isAllowed(const PlacedBlock& placed);
  void rememberWhere(std::uint32_t point);
  bool standsOnAny(const PlacedBlock& placed) const;
  bool standsOnItsOwn(const PlacedBlock& placed);
  double leastResidual(std::uint32_t row) const;
  bool agreesWithSpares(const PlacedBlock& placed) const;
  FurtherOn furtherOn(std::uint32_t block) const;
  std::set<std::uint32_t> stillBehind(std::uint32_t spare) const;
  Against speakingAgainst(const PlacedBlock& placed, const Answer& answer,
                          const FurtherOn& further);
  void placeOnTrial(std::uint32_t block, Against& against);
  std::optional<std::size_t> agreeingFurtherOn(const PlacedBlock& placed);
  void dropWhatIsNone(PlacedBlock& placed);
  std::optional<std::size_t> byTracing(const PlacedBlock& placed);
  bool doesTraceDecide(const PlacedBlock& placed) const;
  double residualAsMeant(std::uint32_t row);
  void lookForBlockAgainst(SpareRow& spare);
  double allowance(std::uint32_t row) const;

  const PlaneProblem& problem_;
  const PlaneOptions& options_;
  std::span<const VariableKind> kinds_;
  PlaneOutcome out_;
  std::vector<std::uint32_t> spares_;                           // rows
  std::vector<std::vector<std::uint32_t>> pointsOf_, linesOf_;  // by variable
  std::vector<std::vector<std::uint32_t>> sparesOf_;            // by variable
  std::vector<std::uint32_t> blockOf_;                          // by variable
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> pointBy_;
  PointsByCell pointsIn_;
};

}  // namespace inchwright
