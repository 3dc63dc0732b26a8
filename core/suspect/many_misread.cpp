#include "core/suspect/many_misread.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>

#include "core/chain/circuit.h"
#include "core/graph/loops.h"

namespace inchwright {
namespace {

constexpr std::size_t kMostTrials = 30'000'000;
/// What a loop left open speaks against all that was found, in nats: about as much as a misreading
/// that nothing but chance explains.
constexpr double kPerLoop = 12.0;
constexpr std::int64_t kFinestFactor = 1 << 20;

/// Σ factor · (ticks of the link) has to come to 0, and misses by `miss`.
struct Row {
  std::vector<std::pair<std::uint32_t, std::int64_t>> links;  ///< readings only
  Int128 miss = 0;
  Int128 slack = 0;

  bool isOpenWith(Int128 change) const { return miss + change > slack || miss + change < -slack; }
  bool isOpen() const { return isOpenWith(0); }
};

class Peeling {
 public:
  Peeling(const Part& part, const ConditionSpace& space, const MissingBlock& block,
          CorrectionCost& costs)
      : part_(part), network_(space.system().network()), costs_(costs) {
    readings_.insert(block.readings.begin(), block.readings.end());
    for (const Loop& loop : shortLoops(space.forest().links(), block.links)) {
      Circuit circuit;
      for (const auto& [link, sign] : loop) circuit.links.push_back({link, Rational(sign)});
      take(circuit);
    }
    const std::set<std::uint32_t> links(block.links.begin(), block.links.end());
    for (const Sparse& relations : space.system().spareRelations()) {
      const auto circuit = space.system().membersOf(relations, {});
      const auto isHere = [&](const auto& member) { return links.count(member.first) != 0; };
      if (circuit && std::any_of(circuit->links.begin(), circuit->links.end(), isHere))
        take(*circuit);
    }
  }

  ManyMisread run();

 private:
  struct Step {
    double worth = 0;
    std::int64_t longer = 0;
  };

  void take(const Circuit& circuit);
  std::optional<Step> bestAt(std::uint32_t link);
  std::int64_t madeLonger(std::uint32_t link) const;
  double costOf(std::uint32_t link, std::int64_t longer, bool& possible);

  const Part& part_;
  const AxisNetwork& network_;
  CorrectionCost& costs_;
  std::set<std::uint32_t> readings_;
  std::vector<Row> rows_;
  std::map<std::uint32_t, std::vector<std::pair<std::size_t, std::int64_t>>> rowsOf_;
  std::map<std::uint32_t, std::int64_t> longer_;
  std::size_t steps_ = 0;
};

void Peeling::take(const Circuit& circuit) {
  const auto miss = missOf(network_, circuit);
  // Of a half and a third in one loop all is counted in sixths.
  std::int64_t scale = 1;
  for (const auto& one : circuit.links) {
    if (one.second.denominator() > kFinestFactor) return;
    scale = std::lcm(scale, static_cast<std::int64_t>(one.second.denominator()));
    if (scale > kFinestFactor) return;
  }
  const auto whole = [&](const Rational& value) { return value.times(scale); };
  Row row;
  for (const auto& [link, factor] : circuit.links) {
    const auto scaled = whole(factor);
    if (!scaled) return;
    if (readings_.count(link) != 0)
      row.links.push_back({link, static_cast<std::int64_t>(scaled->numerator())});
  }
  const auto scaledMiss = miss ? whole(*miss) : std::nullopt;
  const auto slack = whole(
      std::max(allowanceOf(part_, network_, circuit), lastPlacesOf(part_, network_, circuit)));
  if (!scaledMiss || !slack) return;
  row.miss = scaledMiss->numerator() / scaledMiss->denominator();
  row.slack = slack->ceiling();
  for (const auto& [link, factor] : row.links) rowsOf_[link].push_back({rows_.size(), factor});
  rows_.push_back(std::move(row));
}

std::int64_t Peeling::madeLonger(std::uint32_t link) const {
  const auto found = longer_.find(link);
  return found == longer_.end() ? 0 : found->second;
}

double Peeling::costOf(std::uint32_t link, std::int64_t longer, bool& possible) {
  if (longer == 0) return 0;
  possible = costs_.figure({link, longer}).possible;
  return possible ? costs_.guess({link, longer}) : 0;
}

// The best single change of a reading, by what it has been changed to already.
std::optional<Peeling::Step> Peeling::bestAt(std::uint32_t link) {
  std::optional<Step> best;
  std::set<std::int64_t> tried;
  const auto& mine = rowsOf_.at(link);
  const std::int64_t before = madeLonger(link);
  bool possible = true;
  const double spent = costOf(link, before, possible);
  for (const auto& [number, factor] : mine) {
    const Row& row = rows_[number];
    if (!row.isOpen()) continue;
    const auto change = nearestCorrection(network_, link, {-row.miss, factor}, row.slack);
    if (!change || !tried.insert(change->longer).second) continue;
    const auto total = before + change->longer;
    possible = true;
    const double cost = costOf(link, total, possible);
    if (!possible) continue;
    int fewer = 0;
    for (const auto& [other, by] : mine) {
      const Row& one = rows_[other];
      const bool open = one.isOpenWith(Int128{change->longer} * by);
      fewer += (one.isOpen() ? 1 : 0) - (open ? 1 : 0);
    }
    steps_ += mine.size();
    const double worth = kPerLoop * fewer - cost + spent;
    if (fewer > 0 && (!best || worth > best->worth)) best = Step{worth, change->longer};
  }
  return best;
}

ManyMisread Peeling::run() {
  ManyMisread many;
  for (const Row& row : rows_) {
    if (!row.isOpen()) continue;
    for (const auto& one : row.links) ++many.closes[one.first];
  }
  std::map<std::uint32_t, std::optional<Step>> steps;
  for (const auto& one : rowsOf_) steps[one.first] = bestAt(one.first);
  while (steps_ < kMostTrials) {
    auto best = steps.end();
    for (auto at = steps.begin(); at != steps.end(); ++at) {
      if (at->second && (best == steps.end() || at->second->worth > best->second->worth)) best = at;
    }
    if (best == steps.end()) break;
    const auto [link, step] = *best;
    longer_[link] += step->longer;
    if (longer_[link] == 0) longer_.erase(link);
    std::set<std::uint32_t> touched;
    for (const auto& [number, by] : rowsOf_.at(link)) {
      rows_[number].miss += Int128{step->longer} * by;
      for (const auto& one : rows_[number].links) touched.insert(one.first);
    }
    for (const std::uint32_t one : touched) steps[one] = bestAt(one);
  }
  many.longer = longer_;
  return many;
}

}  // namespace

ManyMisread explainMany(const Part& part, const ConditionSpace& space, const MissingBlock& block,
                        CorrectionCost& costs) {
  return Peeling(part, space, block, costs).run();
}

}  // namespace inchwright
