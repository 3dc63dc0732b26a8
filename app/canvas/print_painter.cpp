#include "app/canvas/print_painter.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <QPixmap>
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

constexpr qreal kLeastRadius = 4;  // pixels: a small hole can still be seen and hit
constexpr qreal kRoom = 8;         // pixels: the grain of what names cover
constexpr qreal kTear = 5;         // pixels: the teeth of a torn line

QPen pencil(const QColor& colour, qreal width, bool broken = false) {
  QPen pen(colour, width);
  pen.setCapStyle(Qt::RoundCap);
  if (broken) pen.setDashPattern({4, 3});
  return pen;
}

/// A straight line torn across: where a loop does not close.
QPainterPath torn(const QLineF& line) {
  QPainterPath path(line.p1());
  const QPointF along = line.unitVector().p2() - line.p1();
  const QPointF across(-along.y(), along.x());
  const qreal length = line.length();
  int tooth = 0;
  for (qreal at = kTear; at < length - kTear; at += kTear) {
    path.lineTo(line.p1() + along * at + across * (++tooth % 2 == 0 ? 2.5 : -2.5));
  }
  path.lineTo(line.p2());
  return path;
}

class PrintPainter {
 public:
  PrintPainter(QPainter& painter, const PrintScene& scene, const PrintMap& map,
               const QRectF& visible)
      : painter_(painter),
        scene_(scene),
        map_(map),
        visible_(visible),
        look_(Look::now()),
        bounds_(map.toWidget(scene.drawn.bounds)),
        names_(scene.pane),
        spots_(scene.pane) {}

  void paint() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(scene_.lettering.font);
    for (const DimensionLine& line : scene_.lines) paintLine(line);
    for (const DimensionLine& line : scene_.lines) paintFigure(line);
    painter_.setFont(deskFont(std::max(0.8, scene_.lettering.size)));
    for (const DrawnPlace& place : scene_.drawn.places) takeSpot(place);
    for (const DrawnPlace& place : scene_.drawn.places) paintPlace(place);
    if (scene_.pending) paintPending();
    for (std::size_t i = 0; i < scene_.marks.size(); ++i) paintMark(i);
  }

 private:
  void paintPlace(const DrawnPlace& place) {
    const bool chosen = scene_.chosenPlaces.count(place.id) > 0;
    const bool hovered = scene_.hovered == place.id;
    const QColor colour = place.disputed      ? look_.red
                          : chosen || hovered ? look_.blue
                                              : look_.pencil;
    painter_.setPen(pencil(colour, chosen ? 2.6 : kFirmLine, !place.placed));
    painter_.setBrush(Qt::NoBrush);
    if (place.across) {
      paintEdge(place, chosen, colour);
    } else {
      paintSpot(place, chosen, colour);
    }
  }

  void paintEdge(const DrawnPlace& place, bool chosen, const QColor& colour) {
    const QPointF at = map_.toWidget(place.at);
    const QLineF line = place.alongViewX ? QLineF(at.x(), bounds_.top() - kEdgeOverhang, at.x(),
                                                  bounds_.bottom() + kEdgeOverhang)
                                         : QLineF(bounds_.left() - kEdgeOverhang, at.y(),
                                                  bounds_.right() + kEdgeOverhang, at.y());
    if (!visible_.intersects(
            QRectF(line.p1(), line.p2()).normalized().adjusted(-30, -30, 30, 30))) {
      return;
    }
    if (chosen) {
      painter_.setPen(QPen(look_.wash, 9));
      painter_.drawLine(line);
      painter_.setPen(pencil(colour, 2.6, !place.placed));
    }
    if (place.disputed) {
      painter_.drawPath(torn(line));
    } else {
      painter_.drawLine(line);
    }
    const QPointF tag = line.p1() + (place.alongViewX ? QPointF(4, -2) : QPointF(-14, -4));
    const QFontMetricsF metrics(painter_.font());
    const QString text = textOf(place);
    const QRectF box(tag - QPointF(0, metrics.ascent()),
                     QSizeF(metrics.horizontalAdvance(text), metrics.height()));
    names_.take(box);
    letterName(text, box, metrics.ascent(), colour);
  }

  void paintSpot(const DrawnPlace& place, bool chosen, const QColor& colour) {
    const QPointF at = map_.toWidget(place.at);
    const qreal radius = std::max(place.radius * map_.scale(), kLeastRadius);
    if (!visible_.intersects(QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)
                                 .adjusted(-40, -40, 40, 40))) {
      return;
    }
    const bool ringCentre = place.kind == FeatureKind::ring && place.id == place.feature;
    if (chosen) {
      painter_.setPen(Qt::NoPen);
      painter_.setBrush(look_.wash);
      painter_.drawEllipse(at, radius + 6, radius + 6);
      painter_.setPen(pencil(colour, 2.6, !place.placed));
      painter_.setBrush(Qt::NoBrush);
    }
    if (ringCentre) painter_.setPen(pencil(look_.faint, kFineLine, true));
    if (place.kind == FeatureKind::point) {
      painter_.drawLine(at + QPointF(-5, -5), at + QPointF(5, 5));
      painter_.drawLine(at + QPointF(-5, 5), at + QPointF(5, -5));
    } else if (radius == kLeastRadius && !chosen && !ringCentre) {
      const QPixmap& small = stamp(colour, place.placed);
      const qreal half = small.deviceIndependentSize().width() / 2;
      painter_.drawPixmap(at - QPointF(half, half), small);
    } else {
      painter_.drawEllipse(at, radius, radius);
      painter_.setBrush(colour);
      painter_.drawEllipse(at, 1.2, 1.2);
      painter_.setBrush(Qt::NoBrush);
    }
    name(place, at, std::min(radius, 14.0) * 0.72, colour);
  }

  /// The smallest spots are all alike: drawn once, and then only put down.
  const QPixmap& stamp(const QColor& colour, bool placed) {
    QPixmap& kept = stamps_[{colour.rgba(), placed}];
    if (!kept.isNull()) return kept;
    const qreal ratio = painter_.device()->devicePixelRatioF();
    const qreal side = 2 * (kLeastRadius + 2);
    kept = QPixmap(QSizeF(side * ratio, side * ratio).toSize());
    kept.setDevicePixelRatio(ratio);
    kept.fill(Qt::transparent);
    QPainter drawing(&kept);
    drawing.setRenderHint(QPainter::Antialiasing);
    drawing.setPen(pencil(colour, kFirmLine, !placed));
    const QPointF middle(side / 2, side / 2);
    drawing.drawEllipse(middle, kLeastRadius, kLeastRadius);
    drawing.setBrush(colour);
    drawing.drawEllipse(middle, 1.2, 1.2);
    return kept;
  }

  /// The id beside what it names, at the first of its four corners where it covers neither another
  /// name nor a spot, or else no other name; left out where none is free, unless it is what one
  /// looks at.
  void name(const DrawnPlace& place, QPointF at, qreal away, const QColor& colour) {
    const QString text = textOf(place);
    const QFontMetricsF metrics(painter_.font());
    const QSizeF size(metrics.horizontalAdvance(text), metrics.height());
    const auto corner = [&](int number) {
      const bool left = number >= 2, below = number == 1 || number == 2;
      return QRectF(QPointF(at.x() + (left ? -away - 4 - size.width() : away + 4),
                            at.y() + (below ? away + 3 : -away - 3 - metrics.ascent())),
                    size);
    };
    std::optional<QRectF> box;
    for (int number = 0; number < 8 && !box; ++number) {
      const QRectF wanted = corner(number % 4);
      if (names_.isFree(wanted) && (number >= 4 || spots_.isFree(wanted))) box = wanted;
    }
    const bool wanted = scene_.chosenPlaces.count(place.id) > 0 || scene_.hovered == place.id;
    if (!box && wanted) box = corner(0);
    if (!box) return;
    names_.take(*box);
    letterName(text, *box, metrics.ascent(), colour);
  }

  static QString textOf(const DrawnPlace& place) {
    QString text = QString::fromStdString(place.id);
    if (!place.placed) text += QStringLiteral(" ?");
    if (place.disputed) text += QStringLiteral(" ≠");
    return text;
  }

  /// On a patch of paper, so that it reads over lines.
  void letterName(const QString& text, const QRectF& box, qreal ascent, const QColor& colour) {
    QColor patch = look_.print;
    patch.setAlpha(200);
    painter_.fillRect(box.adjusted(-2, 0, 2, -1), patch);
    painter_.setPen(colour);
    painter_.drawText(box.topLeft() + QPointF(0, ascent), text);
  }

  /// What of the pane is covered, by squares of kRoom pixels.
  class Squares {
   public:
    explicit Squares(const QRectF& pane)
        : corner_(pane.topLeft()),
          columns_(std::max(1, static_cast<int>(std::ceil(pane.width() / kRoom)))),
          rows_(std::max(1, static_cast<int>(std::ceil(pane.height() / kRoom)))),
          taken_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_)) {}

    bool isFree(const QRectF& box) const {
      return every(box, [this](std::size_t square) { return taken_[square] == 0; });
    }
    void take(const QRectF& box) {
      every(box, [this](std::size_t square) {
        taken_[square] = 1;
        return true;
      });
    }

   private:
    template <class Each>
    bool every(const QRectF& box, Each each) const {
      const auto square = [](qreal at) { return static_cast<int>(std::floor(at / kRoom)); };
      const int left = std::max(0, square(box.left() + 1 - corner_.x()));
      const int right = std::min(columns_ - 1, square(box.right() - 1 - corner_.x()));
      const int top = std::max(0, square(box.top() + 1 - corner_.y()));
      const int bottom = std::min(rows_ - 1, square(box.bottom() - 2 - corner_.y()));
      for (int row = top; row <= bottom; ++row) {
        for (int column = left; column <= right; ++column) {
          if (!each(static_cast<std::size_t>(row * columns_ + column))) return false;
        }
      }
      return true;
    }

    QPointF corner_;
    int columns_;
    int rows_;
    std::vector<char> taken_;
  };

  /// What lies in the middle of a hole is not to be covered by the name of another.
  void takeSpot(const DrawnPlace& place) {
    if (place.across) return;
    const QPointF at = map_.toWidget(place.at);
    if (visible_.contains(at)) spots_.take(QRectF(at.x() - 4, at.y() - 4, 8, 8));
  }

  /// A line that is chosen comes into the pane.
  QLineF runNow(const DimensionLine& line) const {
    const QLineF run = runOf(line, scene_.drawn, map_, scene_.lettering);
    if (scene_.chosenReadings.count(line.reading) == 0) return run;
    const qreal high = scene_.lettering.spacing;
    const qreal down =
        std::clamp(run.y1(), scene_.pane.top() + high, scene_.pane.bottom() - 6) - run.y1();
    const qreal across =
        std::clamp(run.x1(), scene_.pane.left() + high, scene_.pane.right() - 6) - run.x1();
    return line.alongViewX ? run.translated(0, down) : run.translated(across, 0);
  }

  QColor colourOf(const DimensionLine& line) const {
    const bool wrong = line.standing == Standing::clashes || line.standing == Standing::doubtful;
    return wrong ? look_.red : look_.blue;
  }

  void paintLine(const DimensionLine& line) {
    const QLineF run = runNow(line);
    if (!visible_.intersects(QRectF(run.p1(), run.p2()).normalized().adjusted(-3, -3, 3, 3))) {
      return;
    }
    const bool chosen = scene_.chosenReadings.count(line.reading) > 0;
    const QColor colour = colourOf(line);
    guide(map_.toWidget(line.fromAt), run.p1(), line.alongViewX);
    guide(map_.toWidget(line.toAt), run.p2(), line.alongViewX);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(pencil(colour, chosen ? 2.6 : kFineLine, line.standing == Standing::alone));
    if (line.standing == Standing::clashes) {
      painter_.drawPath(torn(run));
    } else {
      painter_.drawLine(run);
    }
    // Our own ends: a dot at either feature.
    painter_.setBrush(colour);
    painter_.setPen(Qt::NoPen);
    painter_.drawEllipse(run.p1(), 2.4, 2.4);
    painter_.drawEllipse(run.p2(), 2.4, 2.4);
    painter_.setBrush(Qt::NoBrush);
  }

  void paintFigure(const DimensionLine& line) {
    QRectF box = letteringOn(runNow(line), line, scene_.lettering, scene_.pane);
    if (scene_.hideFigures) box = sameForAll(box);
    if (!visible_.intersects(box)) return;
    const bool chosen = scene_.chosenReadings.count(line.reading) > 0;
    QColor patch = look_.print;
    patch.setAlpha(225);
    painter_.fillRect(box, chosen ? blended(look_.print, look_.wash) : patch);
    painter_.setPen(colourOf(line));
    QString text = scene_.hideFigures ? QStringLiteral("…") : line.text;
    if (line.standing == Standing::doubtful && !scene_.hideFigures) text += QStringLiteral(" ?");
    if (line.standing == Standing::clashes && !scene_.hideFigures) text += QStringLiteral(" ≠");
    letter(box, text, line.alongViewX);
  }

  /// Figures run along their line: an upright one is read from the right.
  void letter(const QRectF& box, const QString& text, bool alongViewX) {
    if (alongViewX) {
      painter_.drawText(box, Qt::AlignCenter, text);
      return;
    }
    painter_.save();
    painter_.translate(box.center());
    painter_.rotate(-90);
    painter_.drawText(QRectF(-box.height() / 2, -box.width() / 2, box.height(), box.width()),
                      Qt::AlignCenter, text);
    painter_.restore();
  }

  /// A patch whose size says nothing of the figure it hides.
  static QRectF sameForAll(const QRectF& box) {
    const qreal side = std::min(box.width(), box.height());
    QRectF patch(0, 0, side, side);
    patch.moveCenter(box.center());
    return patch;
  }

  void guide(QPointF feature, QPointF end, bool alongViewX) {
    painter_.setPen(pencil(look_.faint, 0.6));
    const QPointF start = alongViewX ? QPointF(end.x(), std::max(feature.y(), bounds_.bottom()))
                                     : QPointF(std::min(feature.x(), bounds_.left()), end.y());
    painter_.drawLine(start, end);
  }

  static QColor blended(const QColor& paper, const QColor& wash) {
    const qreal a = wash.alphaF();
    return QColor::fromRgbF(static_cast<float>(paper.redF() * (1 - a) + wash.redF() * a),
                            static_cast<float>(paper.greenF() * (1 - a) + wash.greenF() * a),
                            static_cast<float>(paper.blueF() * (1 - a) + wash.blueF() * a));
  }

  void paintPending() {
    const QPointF at = map_.toWidget(*scene_.pending);
    painter_.setPen(pencil(look_.blue, kFirmLine, true));
    painter_.setBrush(look_.wash);
    painter_.drawEllipse(at, 9, 9);
  }

  void paintMark(std::size_t index) {
    const QPointF at = map_.toWidget(scene_.marks[index]);
    painter_.setPen(pencil(look_.blue, kFirmLine));
    painter_.setBrush(look_.wash);
    painter_.drawEllipse(at, 7, 7);
    painter_.drawText(at + QPointF(10, -6), QString::number(index + 1));
  }

  QPainter& painter_;
  const PrintScene& scene_;
  const PrintMap& map_;
  QRectF visible_;
  const Look& look_;
  QRectF bounds_;
  Squares names_;  ///< of the sheet, where a name stands
  Squares spots_;
  std::map<std::pair<QRgb, bool>, QPixmap> stamps_;
};

}  // namespace

void paintPrint(QPainter& painter, const PrintScene& scene, const PrintMap& map,
                const QRectF& visible) {
  PrintPainter(painter, scene, map, visible).paint();
}

}  // namespace inchwright::app
