#include "core/chain/network.h"

#include <algorithm>

#include "core/chain/feature_links.h"
#include "core/graph/forest.h"

namespace inchwright {
namespace {

using Numbers = std::vector<std::uint32_t>;

void addReading(NetworkBuilder& builder, const Reading& reading, Source source) {
  if (reading.kind != ReadingKind::along || !builder.takes(reading.axis)) return;
  builder.link(reading.axis, builder.place(reading.from), builder.place(reading.to),
               reading.figure.value.ticks(), reading.figure.exact, source);
}

// All of `of` at one coordinate: each against the first, so that a loop through the
// understanding passes at most two of its links.
void addInLine(NetworkBuilder& builder, Axis axis, const Numbers& of, Source source) {
  for (std::size_t i = 1; i < of.size(); ++i) builder.link(axis, of[0], of[i], 0, true, source);
}

// The first mirrors the last, the second the last but one, and so on inwards; one that is left
// over in the middle lies on the centre itself.
void addSymmetric(NetworkBuilder& builder, Axis axis, const Numbers& of, std::uint32_t about,
                  Source source) {
  std::size_t low = 0;
  std::size_t high = of.size();
  while (low < high && low < --high) {
    builder.relate(axis, {{of[low], 1}, {of[high], 1}, {about, -2}}, source);
    ++low;
  }
  if (of.size() % 2 == 1) builder.link(axis, about, of[of.size() / 2], 0, true, source);
}

Numbers placesNamed(const NetworkBuilder& builder, const std::vector<Id>& ids) {
  Numbers numbers;
  numbers.reserve(ids.size());
  for (const Id& id : ids) numbers.push_back(builder.place(id));
  return numbers;
}

// The axis across an edge by its id; empty for anything else.
std::optional<Axis> axisAcrossEdge(const Part& part, const Id& id) {
  const Feature* feature = part.feature(id);
  const auto* edge = feature ? feature->as<kind::Edge>() : nullptr;
  return edge ? std::optional(edge->axis) : std::nullopt;
}

// Mirrored about an edge: alike on both sides of it, and level with each other along the rest.
void addMirrored(NetworkBuilder& builder, Axis axis, const Numbers& of, const Id& about,
                 Source source) {
  const std::optional<Axis> across = axisAcrossEdge(builder.part(), about);
  if (!across) return;
  if (*across == axis) {
    builder.relate(axis, {{of[0], 1}, {of[1], 1}, {builder.place(about), -2}}, source);
  } else {
    builder.link(axis, of[0], of[1], 0, true, source);
  }
}

void addOnEdge(NetworkBuilder& builder, Axis axis, const Numbers& of, const Id& about,
               Source source) {
  if (axisAcrossEdge(builder.part(), about) != axis) return;
  for (const std::uint32_t place : of) {
    builder.link(axis, builder.place(about), place, 0, true, source);
  }
}

void addUnderstanding(NetworkBuilder& builder, const Understanding& what, Source source) {
  const auto speaksOf = [&](Axis axis) {
    const bool every = what.kind == UnderstandingKind::concentric || !what.axis;
    return builder.takes(axis) && (every || *what.axis == axis);
  };
  if (std::none_of(kAxes.begin(), kAxes.end(), speaksOf)) return;
  const Numbers of = placesNamed(builder, what.of);
  const Numbers between = placesNamed(builder, what.between);
  for (const Axis axis : kAxes) {
    if (!speaksOf(axis)) continue;
    switch (what.kind) {
      case UnderstandingKind::inLine:
        if (what.axis) addInLine(builder, axis, of, source);
        break;
      case UnderstandingKind::concentric:
        addInLine(builder, axis, of, source);
        break;
      case UnderstandingKind::midway:
        if (of.size() != 1 || between.size() != 2) break;
        builder.relate(axis, {{between[0], 1}, {of[0], -2}, {between[1], 1}}, source);
        break;
      case UnderstandingKind::symmetric:
        if (what.axis) {
          addSymmetric(builder, axis, of, builder.place(what.about), source);
        } else {
          addMirrored(builder, axis, of, what.about, source);
        }
        break;
      case UnderstandingKind::on:
        addOnEdge(builder, axis, of, what.about, source);
        break;
      case UnderstandingKind::equal:
        if (what.axis) builder.relateEqual(axis, of, source);
        break;
      case UnderstandingKind::tangent:
      case UnderstandingKind::parallel:
      case UnderstandingKind::square:
      case UnderstandingKind::wayRound:
      case UnderstandingKind::beside:
        break;
    }
  }
}

}  // namespace

std::optional<std::uint32_t> AxisNetwork::node(std::string_view place) const {
  const auto found = std::lower_bound(places.begin(), places.end(), place);
  if (found == places.end() || *found != place) return std::nullopt;
  return static_cast<std::uint32_t>(found - places.begin());
}

namespace {

void addAll(NetworkBuilder& builder) {
  const Part& part = builder.part();
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    addReading(builder, part.readings[i], {SourceKind::reading, i});
  }
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) {
    addUnderstanding(builder, part.understood[i], {SourceKind::understanding, i});
  }
  for (const std::uint32_t i : builder.featuresOfSeveral()) addFeatureLinks(builder, i);
}

}  // namespace

Result<std::array<AxisNetwork, 3>> networksOf(const Part& part) {
  NetworkBuilder builder(part);
  addAll(builder);
  std::array<AxisNetwork, 3> networks;
  for (const Axis axis : kAxes) {
    auto network = builder.take(axis);
    if (!network) return network.error();
    networks[static_cast<std::size_t>(axis)] = *std::move(network);
  }
  return networks;
}

Result<AxisNetwork> networkOf(const Part& part, Axis axis) {
  NetworkBuilder builder(part, axis);
  addAll(builder);
  return builder.take(axis);
}

const Id& idOf(const Part& part, const Source& source) {
  if (source.kind == SourceKind::reading) return part.readings[source.index].id;
  if (source.kind == SourceKind::feature) return part.features[source.index].id;
  return part.understood[source.index].of.front();
}

const Lettered* figureOf(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading ? &part.readings[source.index].figure : nullptr;
}

}  // namespace inchwright
