#pragma once

#include <QLineF>
#include <QPainterPath>
#include <QPointF>
#include <QString>
#include <cstddef>
#include <optional>
#include <vector>

#include "app/canvas/drawn_places.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

class Desk;

/// Where the one place that is chosen could still lie, in inches of the view: along endless
/// straight ways, on rings, or at one of several spots. All empty where it is placed, or free
/// altogether.
///
/// A hole 2 from A and no more: a ring about A of radius 2. A hole 3/8 from the left side and no
/// more: an upright way. A hole 2 from A and 2 from B: two spots. A hole chained from one of these:
/// the same, so far from there.
struct Whereabouts {
  struct Ring {
    QPointF middle;
    double radius = 0;
  };
  std::vector<QLineF> ways;  ///< two points of each, at most an inch apart
  std::vector<Ring> rings;
  std::vector<QPointF> spots;  ///< in the order of the answers
  double radius = 0;           ///< of the place, drawn at each spot
  std::size_t answers = 0;     ///< which of `BeyondChains::answers` the spots are

  bool isEmpty() const { return ways.empty() && rings.empty() && spots.empty(); }
};

/// One of them as it is drawn on the pane, in pixels.
struct BrokenMark {
  QPainterPath path;
  QString name = {};  ///< a spot's number as among the doubts
  QPointF nameAt = {};
};

std::vector<BrokenMark> brokenMarks(const Whereabouts& all, const PrintMap& map,
                                    const QRectF& pane);
/// The spot that a click on the pane means; empty where none is near.
std::optional<std::size_t> spotAt(const Whereabouts& all, QPointF at, const PrintMap& map);

Whereabouts whereaboutsOf(const Desk& desk, const DrawnFace& drawn);

}  // namespace inchwright::app
