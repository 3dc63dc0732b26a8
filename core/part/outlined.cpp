#include "core/part/outlined.h"

#include <set>

#include "core/part/check.h"
#include "core/part/name_table.h"

namespace inchwright {
namespace {

constexpr NameTable<3> kCurveWayNames{"rotary", "points", "filing_buttons"};
constexpr NameTable<4> kCutterAtNames{"right", "away", "left", "towards"};

Fault checkFollowed(const Id& id, Face face, const PlaceIndex& index, const Pointer& pointer) {
  const auto found = index.find(id);
  if (!found || found->feature->id != id) {
    return faultAt(pointer, "there is no feature `" + id + "` to follow");
  }
  const Feature& feature = *found->feature;
  if (const auto* edge = feature.as<kind::Edge>()) {
    if (edge->axis != axisAcross(face)) return std::nullopt;
    return faultAt(pointer, "the edge `" + id + "` does not cross this face");
  }
  if (feature.is<kind::Line>() || feature.is<kind::Round>() || feature.is<kind::Arc>()) {
    if (axesIn(feature.face) == axesIn(face)) return std::nullopt;
    return faultAt(pointer, "`" + id + "` lies in another face");
  }
  return faultAt(pointer,
                 "an outline follows edges, lines, rounds and arcs; `" + id + "` is none of them");
}

}  // namespace

std::string_view nameOf(CurveWay way) {
  return nameIn(kCurveWayNames, way);
}
std::string_view nameOf(CutterAt at) {
  return nameIn(kCutterAtNames, at);
}
std::optional<CurveWay> curveWayNamed(std::string_view name) {
  return valueNamed<CurveWay>(kCurveWayNames, name);
}
std::optional<CutterAt> cutterAtNamed(std::string_view name) {
  return valueNamed<CutterAt>(kCutterAtNames, name);
}

Fault checkOutlines(const Part& part, const PlaceIndex& index) {
  std::set<Face> outer;
  for (std::size_t i = 0; i < part.outlines.size(); ++i) {
    const GivenOutline& one = part.outlines[i];
    const Pointer pointer = Pointer() / "outlines" / i;
    if (one.follows.empty()) return faultAt(pointer / "follows", "an outline follows something");
    if (!one.isInner && !outer.insert(one.face).second) {
      return faultAt(pointer, "a face has one outer outline; the others are `inner`");
    }
    if (one.depth && !one.isInner) {
      return faultAt(pointer / "depth", "only an inner outline has a depth");
    }
    if (one.depth && one.depth->length && one.depth->length->value <= Length()) {
      return faultAt(pointer / "depth", "a depth is greater than 0");
    }
    for (std::size_t k = 0; k < one.follows.size(); ++k) {
      const Pointer here = pointer / "follows" / k;
      if (Fault fault = checkFollowed(one.follows[k], one.face, index, here)) return fault;
      if (one.follows.size() > 1 && one.follows[k] == one.follows[(k + 1) % one.follows.size()]) {
        return faultAt(here, "`" + one.follows[k] + "` can't follow itself");
      }
    }
  }
  return std::nullopt;
}

Fault checkCurves(const Setup& setup, const PlaceIndex& index, const Pointer& setupPointer) {
  constexpr int kMostPoints = 10'000;
  for (std::size_t i = 0; i < setup.curves.size(); ++i) {
    const GivenCurve& one = setup.curves[i];
    const Pointer pointer = setupPointer / "curves" / i;
    const auto found = index.find(one.of);
    const bool isRound = found && found->feature->id == one.of &&
                         (found->feature->is<kind::Round>() || found->feature->is<kind::Arc>());
    if (!isRound) return faultAt(pointer / "of", "a curve is cut of a round or an arc");
    if (one.cutter && one.cutter->value <= Length()) {
      return faultAt(pointer / "cutter", "a cutter's diameter is greater than 0");
    }
    if (one.ridge && one.ridge->value <= Length()) {
      return faultAt(pointer / "ridge", "a ridge is greater than 0");
    }
    if (one.count && (*one.count < 2 || *one.count > kMostPoints)) {
      return faultAt(pointer / "count", "from 2 to 10000 points, both ends counted");
    }
    if (one.overrun && (one.overrun->value < Angle() || one.overrun->value > Angle::degrees(180))) {
      return faultAt(pointer / "overrun", "an overrun is from 0 to 180 degrees");
    }
  }
  return std::nullopt;
}

}  // namespace inchwright
