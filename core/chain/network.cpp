#include "core/chain/network.h"

#include <algorithm>

#include "core/chain/feature_links.h"
#include "core/graph/forest.h"

namespace inchwright {
namespace {

using Numbers = std::vector<std::uint32_t>;

void addReading(NetworkBuilder& builder, const Reading& reading, Source source) {
  if (reading.kind != ReadingKind::along) return;
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

void addUnderstanding(NetworkBuilder& builder, const Understanding& what, Source source) {
  const Numbers of = placesNamed(builder, what.of);
  const Numbers between = placesNamed(builder, what.between);
  for (const Axis axis : kAxes) {
    if (what.kind != UnderstandingKind::concentric && what.axis && *what.axis != axis) continue;
    switch (what.kind) {
      case UnderstandingKind::inLine:
      case UnderstandingKind::concentric:
        addInLine(builder, axis, of, source);
        break;
      case UnderstandingKind::midway:
        if (of.size() != 1 || between.size() != 2) break;
        builder.relate(axis, {{between[0], 1}, {of[0], -2}, {between[1], 1}}, source);
        break;
      case UnderstandingKind::symmetric:
        addSymmetric(builder, axis, of, builder.place(what.about), source);
        break;
      case UnderstandingKind::equal:
        builder.relateEqual(axis, of, source);
        break;
      case UnderstandingKind::tangent:
      case UnderstandingKind::parallel:
      case UnderstandingKind::square:
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

Result<std::array<AxisNetwork, 3>> networksOf(const Part& part) {
  NetworkBuilder builder(part);
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    addReading(builder, part.readings[i], {SourceKind::reading, i});
  }
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) {
    addUnderstanding(builder, part.understood[i], {SourceKind::understanding, i});
  }
  for (std::uint32_t i = 0; i < part.features.size(); ++i) addFeatureLinks(builder, i);
  return builder.take();
}

const Lettered* figureOf(const Part& part, const Source& source) {
  return source.kind == SourceKind::reading ? &part.readings[source.index].figure : nullptr;
}

}  // namespace inchwright
