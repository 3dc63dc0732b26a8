#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <QTransform>

namespace inchwright::app {

/// Where the print's inches fall on the widget: one scale, no turn, y up on paper and down on the
/// widget. A pure value; every change makes a new one.
class PrintMap {
 public:
  PrintMap() = default;
  /// `scale` in pixels an inch, `origin` where inch 0, 0 falls.
  PrintMap(qreal scale, QPointF origin) : scale_(scale), origin_(origin) {}

  /// The largest map that shows all of `inches` within `room` less `margin` pixels a side.
  static PrintMap fitting(const QRectF& inches, const QSizeF& room, qreal margin);

  QPointF toWidget(QPointF inches) const;
  QPointF toInches(QPointF pixels) const;
  QRectF toWidget(const QRectF& inches) const;
  QRectF toInches(const QRectF& pixels) const;
  QTransform transform() const;

  qreal scale() const { return scale_; }
  /// Zoomed by `factor` with the point under `fixed` staying there; the scale stays in bounds.
  PrintMap zoomed(qreal factor, QPointF fixed) const;
  PrintMap moved(QPointF pixels) const { return {scale_, origin_ + pixels}; }

  static constexpr qreal kSmallestScale = 2;      ///< pixels an inch
  static constexpr qreal kLargestScale = 20'000;  ///< a thou is 20 pixels

  bool operator==(const PrintMap&) const = default;

 private:
  qreal scale_ = 100;
  QPointF origin_;
};

}  // namespace inchwright::app
