#include "core/chain/network.h"

#include <limits>

#include "core/chain/feature_links.h"

namespace inchwright {
namespace {

void addReading(NetworkBuilder& builder, const Reading& reading, Source source) {
  if (reading.kind != ReadingKind::along || reading.axis != builder.axis()) return;
  builder.link(reading.from, reading.to, reading.figure.value.ticks(), reading.figure.exact,
               source);
}

// All of `of` at one coordinate: each against the first, so that a loop through the
// understanding passes at most two of its links.
void addInLine(NetworkBuilder& builder, const std::vector<Id>& of, Source source) {
  for (std::size_t i = 1; i < of.size(); ++i) builder.link(of[0], of[i], 0, true, source);
}

// The first mirrors the last, the second the last but one, and so on inwards; one that is left
// over in the middle lies on the centre itself.
void addSymmetric(NetworkBuilder& builder, const Understanding& what, Source source) {
  std::size_t low = 0;
  std::size_t high = what.of.size();
  while (low < high && low < --high) {
    builder.relate({{what.of[low], 1}, {what.of[high], 1}, {what.about, -2}}, source);
    ++low;
  }
  if (what.of.size() % 2 == 1) {
    builder.link(what.about, what.of[what.of.size() / 2], 0, true, source);
  }
}

void addUnderstanding(NetworkBuilder& builder, const Understanding& what, Source source) {
  if (what.kind != UnderstandingKind::concentric && what.axis && *what.axis != builder.axis()) {
    return;
  }
  switch (what.kind) {
    case UnderstandingKind::inLine:
    case UnderstandingKind::concentric:
      return addInLine(builder, what.of, source);
    case UnderstandingKind::midway:
      if (what.of.size() == 1 && what.between.size() == 2) {
        builder.relate({{what.between[0], 1}, {what.of[0], -2}, {what.between[1], 1}}, source);
      }
      return;
    case UnderstandingKind::symmetric:
      return addSymmetric(builder, what, source);
    case UnderstandingKind::equal:
      return builder.relateEqual(what.of, source);
    case UnderstandingKind::tangent:
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
      return;
  }
}

}  // namespace

Result<AxisNetwork> networkOf(const Part& part, Axis axis) {
  NetworkBuilder builder(part, axis);
  for (std::uint32_t i = 0; i < part.readings.size(); ++i) {
    addReading(builder, part.readings[i], {SourceKind::reading, i});
  }
  for (std::uint32_t i = 0; i < part.understood.size(); ++i) {
    addUnderstanding(builder, part.understood[i], {SourceKind::understanding, i});
  }
  for (std::uint32_t i = 0; i < part.features.size(); ++i) addFeatureLinks(builder, i);
  AxisNetwork network = builder.take();
  for (const AxisLink& link : network.links) {
    if (link.ticks == std::numeric_limits<std::int64_t>::min()) {
      return Error{ErrorCode::outOfRange, "a length does not fit the exact range",
                   network.places[link.to]};
    }
  }
  return network;
}

}  // namespace inchwright
