#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/geometry/path.h"
#include "core/part/job.h"
#include "core/place/face_plane.h"

namespace inchwright {

/// One feature that an outline follows, from corner to corner.
struct OutlinePiece {
  Id id;
  FeatureKind kind = FeatureKind::edge;
  /// Empty where a neighbour is not placed or does not meet it.
  std::optional<PathPiece> path;
  /// By how much it and the next one miss each other, inches; above 0 only where they were meant to
  /// touch and come within 1/32 in of it.
  double missesNext = 0;

  bool isCurve() const { return kind == FeatureKind::round || kind == FeatureKind::arc; }
};

/// How thick the metal is beside a hole; negative where it breaks out. Inches.
struct Wall {
  Id place;
  double wall = 0;
  Id beside;             ///< the feature of an outline that is nearest
  bool isMeant = false;  ///< the hole says that it breaks out
};

/// An outline of a face: outer, a pocket or an opening. Coordinates as in `FacePlane`.
struct Outline {
  Face face = Face::top;
  bool isInner = false;
  bool isClosed = false;
  bool byItself = false;  ///< follows from sides and rounds; the document does not say it
  std::array<Id, 2> from;
  std::vector<OutlinePiece> pieces;

  /// Its pieces one after another. Requires: it is closed.
  std::vector<PathPiece> path() const;
  // Requires for both: it is closed.
  std::pair<PlanePoint, PlanePoint> extents() const;
  double area() const;  ///< square inches
};

/// What an outline follows and how: as in the document.
struct OutlineRequest {
  std::vector<Id> follows;
  bool isInner = false;
};

/// How near a touch has to come to be one; a touch missed by less is asked about.
inline constexpr double kTouchInches = 1.0 / 32;

/// Joins what is followed, anticlockwise as the face is seen, at the crossing or touching point of
/// neighbours that is nearest to the tracing; of a round with a `side` at the one on that side;
/// else so that the most metal is enclosed.
///
/// A round is as much of its circle as lies between its neighbours; a single one is a full circle.
/// Where something is not placed or does not meet, the outline is not closed and says where.
Outline joinOutline(const Part& part, const FacePlane& plane, const OutlineRequest& request);

/// The outline that follows by itself from four outer sides, the rounds on their corners and those
/// about ends; empty where there are no such sides.
std::optional<OutlineRequest> outlineByItself(const Part& part, const FacePlane& plane);

/// Every hole inside the outer outline with the wall that it leaves, against inner ones too.
/// Requires: all are closed, of one face, the outer one first.
std::vector<Wall> wallsOf(const Part& part, const FacePlane& plane,
                          const std::vector<Outline>& outlines);

}  // namespace inchwright
