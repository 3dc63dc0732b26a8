#include "core/kit/solved_kit.h"

#include <algorithm>
#include <utility>

namespace inchwright {

Solution solvedOrDoubted(const Part& part) {
  Result<Solution> solved = solve(part);
  if (solved) return *std::move(solved);
  Solution empty;
  Doubt doubt{{DoubtTopic::question, {}, {}, {}, {solved.error().place}}};
  doubt.questions = {solved.error().text};
  empty.doubts.push_back(std::move(doubt));
  return empty;
}

void SolvedKit::follow(const Job& job) {
  // Zero, and so what is compared, hangs on the machine as well.
  if (!(machine_ == job.machine)) {
    machine_ = job.machine;
    for (Compared& one : compared_) one = {};
  }
  if (parts_ == job.parts) return;
  const std::size_t count = job.parts.size();
  std::vector<bool> solved(count);
  std::vector<Solution> solutions(count);
  std::vector<Compared> compared(count);
  std::vector<bool> gone(parts_.size());
  const auto take = [&](std::size_t from, std::size_t to) {
    if (gone[from] || !(parts_[from] == job.parts[to])) return false;
    solved[to] = solved_[from];
    solutions[to] = std::move(solutions_[from]);
    compared[to] = std::move(compared_[from]);
    return static_cast<bool>(gone[from] = true);
  };
  std::vector<std::size_t> others;
  for (std::size_t i = 0; i < count; ++i) {
    if (i >= parts_.size() || !take(i, i)) others.push_back(i);
  }
  for (const std::size_t i : others) {
    for (std::size_t k = 0; k < parts_.size() && !take(k, i); ++k) {
    }
  }
  parts_ = job.parts;
  solved_ = std::move(solved);
  solutions_ = std::move(solutions);
  compared_ = std::move(compared);
}

void SolvedKit::give(std::size_t part, Solution solution) {
  solutions_[part] = std::move(solution);
  solved_[part] = true;
}

const Solution& SolvedKit::solution(std::size_t part) {
  if (!solved_[part]) {
    solutions_[part] = solvedOrDoubted(parts_[part]);
    solved_[part] = true;
    ++timesSolved_;
  }
  return solutions_[part];
}

std::span<const Solution> SolvedKit::solutions() {
  for (std::size_t i = 0; i < parts_.size(); ++i) solution(i);
  return solutions_;
}

const std::optional<ComparedPart>& SolvedKit::compared(std::size_t part) {
  Compared& one = compared_[part];
  if (!std::exchange(one.tried, true)) {
    Job job;
    job.machine = machine_;
    Result<ComparedPart> made = ComparedPart::of(job, parts_[part], solution(part));
    if (made) one.part = *std::move(made);
  }
  return one.part;
}

std::vector<Difference> SolvedKit::likeOthers(std::size_t part) {
  std::vector<Difference> all;
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    if (i == part || parts_[i].turned != parts_[part].turned) continue;
    const auto& own = compared(part);
    if (!own) break;
    const auto& other = compared(i);
    if (!other) continue;
    Difference found = differenceOf(*other, *own);
    if (easilyMistaken(found)) all.push_back(std::move(found));
  }
  return all;
}

namespace {

/// What is cut there looks alike from both faces.
bool goesStraightThrough(const Feature& feature) {
  if (const auto* edge = feature.as<kind::Edge>()) return edge->axis != Axis::z || edge->side;
  if (axisAcross(feature.face) != Axis::z) return false;
  if (const auto* slot = feature.as<kind::Slot>()) return slot->depth.through;
  const Drilled* drilled = feature.drilled();
  if (!drilled) return true;
  const bool seat = drilled->make == Make::counterbore || drilled->make == Make::countersink ||
                    drilled->make == Make::spotface;
  return drilled->depth.through && !seat;
}

}  // namespace

bool sameTurnedOver(const Job& job, const Part& part) {
  const Part* base = part.opposite ? job.part(part.opposite->part) : nullptr;
  if (!base || part.turned) return false;
  const Part other = mirrored(*base, part.opposite->across);
  return part.features == other.features && part.readings == other.readings &&
         part.understood == other.understood && part.outlines == other.outlines &&
         std::all_of(part.features.begin(), part.features.end(), goesStraightThrough);
}

}  // namespace inchwright
