#include "core/tolerance/placed_stack.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "core/chain/axis_solver.h"
#include "core/part/place_index.h"
#include "core/place/placing.h"

namespace inchwright {
namespace {

constexpr std::int64_t kThou = Length::kTicksPerInch / 1000;
constexpr std::int64_t kHundredth = Angle::kPerDegree / 100;
constexpr double kJump = 1e4;   ///< more ticks a tick than that is no slope
constexpr double kNothing = 8;  ///< ticks: what rounding of places comes to
constexpr double kWholeWithin = 4e-6;

/// What a figure may be: ticks, or micro-arcseconds of an angle.
struct Figure {
  std::uint32_t reading = 0;
  bool isAngle = false;
  std::int64_t nominal = 0, low = 0, high = 0;
};

std::optional<Figure> figureAt(const Part& part, std::uint32_t number) {
  const Reading& reading = part.readings[number];
  if (reading.angle) {
    if (reading.angle->reference) return std::nullopt;
    const std::int64_t value = reading.angle->value.microArcseconds();
    std::int64_t either = Angle::kPerDegree / 2;  // customary
    if (part.general.angles) either = part.general.angles->value.microArcseconds();
    if (reading.angle->plusMinus) either = reading.angle->plusMinus->microArcseconds();
    return Figure{number, true, value, value - either, value + either};
  }
  if (reading.figure.reference) return std::nullopt;
  const std::int64_t value = reading.figure.value.ticks();
  const Tolerance by = toleranceOf(reading.figure, part.general).value_or(Tolerance{});
  return Figure{number, false, value, value + by.lower.ticks(), value + by.upper.ticks()};
}

std::vector<Figure> figuresOf(const Part& part) {
  std::vector<Figure> figures;
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    if (const auto figure = figureAt(part, i)) figures.push_back(*figure);
  }
  return figures;
}

void setFigure(Part& part, const Figure& figure, std::int64_t value) {
  Reading& reading = part.readings[figure.reading];
  if (figure.isAngle) {
    reading.angle->value = Angle::microArcseconds(value);
  } else {
    reading.figure.value = Length::ticks(value);
  }
}

/// A distance in a part whose figures may be moved.
class Measured {
 public:
  static Result<Measured> of(const Part& part, std::optional<Axis> axis, std::string_view from,
                             std::string_view to) {
    Measured measured(from, to);
    const Result<PlaceIndex> index = PlaceIndex::of(part);
    if (!index) return index.error();
    for (const Axis one : kAxes) {
      if (axis && *axis != one) continue;
      bool has = true;
      for (const std::string_view id : {from, to}) {
        const auto place = index->find(id);
        const std::string name(id);
        if (!place) return Error{ErrorCode::notFound, "the part has no place " + name, name};
        has = has && place->axes.has(one);
      }
      if (has) measured.axes_.push_back(one);
    }
    if (measured.axes_.size() < (axis ? 1u : 2u)) {
      return Error{ErrorCode::badRequest,
                   std::string(from) + " and " + std::string(to) + " have no positions " +
                       (axis ? "along " + std::string(nameOf(*axis)) : "in one plane"),
                   std::string(from)};
    }
    return measured;
  }

  /// Ticks; empty where the two are not placed against each other.
  Result<std::optional<double>> in(const Part& part) const {
    PlacePartOptions options;
    options.findContradictions = false;
    const Result<WholePlaced> whole = placeWhole(part, options);
    if (!whole) return whole.error();
    double straight = 0;
    for (const Axis axis : axes_) {
      const Position* first = whole->positions.find(from_, axis);
      const Position* last = whole->positions.find(to_, axis);
      if (first == nullptr || last == nullptr || first->group != last->group) {
        return std::optional<double>();
      }
      const auto apart = last->ticks.minus(first->ticks);
      if (!apart) return std::optional<double>();
      if (axes_.size() == 1) return std::optional(apart->toDouble());
      straight = std::hypot(straight, apart->toDouble());
    }
    return std::optional(straight);
  }

 private:
  Measured(std::string_view from, std::string_view to) : from_(from), to_(to) {}

  std::string from_, to_;
  std::vector<Axis> axes_;
};

/// Finds the figures that a distance hangs on, and by how much.
class SlopeSearch {
 public:
  SlopeSearch(const Part& part, const Measured& measured, double nominal)
      : moved_(part), measured_(measured), nominal_(nominal) {}

  Result<std::vector<std::pair<Figure, double>>> among(const std::vector<Figure>& figures) {
    if (const auto failed = look(figures, 0, figures.size())) return *failed;
    return std::move(found_);
  }

 private:
  static std::int64_t stepOf(const Figure& figure) { return figure.isAngle ? kHundredth : kThou; }

  /// Moves all of a stretch at once, each by its own share of a step, so that none undoes another;
  /// where that moves the distance, both halves are looked at.
  std::optional<Error> look(const std::vector<Figure>& figures, std::size_t first,
                            std::size_t last) {
    if (first == last) return std::nullopt;
    if (last - first == 1) return measure(figures[first]);
    std::uniform_real_distribution<double> share(0.3, 1);
    for (std::size_t i = first; i < last; ++i) {
      const auto by = std::llround(share(random_) * static_cast<double>(stepOf(figures[i])));
      setFigure(moved_, figures[i], figures[i].nominal + by);
    }
    const auto there = measured_.in(moved_);
    for (std::size_t i = first; i < last; ++i) setFigure(moved_, figures[i], figures[i].nominal);
    if (!there) return there.error();
    if (*there && std::fabs(**there - nominal_) < kNothing) return std::nullopt;
    const std::size_t half = first + (last - first) / 2;
    if (const auto failed = look(figures, first, half)) return failed;
    return look(figures, half, last);
  }

  std::optional<Error> measure(const Figure& figure) {
    const std::int64_t step = stepOf(figure);
    std::optional<double> ends[2];
    for (const int side : {0, 1}) {
      setFigure(moved_, figure, figure.nominal + (side == 0 ? -step : step));
      const auto there = measured_.in(moved_);
      setFigure(moved_, figure, figure.nominal);
      if (!there) return there.error();
      const double farthest = kJump * static_cast<double>(kThou);
      if (*there && std::fabs(**there - nominal_) < farthest) ends[side] = *there;
    }
    if (!ends[0] && !ends[1]) {
      const Id& id = moved_.readings[figure.reading].id;
      return Error{ErrorCode::unsolvable, "a thou in " + id + " makes a place jump elsewhere", id};
    }
    const double low = ends[0].value_or(nominal_), high = ends[1].value_or(nominal_);
    const double width = static_cast<double>(step) * (ends[0] && ends[1] ? 2 : 1);
    if (std::fabs(high - low) < kNothing) return std::nullopt;
    found_.emplace_back(figure, (high - low) / width);
    return std::nullopt;
  }

  Part moved_;
  const Measured& measured_;
  double nominal_;
  std::mt19937 random_{1966};
  std::vector<std::pair<Figure, double>> found_;
};

StackMember memberOf(const Part& part, const Figure& figure, double slope) {
  const Reading& reading = part.readings[figure.reading];
  StackMember member;
  member.what = member::Read{reading.id};
  member.text = reading.figure.text;
  member.from = reading.from;
  member.to = reading.to;
  const double halves = std::round(2 * slope);
  const bool isPlain =
      !figure.isAngle && halves != 0 && std::fabs(2 * slope - halves) < kWholeWithin;
  member.factor =
      isPlain ? Rational::of(std::llround(halves), 2).value_or(Rational()) : fractionOf(slope);
  member.isSlanted = !isPlain;
  member.isAngle = figure.isAngle;
  member.nominal = figure.nominal;
  member.low = figure.low;
  member.high = figure.high;
  return member;
}

/// What the members' factors leave of the nominal.
std::optional<Rational> baseOf(const Slopes& slopes) {
  std::optional<Rational> base = Rational(std::llround(slopes.nominal));
  for (const StackMember& member : slopes.members) {
    const auto adds = member.factor.times(Rational(member.nominal));
    base = base && adds ? base->minus(*adds) : std::nullopt;
  }
  return base;
}

/// How far both corners of the worst case, solved for, come out beyond the first order.
Result<std::int64_t> beyondFirstOrder(const Part& part, const Measured& measured,
                                      const Slopes& slopes, const Span& worst) {
  std::int64_t most = 0;
  std::map<Id, const StackMember*> byReading;
  for (const StackMember& member : slopes.members) byReading.emplace(*member.reading(), &member);
  for (const bool high : {false, true}) {
    Part corner = part;
    for (const Figure& figure : figuresOf(part)) {
      const auto member = byReading.find(part.readings[figure.reading].id);
      if (member == byReading.end()) continue;
      setFigure(corner, figure, (member->second->sign() > 0) == high ? figure.high : figure.low);
    }
    const auto there = measured.in(corner);
    if (!there) return there.error();
    // A corner that can't be built at all is as far from the first order as can be.
    if (!*there) return worst.width();
    const auto end = static_cast<double>(high ? worst.high : worst.low);
    most = std::max(most, static_cast<std::int64_t>(std::llround(std::fabs(**there - end))));
  }
  return most;
}

Result<Stack> stackBySlopes(const Part& part, std::optional<Axis> axis, std::string_view from,
                            std::string_view to, double inflation) {
  const Result<Measured> measured = Measured::of(part, axis, from, to);
  if (!measured) return measured.error();
  Result<Slopes> slopes = slopesBetween(part, axis, from, to);
  if (!slopes) return slopes.error();
  // A basic figure moves the distance and does not stray.
  const auto base = baseOf(*slopes);
  if (!base) return Error{ErrorCode::outOfRange, "the stack goes beyond the exact range", ""};
  Result<Stack> stack = stackOf(slopes->members, inflation, *base);
  if (!stack) return stack;
  const auto beyond = beyondFirstOrder(part, *measured, *slopes, stack->worst);
  if (!beyond) return beyond.error();
  if (*beyond * 10 > stack->worst.width()) stack->secondOrder = *beyond;
  return stack;
}

/// The centre distance lettered between two places.
const Reading* lettered(const Part& part, std::string_view from, std::string_view to) {
  for (const Reading& reading : part.readings) {
    if (reading.kind != ReadingKind::centres || reading.figure.reference) continue;
    if (std::minmax<std::string_view>(reading.from, reading.to) == std::minmax(from, to)) {
      return &reading;
    }
  }
  return nullptr;
}

}  // namespace

Result<Slopes> slopesBetween(const Part& part, std::optional<Axis> axis, std::string_view from,
                             std::string_view to) {
  const Result<Measured> measured = Measured::of(part, axis, from, to);
  if (!measured) return measured.error();
  const auto nominal = measured->in(part);
  if (!nominal) return nominal.error();
  if (!*nominal) {
    return Error{
        ErrorCode::unsolvable,
        std::string(from) + " and " + std::string(to) + " are not placed against each other",
        std::string(from)};
  }
  Slopes slopes{**nominal, {}};
  if (from == to) return slopes;
  const auto found = SlopeSearch(part, *measured, **nominal).among(figuresOf(part));
  if (!found) return found.error();
  for (const auto& [figure, slope] : *found) {
    slopes.members.push_back(memberOf(part, figure, slope));
  }
  return slopes;
}

Result<Done> addPlacedRanges(const Part& part, const Solution& solution, Axis axis,
                             std::string_view from, Ranges& ranges) {
  const Position* start = solution.position(from, axis);
  if (start == nullptr || start->group != 0 || !ranges.contradiction.empty()) return Done{};
  std::set<Id> known;
  std::set<std::uint32_t> members;
  for (const PlaceRange& one : ranges.places) known.insert(one.id);
  bool isAdded = false;
  const Positions::Along& all = solution.positions.along(axis);
  for (std::size_t i = 0; i < all.places.size(); ++i) {
    const Id& id = all.places[i];
    if (all.positions[i].group != 0 || known.contains(id)) continue;
    const Result<Slopes> slopes = slopesBetween(part, axis, from, id);
    if (!slopes && slopes.error().code == ErrorCode::unsolvable) {
      ranges.jumping.push_back(id);
      continue;
    }
    if (!slopes) return slopes.error();
    const auto base = baseOf(*slopes);
    const Result<Stack> stack =
        base ? stackOf(slopes->members, kCustomaryInflation, *base)
             : Result<Stack>(Error{ErrorCode::outOfRange, "a range goes beyond what is exact", id});
    if (!stack) return stack.error();
    PlaceRange range{id, std::llround(slopes->nominal), stack->worst, {}, {}};
    for (const StackMember& member : slopes->members) {
      const Reading* reading = part.reading(*member.reading());
      const auto number = static_cast<std::uint32_t>(reading - part.readings.data());
      range.lowBy.push_back({SourceKind::reading, number});
      members.insert(number);
    }
    range.highBy = range.lowBy;
    ranges.places.push_back(std::move(range));
    isAdded = true;
  }
  if (!isAdded) return Done{};
  std::sort(ranges.places.begin(), ranges.places.end(),
            [](const PlaceRange& a, const PlaceRange& b) { return a.id < b.id; });
  for (const std::uint32_t index : solution.beyond.used) {
    if (!members.contains(index) && figureAt(part, index))
      ranges.leftOut.push_back({SourceKind::reading, index});
  }
  return Done{};
}

Result<Stack> drawnStack(const Part& part, std::optional<Axis> axis, std::string_view from,
                         std::string_view to, double inflation) {
  if (axis) {
    const Result<ToleranceNetwork> network = toleranceNetworkOf(part, *axis);
    if (!network) return network.error();
    return drawnStack(part, *network, from, to, inflation);
  }
  if (const Reading* direct = lettered(part, from, to)) {
    const auto number = static_cast<std::uint32_t>(direct - part.readings.data());
    if (const auto figure = figureAt(part, number)) {
      return stackOf({memberOf(part, *figure, 1)}, inflation);
    }
  }
  return stackBySlopes(part, axis, from, to, inflation);
}

Result<Stack> drawnStack(const Part& part, const ToleranceNetwork& network, std::string_view from,
                         std::string_view to, double inflation) {
  Result<std::vector<StackMember>> chain = chainBetween(part, network, from, to);
  if (chain) return stackOf(std::move(chain).value(), inflation);
  if (chain.error().code != ErrorCode::unsolvable) return chain.error();
  Result<Stack> placed = stackBySlopes(part, network.axis, from, to, inflation);
  // What nothing places is told as before: no chain joins the two.
  return !placed && placed.error().code == ErrorCode::unsolvable ? chain.error() : placed;
}

}  // namespace inchwright
