#include "app/render/painting.h"

#include <QColor>
#include <QGlyphRun>
#include <QPaintEngine>
#include <QPainter>
#include <QPen>
#include <QPointF>
#include <QPolygonF>
#include <QRawFont>
#include <QRectF>
#include <QString>
#include <array>

#include "app/render/faces.h"
#include "core/sheet/font_tables.h"
#include "core/sheet/text_measure.h"

namespace inchwright::app {
namespace {

QColor colourOf(Ink ink) {
  switch (ink) {
    case Ink::black:
      return {0, 0, 0};
    case Ink::grey:
      return {110, 110, 110};
    case Ink::red:
      return {178, 34, 34};
    case Ink::blue:
      return {32, 78, 150};
    case Ink::white:
      return {255, 255, 255};
    case Ink::pale:
      break;
  }
  return {236, 236, 236};
}

QPen penOf(const Stroke& stroke) {
  QPen pen(colourOf(stroke.ink), stroke.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
  if (!stroke.dash.empty() && stroke.width > 0) {
    QList<qreal> pattern;  // in pen widths
    for (const double length : stroke.dash) pattern.append(length / stroke.width);
    pen.setDashPattern(pattern);
  }
  return pen;
}

template <class Item>
void setInks(QPainter& painter, const Item& item) {
  painter.setPen(item.stroked ? penOf(item.stroke) : QPen(Qt::NoPen));
  painter.setBrush(item.filled ? QBrush(colourOf(item.fill)) : QBrush(Qt::NoBrush));
}

void paint(QPainter& painter, const PolylineItem& item) {
  setInks(painter, item);
  QPolygonF points;
  for (const PlanePoint& point : item.points) points.append({point.x, point.y});
  if (item.closed) {
    painter.drawPolygon(points, Qt::OddEvenFill);
  } else {
    painter.drawPolyline(points);
  }
}

void paint(QPainter& painter, const CircleItem& item) {
  setInks(painter, item);
  const QRectF box(item.centre.x - item.radius, item.centre.y - item.radius, 2 * item.radius,
                   2 * item.radius);
  if (item.sweep >= 360) {
    painter.drawEllipse(box);
  } else {
    painter.drawArc(box, qRound(item.start * 16), qRound(item.sweep * 16));
  }
}

/// Sets texts. In pixels they are set glyph by glyph, each where the layout reckoned it, since Qt
/// would measure every glyph anew for every text; where words are kept as words, it does that.
class Setter {
 public:
  explicit Setter(QPainter& painter)
      : painter_(painter), inPixels_(painter.paintEngine()->type() == QPaintEngine::Raster) {}

  void set(const TextItem& item) {
    const double scale = item.height / (kFigureHeight / kUnitsPerEm * kFacePixels);
    const double width = textWidth(item.text, item.height, item.face);
    const double start = item.align == TextAlign::left     ? 0
                         : item.align == TextAlign::centre ? -width / 2
                                                           : -width;
    painter_.save();
    painter_.translate(item.at.x, item.at.y);
    painter_.rotate(-item.turn);
    painter_.translate(start, 0);
    painter_.scale(scale, scale);
    painter_.setPen(colourOf(item.ink));
    const QString text = QString::fromStdString(item.text);
    if (inPixels_ && isOutside(width / scale)) {
      // Qt would draw its glyphs before it found that they fall outside.
    } else if (!inPixels_ || !drawGlyphs(item, text)) {
      painter_.setFont(faceFont(item.face));
      painter_.drawText(QPointF(0, 0), text);
    }
    painter_.restore();
  }

 private:
  static constexpr double kUnitsPerEm = 2000;

  /// Whether a text so wide, at the origin, is off the pixels altogether.
  bool isOutside(double width) const {
    const QRectF box(0, -2 * kFacePixels, width, 3 * kFacePixels);
    const QPaintDevice& on = *painter_.device();
    return !painter_.deviceTransform().mapRect(box).intersects(
        QRectF(0, 0, on.width(), on.height()));
  }

  /// False where the face lacks a character, for which Qt finds another face.
  bool drawGlyphs(const TextItem& item, const QString& text) {
    QRawFont& font = fonts_[static_cast<std::size_t>(item.face)];
    if (!font.isValid()) font = QRawFont::fromFont(faceFont(item.face));
    const QList<quint32> glyphs = font.glyphIndexesForString(text);
    if (glyphs.contains(0)) return false;
    QList<QPointF> places;
    double at = 0;
    for (std::size_t byte = 0; byte < item.text.size();) {
      const std::size_t length = characterLength(item.text, byte);
      places.append({at, 0});
      at += textWidth(std::string_view(item.text).substr(byte, length), kFigureHeight, item.face) /
            kUnitsPerEm * kFacePixels;
      byte += length;
    }
    if (places.size() != glyphs.size()) return false;
    QGlyphRun run;
    run.setRawFont(font);
    run.setGlyphIndexes(glyphs);
    run.setPositions(places);
    painter_.drawGlyphRun(QPointF(0, 0), run);
    return true;
  }

  QPainter& painter_;
  bool inPixels_;
  std::array<QRawFont, 4> fonts_;  ///< by face
};

}  // namespace

void paintPage(QPainter& painter, const Page& page) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  Setter setter(painter);
  for (const DrawItem& item : page.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) {
      setter.set(*text);
    } else if (const auto* line = std::get_if<PolylineItem>(&item)) {
      paint(painter, *line);
    } else {
      paint(painter, std::get<CircleItem>(item));
    }
  }
  painter.restore();
}

}  // namespace inchwright::app
