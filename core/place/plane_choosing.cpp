#include <algorithm>
#include <cmath>
#include <set>

#include "core/geometry/path.h"
#include "core/place/plane_placing.h"

namespace inchwright {
namespace {

// A line that leans less than this (an arcsecond is 5 times as much) runs along its axis.
constexpr double kLeans = 1e-6;

}  // namespace

// What the print says of the way round and the sides, where this block's answer decides it.
bool Placing::isAllowed(const PlacedBlock& placed) {
  const auto isHere = [&](std::uint32_t point) {
    return std::find(placed.points.begin(), placed.points.end(), point) != placed.points.end();
  };
  for (const TurnsRound& turns : problem_.turnsRound) {
    const auto& [a, b, c] = turns.points;
    if (!isHere(a) && !isHere(b) && !isHere(c)) continue;
    // A place may have one coordinate here while the other waits: nothing is said of it yet.
    const auto isThereNow = [&](std::uint32_t point) { return isThere(point, &placed.block); };
    if (!std::all_of(turns.points.begin(), turns.points.end(), isThereNow)) continue;
    const PlanePoint p = pointAt(a), q = pointAt(b), r = pointAt(c);
    const double turn = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    if (turn * turns.sense < 0) return false;
  }
  for (const LiesBeside& beside : problem_.liesBeside) {
    const PlacedLine& line = problem_.lines[beside.line];
    const bool isLineHere =
        std::find(placed.lines.begin(), placed.lines.end(), beside.line) != placed.lines.end();
    if (!isHere(beside.point) && !isLineHere) continue;
    if (!isThere(beside.point, &placed.block) || !out_.isSettled(line.direction, &placed.block) ||
        !out_.isSettled(line.offset, &placed.block)) {
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

// The residual of a row in the way of meaning it that comes nearest; inches, not below 0.
double Placing::leastResidual(std::uint32_t index) const {
  const auto residual = [&](const Row& row) {
    return std::abs(out_.equations.evaluate(row, out_.variables).residual);
  };
  double least = residual(out_.equations.rows()[index]);
  if (index >= problem_.choices.size()) return least;
  for (const Row& other : problem_.choices[index]) least = std::min(least, residual(other));
  return least;
}

bool Placing::agreesWithSpares(const PlacedBlock& placed) const {
  for (const std::uint32_t variable : placed.block.variables) {
    for (const std::uint32_t index : sparesOf_[variable]) {
      if (!isKnown(index, &placed.block)) continue;
      if (leastResidual(index) > allowance(index)) return false;
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
  std::optional<std::size_t> agreeing;
  std::size_t count = 0;
  for (std::size_t i = 0; i < placed.answers.size(); ++i) {
    put(placed.block, placed.answers[i]);
    if (!agreesWithSpares(placed)) continue;
    agreeing = i;
    ++count;
  }
  if (count != 1) agreeing = agreeingFurtherOn(placed);
  if (!agreeing) return;
  // Never against a clear tracing: a reading is wrong then, and has to be told of.
  const auto traced = byTracing(placed);
  if (traced && *traced != *agreeing) return;
  placed.answers = {Answer(placed.answers[*agreeing])};
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

}  // namespace inchwright
