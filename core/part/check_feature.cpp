#include <algorithm>
#include <utility>
#include <variant>

#include "core/base/overloaded.h"
#include "core/part/check.h"
#include "core/part/feature_members.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

bool liesIn(Face face, Axis axis) {
  const auto axes = axesIn(face);
  return std::find(axes.begin(), axes.end(), axis) != axes.end();
}

std::string article(FeatureKind kind) {
  const bool vowel =
      kind == FeatureKind::edge || kind == FeatureKind::arc || kind == FeatureKind::outside;
  return (vowel ? "an " : "a ") + std::string(nameOf(kind));
}

Fault checkEdge(const kind::Edge& edge, const Pointer& pointer) {
  if (!edge.side || axisAcross(*edge.side) == edge.axis) return std::nullopt;
  return faultAt(pointer / "side", "the " + std::string(nameOf(*edge.side)) + " side lies across " +
                                       std::string(nameOf(axisAcross(*edge.side))) +
                                       ", not across " + std::string(nameOf(edge.axis)));
}

/// Between two places of its face, or along an axis, or on a circle.
Fault checkSlot(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  const kind::Slot& slot = *feature.as<kind::Slot>();
  if (!slot.ends.empty() || !slot.about.empty()) {
    if (slot.axis) {
      return faultAt(pointer / "axis",
                     "a slot runs along an `axis`, or has its `ends` or an `about`, not both");
    }
    if (!slot.ends.empty() && slot.length) {
      return faultAt(pointer / "length", "a slot's `ends` say how long it is: leave `length` out");
    }
  }
  if (!slot.ends.empty()) {
    const Pointer here = pointer / "ends";
    if (slot.ends.size() != 2) return faultAt(here, "a slot has two `ends`: name two places");
    if (Fault fault = checkAllKnown(slot.ends, index, here)) return fault;
    for (std::size_t i = 0; i < 2; ++i) {
      if (isNamedBy(feature, slot.ends[i])) {
        return faultAt(here / i, "a slot can't end at itself: name two other places");
      }
      for (Axis axis : axesIn(feature.face)) {
        if (Fault fault = checkPlace(slot.ends[i], axis, index, here / i)) return fault;
      }
    }
  }
  if (Fault fault = checkAllKnown(slot.meets, index, pointer / "meets")) return fault;
  for (std::size_t i = 0; i < slot.meets.size(); ++i) {
    if (!isNamedBy(feature, slot.meets[i])) continue;
    return faultAt(pointer / "meets" / i, "a slot does not run into itself");
  }
  if (slot.about.empty()) return std::nullopt;
  if (isNamedBy(feature, slot.about)) {
    return faultAt(pointer / "about", "a slot can't be curved about itself");
  }
  for (Axis axis : axesIn(feature.face)) {
    if (Fault fault = checkPlace(slot.about, axis, index, pointer / "about")) return fault;
  }
  return std::nullopt;
}

/// `H7` or the like: letters, then a grade; or figures that are limits.
bool isLimits(const std::string& text) {
  if (text.find('/') != std::string::npos) {
    const Result<Lettered> figure = readLength(text);
    return figure.ok() && figure->tolerance.has_value();
  }
  const std::size_t letters =
      text.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz");
  return letters != std::string::npos && letters >= 1 && letters <= 2 &&
         text.size() - letters <= 2 &&
         text.find_first_not_of("0123456789", letters) == std::string::npos;
}

Fault checkDrilled(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  const Drilled& drilled = *feature.drilled();
  if (!drilled.limits.empty() && !isLimits(drilled.limits)) {
    return faultAt(pointer / "limits",
                   "limits are a class such as `H7` or two figures such as `0.2490/0.2493`");
  }
  if (drilled.mate && (drilled.mate->part.empty() || drilled.mate->place.empty())) {
    return faultAt(pointer / "mate", "a mate is the `place` of another `part`: say both");
  }
  if (Fault fault = checkAllKnown(drilled.meets, index, pointer / "meets")) return fault;
  for (std::size_t i = 0; i < drilled.meets.size(); ++i) {
    if (!isNamedBy(feature, drilled.meets[i])) continue;
    return faultAt(pointer / "meets" / i, "a hole does not run into itself");
  }
  return std::nullopt;
}

/// Slots and rows run along one axis of their face.
Fault checkRun(const Feature& feature, const Pointer& pointer) {
  const std::string subject = article(feature.kind());
  const std::optional<Axis> axis = axisOf(feature);
  if (!axis) return faultAt(pointer, subject + " needs the `axis` it runs along");
  if (liesIn(feature.face, *axis)) return std::nullopt;
  return faultAt(pointer / "axis", subject + " runs along an axis of its face, and " +
                                       std::string(nameOf(*axis)) + " does not lie in the " +
                                       std::string(nameOf(feature.face)) + " face");
}

Fault checkRing(const kind::Ring& ring, const Pointer& pointer) {
  if (ring.holes >= 1 && ring.holes <= kMostHoles) return std::nullopt;
  return faultAt(pointer / "holes", "a ring says how many `holes` it has: 1 to 1000");
}

Fault checkRow(const kind::Row& row, const Pointer& pointer) {
  if (row.holes >= (row.countedBySpaces ? 2 : 1) && row.holes <= kMostHoles) return std::nullopt;
  return faultAt(pointer / (row.countedBySpaces ? "spaces" : "holes"),
                 "a row says how many `holes` or how many `spaces` it has: 1 to 1000 holes");
}

Fault checkCorner(const kind::Round& round, Face face, const PlaceIndex& index,
                  const Pointer& pointer) {
  if (round.corner.size() != 2) {
    return faultAt(pointer, "a `corner` is that of two edges: name two");
  }
  AxisSet seen;
  for (std::size_t i = 0; i < 2; ++i) {
    const Pointer here = pointer / i;
    const std::optional<PlaceIndex::Entry> entry = index.find(round.corner[i]);
    if (!entry) return faultAt(here, "there is no `" + round.corner[i] + "`");
    const auto* edge = entry->feature->as<kind::Edge>();
    if (!edge) {
      return faultAt(here, "a corner is that of two edges, and `" + round.corner[i] + "` is " +
                               article(entry->feature->kind()));
    }
    if (!liesIn(face, edge->axis) || seen.has(edge->axis)) {
      return faultAt(here, "the two edges of a corner lie one across each axis of the face");
    }
    seen.add(edge->axis);
  }
  return std::nullopt;
}

Fault checkRound(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  const kind::Round& round = *feature.as<kind::Round>();
  if (round.side && !liesIn(feature.face, axisAcross(*round.side))) {
    return faultAt(pointer / "side", "the outermost point of a round lies in its face: the " +
                                         std::string(nameOf(*round.side)) +
                                         " side is no side of the " +
                                         std::string(nameOf(feature.face)) + " face");
  }
  if (!round.about.empty() && !round.corner.empty()) {
    return faultAt(pointer, "a round is struck `about` a place or rounds off a `corner`, not both");
  }
  if (!round.corner.empty()) return checkCorner(round, feature.face, index, pointer / "corner");
  if (round.about.empty()) return std::nullopt;
  const Pointer here = pointer / "about";
  const std::optional<PlaceIndex::Entry> entry = index.find(round.about);
  if (!entry) return faultAt(here, "there is no `" + round.about + "`");
  if (entry->feature == &feature) return faultAt(here, "a round can't be struck about itself");
  for (Axis axis : axesIn(feature.face)) {
    if (entry->axes.has(axis)) continue;
    return faultAt(here, "`" + round.about + "` has no place along " + std::string(nameOf(axis)) +
                             ": name a hole or a point of this face");
  }
  return std::nullopt;
}

Fault checkEdgeAcrossX(const Id& id, const PlaceIndex& index, const Pointer& pointer) {
  const std::optional<PlaceIndex::Entry> entry = index.find(id);
  if (!entry)
    return faultAt(pointer, id.empty() ? "an id is missing here" : "there is no `" + id + "`");
  const auto* edge = entry->feature->as<kind::Edge>();
  if (edge && edge->axis == Axis::x) return std::nullopt;
  return faultAt(pointer, "turned work lies between edges across x, and `" + id + "` is none");
}

/// Turned work lies between two edges across X, or at one.
Fault checkTurned(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  if (const std::vector<Id>* between = betweenOf(feature)) {
    const Pointer here = pointer / "between";
    if (between->size() != 2 || (*between)[0] == (*between)[1]) {
      return faultAt(here, article(feature.kind()) + " lies `between` two edges: name them");
    }
    for (std::size_t i = 0; i < 2; ++i) {
      if (Fault fault = checkEdgeAcrossX((*between)[i], index, here / i)) return fault;
    }
    const auto* taper = feature.as<kind::Taper>();
    if (!taper || taper->largeAt.empty() || taper->largeAt == (*between)[0] ||
        taper->largeAt == (*between)[1]) {
      return std::nullopt;
    }
    return faultAt(pointer / "large_at", "the large end of a taper is at one of its two edges");
  }
  const auto* chamfer = feature.as<kind::Chamfer>();
  return checkEdgeAcrossX(chamfer ? chamfer->at : feature.as<kind::CentreDrill>()->at, index,
                          pointer / "at");
}

Fault checkThrough(const std::vector<Id>& through, const PlaceIndex& index,
                   const Pointer& pointer) {
  for (std::size_t i = 0; i < through.size(); ++i) {
    if (index.find(through[i])) continue;
    return faultAt(pointer / "through" / i, "there is no `" + through[i] + "`");
  }
  return std::nullopt;
}

/// The sizes and depths of a feature, whatever its kind.
class SizeCheck : public NoMembers {
 public:
  explicit SizeCheck(const Pointer& pointer) : pointer_(pointer) {}

  void size(std::string_view key, const std::optional<Lettered>& figure, SizeSymbol refused) {
    if (fault_ || !figure) return;
    if (figure->value <= Length()) {
      fault_ = faultAt(pointer_ / key, "a size is greater than 0");
    } else if (refused != SizeSymbol::none && figure->symbol == refused) {
      fault_ = faultAt(pointer_ / key,
                       refused == SizeSymbol::radius
                           ? "a diameter is wanted here, and this is lettered as a radius"
                           : "a radius is wanted here, and this is lettered as a diameter");
    }
  }
  void depth(std::string_view key, const Depth& depth) {
    if (!fault_ && !depth.through && !depth.length) {
      fault_ = faultAt(pointer_ / key, "a depth is `through` or a length");
    }
    size(key, depth.length, SizeSymbol::none);
  }
  Fault take() && { return std::move(fault_); }

 private:
  const Pointer& pointer_;
  Fault fault_;
};

Fault checkSizes(const Feature& feature, const Pointer& pointer) {
  SizeCheck sizes(pointer);
  visitMembers(feature, sizes);
  if (Fault fault = std::move(sizes).take()) return fault;
  const auto* slot = feature.as<kind::Slot>();
  if (slot && slot->width && slot->length && slot->length->value <= slot->width->value) {
    return faultAt(
        pointer / "length",
        "a slot is longer over all than it is wide: is this its length between centres?");
  }
  return std::nullopt;
}

Fault checkTraced(const Feature& feature, const Pointer& pointer) {
  const std::size_t count = feature.traced.size();
  if (count == 0) return std::nullopt;
  const Pointer here = pointer / "traced";
  if (feature.is<kind::Edge>()) {
    if (count != 1) return faultAt(here, "an edge is traced by one value, along its axis");
  } else if (feature.is<kind::Line>()) {
    if (count != 4) return faultAt(here, "a line is traced by two points of two values each");
  } else if (feature.is<kind::Arc>()) {
    // Six: three points on it, as older documents have them.
    if (count != 2 && count != 3 && count != 6) {
      return faultAt(here, "an arc is traced by its centre's two values, and its radius as drawn");
    }
  } else if (count != 2) {
    return faultAt(
        here, article(feature.kind()) + " is traced by two values, along the axes of its face");
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (plainDecimal(feature.traced[i])) continue;
    return faultAt(here / i, "a traced value is a plain decimal in inches, such as `0.41`");
  }
  return std::nullopt;
}

Fault checkKind(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  return std::visit(
      Overloaded{
          [&](const kind::Edge& edge) { return checkEdge(edge, pointer); },
          [&](const kind::Slot& slot) {
            if (Fault fault = checkSlot(feature, index, pointer)) return fault;
            return slot.ends.empty() && slot.about.empty() ? checkRun(feature, pointer) : Fault();
          },
          [&](const kind::Row& row) {
            if (Fault fault = checkRun(feature, pointer)) return fault;
            return checkRow(row, pointer);
          },
          [&](const kind::Ring& ring) { return checkRing(ring, pointer); },
          [&](const kind::Round&) { return checkRound(feature, index, pointer); },
          [&](const kind::Line& line) { return checkThrough(line.through, index, pointer); },
          [&](const kind::Arc& arc) { return checkThrough(arc.through, index, pointer); },
          [](const kind::Hole&) { return Fault(); },
          [](const kind::Point&) { return Fault(); },
          [&](const auto&) { return checkTurned(feature, index, pointer); },
      },
      feature.shape);
}

}  // namespace

Fault checkFeature(const Feature& feature, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKind(feature, index, pointer)) return fault;
  if (Fault fault = checkSizes(feature, pointer)) return fault;
  if (feature.drilled()) {
    if (Fault fault = checkDrilled(feature, index, pointer)) return fault;
  }
  return checkTraced(feature, pointer);
}

}  // namespace inchwright
