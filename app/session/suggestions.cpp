#include "app/session/suggestions.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace inchwright::app {
namespace {

constexpr double kSameSpot = 1.5 / 64;  // inches: two traces of one line

/// A feature of the face that may share a line with others: not the sides, and of a row or ring
/// only the whole.
bool isSpot(const Feature& feature, Face face) {
  const bool spot = feature.is<kind::Hole>() || feature.is<kind::Point>() ||
                    feature.is<kind::Ring>() || feature.is<kind::Round>();
  return spot && feature.face == face;
}

bool near(const Feature& a, const Feature& b, Axis axis) {
  const auto at = tracedAlong(a, axis), other = tracedAlong(b, axis);
  return at && other && std::abs(*at - *other) < kSameSpot;
}

using Declined = std::vector<std::vector<Id>>;

bool isDeclined(const std::vector<Id>& ids, const Declined& declined) {
  return std::any_of(declined.begin(), declined.end(), [&](const std::vector<Id>& known) {
    return std::all_of(ids.begin(), ids.end(), [&](const Id& id) {
      return std::find(known.begin(), known.end(), id) != known.end();
    });
  });
}

std::vector<Id> inLine(const Part& part, const Solution& solution, Face face, Axis axis,
                       const Declined& declined) {
  for (const Feature& first : part.features) {
    if (!isSpot(first, face) || first.is<kind::Ring>()) continue;
    std::vector<Id> found{first.id};
    for (const Feature& other : part.features) {
      if (&other <= &first || !isSpot(other, face) || other.is<kind::Ring>()) continue;
      if (!near(first, other, axis)) continue;
      const bool related = std::any_of(found.begin(), found.end(), [&](const Id& id) {
        return solution.between(id, other.id, axis).has_value();
      });
      if (!related) found.push_back(other.id);
    }
    if (found.size() > 1 && !isDeclined(found, declined)) return found;
  }
  return {};
}

/// Said already; it need not follow from that where anything lies, as while the sides are loose.
bool isMidway(const Part& part, const Id& id, Axis axis) {
  return std::any_of(part.understood.begin(), part.understood.end(), [&](const Understanding& one) {
    return one.kind == UnderstandingKind::midway && one.axis == axis &&
           std::find(one.of.begin(), one.of.end(), id) != one.of.end();
  });
}

std::vector<Id> midway(const Part& part, const Solution& solution, Face face, Axis axis,
                       const Declined& declined) {
  std::vector<const Feature*> sides;
  for (const Feature& feature : part.features) {
    const auto* edge = feature.as<kind::Edge>();
    if (edge && edge->side && edge->axis == axis && !feature.traced.empty())
      sides.push_back(&feature);
  }
  if (sides.size() != 2) return {};
  const auto low = tracedAlong(*sides[0], axis), high = tracedAlong(*sides[1], axis);
  if (!low || !high) return {};
  for (const Feature& feature : part.features) {
    const auto at = isSpot(feature, face) ? tracedAlong(feature, axis) : std::nullopt;
    if (!at || std::abs(*at - (*low + *high) / 2) >= kSameSpot) continue;
    if (solution.between(sides[0]->id, feature.id, axis)) continue;
    std::vector<Id> found{feature.id, sides[0]->id, sides[1]->id};
    if (!isMidway(part, feature.id, axis) && !isDeclined(found, declined)) return found;
  }
  return {};
}

std::vector<Id> concentric(const Part& part, const Solution& solution, Face face,
                           const Declined& declined) {
  const auto axes = axesIn(face);
  for (const Feature& first : part.features) {
    if (!isSpot(first, face)) continue;
    for (const Feature& other : part.features) {
      if (&other <= &first || !isSpot(other, face)) continue;
      if (!near(first, other, axes[0]) || !near(first, other, axes[1])) continue;
      if (solution.between(first.id, other.id, axes[0]) &&
          solution.between(first.id, other.id, axes[1])) {
        continue;
      }
      std::vector<Id> found{first.id, other.id};
      if (!isDeclined(found, declined)) return found;
    }
  }
  return {};
}

}  // namespace

std::vector<Id> suggested(const Part& part, const Solution& solution, Face face,
                          UnderstandingKind kind, Axis axis, const Declined& declined) {
  switch (kind) {
    case UnderstandingKind::inLine:
      return inLine(part, solution, face, axis, declined);
    case UnderstandingKind::midway:
      return midway(part, solution, face, axis, declined);
    case UnderstandingKind::concentric:
      return concentric(part, solution, face, declined);
    default:
      return {};
  }
}

}  // namespace inchwright::app
