#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/geometry/homography.h"
#include "core/place/answers.h"
#include "core/place/blocks.h"
#include "core/place/equations.h"

namespace inchwright {

/// A point of the plane by its quantities, and where it was traced, in the frame of the quantities.
struct PlacedPoint {
  std::uint32_t x = 0;
  std::uint32_t y = 0;
  std::optional<PlanePoint> traced;
};

/// A line by its quantities, and two points that it was traced through.
struct PlacedLine {
  std::uint32_t direction = 0;
  std::uint32_t offset = 0;
  std::vector<PlanePoint> traced;
};

/// A, B and C follow each other in this sense: settles a mirror image.
struct TurnsRound {
  std::array<std::uint32_t, 3> points{};
  int sense = 1;  ///< +1 anticlockwise
};

/// A point lies on one side of a line: the one that is further towards (x, y).
struct LiesBeside {
  std::uint32_t point = 0;
  std::uint32_t line = 0;
  double x = 0;
  double y = 0;
};

/// What is to be placed in one plane.
struct PlaneProblem {
  Equations equations;
  std::vector<VariableKind> kinds;  ///< by variable
  std::vector<double> start;        ///< by variable: where it was traced
  std::vector<bool> isTraced;       ///< by variable
  std::vector<std::uint32_t> rows;  ///< in the order of trust: those that place come first
  RowChoices choices;               ///< by row; may be shorter than the rows
  /// By row: how far off it still agrees when it is spare; inches, of a ray or a turn radians.
  std::vector<double> spareWithin;
  std::vector<PlacedPoint> points;
  std::vector<PlacedLine> lines;
  std::vector<TurnsRound> turnsRound;
  std::vector<LiesBeside> liesBeside;
};

struct PlaneOptions {
  double takenWithin = 0.25;    ///< of the distance to the next answer, tracing to answer
  double clearlyApart = 0.125;  ///< inches: answers nearer than this are never chosen between
  double weakFrom = 5;          ///< inches an inch: what moves further is weakly held

  /// Errors: `badRequest`, naming the member that makes no sense.
  Result<Done> isValid() const;
};

enum class BlockFate : std::uint8_t {
  placed,       ///< one answer, or one that the print itself tells apart
  mirrorTaken,  ///< several, or there may be; the tracing's was taken
  twoAnswers,   ///< several, or there may be, and nothing tells which: not placed
  apart,        ///< no answer: its rows don't meet
  free,         ///< its rows hold at a point from where it can still move
  waits,        ///< hangs on something that is not placed
};

struct PlacedBlock {
  Block block;
  BlockFate fate = BlockFate::waits;
  std::vector<Answer> answers;        ///< the one taken first
  std::vector<std::uint32_t> points;  ///< that it moves
  std::vector<std::uint32_t> lines;
  bool mayHaveMore = false;  ///< of many places: answers that were not found, or not looked for
  double misses = 0;         ///< inches; of one that is apart
  double leverage = 0;       ///< inches an inch; 0 where not asked for
};

/// A row that others make already, held against where they lead.
struct SpareRow {
  std::uint32_t row = 0;
  bool isKnown = false;  ///< all that it speaks of is placed
  double misses = 0;     ///< inches: what the row says less what there is, as a residual
  bool agrees = true;
  /// A block of several answers, with which it would be known and agrees with none of them;
  /// `misses` is then by which it misses the nearest.
  std::optional<std::uint32_t> againstBlock;
};

struct PlaneOutcome {
  Equations equations;              ///< as given, each row as it is meant
  std::vector<double> variables;    ///< where placed the answer, else the start
  std::vector<bool> isPlaced;       ///< by variable; a figure counts as placed at 0
  std::vector<PlacedBlock> blocks;  ///< in the order in which they hang
  std::vector<SpareRow> spares;
  std::vector<std::uint32_t> loose;  ///< variables that the rows leave free
  std::vector<std::uint32_t> slack;  ///< rows that bear on them
  double residual = 0;               ///< inches, the greatest of the rows that place

  /// Whether all that a quantity hangs on is placed, or among what a block moves.
  bool isSettled(std::uint32_t quantity, const Block* with = nullptr) const;
};

/// Places what follows, block by block, and says what does not.
///
/// Never all combinations: each block is asked for by itself, with those before it where they were
/// taken to be. Of several answers readings to spare may leave one, also such as close a loop only
/// through blocks that come later. Nothing is placed on a guess. Deterministic; NaN-free for finite
/// input. Cost: about linear where places hang on two or three others each.
PlaneOutcome placeInPlane(const PlaneProblem& problem, const PlaneOptions& options = {});

/// By how much each placed variable changes with each figure, at the answer: `slopes[variable]`
/// maps a figure's variable to inches (or radians) an inch. First order.
std::vector<std::map<std::uint32_t, double>> slopesByFigure(const PlaneProblem& problem,
                                                            const PlaneOutcome& outcome);

}  // namespace inchwright
