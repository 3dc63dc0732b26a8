#pragma once

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/measure/writing.h"
#include "core/part/job.h"

namespace inchwright::drawn {

/// How the maker of a random print dimensions it.
enum class Manner {
  chained,   ///< each hole from any edge or hole already there; spares between any two places
  ladder,    ///< hole to hole from edge to edge, with overall and part-overall dimensions
  baseline,  ///< all from one edge, with some distances between neighbours
  blocks,    ///< two ladders that hang together by one reading
  decimals,  ///< as chained, in three-place decimals
};

inline const char* nameOf(Manner manner) {
  constexpr const char* kNames[] = {"chained", "ladder", "baseline", "blocks", "decimals"};
  return kNames[static_cast<int>(manner)];
}

enum class Trace { none, gaussian, uniform };

/// What goes wrong with a reading.
enum class Slip {
  lookalike,  ///< one figure taken for a similar one
  careless,   ///< as lookalike, but put down in lowest terms whatever comes of it
  any,        ///< any other fraction or decimal that the print might use
  wrongEnd,   ///< right as lettered, but between other places
};

inline const char* nameOf(Slip slip) {
  constexpr const char* kNames[] = {"look-alike", "careless", "any figure", "wrong end"};
  return kNames[static_cast<int>(slip)];
}

struct Misreading {
  Id reading;
  Length truth;
};

struct Print {
  Part part;
  std::vector<Misreading> misread;
};

/// Makes prints; every one follows from the seed.
class Maker {
 public:
  Maker(std::uint64_t seed, Manner manner, Slip slip = Slip::lookalike)
      : random_(seed), manner_(manner), slip_(slip) {}

  Print make(int errors, Trace trace) {
    const int holes = number(4, 12);
    return make(errors, trace, holes, number(2, 5));
  }

  Print make(int errors, Trace trace, int holes, int spares) {
    for (;;) {
      Print print;
      part_ = Part{};
      next_ = 1;
      const int alongX = number(0, spares);
      placeAll(Axis::x, holes);
      placeAll(Axis::y, holes);
      dimension(Axis::x, alongX);
      dimension(Axis::y, spares - alongX);
      addFeatures(holes, trace);
      if (!misread(errors, print.misread)) continue;
      print.part = std::move(part_);
      return print;
    }
  }

  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }

 private:
  static constexpr std::int64_t k64th = Length::kTicksPerInch / 64;
  static constexpr std::int64_t kThou = Length::kTicksPerInch / 1000;

  bool isDecimal() const { return manner_ == Manner::decimals; }

  // Places along an axis in order: an edge, the holes, the other edge, apart from each other.
  void placeAll(Axis axis, int holes) {
    const std::string low = axis == Axis::x ? "L" : "F";
    const std::string high = axis == Axis::x ? "R" : "K";
    std::vector<std::string> names;
    for (int i = 0; i < holes; ++i) names.push_back("H" + std::to_string(i + 1));
    std::shuffle(names.begin(), names.end(), random_);
    names.insert(names.begin(), low);
    names.push_back(high);
    std::int64_t at = 0;
    auto& places = places_[axis];
    places.clear();
    for (const std::string& name : names) {
      places.push_back({name, at});
      at += step();
    }
  }

  std::int64_t step() {
    if (isDecimal())
      return kThou * (number(0, 2) == 0 ? number(30, 320) * 5 : number(15, 160) * 10);
    constexpr int kFineness[] = {16, 8, 8, 4, 4, 4, 4, 4, 2, 1};
    const int unit = kFineness[number(0, 9)];
    return k64th * unit * number(std::max(1, 12 / unit), 100 / unit);
  }

  using Placed = std::pair<std::string, std::int64_t>;

  void addReading(Axis axis, Placed a, Placed b) {
    if (a.second > b.second) std::swap(a, b);
    for (const Reading& other : part_.readings) {
      if (other.axis == axis && other.from == a.first && other.to == b.first) return;
    }
    Reading reading;
    reading.id = "r" + std::to_string(next_++);
    reading.axis = axis;
    reading.from = a.first;
    reading.to = b.first;
    reading.figure = lettered(Length::ticks(b.second - a.second));
    part_.readings.push_back(std::move(reading));
  }

  Lettered lettered(Length value) const {
    Lettered figure;
    figure.value = value;
    if (isDecimal()) {
      figure.lettering = Lettering::decimal;
      figure.places = 3;
      char text[32];
      const long long thou = value.ticks() / kThou;
      std::snprintf(text, sizeof text, "%lld.%03lld", thou / 1000, thou % 1000);
      figure.text = text[0] == '0' ? text + 1 : text;
    } else {
      figure.text = writeFraction(value);
    }
    return figure;
  }

  void dimension(Axis axis, int spares) {
    auto places = places_[axis];
    const int last = static_cast<int>(places.size()) - 1;
    const auto pick = [&](int low, int high) { return places[number(low, high)]; };
    if (manner_ == Manner::ladder || manner_ == Manner::blocks) {
      for (int i = 1; i <= last; ++i) addReading(axis, places[i - 1], places[i]);
    } else if (manner_ == Manner::baseline) {
      for (int i = 1; i <= last; ++i) addReading(axis, places[0], places[i]);
    } else {
      std::vector<Placed> done{places[0]};
      std::shuffle(places.begin() + 1, places.end(), random_);
      for (int i = 1; i <= last; ++i) {
        const bool near = number(0, 2) != 0;
        addReading(axis, near ? nearest(done, places[i]) : done[number(0, i - 1)], places[i]);
        done.push_back(places[i]);
      }
    }
    const std::size_t wanted = part_.readings.size() + spares;
    if (spares > 0 && manner_ != Manner::baseline)
      addReading(axis, places_[axis][0], places_[axis][last]);
    for (int tries = 0; part_.readings.size() < wanted && tries < 200; ++tries) {
      if (manner_ == Manner::baseline) {
        const int at = number(1, last - 1);
        addReading(axis, places[at], places[at + 1]);
      } else if (manner_ == Manner::blocks) {
        const int middle = last / 2;
        const bool low = number(0, 1) == 0;
        addReading(axis, pick(low ? 0 : middle, low ? middle : last),
                   pick(low ? 0 : middle, low ? middle : last));
      } else if (const Placed a = pick(0, last), b = pick(0, last); a.first != b.first) {
        addReading(axis, a, b);
      }
      std::erase_if(part_.readings, [](const Reading& one) { return one.from == one.to; });
    }
  }

  static Placed nearest(const std::vector<Placed>& done, const Placed& to) {
    Placed best = done.front();
    for (const Placed& one : done) {
      if (std::abs(one.second - to.second) < std::abs(best.second - to.second)) best = one;
    }
    return best;
  }

  void addFeatures(int holes, Trace trace) {
    const double stretchX = std::uniform_real_distribution<double>(0.98, 1.02)(random_);
    const auto edge = [&](const char* id, Axis axis, Side side) {
      Feature feature;
      feature.id = id;
      feature.shape = kind::Edge{axis, side};
      if (trace != Trace::none) feature.traced = {traced(id, axis, trace, stretchX)};
      part_.features.push_back(std::move(feature));
    };
    edge("L", Axis::x, Side::left);
    edge("R", Axis::x, Side::right);
    edge("F", Axis::y, Side::front);
    edge("K", Axis::y, Side::back);
    for (int i = 0; i < holes; ++i) {
      Feature feature;
      feature.id = "H" + std::to_string(i + 1);
      feature.shape = kind::Hole{};
      if (trace != Trace::none) {
        feature.traced = {traced(feature.id, Axis::x, trace, stretchX),
                          traced(feature.id, Axis::y, trace, stretchX)};
      }
      part_.features.push_back(std::move(feature));
    }
  }

  std::string traced(const std::string& id, Axis axis, Trace trace, double stretch) {
    const double at = Length::ticks(positionOf(axis, id)).toInches();
    const double error = trace == Trace::gaussian
                             ? std::normal_distribution<double>(0, 1.0 / 64)(random_)
                             : std::uniform_real_distribution<double>(-1.0 / 64, 1.0 / 64)(random_);
    char text[32];
    std::snprintf(text, sizeof text, "%.4f", at * stretch + 0.4 + error);
    return text;
  }

  // Whether another way joins the ends of a reading, so that something checks it.
  bool isChecked(std::size_t which) const {
    const Reading& reading = part_.readings[which];
    std::set<Id> reached{reading.from};
    for (bool grew = true; grew;) {
      grew = false;
      for (std::size_t i = 0; i < part_.readings.size(); ++i) {
        const Reading& one = part_.readings[i];
        if (i == which || one.axis != reading.axis) continue;
        if (reached.count(one.from) == reached.count(one.to)) continue;
        reached.insert(one.from);
        reached.insert(one.to);
        grew = true;
      }
    }
    return reached.count(reading.to) != 0;
  }

  bool misread(int errors, std::vector<Misreading>& told) {
    std::set<std::size_t> used;
    for (int tries = 0; tries < 500 && static_cast<int>(told.size()) < errors; ++tries) {
      const auto which =
          static_cast<std::size_t>(number(0, static_cast<int>(part_.readings.size()) - 1));
      if (used.count(which) != 0 || !isChecked(which)) continue;
      const Length truth = part_.readings[which].figure.value;
      const Length seen = mistaken(part_.readings[which]);
      if (seen.ticks() <= 0 || seen == truth) continue;
      part_.readings[which].figure = lettered(seen);
      told.push_back({part_.readings[which].id, truth});
      used.insert(which);
    }
    return static_cast<int>(told.size()) == errors;
  }

  Length mistaken(const Reading& reading) {
    const Length truth = reading.figure.value;
    if (slip_ == Slip::any) {
      return isDecimal() ? Length::ticks(kThou * 5 * number(10, 500))
                         : Length::ticks(k64th * 4 * number(1, 64));
    }
    if (slip_ == Slip::wrongEnd) {
      const auto& places = places_[reading.axis];
      const Placed& other = places[number(0, static_cast<int>(places.size()) - 1)];
      return Length::ticks(std::abs(positionOf(reading.axis, reading.to) - other.second));
    }
    return isDecimal() ? mistakenDecimal(truth) : mistakenFraction(truth);
  }

  std::int64_t positionOf(Axis axis, const Id& id) const {
    for (const Placed& one : places_.at(axis)) {
      if (one.first == id) return one.second;
    }
    return 0;
  }

  // The figures a maker of such a test would write down: independent of the ranking's own table.
  int mistakenDigit(int digit) {
    static const std::map<int, std::string> kAlike{{0, "68"}, {1, "7"},  {2, "7"},  {3, "58"},
                                                   {4, "9"},  {5, "36"}, {6, "58"}, {7, "1"},
                                                   {8, "36"}, {9, "4"}};
    const std::string& alike = kAlike.at(digit);
    return alike[number(0, static_cast<int>(alike.size()) - 1)] - '0';
  }

  std::int64_t mistakenNumber(std::int64_t value) {
    std::string digits = std::to_string(value);
    const int at = number(0, static_cast<int>(digits.size()) - 1);
    digits[at] = static_cast<char>('0' + mistakenDigit(digits[at] - '0'));
    return std::stoll(digits);
  }

  Length mistakenFraction(Length truth) {
    const std::int64_t count = truth.ticks() / k64th;
    const std::int64_t whole = count / 64;
    std::int64_t numerator = count % 64;
    std::int64_t denominator = 64;
    while (denominator > 1 && numerator % 2 == 0) {
      numerator /= 2;
      denominator /= 2;
    }
    const auto of = [this](std::int64_t w, std::int64_t n, std::int64_t d) {
      // What stands on paper is in lowest terms, and so is what it is taken for.
      const bool reduced = d == 1 ? n == 0 : n > 0 && n < d && n % 2 == 1;
      const bool stands = reduced || (slip_ == Slip::careless && n > 0 && n < d);
      return stands ? Length::ticks((w * 64 + n * 64 / d) * k64th) : Length();
    };
    switch (number(0, 9)) {
      case 0:
      case 1:
      case 2:
      case 3:
        return numerator == 0 ? Length() : of(whole, mistakenNumber(numerator), denominator);
      case 4:
        return whole == 0 ? Length() : of(mistakenNumber(whole), numerator, denominator);
      case 5:
        return of(whole - 1, numerator, denominator);
      case 6:
        return of(whole + 1, numerator, denominator);
      case 7:
        return truth.ticks() % (2 * k64th) == 0 && number(0, 1) == 0
                   ? Length::ticks(truth.ticks() / 2)
                   : Length::ticks(truth.ticks() * 2);
      case 8:
        return denominator == 64   ? of(whole, numerator, 16)
               : denominator == 16 ? of(whole, numerator, 64)
                                   : Length();
      default:
        return whole == 1 && numerator > 0 ? of(0, 10 + numerator, denominator) : Length();
    }
  }

  Length mistakenDecimal(Length truth) {
    const std::int64_t thou = truth.ticks() / kThou;
    std::string digits = std::to_string(thou);
    const int at = number(0, static_cast<int>(digits.size()) - 1);
    switch (number(0, 5)) {
      case 0:
      case 1:
        digits[at] = static_cast<char>('0' + mistakenDigit(digits[at] - '0'));
        return Length::ticks(std::stoll(digits) * kThou);
      case 2:
        if (at == 0) return Length();
        std::swap(digits[at - 1], digits[at]);
        return Length::ticks(std::stoll(digits) * kThou);
      case 3:
        return Length::ticks((thou + (number(0, 1) == 0 ? 1000 : -1000)) * kThou);
      case 4:
        return thou % 10 == 0 ? Length::ticks(thou / 10 * kThou) : Length();
      default:
        return thou % 2 == 0 && number(0, 1) == 0 ? Length::ticks(thou / 2 * kThou)
                                                  : Length::ticks(thou * 2 * kThou);
    }
  }

  std::mt19937_64 random_;
  Manner manner_;
  Slip slip_;
  Part part_;
  std::map<Axis, std::vector<Placed>> places_;
  int next_ = 1;
};

}  // namespace inchwright::drawn
