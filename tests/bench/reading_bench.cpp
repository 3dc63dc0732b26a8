#include <benchmark/benchmark.h>

#include <charconv>
#include <cstdio>
#include <cstring>

#include "core/measure/lettered.h"
#include "core/measure/writing.h"

// Reading and writing one size, beside what the standard library does with a far simpler text:
// std::from_chars on the same size as a decimal, and sscanf on a whole, a top and a bottom.

namespace inchwright {
namespace {

void read(benchmark::State& state, const char* text) {
  for (auto _ : state) {
    const char* input = text;
    benchmark::DoNotOptimize(input);
    auto result = readLength(input);
    benchmark::DoNotOptimize(result);
  }
}

void fromChars(benchmark::State& state) {
  const char* text = "1.1875";
  for (auto _ : state) {
    benchmark::DoNotOptimize(text);
    double value = 0;
    std::from_chars(text, text + std::strlen(text), value);
    benchmark::DoNotOptimize(value);
  }
}

void scanMixed(benchmark::State& state) {
  const char* text = "1 3/16";
  for (auto _ : state) {
    benchmark::DoNotOptimize(text);
    int whole = 0, over = 0, under = 1;
    const int found = std::sscanf(text, "%d %d/%d", &whole, &over, &under);
    benchmark::DoNotOptimize(found);
    double value = whole + static_cast<double>(over) / under;
    benchmark::DoNotOptimize(value);
  }
}

void showCoordinate(benchmark::State& state) {
  const Rational ticks(3'016'250'000);
  const Step step;
  for (auto _ : state) {
    auto shown = showAtStep(ticks, step);
    benchmark::DoNotOptimize(shown);
  }
}

void printCoordinate(benchmark::State& state) {
  double value = 1.1875;
  for (auto _ : state) {
    benchmark::DoNotOptimize(value);
    char text[32];
    std::snprintf(text, sizeof text, "%.4f", value);
    benchmark::DoNotOptimize(text);
  }
}

BENCHMARK_CAPTURE(read, mixed, "1 3/16")->Name("ours/mixed_fraction");
BENCHMARK(scanMixed)->Name("sscanf/mixed_fraction");
BENCHMARK_CAPTURE(read, decimal, "1.1875")->Name("ours/decimal");
BENCHMARK(fromChars)->Name("from_chars/decimal");
BENCHMARK_CAPTURE(read, tolerance, ".500 +.002 -.000")->Name("ours/tolerance");
BENCHMARK_CAPTURE(read, chain, "3/8 + 1 1/4 + 3/8")->Name("ours/chain");
BENCHMARK_CAPTURE(read, unicode, "1\u00B3\u2044\u2081\u2086")->Name("ours/raised_fraction");
BENCHMARK(showCoordinate)->Name("ours/show_at_step");
BENCHMARK(printCoordinate)->Name("snprintf/show_at_step");

}  // namespace
}  // namespace inchwright
