#include "core/tolerance/relation_ranges.h"

#include <algorithm>
#include <map>
#include <optional>

#include "core/base/checked.h"
#include "core/graph/elimination.h"
#include "core/graph/exact_program.h"

namespace inchwright {
namespace {

/// The part's positions expressed by few free ones, and the bounds on those.
struct System {
  Elimination elimination;
  std::map<std::uint32_t, std::uint32_t> column;  ///< free group → variable of the program
  std::vector<std::uint32_t> edgeOf;              ///< by row of the program
};

Sparse inColumns(const System& system, const Sparse& free) {
  Sparse columns;
  for (const auto& [group, factor] : free) columns[system.column.at(group)] = factor;
  return columns;
}

std::optional<Elimination::Expression> difference(const System& system, std::uint32_t from,
                                                  std::uint32_t to) {
  Elimination::Expression end = system.elimination.of(to);
  const Elimination::Expression begin = system.elimination.of(from);
  const auto constant = end.constant.minus(begin.constant);
  if (!constant || !addScaled(end.free, begin.free, Rational(-1))) return std::nullopt;
  end.constant = *constant;
  return end;
}

// Fixes the start at 0 and takes the relations; those that contradict, if any do.
Result<std::vector<Source>> takeRelations(const ToleranceNetwork& network,
                                          const GroupedNetwork& grouped, std::uint32_t source,
                                          System& system) {
  std::uint32_t number = 0;
  const auto fixed = system.elimination.add(number, {{source, Rational(1)}}, Rational(0));
  if (!fixed) return fixed.error();
  for (const AxisRelation& relation : network.relations) {
    ++number;
    Sparse factors;
    Rational constant;
    for (const auto& [place, factor] : relation.terms) {
      addScaled(factors, {{grouped.group[place], Rational(factor)}}, Rational(1));
      const auto shift = Rational(factor).times(Rational(grouped.offset[place]));
      const auto sum = shift ? constant.minus(*shift) : std::nullopt;
      if (!sum) return Error{ErrorCode::outOfRange, "an understanding leads too far", ""};
      constant = *sum;
    }
    const auto added = system.elimination.add(number, factors, constant);
    if (!added) return added.error();
    if (!*added || (*added)->constant.isZero()) continue;
    std::vector<Source> contradicting;
    for (const auto& [equation, factor] : (*added)->equations) {
      if (equation != 0) contradicting.push_back(network.relations[equation - 1].source);
    }
    return contradicting;
  }
  return std::vector<Source>{};
}

// Bounds of all edges over the free groups; empty when there are too many for the exact program.
std::optional<ExactProgram> programOf(const GroupedNetwork& grouped, System& system) {
  std::vector<Elimination::Expression> lengths;
  for (const DifferenceEdge& edge : grouped.edges) {
    const auto length = difference(system, edge.a, edge.b);
    if (!length) return std::nullopt;
    for (const auto& [group, factor] : length->free) {
      system.column.emplace(group, static_cast<std::uint32_t>(system.column.size()));
    }
    lengths.push_back(*length);
  }
  if (system.column.size() > kMostWithRelations) return std::nullopt;
  ExactProgram program(static_cast<std::uint32_t>(system.column.size()));
  for (std::uint32_t i = 0; i < lengths.size(); ++i) {
    const auto above = Rational(grouped.edges[i].high).minus(lengths[i].constant);
    const auto below = lengths[i].constant.minus(Rational(grouped.edges[i].low));
    if (!above || !below) return std::nullopt;
    const Sparse factors = inColumns(system, lengths[i].free);
    Sparse negated;
    addScaled(negated, factors, Rational(-1));
    program.addAtMost(factors, *above);
    program.addAtMost(negated, *below);
    system.edgeOf.push_back(i);
    system.edgeOf.push_back(i);
  }
  return program;
}

struct End {
  std::int64_t ticks = 0;
  std::vector<Source> by;
};

// The greatest (sign 1) or least (sign −1) a place can be that lies `shift` from a group; nothing
// where it is not held at all.
Result<std::optional<End>> endOf(const ToleranceNetwork& network, const GroupedNetwork& grouped,
                                 const System& system, ExactProgram& program,
                                 const Elimination::Expression& place, std::int64_t shift,
                                 int sign) {
  for (const auto& [group, factor] : place.free) {
    if (system.column.find(group) == system.column.end()) return std::optional<End>();
  }
  Sparse objective;
  addScaled(objective, inColumns(system, place.free), Rational(sign));
  const Result<ExactProgram::Best> best = program.maximise(objective);
  if (!best) return best.error();
  if (!best->bounded) return std::optional<End>();
  const auto constant = place.constant.plus(shift);
  const auto parts =
      constant ? best->value.plus(sign > 0 ? *constant : constant->negated()) : std::nullopt;
  const auto value = parts ? parts->over(grouped.scale) : std::nullopt;
  const auto outward =
      value ? narrowed<std::int64_t>(sign > 0 ? value->ceiling() : value->negated().floor())
            : std::nullopt;
  if (!outward) return Error{ErrorCode::outOfRange, "a range goes too far", ""};
  End end{*outward, {}};
  for (const std::uint32_t row : best->rows) {
    const std::uint32_t link = grouped.linkOf[system.edgeOf[row]];
    end.by.push_back(network.links[link].source);
  }
  return std::optional<End>(end);
}

Result<std::int64_t> printedFrom(const Part& part, const ToleranceNetwork& network,
                                 std::uint32_t start, std::uint32_t place) {
  const auto members = chainBetween(part, network, network.places[start], network.places[place]);
  if (!members) return members.error();
  const auto stack = stackOf(*members);
  if (!stack) return stack.error();
  return stack->nominal.rounded().value_or(0);
}

// Every place by the exact program.
Result<Ranges> rangesByProgram(const Part& part, const ToleranceNetwork& network,
                               const GroupedNetwork& grouped, const System& system,
                               ExactProgram& program, std::uint32_t start) {
  Ranges ranges;
  for (std::uint32_t place = 0; place < network.places.size(); ++place) {
    const std::int64_t shift = grouped.offset[place] - grouped.offset[start];
    const Elimination::Expression where = system.elimination.of(grouped.group[place]);
    const auto low = endOf(network, grouped, system, program, where, shift, -1);
    if (!low) return low.error();
    const auto high = endOf(network, grouped, system, program, where, shift, 1);
    if (!high) return high.error();
    if (!*low || !*high) continue;
    const Result<std::int64_t> printed = printedFrom(part, network, start, place);
    if (!printed) return printed.error();
    ranges.places.push_back({network.places[place],
                             *printed,
                             {(*low)->ticks, (*high)->ticks},
                             (*low)->by,
                             (*high)->by});
  }
  return ranges;
}

}  // namespace

Result<Ranges> rangesWithRelations(const Part& part, const ToleranceNetwork& network,
                                   const GroupedNetwork& grouped, const DifferenceGraph& graph,
                                   const std::vector<std::int64_t>& positions,
                                   std::uint32_t start) {
  System system;
  const std::uint32_t source = grouped.group[start];
  const auto contradicting = takeRelations(network, grouped, source, system);
  if (!contradicting) return contradicting.error();
  if (!contradicting->empty()) {
    Ranges ranges;
    ranges.contradiction = *contradicting;
    return ranges;
  }
  std::optional<ExactProgram> program = programOf(grouped, system);
  if (program) {
    Result<Ranges> exact = rangesByProgram(part, network, grouped, system, *program, start);
    if (exact) return exact;
    if (exact.error().code == ErrorCode::unsolvable) {
      Ranges ranges;
      for (const std::uint32_t row : program->contradiction()) {
        const std::uint32_t link = grouped.linkOf[system.edgeOf[row]];
        ranges.contradiction.push_back(network.links[link].source);
      }
      return ranges;
    }
  }
  Ranges ranges;
  const Reach reach = graph.from(source, positions);
  const std::vector<std::int64_t> printed = printedPositions(network, grouped, source);
  ranges.places = placeRangesOf(network, grouped, reach, printed, start);
  for (const AxisRelation& relation : network.relations) {
    if (std::find(ranges.leftOut.begin(), ranges.leftOut.end(), relation.source) ==
        ranges.leftOut.end()) {
      ranges.leftOut.push_back(relation.source);
    }
  }
  return ranges;
}

}  // namespace inchwright
