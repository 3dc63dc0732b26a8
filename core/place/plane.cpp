#include "core/place/plane.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "core/place/plane_placing.h"

namespace inchwright {

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

bool Placing::isKnown(std::uint32_t index, const Block* with) const {
  const Row& row = out_.equations.rows()[index];
  return std::all_of(row.of.begin(), row.of.begin() + operandsOf(row.kind),
                     [&](std::uint32_t quantity) { return out_.isSettled(quantity, with); });
}

bool Placing::isThere(std::uint32_t point, const Block* with) const {
  return out_.isSettled(problem_.points[point].x, with) &&
         out_.isSettled(problem_.points[point].y, with);
}

void Placing::put(const Block& block, const Answer& answer) {
  for (std::size_t i = 0; i < block.variables.size(); ++i) {
    out_.variables[block.variables[i]] = answer.values[i];
  }
  for (std::size_t i = 0; i < block.rows.size(); ++i) {
    out_.equations.row(block.rows[i]) = answer.meant[i];
  }
}

Answer Placing::asItStands(const Block& block) const {
  Answer answer;
  for (const std::uint32_t one : block.variables) answer.values.push_back(out_.variables[one]);
  for (const std::uint32_t row : block.rows) answer.meant.push_back(out_.equations.rows()[row]);
  return answer;
}

PlanePoint Placing::pointAt(std::uint32_t point) const {
  return {out_.equations.valueOf(problem_.points[point].x, out_.variables),
          out_.equations.valueOf(problem_.points[point].y, out_.variables)};
}

void Placing::rememberWhere(std::uint32_t point) {
  if (isThere(point)) pointsIn_.add(point, pointAt(point));
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

// Which points and lines a block moves.
void Placing::seeWhatMoves(PlacedBlock& placed) const {
  const auto gather = [&](const std::vector<std::vector<std::uint32_t>>& lists) {
    std::set<std::uint32_t> all;
    for (const std::uint32_t variable : placed.block.variables) {
      all.insert(lists[variable].begin(), lists[variable].end());
    }
    return std::vector<std::uint32_t>(all.begin(), all.end());
  };
  placed.points = gather(pointsOf_);
  placed.lines = gather(linesOf_);
}

void Placing::place(PlacedBlock& placed) {
  const auto knows = [&](std::uint32_t row) { return isKnown(row, &placed.block); };
  if (!std::all_of(placed.block.rows.begin(), placed.block.rows.end(), knows)) return;
  seeWhatMoves(placed);
  const Answer start = asItStands(placed.block);
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
    if (!search.isFirm && !isFirm(out_.equations, placed.block, out_.variables)) {
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

// Where several answers are all that is left open, a reading to spare that fits none of them shows
// that something is misread, not which of them is meant.
void Placing::lookForBlockAgainst(SpareRow& spare) {
  for (std::uint32_t i = 0; i < out_.blocks.size(); ++i) {
    const PlacedBlock& placed = out_.blocks[i];
    if (placed.fate != BlockFate::twoAnswers || placed.mayHaveMore) continue;
    if (!isKnown(spare.row, &placed.block)) continue;
    const Answer before = asItStands(placed.block);
    double least = std::numeric_limits<double>::infinity();
    bool isMet = false;
    for (const Answer& answer : placed.answers) {
      put(placed.block, answer);
      const double misses = leastResidual(spare.row);
      isMet = isMet || misses <= allowance(spare.row);
      least = std::min(least, misses);
    }
    put(placed.block, before);
    if (isMet) return;
    spare.againstBlock = i;
    spare.misses = least;
    spare.agrees = false;
    return;
  }
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
  spares_ = std::move(blocks.spare);
  for (const std::uint32_t row : spares_) {
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
  for (const std::uint32_t row : spares_) {
    SpareRow spare{row, isKnown(row), 0, true, {}};
    if (spare.isKnown) {
      spare.misses = residualAsMeant(row);
      spare.agrees = std::abs(spare.misses) <= allowance(row);
    } else {
      lookForBlockAgainst(spare);
    }
    out_.spares.push_back(spare);
  }
  return std::move(out_);
}

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

bool PlaneOutcome::isSettled(std::uint32_t quantity, const Block* with) const {
  const auto terms = equations.termsOf(quantity);
  return std::all_of(terms.begin(), terms.end(), [&](const Term& term) {
    return isPlaced[term.variable] ||
           (with != nullptr &&
            std::binary_search(with->variables.begin(), with->variables.end(), term.variable));
  });
}

PlaneOutcome placeInPlane(const PlaneProblem& problem, const PlaneOptions& options) {
  return Placing(problem, options).run();
}

}  // namespace inchwright
