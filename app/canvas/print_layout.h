#pragma once

#include <QRectF>
#include <vector>

#include "app/canvas/dimension_lines.h"
#include "app/canvas/drawn_places.h"
#include "app/canvas/lettering.h"
#include "app/canvas/print_map.h"

namespace inchwright::app {

class Desk;

/// Where everything of the face that is looked at lies: its places, its dimension lines and how
/// they are lettered. Worked out once an edit, and once a scale.
class PrintLayout {
 public:
  /// Of an empty sheet.
  PrintLayout();
  /// `squaringError`: inches that a place may lie from where the picture shows it.
  PrintLayout(const Desk& desk, bool overPicture, double squaringError, const PrintMap& map);
  /// The same part at another scale.
  PrintLayout(PrintLayout&& before, const Desk& desk, const PrintMap& map);

  /// Whether it was made for this scale and the desk's font as it is now.
  bool suits(const PrintMap& map) const;

  const DrawnFace& drawn() const { return drawn_; }
  const std::vector<DimensionLine>& lines() const { return lines_; }
  const Lettering& lettering() const { return lettering_; }
  /// Where the figure of a line stands, in a pane in pixels.
  QRectF figureBox(const DimensionLine& line, const PrintMap& map, const QRectF& pane) const;

  /// What lies at a place of the pane: a figure, else the nearest place within reach of a click.
  struct Hit {
    Id place;
    Id reading;
  };
  Hit hit(QPointF at, const PrintMap& map, const QRectF& pane) const;

  /// The map that shows `content`, in inches, and beside it what the dimension lines need; but
  /// however many those are, the print keeps most of the pane. `covered` pixels from the left are
  /// kept clear where there is room.
  PrintMap fitted(const QRectF& content, const QSizeF& pane, qreal margin, qreal covered) const;

 private:
  void letter(const Desk& desk, const PrintMap& map);

  DrawnFace drawn_;
  double squaringError_ = 0;
  std::size_t readings_ = 0;  ///< of this face
  std::vector<DimensionLine> lines_;
  Lettering lettering_;
  std::pair<double, qreal> made_{0, 0};  ///< for this scale and height of the desk's figures
};

}  // namespace inchwright::app
