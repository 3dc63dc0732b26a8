#include <algorithm>

#include "core/part/check.h"

namespace inchwright {
namespace {

constexpr std::size_t kAnyNumber = 1'000'000;

/// What a kind of understanding has to say.
struct Wanted {
  std::size_t least;  ///< of `of`
  std::size_t most;
  bool about;
  const char* advice;
};

Wanted wantedBy(const Understanding& it) {
  switch (it.kind) {
    case UnderstandingKind::inLine:
      if (it.axis) return {2, kAnyNumber, false, "in line says an `axis` and two or more `of`"};
      return {3, kAnyNumber, false,
              "in line says an `axis` and two or more `of`, or three or more without one"};
    case UnderstandingKind::midway:
      return {1, 1, false, "midway says one `of` and two `between`, along an `axis` or along both"};
    case UnderstandingKind::symmetric:
      return {2, 2, true,
              "symmetric says two `of` and `about`: a place along an `axis`, else a "
              "line or an edge"};
    case UnderstandingKind::equal:
      return {it.by == EqualBy::radius ? 2U : 3U, kAnyNumber, false,
              "equal says three or more `of`, in order, along an `axis` or `by` spacing or radius"};
    case UnderstandingKind::concentric:
      return {2, kAnyNumber, false, "concentric says two or more `of`"};
    case UnderstandingKind::tangent:
      return {2, 2, false, "tangent says two `of`"};
    case UnderstandingKind::parallel:
      return {2, kAnyNumber, false, "parallel says two or more `of`"};
    case UnderstandingKind::on:
      return {1, kAnyNumber, true,
              "on says the places `of` and what they lie on, `about`: a line, an edge, a round, an "
              "arc or a ring"};
    case UnderstandingKind::wayRound:
      return {3, 3, false, "way_round says three `of` in turn, and the `sense`"};
    case UnderstandingKind::beside:
      return {1, kAnyNumber, true,
              "beside says the places `of`, the line or edge `about` and the `side`"};
    case UnderstandingKind::square:
      break;
  }
  return {2, 2, false, "square says two `of`"};
}

/// Each kind has its members and no others.
Fault checkMembers(const Understanding& it, const Pointer& pointer) {
  const Wanted wanted = wantedBy(it);
  if (it.of.size() < wanted.least || it.of.size() > wanted.most) {
    return faultAt(pointer / "of", wanted.advice);
  }
  const bool midway = it.kind == UnderstandingKind::midway;
  if (it.between.size() != (midway ? 2U : 0U)) return faultAt(pointer / "between", wanted.advice);
  if (it.about.empty() == wanted.about) return faultAt(pointer / "about", wanted.advice);
  const bool equal = it.kind == UnderstandingKind::equal;
  if (equal ? it.axis.has_value() == it.by.has_value() : it.by.has_value()) {
    return faultAt(pointer / "by", wanted.advice);
  }
  if (it.touch && it.kind != UnderstandingKind::tangent) {
    return faultAt(pointer / "touch", wanted.advice);
  }
  if (it.sense.has_value() != (it.kind == UnderstandingKind::wayRound)) {
    return faultAt(pointer / "sense", wanted.advice);
  }
  if (it.side.has_value() != (it.kind == UnderstandingKind::beside)) {
    return faultAt(pointer / "side", wanted.advice);
  }
  return std::nullopt;
}

/// Every id is there and named once.
Fault checkNames(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkAllKnown(it.of, index, pointer / "of")) return fault;
  if (Fault fault = checkAllKnown(it.between, index, pointer / "between")) return fault;
  if (!it.about.empty()) {
    if (Fault fault = checkKnown(it.about, index, pointer / "about")) return fault;
  }
  for (const Id& id : it.of) {
    const bool again = std::find(it.between.begin(), it.between.end(), id) != it.between.end();
    if (again || id == it.about) return faultAt(pointer / "of", "`" + id + "` is named twice here");
  }
  return std::nullopt;
}

Fault checkAlong(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    if (Fault f = checkPlace(it.of[i], *it.axis, index, pointer / "of" / i)) return f;
  }
  for (std::size_t i = 0; i < it.between.size(); ++i) {
    if (Fault f = checkPlace(it.between[i], *it.axis, index, pointer / "between" / i)) return f;
  }
  if (it.about.empty()) return std::nullopt;
  return checkPlace(it.about, *it.axis, index, pointer / "about");
}

Fault checkConcentric(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  const AxisSet first = index.find(it.of[0])->axes;
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    if (index.find(it.of[i])->axes.shared(first) >= 2) continue;
    return faultAt(pointer / "of" / i,
                   "concentric ones share a centre in one face, and `" + it.of[i] + "` has none");
  }
  return std::nullopt;
}

bool isStraight(const Feature& feature) {
  return feature.is<kind::Line>() || feature.is<kind::Edge>();
}

Fault checkTangent(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  bool straight = false;
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    const Feature& feature = *index.find(it.of[i])->feature;
    straight = straight || isStraight(feature);
    if (isStraight(feature) || isCurve(feature)) continue;
    return faultAt(pointer / "of" / i, "`" + it.of[i] +
                                           "` is no line, edge or curve that another "
                                           "could touch");
  }
  if (!it.touch || !straight) return std::nullopt;
  return faultAt(pointer / "touch", "`outside` or `inside` is said of two curves that touch");
}

/// Lines and edges; slots and rows have a direction too.
Fault checkDirected(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    const Feature& feature = *index.find(it.of[i])->feature;
    if (isStraight(feature) || axisOf(feature)) continue;
    return faultAt(pointer / "of" / i, "`" + it.of[i] + "` has no direction: name lines and edges");
  }
  return std::nullopt;
}

Fault checkOn(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkPoints(it.of, index, pointer / "of")) return fault;
  const PlaceIndex::Entry about = *index.find(it.about);
  if (isStraight(*about.feature)) {
    return checkStraight(it.about, it.of[0], index, pointer / "about");
  }
  const Feature& curve = *about.feature;
  if (about.isFeature &&
      (curve.is<kind::Round>() || curve.is<kind::Arc>() || curve.is<kind::Ring>())) {
    return std::nullopt;
  }
  return faultAt(pointer / "about", wantedBy(it).advice);
}

/// What is said of points of one face, with no axis.
Fault checkInPlane(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkPoints(it.of, index, pointer / "of")) return fault;
  for (std::size_t i = 0; i < it.between.size(); ++i) {
    Fault fault = checkPoints({it.of[0], it.between[i]}, index, pointer);
    if (!fault) continue;
    fault->place = (pointer / "between" / i).text();
    return fault;
  }
  if (it.about.empty()) return std::nullopt;
  return checkStraight(it.about, it.of[0], index, pointer / "about");
}

Fault checkRadii(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  for (std::size_t i = 0; i < it.of.size(); ++i) {
    if (isCurve(*index.find(it.of[i])->feature)) continue;
    return faultAt(pointer / "of" / i, "`" + it.of[i] + "` has no radius");
  }
  return std::nullopt;
}

}  // namespace

std::size_t leastNamed(const Understanding& understanding) {
  return wantedBy(understanding).least;
}

Fault checkUnderstanding(const Understanding& it, const PlaceIndex& index, const Pointer& pointer) {
  if (Fault fault = checkMembers(it, pointer)) return fault;
  if (Fault fault = checkNames(it, index, pointer)) return fault;
  switch (it.kind) {
    case UnderstandingKind::concentric:
      return checkConcentric(it, index, pointer);
    case UnderstandingKind::tangent:
      return checkTangent(it, index, pointer);
    case UnderstandingKind::parallel:
    case UnderstandingKind::square:
      return checkDirected(it, index, pointer);
    case UnderstandingKind::on:
      return checkOn(it, index, pointer);
    default:
      break;
  }
  if (it.axis) return checkAlong(it, index, pointer);
  if (it.by == EqualBy::radius) return checkRadii(it, index, pointer);
  return checkInPlane(it, index, pointer);
}

}  // namespace inchwright
