#include "core/place/plane.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "core/geometry/path.h"
#include "core/place/points_by_cell.h"

namespace inchwright {
namespace {

// A line that leans less than this (an arcsecond is 5 times as much) runs along its axis.
constexpr double kLeans = 1e-6;

class Placing {
 public:
  Placing(const PlaneProblem& problem, const PlaneOptions& options)
      : problem_(problem), options_(options), kinds_(problem.kinds) {
    out_.equations = problem.equations;
    out_.variables = problem.start;
    out_.isPlaced.assign(problem.kinds.size(), false);
  }

  PlaneOutcome run();

 private:
  std::vector<double> genericStart() const;
  void mapVariables();
  void place(PlacedBlock& placed);
  bool isKnown(std::uint32_t row, const Block* but) const;
  bool isQuantityPlaced(std::uint32_t quantity) const;

  void put(const Block& block, const Answer& answer);
  PlanePoint pointAt(std::uint32_t point) const;
  bool isAllowed(const PlacedBlock& placed);
  void rememberWhere(std::uint32_t point);
  bool standsOnAny(const PlacedBlock& placed) const;
  bool standsOnItsOwn(const PlacedBlock& placed);
  bool agreesWithSpares(const PlacedBlock& placed) const;
  void dropWhatIsNone(PlacedBlock& placed);
  std::optional<std::size_t> byTracing(const PlacedBlock& placed);
  bool doesTraceDecide(const PlacedBlock& placed) const;
  double residualAsMeant(std::uint32_t row);
  double allowance(std::uint32_t row) const;

  const PlaneProblem& problem_;
  const PlaneOptions& options_;
  std::span<const VariableKind> kinds_;
  PlaneOutcome out_;
  std::vector<std::vector<std::uint32_t>> pointsOf_, linesOf_;  // by variable
  std::vector<std::vector<std::uint32_t>> sparesOf_;            // by variable
  std::vector<std::uint32_t> blockOf_;                          // by variable
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> pointBy_;
  PointsByCell pointsIn_;
};

// Near the trace, but nowhere special; what is not traced lies anywhere.
std::vector<double> Placing::genericStart() const {
  std::vector<double> at = problem_.start;
  std::mt19937 random(3);
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double between = static_cast<double>(random()) / 4294967296.0 - 0.5;
    if (kinds_[i] != VariableKind::figure) at[i] += between * (problem_.isTraced[i] ? 0.02 : 6.0);
  }
  return at;
}

void Placing::mapVariables() {
  pointsOf_.resize(kinds_.size());
  linesOf_.resize(kinds_.size());
  sparesOf_.resize(kinds_.size());
  blockOf_.assign(kinds_.size(), 0xffffffff);
  const auto add = [&](std::vector<std::vector<std::uint32_t>>& lists, std::uint32_t quantity,
                       std::uint32_t what) {
    for (const Term& term : out_.equations.termsOf(quantity)) {
      auto& list = lists[term.variable];
      if (list.empty() || list.back() != what) list.push_back(what);
    }
  };
  for (std::uint32_t i = 0; i < problem_.points.size(); ++i) {
    add(pointsOf_, problem_.points[i].x, i);
    add(pointsOf_, problem_.points[i].y, i);
    pointBy_.emplace(std::pair(problem_.points[i].x, problem_.points[i].y), i);
  }
  for (std::uint32_t i = 0; i < problem_.lines.size(); ++i) {
    add(linesOf_, problem_.lines[i].direction, i);
    add(linesOf_, problem_.lines[i].offset, i);
  }
}

bool Placing::isQuantityPlaced(std::uint32_t quantity) const {
  for (const Term& term : out_.equations.termsOf(quantity)) {
    if (kinds_[term.variable] != VariableKind::figure && !out_.isPlaced[term.variable]) {
      return false;
    }
  }
  return true;
}

bool Placing::isKnown(std::uint32_t index, const Block* but) const {
  const Row& row = out_.equations.rows()[index];
  for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
    for (const Term& term : out_.equations.termsOf(row.of[i])) {
      if (kinds_[term.variable] == VariableKind::figure || out_.isPlaced[term.variable]) continue;
      if (but != nullptr &&
          std::binary_search(but->variables.begin(), but->variables.end(), term.variable)) {
        continue;
      }
      return false;
    }
  }
  return true;
}

void Placing::put(const Block& block, const Answer& answer) {
  for (std::size_t i = 0; i < block.variables.size(); ++i) {
    out_.variables[block.variables[i]] = answer.values[i];
  }
  for (std::size_t i = 0; i < block.rows.size(); ++i) {
    out_.equations.row(block.rows[i]) = answer.meant[i];
  }
}

PlanePoint Placing::pointAt(std::uint32_t point) const {
  return {out_.equations.valueOf(problem_.points[point].x, out_.variables),
          out_.equations.valueOf(problem_.points[point].y, out_.variables)};
}

// What the print says of the way round and the sides, where this block's answer decides it.
bool Placing::isAllowed(const PlacedBlock& placed) {
  const auto isHere = [&](std::uint32_t point) {
    return std::find(placed.points.begin(), placed.points.end(), point) != placed.points.end();
  };
  const auto isThere = [&](std::uint32_t point) {
    return isHere(point) || (isQuantityPlaced(problem_.points[point].x) &&
                             isQuantityPlaced(problem_.points[point].y));
  };
  for (const TurnsRound& turns : problem_.turnsRound) {
    const auto& [a, b, c] = turns.points;
    if (!isHere(a) && !isHere(b) && !isHere(c)) continue;
    if (!isThere(a) || !isThere(b) || !isThere(c)) continue;
    const PlanePoint p = pointAt(a), q = pointAt(b), r = pointAt(c);
    const double turn = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    if (turn * turns.sense < 0) return false;
  }
  for (const LiesBeside& beside : problem_.liesBeside) {
    const PlacedLine& line = problem_.lines[beside.line];
    const bool isLineHere =
        std::find(placed.lines.begin(), placed.lines.end(), beside.line) != placed.lines.end();
    if (!isHere(beside.point) && !isLineHere) continue;
    if (!isThere(beside.point) ||
        (!isLineHere && (!isQuantityPlaced(line.direction) || !isQuantityPlaced(line.offset)))) {
      continue;
    }
    const double t = out_.equations.valueOf(line.direction, out_.variables);
    const double d = out_.equations.valueOf(line.offset, out_.variables);
    const PlanePoint p = pointAt(beside.point);
    const double off = std::cos(t) * p.y - std::sin(t) * p.x - d;
    const double toward = std::cos(t) * beside.y - std::sin(t) * beside.x;
    // Neither side of a level line lies further to the right.
    if (std::abs(toward) > kLeans && off * toward < 0) return false;
  }
  return true;
}

void Placing::rememberWhere(std::uint32_t point) {
  if (!isQuantityPlaced(problem_.points[point].x) || !isQuantityPlaced(problem_.points[point].y)) {
    return;
  }
  pointsIn_.add(point, pointAt(point));
}

// Whether anything is placed where a place of a block now stands.
bool Placing::standsOnAny(const PlacedBlock& placed) const {
  return std::any_of(placed.points.begin(), placed.points.end(), [&](std::uint32_t own) {
    const PlanePoint p = pointAt(own);
    return pointsIn_.anyAbout(p, [&](std::uint32_t other) {
      const PlanePoint q = pointAt(other);
      return std::hypot(p.x - q.x, p.y - q.y) <= kOneAnswerInches;
    });
  });
}

// No place stands where one that it hangs on stands already.
bool Placing::standsOnItsOwn(const PlacedBlock& placed) {
  if (!standsOnAny(placed)) return true;
  std::set<std::uint32_t> seen{placed.points.begin(), placed.points.end()};
  std::vector<std::uint32_t> above;
  std::vector<std::uint32_t> rows = placed.block.rows;
  std::set<std::uint32_t> blocks;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = out_.equations.rows()[rows[i]];
    for (std::size_t k = 0; k + 1 < operandsOf(row.kind); ++k) {
      const auto found = pointBy_.find({row.of[k], row.of[k + 1]});
      if (found == pointBy_.end() || !seen.insert(found->second).second) continue;
      above.push_back(found->second);
      for (const std::uint32_t quantity : {row.of[k], row.of[k + 1]}) {
        for (const Term& term : out_.equations.termsOf(quantity)) {
          const std::uint32_t block = blockOf_[term.variable];
          if (block == 0xffffffff || !blocks.insert(block).second) continue;
          const auto& more = out_.blocks[block].block.rows;
          rows.insert(rows.end(), more.begin(), more.end());
        }
      }
    }
  }
  for (const std::uint32_t own : placed.points) {
    const PlanePoint p = pointAt(own);
    for (const std::uint32_t other : above) {
      const PlanePoint q = pointAt(other);
      if (std::hypot(p.x - q.x, p.y - q.y) <= kOneAnswerInches) return false;
    }
  }
  return true;
}

// The residual of a row, in the way of meaning it that comes nearest; that way is kept.
double Placing::residualAsMeant(std::uint32_t index) {
  double best = out_.equations.evaluate(out_.equations.rows()[index], out_.variables).residual;
  if (index >= problem_.choices.size()) return best;
  const Row* meant = nullptr;
  for (const Row& other : problem_.choices[index]) {
    const double residual = out_.equations.evaluate(other, out_.variables).residual;
    if (std::abs(residual) >= std::abs(best)) continue;
    best = residual;
    meant = &other;
  }
  if (meant != nullptr) out_.equations.row(index) = *meant;
  return best;
}

// How far off a spare row still agrees, in inches.
double Placing::allowance(std::uint32_t index) const {
  const Row& row = out_.equations.rows()[index];
  double scale = 1;
  if (row.kind == RowKind::direction || row.kind == RowKind::turn) {
    const auto value = [&](std::size_t i) {
      return out_.equations.valueOf(row.of[i], out_.variables);
    };
    scale = std::hypot(value(2) - value(0), value(3) - value(1));
  }
  return problem_.spareWithin[index] * scale;
}

bool Placing::agreesWithSpares(const PlacedBlock& placed) const {
  for (const std::uint32_t variable : placed.block.variables) {
    for (const std::uint32_t index : sparesOf_[variable]) {
      if (!isKnown(index, &placed.block)) continue;
      double least =
          std::abs(out_.equations.evaluate(out_.equations.rows()[index], out_.variables).residual);
      if (index < problem_.choices.size()) {
        for (const Row& other : problem_.choices[index]) {
          least =
              std::min(least, std::abs(out_.equations.evaluate(other, out_.variables).residual));
        }
      }
      if (least > allowance(index)) return false;
    }
  }
  return true;
}

void Placing::dropWhatIsNone(PlacedBlock& placed) {
  std::erase_if(placed.answers, [&](const Answer& answer) {
    put(placed.block, answer);
    return !isAllowed(placed) || !standsOnItsOwn(placed);
  });
  if (placed.answers.size() < 2) return;
  std::vector<Answer> agreeing;
  for (const Answer& answer : placed.answers) {
    put(placed.block, answer);
    if (agreesWithSpares(placed)) agreeing.push_back(answer);
  }
  if (agreeing.size() == 1) placed.answers = std::move(agreeing);
}

// The answer that the tracing points out clearly.
std::optional<std::size_t> Placing::byTracing(const PlacedBlock& placed) {
  const std::size_t count = placed.answers.size();
  struct Seen {
    PlanePoint at;
    PlanePoint traced;
  };
  std::vector<std::vector<Seen>> seen(count);
  for (std::size_t i = 0; i < count; ++i) {
    put(placed.block, placed.answers[i]);
    for (const std::uint32_t point : placed.points) {
      if (problem_.points[point].traced) {
        seen[i].push_back({pointAt(point), *problem_.points[point].traced});
      }
    }
    for (const std::uint32_t index : placed.lines) {
      const PlacedLine& line = problem_.lines[index];
      const double t = out_.equations.valueOf(line.direction, out_.variables);
      const double d = out_.equations.valueOf(line.offset, out_.variables);
      for (const PlanePoint& q : line.traced) {
        const double off = std::cos(t) * q.y - std::sin(t) * q.x - d;
        seen[i].push_back({{q.x + std::sin(t) * off, q.y - std::cos(t) * off}, q});
      }
    }
  }
  std::optional<std::size_t> taken;
  double nearestTrace = 0;
  for (std::size_t i = 0; i < count; ++i) {
    double toTrace = 0;
    bool isClear = true;
    for (std::size_t j = 0; j < count; ++j) {
      if (j == i) continue;
      // Of what moves between the two, what moves most; of a group all its traces together.
      double apart = 0;
      double sumX = 0, sumY = 0, together = 0;
      for (std::size_t k = 0; k < seen[i].size(); ++k) {
        const PlanePoint p = seen[i][k].at, q = seen[j][k].at;
        const double moves = std::hypot(p.x - q.x, p.y - q.y);
        if (moves > apart + 1e-9) sumX = sumY = together = 0;
        apart = std::max(apart, moves);
        if (moves < apart - 1e-9) continue;
        sumX += seen[i][k].traced.x - p.x;
        sumY += seen[i][k].traced.y - p.y;
        ++together;
      }
      if (together == 0) return std::nullopt;
      // Against every other: of two lines that cross, each is near the trace at one end.
      const double off = std::hypot(sumX, sumY) / together;
      isClear = isClear && apart > options_.clearlyApart && off <= options_.takenWithin * apart;
      toTrace = std::max(toTrace, off);
    }
    if (!isClear || (taken && toTrace >= nearestTrace)) continue;
    taken = i;
    nearestTrace = toTrace;
  }
  return taken;
}

// Whether all that a block moves was traced so near to where it now stands that no answer which is
// clearly apart would be taken instead.
bool Placing::doesTraceDecide(const PlacedBlock& placed) const {
  const double near = options_.takenWithin * options_.clearlyApart;
  const auto isPointNear = [&](std::uint32_t point) {
    const auto& traced = problem_.points[point].traced;
    const PlanePoint at = pointAt(point);
    return traced && std::hypot(at.x - traced->x, at.y - traced->y) <= near;
  };
  const auto isLineNear = [&](std::uint32_t index) {
    const PlacedLine& line = problem_.lines[index];
    const PlaneLine at{out_.equations.valueOf(line.direction, out_.variables),
                       out_.equations.valueOf(line.offset, out_.variables)};
    return !line.traced.empty() &&
           std::all_of(line.traced.begin(), line.traced.end(),
                       [&](PlanePoint q) { return std::abs(leftOf(at, q)) <= near; });
  };
  return std::all_of(placed.points.begin(), placed.points.end(), isPointNear) &&
         std::all_of(placed.lines.begin(), placed.lines.end(), isLineNear);
}

void Placing::place(PlacedBlock& placed) {
  const auto knows = [&](std::uint32_t row) { return isKnown(row, &placed.block); };
  if (!std::all_of(placed.block.rows.begin(), placed.block.rows.end(), knows)) return;
  const auto gather = [&](const std::vector<std::vector<std::uint32_t>>& lists) {
    std::set<std::uint32_t> all;
    for (const std::uint32_t variable : placed.block.variables) {
      all.insert(lists[variable].begin(), lists[variable].end());
    }
    return std::vector<std::uint32_t>(all.begin(), all.end());
  };
  placed.points = gather(pointsOf_);
  placed.lines = gather(linesOf_);
  Answer start{{}, {}};
  for (const std::uint32_t one : placed.block.variables)
    start.values.push_back(out_.variables[one]);
  for (const std::uint32_t row : placed.block.rows) {
    start.meant.push_back(out_.equations.rows()[row]);
  }
  AnswerSearch search = answersOf(out_.equations, problem_.choices, kinds_, placed.block,
                                  out_.variables, [&] { return doesTraceDecide(placed); });
  placed.mayHaveMore = search.isNearOnly || (!search.isComplete && isLarge(placed.block));
  placed.answers = std::move(search.answers);
  if (placed.answers.empty()) {
    placed.fate = BlockFate::apart;
    placed.misses = search.misses;
    return;
  }
  if (placed.answers.size() > 1) dropWhatIsNone(placed);
  std::size_t taken = 0;
  placed.fate = BlockFate::placed;
  if (placed.answers.empty()) {
    placed.fate = BlockFate::apart;
  } else if (placed.answers.size() > 1) {
    const auto found = byTracing(placed);
    placed.fate = found ? BlockFate::mirrorTaken : BlockFate::twoAnswers;
    taken = found.value_or(0);
  } else if (placed.mayHaveMore) {
    put(placed.block, placed.answers[0]);
    placed.fate = doesTraceDecide(placed) ? BlockFate::mirrorTaken : BlockFate::twoAnswers;
  }
  if (placed.fate != BlockFate::apart) {
    put(placed.block, placed.answers[taken]);
    if (!isFirm(out_.equations, placed.block, out_.variables)) {
      placed.fate = BlockFate::free;
      placed.answers.clear();
      return;
    }
  }
  if (placed.fate == BlockFate::apart || placed.fate == BlockFate::twoAnswers) {
    put(placed.block, start);
    return;
  }
  std::rotate(placed.answers.begin(), placed.answers.begin() + static_cast<std::ptrdiff_t>(taken),
              placed.answers.begin() + static_cast<std::ptrdiff_t>(taken) + 1);
  placed.leverage = leverageOf(out_.equations, placed.block, out_.variables);
  for (const std::uint32_t one : placed.block.variables) out_.isPlaced[one] = true;
  for (const std::uint32_t point : placed.points) rememberWhere(point);
  out_.residual =
      std::max(out_.residual, greatestResidual(out_.equations, placed.block.rows, out_.variables));
}

PlaneOutcome Placing::run() {
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < kinds_.size(); ++i) {
    if (kinds_[i] != VariableKind::figure) open.push_back(i);
  }
  mapVariables();
  Blocks blocks = divide(out_.equations, problem_.rows, open, genericStart());
  out_.loose = std::move(blocks.loose);
  out_.slack = std::move(blocks.slack);
  for (const std::uint32_t row : blocks.spare) {
    out_.equations.forEachSlope(out_.equations.rows()[row], RowValue{},
                                [&](std::uint32_t variable, double) {
                                  auto& list = sparesOf_[variable];
                                  if (list.empty() || list.back() != row) list.push_back(row);
                                });
  }
  for (std::uint32_t i = 0; i < blocks.inOrder.size(); ++i) {
    for (const std::uint32_t variable : blocks.inOrder[i].variables) blockOf_[variable] = i;
    out_.blocks.emplace_back().block = std::move(blocks.inOrder[i]);
  }
  for (std::uint32_t i = 0; i < problem_.points.size(); ++i) rememberWhere(i);
  for (PlacedBlock& block : out_.blocks) place(block);
  for (const std::uint32_t row : blocks.spare) {
    SpareRow spare{row, isKnown(row, nullptr), 0, true};
    if (spare.isKnown) {
      spare.misses = residualAsMeant(row);
      spare.agrees = std::abs(spare.misses) <= allowance(row);
    }
    out_.spares.push_back(spare);
  }
  for (std::uint32_t i = 0; i < kinds_.size(); ++i) {
    if (kinds_[i] == VariableKind::figure) out_.isPlaced[i] = true;
  }
  return std::move(out_);
}

}  // namespace

Result<Done> PlaneOptions::isValid() const {
  if (!(takenWithin > 0 && takenWithin < 0.5)) {
    return Error{ErrorCode::badRequest, "takenWithin is not between 0 and 1/2", "takenWithin"};
  }
  if (!(clearlyApart >= 0)) {
    return Error{ErrorCode::badRequest, "clearlyApart is below 0", "clearlyApart"};
  }
  if (!(weakFrom > 0)) return Error{ErrorCode::badRequest, "weakFrom is not above 0", "weakFrom"};
  return Done{};
}

PlaneOutcome placeInPlane(const PlaneProblem& problem, const PlaneOptions& options) {
  return Placing(problem, options).run();
}

}  // namespace inchwright
