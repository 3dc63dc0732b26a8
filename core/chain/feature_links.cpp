#include "core/chain/feature_links.h"

#include <array>

#include "core/chain/polar.h"

namespace inchwright {
namespace {

Id sub(const Feature& feature, std::size_t number) {
  return feature.id + std::to_string(number);
}

std::size_t holesIn(const Feature& feature) {
  return placesOf(feature).size() - 1;
}

// +1 or −1: how a face's own two axes, seen from outside, run against the part's.
std::array<int, 2> ownDirections(Face face) {
  switch (face) {
    case Face::bottom:
      return {1, -1};
    case Face::back:
    case Face::left:
      return {-1, 1};
    case Face::top:
    case Face::front:
    case Face::right:
      break;
  }
  return {1, 1};
}

void addRow(NetworkBuilder& builder, const Feature& row, Source source) {
  const kind::Row& shape = *row.as<kind::Row>();
  const std::size_t holes = holesIn(row);
  if (holes == 0) return;
  builder.link(row.id, sub(row, 1), 0, true, source);
  const bool across = shape.axis != builder.axis();
  for (std::size_t i = 2; i <= holes; ++i) {
    if (across) {
      builder.link(sub(row, i - 1), sub(row, i), 0, true, source);
    } else if (shape.pitch) {
      builder.link(sub(row, i - 1), sub(row, i), shape.pitch->value.ticks(), shape.pitch->exact,
                   source);
    }
  }
  if (across || shape.pitch) return;
  std::vector<Id> of;
  for (std::size_t i = 1; i <= holes; ++i) of.push_back(sub(row, i));
  builder.relateEqual(of, source);
}

void addRing(NetworkBuilder& builder, const Feature& ring, Source source) {
  const kind::Ring& shape = *ring.as<kind::Ring>();
  const Lettered* diameter = pitchDiameterOf(builder.part(), ring);
  const std::size_t holes = holesIn(ring);
  if (diameter == nullptr || !shape.firstAngle || diameter->value.ticks() < 0 || holes == 0) return;
  const bool along = axesIn(ring.face)[0] == builder.axis();
  const int direction = ownDirections(ring.face)[along ? 0 : 1];
  const int sense = shape.sense == Sense::anticlockwise ? 1 : -1;
  const auto n = static_cast<std::int64_t>(holes);
  for (std::int64_t k = 0; k < n; ++k) {
    const Int128 turned = Int128{sense} * k * 360 * Angle::kPerDegree;
    const Int128 angle = Int128{shape.firstAngle->value.microArcseconds()} * n + turned;
    // n is at least 1 and the sum far below 128 bits: there always is such a fraction.
    const auto [cosine, sine] =
        polarOffset(diameter->value.ticks(), Rational::of(angle, n).value_or(Rational()));
    const Offset& offset = along ? cosine : sine;
    builder.link(ring.id, sub(ring, static_cast<std::size_t>(k) + 1), direction * offset.ticks,
                 offset.exact && diameter->exact, source);
  }
}

void addSlot(NetworkBuilder& builder, const Feature& slot, Source source) {
  const kind::Slot& shape = *slot.as<kind::Slot>();
  if (shape.axis != builder.axis()) {
    builder.link(slot.id, sub(slot, 1), 0, true, source);
    builder.link(slot.id, sub(slot, 2), 0, true, source);
    return;
  }
  if (!shape.length || !shape.width) return;
  const auto apart = shape.length->value.minus(shape.width->value);
  if (!apart) return;
  const auto half = Rational::of(apart->ticks(), 2);
  const auto ticks = half ? half->rounded() : std::nullopt;
  if (!ticks) return;
  const bool exact = half->isWhole() && shape.length->exact && shape.width->exact;
  builder.link(slot.id, sub(slot, 1), -*ticks, exact, source);
  builder.link(slot.id, sub(slot, 2), *ticks, exact, source);
}

void addRound(NetworkBuilder& builder, const Feature& round, Source source) {
  const kind::Round& shape = *round.as<kind::Round>();
  const std::int64_t radius = shape.radius ? shape.radius->value.ticks() : 0;
  const bool exact = !shape.radius || shape.radius->exact;
  if (!shape.about.empty()) {
    const bool tangent = shape.side && axisAcross(*shape.side) == builder.axis();
    if (tangent && !shape.radius) return;
    builder.link(shape.about, round.id, tangent ? outward(*shape.side) * radius : 0,
                 !tangent || exact, source);
    return;
  }
  if (!shape.radius) return;
  for (const Id& edge : shape.corner) {
    const auto node = builder.node(edge);
    const Feature* feature = node ? builder.featureOf(*node) : nullptr;
    // Without a side nothing says on which hand of the edge the metal lies; it stays loose.
    const std::optional<Side> side = feature ? sideOf(*feature) : std::nullopt;
    if (!side) continue;
    builder.link(edge, round.id, -outward(*side) * radius, exact, source);
  }
}

}  // namespace

NetworkBuilder::NetworkBuilder(const Part& part, Axis axis) : part_(part) {
  network_.axis = axis;
  for (std::uint32_t i = 0; i < part.features.size(); ++i) {
    for (const Place& place : placesOf(part.features[i])) {
      for (const Axis one : place.axes) {
        if (one != axis) continue;
        nodes_.emplace(place.id, static_cast<std::uint32_t>(network_.places.size()));
        network_.places.push_back(place.id);
        features_.push_back(i);
      }
    }
  }
}

std::optional<std::uint32_t> NetworkBuilder::node(const Id& place) const {
  const auto found = nodes_.find(place);
  if (found == nodes_.end()) return std::nullopt;
  return found->second;
}

const Feature* NetworkBuilder::featureOf(std::uint32_t node) const {
  return &part_.features[features_[node]];
}

void NetworkBuilder::link(const Id& from, const Id& to, std::int64_t ticks, bool exact,
                          Source source) {
  const auto a = node(from);
  const auto b = node(to);
  if (a && b) network_.links.push_back({*a, *b, ticks, exact, source});
}

void NetworkBuilder::relate(const std::vector<std::pair<Id, int>>& terms, Source source) {
  AxisRelation relation{{}, source};
  for (const auto& [id, coefficient] : terms) {
    const auto found = node(id);
    if (!found) return;
    relation.terms.push_back({*found, coefficient});
  }
  network_.relations.push_back(std::move(relation));
}

void NetworkBuilder::relateEqual(const std::vector<Id>& of, Source source) {
  const int last = static_cast<int>(of.size()) - 1;
  for (int i = 1; i < last; ++i) {
    relate({{of.front(), last - i}, {of[static_cast<std::size_t>(i)], -last}, {of.back(), i}},
           source);
  }
}

const Lettered* pitchDiameterOf(const Part& part, const Feature& ring) {
  const auto* shape = ring.as<kind::Ring>();
  if (shape && shape->pitchDiameter) return &*shape->pitchDiameter;
  const Lettered* found = nullptr;
  const Id* by = nullptr;
  for (const Reading& reading : part.readings) {
    if (reading.kind != ReadingKind::pcd || reading.from != ring.id) continue;
    if (by != nullptr && *by < reading.id) continue;
    by = &reading.id;
    found = &reading.figure;
  }
  return found;
}

void addFeatureLinks(NetworkBuilder& builder, std::uint32_t feature) {
  const Feature& one = builder.part().features[feature];
  const Source source{SourceKind::feature, feature};
  switch (one.kind()) {
    case FeatureKind::row:
      return addRow(builder, one, source);
    case FeatureKind::ring:
      return addRing(builder, one, source);
    case FeatureKind::slot:
      return addSlot(builder, one, source);
    case FeatureKind::round:
      return addRound(builder, one, source);
    default:
      return;
  }
}

}  // namespace inchwright
