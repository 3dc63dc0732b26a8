#include <algorithm>

#include "core/part/check.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

bool liesIn(Face face, Axis axis) {
  const auto axes = axesIn(face);
  return std::find(axes.begin(), axes.end(), axis) != axes.end();
}

std::string article(FeatureKind kind) {
  const bool vowel = kind == FeatureKind::edge || kind == FeatureKind::arc;
  return (vowel ? "an " : "a ") + std::string(nameOf(kind));
}

Fault checkEdge(const Feature& feature, const Pointer& pointer) {
  if (!feature.axis) {
    return faultAt(pointer, "an edge needs its `axis`: the one it lies square to");
  }
  if (feature.side && axisAcross(*feature.side) != *feature.axis) {
    return faultAt(pointer / "side", "the " + std::string(nameOf(*feature.side)) +
                                         " side lies across " +
                                         std::string(nameOf(axisAcross(*feature.side))) +
                                         ", not across " + std::string(nameOf(*feature.axis)));
  }
  return std::nullopt;
}

/// Slots and rows run along one axis of their face.
Fault checkRun(const Feature& feature, const Pointer& pointer) {
  const std::string subject = article(feature.kind);
  if (!feature.axis) return faultAt(pointer, subject + " needs the `axis` it runs along");
  if (!liesIn(feature.face, *feature.axis)) {
    return faultAt(pointer / "axis", subject + " runs along an axis of its face, and " +
                                         std::string(nameOf(*feature.axis)) +
                                         " does not lie in the " +
                                         std::string(nameOf(feature.face)) + " face");
  }
  return std::nullopt;
}

Fault checkHoles(const Feature& feature, const Pointer& pointer) {
  const int least = feature.countedBySpaces ? 2 : 1;
  if (feature.holes >= least && feature.holes <= kMostHoles) return std::nullopt;
  const bool row = feature.kind == FeatureKind::row;
  const std::string member = feature.countedBySpaces ? "spaces" : "holes";
  return faultAt(feature.holes == 0 ? pointer : pointer / member,
                 row ? "a row says how many `holes` or how many `spaces` it has: 1 to 1000 holes"
                     : "a ring says how many `holes` it has: 1 to 1000");
}

Fault checkCorner(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  if (feature.corner.size() != 2) {
    return faultAt(pointer, "a `corner` is that of two edges: name two");
  }
  AxisSet seen;
  for (std::size_t i = 0; i < 2; ++i) {
    const Pointer here = pointer / i;
    const std::optional<PlaceIndex::Entry> entry = index.find(feature.corner[i]);
    if (!entry) return faultAt(here, "there is no `" + feature.corner[i] + "`");
    if (entry->feature->kind != FeatureKind::edge || !entry->feature->axis) {
      return faultAt(here, "a corner is that of two edges, and `" + feature.corner[i] + "` is " +
                               article(entry->feature->kind));
    }
    const Axis axis = *entry->feature->axis;
    if (!liesIn(feature.face, axis) || seen.has(axis)) {
      return faultAt(here, "the two edges of a corner lie one across each axis of the face");
    }
    seen.add(axis);
  }
  return std::nullopt;
}

Fault checkRound(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  if (feature.side && !liesIn(feature.face, axisAcross(*feature.side))) {
    return faultAt(pointer / "side", "the outermost point of a round lies in its face: the " +
                                         std::string(nameOf(*feature.side)) +
                                         " side is no side of the " +
                                         std::string(nameOf(feature.face)) + " face");
  }
  if (!feature.about.empty() && !feature.corner.empty()) {
    return faultAt(pointer, "a round is struck `about` a place or rounds off a `corner`, not both");
  }
  if (!feature.corner.empty()) return checkCorner(feature, index, pointer / "corner");
  if (feature.about.empty()) return std::nullopt;
  const Pointer here = pointer / "about";
  const std::optional<PlaceIndex::Entry> entry = index.find(feature.about);
  if (!entry) return faultAt(here, "there is no `" + feature.about + "`");
  if (entry->feature == &feature) return faultAt(here, "a round can't be struck about itself");
  for (Axis axis : axesIn(feature.face)) {
    if (entry->axes.has(axis)) continue;
    return faultAt(here, "`" + feature.about + "` has no place along " + std::string(nameOf(axis)) +
                             ": name a hole or a point of this face");
  }
  return std::nullopt;
}

Fault checkThrough(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  for (std::size_t i = 0; i < feature.through.size(); ++i) {
    if (index.find(feature.through[i])) continue;
    return faultAt(pointer / "through" / i, "there is no `" + feature.through[i] + "`");
  }
  return std::nullopt;
}

struct Size {
  const char* key;
  const std::optional<Lettered>* figure;
  SizeSymbol refused;
};

Fault checkSizes(const Feature& feature, const Pointer& pointer) {
  const Size sizes[] = {
      {"diameter", &feature.diameter, SizeSymbol::radius},
      {"depth", &feature.depth.length, SizeSymbol::none},
      {"seat_diameter", &feature.seatDiameter, SizeSymbol::radius},
      {"seat_depth", &feature.seatDepth, SizeSymbol::none},
      {"width", &feature.width, SizeSymbol::none},
      {"length", &feature.length, SizeSymbol::none},
      {"pitch", &feature.pitch, SizeSymbol::none},
      {"pcd", &feature.pitchDiameter, SizeSymbol::radius},
      {"radius", &feature.radius, SizeSymbol::diameter},
  };
  for (const Size& size : sizes) {
    const std::optional<Lettered>& figure = *size.figure;
    if (!figure) continue;
    const Pointer here = pointer / size.key;
    if (figure->value <= Length()) return faultAt(here, "a size is greater than 0");
    if (size.refused != SizeSymbol::none && figure->symbol == size.refused) {
      return faultAt(here, size.refused == SizeSymbol::radius
                               ? "a diameter is wanted here, and this is lettered as a radius"
                               : "a radius is wanted here, and this is lettered as a diameter");
    }
  }
  if (feature.width && feature.length && feature.length->value <= feature.width->value) {
    return faultAt(
        pointer / "length",
        "a slot is longer over all than it is wide: is this its length between centres?");
  }
  if (!feature.depth.through && !feature.depth.length) {
    return faultAt(pointer / "depth", "a depth is `through` or a length");
  }
  return std::nullopt;
}

Fault checkTraced(const Feature& feature, const Pointer& pointer) {
  const std::size_t count = feature.traced.size();
  if (count == 0) return std::nullopt;
  const Pointer here = pointer / "traced";
  const bool curve = feature.kind == FeatureKind::line || feature.kind == FeatureKind::arc;
  if (feature.kind == FeatureKind::edge && count != 1) {
    return faultAt(here, "an edge is traced by one value, along its axis");
  }
  if (curve && (count % 2 != 0 || count > 6)) {
    return faultAt(here, "a line or arc is traced by one to three points of two values each");
  }
  if (feature.kind != FeatureKind::edge && !curve && count != 2) {
    return faultAt(here,
                   article(feature.kind) + " is traced by two values, along the axes of its face");
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (plainDecimal(feature.traced[i])) continue;
    return faultAt(here / i, "a traced value is a plain decimal in inches, such as `0.41`");
  }
  return std::nullopt;
}

Fault checkKind(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  switch (feature.kind) {
    case FeatureKind::edge:
      return checkEdge(feature, pointer);
    case FeatureKind::slot:
      return checkRun(feature, pointer);
    case FeatureKind::row:
      if (Fault fault = checkRun(feature, pointer)) return fault;
      return checkHoles(feature, pointer);
    case FeatureKind::ring:
      return checkHoles(feature, pointer);
    case FeatureKind::round:
      return checkRound(feature, index, pointer);
    case FeatureKind::line:
    case FeatureKind::arc:
      return checkThrough(feature, index, pointer);
    case FeatureKind::hole:
    case FeatureKind::point:
      break;
  }
  return std::nullopt;
}

}  // namespace

Fault checkFeature(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKind(feature, index, pointer)) return fault;
  if (Fault fault = checkSizes(feature, pointer)) return fault;
  return checkTraced(feature, pointer);
}

}  // namespace inchwright
