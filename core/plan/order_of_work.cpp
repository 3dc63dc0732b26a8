#include "core/plan/order_of_work.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "core/base/ascii.h"
#include "core/plan/spot_grid.h"

namespace inchwright {
namespace {

std::vector<std::size_t> byId(const std::vector<WorkStop>& stops) {
  std::vector<std::size_t> order(stops.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto isBefore = [&](std::size_t a, std::size_t b) {
    return standsBefore(stops[a].id, stops[b].id);
  };
  // Most prints name their holes in the order they are traced in.
  if (!std::is_sorted(order.begin(), order.end(), isBefore)) {
    std::sort(order.begin(), order.end(), isBefore);
  }
  return order;
}

// Strips along X, walked to and fro, about as wide as the stops are apart.
std::vector<std::size_t> inStrips(const std::vector<WorkStop>& stops) {
  const auto [low, high] =
      std::minmax_element(stops.begin(), stops.end(),
                          [](const WorkStop& a, const WorkStop& b) { return a.at.y < b.at.y; });
  const double count = std::ceil(std::sqrt(static_cast<double>(stops.size()) / 2));
  const double bottom = low->at.y, height = high->at.y - low->at.y;
  struct Placed {
    double strip = 0;
    double along = 0;  // of every other strip backwards
    std::size_t stop = 0;
  };
  std::vector<Placed> all;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const PlanePoint& at = stops[i].at;
    const double strip =
        height <= 0 ? 0 : std::min(count - 1, std::floor((at.y - bottom) / height * count));
    all.push_back({strip, std::fmod(strip, 2) == 0 ? at.x : -at.x, i});
  }
  std::sort(all.begin(), all.end(), [&](const Placed& a, const Placed& b) {
    if (a.strip != b.strip) return a.strip < b.strip;
    if (a.along != b.along) return a.along < b.along;
    return standsBefore(stops[a.stop].id, stops[b.stop].id);
  });
  std::vector<std::size_t> order;
  for (const Placed& one : all) order.push_back(one.stop);
  return order;
}

/// Turns stretches of a way round while that shortens it: for each stop the first later one up to
/// which a turn gains, and so on from there, until none does (2-opt). A gain needs one of the two
/// new legs to be shorter than the old one beside it, so only what lies as near as that is tried.
class WayImprover {
 public:
  WayImprover(const std::vector<WorkStop>& stops, std::vector<std::size_t> order, double same)
      : same_(same), order_(order) {
    order_.insert(order_.begin(), stops.size());  // where the way begins
    for (const WorkStop& stop : stops) spots_.push_back(stop.at);
    spots_.emplace_back();
    place_.resize(spots_.size());
    for (std::size_t i = 0; i < order_.size(); ++i) place_[order_[i]] = i;
    grid_.emplace(spots_);
    reach_ = 1.5 * grid_->cell();
    for (std::size_t i = 1; i < order_.size(); ++i) noteLeg(i);
  }

  std::vector<std::size_t> improved() {
    bool again = true;
    while (again && triesLeft_ > 0) {
      again = false;
      for (std::size_t i = 1; i < order_.size() && triesLeft_ > 0; ++i) {
        for (std::size_t j = firstGain(i, i + 1); j < order_.size(); j = firstGain(i, j + 1)) {
          turn(i, j);
          again = true;
        }
      }
    }
    return {order_.begin() + 1, order_.end()};
  }

 private:
  const PlanePoint& at(std::size_t place) const { return spots_[order_[place]]; }

  bool gains(std::size_t i, std::size_t j) const {
    double gain = between(at(i - 1), at(i)) - between(at(i - 1), at(j));
    if (j + 1 < order_.size()) gain += between(at(j), at(j + 1)) - between(at(i), at(j + 1));
    // Gains below a billionth of the way would go round in circles on rounding.
    return gain > std::max(same_, 1e-9 * (std::abs(at(i).x) + std::abs(at(i).y) + 1e-9));
  }

  /// The first j from `from` on up to which a turn from i gains; the end when there is none.
  std::size_t firstGain(std::size_t i, std::size_t from) {
    std::size_t first = order_.size();
    const auto attempt = [&](std::size_t j) {
      if (j < from || j >= first) return;
      if (triesLeft_ > 0) --triesLeft_;
      if (gains(i, j)) first = j;
    };
    // A shorter leg to j ...
    const PlanePoint &last = at(i - 1), &here = at(i);
    const double leg = squareBetween(last, here);
    grid_->near(last, std::sqrt(leg), [&](std::size_t spot) {
      if (squareBetween(last, spots_[spot]) < leg) attempt(place_[spot]);
    });
    // ... or from i to what follows j; the few long legs are looked through one by one.
    grid_->near(here, reach_, [&](std::size_t spot) {
      const std::size_t next = place_[spot];
      if (next <= from || next > first) return;
      const bool isShorter =
          squareBetween(here, spots_[spot]) < squareBetween(at(next - 1), spots_[spot]);
      if (isShorter) attempt(next - 1);
    });
    for (std::size_t k = 0; k < longLegs_.size();) {
      const auto [before, after] =
          std::minmax(place_[longLegs_[k].first], place_[longLegs_[k].second]);
      if (after - before == 1) {
        attempt(before);
        ++k;
      } else {  // that leg is gone
        longLegs_[k] = longLegs_.back();
        longLegs_.pop_back();
      }
    }
    return first;
  }

  void turn(std::size_t i, std::size_t j) {
    std::reverse(order_.begin() + static_cast<std::ptrdiff_t>(i),
                 order_.begin() + static_cast<std::ptrdiff_t>(j) + 1);
    for (std::size_t k = i; k <= j; ++k) place_[order_[k]] = k;
    noteLeg(i);
    if (j + 1 < order_.size()) noteLeg(j + 1);
  }

  /// The leg to the stop at `place`, when a search within reach would miss it.
  void noteLeg(std::size_t place) {
    if (between(at(place - 1), at(place)) > reach_) {
      longLegs_.emplace_back(order_[place - 1], order_[place]);
    }
  }

  double same_;
  std::vector<PlanePoint> spots_;
  std::vector<std::size_t> order_;
  std::vector<std::size_t> place_;  ///< of each spot in the order
  std::optional<SpotGrid> grid_;
  double reach_ = 0;
  std::vector<std::pair<std::size_t, std::size_t>> longLegs_;
  // Counted, not timed, so that a slow machine finds the same way.
  std::size_t triesLeft_ = 40'000'000;
};

}  // namespace

bool standsBefore(std::string_view a, std::string_view b) {
  std::size_t i = 0, j = 0;
  while (i < a.size() && j < b.size()) {
    if (isDigit(a[i]) && isDigit(b[j])) {
      std::size_t endA = i, endB = j;
      while (endA < a.size() && isDigit(a[endA])) ++endA;
      while (endB < b.size() && isDigit(b[endB])) ++endB;
      std::string_view numberA = a.substr(i, endA - i), numberB = b.substr(j, endB - j);
      while (numberA.size() > 1 && numberA.front() == '0') numberA.remove_prefix(1);
      while (numberB.size() > 1 && numberB.front() == '0') numberB.remove_prefix(1);
      if (numberA.size() != numberB.size()) return numberA.size() < numberB.size();
      if (numberA != numberB) return numberA < numberB;
      i = endA;
      j = endB;
      continue;
    }
    if (a[i] != b[j]) return a[i] < b[j];
    ++i;
    ++j;
  }
  const std::size_t restA = a.size() - i, restB = b.size() - j;
  // `A01` and `A1` count alike; spelling then decides, so that the order is always total.
  return restA != restB ? restA < restB : a < b;
}

double travelThrough(const std::vector<WorkStop>& stops, const std::vector<std::size_t>& order) {
  PlanePoint here;
  double way = 0;
  for (std::size_t i : order) {
    way += between(here, stops[i].at);
    here = stops[i].at;
  }
  return way;
}

std::vector<std::size_t> nearestFirst(const std::vector<WorkStop>& stops, double same) {
  if (stops.empty()) return {};
  // In the order of ids, by which ties go.
  const std::vector<std::size_t> ranked = byId(stops);
  std::vector<PlanePoint> spots;
  for (std::size_t i : ranked) spots.push_back(stops[i].at);
  SpotGrid left(spots);
  std::vector<std::size_t> order;
  order.reserve(stops.size());
  PlanePoint here;
  while (order.size() < stops.size()) {
    const std::size_t next = left.nearest(here, same);
    left.remove(next);
    order.push_back(ranked[next]);
    here = spots[next];
  }
  return order;
}

std::vector<std::size_t> shortTravel(const std::vector<WorkStop>& stops, double same) {
  if (stops.empty()) return {};
  if (stops.size() > kLongestImproved) return inStrips(stops);
  const std::vector<std::size_t> nearest = nearestFirst(stops, same);
  std::vector<std::size_t> order = WayImprover(stops, nearest, same).improved();
  return travelThrough(stops, order) <= travelThrough(stops, nearest) ? order : nearest;
}

}  // namespace inchwright
