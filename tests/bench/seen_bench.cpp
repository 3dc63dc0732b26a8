// Circles and line segments of a drawn print, ours against OpenCV's Hough transforms on the same
// picture: time, and beside it the share found and the share of what is found that is there. And
// all that a picture of 12 megapixels offers.

#include <benchmark/benchmark.h>

#include <cmath>
#include <opencv2/core.hpp>
#include <opencv2/imgproc.hpp>
#include <vector>

#include "core/seen/circles.h"
#include "core/seen/offer.h"
#include "core/seen/paper.h"
#include "core/seen/strokes.h"

namespace {

using namespace inchwright;
using namespace inchwright::seen;

constexpr int kWidth = 4000, kHeight = 3000;
constexpr double kInch = 300;

struct Truth {
  cv::Mat picture;
  std::vector<cv::Vec3d> circles;
  std::vector<cv::Vec4d> lines;
};

/// Plates with holes, their crosses, carried-out lines broken and whole, hatching and lettering.
const Truth& drawn() {
  static const Truth truth = [] {
    Truth t;
    t.picture = cv::Mat(kHeight, kWidth, CV_8UC1, cv::Scalar(225));
    cv::RNG random(7);
    const auto line = [&](double x0, double y0, double x1, double y1, int thick,
                          bool counts = true) {
      cv::line(t.picture, cv::Point2d(x0, y0), cv::Point2d(x1, y1), cv::Scalar(50), thick,
               cv::LINE_AA);
      if (counts) t.lines.push_back({x0, y0, x1, y1});
    };
    for (int row = 0; row < 2; ++row) {
      for (int column = 0; column < 3; ++column) {
        const double x = 250 + column * 1250, y = 250 + row * 1400;
        for (const double side : {0.0, 900.0})
          line(x, y + side, x + 900, y + side, 6), line(x + side, y, x + side, y + 900, 6);
        for (int i = 0; i < 9; ++i) {
          const double cx = x + 150 + 300 * (i % 3) + random.uniform(-40, 40),
                       cy = y + 150 + 300 * (i / 3) + random.uniform(-40, 40);
          const double r = random.uniform(18, 70);
          cv::circle(t.picture, cv::Point(cvRound(cx * 16), cvRound(cy * 16)), cvRound(r * 16),
                     cv::Scalar(50), random.uniform(0, 2) ? 6 : 4, cv::LINE_AA, 4);
          t.circles.push_back({cx, cy, r});
          line(cx - r - 18, cy, cx + r + 18, cy, 2, false);
          line(cx, cy - r - 18, cx, cy + r + 18, 2, false);
        }
        line(x, y + 980, x + 900, y + 980, 2);
        line(x + 980, y, x + 980, y + 900, 2);
        for (int k = 0; k < 8; ++k)
          cv::putText(t.picture, "1 3/16", cv::Point(int(x) + 20 + 110 * k, int(y) + 1060),
                      cv::FONT_HERSHEY_SIMPLEX, 1.0, cv::Scalar(60), 2, cv::LINE_AA);
      }
    }
    cv::Mat noise(kHeight, kWidth, CV_16SC1), sum;
    random.fill(noise, cv::RNG::NORMAL, 0, 5);
    t.picture.convertTo(sum, CV_16SC1);
    sum += noise;
    cv::GaussianBlur(sum, sum, cv::Size(), 0.8);
    sum.convertTo(t.picture, CV_8UC1);
    return t;
  }();
  return truth;
}

Grey greyOf(const cv::Mat& picture) {
  Grey g(picture.cols, picture.rows);
  for (int y = 0; y < g.height; ++y) std::copy_n(picture.ptr(y), g.width, g.row(y));
  return g;
}

void countCircles(benchmark::State& state, const std::vector<cv::Vec3d>& found) {
  const auto near = [](const cv::Vec3d& a, const cv::Vec3d& b) {
    return std::hypot(a[0] - b[0], a[1] - b[1]) < kInch / 64 && std::abs(a[2] - b[2]) < kInch / 32;
  };
  int hit = 0, right = 0;
  for (const auto& t : drawn().circles)
    hit += std::any_of(found.begin(), found.end(), [&](const auto& f) { return near(t, f); });
  for (const auto& f : found)
    right += std::any_of(drawn().circles.begin(), drawn().circles.end(),
                         [&](const auto& t) { return near(t, f); });
  state.counters["found"] = double(hit) / static_cast<double>(drawn().circles.size());
  state.counters["true"] = found.empty() ? 0 : double(right) / static_cast<double>(found.size());
}

/// A line is found where segments on it cover nine tenths of it.
void countLines(benchmark::State& state, const std::vector<cv::Vec4d>& found) {
  int hit = 0;
  for (const auto& t : drawn().lines) {
    const bool level = t[1] == t[3];
    std::vector<bool> covered(static_cast<std::size_t>(std::abs(level ? t[2] - t[0] : t[3] - t[1])),
                              false);
    for (const auto& f : found) {
      const int a = level ? 1 : 0, u = level ? 0 : 1;
      if (std::abs(f[a] - t[a]) > 5 || std::abs(f[a + 2] - t[a]) > 5) continue;
      const double from = std::min(f[u], f[u + 2]) - t[u], past = std::max(f[u], f[u + 2]) - t[u];
      for (double k = std::max(0.0, from); k < std::min(past, double(covered.size())); ++k)
        covered[static_cast<std::size_t>(k)] = true;
    }
    hit += std::count(covered.begin(), covered.end(), true) >
           static_cast<long>(covered.size()) * 9 / 10;
  }
  state.counters["found"] = double(hit) / static_cast<double>(drawn().lines.size());
}

void ourCircles(benchmark::State& state) {
  const Grey grey = greyOf(drawn().picture);
  std::vector<cv::Vec3d> found;
  for (auto _ : state) {
    found.clear();
    for (const Circle& c : circlesOf(inkOf(grey, kInch).cover, kInch, Stop())) {
      if (c.cross > kCross) found.push_back({c.x, c.y, c.radius});
    }
  }
  countCircles(state, found);
}

void theirCircles(benchmark::State& state) {
  cv::setNumThreads(1);
  std::vector<cv::Vec3d> found;
  for (auto _ : state) {
    std::vector<cv::Vec3f> circles;
    cv::HoughCircles(drawn().picture, circles, cv::HOUGH_GRADIENT, 2, kInch * 0.1, 150, 60,
                     int(kInch * 0.04), int(kInch * 0.5));
    found.assign(circles.begin(), circles.end());
  }
  countCircles(state, found);
}

void ourLines(benchmark::State& state) {
  const Grey grey = greyOf(drawn().picture);
  std::vector<cv::Vec4d> found;
  for (auto _ : state) {
    found.clear();
    const Grey cover = inkOf(grey, kInch).cover;
    for (const Stroke& s : levelStrokes(cover, kInch, 0.13 * kInch))
      found.push_back({s.x0, s.y0, s.x1, s.y1});
    for (const Stroke& s : levelStrokes(transposed(cover), kInch, 0.13 * kInch))
      found.push_back({s.y0, s.x0, s.y1, s.x1});
  }
  countLines(state, found);
}

void theirLines(benchmark::State& state) {
  cv::setNumThreads(1);
  std::vector<cv::Vec4d> found;
  for (auto _ : state) {
    cv::Mat edges;
    cv::Canny(drawn().picture, edges, 60, 150);
    std::vector<cv::Vec4i> lines;
    cv::HoughLinesP(edges, lines, 1, CV_PI / 180, 60, 0.13 * kInch, 4);
    found.assign(lines.begin(), lines.end());
  }
  countLines(state, found);
}

void ourOffer(benchmark::State& state) {
  const cv::Mat& p = drawn().picture;
  const Homography map({1 / kInch, 0, 0, 0, -1 / kInch, 10, 0, 0, 1});
  for (auto _ : state) {
    const auto offers = offer({p.data, p.cols, p.rows, static_cast<std::ptrdiff_t>(p.step)}, map);
    benchmark::DoNotOptimize(offers.ok());
  }
}

BENCHMARK(ourCircles)->Name("ours/circles")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(theirCircles)->Name("openCv/circles")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(ourLines)->Name("ours/lines")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(theirLines)->Name("openCv/lines")->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(ourOffer)
    ->Name("ours/all_of_12_megapixels")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace
