#include "app/base/look.h"

#include <QFontInfo>
#include <QGuiApplication>
#include <QPainter>
#include <QPainterPath>

namespace inchwright::app {
namespace {

Look::Choice chosen = Look::Choice::system;

bool systemIsDark() {
  const QPalette palette = QGuiApplication::palette();
  return palette.color(QPalette::Window).lightness() <
         palette.color(QPalette::WindowText).lightness();
}

QFont scaled(const QString& family, qreal scale) {
  QFont font = QGuiApplication::font();
  const qreal points = font.pointSizeF() > 0 ? font.pointSizeF() : 10;
  // A system's own B612 may answer for its mono sister: the brought face goes first where the
  // application has named it.
  const QStringList brought = QFont::substitutes(family);
  font.setFamily(brought.isEmpty() ? family : brought.first());
  font.setPointSizeF(points * scale);
  return font;
}

}  // namespace

const Look& Look::day() {
  static const Look look{.desk = QColor(0xCF, 0xC3, 0xAE),
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
  static const Look look{.desk = QColor(0x2A, 0x21, 0x19),
                         .shadow = QColor(0, 0, 0, 130),
                         .print = QColor(0x3D, 0x34, 0x29),
                         .sheet = QColor(0xE9, 0xE2, 0xD2),
                         .slip = QColor(0x38, 0x2F, 0x25),
                         .pencil = QColor(0xF0, 0xE7, 0xD6),
                         .faint = QColor(0xB5, 0xA9, 0x95),
                         .blue = QColor(0x9C, 0xC1, 0xFF),
                         .red = QColor(0xFF, 0xA0, 0x90),
                         .wash = QColor(0x9C, 0xC1, 0xFF, 50),
                         .redWash = QColor(0xFF, 0xA0, 0x90, 44),
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
  p.setColor(QPalette::Base, dark ? print : sheet);
  p.setColor(QPalette::AlternateBase, slip);
  p.setColor(QPalette::Text, pencil);
  p.setColor(QPalette::PlaceholderText, faint);
  p.setColor(QPalette::Button, slip);
  p.setColor(QPalette::ButtonText, pencil);
  p.setColor(QPalette::ToolTipBase, slip);
  p.setColor(QPalette::ToolTipText, pencil);
  p.setColor(QPalette::Highlight, blue);
  p.setColor(QPalette::HighlightedText, dark ? desk : sheet);
  p.setColor(QPalette::Link, blue);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    p.setColor(QPalette::Disabled, role, faint);
  }
  return p;
}

QFont deskFont(qreal scale) {
  return scaled(QStringLiteral("B612"), scale);
}
QFont figures(qreal scale) {
  return scaled(QStringLiteral("B612 Mono"), scale);
}

void paintPaperShadow(QPainter& painter, const QRectF& box) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  QColor tone = Look::now().shadow;
  tone.setAlpha(tone.alpha() / 5);
  painter.setBrush(tone);
  // Only the rim is seen: blending all that the paper covers would cost as much as the desk's
  // words.
  const QRectF covered = box.adjusted(2, 2, -2, -2);
  for (int i = 1; i <= 5; ++i) {
    QPainterPath rim;
    rim.addRoundedRect(box.adjusted(-i, -i + 2, i, i + 3), i, i);
    rim.addRect(covered);
    painter.drawPath(rim);
  }
  painter.restore();
}

void paintSlip(QPainter& painter, const QRectF& box) {
  paintPaperShadow(painter, box);
  painter.fillRect(box, Look::now().slip);
}

}  // namespace inchwright::app
