#pragma once

#include <QPointF>
#include <QString>
#include <optional>
#include <vector>

#include "app/canvas/drawn_places.h"
#include "app/session/plausible.h"

namespace inchwright::app {

/// How a reading stands, for the way its line is drawn.
enum class Standing { agrees, alone, doubtful, clashes };

/// One reading drawn as a dimension line beside the view.
struct DimensionLine {
  Id reading;
  QString text;  ///< the figure as lettered
  bool alongViewX = true;
  double from = 0;  ///< inches in the view, along its run; from ≤ to
  double to = 0;
  /// Which line beside the view it stands on: 0 is nearest. Along X they are stacked below the
  /// view, along Y to its left.
  int level = 0;
  /// Where the print's own figure stands, inches in the view: then it is drawn there, and has no
  /// line of its own beside the view.
  std::optional<QPointF> place;
  QPointF fromAt;  ///< inches: what the guides lead to
  QPointF toAt;
  Standing standing = Standing::agrees;
};

/// Lays out the readings of a face so that no two on one level overlap: shortest nearest to the
/// view, each on the first level with room. `textWidth` gives the width of a figure in inches at
/// the scale it will be drawn, so that lettering has room too. Time n log n but for crowded levels.
std::vector<DimensionLine> dimensionLines(const Part& part, const Solution& solution,
                                          const DrawnFace& drawn, const TracingEvidence& evidence,
                                          double textWidthPerCharacter);

}  // namespace inchwright::app
