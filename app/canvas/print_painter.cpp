#include "app/canvas/print_painter.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "app/base/look.h"
#include "app/canvas/print_shapes.h"
#include "app/canvas/stamps.h"
#include "app/canvas/taken_room.h"

namespace inchwright::app {
namespace {

constexpr qreal kLeastRadius = 4;  // pixels: a small hole can still be seen and hit

QPen pencil(const QColor& colour, qreal width, bool broken = false) {
  QPen pen(colour, width);
  pen.setCapStyle(Qt::RoundCap);
  if (broken) pen.setDashPattern({4, 3});
  return pen;
}

template <class... Parts>
std::size_t markOf(const Parts&... parts) {
  return qHashMulti(0, parts...);
}

class PrintPainter {
 public:
  /// Without a painter it only tells what there is to draw.
  PrintPainter(QPainter* painter, const PrintScene& scene, const PrintMap& map,
               const QRegion& visible)
      : painter_(painter),
        scene_(scene),
        map_(map),
        visible_(visible),
        look_(Look::now()),
        bounds_(map.toWidget(scene.drawn.bounds)),
        nameFont_(deskFont(std::max(0.8, scene.lettering.size))),
        ascent_(QFontMetricsF(nameFont_).ascent()),
        high_(QFontMetricsF(nameFont_).height()),
        names_(scene.pane),
        spots_(scene.pane),
        figures_(scene.pane) {}

  std::vector<Inked> paint() {
    if (painter_ != nullptr) {
      painter_->setRenderHint(QPainter::Antialiasing);
      painter_->setFont(scene_.lettering.font);
    }
    std::vector<QLineF> runs;
    for (const DimensionLine& line : scene_.lines) {
      runs.push_back(runNow(line));
      if (!drawsLine(line)) continue;
      guide(map_.toWidget(line.fromAt), runs.back().p1(), line.alongViewX);
      guide(map_.toWidget(line.toAt), runs.back().p2(), line.alongViewX);
    }
    drawGuides();
    for (std::size_t i = 0; i < runs.size(); ++i) {
      if (drawsLine(scene_.lines[i])) paintLine(scene_.lines[i], runs[i]);
    }
    for (std::size_t i = 0; i < runs.size(); ++i) paintFigure(scene_.lines[i], runs[i]);
    paintRows();
    if (painter_ != nullptr) painter_->setFont(nameFont_);
    for (const DrawnPlace& place : scene_.drawn.places) takeSpot(place);
    for (const DrawnPlace& place : scene_.drawn.places) paintPlace(place);
    paintWhereabouts();
    for (const PrintScene::Offered& one : scene_.offered) paintOffered(one);
    if (scene_.pending) paintPending();
    for (std::size_t i = 0; i < scene_.marks.size(); ++i) paintMark(i);
    return std::move(inked_);
  }

 private:
  /// Notes what is to be drawn; whether it is to be drawn now.
  bool wants(const QRectF& box, std::size_t look) {
    const QRect pixels = pixelsOf(box);
    if (!scene_.pane.intersects(pixels)) return false;
    inked_.push_back({pixels, look});
    return painter_ != nullptr && visible_.intersects(pixels);
  }

  void paintPlace(const DrawnPlace& place) {
    const bool chosen = scene_.chosenPlaces.count(place.id) > 0;
    const bool hovered = scene_.hovered == place.id;
    const QColor colour = place.disputed      ? look_.red
                          : chosen || hovered ? look_.blue
                                              : look_.pencil;
    if (place.isAxis) {
      paintAxis(place, chosen, colour);
    } else if (place.across) {
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
    if (wants(QRectF(line.p1(), line.p2()).normalized().adjusted(-6, -6, 6, 6),
              markOf(1, line.x1(), line.y1(), line.x2(), line.y2(), colour.rgba(), chosen,
                     place.placed, place.disputed))) {
      if (chosen) {
        painter_->setPen(QPen(look_.wash, 9));
        painter_->drawLine(line);
      }
      painter_->setPen(pencil(colour, chosen ? 2.6 : kFirmLine, !place.placed));
      painter_->setBrush(Qt::NoBrush);
      if (place.disputed) {
        painter_->drawPath(torn(line));
      } else {
        painter_->drawLine(line);
      }
    }
    const QString text = textOf(place);
    const QRectF box = besideEdge(line, place.alongViewX, QSizeF(widthOf(text), high_));
    letterName(text, box, colour);
  }

  /// Where an edge's name stands: at its first end, or, where a figure does, at the other or
  /// further out.
  QRectF besideEdge(const QLineF& line, bool upright, const QSizeF& size) const {
    const QPointF first = line.p1() + (upright ? QPointF(4, -2) : QPointF(-14, -4));
    const QPointF last =
        line.p2() + (upright ? QPointF(4, ascent_) : QPointF(14 - size.width(), -4));
    const QPointF out = upright ? QPointF(0, -high_) : QPointF(-size.width() - 14, 0);
    for (const QPointF& tag : {first, last, first + out, last - out}) {
      const QRectF box(tag - QPointF(0, ascent_), size);
      if (figures_.isFree(box)) return box;
    }
    return {first - QPointF(0, ascent_), size};
  }

  /// A centre line as the trade draws it: long and short strokes.
  void paintAxis(const DrawnPlace& place, bool chosen, const QColor& colour) {
    const qreal y = map_.toWidget(place.at).y();
    const QLineF line(bounds_.left() - kEdgeOverhang, y, bounds_.right() + kEdgeOverhang, y);
    const QRectF box = QRectF(line.p1(), line.p2()).adjusted(-3, -3, 3, 3);
    if (wants(box, markOf(10, line.x1(), y, line.x2(), colour.rgba(), chosen))) {
      QPen pen(colour, chosen ? 2.0 : kFineLine);
      pen.setDashPattern({14, 4, 3, 4});
      painter_->setPen(pen);
      painter_->drawLine(line);
    }
    const QString text = textOf(place);
    const QRectF tag(QPointF(line.x1(), y - 4 - ascent_), QSizeF(widthOf(text), high_));
    letterName(text, tag, colour);
  }

  void paintSpot(const DrawnPlace& place, bool chosen, const QColor& colour) {
    const QPointF at = map_.toWidget(place.at);
    const qreal radius = std::max(place.radius * map_.scale(), kLeastRadius);
    const bool ringCentre = place.isPitchCircle();
    const QPainterPath outline = outlineOf(place, map_);
    const QRectF box = QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)
                           .united(outline.boundingRect())
                           .adjusted(-9, -9, 9, 9);
    if (wants(box, markOf(2, at.x(), at.y(), radius, colour.rgba(), chosen, place.placed,
                          ringCentre, static_cast<int>(place.kind), place.half.x(), place.half.y(),
                          place.bulges.x(), place.bulges.y(), place.id == place.feature))) {
      if (outline.isEmpty()) {
        drawSpot(place, at, radius, chosen, ringCentre ? look_.faint : colour, colour);
      } else {
        drawOutline(outline, at, place.placed, chosen, colour);
      }
    }
    if (!scene_.pane.intersects(box)) return;
    name(place, at, std::min(radius, 14.0) * 0.72, colour);
  }

  void drawSpot(const DrawnPlace& place, QPointF at, qreal radius, bool chosen,
                const QColor& outline, const QColor& colour) {
    if (chosen) {
      painter_->setPen(Qt::NoPen);
      painter_->setBrush(look_.wash);
      painter_->drawEllipse(at, radius + 6, radius + 6);
    }
    const bool ringCentre = outline != colour;
    painter_->setPen(ringCentre ? pencil(outline, kFineLine, true)
                                : pencil(colour, chosen ? 2.6 : kFirmLine, !place.placed));
    painter_->setBrush(Qt::NoBrush);
    if (place.isPoint() || place.isSlotEnd()) {
      painter_->drawLine(at + QPointF(-5, -5), at + QPointF(5, 5));
      painter_->drawLine(at + QPointF(-5, 5), at + QPointF(5, -5));
      return;
    }
    if (ringCentre || !place.placed) {
      painter_->drawEllipse(at, radius, radius);
    } else {
      stampCircle(*painter_, at, radius, colour, chosen ? 2.6 : kFirmLine);
    }
    stampCircle(*painter_, at, 1.2, colour);
  }

  void drawOutline(const QPainterPath& outline, QPointF at, bool placed, bool chosen,
                   const QColor& colour) {
    painter_->setBrush(Qt::NoBrush);
    if (chosen) {
      painter_->setPen(QPen(look_.wash, 11));
      painter_->drawPath(outline);
    }
    painter_->setPen(pencil(colour, chosen ? 2.6 : kFirmLine, !placed));
    painter_->drawPath(outline);
    stampCircle(*painter_, at, 1.2, colour);
  }

  void paintRows() {
    for (const QLineF& line : rowLines(scene_.drawn, map_)) {
      const QRectF box = QRectF(line.p1(), line.p2()).normalized().adjusted(-2, -2, 2, 2);
      if (!wants(box, markOf(9, line.x1(), line.y1(), line.x2(), line.y2()))) continue;
      painter_->setPen(pencil(look_.faint, kFineLine, true));
      painter_->drawLine(line);
    }
  }

  /// The id beside what it names, at the first of its four corners where it covers neither another
  /// name nor a spot nor a figure, or else no other name; left out where none is free, unless it is
  /// what one looks at.
  void name(const DrawnPlace& place, QPointF at, qreal away, const QColor& colour) {
    const QString text = textOf(place);
    const QSizeF size(widthOf(text), high_);
    const auto corner = [&](int number) {
      const bool left = number >= 2, below = number == 1 || number == 2;
      return QRectF(QPointF(at.x() + (left ? -away - 4 - size.width() : away + 4),
                            at.y() + (below ? away + 3 : -away - 3 - ascent_)),
                    size);
    };
    std::optional<QRectF> box;
    for (int number = 0; number < 4; ++number) {
      const QRectF here = corner(number);
      if (!names_.isFree(here)) continue;
      const bool clear = spots_.isFree(here) && figures_.isFree(here);
      if (clear || !box) box = here;
      if (clear) break;
    }
    const bool wanted = scene_.chosenPlaces.count(place.id) > 0 || scene_.hovered == place.id;
    if (box || wanted) letterName(text, box.value_or(corner(0)), colour);
  }

  qreal widthOf(const QString& name) const { return scene_.widths.of(name, nameFont_); }

  static QString textOf(const DrawnPlace& place) {
    QString text = QString::fromStdString(place.id);
    if (!place.placed) text += QStringLiteral(" ?");
    if (place.disputed) text += QStringLiteral(" ≠");
    return text;
  }

  /// On a patch of paper, so that it reads over lines.
  void letterName(const QString& text, const QRectF& box, const QColor& colour) {
    names_.take(box);
    const QRectF patched = box.adjusted(-2, 0, 2, -1);
    if (!wants(box.adjusted(-3, -3, 3, 3), markOf(3, box.x(), box.y(), text, colour.rgba()))) {
      return;
    }
    QColor patch = look_.print;
    patch.setAlpha(200);
    fillBlended(*painter_, patched, patch);
    painter_->setPen(colour);
    painter_->drawText(box.topLeft() + QPointF(0, ascent_), text);
  }

  /// What lies in the middle of a hole is not to be covered by the name of another.
  void takeSpot(const DrawnPlace& place) {
    if (place.across) return;
    const QPointF at = map_.toWidget(place.at);
    if (scene_.pane.contains(at)) spots_.take(QRectF(at.x() - 4, at.y() - 4, 8, 8));
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

  /// What stands on the print's own figure has the print's own line.
  static bool drawsLine(const DimensionLine& line) { return !line.place; }

  QColor colourOf(const DimensionLine& line) const {
    const bool wrong = line.standing == Standing::clashes || line.standing == Standing::doubtful;
    return wrong ? look_.red : look_.blue;
  }

  void paintLine(const DimensionLine& line, const QLineF& run) {
    const bool chosen = scene_.chosenReadings.count(line.reading) > 0;
    const QColor colour = colourOf(line);
    if (!wants(QRectF(run.p1(), run.p2()).normalized().adjusted(-4, -4, 4, 4),
               markOf(4, run.x1(), run.y1(), run.x2(), run.y2(), colour.rgba(), chosen,
                      static_cast<int>(line.standing)))) {
      return;
    }
    painter_->setBrush(Qt::NoBrush);
    painter_->setPen(pencil(colour, chosen ? 2.6 : kFineLine, line.standing == Standing::alone));
    if (line.standing == Standing::clashes) {
      painter_->drawPath(torn(run));
    } else {
      painter_->drawLine(run);
    }
    // Our own ends: a dot at either feature.
    stampCircle(*painter_, run.p1(), 2.4, colour);
    stampCircle(*painter_, run.p2(), 2.4, colour);
  }

  void paintFigure(const DimensionLine& line, const QLineF& run) {
    QRectF box = letteringOn(run, line, map_, scene_.lettering, scene_.pane);
    if (scene_.hideFigures) box = sameForAll(box);
    figures_.take(box);
    const bool chosen = scene_.chosenReadings.count(line.reading) > 0;
    const QColor colour = colourOf(line);
    if (!wants(box.adjusted(-2, -2, 2, 2),
               markOf(5, box.x(), box.y(), line.text, colour.rgba(), chosen, scene_.hideFigures,
                      static_cast<int>(line.standing), scene_.lettering.size))) {
      return;
    }
    QColor patch = look_.print;
    patch.setAlpha(225);
    fillBlended(*painter_, box, chosen ? blended(look_.print, look_.wash) : patch);
    if (line.place) {
      painter_->setPen(pencil(colour, chosen ? 2.6 : kFineLine));
      painter_->setBrush(Qt::NoBrush);
      painter_->drawRoundedRect(box, 4, 4);
    }
    painter_->setPen(colour);
    QString text = scene_.hideFigures ? QStringLiteral("…") : line.text;
    if (line.standing == Standing::doubtful && !scene_.hideFigures) text += QStringLiteral(" ?");
    if (line.standing == Standing::clashes && !scene_.hideFigures) text += QStringLiteral(" ≠");
    letter(box, text, line.alongViewX);
  }

  /// Figures run along their line: an upright one is read from the right.
  void letter(const QRectF& box, const QString& text, bool alongViewX) {
    if (alongViewX) {
      painter_->drawText(box, Qt::AlignCenter, text);
      return;
    }
    painter_->save();
    painter_->translate(box.center());
    painter_->rotate(-90);
    painter_->drawText(QRectF(-box.height() / 2, -box.width() / 2, box.height(), box.width()),
                       Qt::AlignCenter, text);
    painter_->restore();
  }

  /// A patch whose size says nothing of the figure it hides.
  static QRectF sameForAll(const QRectF& box) {
    const qreal side = std::min(box.width(), box.height());
    QRectF patch(0, 0, side, side);
    patch.moveCenter(box.center());
    return patch;
  }

  void guide(QPointF feature, QPointF end, bool alongViewX) {
    const QPointF start = alongViewX ? QPointF(end.x(), std::max(feature.y(), bounds_.bottom()))
                                     : QPointF(std::min(feature.x(), bounds_.left()), end.y());
    if (!wants(QRectF(start, end).normalized().adjusted(-2, -2, 2, 2),
               markOf(6, start.x(), start.y(), end.x(), end.y()))) {
      return;
    }
    guides_.push_back({start, end});
  }

  void drawGuides() {
    if (guides_.isEmpty()) return;
    painter_->setPen(pencil(look_.faint, 0.6));
    painter_->drawLines(guides_);
  }

  void paintWhereabouts() {
    for (const BrokenMark& one : brokenMarks(scene_.whereabouts, map_, scene_.pane)) {
      const QSizeF size(widthOf(one.name), one.name.isEmpty() ? 0 : high_);
      const QRectF name(one.nameAt - QPointF(0, size.height()), size);
      const QRectF box = one.path.boundingRect().united(name).adjusted(-3, -3, 3, 3);
      if (!wants(box & scene_.pane, markOf(11, box.x(), box.y(), box.width(), box.height()))) {
        continue;
      }
      painter_->setPen(pencil(look_.pencil, kFirmLine, true));
      painter_->setBrush(one.name.isEmpty() ? QBrush(Qt::NoBrush) : QBrush(look_.wash));
      painter_->drawPath(one.path);
      painter_->drawText(name.topLeft() + QPointF(0, ascent_), one.name);
    }
  }

  void paintOffered(const PrintScene::Offered& one) {
    const QLineF line(map_.toWidget(one.line.p1()), map_.toWidget(one.line.p2()));
    const qreal radius = one.radius * map_.scale() + 5;
    const QRectF box = QRectF(line.p1(), line.p2())
                           .normalized()
                           .adjusted(-radius - 6, -radius - 6, radius + 6, radius + 6);
    if (!wants(box, markOf(10, line.x1(), line.y1(), line.x2(), line.y2(), radius, one.lit))) {
      return;
    }
    painter_->setBrush(Qt::NoBrush);
    const auto draw = [&] {
      if (one.radius > 0) {
        painter_->drawEllipse(line.p1(), radius, radius);
      } else {
        painter_->drawLine(line);
      }
    };
    if (one.lit) {
      painter_->setPen(QPen(look_.wash, 9));
      draw();
    }
    painter_->setPen(one.lit ? pencil(look_.blue, kFirmLine, true)
                             : pencil(look_.faint, kFirmLine, true));
    draw();
  }

  void paintPending() {
    const QPointF at = map_.toWidget(*scene_.pending);
    if (!wants(QRectF(at.x() - 12, at.y() - 12, 24, 24), markOf(7, at.x(), at.y()))) return;
    painter_->setPen(pencil(look_.blue, kFirmLine, true));
    painter_->setBrush(look_.wash);
    painter_->drawEllipse(at, 9, 9);
  }

  void paintMark(std::size_t index) {
    const QPointF at = map_.toWidget(scene_.marks[index]);
    const QString text = QString::number(index + 1);
    const qreal wide = widthOf(text) + high_;
    if (!wants(QRectF(at.x() - 10, at.y() - 10, 20, 20).adjusted(0, -wide, wide, 0),
               markOf(8, at.x(), at.y(), index))) {
      return;
    }
    painter_->setPen(pencil(look_.blue, kFirmLine));
    painter_->setBrush(look_.wash);
    painter_->drawEllipse(at, 7, 7);
    painter_->drawText(at + QPointF(10, -6), text);
  }

  QPainter* painter_;
  const PrintScene& scene_;
  const PrintMap& map_;
  const QRegion& visible_;
  const Look& look_;
  QRectF bounds_;
  QFont nameFont_;
  qreal ascent_, high_;  ///< of names, pixels
  TakenRoom names_;      ///< where a name stands
  TakenRoom spots_;
  TakenRoom figures_;
  QList<QLineF> guides_;
  std::vector<Inked> inked_;
};

}  // namespace

std::vector<Inked> paintPrint(QPainter& painter, const PrintScene& scene, const PrintMap& map,
                              const QRegion& visible) {
  return PrintPainter(&painter, scene, map, visible).paint();
}

std::vector<Inked> inkOf(const PrintScene& scene, const PrintMap& map) {
  return PrintPainter(nullptr, scene, map, {}).paint();
}

}  // namespace inchwright::app
