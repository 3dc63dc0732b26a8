// A job of 60 parts with 40 features each, on the desk without its window.
//
// `keystroke`: a figure of one part is typed, and everything follows: its solution, my sheet with
// its first page, what it may be mistaken for, and whether the whole kit goes together. `opened`:
// from the document's text to the same. `cover`: the states of all parts after an edit.
#include <benchmark/benchmark.h>

#include <cstdlib>
#include <utility>

#include "app/session/work.h"
#include "app/window/cover_slip.h"
#include "core/document/document.h"
#include "tests/support/big_kit.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

constexpr int kParts = 60;
constexpr int kFeatures = 40;
constexpr int kChanged = 7;  // which part is edited

void follow(const Desk& desk) {
  benchmark::DoNotOptimize(desk.solution().doubts.size());
  if (desk.sheet() == nullptr || desk.asMade() == nullptr) std::abort();
  benchmark::DoNotOptimize(desk.sheet()->page(0).items.size());
  benchmark::DoNotOptimize(desk.kitDoubts().size());
}

void BM_keystroke(benchmark::State& state) {
  deskApplication();
  Desk desk;
  desk.take(bigKit(kParts, kFeatures), {});
  desk.choosePart(kChanged);
  follow(desk);
  Part one = desk.part(), other = one;
  other.readings[3].figure = *readLength("7/16");
  bool turn = false;
  for (auto _ : state) {
    desk.applyPart(std::exchange(turn, !turn) ? one : other, QStringLiteral("type"));
    follow(desk);
  }
}

void BM_opened(benchmark::State& state) {
  deskApplication();
  const std::string text = writeDocument(bigKit(kParts, kFeatures));
  for (auto _ : state) {
    auto job = readDocument(text);
    if (!job.ok()) return state.SkipWithError(job.error().text.c_str());
    Desk desk;
    desk.take(std::move(job).value(), {});
    follow(desk);
  }
}

void BM_cover(benchmark::State& state) {
  deskApplication();
  Desk desk;
  desk.take(bigKit(kParts, kFeatures), {});
  follow(desk);
  Part one = desk.part(), other = one;
  other.readings[3].figure = *readLength("7/16");
  bool turn = false;
  for (auto _ : state) {
    desk.applyPart(std::exchange(turn, !turn) ? one : other, QStringLiteral("type"));
    benchmark::DoNotOptimize(partStates(desk.job(), desk.solutions()));
  }
}

BENCHMARK(BM_keystroke)->Name("ours/keystroke")->Unit(benchmark::kMillisecond);
BENCHMARK(BM_opened)->Name("ours/opened")->Unit(benchmark::kMillisecond);
BENCHMARK(BM_cover)->Name("ours/cover")->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace inchwright::app
