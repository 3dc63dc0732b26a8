#include "core/part/feature.h"

#include <algorithm>
#include <charconv>

#include "core/part/name_table.h"
#include "core/part/plain_decimal.h"

namespace inchwright {
namespace {

constexpr NameTable<9> kFeatureKindNames{"edge",  "hole",  "slot", "ring", "row",
                                         "round", "point", "line", "arc"};
constexpr NameTable<7> kMakeNames{"drill",       "ream",        "bore",    "tap",
                                  "counterbore", "countersink", "spotface"};
constexpr NameTable<5> kLocateNames{"coordinate", "mate", "pair", "assembly", "suit"};
constexpr NameTable<2> kSenseNames{"anticlockwise", "clockwise"};

}  // namespace

std::string_view nameOf(FeatureKind kind) {
  return nameIn(kFeatureKindNames, kind);
}
std::string_view nameOf(Make make) {
  return nameIn(kMakeNames, make);
}
std::string_view nameOf(Locate locate) {
  return nameIn(kLocateNames, locate);
}
std::string_view nameOf(Sense sense) {
  return nameIn(kSenseNames, sense);
}

std::optional<FeatureKind> featureKindNamed(std::string_view name) {
  return valueNamed<FeatureKind>(kFeatureKindNames, name);
}

std::optional<Make> makeNamed(std::string_view name) {
  return valueNamed<Make>(kMakeNames, name);
}

std::optional<Locate> locateNamed(std::string_view name) {
  return valueNamed<Locate>(kLocateNames, name);
}

std::optional<Sense> senseNamed(std::string_view name) {
  return valueNamed<Sense>(kSenseNames, name);
}

std::vector<Place> placesOf(const Feature& feature) {
  if (feature.kind == FeatureKind::line || feature.kind == FeatureKind::arc) return {};
  if (feature.kind == FeatureKind::edge) {
    if (!feature.axis) return {};
    return {Place{feature.id, {*feature.axis}}};
  }
  const auto inFace = axesIn(feature.face);
  const std::vector<Axis> axes(inFace.begin(), inFace.end());
  std::vector<Place> places;
  const int count = innerPlaceCount(feature);
  places.reserve(static_cast<std::size_t>(count) + 1);
  places.push_back({feature.id, axes});
  for (int i = 1; i <= count; ++i) places.push_back({feature.id + std::to_string(i), axes});
  return places;
}

int innerPlaceCount(const Feature& feature) {
  switch (feature.kind) {
    case FeatureKind::ring:
    case FeatureKind::row:
      return std::clamp(feature.holes, 0, kMostHoles);
    case FeatureKind::slot:
      return 2;
    default:
      return 0;
  }
}

bool isNamedBy(const Feature& feature, std::string_view id) {
  if (!id.starts_with(feature.id)) return false;
  const std::string_view number = id.substr(feature.id.size());
  if (number.empty()) return true;
  if (number.front() < '1' || number.front() > '9') return false;
  int value = 0;
  const char* end = number.data() + number.size();
  const auto [stopped, fault] = std::from_chars(number.data(), end, value);
  return fault == std::errc() && stopped == end && value <= innerPlaceCount(feature);
}

std::optional<double> tracedAlong(const Feature& feature, Axis axis) {
  if (feature.kind == FeatureKind::edge) {
    if (feature.axis != axis || feature.traced.size() != 1) return std::nullopt;
    return plainDecimal(feature.traced[0]);
  }
  if (feature.traced.size() < 2) return std::nullopt;
  const auto axes = axesIn(feature.face);
  for (std::size_t i = 0; i < axes.size(); ++i) {
    if (axes[i] == axis) return plainDecimal(feature.traced[i]);
  }
  return std::nullopt;
}

}  // namespace inchwright
