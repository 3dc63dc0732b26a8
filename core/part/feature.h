#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/axis.h"
#include "core/part/extra.h"

namespace inchwright {

/// The name of a feature, a place of one, or a reading. Unique among its kind within a part.
using Id = std::string;

enum class FeatureKind { edge, hole, slot, ring, row, round, point, line, arc };

/// How a hole gets its size.
enum class Make { drill, ream, bore, tap, counterbore, countersink, spotface };

/// How a hole's place is to be found in the shop.
enum class Locate { coordinate, mate, pair, assembly, suit };

enum class Sense { anticlockwise, clockwise };

/// Through, or so deep below the face it is cut from.
struct Depth {
  bool through = true;
  std::optional<Lettered> length;  ///< given when not through

  bool operator==(const Depth&) const = default;
};

/// The most holes a ring or row may have.
inline constexpr int kMostHoles = 1000;

/// One feature of a part. Which members apply follows from `kind`; `checkPart` (job.h) says what
/// a feature lacks. Its positions are not here: they follow from the readings.
struct Feature {
  Id id;
  FeatureKind kind = FeatureKind::point;

  // edge: a plane square to `axis`; `side` when it is an outer side of the part.
  // slot, row: `axis` is the one it runs along (one of the face's two).
  // round with an outer tangent: `side` is where its outermost point lies.
  std::optional<Axis> axis;
  std::optional<Side> side;

  // Everything but an edge is cut from, or lies in, a face.
  Face face = Face::top;

  std::optional<Lettered> diameter;  ///< hole, and each hole of a ring or row
  Make make = Make::drill;
  Depth depth;
  std::string thread;                    ///< tapped holes: `1/4-20 UNC`, `2 BA`, `M3`
  std::optional<Lettered> seatDiameter;  ///< counterbore, countersink, spotface
  std::optional<Lettered> seatDepth;
  Locate locate = Locate::coordinate;

  std::optional<Lettered> width;   ///< slot
  std::optional<Lettered> length;  ///< slot: over all, end to end

  /// ring, row: how many holes there are, also where the print counts a row's spaces (then it is
  /// one more than those). From 1 to kMostHoles.
  int holes = 0;
  bool countedBySpaces = false;           ///< row: the print gives the number of spaces
  std::optional<Lettered> pitch;          ///< row: from hole to hole; may be left to the readings
  std::optional<Lettered> pitchDiameter;  ///< ring: PCD
  std::optional<LetteredAngle>
      firstAngle;                      ///< ring: of hole 1, anticlockwise from the face's own X
  Sense sense = Sense::anticlockwise;  ///< ring: as the face is seen

  std::optional<Lettered> radius;  ///< round, arc
  Id about;                        ///< round: the place it is struck about; or else
  std::vector<Id> corner;          ///< round: the two edges whose corner it rounds off

  std::vector<Id> through;  ///< line, arc: places it passes through (kept, not placed)

  /// Inches in the plane of the face, as drawn: one for an edge, two otherwise. Evidence only.
  std::vector<std::string> traced;
  std::string note;
  Extra extra;

  bool operator==(const Feature&) const = default;
};

std::string_view nameOf(FeatureKind kind);  ///< as in the document: `edge`, `hole`, …
std::string_view nameOf(Make make);         ///< `drill`, `ream`, …
std::string_view nameOf(Locate locate);
std::string_view nameOf(Sense sense);
std::optional<FeatureKind> featureKindNamed(std::string_view name);
std::optional<Make> makeNamed(std::string_view name);
std::optional<Locate> locateNamed(std::string_view name);
std::optional<Sense> senseNamed(std::string_view name);

/// A place that readings can meet, and the axes along which it has a position:
///
/// - edge: the edge itself, along its one axis.
/// - hole, point: the centre, along the two axes that lie in the face.
/// - round: its centre, along the face's two axes; with a `side`, its outermost point on that side
///   instead (off the centre by the radius across the side, level with it along the other axis).
/// - slot `S`: `S` is its middle, `S1` and `S2` the centres of its rounded ends, `S1` at the lower
///   end of its axis.
/// - ring `G`: `G` is the centre of the pitch circle, `G1` … `Gn` its holes.
/// - row `D`: `D1` … `Dn` are its holes, upwards along its axis; `D` is the same spot as `D1`.
/// - line, arc: none.
struct Place {
  Id id;
  std::vector<Axis> axes;  ///< along which it has a position

  bool operator==(const Place&) const = default;
};

/// The places of a feature, itself first. An edge without an axis has none.
std::vector<Place> placesOf(const Feature& feature);

/// How many holes or ends of a feature are places of their own: 0 for most kinds.
int innerPlaceCount(const Feature& feature);
/// Whether `id` names the feature itself, or one of its holes or ends. Constant time.
bool isNamedBy(const Feature& feature, std::string_view id);

/// The traced position of a feature along an axis, in inches as drawn; empty when there is none.
std::optional<double> tracedAlong(const Feature& feature, Axis axis);

}  // namespace inchwright
