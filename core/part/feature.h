#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/apart.h"
#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/drilled.h"
#include "core/part/extra.h"
#include "core/part/id.h"

namespace inchwright {

/// As the alternatives of `Shape`, in their order.
enum class FeatureKind {
  edge,
  hole,
  slot,
  ring,
  row,
  round,
  point,
  line,
  arc,
  // Of turned parts, between two edges across X or at one.
  outside,
  bored,
  taper,
  groove,
  screwed,
  knurl,
  chamfer,
  centreDrill,
};

enum class Sense { anticlockwise, clockwise };

/// How many kinds there are.
inline constexpr int kFeatureKinds = 17;

/// Of a screw thread.
enum class Hand { right, left };

/// The most holes a ring or row may have.
inline constexpr int kMostHoles = 1000;

/// What a feature is, kind by kind. To add a kind: its struct here, its word in `FeatureKind`, its
/// members in feature_members.h (the document, the checks of sizes and the renaming of ids follow
/// from there), what it requires in check_feature.cpp and its places in feature.cpp.
namespace kind {

/// A plane square to `axis`.
struct Edge {
  Axis axis = Axis::x;
  std::optional<Side> side = {};  ///< when it is an outer side of the part

  bool operator==(const Edge&) const = default;
};

struct Hole {
  Drilled drilled = {};

  bool operator==(const Hole&) const = default;
};

/// Straight along an axis of its face, between two places that are its `ends`, or curved on the
/// circle `about` a place or of a round, arc or ring.
struct Slot {
  std::optional<Axis> axis = {};
  std::optional<Lettered> width = {};
  std::optional<Lettered> length = {};  ///< over all, end to end
  std::vector<Id> ends = {};            ///< two places, at the centres of its rounded ends; or none
  Id about = {};
  Apart<Lettered> cutter = {};  ///< diameter of the one it is to be cut with
  Depth depth = {};
  std::vector<Id> meets = {};  ///< what is cut and that it is meant to run into

  bool operator==(const Slot&) const = default;
};

/// Holes evenly round a pitch circle.
struct Ring {
  int holes = 1;                          ///< from 1 to kMostHoles
  Apart<Lettered> pitchDiameter = {};     ///< PCD
  Apart<LetteredAngle> firstAngle = {};   ///< of hole 1, anticlockwise from the face's own X
  Sense sense = Sense::anticlockwise;     ///< as the face is seen
  std::vector<std::string> byTrace = {};  ///< members that clicks gave: `pcd`, `first_angle`
  Drilled drilled = {};                   ///< each hole

  bool operator==(const Ring&) const = default;
};

/// Holes evenly along an axis of the face.
struct Row {
  Axis axis = Axis::x;
  /// From 1 to kMostHoles, also where the print counts spaces: then one more than those.
  int holes = 1;
  bool countedBySpaces = false;
  Apart<Lettered> pitch = {};             ///< from hole to hole; may be left to the readings
  std::vector<std::string> byTrace = {};  ///< members that clicks gave: `pitch`
  Drilled drilled = {};                   ///< each hole

  bool operator==(const Row&) const = default;
};

/// A rounded end or corner.
struct Round {
  std::optional<Side> side = {};  ///< where its outermost point lies, of one with an outer tangent
  std::optional<Lettered> radius = {};
  Id about = {};                ///< the place it is struck about; or else
  std::vector<Id> corner = {};  ///< the two edges whose corner it rounds off

  bool operator==(const Round&) const = default;
};

struct Point {
  bool operator==(const Point&) const = default;
};

/// A straight side, or a line on the print, that runs along no axis.
struct Line {
  std::vector<Id> through = {};  ///< places it passes through

  bool operator==(const Line&) const = default;
};

/// A curved side, or an arc on the print. Its own place is its centre.
struct Arc {
  std::optional<Lettered> radius = {};
  std::vector<Id> through = {};  ///< places it passes through

  bool operator==(const Arc&) const = default;
};

// Turned work: `between` are two edges across X, `at` is one. Turned features have no places.

struct Outside {
  std::vector<Id> between;
  std::optional<Lettered> diameter;

  bool operator==(const Outside&) const = default;
};

struct Bored {
  std::vector<Id> between;
  std::optional<Lettered> diameter;

  bool operator==(const Bored&) const = default;
};

/// Two of its four figures say it; the angle is the included one.
struct Taper {
  std::vector<Id> between;
  std::optional<Lettered> large;
  Apart<Lettered> small;
  Apart<LetteredAngle> angle;
  Apart<Lettered> perFoot;  ///< how much the diameter grows over 12 in
  Id largeAt;               ///< which of the two edges is the large end; empty: the first

  bool operator==(const Taper&) const = default;
};

struct Groove {
  std::vector<Id> between;
  std::optional<Lettered> diameter;  ///< at its floor

  bool operator==(const Groove&) const = default;
};

struct Screwed {
  std::vector<Id> between;
  std::string thread;  ///< `1/4-20 UNC`, `2 BA`, `M3`
  Hand hand = Hand::right;
  std::optional<Lettered> runout;  ///< how far imperfect thread may run past it

  bool operator==(const Screwed&) const = default;
};

struct Knurl {
  std::vector<Id> between;
  std::optional<Lettered> pitch;
  std::string pattern;  ///< `diamond`, `straight`, as the print calls it

  bool operator==(const Knurl&) const = default;
};

struct Chamfer {
  Id at;
  std::optional<Lettered> length;  ///< along the axis
  std::optional<LetteredAngle> angle;

  bool operator==(const Chamfer&) const = default;
};

struct CentreDrill {
  Id at;
  std::string size;  ///< `#2`, as its maker calls it

  bool operator==(const CentreDrill&) const = default;
};

}  // namespace kind

using AnyShape =
    std::variant<kind::Edge, kind::Hole, kind::Slot, kind::Ring, kind::Row, kind::Round,
                 kind::Point, kind::Line, kind::Arc, kind::Outside, kind::Bored, kind::Taper,
                 kind::Groove, kind::Screwed, kind::Knurl, kind::Chamfer, kind::CentreDrill>;

/// One of the kinds. What copies and compares it is compiled once, not anew in every room.
struct Shape : AnyShape {
  using AnyShape::AnyShape;
  Shape(const Shape& other);
  Shape(Shape&& other) noexcept;
  Shape& operator=(const Shape& other);
  Shape& operator=(Shape&& other) noexcept;
  ~Shape();

  bool operator==(const Shape& other) const;
};

/// One feature of a part: what is common to all kinds, and its shape. Its positions are not here:
/// they follow from the readings. `checkPart` (job.h) says what a feature lacks.
struct Feature {
  Id id;
  /// What it is cut from, or lies in. Says nothing of an edge.
  Face face = Face::top;
  Shape shape = kind::Point{};
  /// Inches in the plane of the face, as drawn; evidence only. One for an edge, four for a line
  /// (two points), two or three for an arc (centre, radius), two for all others. Arcs of older
  /// documents have six: three points on it.
  std::vector<std::string> traced;
  std::string note;
  Extra extra;

  FeatureKind kind() const { return static_cast<FeatureKind>(shape.index()); }
  template <class Kind>
  bool is() const {
    return std::holds_alternative<Kind>(shape);
  }
  /// Its shape when it is of that kind, else null: `feature.as<kind::Ring>()`.
  template <class Kind>
  const Kind* as() const {
    return std::get_if<Kind>(&shape);
  }
  template <class Kind>
  Kind* as() {
    return std::get_if<Kind>(&shape);
  }
  /// What is drilled at its places: of a hole, ring or row; null for all others.
  const Drilled* drilled() const;
  Drilled* drilled();

  bool operator==(const Feature&) const = default;
};

/// The shape of a kind of which nothing is known yet.
Shape emptyShape(FeatureKind kind);

/// The axis a feature lies across or runs along: of an edge, slot or row.
std::optional<Axis> axisOf(const Feature& feature);
/// The outer side that an edge is, or where a round has its outermost point.
std::optional<Side> sideOf(const Feature& feature);
/// The radius of a round or arc.
const std::optional<Lettered>& radiusOf(const Feature& feature);
/// The diameter of what is drilled.
const std::optional<Lettered>& diameterOf(const Feature& feature);

std::string_view nameOf(FeatureKind kind);  ///< as in the document: `edge`, `hole`, …
std::string_view nameOf(Sense sense);
std::string_view nameOf(Hand hand);
std::optional<Hand> handNamed(std::string_view name);
std::optional<FeatureKind> featureKindNamed(std::string_view name);
std::optional<Sense> senseNamed(std::string_view name);

/// A place that readings can meet, and the axes along which it has a position:
///
/// - edge: the edge itself, along its one axis.
/// - hole, point: the centre, along the two axes that lie in the face.
/// - round: its centre, along the face's two axes; with a `side`, its outermost point on that side
///   instead (off the centre by the radius across the side, level with it along the other axis).
///   `E0` is the centre of round `E`, whatever its side.
/// - slot `S`: `S` is its middle, `S1` and `S2` the centres of its rounded ends, `S1` at the lower
///   end of its axis.
/// - ring `G`: `G` is the centre of the pitch circle, `G1` … `Gn` its holes.
/// - row `D`: `D1` … `Dn` are its holes, upwards along its axis; `D` is the same spot as `D1`.
/// - arc: its centre, along the face's two axes.
/// - line: none.
struct Place {
  Id id;
  AxisSet axes;  ///< along which it has a position

  bool operator==(const Place&) const = default;
};

/// The axes along which a feature and its places have a position: none for a line.
AxisSet axesOf(const Feature& feature);
/// The places of a feature, itself first.
std::vector<Place> placesOf(const Feature& feature);
/// Those that a tool is driven to: of a ring, row or slot its holes or ends, not the whole.
std::vector<Place> drivenPlaces(const Feature& feature);

/// The place `CL` that every turned part has among its features, for its cross holes: on its axis,
/// so at Y0 Z0. A document leaves it out; its reader puts it there (`turnedPart` in edit.h).
const Feature& centreLine();

/// The two edges a turned feature lies between; null for one that does not.
const std::vector<Id>* betweenOf(const Feature& feature);
/// Whether only turned parts have it.
bool isTurned(FeatureKind kind);

/// How many holes, ends or centres of a feature are places beside its own: 0 for most kinds.
int innerPlaceCount(const Feature& feature);
/// Whether `id` names the feature itself, or one of its holes or ends. Constant time.
bool isNamedBy(const Feature& feature, std::string_view id);

/// The traced position of a feature along an axis, in inches as drawn; empty when there is none.
std::optional<double> tracedAlong(const Feature& feature, Axis axis);

}  // namespace inchwright
