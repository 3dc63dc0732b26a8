// Circles and line segments of a drawn print, ours against OpenCV's Hough transforms on the same
// picture: time, and beside it the share found and the share of what is found that is there. Theirs
// are given the threshold at which they find most while no more of it is wrong than of ours. And
// all that a picture of 12 megapixels offers, and how soon that ends when it is told to stop.

#include <benchmark/benchmark.h>

#include <atomic>
#include <chrono>
#include <cmath>
#include <opencv2/core.hpp>
#include <opencv2/imgproc.hpp>
#include <random>
#include <thread>
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
constexpr double kShortest = 0.3 * kInch;  // of a line that is looked for: none is in a letter

struct Truth {
  cv::Mat picture;
  std::vector<cv::Vec3d> circles;
  std::vector<cv::Vec4d> lines;    ///< those to be found
  std::vector<cv::Vec4d> strokes;  ///< these and the crosses of the holes
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
      t.strokes.push_back({x0, y0, x1, y1});
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

const Grey& drawnGrey() {
  static const Grey grey = greyOf(drawn().picture);
  return grey;
}

/// What of the truth is found, and what of the found is true.
struct Shares {
  double found = 0;
  double right = 0;
};

void tell(benchmark::State& state, const Shares& shares) {
  state.counters["found"] = shares.found;
  state.counters["true"] = shares.right;
}

Shares ofCircles(const std::vector<cv::Vec3d>& found) {
  const auto near = [](const cv::Vec3d& a, const cv::Vec3d& b) {
    return std::hypot(a[0] - b[0], a[1] - b[1]) < kInch / 64 && std::abs(a[2] - b[2]) < kInch / 32;
  };
  int hit = 0, right = 0;
  for (const auto& t : drawn().circles)
    hit += std::any_of(found.begin(), found.end(), [&](const auto& f) { return near(t, f); });
  for (const auto& f : found)
    right += std::any_of(drawn().circles.begin(), drawn().circles.end(),
                         [&](const auto& t) { return near(t, f); });
  return {double(hit) / static_cast<double>(drawn().circles.size()),
          found.empty() ? 1 : double(right) / static_cast<double>(found.size())};
}

/// Whether a segment runs along a line, within a stroke's thickness.
bool along(const cv::Vec4d& segment, const cv::Vec4d& line) {
  const int across = line[1] == line[3] ? 1 : 0, u = 1 - across;
  const double from = std::min(segment[u], segment[u + 2]),
               past = std::max(segment[u], segment[u + 2]);
  return std::abs(segment[across] - line[across]) <= 5 &&
         std::abs(segment[across + 2] - line[across]) <= 5 && from > line[u] - 8 &&
         past < line[u + 2] + 8;
}

/// A line is found where segments on it cover nine tenths of it.
Shares ofLines(const std::vector<cv::Vec4d>& found) {
  int hit = 0, right = 0;
  for (const auto& t : drawn().lines) {
    const int u = t[1] == t[3] ? 0 : 1;
    std::vector<bool> covered(static_cast<std::size_t>(t[u + 2] - t[u]), false);
    for (const auto& f : found) {
      if (!along(f, t)) continue;
      const double from = std::min(f[u], f[u + 2]) - t[u], past = std::max(f[u], f[u + 2]) - t[u];
      for (double k = std::max(0.0, from); k < std::min(past, double(covered.size())); ++k)
        covered[static_cast<std::size_t>(k)] = true;
    }
    hit += std::count(covered.begin(), covered.end(), true) >
           static_cast<long>(covered.size()) * 9 / 10;
  }
  for (const auto& f : found)
    right += std::any_of(drawn().strokes.begin(), drawn().strokes.end(),
                         [&](const auto& t) { return along(f, t); });
  return {double(hit) / static_cast<double>(drawn().lines.size()),
          found.empty() ? 1 : double(right) / static_cast<double>(found.size())};
}

std::vector<cv::Vec3d> circlesByUs() {
  std::vector<cv::Vec3d> found;
  for (const Circle& c : circlesOf(inkOf(drawnGrey(), kInch).cover, kInch, Stop())) {
    if (c.cross > kCross) found.push_back({c.x, c.y, c.radius});
  }
  return found;
}

std::vector<cv::Vec3d> circlesByThem(double votes) {
  std::vector<cv::Vec3f> circles;
  cv::HoughCircles(drawn().picture, circles, cv::HOUGH_GRADIENT, 2, kInch * 0.1, 150, votes,
                   int(kInch * 0.04), int(kInch * 0.5));
  return {circles.begin(), circles.end()};
}

std::vector<cv::Vec4d> linesByUs() {
  std::vector<cv::Vec4d> found;
  const Grey cover = inkOf(drawnGrey(), kInch).cover;
  for (const Stroke& s : levelStrokes(cover, kInch, kShortest))
    found.push_back({s.x0, s.y0, s.x1, s.y1});
  for (const Stroke& s : levelStrokes(transposed(cover), kInch, kShortest))
    found.push_back({s.y0, s.x0, s.y1, s.x1});
  return found;
}

std::vector<cv::Vec4d> linesByThem(double votes) {
  cv::Mat edges;
  cv::Canny(drawn().picture, edges, 60, 150);
  std::vector<cv::Vec4i> lines;
  cv::HoughLinesP(edges, lines, 1, CV_PI / 180, int(votes), kShortest, 4);
  return {lines.begin(), lines.end()};
}

/// The votes with which they find most at our share of what is true; where they never reach that,
/// those with which most is true.
template <class Find, class Count>
double bestVotes(Find find, Count count, double right, std::initializer_list<double> all) {
  double best = *all.begin();
  Shares most;
  for (const double votes : all) {
    const Shares now = count(find(votes));
    const auto rank = [&](const Shares& s) { return std::pair(std::min(s.right, right), s.found); };
    if (rank(now) > rank(most)) most = now, best = votes;
  }
  return best;
}

void ourCircles(benchmark::State& state) {
  std::vector<cv::Vec3d> found;
  for (auto _ : state) found = circlesByUs();
  tell(state, ofCircles(found));
}

void theirCircles(benchmark::State& state) {
  cv::setNumThreads(1);
  const double votes = bestVotes(circlesByThem, ofCircles, ofCircles(circlesByUs()).right,
                                 {40, 60, 80, 100, 130, 160});
  std::vector<cv::Vec3d> found;
  for (auto _ : state) found = circlesByThem(votes);
  tell(state, ofCircles(found));
}

void ourLines(benchmark::State& state) {
  std::vector<cv::Vec4d> found;
  for (auto _ : state) found = linesByUs();
  tell(state, ofLines(found));
}

void theirLines(benchmark::State& state) {
  cv::setNumThreads(1);
  const double votes =
      bestVotes(linesByThem, ofLines, ofLines(linesByUs()).right, {30, 60, 100, 150, 220});
  std::vector<cv::Vec4d> found;
  for (auto _ : state) found = linesByThem(votes);
  tell(state, ofLines(found));
}

void ourOffer(benchmark::State& state) {
  const cv::Mat& p = drawn().picture;
  const Homography map({1 / kInch, 0, 0, 0, -1 / kInch, 10, 0, 0, 1});
  for (auto _ : state) {
    const auto offers = offer({p.data, p.cols, p.rows, static_cast<std::ptrdiff_t>(p.step)}, map);
    benchmark::DoNotOptimize(offers.ok());
  }
}

/// Told to stop at 24 moments of it, over noise, which keeps every stage busy.
void ourStop(benchmark::State& state) {
  Grey noise(kWidth, kHeight);
  std::mt19937 random(4);
  for (auto& v : noise.at) v = static_cast<std::uint8_t>(random() % 256);
  const Homography map({1 / kInch, 0, 0, 0, -1 / kInch, 10, 0, 0, 1});
  double longest = 0;
  for (auto _ : state) {
    for (int wait = 20; wait < 1500; wait += 60) {
      std::atomic<bool> stop{false};
      std::chrono::steady_clock::time_point asked;
      std::thread other([&] {
        std::this_thread::sleep_for(std::chrono::milliseconds(wait));
        asked = std::chrono::steady_clock::now();
        stop = true;
      });
      Options options;
      options.stop = &stop;
      const auto offers = offer({noise.at.data(), kWidth, kHeight, kWidth}, map, options);
      const auto ended = std::chrono::steady_clock::now();
      other.join();
      if (!offers)
        longest = std::max(longest, std::chrono::duration<double>(ended - asked).count());
    }
    state.SetIterationTime(longest);
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
BENCHMARK(ourStop)
    ->Name("ours/longest_to_stop")
    ->Unit(benchmark::kMillisecond)
    ->UseManualTime()
    ->Iterations(1);

}  // namespace
