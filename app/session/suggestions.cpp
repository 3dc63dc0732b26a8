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
  const bool kind = feature.kind == FeatureKind::hole || feature.kind == FeatureKind::point ||
                    feature.kind == FeatureKind::ring || feature.kind == FeatureKind::round;
  return kind && feature.face == face;
}

bool near(const Feature& a, const Feature& b, Axis axis) {
  const auto at = tracedAlong(a, axis), other = tracedAlong(b, axis);
  return at && other && std::abs(*at - *other) < kSameSpot;
}

std::vector<Id> inLine(const Part& part, const Solution& solution, Face face, Axis axis) {
  for (const Feature& first : part.features) {
    if (!isSpot(first, face) || first.kind == FeatureKind::ring) continue;
    std::vector<Id> found{first.id};
    for (const Feature& other : part.features) {
      if (&other <= &first || !isSpot(other, face) || other.kind == FeatureKind::ring) continue;
      if (!near(first, other, axis)) continue;
      const bool related = std::any_of(found.begin(), found.end(), [&](const Id& id) {
        return solution.between(id, other.id, axis).has_value();
      });
      if (!related) found.push_back(other.id);
    }
    if (found.size() > 1) return found;
  }
  return {};
}

std::vector<Id> midway(const Part& part, const Solution& solution, Face face, Axis axis) {
  std::vector<const Feature*> sides;
  for (const Feature& feature : part.features) {
    const bool side = feature.kind == FeatureKind::edge && feature.side && feature.axis == axis;
    if (side && !feature.traced.empty()) sides.push_back(&feature);
  }
  if (sides.size() != 2) return {};
  const auto low = tracedAlong(*sides[0], axis), high = tracedAlong(*sides[1], axis);
  if (!low || !high) return {};
  for (const Feature& feature : part.features) {
    const auto at = isSpot(feature, face) ? tracedAlong(feature, axis) : std::nullopt;
    if (!at || std::abs(*at - (*low + *high) / 2) >= kSameSpot) continue;
    if (solution.between(sides[0]->id, feature.id, axis)) continue;
    return {feature.id, sides[0]->id, sides[1]->id};
  }
  return {};
}

std::vector<Id> concentric(const Part& part, const Solution& solution, Face face) {
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
      return {first.id, other.id};
    }
  }
  return {};
}

}  // namespace

std::vector<Id> suggested(const Part& part, const Solution& solution, Face face,
                          UnderstandingKind kind, Axis axis) {
  switch (kind) {
    case UnderstandingKind::inLine:
      return inLine(part, solution, face, axis);
    case UnderstandingKind::midway:
      return midway(part, solution, face, axis);
    case UnderstandingKind::concentric:
      return concentric(part, solution, face);
    default:
      return {};
  }
}

}  // namespace inchwright::app
