#include "core/suspect/missing_block.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "core/base/sets.h"
#include "core/chain/circuit.h"
#include "core/chain/tree_paths.h"

namespace inchwright {
namespace {

constexpr std::size_t kMostSteps = 20'000'000;
/// Beyond this a condition's factors are no print's any more, and products might leave 128 bits.
constexpr Int128 kLargestFactor = 1 << 20;

Int128 leastCommonMultiple(Int128 a, Int128 b) {
  Int128 x = a;
  Int128 y = b;
  while (y != 0) x = std::exchange(y, x % y);
  return a / x * b;
}

}  // namespace

ConditionSpace::ConditionSpace(const Part& part, const AxisSystem& system)
    : system_(system), network_(system.network()) {
  std::vector<Condition> conditions;
  if (takeLoops(conditions) && takeRelations(conditions)) gather(part, conditions);
}

bool ConditionSpace::takeLoops(std::vector<Condition>& conditions) const {
  std::size_t steps = 0;
  for (std::uint32_t link = 0; link < network_.links.size(); ++link) {
    if (forest().holds(link)) continue;
    Condition condition;
    for (const auto& [member, sign] : forest().loopOver(link)) {
      condition.links[member] = Rational(sign);
    }
    steps += condition.links.size();
    if (steps > kMostSteps) return false;
    conditions.push_back(std::move(condition));
  }
  return true;
}

bool ConditionSpace::takeRelations(std::vector<Condition>& conditions) const {
  for (const Sparse& relations : system_.spareRelations()) {
    const std::optional<Circuit> circuit = system_.membersOf(relations, {});
    if (!circuit) return false;
    conditions.push_back({{circuit->links.begin(), circuit->links.end()}, circuit->relations});
  }
  return true;
}

ConditionSpace::TreeOffset ConditionSpace::offsetOf(std::uint32_t root) const {
  const Elimination::Expression expression = system_.elimination().of(root);
  TreeOffset offset{expression.free, {}};
  const std::optional<Sparse> links = pathsOf(forest(), network_, expression.equations);
  // The relation reads Σ coefficient · root = −Σ coefficient · path.
  if (!links || !addScaled(offset.links, *links, Rational(-1))) return {{}, {}};
  return offset;
}

Rational ConditionSpace::missOf(const Condition& condition) const {
  Circuit circuit;
  circuit.links.assign(condition.links.begin(), condition.links.end());
  return inchwright::missOf(network_, circuit).value_or(Rational());
}

Rational ConditionSpace::slackOf(const Part& part, const Condition& condition,
                                 bool lastPlaces) const {
  Circuit circuit;
  circuit.links.assign(condition.links.begin(), condition.links.end());
  const Rational allowed = allowanceOf(part, network_, circuit);
  return lastPlaces ? std::max(allowed, lastPlacesOf(part, network_, circuit)) : allowed;
}

void ConditionSpace::gather(const Part& part, const std::vector<Condition>& conditions) {
  const auto linkCount = static_cast<std::uint32_t>(network_.links.size());
  Sets rows(linkCount + network_.relations.size());
  std::vector<std::uint32_t> rowOf;
  for (const Condition& condition : conditions) {
    std::uint32_t row = kNone;
    const auto join = [&](std::uint32_t one) { row = row == kNone ? one : rows.unite(row, one); };
    for (const std::uint32_t relation : condition.relations) join(linkCount + relation);
    for (const auto& one : condition.links) join(one.first);
    rowOf.push_back(row);
  }
  std::map<std::uint32_t, std::vector<std::size_t>> missing;
  for (std::size_t i = 0; i < conditions.size(); ++i) {
    if (missOf(conditions[i]).magnitude() > slackOf(part, conditions[i], true))
      missing[rows.find(rowOf[i])];
  }
  if (missing.empty()) return;
  for (std::size_t i = 0; i < conditions.size(); ++i) {
    const auto found = missing.find(rows.find(rowOf[i]));
    if (found != missing.end()) found->second.push_back(i);
  }
  std::map<std::uint32_t, MissingBlock> blocks;
  for (std::uint32_t row = 0; row < linkCount + network_.relations.size(); ++row) {
    const auto found = missing.find(rows.find(row));
    if (found == missing.end()) continue;
    MissingBlock& block = blocks[found->first];
    if (row >= linkCount) {
      block.relations.push_back(row - linkCount);
      continue;
    }
    block.links.push_back(row);
    if (network_.links[row].source.kind == SourceKind::reading) block.readings.push_back(row);
  }
  for (auto& [row, block] : blocks) {
    block.columns.resize(block.readings.size());
    bool fine = block.readings.size() * missing[row].size() < kMostSteps;
    // Where some loop here misses by what rounding takes, none can be asked to close exactly.
    const bool isRounded =
        std::any_of(missing[row].begin(), missing[row].end(), [&](std::size_t i) {
          const Rational miss = missOf(conditions[i]).magnitude();
          return miss > slackOf(part, conditions[i], false) &&
                 miss <= slackOf(part, conditions[i], true);
        });
    for (const std::size_t i : missing[row]) {
      fine = fine && addCondition(part, conditions[i], isRounded, block);
    }
    if (fine) blocks_.push_back(std::move(block));
  }
}

// Scales the condition to whole factors and puts it behind those of the block.
bool ConditionSpace::addCondition(const Part& part, const Condition& condition, bool lastPlaces,
                                  MissingBlock& block) const {
  Int128 scale = 1;
  for (const auto& one : condition.links) {
    scale = leastCommonMultiple(scale, one.second.denominator());
    if (scale > kLargestFactor) return false;
  }
  const auto scaled = [&](const Rational& value) {
    return value.numerator() * (scale / value.denominator());
  };
  for (auto& column : block.columns) column.push_back(0);
  for (const auto& [link, factor] : condition.links) {
    const auto found = std::lower_bound(block.readings.begin(), block.readings.end(), link);
    const Int128 whole = scaled(factor);
    if (whole > kLargestFactor || whole < -kLargestFactor) return false;
    if (found == block.readings.end() || *found != link) continue;
    block.columns[found - block.readings.begin()].back() = static_cast<std::int64_t>(whole);
  }
  const Rational miss = missOf(condition);
  block.misses.push_back(miss.numerator() * scale / miss.denominator());
  const Rational slack = slackOf(part, condition, lastPlaces);
  const Int128 wide = slack.numerator() * scale;
  block.slack.push_back((wide + slack.denominator() - 1) / slack.denominator());
  return true;
}

}  // namespace inchwright
