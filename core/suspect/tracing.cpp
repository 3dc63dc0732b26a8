#include "core/suspect/tracing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace inchwright {
namespace {

constexpr double kInchPerTick = 1.0 / static_cast<double>(Length::kTicksPerInch);
/// A copy is stretched by a few per cent (practice, rank 8).
constexpr double kStretch = 0.03;
constexpr double kBadlyTraced = 0.005;
/// A badly traced place may lie anywhere within some inches.
constexpr double kBadDensity = 0.25;
constexpr double kRootOfTwoPi = 2.5066282746310002;
constexpr std::size_t kMostNodes = 200;
/// A length in inches from which on a reading counts fully for the scale, so that no long one
/// rules.
constexpr double kFullWeight = 1.0;

struct Deviation {
  double inches;
  double cost;  ///< how unlikely such care or carelessness is
};
constexpr std::array kDeviations{Deviation{0.125, 5.0}, Deviation{0.0625, 3.0},
                                 Deviation{0.03125, 1.0}, Deviation{0.015625, 0.0},
                                 Deviation{0.0078125, 1.0}};

double inlierDensity(double residual, double deviation) {
  const double z = residual / deviation;
  return (1 - kBadlyTraced) * std::exp(-0.5 * z * z) / (deviation * kRootOfTwoPi);
}

}  // namespace

Tracing::Tracing(const Part& part, const AxisNetwork& network, const ConditionSpace& space,
                 const MissingBlock& block)
    : network_(network),
      forest_(space.forest()),
      branches_(space.forest()),
      traced_(network.places.size()),
      view_(network.places.size()),
      entered_(network.places.size()),
      left_(network.places.size()),
      root_(network.places.size()) {
  std::map<Id, const Feature*> features;
  for (const Feature& feature : part.features) features[feature.id] = &feature;
  for (std::uint32_t i = 0; i < network.places.size(); ++i) {
    root_[i] = space.forest().root(i);
    const auto found = features.find(network.places[i]);
    if (found == features.end()) continue;
    traced_[i] = tracedAlong(*found->second, network.axis);
    const bool isEdge = found->second->is<kind::Edge>();
    view_[i] = isEdge ? 0 : static_cast<int>(found->second->face);
  }
  numberTrees(space.forest());
  gatherScale(part);
  gatherNodes(space, block);
}

// Numbers places so that those hanging below a link are one run of numbers.
void Tracing::numberTrees(const Forest& forest) {
  std::uint32_t next = 0;
  std::vector<std::pair<std::uint32_t, bool>> stack;
  for (std::uint32_t start = 0; start < root_.size(); ++start) {
    if (root_[start] != start) continue;
    stack.push_back({start, false});
    while (!stack.empty()) {
      const auto [node, done] = stack.back();
      stack.pop_back();
      if (done) {
        left_[node] = next;
        continue;
      }
      entered_[node] = next++;
      stack.push_back({node, true});
      for (const auto& [link, other] : branches_.at(node)) {
        if (link != forest.linkAbove(node)) stack.push_back({other, false});
      }
    }
  }
}

// The middle one of all ratios of traced to lettered, weighted by length: misreadings hardly move
// it.
void Tracing::gatherScale(const Part& part) {
  std::vector<std::pair<double, double>> ratios;
  double total = 0;
  for (const AxisLink& link : network_.links) {
    if (link.source.kind != SourceKind::reading || !traced_[link.from] || !traced_[link.to])
      continue;
    if (view_[link.from] != view_[link.to]) continue;
    const double lettered = part.readings[link.source.index].figure.value.toInches();
    const double drawn = *traced_[link.to] - *traced_[link.from];
    if (lettered < 0.25 || drawn <= 0) continue;
    const double weight = std::min(lettered, kFullWeight);
    ratios.push_back({drawn / lettered, weight});
    total += weight;
  }
  if (ratios.size() < 4) return;
  std::sort(ratios.begin(), ratios.end());
  double below = 0;
  double middle = 1;
  for (const auto& [ratio, weight] : ratios) {
    middle = ratio;
    below += weight;
    if (below >= total / 2) break;
  }
  scale_ = middle;
  scaleDeviation_ = std::min(kStretch, 0.01 + 0.02 / total);
}

void Tracing::gatherNodes(const ConditionSpace& space, const MissingBlock& block) {
  // Its own links lead nowhere new: all their ends are entered first.
  std::vector<bool> barred(network_.links.size());
  for (const MissingBlock& one : space.blocks()) {
    for (const std::uint32_t link : one.links) barred[link] = true;
  }
  std::vector<bool> inside(network_.places.size());
  std::vector<std::uint32_t> waiting;
  const auto enter = [&](std::uint32_t node) {
    if (!inside[node]) waiting.push_back(node);
    inside[node] = true;
  };
  for (const std::uint32_t link : block.links) {
    enter(network_.links[link].from);
    enter(network_.links[link].to);
  }
  for (const std::uint32_t relation : block.relations) {
    for (const auto& term : network_.relations[relation].terms) enter(term.first);
  }
  // What hangs on the block by sound links bears witness too, where there is not too much of it.
  for (std::size_t i = 0; i < waiting.size() && waiting.size() < kMostNodes; ++i) {
    const std::uint32_t node = waiting[i];
    for (const auto& [link, other] : branches_.at(node)) {
      if (!barred[link]) enter(other);
    }
  }
  std::map<std::pair<Sparse, int>, int> shifts;
  std::map<std::uint32_t, std::size_t> trees;
  std::map<int, int> perShift;
  for (std::uint32_t node = 0; node < network_.places.size(); ++node) {
    if (!inside[node] || !traced_[node]) continue;
    const auto tree = trees.emplace(root_[node], offsets_.size());
    if (tree.second) {
      offsets_.push_back(space.offsetOf(root_[node]));
      offsetRoots_.push_back(root_[node]);
    }
    const ConditionSpace::TreeOffset& offset = offsets_[tree.first->second];
    double position = static_cast<double>(space.forest().position(node)) * kInchPerTick;
    for (const auto& [link, factor] : offset.links) {
      position +=
          factor.toDouble() * static_cast<double>(network_.links[link].ticks) * kInchPerTick;
    }
    const int fresh = static_cast<int>(shifts.size());
    const int shift = shifts.emplace(std::pair(offset.base, view_[node]), fresh).first->second;
    nodes_.push_back({node, shift, *traced_[node], position});
    usable_ = usable_ || ++perShift[shift] >= 2;
  }
  shifts_ = static_cast<int>(shifts.size());
}

int Tracing::shareOf(std::uint32_t place, std::uint32_t number) const {
  if (!forest_.holds(number)) return 0;
  const AxisLink& link = network_.links[number];
  const bool forwards = forest_.linkAbove(link.to) == number;
  const std::uint32_t below = forwards ? link.to : link.from;
  const bool hangs = entered_[place] >= entered_[below] && entered_[place] < left_[below];
  return !hangs ? 0 : forwards ? 1 : -1;
}

// How much farther a correction moves a place, in inches.
double Tracing::moved(const Node& node, const Correction& correction) const {
  const double longer = static_cast<double>(correction.longer) * kInchPerTick;
  const double sum = shareOf(node.place, correction.link) * longer;
  const auto tree = std::find(offsetRoots_.begin(), offsetRoots_.end(), root_[node.place]);
  if (tree == offsetRoots_.end()) return sum;
  const Sparse& shares = offsets_[tree - offsetRoots_.begin()].links;
  if (shares.empty()) return sum;
  const auto share = shares.find(correction.link);
  return share == shares.end() ? sum : sum + share->second.toDouble() * longer;
}

std::optional<double> Tracing::lengthOf(std::uint32_t link) const {
  const AxisLink& one = network_.links[link];
  if (!traced_[one.from] || !traced_[one.to] || view_[one.from] != view_[one.to])
    return std::nullopt;
  return (*traced_[one.to] - *traced_[one.from]) / scale_;
}

double Tracing::cost(const std::vector<Correction>& corrections) const {
  if (!usable_) return 0;
  std::vector<double> positions;
  positions.reserve(nodes_.size());
  for (const Node& node : nodes_) {
    double position = node.position;
    for (const Correction& one : corrections) position += moved(node, one);
    positions.push_back(position);
  }
  // From the widest deviation to the narrowest, each starting where the last one stood, so that a
  // few bad places do not catch the fit.
  Fit fit{scale_, std::vector<double>(static_cast<std::size_t>(shifts_))};
  refit(kDeviations[0].inches, positions, std::vector<double>(nodes_.size(), 1.0), fit);
  double best = 0;
  for (std::size_t i = 0; i < kDeviations.size(); ++i) {
    const double here = costAt(kDeviations[i].inches, positions, fit) + kDeviations[i].cost;
    if (i == 0 || here < best) best = here;
  }
  return best;
}

// Two rounds of reweighting, then the cost.
double Tracing::costAt(double deviation, const std::vector<double>& positions, Fit& fit) const {
  std::vector<double> weights(nodes_.size());
  double sum = 0;
  for (int round = 0; round < 3; ++round) {
    sum = 0;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      const double residual =
          nodes_[i].traced - fit.scale * positions[i] - fit.shift[nodes_[i].shift];
      const double inlier = inlierDensity(residual, deviation);
      const double either = inlier + kBadlyTraced * kBadDensity;
      weights[i] = inlier / either;
      sum -= std::log(either);
    }
    if (round < 2) refit(deviation, positions, weights, fit);
  }
  const double stretch = (fit.scale - scale_) / scaleDeviation_;
  return sum + 0.5 * stretch * stretch;
}

void Tracing::refit(double deviation, const std::vector<double>& positions,
                    const std::vector<double>& weights, Fit& fit) const {
  const auto count = static_cast<std::size_t>(shifts_);
  std::vector<double> weight(count), position(count), traced(count);
  for (std::size_t i = 0; i < nodes_.size(); ++i) {
    const auto shift = static_cast<std::size_t>(nodes_[i].shift);
    weight[shift] += weights[i];
    position[shift] += weights[i] * positions[i];
    traced[shift] += weights[i] * nodes_[i].traced;
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (weight[i] < 1e-9) continue;
    position[i] /= weight[i];
    traced[i] /= weight[i];
  }
  const double prior = deviation * deviation / (scaleDeviation_ * scaleDeviation_);
  double both = prior * scale_;
  double square = prior;
  for (std::size_t i = 0; i < nodes_.size(); ++i) {
    const auto shift = static_cast<std::size_t>(nodes_[i].shift);
    const double from = positions[i] - position[shift];
    both += weights[i] * from * (nodes_[i].traced - traced[shift]);
    square += weights[i] * from * from;
  }
  fit.scale = both / square;
  for (std::size_t i = 0; i < count; ++i) {
    if (weight[i] >= 1e-9) fit.shift[i] = traced[i] - fit.scale * position[i];
  }
}

}  // namespace inchwright
