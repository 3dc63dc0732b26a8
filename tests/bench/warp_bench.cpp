// Squaring up a 24-megapixel picture: ours against OpenCV's warpPerspective on the same threads,
// and against a plain copy of the bytes as the physical limit.

#include <benchmark/benchmark.h>

#include <cstring>
#include <opencv2/core.hpp>
#include <opencv2/imgproc.hpp>
#include <thread>
#include <vector>

#include "core/geometry/warp.h"

namespace {

constexpr int kWidth = 6000;
constexpr int kHeight = 4000;
// A photo taken at a slant, output to input.
constexpr double kMap[9] = {0.93, 0.06, 90, -0.04, 0.95, 160, 4e-6, -3e-6, 1};

const cv::Mat& photo() {
  static const cv::Mat picture = [] {
    cv::Mat m(kHeight, kWidth, CV_8UC4);
    cv::theRNG().state = 1;
    cv::randu(m, 0, 255);
    return m;
  }();
  return picture;
}

void ours(benchmark::State& state) {
  const int threads = static_cast<int>(state.range(0));
  const cv::Mat& in = photo();
  cv::Mat out(kHeight, kWidth, CV_8UC4);
  std::array<double, 9> m{};
  std::copy(std::begin(kMap), std::end(kMap), m.begin());
  const inchwright::Homography map(m);
  const inchwright::PixelsIn from{in.data, kWidth, kHeight, kWidth * 4};
  const inchwright::PixelsOut to{out.data, kWidth, kHeight, kWidth * 4};
  for (auto _ : state) {
    std::vector<std::thread> others;
    for (int t = 1; t < threads; ++t) {
      others.emplace_back([&, t] {
        inchwright::warpRows(from, to, map, kHeight * t / threads, kHeight * (t + 1) / threads);
      });
    }
    inchwright::warpRows(from, to, map, 0, kHeight / threads);
    for (auto& other : others) other.join();
    benchmark::DoNotOptimize(out.data);
  }
}

void openCv(benchmark::State& state) {
  cv::setNumThreads(static_cast<int>(state.range(0)));
  const cv::Mat map(3, 3, CV_64F, const_cast<double*>(kMap));
  cv::Mat out(kHeight, kWidth, CV_8UC4);
  for (auto _ : state) {
    cv::warpPerspective(photo(), out, map, out.size(), cv::INTER_LINEAR | cv::WARP_INVERSE_MAP,
                        cv::BORDER_CONSTANT, cv::Scalar::all(255));
    benchmark::DoNotOptimize(out.data);
  }
}

void copy(benchmark::State& state) {
  cv::Mat out(kHeight, kWidth, CV_8UC4);
  for (auto _ : state) {
    std::memcpy(out.data, photo().data, photo().total() * 4);
    benchmark::DoNotOptimize(out.data);
  }
}

BENCHMARK(ours)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(openCv)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(copy)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

BENCHMARK_MAIN();
