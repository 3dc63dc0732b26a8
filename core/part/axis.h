#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace inchwright {

/// The three axes fixed to the print: X to the right and Y up in the main view, Z to the viewer.
enum class Axis : std::uint8_t { x, y, z };
inline constexpr std::array kAxes{Axis::x, Axis::y, Axis::z};

/// Some of the three axes: x and y for a hole on top, x alone for an edge across x.
class AxisSet {
 public:
  constexpr AxisSet() = default;
  constexpr AxisSet(std::initializer_list<Axis> axes) {
    for (const Axis axis : axes) add(axis);
  }
  constexpr void add(Axis axis) { bits_ = static_cast<std::uint8_t>(bits_ | bit(axis)); }
  constexpr bool has(Axis axis) const { return (bits_ & bit(axis)) != 0; }
  constexpr bool empty() const { return bits_ == 0; }
  /// How many axes both have.
  constexpr int shared(AxisSet other) const {
    int count = 0;
    for (const Axis axis : kAxes) count += has(axis) && other.has(axis) ? 1 : 0;
    return count;
  }

  bool operator==(const AxisSet&) const = default;

 private:
  static constexpr std::uint8_t bit(Axis axis) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(axis));
  }
  std::uint8_t bits_ = 0;
};

/// The six faces. Top is the main view; front is −Y, back +Y, left −X, right +X.
enum class Face : std::uint8_t { top, bottom, front, back, left, right };
/// An outer side of the part is named like the face that lies on it.
using Side = Face;
inline constexpr std::array kSides{Side::top,  Side::bottom, Side::front,
                                   Side::back, Side::left,   Side::right};

/// The two axes that lie in a face, in document order: x y, x z or y z.
constexpr std::array<Axis, 2> axesIn(Face face) {
  switch (face) {
    case Face::top:
    case Face::bottom:
      return {Axis::x, Axis::y};
    case Face::front:
    case Face::back:
      return {Axis::x, Axis::z};
    case Face::left:
    case Face::right:
      break;
  }
  return {Axis::y, Axis::z};
}

/// +1 or −1: how a face's own two axes, seen from outside, run against the part's. Of the bottom,
/// turned over about X: 1 and −1.
constexpr std::array<int, 2> ownDirections(Face face) {
  switch (face) {
    case Face::bottom:
      return {1, -1};
    case Face::back:
    case Face::left:
      return {-1, 1};
    case Face::top:
    case Face::front:
    case Face::right:
      break;
  }
  return {1, 1};
}

/// The axis square to a face: along it go depths.
constexpr Axis axisAcross(Face face) {
  switch (face) {
    case Face::top:
    case Face::bottom:
      return Axis::z;
    case Face::front:
    case Face::back:
      return Axis::y;
    case Face::left:
    case Face::right:
      break;
  }
  return Axis::x;
}

/// +1 for the sides that lie at the positive end of their axis (right, back, top), else −1.
constexpr int outward(Side side) {
  return side == Side::right || side == Side::back || side == Side::top ? 1 : -1;
}

std::string_view nameOf(Axis axis);  ///< `x`, `y`, `z`
std::string_view nameOf(Face face);  ///< `top`, `bottom`, `front`, `back`, `left`, `right`
std::optional<Axis> axisNamed(std::string_view name);
std::optional<Face> faceNamed(std::string_view name);

}  // namespace inchwright
