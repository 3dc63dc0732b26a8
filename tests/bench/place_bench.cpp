// Numeric placing against Ceres Solver on random places about an inch apart, each held by two
// readings: from the readings as numbers to where everything lies. Ours also tells mirror images
// apart, finds what is spare and what is loose; Ceres solves what it has been given, and putting
// its problem together is not counted.
//
// `hanging`: each place hangs on earlier ones. `woven`: all hang on each other, and ours looks for
// further answers that the tracing could mistake.

#include <benchmark/benchmark.h>

#include <string>

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

void ceresSolver(benchmark::State& state, RandomPlacing::Kind kind, std::uint32_t places) {
  const RandomPlacing placing = RandomPlacing::make(kind, places, 14);
  CeresPlacing peer(placing);
  for (auto _ : state) {
    peer.start();
    if (peer.solve() > 1e-9) state.SkipWithError("not to the tick");
  }
}

const bool registered = [] {
  const std::pair<const char*, RandomPlacing::Kind> kinds[] = {
      {"hanging_", RandomPlacing::Kind::hanging}, {"woven_", RandomPlacing::Kind::woven}};
  for (const auto& [name, kind] : kinds) {
    for (const std::uint32_t places : {50, 1000, 10'000}) {
      if (kind == RandomPlacing::Kind::woven && places > 50) continue;
      const std::string what = name + std::to_string(places);
      for (const auto& [who, run] :
           {std::pair("ours/", &ours), std::pair("ceres/", &ceresSolver)}) {
        benchmark::RegisterBenchmark((who + what).c_str(), run, kind, places)
            ->Unit(benchmark::kMillisecond)
            ->UseRealTime();
      }
    }
  }
  return true;
}();

}  // namespace
