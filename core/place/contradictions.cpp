#include "core/place/contradictions.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace inchwright {
namespace {

// A figure whose share in a row is less than this does not bear on it.
constexpr double kNoShare = 1e-9;
// No reading is off by more than this: a candidate beyond it is none.
constexpr double kFarthestOff = 100;
// Inches. Circles are made to meet where they just touch, and no solver comes nearer to that.
constexpr double kMeets = 1e-7;
// Inches, radians.
constexpr double kNudge = 1e-2;

using Slopes = std::map<std::uint32_t, double>;

class Contradictions {
 public:
  Contradictions(const Part& part, const PartPlane& plane, const PlaneOutcome& outcome)
      : part_(part), plane_(plane), outcome_(outcome) {
    for (const auto& [reading, variable] : plane.figures) readingOf_[variable] = reading;
    for (std::uint32_t i = 0; i < outcome.blocks.size(); ++i) {
      for (const std::uint32_t one : outcome.blocks[i].block.variables) blockOf_[one] = i;
    }
    if (!outcome.spares.empty()) slopes_ = slopesByFigure(plane.problem, outcome);
  }

  void tell(bool findWouldBe, BeyondChains& out);
  std::set<std::uint32_t> behindClashes();

 private:
  Slopes sharesIn(std::uint32_t row) const;
  std::set<std::uint32_t> blocksBehind(const std::vector<std::uint32_t>& rows) const;
  void takeMembers(const std::set<std::uint32_t>& blocks, const std::vector<std::uint32_t>& rows,
                   const Slopes* shares, CentresClash& clash) const;
  std::optional<WouldBe> open(std::uint32_t reading, const std::set<std::uint32_t>& blocks,
                              std::optional<std::uint32_t> spare) const;
  double offOf(const WouldBe& would) const;
  bool allAgree(std::span<const double> at) const;
  double misfit(std::span<const double> at) const;
  double allowance(const Row& row, std::uint32_t index, std::span<const double> at) const;
  CentresClash clashOf(const SpareRow& spare, bool findWouldBe) const;
  CentresClash clashOf(const PlacedBlock& block, bool findWouldBe) const;
  CentresClash clashWithAll(const SpareRow& spare, bool findWouldBe) const;
  PlaneOutcome taking(std::uint32_t block, const Answer& answer) const;

  const Part& part_;
  const PartPlane& plane_;
  const PlaneOutcome& outcome_;
  std::map<std::uint32_t, std::uint32_t> readingOf_;  // by figure
  std::map<std::uint32_t, std::uint32_t> blockOf_;    // by variable
  std::vector<std::map<std::uint32_t, double>> slopes_;
};

// By how much a row would change with each figure, directly and over what it places.
Slopes Contradictions::sharesIn(std::uint32_t index) const {
  Slopes shares;
  const Row& row = outcome_.equations.rows()[index];
  const RowValue value = outcome_.equations.evaluate(row, outcome_.variables);
  outcome_.equations.forEachSlope(row, value, [&](std::uint32_t variable, double slope) {
    if (plane_.problem.kinds[variable] == VariableKind::figure) {
      shares[variable] += slope;
      return;
    }
    for (const auto& [figure, share] : slopes_[variable]) shares[figure] += slope * share;
  });
  std::erase_if(shares, [](const auto& one) { return std::abs(one.second) < kNoShare; });
  return shares;
}

// The blocks that place what some rows speak of, and those that these hang on.
std::set<std::uint32_t> Contradictions::blocksBehind(const std::vector<std::uint32_t>& rows) const {
  std::set<std::uint32_t> blocks;
  std::vector<std::uint32_t> queue = rows;
  for (std::size_t i = 0; i < queue.size(); ++i) {
    const Row& row = outcome_.equations.rows()[queue[i]];
    outcome_.equations.forEachSlope(row, RowValue{}, [&](std::uint32_t variable, double) {
      const auto found = blockOf_.find(variable);
      if (found == blockOf_.end() || !blocks.insert(found->second).second) return;
      const auto& more = outcome_.blocks[found->second].block.rows;
      queue.insert(queue.end(), more.begin(), more.end());
    });
  }
  return blocks;
}

void Contradictions::takeMembers(const std::set<std::uint32_t>& blocks,
                                 const std::vector<std::uint32_t>& rows, const Slopes* shares,
                                 CentresClash& clash) const {
  std::set<std::uint32_t> readings, understood;
  const auto take = [&](std::uint32_t row) {
    const Source& source = plane_.sources[row];
    if (source.kind == SourceKind::reading) readings.insert(source.index);
    if (source.kind == SourceKind::understanding) understood.insert(source.index);
    if (shares != nullptr) return;
    outcome_.equations.forEachSlope(outcome_.equations.rows()[row], RowValue{},
                                    [&](std::uint32_t variable, double) {
                                      const auto found = readingOf_.find(variable);
                                      if (found != readingOf_.end()) readings.insert(found->second);
                                    });
  };
  for (const std::uint32_t row : rows) take(row);
  if (shares != nullptr) {
    for (const auto& [figure, share] : *shares) readings.insert(readingOf_.at(figure));
  }
  for (const std::uint32_t block : blocks) {
    for (const std::uint32_t row : outcome_.blocks[block].block.rows) {
      if (shares == nullptr || plane_.sources[row].kind == SourceKind::understanding) take(row);
    }
  }
  clash.axes = plane_.axes;
  clash.members.assign(readings.begin(), readings.end());
  clash.understood.assign(understood.begin(), understood.end());
}

double Contradictions::allowance(const Row& row, std::uint32_t index,
                                 std::span<const double> at) const {
  double scale = 1;
  if (row.kind == RowKind::direction || row.kind == RowKind::turn) {
    const auto value = [&](std::size_t i) { return outcome_.equations.valueOf(row.of[i], at); };
    scale = std::hypot(value(2) - value(0), value(3) - value(1));
  }
  return plane_.problem.spareWithin[index] * scale;
}

bool Contradictions::allAgree(std::span<const double> at) const {
  return std::all_of(outcome_.spares.begin(), outcome_.spares.end(), [&](const SpareRow& spare) {
    if (!spare.isKnown) return true;
    const Row& row = outcome_.equations.rows()[spare.row];
    const double off = std::abs(outcome_.equations.evaluate(row, at).residual);
    // Two roundings meet: the spare one's own, and that of the reading that was opened.
    return off <= 2 * allowance(row, spare.row, at);
  });
}

double Contradictions::misfit(std::span<const double> at) const {
  double sum = 0;
  for (const SpareRow& spare : outcome_.spares) {
    if (!spare.isKnown) continue;
    const Row& row = outcome_.equations.rows()[spare.row];
    const double off = outcome_.equations.evaluate(row, at).residual;
    const double times = off / std::max(3 * allowance(row, spare.row, at), 1e-12);
    sum += std::min(times * times / 2, 8.0);
  }
  return sum;
}

// What a reading has to be: its correction is one more unknown. Of a spare row that row is one more
// equation; of rows that do not meet the least correction that makes them meet is looked for.
std::optional<WouldBe> Contradictions::open(std::uint32_t reading,
                                            const std::set<std::uint32_t>& blocks,
                                            std::optional<std::uint32_t> spare) const {
  const auto figure = plane_.figures.find(reading);
  if (figure == plane_.figures.end()) return std::nullopt;
  std::vector<std::uint32_t> rows, variables{figure->second};
  for (const std::uint32_t block : blocks) {
    const Block& one = outcome_.blocks[block].block;
    rows.insert(rows.end(), one.rows.begin(), one.rows.end());
    variables.insert(variables.end(), one.variables.begin(), one.variables.end());
  }
  std::vector<double> at = outcome_.variables;
  Equations equations = outcome_.equations;
  SettleOptions near;
  if (!spare) near.leastWeight = 1;
  if (spare) {
    rows.push_back(*spare);
  } else {
    // A place traced on the line through those that hold it would never leave it.
    for (std::size_t i = 1; i < variables.size(); ++i) {
      at[variables[i]] += kNudge * std::sin(static_cast<double>(i));
    }
    // Drawn back to 0 at first, as strongly as the others hold and then less: from where all of
    // them miss alike the search comes to the least.
    const Term term{figure->second, 1};
    const std::uint32_t still =
        equations.addRow({RowKind::same, {equations.addQuantity(0, std::span(&term, 1)), 0, 0}});
    std::vector<std::uint32_t> held = rows;
    held.push_back(still);
    for (const double weight : {1.0, 1e-1, 1e-2}) {
      equations.row(still).scale = weight;
      settle(equations, held, variables, at, near);
    }
  }
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  const SettleSummary summary = settle(equations, rows, variables, at, near);
  const double off = at[figure->second];
  if (!(summary.residual <= kMeets) || !(std::abs(off) < kFarthestOff)) return std::nullopt;
  const Reading& what = part_.readings[reading];
  WouldBe would{reading, {}, {}, allAgree(at), misfit(at)};
  if (what.kind == ReadingKind::angle) {
    // Within one turn, as it would be lettered.
    const double seen = what.angle->value.toDegrees();
    const double turned = std::fmod(seen + off * 180 / std::numbers::pi, 360);
    would.degrees = turned < 0 && seen >= 0 ? turned + 360 : turned;
    return would;
  }
  const double ticks = std::round(off * static_cast<double>(Length::kTicksPerInch));
  const auto length = what.figure.value.plus(Length::ticks(static_cast<std::int64_t>(ticks)));
  if (!length || length->ticks() <= 0) return std::nullopt;
  would.length = *length;
  return would;
}

CentresClash Contradictions::clashOf(const SpareRow& spare, bool findWouldBe) const {
  CentresClash clash;
  const Slopes shares = sharesIn(spare.row);
  const auto blocks = blocksBehind({spare.row});
  takeMembers(blocks, {spare.row}, &shares, clash);
  // The residual is what there is less what the row says.
  clash.missesBy = -spare.misses;
  if (plane_.sources[spare.row].kind == SourceKind::reading) {
    clash.spare = plane_.sources[spare.row].index;
  }
  for (const std::uint32_t reading : clash.members) {
    if (!findWouldBe) break;
    const auto would = open(reading, blocks, spare.row);
    if (would) clash.wouldBe.push_back(*would);
  }
  return clash;
}

CentresClash Contradictions::clashOf(const PlacedBlock& block, bool findWouldBe) const {
  CentresClash clash;
  const auto own = blocksBehind(block.block.rows);
  takeMembers(own, block.block.rows, nullptr, clash);
  clash.missesBy = block.misses;
  double least = 0;
  for (const std::uint32_t reading : clash.members) {
    if (!findWouldBe) break;
    const auto would = open(reading, own, std::nullopt);
    if (!would) continue;
    clash.wouldBe.push_back(*would);
    if (would->degrees) continue;
    const auto off = would->length.minus(part_.readings[reading].figure.value);
    const double inches = off ? -off->toInches() : 0;
    if (least == 0 || std::abs(inches) < std::abs(least)) least = inches;
  }
  // By how much they fail to meet: what the nearest of them would have to give.
  if (least != 0) clash.missesBy = least;
  return clash;
}

// By how much a reading would have to be another, in inches or degrees.
double Contradictions::offOf(const WouldBe& would) const {
  const Reading& reading = part_.readings[would.reading];
  if (would.degrees) {
    return std::abs(std::remainder(*would.degrees - reading.angle->value.toDegrees(), 360));
  }
  const auto off = would.length.minus(reading.figure.value);
  return off ? std::abs(off->toInches()) : kFarthestOff;
}

// A spare row that no answer of a block agrees with: by how much it misses the nearest, and each
// reading as it would have to be for the answer that asks least of it.
CentresClash Contradictions::clashWithAll(const SpareRow& spare, bool findWouldBe) const {
  CentresClash all;
  for (const Answer& answer : outcome_.blocks[*spare.againstBlock].answers) {
    const PlaneOutcome taken = taking(*spare.againstBlock, answer);
    const auto known = std::find_if(taken.spares.begin(), taken.spares.end(),
                                    [&](const SpareRow& one) { return one.row == spare.row; });
    CentresClash one = Contradictions(part_, plane_, taken).clashOf(*known, findWouldBe);
    if (all.members.empty() || std::abs(one.missesBy) < std::abs(all.missesBy)) {
      std::swap(one, all);
    }
    for (const WouldBe& would : one.wouldBe) {
      const auto same =
          std::find_if(all.wouldBe.begin(), all.wouldBe.end(),
                       [&](const auto& there) { return there.reading == would.reading; });
      if (same != all.wouldBe.end() && offOf(would) < offOf(*same)) *same = would;
    }
  }
  all.isOfSeveral = true;
  return all;
}

// What came out, as though a block had come out in a given way.
PlaneOutcome Contradictions::taking(std::uint32_t index, const Answer& answer) const {
  PlaneOutcome taken = outcome_;
  PlacedBlock& placed = taken.blocks[index];
  placed.fate = BlockFate::placed;
  for (std::size_t i = 0; i < answer.values.size(); ++i) {
    taken.variables[placed.block.variables[i]] = answer.values[i];
    taken.isPlaced[placed.block.variables[i]] = true;
  }
  for (std::size_t i = 0; i < answer.meant.size(); ++i) {
    taken.equations.row(placed.block.rows[i]) = answer.meant[i];
  }
  for (SpareRow& spare : taken.spares) {
    if (spare.againstBlock != index) continue;
    spare.isKnown = true;
    spare.misses =
        taken.equations.evaluate(taken.equations.rows()[spare.row], taken.variables).residual;
  }
  return taken;
}

void Contradictions::tell(bool findWouldBe, BeyondChains& out) {
  const auto isTold = [&](const CentresClash& clash) {
    return std::any_of(out.clashes.begin(), out.clashes.end(), [&](const CentresClash& one) {
      return one.axes == clash.axes && one.members == clash.members && one.spare == clash.spare;
    });
  };
  // With more placed by now some of what was open may be decided.
  std::erase_if(out.clashes, [&](const CentresClash& one) {
    return one.isOfSeveral && one.axes == plane_.axes;
  });
  const auto use = [&](std::uint32_t row) {
    const Source& source = plane_.sources[row];
    if (source.kind == SourceKind::reading) out.used.insert(source.index);
    if (source.kind == SourceKind::understanding) out.understood.insert(source.index);
  };
  for (const PlacedBlock& block : outcome_.blocks) {
    if (block.fate != BlockFate::placed && block.fate != BlockFate::mirrorTaken) continue;
    for (const std::uint32_t row : block.block.rows) use(row);
  }
  for (const SpareRow& spare : outcome_.spares) {
    if (spare.isKnown) use(spare.row);
  }
  for (const PlacedBlock& block : outcome_.blocks) {
    if (block.fate != BlockFate::apart) continue;
    CentresClash clash = clashOf(block, findWouldBe);
    if (!isTold(clash)) out.clashes.push_back(std::move(clash));
  }
  for (const SpareRow& spare : outcome_.spares) {
    if (spare.againstBlock) {
      CentresClash clash = clashWithAll(spare, findWouldBe);
      if (!isTold(clash)) out.clashes.push_back(std::move(clash));
    }
    if (!spare.isKnown) continue;
    for (const auto& [figure, share] : sharesIn(spare.row)) {
      out.checked.insert(readingOf_.at(figure));
    }
    if (spare.agrees) continue;
    CentresClash clash = clashOf(spare, findWouldBe);
    if (!isTold(clash)) out.clashes.push_back(std::move(clash));
  }
}

std::set<std::uint32_t> Contradictions::behindClashes() {
  std::set<std::uint32_t> behind;
  for (const SpareRow& spare : outcome_.spares) {
    if (!spare.isKnown || spare.agrees) continue;
    for (const std::uint32_t block : blocksBehind({spare.row})) {
      const auto& variables = outcome_.blocks[block].block.variables;
      behind.insert(variables.begin(), variables.end());
    }
  }
  return behind;
}

}  // namespace

void tellContradictions(const Part& part, const PartPlane& plane, const PlaneOutcome& outcome,
                        bool findWouldBe, BeyondChains& out) {
  Contradictions(part, plane, outcome).tell(findWouldBe, out);
}

std::set<std::uint32_t> variablesBehindClashes(const PartPlane& plane,
                                               const PlaneOutcome& outcome) {
  const bool any = std::any_of(outcome.spares.begin(), outcome.spares.end(),
                               [](const SpareRow& one) { return one.isKnown && !one.agrees; });
  if (!any) return {};
  return Contradictions(Part{}, plane, outcome).behindClashes();
}

}  // namespace inchwright
