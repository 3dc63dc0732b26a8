#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <set>
#include <tuple>
#include <utility>

#include "core/measure/writing.h"
#include "core/part/feature_members.h"
#include "core/place/face_plane.h"
#include "core/solution/doubts.h"

namespace inchwright {
namespace {

using Along = std::array<std::optional<std::int64_t>, 3>;

/// Something cut at one spot.
struct Spot {
  const Feature* feature = nullptr;
  const Id* place = nullptr;
  Along at;                                 // ticks, where it is placed in the part
  std::optional<std::int64_t> across = {};  // its diameter
  std::int64_t seat = 0;                    // that of its seat; 0 without one
};

std::optional<std::int64_t> placedAt(const Solution& solution, const Id& place, Axis axis) {
  const Position* position = solution.position(place, axis);
  return position != nullptr && position->group == 0 ? position->ticks.rounded() : std::nullopt;
}

/// The outer sides along an axis, as far as they are there and placed; of two that say they are one
/// side, the first.
struct Sides {
  std::array<std::vector<Id>, 2> edges;  // by end: low, high
  std::array<std::optional<std::int64_t>, 2> at;
};

class OrderDoubts {
 public:
  OrderDoubts(const Part& part, const std::array<AxisSystem, 3>& systems, const Solution& solution,
              std::vector<Doubt>& doubts)
      : part_(part), solution_(solution), doubts_(doubts), own_(part.features.size()) {
    for (std::size_t axis = 0; axis < systems.size(); ++axis) {
      const AxisNetwork& network = systems[axis].network();
      const auto& positions = solution.positions.along(network.axis).positions;
      for (std::size_t node = 0; node < network.places.size(); ++node) {
        const std::uint32_t owner = network.owners[node];
        if (positions[node].group != 0 || network.isInner[node]) continue;
        own_[owner][axis] = positions[node].ticks.rounded();
      }
    }
  }

  void run() {
    for (const Feature& feature : part_.features) gatherSide(feature);
    for (const Axis axis : kAxes) checkSides(axis);
    for (std::size_t i = 0; i < part_.features.size(); ++i) gatherSpots(i);
    for (const Spot& spot : spots_) checkAgainstSides(spot);
    checkMeetings();
    for (std::size_t i = 0; i < rounds_.size(); ++i) {
      for (std::size_t j = i + 1; j < rounds_.size(); ++j) checkRounds(*rounds_[i], *rounds_[j]);
    }
    checkFaces();
    for (std::uint32_t i = 0; i < part_.understood.size(); ++i) checkWay(i);
  }

 private:
  void gatherSide(const Feature& feature);
  void checkSides(Axis axis);
  void gatherSpots(std::size_t number);
  void checkAgainstSides(const Spot& spot);
  void checkMeetings();
  void checkMeeting(const Spot& a, const Spot& b);
  void checkRounds(const Feature& a, const Feature& b);
  bool shareACentre(const Feature& a, const Feature& b) const;
  void checkFaces();
  void checkWay(std::uint32_t understanding);
  template <class At>
  bool liesOtherwise(const Understanding& what, const At& at, double margin) const;
  void add(DoubtTopic topic, std::optional<Axis> axis, std::vector<Id> places, std::int64_t by = 0);

  const Part& part_;
  const Solution& solution_;
  std::vector<Doubt>& doubts_;
  std::vector<Along> own_;  // by feature: where its own place is
  std::array<Sides, 3> sides_;
  std::vector<Spot> spots_;
  std::deque<Id> inner_;                // places of spots that no feature bears
  std::vector<const Feature*> rounds_;  // those on corners, of a known radius
};

void OrderDoubts::add(DoubtTopic topic, std::optional<Axis> axis, std::vector<Id> places,
                      std::int64_t by) {
  Doubt doubt{{topic, {}, axis, {}, std::move(places)}};
  if (by != 0) {
    doubt.by = Length::ticks(by);
    doubt.about = "by " + writePlain(*doubt.by, Unit::inch);
  }
  doubts_.push_back(std::move(doubt));
}

void OrderDoubts::gatherSide(const Feature& feature) {
  const auto* edge = feature.as<kind::Edge>();
  if (edge == nullptr || !edge->side) return;
  Sides& sides = sides_[static_cast<std::size_t>(edge->axis)];
  const std::size_t end = outward(*edge->side) > 0 ? 1 : 0;
  sides.edges[end].push_back(feature.id);
}

void OrderDoubts::checkSides(Axis axis) {
  Sides& sides = sides_[static_cast<std::size_t>(axis)];
  for (const std::size_t end : {0u, 1u}) {
    std::vector<Id>& edges = sides.edges[end];
    if (edges.empty()) continue;
    std::sort(edges.begin(), edges.end());
    if (edges.size() > 1) add(DoubtTopic::sameSide, axis, edges);
    sides.at[end] = placedAt(solution_, edges.front(), axis);
  }
  if (!sides.at[0] || !sides.at[1] || *sides.at[0] < *sides.at[1]) return;
  add(DoubtTopic::crossedSides, axis, {sides.edges[0].front(), sides.edges[1].front()},
      *sides.at[0] - *sides.at[1]);
  // What lies outside of them can't be told.
  sides.at = {};
}

void OrderDoubts::gatherSpots(std::size_t number) {
  const Feature& feature = part_.features[number];
  const Drilled* drilled = feature.drilled();
  const auto* slot = feature.as<kind::Slot>();
  const auto* edge = feature.as<kind::Edge>();
  const auto* round = feature.as<kind::Round>();
  if (round != nullptr && round->radius && round->corner.size() == 2) {
    // It takes as much of both its edges as its radius.
    spots_.push_back({&feature, &feature.id, {}, round->radius->value.ticks()});
    rounds_.push_back(&feature);
  }
  if (drilled == nullptr && slot == nullptr && (edge == nullptr || edge->side)) return;
  const bool within = drilled == nullptr || !feature.is<kind::Hole>();
  const std::optional<Lettered>& across = slot != nullptr ? slot->width : diameterOf(feature);
  const auto add = [&](const Id& place, const Along& at) {
    Spot spot{&feature, &place, at};
    if (edge == nullptr && across) spot.across = across->value.ticks();
    if (drilled != nullptr && drilled->seatDiameter) {
      spot.seat = drilled->seatDiameter->value.ticks();
    }
    spots_.push_back(std::move(spot));
  };
  // A ring's own place is no hole, a row's is its first, a slot's its middle.
  if (!within || edge != nullptr) return add(feature.id, own_[number]);
  for (const Place& place : placesOf(feature)) {
    if (place.id == feature.id) continue;
    Along at;
    for (const Axis axis : kAxes) {
      if (!place.axes.has(axis)) continue;
      at[static_cast<std::size_t>(axis)] = placedAt(solution_, place.id, axis);
    }
    add(inner_.emplace_back(place.id), at);
  }
}

void OrderDoubts::checkAgainstSides(const Spot& spot) {
  const AxisSet axes = axesOf(*spot.feature);
  const std::int64_t across = std::max(spot.across.value_or(0), spot.seat);
  for (const Axis axis : kAxes) {
    const auto number = static_cast<std::size_t>(axis);
    const Sides& sides = sides_[number];
    if (!axes.has(axis)) continue;
    if (sides.at[0] && sides.at[1] && across > *sides.at[1] - *sides.at[0]) {
      add(DoubtTopic::breaksEdge, axis, {*spot.place}, across - (*sides.at[1] - *sides.at[0]));
      continue;
    }
    if (!spot.at[number]) continue;
    for (const std::size_t end : {0u, 1u}) {
      if (!sides.at[end]) continue;
      // How far inside this side the place lies.
      const std::int64_t inside =
          end == 0 ? *spot.at[number] - *sides.at[0] : *sides.at[1] - *spot.at[number];
      const Id& side = sides.edges[end].front();
      if (inside < 0) {
        add(DoubtTopic::outside, axis, {*spot.place, side}, -inside);
      } else if (across > 0 && 2 * inside < across) {
        add(DoubtTopic::breaksEdge, axis, {*spot.place, side}, across / 2 - inside);
      }
    }
  }
}

// Holes of one face in bands as wide as the largest, each set against those near by that come after
// it in its own band and those of the next.
void OrderDoubts::checkMeetings() {
  for (const Face face :
       {Face::top, Face::bottom, Face::front, Face::back, Face::left, Face::right}) {
    const auto axes = axesIn(face);
    const auto along = static_cast<std::size_t>(axes[0]);
    const auto up = static_cast<std::size_t>(axes[1]);
    std::vector<const Spot*> spots;
    std::int64_t widest = 1;
    for (const Spot& spot : spots_) {
      if (spot.feature->face != face || !spot.across || !spot.at[along] || !spot.at[up]) continue;
      if (spot.feature->drilled() == nullptr) continue;
      spots.push_back(&spot);
      widest = std::max(widest, *spot.across);
    }
    struct Hole {
      std::int64_t band = 0;
      std::int64_t up = 0;
      const Spot* spot = nullptr;
    };
    std::vector<Hole> holes;
    for (const Spot* spot : spots) {
      holes.push_back({*spot->at[along] / widest, *spot->at[up], spot});
    }
    std::sort(holes.begin(), holes.end(), [](const Hole& a, const Hole& b) {
      return std::tie(a.band, a.up) < std::tie(b.band, b.up);
    });
    std::size_t next = 0;  // the first of the next band that is not too far below
    for (std::size_t i = 0; i < holes.size(); ++i) {
      const Hole& hole = holes[i];
      const auto isBefore = [&](const Hole& one) {
        return one.band <= hole.band || (one.band == hole.band + 1 && one.up <= hole.up - widest);
      };
      while (next < holes.size() && isBefore(holes[next])) ++next;
      const auto checkFrom = [&](std::size_t other, std::int64_t band) {
        for (; other < holes.size() && holes[other].band == band; ++other) {
          if (holes[other].up >= hole.up + widest) return;
          checkMeeting(*hole.spot, *holes[other].spot);
        }
      };
      checkFrom(i + 1, hole.band);
      checkFrom(next, hole.band + 1);
    }
  }
}

void OrderDoubts::checkMeeting(const Spot& a, const Spot& b) {
  const auto axes = axesIn(a.feature->face);
  const auto apart = [&](Axis axis) {
    const auto number = static_cast<std::size_t>(axis);
    return static_cast<long double>(*a.at[number] - *b.at[number]);
  };
  const long double least = (static_cast<long double>(*a.across) + *b.across) / 2;
  if (std::fabs(apart(axes[0])) >= least || std::fabs(apart(axes[1])) >= least) return;
  const long double distance = std::hypot(apart(axes[0]), apart(axes[1]));
  if (distance >= least) return;
  // Steps of one bore share a centre and differ in size.
  if (distance == 0 && (*a.across != *b.across || shareACentre(*a.feature, *b.feature))) return;
  std::vector<Id> places{*a.place, *b.place};
  std::sort(places.begin(), places.end());
  add(DoubtTopic::holesMeet, {}, std::move(places),
      std::max<std::int64_t>(1, std::llround(least - distance)));
}

// Two rounds at the ends of one edge.
void OrderDoubts::checkRounds(const Feature& a, const Feature& b) {
  const kind::Round& one = *a.as<kind::Round>();
  const kind::Round& other = *b.as<kind::Round>();
  for (const std::size_t i : {0u, 1u}) {
    const auto shared = std::find(other.corner.begin(), other.corner.end(), one.corner[i]);
    if (shared == other.corner.end()) continue;
    const Id& start = one.corner[1 - i];
    const Id& end = other.corner[shared == other.corner.begin() ? 1 : 0];
    const Feature* edge = part_.feature(start);
    if (start == end || edge == nullptr || !edge->is<kind::Edge>()) continue;
    const Axis axis = edge->as<kind::Edge>()->axis;
    const auto from = placedAt(solution_, start, axis), to = placedAt(solution_, end, axis);
    if (!from || !to) continue;
    const std::int64_t both = one.radius->value.ticks() + other.radius->value.ticks();
    const std::int64_t apart = std::abs(*to - *from);
    if (both <= apart) continue;
    add(DoubtTopic::holesMeet, {}, {std::min(a.id, b.id), std::max(a.id, b.id)}, both - apart);
  }
}

bool OrderDoubts::shareACentre(const Feature& a, const Feature& b) const {
  return std::any_of(part_.understood.begin(), part_.understood.end(), [&](const auto& what) {
    const auto names = [&](const Feature& one) {
      return std::find(what.of.begin(), what.of.end(), one.id) != what.of.end();
    };
    return what.kind == UnderstandingKind::concentric && names(a) && names(b);
  });
}

void OrderDoubts::checkFaces() {
  if (part_.setups.empty()) return;
  std::set<Face> up;
  for (const Setup& setup : part_.setups) up.insert(setup.face);
  for (const Feature& feature : part_.features) {
    const bool isCut = feature.drilled() != nullptr || feature.is<kind::Slot>();
    if (isCut && up.count(feature.face) == 0) add(DoubtTopic::noSetup, {}, {feature.id});
  }
}

// Whether places that are all there lie the other way round, or on the other side, than is said.
// `at` says where a place lies along an axis, where it is known; what lies within `margin` of the
// line between both ways tells nothing.
template <class At>
bool OrderDoubts::liesOtherwise(const Understanding& what, const At& at, double margin) const {
  if (what.kind == UnderstandingKind::beside) {
    const Feature* about = part_.feature(what.about);
    const auto* edge = about == nullptr ? nullptr : about->as<kind::Edge>();
    if (edge == nullptr || !what.side || edge->axis != axisAcross(*what.side)) return false;
    const auto line = at(what.about, edge->axis);
    return line && std::any_of(what.of.begin(), what.of.end(), [&](const Id& id) {
             const auto point = at(id, edge->axis);
             return point && (*point - *line) * outward(*what.side) < -margin;
           });
  }
  const Feature* owner = what.of.empty() ? nullptr : part_.feature(what.of[0]);
  if (owner == nullptr || what.of.size() != 3 || !what.sense) return false;
  const auto axes = axesIn(owner->face);
  const auto own = ownDirections(owner->face);
  std::array<std::array<long double, 2>, 3> points{};
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (const std::size_t k : {0u, 1u}) {
      const auto along = at(what.of[i], axes[k]);
      if (!along) return false;
      points[i][k] = *along * own[k];
    }
  }
  const auto& [a, b, c] = points;
  const long double across = b[0] - a[0], up = b[1] - a[1];
  const long double turned = across * (c[1] - a[1]) - up * (c[0] - a[0]);
  const long double least = margin * std::hypot(across, up);
  return *what.sense == Sense::clockwise ? turned > least : turned < -least;
}

void OrderDoubts::checkWay(std::uint32_t understanding) {
  const Understanding& what = part_.understood[understanding];
  const bool isChoice =
      what.kind == UnderstandingKind::wayRound || what.kind == UnderstandingKind::beside;
  if (!isChoice) return;
  const auto placed = [&](const Id& id, Axis axis) -> std::optional<long double> {
    const auto ticks = placedAt(solution_, id, axis);
    return ticks ? std::optional(static_cast<long double>(*ticks)) : std::nullopt;
  };
  const auto traced = [&](const Id& id, Axis axis) -> std::optional<long double> {
    const Feature* feature = part_.feature(id);
    const auto at = feature == nullptr ? std::nullopt : tracedAlong(*feature, axis);
    return at ? std::optional<long double>(*at) : std::nullopt;
  };
  // Inches: three deviations of where two places are traced.
  constexpr double kTracedAside = 0.06;
  const bool isWrong = liesOtherwise(what, placed, 0);
  // The choice alone puts them there, and nothing else would tell that it is the mirror image.
  if (!isWrong && !liesOtherwise(what, traced, kTracedAside)) return;
  Doubt doubt{{isWrong ? DoubtTopic::wrongWay : DoubtTopic::offTrace, {}, {}, {}, what.of}};
  if (isWrong) doubt.key.kind = what.kind;
  doubt.source = Source{SourceKind::understanding, understanding};
  if (!what.about.empty()) doubt.nearby = {what.about};
  doubts_.push_back(std::move(doubt));
}

// ---- millimetres on an inch print ----

// A decimal in inches that would be a whole number of 64ths if it were in millimetres: 12.7.
bool looksMetric(const Lettered& figure) {
  if (figure.unit != Unit::inch || figure.lettering != Lettering::decimal) return false;
  const Int128 tenfold = Int128{figure.value.ticks()} * 10;
  constexpr std::int64_t k64th = Length::kTicksPerInch / 64;
  // 1/16 in and more: below it decimals of inches come out so by chance.
  return tenfold % 254 == 0 && (tenfold / 254) % k64th == 0 && tenfold / 254 >= 4 * k64th;
}

struct MetricSizes : NoMembers {
  std::string found;

  void size(std::string_view, const std::optional<Lettered>& figure, SizeSymbol) {
    if (figure && found.empty() && looksMetric(*figure)) found = figure->text;
  }
  void depth(std::string_view, const Depth& depth) { size({}, depth.length, SizeSymbol::none); }
};

void addMetric(const Part& part, std::vector<Doubt>& doubts) {
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    const Reading& reading = part.readings[i];
    if (reading.kind == ReadingKind::angle || !looksMetric(reading.figure)) continue;
    doubts.push_back({{DoubtTopic::millimetres, {}, {}, {reading.id}}, reading.figure.text});
    doubts.back().source = Source{SourceKind::reading, i};
  }
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    MetricSizes sizes;
    visitMembers(part.features[i], sizes);
    if (sizes.found.empty()) continue;
    doubts.push_back({{DoubtTopic::millimetres, {}, {}, {}, {part.features[i].id}}, sizes.found});
    doubts.back().source = Source{SourceKind::feature, i};
  }
}

}  // namespace

void addOrderDoubts(const Part& part, const std::array<AxisSystem, 3>& systems,
                    const Solution& solution, std::vector<Doubt>& doubts) {
  OrderDoubts(part, systems, solution, doubts).run();
  addMetric(part, doubts);
}

}  // namespace inchwright
