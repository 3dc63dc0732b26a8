#pragma once

#include <QPointF>
#include <QRectF>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "app/session/picture_edits.h"
#include "core/part/job.h"
#include "core/solution/solution.h"

namespace inchwright::app {

/// One place as it is drawn in the view of a face.
struct DrawnPlace {
  Id id;
  Id feature;
  FeatureKind kind = FeatureKind::point;
  /// Inches in the view. An edge has only the one along its axis; the other is 0.
  QPointF at = {};
  std::optional<Axis> across = {};  ///< an edge's axis
  bool alongViewX = true;  ///< an edge: its coordinate is the view's x, so it is drawn upright
  double radius = 0;       ///< inches; 0 when there is none
  QPointF half = {};       ///< a slot: inches from its middle to the centre of an end
  /// A round: which way from its centre it bulges, -1, 0 or 1 along each; 0, 0 where unknown.
  QPointF bulges = {};
  bool onRim = false;   ///< a round that is known by its outermost point: `at` is that
  bool placed = false;  ///< solid line; else broken, with a question mark
  bool disputed = false;
  bool isAxis = false;  ///< the centre line of a turned part: drawn across, not as a spot
  bool parked = false;  ///< nothing says where it is drawn: it waits in the margin

  /// Of a ring, the circle its holes lie on.
  bool isPitchCircle() const { return kind == FeatureKind::ring && id == feature; }
  /// The centre of one end of a slot, which is drawn as a whole.
  bool isSlotEnd() const { return kind == FeatureKind::slot && id != feature; }
  bool isOfRow() const { return kind == FeatureKind::row; }
  bool isRound() const { return kind == FeatureKind::round; }
  bool isPoint() const { return kind == FeatureKind::point; }
};

/// Where everything of a face is drawn.
///
/// Over a picture each feature is where it was traced. On blank paper a placed one settles at its
/// solved position, to scale. What is neither waits in the margin, parked.
struct DrawnFace {
  Face face = Face::top;
  std::vector<DrawnPlace> places;  ///< in the part's order
  QRectF bounds;                   ///< inches in the view, of all that is drawn; never empty

  const DrawnPlace* find(const Id& id) const;
  std::unordered_map<Id, std::size_t> index;
};

DrawnFace drawFace(const Part& part, const Solution& solution, Face face, bool overPicture);

}  // namespace inchwright::app
