// Numeric placing against Ceres Solver on random places about an inch apart, each held by two
// readings: from the readings as numbers to where everything lies. Ours also tells mirror images
// apart, finds what is spare and what is loose; Ceres solves what it has been given, and putting
// its problem together is not counted.
//
// `hanging`: each place hangs on earlier ones. `woven`: all hang on each other, and ours looks for
// further answers that the tracing could mistake. `first_woven`: what both do alike, the answer
// next to the tracing and nothing else.

#include <benchmark/benchmark.h>

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "tests/support/ceres_placing.h"
#include "tests/support/random_placing.h"

namespace {

using inchwright::test::CeresPlacing;
using inchwright::test::RandomPlacing;

void ours(benchmark::State& state, RandomPlacing::Kind kind, std::uint32_t places) {
  const inchwright::PlaneProblem problem = RandomPlacing::make(kind, places, 14).problem();
  for (auto _ : state) {
    const auto outcome = inchwright::placeInPlane(problem);
    for (const bool isPlaced : outcome.isPlaced) {
      if (!isPlaced) state.SkipWithError("something is not placed");
    }
    benchmark::DoNotOptimize(outcome.variables.data());
  }
}

void oursFirst(benchmark::State& state, RandomPlacing::Kind kind, std::uint32_t places) {
  const inchwright::PlaneProblem problem = RandomPlacing::make(kind, places, 14).problem();
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < problem.kinds.size(); ++i) {
    if (problem.kinds[i] != inchwright::VariableKind::figure) open.push_back(i);
  }
  for (auto _ : state) {
    std::vector<double> at = problem.start;
    const auto summary = inchwright::settle(problem.equations, problem.rows, open, at);
    if (summary.residual > 1e-9) state.SkipWithError("not to the tick");
  }
}

void ceresSolver(benchmark::State& state, RandomPlacing::Kind kind, std::uint32_t places) {
  const RandomPlacing placing = RandomPlacing::make(kind, places, 14);
  CeresPlacing peer(placing);
  for (auto _ : state) {
    peer.start();
    if (peer.solve() > 1e-9) state.SkipWithError("not to the tick");
  }
}

const bool registered = [] {
  struct Case {
    const char* name;
    RandomPlacing::Kind kind;
    void (*ours)(benchmark::State&, RandomPlacing::Kind, std::uint32_t);
    std::vector<std::uint32_t> places;
  };
  const Case cases[] = {{"hanging_", RandomPlacing::Kind::hanging, &ours, {50, 1000, 10'000}},
                        {"woven_", RandomPlacing::Kind::woven, &ours, {50, 1000}},
                        {"first_woven_", RandomPlacing::Kind::woven, &oursFirst, {50, 1000}}};
  for (const Case& one : cases) {
    for (const std::uint32_t places : one.places) {
      const std::string what = one.name + std::to_string(places);
      for (const auto& [who, run] :
           {std::pair("ours/", one.ours), std::pair("ceres/", &ceresSolver)}) {
        benchmark::RegisterBenchmark((who + what).c_str(), run, one.kind, places)
            ->Unit(benchmark::kMillisecond)
            ->UseRealTime();
      }
    }
  }
  return true;
}();

}  // namespace
