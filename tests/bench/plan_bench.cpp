// Plan and checks of a whole setup: a plate of 200 holes has 5 ms, one of 2000 has 80 ms.

#include <benchmark/benchmark.h>

#include <array>
#include <string>

#include "core/checks/whole_part.h"
#include "tests/support/big_plate.h"

namespace inchwright {
namespace {

/// The big plate with all kinds of holes, held on parallels in a vice.
Job busyJob(int holes) {
  Job job;
  job.parts.push_back(bigPlate(holes + 4));
  Part& part = job.parts[0];
  part.material = "brass";
  constexpr std::array kMakes{Make::drill, Make::ream, Make::tap, Make::bore};
  std::size_t count = 0;
  for (Feature& feature : part.features) {
    Drilled* drilled = feature.drilled();
    if (!drilled) continue;
    drilled->make = kMakes[count++ % kMakes.size()];
    // Every hole of a size of its own would be the worst; a dozen sizes are a busy plate.
    drilled->diameter = *readLength(std::to_string(8 + count % 12) + "/64");
    if (drilled->make == Make::tap) drilled->thread = "#5-40 UNC";
  }
  Setup& setup = part.setups[0];
  setup.jaw = Side::front;
  setup.held.parallels.emplace(2);
  for (LaidParallel& one : *setup.held.parallels) {
    one.thick = *readLength("1/8");
    one.tall = *readLength("1");
  }
  setup.held.parallels->back().jaw = Jaw::moving;
  job.shop.vice.emplace();
  job.shop.vice->jawHeight = *readLength("1 1/2");
  return job;
}

void planAndChecks(benchmark::State& state, int holes) {
  const Job job = busyJob(holes);
  const Part& part = job.parts[0];
  const Result<Solution> solution = solve(part);
  if (!solution) return state.SkipWithError(solution.error().text.c_str());
  for (auto _ : state) {
    const ToolsOwned tools(job.shop);
    const CheckedSetup checked = planAndCheck(job, part, *solution, part.setups[0], tools);
    benchmark::DoNotOptimize(checked.findings.size());
  }
}
const bool kRegistered = [] {
  for (const int holes : {200, 2'000}) {
    const std::string name = "ours/holes_" + std::to_string(holes);
    benchmark::RegisterBenchmark(name.c_str(), [holes](benchmark::State& state) {
      planAndChecks(state, holes);
    })->Unit(benchmark::kMillisecond);
  }
  return true;
}();

}  // namespace
}  // namespace inchwright
