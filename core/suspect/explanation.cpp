#include "core/suspect/explanation.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <optional>
#include <utility>

#include "core/suspect/correction_cost.h"

namespace inchwright {
namespace {

constexpr std::size_t kMembersAlone = 60;
constexpr std::size_t kMembersOfTwo = 8;
constexpr std::size_t kMembersOfThree = 3;
constexpr std::size_t kMostClassesForThree = 40;
constexpr std::size_t kMostPairs = 4'000'000;
constexpr std::size_t kMostSeeds = 12;
constexpr Int128 kLargestMiss = Int128{1} << 62;

Int128 absolute(Int128 value) {
  return value < 0 ? -value : value;
}

using Conditions = std::vector<Int128>;

/// Readings in series or otherwise alike: their columns are multiples of one direction.
struct Class {
  std::vector<std::int64_t> direction;
  std::vector<std::pair<std::uint32_t, std::int64_t>> members;  ///< link, its multiple
};

class Explainer {
 public:
  Explainer(const Part& part, const AxisNetwork& network, const ConditionSpace& space,
            const MissingBlock& block, const Tracing& tracing)
      : network_(network), block_(block), tracing_(tracing), costs_(part, network, space, tracing) {
    for (const Int128 slack : block.slack) slack_ = std::max(slack_, slack);
    sortIntoClasses();
  }

  std::vector<Explanation> run();

 private:
  struct Found {
    double guess;
    std::vector<Correction> corrections;
  };

  void sortIntoClasses();
  bool closes(const Conditions& misses) const;
  void solve(const Conditions& misses, const std::vector<Correction>& given);
  void solveByOne(const Conditions& misses, const std::vector<Correction>& given);
  void solveByTwo(const Conditions& misses, const std::vector<Correction>& given);
  void solvePairsWith(std::size_t first, std::size_t pivot, const Conditions& misses,
                      const std::vector<Correction>& given);
  void solveByThree();
  void solveFromTracing();
  std::size_t pivotOf(const Conditions& misses) const;
  Conditions after(Conditions misses, const Correction& correction) const;
  std::vector<std::pair<double, Correction>> membersBy(const Class& one, const Ratio& change,
                                                       std::size_t most);
  void keep(std::vector<Correction> corrections, double guess);
  std::vector<Explanation> weighed();

  const AxisNetwork& network_;
  const MissingBlock& block_;
  const Tracing& tracing_;
  CorrectionCost costs_;
  Int128 slack_ = 0;  ///< the widest
  std::vector<Class> classes_;
  std::map<std::uint32_t, const std::vector<std::int64_t>*> columnOf_;
  std::map<std::vector<std::pair<std::uint32_t, std::int64_t>>, double> found_;
};

void Explainer::sortIntoClasses() {
  std::map<std::vector<std::int64_t>, std::size_t> known;
  for (std::size_t i = 0; i < block_.readings.size(); ++i) {
    std::vector<std::int64_t> direction = block_.columns[i];
    std::int64_t multiple = 0;
    for (const std::int64_t one : direction) multiple = std::gcd(multiple, one);
    if (multiple == 0) continue;
    const auto first =
        std::find_if(direction.begin(), direction.end(), [](std::int64_t one) { return one != 0; });
    if (*first < 0) multiple = -multiple;
    for (std::int64_t& one : direction) one /= multiple;
    const auto at = known.emplace(direction, classes_.size());
    if (at.second) classes_.push_back({std::move(direction), {}});
    classes_[at.first->second].members.push_back({block_.readings[i], multiple});
    columnOf_[block_.readings[i]] = &block_.columns[i];
  }
}

bool Explainer::closes(const Conditions& misses) const {
  for (std::size_t i = 0; i < misses.size(); ++i) {
    if (absolute(misses[i]) > block_.slack[i]) return false;
  }
  return true;
}

// The condition that misses and that fewest classes could mend.
std::size_t Explainer::pivotOf(const Conditions& misses) const {
  std::size_t best = misses.size();
  std::size_t fewest = std::numeric_limits<std::size_t>::max();
  for (std::size_t i = 0; i < misses.size(); ++i) {
    if (absolute(misses[i]) <= block_.slack[i]) continue;
    const auto users = static_cast<std::size_t>(std::count_if(
        classes_.begin(), classes_.end(), [&](const Class& one) { return one.direction[i] != 0; }));
    if (users >= fewest) continue;
    fewest = users;
    best = i;
  }
  return best;
}

Conditions Explainer::after(Conditions misses, const Correction& correction) const {
  const auto& column = *columnOf_.at(correction.link);
  for (std::size_t i = 0; i < misses.size(); ++i)
    misses[i] += Int128{correction.longer} * column[i];
  return misses;
}

std::vector<std::pair<double, Correction>> Explainer::membersBy(const Class& one,
                                                                const Ratio& change,
                                                                std::size_t most) {
  std::vector<std::pair<double, Correction>> members;
  for (const auto& [link, multiple] : one.members) {
    const auto correction =
        nearestCorrection(network_, link, {change.over, change.under * multiple}, slack_);
    if (!correction || !costs_.figure(*correction).possible) continue;
    members.push_back({costs_.guess(*correction), *correction});
  }
  std::sort(members.begin(), members.end(), [](const auto& a, const auto& b) {
    return std::pair(a.first, a.second.link) < std::pair(b.first, b.second.link);
  });
  if (members.size() > most) members.resize(most);
  return members;
}

void Explainer::keep(std::vector<Correction> corrections, double guess) {
  std::sort(corrections.begin(), corrections.end(),
            [](const Correction& a, const Correction& b) { return a.link < b.link; });
  std::vector<std::pair<std::uint32_t, std::int64_t>> key;
  for (const Correction& one : corrections) {
    if (!key.empty() && key.back().first == one.link) return;
    key.push_back({one.link, one.longer});
  }
  found_.emplace(std::move(key), guess);
}

void Explainer::solve(const Conditions& misses, const std::vector<Correction>& given) {
  if (closes(misses)) {
    double guess = 0;
    for (const Correction& one : given) guess += costs_.guess(one);
    keep(given, guess);
    return;
  }
  solveByOne(misses, given);
  solveByTwo(misses, given);
}

void Explainer::solveByOne(const Conditions& misses, const std::vector<Correction>& given) {
  const std::size_t pivot = pivotOf(misses);
  double before = 0;
  for (const Correction& one : given) before += costs_.guess(one);
  for (const Class& one : classes_) {
    const Int128 by = one.direction[pivot];
    if (by == 0) continue;
    bool fits = true;
    for (std::size_t i = 0; i < misses.size() && fits; ++i) {
      const Int128 off = misses[i] * by - misses[pivot] * one.direction[i];
      fits = absolute(off) <=
             block_.slack[i] * absolute(by) + block_.slack[pivot] * absolute(one.direction[i]);
    }
    if (!fits) continue;
    for (const auto& [guess, correction] : membersBy(one, {-misses[pivot], by}, kMembersAlone)) {
      auto corrections = given;
      corrections.push_back(correction);
      keep(std::move(corrections), before + guess);
    }
  }
}

void Explainer::solveByTwo(const Conditions& misses, const std::vector<Correction>& given) {
  const std::size_t pivot = pivotOf(misses);
  std::size_t users = 0;
  for (const Class& one : classes_) users += one.direction[pivot] != 0 ? 1 : 0;
  if (users * classes_.size() > kMostPairs) return;
  for (std::size_t first = 0; first < classes_.size(); ++first) {
    if (classes_[first].direction[pivot] != 0) solvePairsWith(first, pivot, misses, given);
  }
}

// Takes the first class out of every condition by means of the pivot; the second must mend the
// rest.
void Explainer::solvePairsWith(std::size_t first, std::size_t pivot, const Conditions& misses,
                               const std::vector<Correction>& given) {
  const Class& one = classes_[first];
  const Int128 by = one.direction[pivot];
  Conditions rest(misses.size());
  Conditions slack(misses.size());
  std::size_t worst = misses.size();
  for (std::size_t i = 0; i < misses.size(); ++i) {
    rest[i] = misses[i] * by - misses[pivot] * one.direction[i];
    slack[i] = block_.slack[i] * absolute(by) + block_.slack[pivot] * absolute(one.direction[i]);
    if (absolute(rest[i]) <= slack[i]) continue;
    if (worst == misses.size() || absolute(rest[i]) > absolute(rest[worst])) worst = i;
  }
  if (worst == misses.size()) return;
  double before = 0;
  for (const Correction& each : given) before += costs_.guess(each);
  for (std::size_t second = 0; second < classes_.size(); ++second) {
    const Class& other = classes_[second];
    if (second == first || (second < first && other.direction[pivot] != 0)) continue;
    const auto reduced = [&](std::size_t i) {
      return Int128{other.direction[i]} * by - Int128{other.direction[pivot]} * one.direction[i];
    };
    const Int128 under = reduced(worst);
    if (under == 0) continue;
    bool fits = true;
    for (std::size_t i = 0; i < misses.size() && fits; ++i) {
      const Int128 factor = reduced(i);
      if (slack[i] == 0 && (factor == 0) != (rest[i] == 0)) fits = false;
      if (!fits) break;
      fits = absolute(rest[i] * under - rest[worst] * factor) <=
             slack[i] * absolute(under) + slack[worst] * absolute(factor);
    }
    if (!fits) continue;
    const Ratio ofSecond{-rest[worst], under};
    const Ratio ofFirst{-(misses[pivot] * under - rest[worst] * other.direction[pivot]),
                        by * under};
    const auto firsts = membersBy(one, ofFirst, kMembersOfTwo);
    if (firsts.empty()) continue;
    for (const auto& [guess, correction] : membersBy(other, ofSecond, kMembersOfTwo)) {
      for (const auto& [guessFirst, correctionFirst] : firsts) {
        auto corrections = given;
        corrections.push_back(correction);
        corrections.push_back(correctionFirst);
        keep(std::move(corrections), before + guess + guessFirst);
      }
    }
  }
}

// One correction that closes some condition by itself, and two that do the rest.
void Explainer::solveByThree() {
  if (classes_.size() > kMostClassesForThree) return;
  for (const Class& one : classes_) {
    for (std::size_t i = 0; i < block_.misses.size(); ++i) {
      if (one.direction[i] == 0 || absolute(block_.misses[i]) <= block_.slack[i]) continue;
      for (const auto& member :
           membersBy(one, {-block_.misses[i], one.direction[i]}, kMembersOfThree)) {
        solve(after(block_.misses, member.second), {member.second});
      }
    }
  }
}

// Begins with what the tracing shows by itself, so that misreadings in series come apart.
void Explainer::solveFromTracing() {
  std::vector<std::pair<double, Correction>> seeds;
  for (const auto& one : columnOf_) {
    for (const auto& seed : costs_.suggestedBy(one.first, 4)) seeds.push_back(seed);
  }
  std::sort(seeds.begin(), seeds.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.first, a.second.link, a.second.longer) <
           std::tuple(b.first, b.second.link, b.second.longer);
  });
  if (seeds.size() > kMostSeeds) seeds.resize(kMostSeeds);
  for (std::size_t i = 0; i < seeds.size(); ++i) {
    const Correction& first = seeds[i].second;
    const Conditions misses = after(block_.misses, first);
    solve(misses, {first});
    for (std::size_t j = 0; j < i; ++j) {
      const Correction& second = seeds[j].second;
      if (second.link != first.link) solve(after(misses, second), {second, first});
    }
  }
}

std::vector<Explanation> Explainer::weighed() {
  std::vector<Found> candidates;
  for (const auto& [key, guess] : found_) {
    Found one{guess, {}};
    for (const auto& [link, longer] : key) one.corrections.push_back({link, longer});
    candidates.push_back(std::move(one));
  }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Found& a, const Found& b) { return a.guess < b.guess; });
  const std::size_t most =
      std::clamp<std::size_t>(40'000 / std::max<std::size_t>(tracing_.size(), 1), 40, 300);
  if (candidates.size() > most) candidates.resize(most);
  std::vector<Explanation> explanations;
  for (Found& one : candidates) {
    Explanation explanation{std::move(one.corrections), {}, 0};
    explanation.cost = tracing_.cost(explanation.corrections);
    for (const Correction& correction : explanation.corrections) {
      auto figure = costs_.withEnds(correction, explanation.corrections);
      explanation.cost += figure.cost;
      explanation.reasons.push_back(std::move(figure.reason));
    }
    explanations.push_back(std::move(explanation));
  }
  std::stable_sort(explanations.begin(), explanations.end(),
                   [](const Explanation& a, const Explanation& b) { return a.cost < b.cost; });
  return explanations;
}

std::vector<Explanation> Explainer::run() {
  for (const Int128 miss : block_.misses) {
    if (absolute(miss) > kLargestMiss) return {};
  }
  if (classes_.empty()) return {};
  solve(block_.misses, {});
  if (tracing_.isUsable()) solveFromTracing();
  if (found_.empty()) solveByThree();
  return weighed();
}

}  // namespace

std::vector<Explanation> explain(const Part& part, const AxisNetwork& network,
                                 const ConditionSpace& space, const MissingBlock& block,
                                 const Tracing& tracing) {
  return Explainer(part, network, space, block, tracing).run();
}

}  // namespace inchwright
