#pragma once

#include <cmath>
#include <cstdint>
#include <map>
#include <numbers>
#include <optional>
#include <random>
#include <utility>
#include <vector>

#include "core/place/plane.h"

namespace inchwright::test {

/// Places at random about an inch apart, each held by two readings, with where they truly lie and
/// where they were traced: as numbers, for our own placing and for its peers alike. Inches.
struct RandomPlacing {
  struct Place {
    PlanePoint truth;
    PlanePoint traced;  ///< good to 1/64
    bool isFixed = false;
  };
  struct Reading {
    bool isAngle = false;
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    double value = 0;  ///< inches, or radians
  };
  std::vector<Place> places;
  std::vector<Reading> readings;

  enum class Kind {
    hanging,  ///< each hangs on earlier ones, by two centre distances or by one and an angle
    woven,    ///< all hang on each other
  };
  static RandomPlacing make(Kind kind, std::uint32_t free, std::uint64_t seed);

  PlaneProblem problem() const;
};

class RandomPlacingMaker {
 public:
  RandomPlacingMaker(RandomPlacing::Kind kind, std::uint32_t free, std::uint64_t seed)
      : kind_(kind),
        free_(free),
        width_(static_cast<int>(std::ceil(std::sqrt(static_cast<double>(free))))),
        random_(seed) {}

  RandomPlacing make() {
    for (std::uint32_t i = 0; i < free_; ++i) add(cell(i), false);
    for (std::uint32_t i = 0; i < free_; ++i) {
      const auto [x, y] = cell(i);
      kind_ == RandomPlacing::Kind::hanging ? hang(i, x, y) : weave(i, x, y);
    }
    return std::move(out_);
  }

 private:
  using Cell = std::pair<int, int>;

  Cell cell(std::uint32_t i) const {
    return {static_cast<int>(i) % width_, static_cast<int>(i) / width_};
  }

  std::uint32_t add(Cell at, bool isFixed) {
    const auto shaken = [&](double by) {
      return std::uniform_real_distribution<double>(-by, by)(random_);
    };
    const double strays = kind_ == RandomPlacing::Kind::hanging ? 0.25 : 0.12;
    const PlanePoint truth{at.first + shaken(strays), at.second + shaken(strays)};
    const PlanePoint traced{truth.x + shaken(1.0 / 64), truth.y + shaken(1.0 / 64)};
    const auto number = static_cast<std::uint32_t>(out_.places.size());
    out_.places.push_back({truth, isFixed ? truth : traced, isFixed});
    numbers_.emplace(at, number);
    return number;
  }

  // What is not among those to be placed is fixed.
  std::uint32_t at(int x, int y) {
    const auto found = numbers_.find({x, y});
    return found != numbers_.end() ? found->second : add({x, y}, true);
  }

  void read(bool isAngle, std::uint32_t from, std::uint32_t to) {
    const PlanePoint p = out_.places[from].truth, q = out_.places[to].truth;
    const double value =
        isAngle ? std::atan2(q.y - p.y, q.x - p.x) : std::hypot(q.x - p.x, q.y - p.y);
    out_.readings.push_back({isAngle, from, to, value});
  }

  void hang(std::uint32_t i, int x, int y) {
    const std::uint32_t left = at(x - 1, y), below = at(x, y - 1);
    if (random_() % 2 == 0) {
      read(false, left, i);
      read(false, below, i);
      return;
    }
    const std::uint32_t from = random_() % 2 == 0 ? left : below;
    read(false, from, i);
    read(true, from, i);
  }

  // Rows and columns run to and fro in turn, so that what one place hangs on hangs on it again.
  void weave(std::uint32_t i, int x, int y) {
    read(false, at(y % 2 == 0 ? x - 1 : x + 1, y), i);
    read(false, at(x, x % 2 == 0 ? y - 1 : y + 1), i);
  }

  RandomPlacing::Kind kind_;
  std::uint32_t free_;
  int width_;
  std::mt19937_64 random_;
  std::map<Cell, std::uint32_t> numbers_;
  RandomPlacing out_;
};

inline RandomPlacing RandomPlacing::make(Kind kind, std::uint32_t free, std::uint64_t seed) {
  return RandomPlacingMaker(kind, free, seed).make();
}

inline PlaneProblem RandomPlacing::problem() const {
  PlaneProblem problem;
  const auto variable = [&](VariableKind kind, double start) {
    problem.kinds.push_back(kind);
    problem.start.push_back(start);
    problem.isTraced.push_back(kind == VariableKind::along);
    return Term{problem.equations.addVariable(), 1};
  };
  const auto quantity = [&](double constant, const Term& term) {
    return problem.equations.addQuantity(constant, std::span(&term, 1));
  };
  for (const Place& place : places) {
    PlacedPoint point;
    if (place.isFixed) {
      point.x = problem.equations.addQuantity(place.truth.x);
      point.y = problem.equations.addQuantity(place.truth.y);
    } else {
      point.x = quantity(0, variable(VariableKind::along, place.traced.x));
      point.y = quantity(0, variable(VariableKind::along, place.traced.y));
    }
    point.traced = place.traced;
    problem.points.push_back(point);
  }
  for (const Reading& reading : readings) {
    const PlacedPoint &a = problem.points[reading.from], &b = problem.points[reading.to];
    const std::uint32_t figure = quantity(reading.value, variable(VariableKind::figure, 0));
    const Row row = reading.isAngle ? Row{RowKind::direction, {a.x, a.y, b.x, b.y, 0, figure}}
                                    : Row{RowKind::distance, {a.x, a.y, b.x, b.y, 0, 0, figure}};
    problem.rows.push_back(problem.equations.addRow(row));
    problem.spareWithin.push_back(1.0 / 128);
  }
  return problem;
}

}  // namespace inchwright::test
