#include "app/canvas/lettering.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr qreal kLargestLettering = 0.95;   // times the desk's font
constexpr qreal kSmallestLettering = 0.75;  // still 10 pixels where the desk has 10 points
constexpr qreal kSizeStep = 0.05;           // so that a zoom does not need a font a step
constexpr qreal kRoomForName = 18;          // pixels: the name of an edge at its near end
constexpr qreal kLineSpacing = 1.3;         // times the height of the figures

/// Upright lines leave room for the names of the edges, and letter towards the outside.
qreal besideAt(int level, const Lettering& lettering) {
  return kEdgeOverhang + kRoomForName + lettering.spacing * level;
}

qreal belowAt(int level, const Lettering& lettering) {
  return kEdgeOverhang + lettering.spacing * (level + 1);
}

}  // namespace

Lettering letteringFor(const DrawnFace& drawn, std::size_t readings, const PrintMap& map) {
  const qreal usual = QFontMetricsF(figures(1.0)).height();
  const qreal extent = std::min(drawn.bounds.width(), drawn.bounds.height()) * map.scale();
  // About half of the readings stand on each side, and may take as much room as the view.
  const qreal lines = std::max(1.0, static_cast<qreal>(readings) / 2);
  const qreal size =
      std::clamp(extent / (lines * kLineSpacing * usual), kSmallestLettering, kLargestLettering);
  Lettering lettering;
  lettering.size = std::floor(size / kSizeStep + 1e-6) * kSizeStep;
  lettering.font = figures(lettering.size);
  const QFontMetricsF metrics(lettering.font);
  lettering.height = metrics.height();
  lettering.character = metrics.horizontalAdvance(QLatin1Char('0'));
  lettering.spacing = kLineSpacing * lettering.height;
  return lettering;
}

qreal TextWidths::of(const QString& text, const QFont& font) {
  if (font != font_ || widths_.size() > kMost) widths_.clear();
  font_ = font;
  const auto known = widths_.constFind(text);
  if (known != widths_.constEnd()) return *known;
  return *widths_.insert(text, QFontMetricsF(font).horizontalAdvance(text));
}

qreal roomBelow(int levels, const Lettering& lettering) {
  return levels == 0 ? 0 : belowAt(levels - 1, lettering) + 6;
}

qreal roomBeside(int levels, const Lettering& lettering) {
  return levels == 0 ? 0 : besideAt(levels - 1, lettering) + lettering.height + 6;
}

QLineF runOf(const DimensionLine& line, const DrawnFace& drawn, const PrintMap& map,
             const Lettering& lettering) {
  const QRectF bounds = map.toWidget(drawn.bounds);
  if (line.alongViewX) {
    const qreal y = bounds.bottom() + belowAt(line.level, lettering);
    return {map.toWidget({line.from, 0}).x(), y, map.toWidget({line.to, 0}).x(), y};
  }
  const qreal x = bounds.left() - besideAt(line.level, lettering);
  return {x, map.toWidget({0, line.from}).y(), x, map.toWidget({0, line.to}).y()};
}

QRectF letteringOn(const QLineF& run, const DimensionLine& line, const PrintMap& map,
                   const Lettering& lettering, const QRectF& pane) {
  const bool marked = line.standing == Standing::doubtful || line.standing == Standing::clashes;
  const qreal wide =
      lettering.character * static_cast<qreal>(line.text.size() + (marked ? 2 : 0)) + 4;
  if (line.place) {
    const QSizeF size(line.alongViewX ? wide : lettering.height,
                      line.alongViewX ? lettering.height : wide);
    QRectF box(QPointF(0, 0), size);
    box.moveCenter(map.toWidget(*line.place));
    return box;
  }
  // The middle of what can be seen of the line, when there is room for it.
  qreal low = line.alongViewX ? run.x1() : run.y2(), high = line.alongViewX ? run.x2() : run.y1();
  const qreal first = std::max(low, line.alongViewX ? pane.left() : pane.top());
  const qreal last = std::min(high, line.alongViewX ? pane.right() : pane.bottom());
  if (last - first > wide) std::tie(low, high) = std::pair(first, last);
  const qreal middle = (low + high) / 2;
  if (line.alongViewX) {
    return {middle - wide / 2, run.y1() - lettering.height - 1, wide, lettering.height};
  }
  return {run.x1() - lettering.height - 1, middle - wide / 2, lettering.height, wide};
}

}  // namespace inchwright::app
