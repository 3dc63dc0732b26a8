#include "tests/seen/trainer.h"

#include <Eigen/Dense>
#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>
#include <random>

#include "core/seen/net.h"

namespace inchwright::seen {
namespace {

using Matrix = Eigen::MatrixXf;
constexpr int kBatch = 64;

/// Numbers of a bell curve by adding twelve even ones, so that no library's own way matters.
float bell(std::mt19937& random) {
  float sum = -6;
  for (int i = 0; i < 12; ++i) sum += static_cast<float>(random() >> 8) / 16777216.0F;
  return sum;
}

/// A matrix of weights that learns (Adam: Kingma and Ba, 2015).
struct Learning {
  Matrix value, mean, square;

  Learning(int rows, int columns, float spread, std::mt19937& random)
      : value(rows, columns),
        mean(Matrix::Zero(rows, columns)),
        square(Matrix::Zero(rows, columns)) {
    for (int i = 0; i < value.size(); ++i) value.data()[i] = spread * bell(random);
  }
  void step(const Matrix& slope, float rate, int time) {
    mean = 0.9F * mean + 0.1F * slope;
    square = 0.999F * square + 0.001F * slope.cwiseAbs2();
    const float m = 1 - std::pow(0.9F, static_cast<float>(time)),
                s = 1 - std::pow(0.999F, static_cast<float>(time));
    value.array() -= rate * (mean.array() / m) / ((square.array() / s).sqrt() + 1e-8F);
  }
};

void put(std::string& out, std::uint32_t v) {
  for (int i = 0; i < 4; ++i) out.push_back(static_cast<char>(v >> (8 * i) & 255));
}

/// A layer with its weights as whole numbers up to 127, a scale for each unit.
void putLayer(std::string& out, const Matrix& weights, const Matrix& offsets, float inputScale) {
  std::string scales, bytes;
  for (int u = 0; u < weights.rows(); ++u) {
    const float scale = std::max(1e-9F, weights.row(u).cwiseAbs().maxCoeff() / 127);
    put(scales, std::bit_cast<std::uint32_t>(scale * inputScale));
    for (int i = 0; i < weights.cols(); ++i)
      bytes.push_back(static_cast<char>(std::lround(weights(u, i) / scale)));
  }
  out += scales;
  for (int u = 0; u < offsets.rows(); ++u) put(out, std::bit_cast<std::uint32_t>(offsets(u, 0)));
  out += bytes;
}

Matrix answers(const Matrix& raw, bool independent) {
  if (independent) return (1 / (1 + (-raw.array()).exp())).matrix();
  Matrix out = (raw.rowwise() - raw.colwise().maxCoeff()).array().exp().matrix();
  out.array().rowwise() /= out.colwise().sum().array();
  return out;
}

}  // namespace

std::string trained(const Examples& all, const Training& training) {
  std::mt19937 random(training.seed);
  Learning w1(training.hidden, all.inputs, std::sqrt(2.0F / static_cast<float>(all.inputs)),
              random);
  Learning w2(all.outputs, training.hidden, std::sqrt(2.0F / static_cast<float>(training.hidden)),
              random);
  Learning b1(training.hidden, 1, 0, random), b2(all.outputs, 1, 0, random);
  std::vector<std::size_t> order(all.count());
  std::iota(order.begin(), order.end(), std::size_t{0});
  int time = 0;
  for (int round = 0; round < training.rounds; ++round) {
    for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[random() % i]);
    const float rate = 0.5e-3F * (1 + std::cos(3.14159265F * static_cast<float>(round) /
                                               static_cast<float>(training.rounds)));
    for (std::size_t at = 0; at < order.size(); at += kBatch) {
      const auto n = static_cast<int>(std::min<std::size_t>(kBatch, order.size() - at));
      Matrix x(all.inputs, n), y(all.outputs, n);
      for (int k = 0; k < n; ++k) {
        const std::size_t e = order[at + static_cast<std::size_t>(k)];
        const float tone = (0.8F + 0.2F * static_cast<float>(random() >> 8) / 16777216.0F) / 255;
        for (int i = 0; i < all.inputs; ++i)
          x(i, k) = static_cast<float>(all.input[e * all.inputs + i]) * tone;
        for (int i = 0; i < all.outputs; ++i)
          y(i, k) = static_cast<float>(all.wanted[e * all.outputs + i]);
      }
      const Matrix hidden = ((w1.value * x).colwise() + b1.value.col(0)).cwiseMax(0.0F);
      const Matrix raw = (w2.value * hidden).colwise() + b2.value.col(0);
      const Matrix miss = (answers(raw, all.independent) - y) / static_cast<float>(n);
      const Matrix back =
          ((w2.value.transpose() * miss).array() * (hidden.array() > 0).cast<float>()).matrix();
      ++time;
      w2.step(miss * hidden.transpose() + 1e-5F * w2.value, rate, time);
      b2.step(miss.rowwise().sum(), rate, time);
      w1.step(back * x.transpose() + 1e-5F * w1.value, rate, time);
      b1.step(back.rowwise().sum(), rate, time);
    }
  }
  std::string out;
  put(out, static_cast<std::uint32_t>(all.inputs));
  put(out, static_cast<std::uint32_t>(training.hidden));
  put(out, static_cast<std::uint32_t>(all.outputs));
  putLayer(out, w1.value, b1.value, 1.0F / 255);
  putLayer(out, w2.value, b2.value, 1);
  return out;
}

double agreement(const std::string& bytes, const Examples& examples) {
  std::string_view rest = bytes;
  const Net net = Net::taken(rest);
  std::size_t right = 0;
  for (std::size_t e = 0; e < examples.count(); ++e) {
    const auto answer = net.answer(
        {examples.input.data() + e * examples.inputs, static_cast<std::size_t>(examples.inputs)});
    const std::uint8_t* wanted = examples.wanted.data() + e * examples.outputs;
    if (examples.independent) {
      bool all = true;
      for (int o = 0; o < examples.outputs; ++o) all = all && (answer[o] > 0) == (wanted[o] != 0);
      right += all;
    } else {
      right += wanted[std::max_element(answer.begin(), answer.end()) - answer.begin()] != 0;
    }
  }
  return static_cast<double>(right) /
         static_cast<double>(std::max<std::size_t>(1, examples.count()));
}

}  // namespace inchwright::seen
