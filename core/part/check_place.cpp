#include <unordered_set>

#include "core/part/check.h"

namespace inchwright {

Fault checkKnown(const Id& id, const PlaceIndex& index, const Pointer& pointer) {
  if (index.find(id)) return std::nullopt;
  return faultAt(pointer, id.empty() ? "an id is missing here" : "there is no `" + id + "`");
}

Fault checkAllKnown(const std::vector<Id>& ids, const PlaceIndex& index, const Pointer& pointer) {
  std::unordered_set<std::string_view> seen;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (Fault fault = checkKnown(ids[i], index, pointer / i)) return fault;
    if (!seen.insert(ids[i]).second) {
      return faultAt(pointer / i, "`" + ids[i] + "` is named twice here");
    }
  }
  return std::nullopt;
}

Fault checkPlace(const Id& id, Axis axis, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkKnown(id, index, pointer)) return fault;
  const PlaceIndex::Entry entry = *index.find(id);
  if (entry.axes.has(axis)) return std::nullopt;
  if (entry.feature->is<kind::Line>()) {
    return faultAt(pointer, "`" + id +
                                "` is of kind `line`, which has no place of its own: name a point "
                                "of it");
  }
  return faultAt(pointer, "`" + id + "` has no place along " + std::string(nameOf(axis)));
}

Fault checkPoints(const std::vector<Id>& ids, const PlaceIndex& index, const Pointer& pointer) {
  AxisSet plane;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (Fault fault = checkKnown(ids[i], index, pointer / i)) return fault;
    const AxisSet axes = index.find(ids[i])->axes;
    if (axes.shared(axes) < 2) {
      return faultAt(pointer / i,
                     "`" + ids[i] + "` is no point of a face: name a hole, a point or the like");
    }
    if (i > 0 && axes.shared(plane) < 2) {
      return faultAt(pointer / i,
                     "`" + ids[i] + "` is no point of the face in which `" + ids[0] + "` lies");
    }
    plane = axes;
  }
  return std::nullopt;
}

Fault checkStraight(const Id& id, const Id& beside, const PlaceIndex& index,
                    const Pointer& pointer) {
  if (Fault fault = checkKnown(id, index, pointer)) return fault;
  const PlaceIndex::Entry entry = *index.find(id);
  const std::optional<PlaceIndex::Entry> point = index.find(beside);
  const auto* edge = entry.feature->as<kind::Edge>();
  if (!edge && !entry.feature->is<kind::Line>()) {
    return faultAt(pointer, "`" + id + "` is neither a line nor an edge");
  }
  if (!point) return std::nullopt;
  const auto axes = axesIn(entry.feature->face);
  // A line has no place of its own, but lies in its face.
  const auto own = axesIn(point->feature->face);
  const auto has = [&](Axis axis) {
    return point->feature->is<kind::Line>() ? axis == own[0] || axis == own[1]
                                            : point->axes.has(axis);
  };
  const bool together = edge ? has(edge->axis) : has(axes[0]) && has(axes[1]);
  if (together) return std::nullopt;
  return faultAt(pointer, "`" + id + "` does not lie in the face of `" + beside + "`");
}

bool hasRadius(const Feature& feature) {
  return isCurve(feature) || feature.is<kind::Outside>() || feature.is<kind::Bored>() ||
         feature.is<kind::Groove>();
}

bool isCurve(const Feature& feature) {
  return feature.drilled() != nullptr || feature.is<kind::Slot>() || feature.is<kind::Round>() ||
         feature.is<kind::Arc>();
}

}  // namespace inchwright
