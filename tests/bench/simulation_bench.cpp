// A million stacks of ten unequal members, normal, to their mean, deviation, percentiles, histogram
// and count out of limits. NumPy does the same on one thread, timed inside Python by
// simulation_numpy.py: `numpy` is only the drawing and adding up, `numpy_whole` all of it.

#include <benchmark/benchmark.h>

#include <array>
#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include "core/tolerance/simulation.h"

namespace {

constexpr std::uint64_t kRuns = 1'000'000;

inchwright::Stack tenMembers() {
  std::vector<inchwright::StackMember> members;
  for (std::int64_t i = 1; i <= 10; ++i) {
    inchwright::StackMember member;
    member.nominal = 254'000'000;
    member.low = member.nominal - i * 2'540'000;
    member.high = member.nominal + i * 2'540'000;
    members.push_back(member);
  }
  return *inchwright::stackOf(members);
}

void ourSimulation(benchmark::State& state, unsigned threads, bool plainLoop) {
  const inchwright::Stack stack = tenMembers();
  inchwright::SimulationOptions options;
  options.runs = kRuns;
  options.threads = threads;
  options.plainLoop = plainLoop;
  options.required = inchwright::Span{stack.worst.low + stack.worst.width() / 3, stack.worst.high};
  for (auto _ : state) {
    ++options.seed;
    const auto result = inchwright::simulate(stack, options);
    if (!result) state.SkipWithError("is not simulated");
    benchmark::DoNotOptimize(result);
  }
}

/// Seconds of its runs: drawing and adding up, and the whole.
std::array<std::vector<double>, 2> secondsOfNumPy() {
  std::array<std::vector<double>, 2> seconds;
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(NUMPY_PEER, "r"), pclose);
  double drawing = 0;
  double whole = 0;
  while (pipe && std::fscanf(pipe.get(), "%lf %lf", &drawing, &whole) == 2) {
    seconds[0].push_back(drawing);
    seconds[1].push_back(whole);
  }
  return seconds;
}

// As many iterations as Python reports runs, each taking what Python says.
void numpySimulation(benchmark::State& state, bool whole) {
  static const auto both = secondsOfNumPy();
  const std::vector<double>& seconds = both[whole ? 1 : 0];
  if (seconds.empty()) {
    state.SkipWithError("Python with NumPy does not run");
    return;
  }
  std::size_t run = 0;
  for (auto _ : state) state.SetIterationTime(seconds[run++ % seconds.size()]);
}

const bool kRegistered = [] {
  // One time for all of our cases.
  for (const bool whole : {false, true}) {
    benchmark::RegisterBenchmark(whole ? "numpy_whole" : "numpy", numpySimulation, whole)
        ->UseManualTime()
        ->Iterations(7)
        ->Unit(benchmark::kMillisecond);
  }
  for (const unsigned threads : {1u, 2u}) {
    const std::string ending = std::to_string(threads) + (threads == 1 ? "_thread" : "_threads");
    for (const bool plain : {false, true}) {
      const std::string name = std::string("ours/") + (plain ? "plain_loop_" : "") + ending;
      benchmark::RegisterBenchmark(name.c_str(), ourSimulation, threads, plain)
          ->Unit(benchmark::kMillisecond)
          ->UseRealTime();
    }
  }
  return true;
}();

}  // namespace
