#include "core/part/feature.h"

#include <algorithm>
#include <charconv>
#include <type_traits>
#include <utility>

#include "core/part/name_table.h"
#include "core/part/plain_decimal.h"

namespace inchwright {

Shape::Shape(const Shape& other) = default;
Shape::Shape(Shape&& other) noexcept = default;
Shape& Shape::operator=(const Shape& other) = default;
Shape& Shape::operator=(Shape&& other) noexcept = default;
Shape::~Shape() = default;

bool Shape::operator==(const Shape& other) const {
  return static_cast<const AnyShape&>(*this) == static_cast<const AnyShape&>(other);
}

namespace {

constexpr NameTable<kFeatureKinds> kFeatureKindNames{
    "edge",    "hole",  "slot",  "ring",   "row",     "round", "point",   "line",        "arc",
    "outside", "bored", "taper", "groove", "screwed", "knurl", "chamfer", "centre_drill"};
constexpr NameTable<2> kHandNames{"right", "left"};
constexpr NameTable<7> kMakeNames{"drill",       "ream",        "bore",    "tap",
                                  "counterbore", "countersink", "spotface"};
constexpr NameTable<5> kLocateNames{"coordinate", "mate", "pair", "assembly", "suit"};
constexpr NameTable<2> kSenseNames{"anticlockwise", "clockwise"};

const std::optional<Lettered> kNoFigure;

template <std::size_t... Indices>
Shape emptyShapeAt(std::size_t index, std::index_sequence<Indices...>) {
  Shape shape;
  ((Indices == index ? static_cast<void>(shape.emplace<Indices>()) : static_cast<void>(0)), ...);
  return shape;
}

/// Of a feature or a const one.
template <class AnyFeature>
auto drilledOf(AnyFeature& feature) {
  using Result = decltype(&feature.template as<kind::Hole>()->drilled);
  return std::visit(
      [](auto& shape) -> Result {
        if constexpr (requires { shape.drilled; }) return &shape.drilled;
        return nullptr;
      },
      feature.shape);
}

// Holes and ends are counted from 1; the centre of a round is its 0.
int firstInner(const Feature& feature) {
  return feature.is<kind::Round>() ? 0 : 1;
}

}  // namespace

Shape emptyShape(FeatureKind kind) {
  return emptyShapeAt(static_cast<std::size_t>(kind),
                      std::make_index_sequence<std::variant_size_v<AnyShape>>());
}

const Drilled* Feature::drilled() const {
  return drilledOf(*this);
}

Drilled* Feature::drilled() {
  return drilledOf(*this);
}

std::optional<Axis> axisOf(const Feature& feature) {
  return std::visit(
      [](const auto& shape) -> std::optional<Axis> {
        if constexpr (requires { shape.axis; }) return shape.axis;
        return std::nullopt;
      },
      feature.shape);
}

std::optional<Side> sideOf(const Feature& feature) {
  return std::visit(
      [](const auto& shape) -> std::optional<Side> {
        if constexpr (requires { shape.side; }) return shape.side;
        return std::nullopt;
      },
      feature.shape);
}

const std::optional<Lettered>& radiusOf(const Feature& feature) {
  return std::visit(
      [](const auto& shape) -> const std::optional<Lettered>& {
        if constexpr (requires { shape.radius; }) return shape.radius;
        return kNoFigure;
      },
      feature.shape);
}

const std::optional<Lettered>& diameterOf(const Feature& feature) {
  return std::visit(
      [](const auto& shape) -> const std::optional<Lettered>& {
        if constexpr (requires { shape.drilled; })
          return shape.drilled.diameter;
        else if constexpr (requires { shape.diameter; })
          return shape.diameter;
        else
          return kNoFigure;
      },
      feature.shape);
}

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

std::string_view nameOf(Hand hand) {
  return nameIn(kHandNames, hand);
}

std::optional<Hand> handNamed(std::string_view name) {
  return valueNamed<Hand>(kHandNames, name);
}

const Feature& centreLine() {
  static const Feature kPlace = [] {
    Feature place;
    place.id = "CL";
    place.face = Face::right;
    return place;
  }();
  return kPlace;
}

const std::vector<Id>* betweenOf(const Feature& feature) {
  return std::visit(
      [](const auto& shape) -> const std::vector<Id>* {
        if constexpr (requires { shape.between; }) return &shape.between;
        return nullptr;
      },
      feature.shape);
}

bool isTurned(FeatureKind kind) {
  return kind >= FeatureKind::outside;
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

AxisSet axesOf(const Feature& feature) {
  if (const auto* edge = feature.as<kind::Edge>()) return {edge->axis};
  if (feature.is<kind::Line>() || isTurned(feature.kind())) return {};
  const auto [first, second] = axesIn(feature.face);
  return {first, second};
}

std::vector<Place> placesOf(const Feature& feature) {
  const AxisSet axes = axesOf(feature);
  if (axes.empty()) return {};
  std::vector<Place> places;
  const int count = innerPlaceCount(feature);
  places.reserve(static_cast<std::size_t>(count) + 1);
  places.push_back({feature.id, axes});
  const int first = firstInner(feature);
  for (int i = 0; i < count; ++i) {
    places.push_back({feature.id + std::to_string(first + i), axes});
  }
  return places;
}

std::vector<Place> drivenPlaces(const Feature& feature) {
  std::vector<Place> places = placesOf(feature);
  if (places.size() > 1) places.erase(places.begin());
  return places;
}

int innerPlaceCount(const Feature& feature) {
  return std::visit(
      [](const auto& shape) {
        using Kind = std::remove_cvref_t<decltype(shape)>;
        if constexpr (std::is_same_v<Kind, kind::Slot>) return 2;
        if constexpr (std::is_same_v<Kind, kind::Round>) return 1;
        if constexpr (requires { shape.holes; }) return std::clamp(shape.holes, 0, kMostHoles);
        return 0;
      },
      feature.shape);
}

bool isNamedBy(const Feature& feature, std::string_view id) {
  if (!id.starts_with(feature.id)) return false;
  const std::string_view number = id.substr(feature.id.size());
  if (number.empty()) return true;
  if (feature.is<kind::Round>()) return number == "0";
  if (number.front() < '1' || number.front() > '9') return false;
  int value = 0;
  const char* end = number.data() + number.size();
  const auto [stopped, fault] = std::from_chars(number.data(), end, value);
  return fault == std::errc() && stopped == end && value <= innerPlaceCount(feature);
}

std::optional<double> tracedAlong(const Feature& feature, Axis axis) {
  if (const auto* edge = feature.as<kind::Edge>()) {
    if (edge->axis != axis || feature.traced.size() != 1) return std::nullopt;
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
