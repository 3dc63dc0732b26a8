#include "core/place/carriers.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

// Traces this near to where things lie need no shift: they were taken from the part's own corner.
constexpr double kSameCorner = 0.06;

double inches(const Rational& ticks) {
  return ticks.toDouble() / static_cast<double>(Length::kTicksPerInch);
}

double middleOf(std::vector<double> values) {
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  return *half;
}

}  // namespace

Carriers::Carriers(const Part& part, const std::array<AxisSystem, 3>& systems,
                   const std::array<std::vector<Position>, 3>& positions, std::array<Axis, 2> axes,
                   bool withChains)
    : part_(part), systems_(systems), positions_(positions), withChains_(withChains) {
  plane_.axes = axes;
  for (const Feature& feature : part.features) features_[feature.id] = &feature;
  for (const std::size_t which : {0U, 1U}) fitTracing(which);
}

bool Carriers::isHere(const Feature& feature) const {
  return feature.is<kind::Edge>() || axesIn(feature.face) == plane_.axes;
}

const Feature* Carriers::ownerOf(std::string_view place) const {
  const auto found = features_.find(place);
  if (found != features_.end()) return found->second;
  const std::size_t end = place.find_last_not_of("0123456789");
  if (end == std::string_view::npos || end + 1 == place.size()) return nullptr;
  const auto owner = features_.find(place.substr(0, end + 1));
  if (owner == features_.end() || !isNamedBy(*owner->second, place)) return nullptr;
  return owner->second;
}

int Carriers::handOf(const Feature& feature) const {
  switch (feature.face) {
    case Face::bottom:
    case Face::back:
    case Face::left:
      return -1;
    default:
      return 1;
  }
}

double Carriers::ownXOf(const Feature& feature) const {
  return feature.face == Face::back || feature.face == Face::left ? std::numbers::pi : 0;
}

std::optional<std::uint32_t> Carriers::pointAt(std::uint32_t x, std::uint32_t y) const {
  const auto& points = plane_.problem.points;
  const auto found = std::find_if(points.begin(), points.end(), [&](const PlacedPoint& point) {
    return point.x == x && point.y == y;
  });
  if (found == points.end()) return std::nullopt;
  return static_cast<std::uint32_t>(found - points.begin());
}

void Carriers::nearestFirst(std::vector<Row>& rows) {
  startFromTraces();
  std::stable_sort(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    const auto off = [&](const Row& row) {
      return std::abs(problem().equations.evaluate(row, problem().start).residual);
    };
    return off(a) < off(b);
  });
}

std::uint32_t Carriers::variable(VariableKind kind, double start, bool isTraced) {
  problem().kinds.push_back(kind);
  problem().start.push_back(start);
  problem().isTraced.push_back(isTraced);
  return problem().equations.addVariable();
}

std::uint32_t Carriers::quantity(const Along& along) {
  return problem().equations.addQuantity(along.constant, along.terms);
}

std::uint32_t Carriers::correction(std::uint32_t reading) {
  const auto found = plane_.figures.find(reading);
  if (found != plane_.figures.end()) return found->second;
  const std::uint32_t made = variable(VariableKind::figure, 0, false);
  plane_.figures.emplace(reading, made);
  return made;
}

std::uint32_t Carriers::figure(std::uint32_t reading, double value, double factor) {
  const Term term{correction(reading), factor};
  return problem().equations.addQuantity(value, std::span(&term, 1));
}

Carriers::Along Carriers::along(std::size_t which, std::uint32_t node) {
  const Axis axis = plane_.axes[which];
  const AxisSystem& system = systems_[static_cast<std::size_t>(axis)];
  const Position& position = positions_[static_cast<std::size_t>(axis)][node];
  Along out;
  if (position.group == 0) {
    out.constant = inches(position.ticks);
  } else {
    out.constant = inches(system.constantOf(node));
    for (const AxisSystem::Term& term : system.termsOf(node)) {
      auto found = plane_.variables[which].find(term.variable);
      if (found == plane_.variables[which].end()) {
        found = plane_.variables[which]
                    .emplace(term.variable, variable(VariableKind::along, 0, false))
                    .first;
      }
      out.terms.push_back({found->second, term.factor.toDouble()});
    }
  }
  if (!withChains_) return out;
  const auto members = system.membersOf(node);
  if (!members) return out;
  for (const auto& [link, factor] : members->links) {
    const Source& source = system.network().links[link].source;
    if (source.kind != SourceKind::reading) continue;
    if (part_.readings[source.index].kind != ReadingKind::along) continue;
    out.terms.push_back({correction(source.index), factor.toDouble()});
  }
  return out;
}

std::optional<std::uint32_t> Carriers::point(const Id& id) {
  const auto found = plane_.points.find(id);
  if (found != plane_.points.end()) return found->second;
  std::array<std::uint32_t, 2> at{};
  for (const std::size_t which : {0U, 1U}) {
    const auto node = systems_[static_cast<std::size_t>(plane_.axes[which])].node(id);
    if (!node) return std::nullopt;
    at[which] = quantity(along(which, *node));
  }
  const auto number = static_cast<std::uint32_t>(problem().points.size());
  PlacedPoint made{at[0], at[1], {}};
  const Feature* owner = ownerOf(id);
  // A trace is of the feature itself, not of its holes or ends; of a round it is the centre.
  const bool isOwn = owner != nullptr && (owner->id == id || owner->is<kind::Round>());
  if (isOwn && !(owner->is<kind::Round>() && owner->id == id && sideOf(*owner))) {
    const auto u = tracedAt(0, *owner), v = tracedAt(1, *owner);
    if (u && v) made.traced = PlanePoint{*u, *v};
  }
  problem().points.push_back(made);
  plane_.pointIds.push_back(id);
  plane_.points.emplace(id, number);
  return number;
}

std::vector<PlanePoint> Carriers::tracedLine(const Feature& feature) const {
  if (feature.traced.size() < 4 || !frame_[0] || !frame_[1]) return {};
  std::array<double, 4> values{};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto value = plainDecimal(feature.traced[i]);
    if (!value) return {};
    const auto& [shift, scale] = *frame_[i % 2];
    values[i] = (*value - shift) / scale;
  }
  return {{values[0], values[1]}, {values[2], values[3]}};
}

std::optional<std::uint32_t> Carriers::line(const Id& id) {
  const auto found = plane_.lines.find(id);
  if (found != plane_.lines.end()) return found->second;
  const auto owner = features_.find(id);
  if (owner == features_.end() || !isHere(*owner->second)) return std::nullopt;
  PlacedLine made;
  if (const auto* edge = owner->second->as<kind::Edge>()) {
    const bool isAcrossFirst = edge->axis == plane_.axes[0];
    if (!isAcrossFirst && edge->axis != plane_.axes[1]) return std::nullopt;
    const auto node = systems_[static_cast<std::size_t>(edge->axis)].node(id);
    if (!node) return std::nullopt;
    Along offset = along(isAcrossFirst ? 0 : 1, *node);
    made.direction = constant(isAcrossFirst ? std::numbers::pi / 2 : 0);
    if (isAcrossFirst) {
      offset.constant = -offset.constant;
      for (Term& term : offset.terms) term.factor = -term.factor;
    }
    made.offset = quantity(offset);
  } else if (owner->second->is<kind::Line>()) {
    made.traced = tracedLine(*owner->second);
    const bool isTraced = made.traced.size() == 2;
    double direction = 0, offset = 0;
    if (isTraced) {
      const PlanePoint a = made.traced[0], b = made.traced[1];
      direction = std::atan2(b.y - a.y, b.x - a.x);
      offset = std::cos(direction) * a.y - std::sin(direction) * a.x;
    }
    const Term turn{variable(VariableKind::direction, direction, isTraced), 1};
    const Term shift{variable(VariableKind::offset, offset, isTraced), 1};
    made.direction = problem().equations.addQuantity(0, std::span(&turn, 1));
    made.offset = problem().equations.addQuantity(0, std::span(&shift, 1));
  } else {
    return std::nullopt;
  }
  const auto number = static_cast<std::uint32_t>(problem().lines.size());
  problem().lines.push_back(made);
  plane_.lines.emplace(id, number);
  return number;
}

// What stands on the feature, else what a reading gives, else a variable for a round or an arc.
std::optional<std::uint32_t> Carriers::radius(const Feature& feature, const Id& id) {
  if (const auto& own = radiusOf(feature)) return constant(own->value.toInches());
  if (feature.drilled() != nullptr && !feature.is<kind::Ring>()) {
    if (const auto& own = diameterOf(feature)) return constant(own->value.toInches() / 2);
  }
  if (const auto* ring = feature.as<kind::Ring>()) {
    if (ring->pitchDiameter) return constant(ring->pitchDiameter->value.toInches() / 2);
  }
  for (std::uint32_t i = 0; i < part_.readings.size(); ++i) {
    const Reading& reading = part_.readings[i];
    if (reading.from != id) continue;
    const double value = reading.figure.value.toInches();
    if (reading.kind == ReadingKind::radius) return figure(i, value);
    if (reading.kind == ReadingKind::diameter && !feature.is<kind::Ring>()) {
      return figure(i, value / 2, 0.5);
    }
    if (reading.kind == ReadingKind::pcd) return figure(i, value / 2, 0.5);
  }
  if (!feature.is<kind::Round>() && !feature.is<kind::Arc>()) return std::nullopt;
  double start = 0.5;
  const bool isTraced = feature.traced.size() >= 3;
  if (isTraced) start = plainDecimal(feature.traced[2]).value_or(start);
  const Term term{variable(VariableKind::radius, start, isTraced), 1};
  return problem().equations.addQuantity(0, std::span(&term, 1));
}

std::optional<PlacedCircle> Carriers::circle(const Id& id) {
  const auto found = plane_.circles.find(id);
  if (found != plane_.circles.end()) return found->second;
  const Feature* owner = ownerOf(id);
  if (owner == nullptr || !isHere(*owner) || owner->is<kind::Edge>()) return std::nullopt;
  const auto centre = point(owner->is<kind::Round>() ? owner->id + "0" : id);
  if (!centre) return std::nullopt;
  const auto size = radius(*owner, owner->id);
  if (!size) return std::nullopt;
  const PlacedPoint& at = problem().points[*centre];
  const PlacedCircle made{at.x, at.y, *size};
  plane_.circles.emplace(id, made);
  return made;
}

void Carriers::add(const Row& row, std::vector<Row> others, Source source, double spareWithin) {
  const std::uint32_t number = problem().equations.addRow(row);
  problem().rows.push_back(number);
  problem().choices.push_back(std::move(others));
  problem().spareWithin.push_back(spareWithin);
  plane_.sources.push_back(source);
}

std::optional<double> Carriers::tracedAt(std::size_t which, const Feature& feature) const {
  if (!frame_[which]) return std::nullopt;
  const auto traced = tracedAlong(feature, plane_.axes[which]);
  if (!traced) return std::nullopt;
  const auto& [shift, scale] = *frame_[which];
  return (*traced - shift) / scale;
}

// Where the tracing counts from, by what is placed already: from the part's lower corner if that
// fits, else wherever most of it agrees.
void Carriers::fitTracing(std::size_t which) {
  const auto axis = static_cast<std::size_t>(plane_.axes[which]);
  std::vector<std::pair<double, double>> seen;  // position, traced
  std::optional<double> corner;
  for (const Feature& feature : part_.features) {
    const auto node = systems_[axis].node(feature.id);
    if (!node || positions_[axis][*node].group != 0) continue;
    const double position = inches(positions_[axis][*node].ticks);
    const auto* edge = feature.as<kind::Edge>();
    if (edge != nullptr && edge->side && outward(*edge->side) < 0) corner = position;
    if (!isHere(feature) || feature.is<kind::Round>()) continue;
    const auto traced = tracedAlong(feature, plane_.axes[which]);
    if (traced) seen.push_back({position, *traced});
  }
  if (seen.empty()) {
    frame_[which] = std::pair(-corner.value_or(0), 1.0);
    return;
  }
  std::vector<double> shifts;
  for (const auto& [position, traced] : seen) shifts.push_back(traced - position);
  const double middle = middleOf(shifts);
  if (corner && std::abs(middle + *corner) <= kSameCorner) {
    frame_[which] = std::pair(-*corner, 1.0);
  } else {
    frame_[which] = std::pair(middle, 1.0);
  }
  // A copy may be stretched: told by what lies well apart.
  const auto [low, high] = std::minmax_element(seen.begin(), seen.end());
  const double spread = high->first - low->first;
  double worst = 0;
  for (const auto& [position, traced] : seen) {
    worst = std::max(worst, std::abs(traced - position - frame_[which]->first));
  }
  if (seen.size() < 3 || spread < 1 || worst < kSameCorner) return;
  const double scale = (high->second - low->second) / spread;
  if (std::abs(scale - 1) > 0.1) return;
  std::vector<double> scaled;
  for (const auto& [position, traced] : seen) scaled.push_back(traced - scale * position);
  frame_[which] = std::pair(middleOf(scaled), scale);
}

// A group begins where its traced places are, on an average.
void Carriers::startFromTraces() {
  PlaneProblem& all = problem();
  const std::vector<double> still(all.kinds.size());
  std::vector<double> sum(all.kinds.size()), count(all.kinds.size());
  const auto take = [&](std::uint32_t quantity, double traced) {
    const Term* moved = nullptr;
    for (const Term& term : all.equations.termsOf(quantity)) {
      if (all.kinds[term.variable] == VariableKind::figure) continue;
      if (moved != nullptr) return;
      moved = &term;
    }
    if (moved == nullptr || all.kinds[moved->variable] != VariableKind::along) return;
    const double constant = all.equations.valueOf(quantity, still);
    sum[moved->variable] += (traced - constant) / moved->factor;
    ++count[moved->variable];
  };
  for (const PlacedPoint& point : all.points) {
    if (!point.traced) continue;
    take(point.x, point.traced->x);
    take(point.y, point.traced->y);
  }
  for (std::size_t i = 0; i < all.kinds.size(); ++i) {
    if (count[i] == 0) continue;
    all.start[i] = sum[i] / count[i];
    all.isTraced[i] = true;
  }
}

PartPlane Carriers::take() {
  startFromTraces();
  return std::move(plane_);
}

}  // namespace inchwright
