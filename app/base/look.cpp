#include "app/base/look.h"

#include <QFontInfo>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QScreen>
#include <algorithm>
#include <cmath>

namespace inchwright::app {
namespace {

Look::Choice chosen = Look::Choice::system;

int textPixels = kUsualTextSize;

/// As the system was before the desk's own palette came over it.
bool systemIsDark() {
  static const bool dark = [] {
    const QPalette palette = QGuiApplication::palette();
    return palette.color(QPalette::Window).lightness() <
           palette.color(QPalette::WindowText).lightness();
  }();
  return dark;
}

constexpr int kMostRows = 28;  // device pixels, of three runs each; Qt shares out from 96 runs
constexpr int kShadow = 8;     // pixels it reaches beyond its paper at most
constexpr int kCorner = 16;    // pixels from there in which corners differ from sides
constexpr int kRun = 32;       // of a side in the tile

void drawShadow(QPainter& painter, const QRectF& box) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  QColor tone = Look::now().shadow;
  tone.setAlpha(tone.alpha() / 5);
  painter.setBrush(tone);
  for (int i = 1; i <= 5; ++i) {
    painter.drawRoundedRect(box.adjusted(-i, -i + 2, i, i + 3), i, i);
  }
  painter.restore();
}

/// The shadow of a small square paper, to be taken apart for papers of any size: blended whole, a
/// shadow would be handed to other threads in pieces, and cost more than all that lies on it.
const QImage& shadowTile(qreal ratio) {
  static QImage tile;
  static QColor tone;
  if (tile.isNull() || tile.devicePixelRatio() != ratio || tone != Look::now().shadow) {
    constexpr int kSide = 2 * kCorner + kRun;
    tone = Look::now().shadow;
    tile = QImage(QSize(kSide, kSide) * ratio, QImage::Format_ARGB32_Premultiplied);
    tile.setDevicePixelRatio(ratio);
    tile.fill(Qt::transparent);
    QPainter painter(&tile);
    drawShadow(painter, QRectF(0, 0, kSide, kSide).adjusted(kShadow, kShadow, -kShadow, -kShadow));
  }
  return tile;
}

QFont scaled(const QString& family, qreal scale) {
  QFont font = QGuiApplication::font();
  // A system's own B612 may answer for its mono sister: the brought face goes first where the
  // application has named it.
  const QStringList brought = QFont::substitutes(family);
  font.setFamily(brought.isEmpty() ? family : brought.first());
  // By points, with which styled text reckons, of the screen's own reckoning.
  const QScreen* screen = QGuiApplication::primaryScreen();
  const qreal dots = screen != nullptr ? screen->logicalDotsPerInch() : 96;
  font.setPointSizeF(textPixels * scale * 72 / dots);
  return font;
}

}  // namespace

const Look& Look::day() {
  static const Look look{.desk = QColor(0xCF, 0xC3, 0xAE),
                         .onDesk = QColor(0x2E, 0x2C, 0x2A),
                         .shadow = QColor(60, 45, 20, 70),
                         .print = QColor(0xFB, 0xF5, 0xE4),
                         .sheet = QColor(0xFF, 0xFF, 0xFF),
                         .slip = QColor(0xF6, 0xEF, 0xDD),
                         .pencil = QColor(0x2E, 0x2C, 0x2A),
                         .faint = QColor(0x6E, 0x69, 0x60),
                         .blue = QColor(0x1F, 0x4E, 0x96),
                         .red = QColor(0xB0, 0x2A, 0x1E),
                         .wash = QColor(0x1F, 0x4E, 0x96, 38),
                         .redWash = QColor(0xB0, 0x2A, 0x1E, 32),
                         .dark = false};
  return look;
}

const Look& Look::lamplight() {
  static const Look look{.desk = QColor(0x2B, 0x21, 0x18),
                         .onDesk = QColor(0xEA, 0xDC, 0xC0),
                         .shadow = QColor(0, 0, 0, 150),
                         .print = QColor(0xF1, 0xE0, 0xBA),
                         .sheet = QColor(0xF8, 0xEB, 0xCF),
                         .slip = QColor(0xEA, 0xD8, 0xB0),
                         .pencil = QColor(0x30, 0x27, 0x1C),
                         .faint = QColor(0x68, 0x58, 0x40),
                         .blue = QColor(0x1C, 0x45, 0x84),
                         .red = QColor(0x9E, 0x22, 0x14),
                         .wash = QColor(0x1C, 0x45, 0x84, 42),
                         .redWash = QColor(0x9E, 0x22, 0x14, 36),
                         .dark = true};
  return look;
}

const Look& Look::now() {
  const bool dark = chosen == Choice::system ? systemIsDark() : chosen == Choice::lamplight;
  return dark ? lamplight() : day();
}

void Look::choose(Choice choice) {
  chosen = choice;
}

QPalette Look::palette() const {
  QPalette p;
  p.setColor(QPalette::Window, slip);
  p.setColor(QPalette::WindowText, pencil);
  p.setColor(QPalette::Base, sheet);
  p.setColor(QPalette::AlternateBase, slip);
  p.setColor(QPalette::Text, pencil);
  p.setColor(QPalette::PlaceholderText, faint);
  p.setColor(QPalette::Button, slip);
  p.setColor(QPalette::ButtonText, pencil);
  p.setColor(QPalette::ToolTipBase, slip);
  p.setColor(QPalette::ToolTipText, pencil);
  p.setColor(QPalette::Highlight, blue);
  p.setColor(QPalette::HighlightedText, sheet);
  p.setColor(QPalette::Link, blue);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    p.setColor(QPalette::Disabled, role, faint);
  }
  return p;
}

int textSize() {
  return textPixels;
}
void chooseTextSize(int pixels) {
  textPixels = pixels;
}

QFont deskFont(qreal scale) {
  return scaled(QStringLiteral("B612"), scale);
}
QFont figures(qreal scale) {
  return scaled(QStringLiteral("B612 Mono"), scale);
}

void paintPaperShadow(QPainter& painter, const QRectF& box) {
  const QRect paper(QPoint(qRound(box.left()), qRound(box.top())),
                    QPoint(qRound(box.right()) - 1, qRound(box.bottom()) - 1));
  if (std::min(paper.width(), paper.height()) < 2 * kCorner) {
    drawShadow(painter, box);
    return;
  }
  const QImage& tile = shadowTile(painter.device()->devicePixelRatio());
  const qreal ratio = tile.devicePixelRatio();
  const auto put = [&](QPoint at, QRect piece) {
    const QRectF source(QPointF(piece.topLeft()) * ratio, QSizeF(piece.size()) * ratio);
    painter.drawImage(QRectF(at, piece.size()), tile, source);
  };
  const QRect all = paper.adjusted(-kShadow, -kShadow, kShadow, kShadow);
  const int right = all.right() + 1 - kCorner, low = all.bottom() + 1 - kCorner;
  const QSize corner(kCorner, kCorner);
  constexpr int kFar = kCorner + kRun;  // in the tile: where its right and its low corners begin
  put(all.topLeft(), {QPoint(0, 0), corner});
  put({right, all.top()}, {QPoint(kFar, 0), corner});
  put({all.left(), low}, {QPoint(0, kFar), corner});
  put({right, low}, {QPoint(kFar, kFar), corner});
  for (int x = all.left() + kCorner; x < right; x += kRun) {
    const QSize run(std::min(kRun, right - x), kCorner);
    put({x, all.top()}, {QPoint(kCorner, 0), run});
    put({x, low}, {QPoint(kCorner, kFar), run});
  }
  for (int y = all.top() + kCorner; y < low; y += kRun) {
    const QSize run(kCorner, std::min(kRun, low - y));
    put({all.left(), y}, {QPoint(0, kCorner), run});
    put({right, y}, {QPoint(kFar, kCorner), run});
  }
}

QColor blended(const QColor& paper, const QColor& wash) {
  const qreal a = wash.alphaF();
  return QColor::fromRgbF(static_cast<float>(paper.redF() * (1 - a) + wash.redF() * a),
                          static_cast<float>(paper.greenF() * (1 - a) + wash.greenF() * a),
                          static_cast<float>(paper.blueF() * (1 - a) + wash.blueF() * a));
}

void fillBlended(QPainter& painter, const QRectF& box, const QColor& colour) {
  const QTransform toDevice = painter.deviceTransform();
  const QRectF device = toDevice.mapRect(box);
  if (device.height() < kMostRows || toDevice.type() > QTransform::TxScale) {
    painter.fillRect(box, colour);
    return;
  }
  const QTransform back = toDevice.inverted();
  // Cut between rows, so that no row is blended twice.
  for (qreal top = device.top(); top < device.bottom();) {
    const qreal low = std::min(std::floor(top) + kMostRows, device.bottom());
    painter.fillRect(back.mapRect(QRectF(device.left(), top, device.width(), low - top)), colour);
    top = low;
  }
}

void paintSlip(QPainter& painter, const QRectF& box) {
  paintPaperShadow(painter, box);
  painter.fillRect(box, Look::now().slip);
}

}  // namespace inchwright::app
