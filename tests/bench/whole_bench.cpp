// Whole calls over one part, each from the document's value: `solve` to positions and doubts,
// `table` to the setup's table as well, `ranges` from a side along x, `stack` to the farthest hole.
// Linear: twenty thousand features take a hundred times as long as two hundred.

#include <benchmark/benchmark.h>

#include <string>

#include "core/plan/table.h"
#include "core/tolerance/ranges.h"
#include "tests/support/big_plate.h"

namespace inchwright {
namespace {

void solved(benchmark::State& state, const Job& job) {
  for (auto _ : state) {
    const Result<Solution> solution = solve(job.parts[0]);
    if (!solution || solution->placed.size() != job.parts[0].features.size()) {
      return state.SkipWithError("not solved");
    }
    benchmark::DoNotOptimize(solution->doubts.size());
  }
}

void tabled(benchmark::State& state, const Job& job) {
  const Part& part = job.parts[0];
  for (auto _ : state) {
    const Result<Solution> solution = solve(part);
    if (!solution) return state.SkipWithError("not solved");
    const Result<SetupTable> table = makeTable(job, part, *solution, part.setups[0]);
    if (!table || table->rows.size() + 4 != part.features.size()) {
      return state.SkipWithError("no table");
    }
    benchmark::DoNotOptimize(table->rows.data());
  }
}

void ranged(benchmark::State& state, const Job& job) {
  const Part& part = job.parts[0];
  for (auto _ : state) {
    const Result<ToleranceNetwork> network = toleranceNetworkOf(part, Axis::x);
    const Result<Ranges> ranges = network ? rangesFrom(part, *network, "L") : network.error();
    if (!ranges || ranges->places.size() + 2 != part.features.size()) {
      return state.SkipWithError("no ranges");
    }
    benchmark::DoNotOptimize(ranges->places.data());
  }
}

void stacked(benchmark::State& state, const Job& job) {
  const Part& part = job.parts[0];
  const Id& last = part.features.back().id;
  for (auto _ : state) {
    const Result<ToleranceNetwork> network = toleranceNetworkOf(part, Axis::x);
    const auto members = network ? chainBetween(part, *network, "L", last) : network.error();
    const Result<Stack> stack = members ? stackOf(*members) : members.error();
    if (!stack || stack->members.empty()) return state.SkipWithError("no stack");
    benchmark::DoNotOptimize(stack->worst);
  }
}

const bool kRegistered = [] {
  for (const int features : {200, 2'000, 20'000}) {
    const auto add = [&](const char* what, void (*run)(benchmark::State&, const Job&)) {
      const std::string name = "ours/" + std::string(what) + "_" + std::to_string(features);
      benchmark::RegisterBenchmark(name.c_str(), [features, run](benchmark::State& state) {
        Job job;
        job.parts.push_back(bigPlate(features));
        run(state, job);
      })->Unit(benchmark::kMillisecond);
    };
    add("solve", solved);
    add("table", tabled);
    add("ranges", ranged);
    add("stack", stacked);
  }
  return true;
}();

}  // namespace
}  // namespace inchwright
