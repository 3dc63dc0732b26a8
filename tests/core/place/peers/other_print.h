#pragma once

#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <string>
#include <tuple>
#include <utility>

#include "tests/core/place/peers/other_print_base.h"

namespace inchwright::test {

class OtherPrintMaker : OtherPrintBase {
 public:
  OtherPrintMaker(std::uint64_t seed, bool isTraced, double size)
      : OtherPrintBase(seed, isTraced, size) {}

  OtherPrint make() {
    out_.part.name = "Plate";
    edge("L", Axis::x, Side::left);
    edge("F", Axis::y, Side::front);
    for (int i = 0; i < 3; ++i) chained();
    const int steps = 4 + static_cast<int>(random_() % 7);
    for (int i = 0; i < steps; ++i) {
      const auto which = random_() % 10;
      if (which < 6) {
        held();
      } else if (which < 8) {
        line();
      } else if (which == 8) {
        mirrored();
      } else {
        pair();
      }
    }
    return std::move(out_);
  }

 private:
  const Place& any() { return places_[random_() % places_.size()]; }
  const Straight& anyLine() { return lines_[random_() % lines_.size()]; }

  void chained() {
    Place place = spot();
    for (const auto& [axis, from, at] :
         {std::tuple(Axis::x, "L", place.at), std::tuple(Axis::y, "F", place.at + 1)}) {
      Reading& one = reading(ReadingKind::along, from, place.id);
      one.axis = axis;
      one.figure = lettered(val(at));
      const double value = one.figure.value.toInches();
      out_.equations.push_back([=](const Values& v) { return v[at] - value; });
    }
    keep(place);
  }

  // One of the ways to hold a place, by what is already there.
  Hold hold(const Place& p) {
    const Place a = any(), b = any();
    const std::size_t own = p.at, other = a.at, third = b.at;
    const Values& v = out_.truth;
    switch (random_() % (lines_.empty() ? 7 : 11)) {
      case 0: {
        const Lettered figure = lettered(away(v, other, own));
        const double value = figure.value.toInches();
        const bool isTurned = random_() % 2 == 0;
        return {
            [=](const Values& x) { return away(x, other, own) - value; },
            [=, this] {
              reading(ReadingKind::centres, isTurned ? p.id : a.id, isTurned ? a.id : p.id).figure =
                  figure;
            }};
      }
      case 1: {
        const bool isClockwise = random_() % 2 == 0;
        const double angle = fullTurn((isClockwise ? -1 : 1) * way(v, other, own));
        const LetteredAngle text = letteredAngle(angle);
        const double value = (isClockwise ? -1 : 1) * text.value.toRadians();
        return {[=](const Values& x) {
                  return turned(way(x, other, own) - value) * away(x, other, own);
                },
                [=, this] {
                  readAngleOf(a.id, p.id, text, {},
                              isClockwise ? std::optional(Sense::clockwise) : std::nullopt);
                }};
      }
      case 2: {
        if (a.id == b.id) return {};
        const LetteredAngle text =
            letteredAngle(fullTurn(way(v, other, own) - way(v, other, third)));
        const double value = text.value.toRadians();
        return {[=](const Values& x) {
                  return turned(way(x, other, own) - way(x, other, third) - value) *
                         away(x, other, own);
                },
                [=, this] {
                  readAngleOf(a.id, p.id, text, {a.id, b.id});
                }};
      }
      case 3:
      case 4: {
        const std::size_t which = random_() % 2;
        const double apart = v[own + which] - v[other + which];
        const Lettered figure = lettered(std::abs(apart));
        const double value = std::copysign(figure.value.toInches(), apart);
        return {[=](const Values& x) { return x[own + which] - x[other + which] - value; },
                [=, this] {
                  Reading& one =
                      reading(ReadingKind::along, apart > 0 ? a.id : p.id, apart > 0 ? p.id : a.id);
                  one.axis = which == 0 ? Axis::x : Axis::y;
                  one.figure = figure;
                }};
      }
      case 5:
        if (a.id == b.id || away(v, other, third) < 0.5 * size_) return {};
        return sets(
            p,
            [=](Values& x) {
              // Onto the line through both.
              const double t = way(x, other, third);
              const double off =
                  std::cos(t) * (x[own + 1] - x[other + 1]) - std::sin(t) * (x[own] - x[other]);
              x[own] += off * std::sin(t);
              x[own + 1] -= off * std::cos(t);
            },
            [=](const Values& x) {
              const double t = way(x, other, third);
              return std::cos(t) * (x[own + 1] - x[other + 1]) - std::sin(t) * (x[own] - x[other]);
            },
            [=, this] {
              understood(UnderstandingKind::inLine, {a.id, b.id, p.id});
            });
      case 6:
        if (a.id == b.id || away(v, other, third) < 0.3 * size_) return {};
        return sets(
            p,
            [=](Values& x) {
              const double t = way(x, third, own), r = away(x, other, third);
              x[own] = x[third] + r * std::cos(t);
              x[own + 1] = x[third + 1] + r * std::sin(t);
            },
            [=](const Values& x) { return away(x, other, third) - away(x, third, own); },
            [=, this] {
              understood(UnderstandingKind::equal, {a.id, b.id, p.id}).by = EqualBy::spacing;
            });
      default:
        return holdByLine(p, a);
    }
  }

  Hold holdByLine(const Place& p, const Place& a) {
    const Straight m = anyLine();
    const std::size_t own = p.at, line = m.at, other = a.at;
    const Values& v = out_.truth;
    switch (random_() % 4) {
      case 0: {
        const Lettered figure = lettered(std::abs(left(v, line, own)));
        const double value = std::copysign(figure.value.toInches(), left(v, line, own));
        return {[=](const Values& x) { return left(x, line, own) - value; },
                [=, this] { reading(ReadingKind::squareOff, p.id, m.id).figure = figure; }};
      }
      case 1:
        return sets(
            p, [=](Values& x) { ontoLine(x, line, own, 0); },
            [=](const Values& x) { return left(x, line, own); },
            [=, this] { understood(UnderstandingKind::on, {p.id}).about = m.id; });
      case 2: {
        const double radius = readLength(written(2 * p.radius, 8))->value.toInches() / 2;
        const double off = std::copysign(radius, left(v, line, own));
        return sets(
            p, [=](Values& x) { ontoLine(x, line, own, off); },
            [=](const Values& x) { return left(x, line, own) - off; },
            [=, this] {
              understood(UnderstandingKind::tangent, {p.id, m.id});
            });
      }
      default: {
        // Anticlockwise from the line as it runs upwards.
        const LetteredAngle text = letteredAngle(fullTurn(way(v, other, own) - upwards(v[line])));
        const double value = text.value.toRadians();
        if (value > std::numbers::pi / 2) return {};
        return {[=](const Values& x) {
                  return turned(way(x, other, own) - upwards(x[line]) - value) *
                         away(x, other, own);
                },
                [=, this] { readAngleOf(a.id, p.id, text, {m.id}, Sense::anticlockwise); }};
      }
    }
  }

  static double upwards(double direction) {
    return direction - std::numbers::pi * std::floor(direction / std::numbers::pi);
  }
  static void ontoLine(Values& x, std::size_t line, std::size_t p, double off) {
    const double by = left(x, line, p) - off;
    x[p] += by * std::sin(x[line]);
    x[p + 1] -= by * std::cos(x[line]);
  }

  // A hold without a figure: the place is moved to where it is met.
  Hold sets(const Place&, const std::function<void(Values&)>& move, Equation equation,
            std::function<void()> letter) {
    move(out_.truth);
    return {std::move(equation), std::move(letter)};
  }

  std::array<double, 2> slopeOf(const Equation& equation, std::size_t at) {
    std::array<double, 2> slope{};
    for (const std::size_t i : {0U, 1U}) {
      const double step = 1e-6 * size_, kept = val(at + i);
      val(at + i) = kept + step;
      const double up = equation(out_.truth);
      val(at + i) = kept - step;
      slope[i] = (up - equation(out_.truth)) / (2 * step);
      val(at + i) = kept;
    }
    return slope;
  }

  bool isSteep(const Hold& one, const Hold& other, std::size_t at) {
    const auto a = slopeOf(one.equation, at), b = slopeOf(other.equation, at);
    return std::abs(a[0] * b[1] - a[1] * b[0]) >
           0.35 * std::hypot(a[0], a[1]) * std::hypot(b[0], b[1]);
  }
  bool isClear(std::size_t at) {
    const Values& v = out_.truth;
    if (v[at] < 0.1 * size_ || v[at + 1] < 0.1 * size_ || v[at] > 9 * size_ ||
        v[at + 1] > 9 * size_) {
      return false;
    }
    for (const Place& other : places_) {
      if (away(v, other.at, at) < 0.3 * size_) return false;
    }
    return true;
  }

  // A place by two ways of holding it. One without a figure comes first: it moves the place.
  void held() {
    for (int attempt = 0; attempt < 40; ++attempt) {
      const Place place = spot();
      const Hold one = hold(place);
      const Values before = out_.truth;
      const Hold other = one.equation ? hold(place) : Hold{};
      if (other.equation && out_.truth == before && isClear(place.at) &&
          isSteep(one, other, place.at)) {
        one.letter();
        other.letter();
        out_.equations.push_back(one.equation);
        out_.equations.push_back(other.equation);
        keep(place);
        return;
      }
      out_.truth.resize(place.at);
    }
  }

  // Two places that hang on each other: each held once, and how the one lies from the other.
  void pair() {
    for (int attempt = 0; attempt < 40; ++attempt) {
      const Place p = spot();
      Place q = spot();
      q.id = "H" + std::string(1, static_cast<char>('a' + places_.size() + 1));
      const Values before = out_.truth;
      const Hold one = hold(p), other = hold(q);
      const std::size_t first = p.at, second = q.at;
      if (one.equation && other.equation && out_.truth == before && isClear(first) &&
          isClear(second) && away(out_.truth, first, second) > 0.5 * size_ &&
          std::abs(std::sin(angleOf(one, first) - angleOf(other, second))) > 0.35) {
        const Lettered far = lettered(away(out_.truth, first, second));
        const LetteredAngle text = letteredAngle(fullTurn(way(out_.truth, first, second)));
        const double distance = far.value.toInches(), angle = text.value.toRadians();
        one.letter();
        other.letter();
        reading(ReadingKind::centres, p.id, q.id).figure = far;
        readAngleOf(p.id, q.id, text);
        out_.equations.push_back(one.equation);
        out_.equations.push_back(other.equation);
        out_.equations.push_back(
            [=](const Values& v) { return away(v, first, second) - distance; });
        out_.equations.push_back([=](const Values& v) {
          return turned(way(v, first, second) - angle) * away(v, first, second);
        });
        keep(p);
        keep(q);
        return;
      }
      out_.truth.resize(first);
    }
  }
  double angleOf(const Hold& hold, std::size_t at) {
    const auto slope = slopeOf(hold.equation, at);
    return std::atan2(slope[1], slope[0]);
  }

  // A line through two places; through one at an angle; beside one; along two holes.
  void line() {
    const Place a = any(), b = any();
    if (a.id == b.id || away(out_.truth, a.at, b.at) < 0.7 * size_) return;
    const std::size_t at = out_.truth.size(), p = a.at, q = b.at;
    Feature feature;
    feature.id = "M" + std::to_string(lines_.size() + 1);
    kind::Line shape;
    double direction = way(out_.truth, p, q);
    double off = 0;  // of the line from a, to its right
    const auto which = random_() % 4;
    if (which == 1) direction = spread(0.1, 3);
    const double ra = readLength(written(2 * a.radius, 8))->value.toInches() / 2;
    const double rb = readLength(written(2 * b.radius, 8))->value.toInches() / 2;
    if (which == 2) off = ra;
    if (which == 3 && lines_.empty()) return;
    const Straight base = which == 3 ? anyLine() : Straight{};
    const Lettered beside = lettered(spread(0.4, 1.5) * size_);
    if (which == 3) {
      direction = val(base.at);
      off = beside.value.toInches();
    }
    if (which == 2) direction += std::asin((ra - rb) / away(out_.truth, p, q));
    out_.truth.push_back(direction);
    out_.truth.push_back(0);
    val(at + 1) = left(out_.truth, at, p) - off;
    const auto offIs = [this, at](std::size_t place, double value) {
      out_.equations.push_back([=](const Values& v) { return left(v, at, place) - value; });
    };
    if (which == 0) {
      shape.through = {a.id, b.id};
      offIs(p, 0);
      offIs(q, 0);
    } else if (which == 1) {
      shape.through = {a.id};
      const LetteredAngle text = letteredAngle(direction);
      const double value = text.value.toRadians();
      readAngleOf(feature.id, "", text);
      offIs(p, 0);
      out_.equations.push_back([=](const Values& v) { return v[at] - value; });
    } else if (which == 2) {
      understood(UnderstandingKind::tangent, {feature.id, a.id});
      understood(UnderstandingKind::tangent, {feature.id, b.id});
      offIs(p, ra);
      offIs(q, rb);
    } else {
      understood(UnderstandingKind::parallel, {base.id, feature.id});
      reading(ReadingKind::squareOff, a.id, feature.id).figure = beside;
      offIs(p, off);
      out_.equations.push_back(
          [=, parallel = base.at](const Values& v) { return v[at] - v[parallel]; });
    }
    feature.shape = shape;
    if (isTraced_) {
      for (const std::size_t end : {p, q}) {
        const double by = left(out_.truth, at, end);
        feature.traced.push_back(shaken(val(end) + by * std::sin(direction)));
        feature.traced.push_back(shaken(val(end + 1) - by * std::cos(direction)));
      }
    }
    out_.part.features.push_back(std::move(feature));
    lines_.push_back({"M" + std::to_string(lines_.size() + 1), at});
  }

  // The image of a place in a line.
  void mirrored() {
    if (lines_.empty()) return held();
    const Straight m = anyLine();
    const Place a = any();
    Place place = spot();
    const std::size_t own = place.at, other = a.at, line = m.at;
    const double by = left(out_.truth, line, other);
    val(own) = val(other) + 2 * by * std::sin(val(line));
    val(own + 1) = val(other + 1) - 2 * by * std::cos(val(line));
    if (!isClear(own)) {
      out_.truth.resize(own);
      return;
    }
    understood(UnderstandingKind::symmetric, {a.id, place.id}).about = m.id;
    out_.equations.push_back(
        [=](const Values& v) { return left(v, line, own) + left(v, line, other); });
    out_.equations.push_back([=](const Values& v) {
      return std::cos(v[line]) * (v[own] - v[other]) +
             std::sin(v[line]) * (v[own + 1] - v[other + 1]);
    });
    keep(place);
  }
};

inline OtherPrint OtherPrint::make(std::uint64_t seed, bool isTraced, double size) {
  return OtherPrintMaker(seed, isTraced, size).make();
}

}  // namespace inchwright::test
