#include "core/tolerance/tolerance_network.h"

#include <algorithm>

#include "core/base/checked.h"
#include "core/part/place_index.h"

namespace inchwright {
namespace {

Error tooFar(const Part& part, const Source& source) {
  return {ErrorCode::outOfRange, "the lengths with their tolerances go beyond the exact range",
          idOf(part, source)};
}

// The tolerance a link carries, and none for what is exact by intent or by understanding.
std::optional<Tolerance> toleranceAt(const Part& part, const Source& source) {
  if (source.kind == SourceKind::reading) {
    return toleranceOf(part.readings[source.index].figure, part.general);
  }
  if (source.kind != SourceKind::feature) return std::nullopt;
  const auto* row = part.features[source.index].as<kind::Row>();
  return row && row->pitch ? row->pitch->tolerance : std::nullopt;
}

bool takesPart(const Part& part, const Source& source) {
  return source.kind != SourceKind::reading || !part.readings[source.index].figure.reference;
}

// The levels of a row across its axis are links of nothing; its pitch is one of some length.
bool isLevel(const AxisLink& link) {
  return link.source.kind == SourceKind::feature && link.ticks == 0;
}

}  // namespace

std::optional<std::uint32_t> ToleranceNetwork::node(std::string_view place) const {
  const auto found = std::lower_bound(places.begin(), places.end(), place);
  if (found == places.end() || *found != place) return std::nullopt;
  return static_cast<std::uint32_t>(found - places.begin());
}

Result<ToleranceNetwork> toleranceNetworkOf(const Part& part, Axis axis) {
  Result<AxisNetwork> made = networkOf(part, axis);
  if (!made) return made.error();
  AxisNetwork& ordered = *made;
  ToleranceNetwork network;
  network.axis = axis;
  network.places = std::move(ordered.places);
  network.relations = std::move(ordered.relations);
  network.links.reserve(ordered.links.size());
  for (const AxisLink& link : ordered.links) {
    if (!takesPart(part, link.source)) continue;
    TolerancedLink one{link.from,  link.to, link.ticks,  link.ticks,
                       link.ticks, false,   link.source, link.rest};
    const auto tolerance = isLevel(link) ? std::nullopt : toleranceAt(part, link.source);
    if (tolerance) {
      const auto low = addChecked(link.ticks, tolerance->lower.ticks());
      const auto high = addChecked(link.ticks, tolerance->upper.ticks());
      if (!low || !high) return tooFar(part, link.source);
      one.low = *low;
      one.high = *high;
      one.toleranced = true;
    }
    const auto magnitude = [](std::int64_t ticks) { return ticks < 0 ? -Int128{ticks} : ticks; };
    network.reach += std::max({magnitude(one.low), magnitude(one.high), magnitude(one.nominal)});
    if (network.reach >= kFarthestReach) return tooFar(part, link.source);
    network.links.push_back(one);
  }
  return network;
}

Result<std::uint32_t> nodeAlong(const Part& part, const ToleranceNetwork& network,
                                std::string_view place) {
  if (const auto node = network.node(place)) return *node;
  const Result<PlaceIndex> index = PlaceIndex::of(part);
  if (!index) return index.error();
  const std::string id(place);
  if (!index->find(place)) {
    return Error{ErrorCode::notFound, "the part has no place " + id, id};
  }
  return Error{ErrorCode::badRequest,
               id + " has no position along " + std::string(nameOf(network.axis)), id};
}

}  // namespace inchwright
