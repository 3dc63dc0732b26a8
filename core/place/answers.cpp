#include "core/place/answers.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "core/place/conics.h"
#include "core/place/crossings.h"
#include "core/place/least_held.h"

namespace inchwright {
namespace {

// Ways of meaning the rows of one block that are tried together; beyond, one row at a time.
constexpr std::size_t kMostMeanings = 64;
constexpr std::size_t kMostScattered = 12;  ///< variables that random starts are still worth
constexpr int kScatteredStarts = 72;
constexpr std::size_t kMostImages = 24;  ///< of a large block
constexpr double kLeastReach = 2;        ///< inches
// Where two answers fall together each start ends a little beside: no hole minds a tenth of a thou.
constexpr double kOneSearchedInches = 1e-4;
// An answer that the tracing could take for another lies within half of this.
constexpr double kFarthestNear = 0.25;

using Values = std::vector<double>;

class Seeker {
 public:
  Seeker(Equations& equations, const RowChoices& choices, std::span<const VariableKind> kinds,
         const Block& block, std::span<double> variables, const std::function<bool()>& traceDecides)
      : equations_(equations),
        choices_(choices),
        kinds_(kinds),
        block_(block),
        at_(variables),
        traceDecides_(traceDecides),
        start_(valuesAt()) {}

  AnswerSearch run();

 private:
  Values valuesAt() const {
    Values values;
    for (const std::uint32_t variable : block_.variables) values.push_back(at_[variable]);
    return values;
  }
  void put(const Values& values) {
    for (std::size_t i = 0; i < values.size(); ++i) at_[block_.variables[i]] = values[i];
  }

  void tryMeaning();
  void tryFrom(const Values& from, bool mayMiss);
  void keep(Values values);
  void searchAbout();
  void searchNear();
  double farthest();
  std::vector<Values> mirrored(const Values& from);
  void tryMeanings(const std::vector<std::uint32_t>& open, std::size_t meanings);

  Equations& equations_;  // its rows are meant now one way, now another
  const RowChoices& choices_;
  std::span<const VariableKind> kinds_;
  const Block& block_;
  std::span<double> at_;
  const std::function<bool()>& traceDecides_;
  Values start_;
  AnswerSearch found_;
  bool missed_ = false;
  bool hasMeanings_ = false;
};

// Settles from a start and keeps what holds and is new.
void Seeker::tryFrom(const Values& from, bool mayMiss) {
  put(from);
  SettleOptions options;
  if (!mayMiss) options.mostSteps = 20;
  // A large block is traced or hopeless: near its answer the bare step is the best.
  if (isLarge(block_)) options.firstDamping = 1e-9;
  const SettleSummary summary = settle(equations_, block_.rows, block_.variables, at_, options);
  if (!(summary.residual <= kHoldsInches)) {
    if (!missed_ || summary.residual < found_.misses) found_.misses = summary.residual;
    missed_ = true;
    return;
  }
  keep(valuesAt());
}

// Keeps what holds unless it is known already, or no radius at all.
void Seeker::keep(Values values) {
  Answer answer{std::move(values), {}};
  for (std::size_t i = 0; i < answer.values.size(); ++i) {
    const bool isRadius = kinds_[block_.variables[i]] == VariableKind::radius;
    if (isRadius && answer.values[i] < kOneAnswerInches) return;
  }
  for (const Answer& known : found_.answers) {
    const double within = found_.isComplete ? kOneAnswerInches : kOneSearchedInches;
    if (areOne(kinds_, block_, known.values, answer.values, within)) return;
  }
  for (const std::uint32_t row : block_.rows) answer.meant.push_back(equations_.rows()[row]);
  found_.answers.push_back(std::move(answer));
}

void Seeker::tryMeaning() {
  std::vector<Row> rows;
  for (const std::uint32_t row : block_.rows) rows.push_back(equations_.rows()[row]);
  put(start_);
  if (const auto crossed = crossings(equations_, rows, block_, at_)) {
    for (const auto& values : *crossed) keep({values.begin(), values.end()});
    return;
  }
  auto worked = lineAnswers(equations_, rows, block_, at_);
  if (!worked) worked = conicAnswers(equations_, rows, block_, at_);
  if (worked) {
    for (const Values& values : *worked) tryFrom(values, false);
    return;
  }
  found_.isComplete = false;
  searchAbout();
}

// Images of a start: each point of the block turned over about the way between two that it is held
// by.
std::vector<Values> Seeker::mirrored(const Values& from) {
  std::vector<Values> images;
  put(from);
  const auto owned = [&](std::uint32_t quantity) -> std::size_t {
    const auto terms = equations_.termsOf(quantity);
    if (terms.size() != 1 || terms[0].factor != 1) return block_.variables.size();
    return static_cast<std::size_t>(
        std::find(block_.variables.begin(), block_.variables.end(), terms[0].variable) -
        block_.variables.begin());
  };
  struct Neighbour {
    std::size_t x, y;      // of the point, in the block
    std::uint32_t nx, ny;  // quantities of what holds it
  };
  std::vector<Neighbour> holds;
  for (const std::uint32_t index : block_.rows) {
    const Row& row = equations_.rows()[index];
    if (row.kind != RowKind::distance && row.kind != RowKind::direction) continue;
    for (const auto& [own, other] : {std::pair(0U, 2U), std::pair(2U, 0U)}) {
      const std::size_t x = owned(row.of[own]), y = owned(row.of[own + 1]);
      if (x == block_.variables.size() || y == block_.variables.size()) continue;
      holds.push_back({x, y, row.of[other], row.of[other + 1]});
    }
  }
  for (std::size_t i = 0; i < holds.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (holds[i].x != holds[j].x || holds[i].y != holds[j].y) continue;
      const double ax = equations_.valueOf(holds[i].nx, at_);
      const double ay = equations_.valueOf(holds[i].ny, at_);
      const double dx = equations_.valueOf(holds[j].nx, at_) - ax;
      const double dy = equations_.valueOf(holds[j].ny, at_) - ay;
      const double square = dx * dx + dy * dy;
      if (square < 1e-12) continue;
      Values image = from;
      const double off = ((from[holds[i].y] - ay) * dx - (from[holds[i].x] - ax) * dy) / square;
      image[holds[i].x] += 2 * off * dy;
      image[holds[i].y] -= 2 * off * dx;
      images.push_back(std::move(image));
    }
  }
  return images;
}

// Answers close to the one found.
void Seeker::searchNear() {
  found_.isNearOnly = true;
  const LeastHeld held = leastHeld(equations_, block_, at_, kFarthestNear);
  for (const Values& start : held.starts) tryFrom(start, false);
  found_.isFirm = found_.answers.size() == 1 && held.hold >= kFirm;
}

// How far off another answer may lie, in inches: on the other side of what the block's rows speak
// of, from a start that may be the origin.
double Seeker::farthest() {
  put(start_);
  double most = kLeastReach;
  for (const std::uint32_t index : block_.rows) {
    const Row& row = equations_.rows()[index];
    for (std::size_t i = 0; i < operandsOf(row.kind); ++i) {
      most = std::max(most, std::abs(equations_.valueOf(row.of[i], at_)));
    }
  }
  return 2 * most;
}

void Seeker::searchAbout() {
  tryFrom(start_, true);
  if (isLarge(block_) && !hasMeanings_ && found_.answers.size() == 1 && traceDecides_) {
    put(found_.answers.front().values);
    if (traceDecides_()) return searchNear();
  }
  std::vector<Values> starts = mirrored(start_);
  for (std::size_t i = 0; i < found_.answers.size() && i < kMostScattered; ++i) {
    for (Values& image : mirrored(found_.answers[i].values)) starts.push_back(std::move(image));
  }
  if (isLarge(block_) && starts.size() > kMostImages) starts.resize(kMostImages);
  for (const Values& start : starts) tryFrom(start, true);
  if (isLarge(block_)) return;
  const double reach = farthest();
  // The same starts in every run: the result hangs on nothing but the system.
  std::mt19937 random(1);
  for (int run = 0; run < kScatteredStarts; ++run) {
    Values start = start_;
    for (std::size_t i = 0; i < start.size(); ++i) {
      const double between = static_cast<double>(random()) / 4294967296.0 * 2 - 1;
      const bool turns = kinds_[block_.variables[i]] == VariableKind::direction;
      start[i] += between * (turns ? std::numbers::pi : reach);
    }
    tryFrom(start, true);
  }
}

// Every way of meaning the rows that have several, or, of too many, each row the other way by
// itself.
void Seeker::tryMeanings(const std::vector<std::uint32_t>& open, std::size_t meanings) {
  std::vector<Row> own;
  for (const std::uint32_t row : open) own.push_back(equations_.rows()[row]);
  if (meanings > kMostMeanings) {
    found_.isComplete = false;
    tryMeaning();
    for (std::size_t i = 0; i < open.size(); ++i) {
      for (const Row& other : choices_[open[i]]) {
        equations_.row(open[i]) = other;
        tryMeaning();
      }
      equations_.row(open[i]) = own[i];
    }
    return;
  }
  for (std::size_t meaning = 0; meaning < meanings; ++meaning) {
    std::size_t rest = meaning;
    for (std::size_t i = 0; i < open.size(); ++i) {
      const auto& others = choices_[open[i]];
      const std::size_t chosen = rest % (others.size() + 1);
      rest /= others.size() + 1;
      equations_.row(open[i]) = chosen == 0 ? own[i] : others[chosen - 1];
    }
    tryMeaning();
  }
  for (std::size_t i = 0; i < open.size(); ++i) equations_.row(open[i]) = own[i];
}

AnswerSearch Seeker::run() {
  std::vector<std::uint32_t> open;
  std::size_t meanings = 1;
  for (const std::uint32_t row : block_.rows) {
    if (row >= choices_.size() || choices_[row].empty()) continue;
    open.push_back(row);
    meanings = std::min(meanings * (choices_[row].size() + 1), kMostMeanings + 1);
  }
  hasMeanings_ = meanings > 1;
  tryMeanings(open, meanings);
  put(start_);
  const auto off = [&](const Answer& answer) {
    double sum = 0;
    for (std::size_t i = 0; i < start_.size(); ++i) {
      sum += (answer.values[i] - start_[i]) * (answer.values[i] - start_[i]);
    }
    return sum;
  };
  std::stable_sort(found_.answers.begin(), found_.answers.end(),
                   [&](const Answer& a, const Answer& b) { return off(a) < off(b); });
  if (!found_.answers.empty()) found_.misses = 0;
  return std::move(found_);
}

}  // namespace

bool areOne(std::span<const VariableKind> kinds, const Block& block, std::span<const double> a,
            std::span<const double> b, double within) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (kinds[block.variables[i]] != VariableKind::direction) {
      if (std::abs(a[i] - b[i]) > within) return false;
      continue;
    }
    // A line is the same run the other way, its offset then counted to the other hand.
    const double turn = std::abs(std::remainder(a[i] - b[i], 2 * std::numbers::pi));
    const bool isReversed = turn > std::numbers::pi / 2;
    if (std::abs(isReversed ? std::numbers::pi - turn : turn) > within) return false;
    if (i + 1 >= a.size() || block.variables[i + 1] != block.variables[i] + 1) continue;
    if (std::abs(a[i + 1] - (isReversed ? -b[i + 1] : b[i + 1])) > within) return false;
    ++i;
  }
  return true;
}

bool isLarge(const Block& block) {
  return block.variables.size() > kMostScattered;
}

AnswerSearch answersOf(Equations& equations, const RowChoices& choices,
                       std::span<const VariableKind> kinds, const Block& block,
                       std::span<double> variables, const std::function<bool()>& traceDecides) {
  return Seeker(equations, choices, kinds, block, variables, traceDecides).run();
}

}  // namespace inchwright
