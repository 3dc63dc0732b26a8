#include "core/chain/feature_links.h"

#include <array>

#include "core/chain/polar.h"
#include "core/graph/forest.h"

namespace inchwright {
namespace {

void addRow(NetworkBuilder& builder, std::uint32_t number, Axis axis) {
  const kind::Row& row = *builder.part().features[number].as<kind::Row>();
  const Source source{SourceKind::feature, number};
  const std::uint32_t places = builder.placeCount(number);
  const auto place = [&](std::uint32_t which) { return builder.placeOf(number, which); };
  if (places < 2) return;
  builder.link(axis, place(0), place(1), 0, true, source);
  const bool across = row.axis != axis;
  for (std::uint32_t i = 2; i < places && (across || row.pitch); ++i) {
    builder.link(axis, place(i - 1), place(i), across ? 0 : row.pitch->value.ticks(),
                 across || row.pitch->exact, source);
  }
  if (across || row.pitch) return;
  std::vector<std::uint32_t> of;
  for (std::uint32_t i = 1; i < places; ++i) of.push_back(place(i));
  builder.relateEqual(axis, of, source);
}

void addRing(NetworkBuilder& builder, std::uint32_t number) {
  const Feature& ring = builder.part().features[number];
  const kind::Ring& shape = *ring.as<kind::Ring>();
  const Source source{SourceKind::feature, number};
  const Lettered* diameter = pitchDiameterOf(builder.part(), ring);
  if (diameter == nullptr || !shape.firstAngle) return;
  const std::int64_t n = std::int64_t{builder.placeCount(number)} - 1;
  const auto [along, up] = axesIn(ring.face);
  const auto directions = ownDirections(ring.face);
  const int sense = shape.sense == Sense::anticlockwise ? 1 : -1;
  for (std::int64_t k = 0; k < n; ++k) {
    const Int128 turned = Int128{sense} * k * 360 * Angle::kPerDegree;
    const Int128 angle = Int128{shape.firstAngle->value.microArcseconds()} * n + turned;
    // n is at least 1 and the sum far below 128 bits: there always is such a fraction.
    const auto [cosine, sine] =
        polarOffset(diameter->value.ticks(), Rational::of(angle, n).value_or(Rational()));
    const std::uint32_t hole = builder.placeOf(number, static_cast<std::uint32_t>(k) + 1);
    const auto add = [&](Axis axis, int direction, const Offset& offset) {
      builder.link(axis, builder.placeOf(number, 0), hole,
                   direction > 0 ? offset.ticks : offset.ticks.negated(),
                   offset.exact && diameter->exact, source);
    };
    add(along, directions[0], cosine);
    add(up, directions[1], sine);
  }
}

void addSlot(NetworkBuilder& builder, std::uint32_t number, Axis axis) {
  const kind::Slot& slot = *builder.part().features[number].as<kind::Slot>();
  const Source source{SourceKind::feature, number};
  if (!slot.ends.empty()) {
    const std::uint32_t middle = builder.placeOf(number, 0);
    const std::uint32_t first = builder.placeOf(number, 1), second = builder.placeOf(number, 2);
    builder.link(axis, builder.place(slot.ends[0]), first, 0, true, source);
    builder.link(axis, builder.place(slot.ends[1]), second, 0, true, source);
    if (slot.about.empty()) {
      builder.relate(axis, {{first, 1}, {second, 1}, {middle, -2}}, source);
    }
    return;
  }
  if (!slot.axis) return;
  const auto ends = [&](const Rational& half, bool exact) {
    builder.link(axis, builder.placeOf(number, 0), builder.placeOf(number, 1), half.negated(),
                 exact, source);
    builder.link(axis, builder.placeOf(number, 0), builder.placeOf(number, 2), half, exact, source);
  };
  if (slot.axis != axis) return ends(Rational(), true);
  if (!slot.length || !slot.width) return;
  const auto apart = slot.length->value.minus(slot.width->value);
  const auto half = apart ? Rational::of(apart->ticks(), 2) : std::nullopt;
  if (half) ends(*half, slot.length->exact && slot.width->exact);
}

void addRound(NetworkBuilder& builder, std::uint32_t number, Axis axis) {
  const kind::Round& round = *builder.part().features[number].as<kind::Round>();
  const Source source{SourceKind::feature, number};
  const std::int64_t radius = round.radius ? round.radius->value.ticks() : 0;
  const bool exact = !round.radius || round.radius->exact;
  const bool tangent = round.side && axisAcross(*round.side) == axis;
  const std::uint32_t own = builder.placeOf(number, 0), centre = builder.placeOf(number, 1);
  if (!round.about.empty()) {
    builder.link(axis, builder.place(round.about), centre, 0, true, source);
    if (tangent && !round.radius) return;
    builder.link(axis, builder.place(round.about), own, tangent ? outward(*round.side) * radius : 0,
                 !tangent || exact, source);
    return;
  }
  const bool outermost = tangent && round.corner.empty();
  if (!outermost || round.radius) {
    builder.link(axis, centre, own, outermost ? outward(*round.side) * radius : 0,
                 !outermost || exact, source);
  }
  if (!round.radius) return;
  for (const Id& id : round.corner) {
    const std::uint32_t edge = builder.place(id);
    // Without a side nothing says on which hand of the edge the metal lies; it stays loose.
    const std::optional<Side> side = edge == kNone ? std::nullopt : sideOf(builder.ownerOf(edge));
    if (!side) continue;
    builder.link(axis, edge, own, -outward(*side) * radius, exact, source);
  }
}

}  // namespace

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
  if (one.is<kind::Ring>()) return addRing(builder, feature);
  for (const Axis axis : axesIn(one.face)) {
    if (one.is<kind::Row>()) addRow(builder, feature, axis);
    if (one.is<kind::Slot>()) addSlot(builder, feature, axis);
    if (one.is<kind::Round>()) addRound(builder, feature, axis);
  }
}

}  // namespace inchwright
