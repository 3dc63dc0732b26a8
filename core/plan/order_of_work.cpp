#include "core/plan/order_of_work.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/base/ascii.h"

namespace inchwright {
namespace {

struct Spot {
  double x = 0;
  double y = 0;
};

double squareBetween(const Spot& a, const Spot& b) {
  const double dx = a.x - b.x, dy = a.y - b.y;
  return dx * dx + dy * dy;
}

double between(const Spot& a, const Spot& b) {
  return std::sqrt(squareBetween(a, b));
}

std::vector<std::size_t> byId(const std::vector<WorkStop>& stops) {
  std::vector<std::size_t> order(stops.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return standsBefore(stops[a].id, stops[b].id); });
  return order;
}

// Strips along X, walked to and fro, about as wide as the stops are apart.
std::vector<std::size_t> inStrips(const std::vector<WorkStop>& stops) {
  std::vector<std::size_t> order = byId(stops);
  const auto [low, high] = std::minmax_element(
      stops.begin(), stops.end(), [](const WorkStop& a, const WorkStop& b) { return a.y < b.y; });
  const double count = std::ceil(std::sqrt(static_cast<double>(stops.size()) / 2));
  const double bottom = low->y, height = high->y - low->y;
  const auto strip = [&](std::size_t i) {
    if (height <= 0) return 0.0;
    return std::min(count - 1, std::floor((stops[i].y - bottom) / height * count));
  };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const double stripA = strip(a), stripB = strip(b);
    if (stripA != stripB) return stripA < stripB;
    const bool forth = std::fmod(stripA, 2) == 0;
    return forth ? stops[a].x < stops[b].x : stops[b].x < stops[a].x;
  });
  return order;
}

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
  Spot here;
  double way = 0;
  for (std::size_t i : order) {
    const Spot next{stops[i].x, stops[i].y};
    way += between(here, next);
    here = next;
  }
  return way;
}

std::vector<std::size_t> nearestFirst(const std::vector<WorkStop>& stops) {
  std::vector<std::size_t> left = byId(stops);
  std::vector<std::size_t> order;
  order.reserve(left.size());
  double x = 0, y = 0;
  while (!left.empty()) {
    std::size_t best = 0;
    double bestSquare = INFINITY;
    for (std::size_t k = 0; k < left.size(); ++k) {
      const double dx = stops[left[k]].x - x, dy = stops[left[k]].y - y;
      const double square = dx * dx + dy * dy;
      if (square < bestSquare) {
        bestSquare = square;
        best = k;
      }
    }
    const std::size_t next = left[best];
    // Keeps the rest in the order of ids, on which ties depend.
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(best));
    order.push_back(next);
    x = stops[next].x;
    y = stops[next].y;
  }
  return order;
}

std::vector<std::size_t> shortTravel(const std::vector<WorkStop>& stops) {
  if (stops.size() > kLongestImproved) return inStrips(stops);
  const std::vector<std::size_t> nearest = nearestFirst(stops);
  std::vector<std::size_t> order = nearest;
  std::vector<Spot> way{Spot{}};
  for (std::size_t i : order) way.push_back({stops[i].x, stops[i].y});
  // Counted in comparisons, not in time, so that a slow machine finds the same way.
  std::size_t comparisonsLeft = 40'000'000;
  bool improved = true;
  while (improved && comparisonsLeft > 0) {
    improved = false;
    for (std::size_t i = 1; i < way.size() && comparisonsLeft > 0; ++i) {
      for (std::size_t j = i + 1; j < way.size() && comparisonsLeft > 0; ++j) {
        --comparisonsLeft;
        // A gain needs one of the two new legs to be shorter than the old one; most pairs fail that
        // without a square root.
        const bool last = j + 1 == way.size();
        if (squareBetween(way[i - 1], way[j]) >= squareBetween(way[i - 1], way[i]) &&
            (last || squareBetween(way[i], way[j + 1]) >= squareBetween(way[j], way[j + 1]))) {
          continue;
        }
        double gain = between(way[i - 1], way[i]) - between(way[i - 1], way[j]);
        if (!last) gain += between(way[j], way[j + 1]) - between(way[i], way[j + 1]);
        // Gains below a billionth of the way would go round in circles on rounding.
        if (gain <= 1e-9 * (std::abs(way[i].x) + std::abs(way[i].y) + 1e-9)) continue;
        std::reverse(way.begin() + static_cast<std::ptrdiff_t>(i),
                     way.begin() + static_cast<std::ptrdiff_t>(j) + 1);
        std::reverse(order.begin() + static_cast<std::ptrdiff_t>(i) - 1,
                     order.begin() + static_cast<std::ptrdiff_t>(j));
        improved = true;
      }
    }
  }
  return travelThrough(stops, order) <= travelThrough(stops, nearest) ? order : nearest;
}

}  // namespace inchwright
