#include "app/window/desk_style.h"

#include <QApplication>
#include <QFont>
#include <QPainter>
#include <QPixmap>
#include <QProxyStyle>
#include <QStyleFactory>
#include <utility>

#include "app/base/look.h"
#include "app/render/faces.h"
#include "app/window/on_screen.h"

namespace inchwright::app {
namespace {

QString inkOf(const QColor& colour) {
  return QStringLiteral("rgba(%1,%2,%3,%4)")
      .arg(colour.red())
      .arg(colour.green())
      .arg(colour.blue())
      .arg(colour.alpha());
}

/// Words on paper instead of raised grey buttons; the one in use has a line under it.
constexpr const char* kRules = R"(
QMenuBar { background: %desk; color: %ondesk; padding: 1px 8px; border: none; }
QMenuBar::item { padding: 3px 9px; background: transparent; color: %ondesk; }
QMenuBar::item:selected { background: %slip; color: %pencil; }
QWidget#ledger QToolButton { color: %ondesk; }
QWidget#ledger QToolButton:hover { background: %slip; color: %pencil; }
QMenu { background: %slip; color: %pencil; border: 1px solid %faint; padding: 6px 0; }
QMenu::item { padding: 5px 28px 5px 28px; }
QMenu::item:selected { background: %wash; color: %pencil; }
QMenu::item:disabled { color: %faint; }
QMenu::separator { height: 1px; background: %faint; margin: 5px 14px; }
QPushButton, QToolButton { background: transparent; color: %pencil; border: none;
  border-bottom: 2px solid transparent; padding: 4px 9px; }
QPushButton:hover, QToolButton:hover { background: %wash; }
QPushButton:focus, QToolButton:focus { border-bottom: 2px dashed %blue; }
QPushButton:checked, QToolButton:checked { border-bottom: 2px solid %blue; color: %blue; }
QPushButton:disabled, QToolButton:disabled { color: %faint; }
QWidget#zoom QPushButton { padding: 2px 7px; }
QPushButton#angle { text-align: left; }
QPushButton::menu-indicator, QToolButton::menu-indicator { image: none; width: 0; }
QPushButton[firm="true"] { border: 1px solid %blue; color: %blue; padding: 6px 16px; }
QPushButton[firm="true"]:focus { border: 2px solid %blue; padding: 5px 15px; }
QDialog, QMessageBox { background: %slip; color: %pencil; }
QLineEdit, QComboBox, QSpinBox, QPlainTextEdit, QTextBrowser { background: transparent;
  color: %pencil; border: none; border-bottom: 1px solid %faint; padding: 3px 2px;
  selection-background-color: %blue; selection-color: %base; }
QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QPlainTextEdit:focus {
  border-bottom: 2px solid %blue; }
QLineEdit#line { border: none; }
QComboBox QAbstractItemView { background: %slip; color: %pencil;
  selection-background-color: %blue; selection-color: %base; }
QComboBox::drop-down { border: none; width: 1.2em; }
QListWidget { background: transparent; border: none; outline: none; color: %pencil; }
QListWidget::item { padding: 2px 4px; }
QListWidget::item:selected { background: %wash; color: %pencil; border-left: 3px solid %blue; }
QCheckBox::indicator { width: 1em; height: 1em; }
QSlider::groove:horizontal { height: 2px; background: %faint; }
QSlider::handle:horizontal { background: %blue; width: 9px; margin: -8px 0; border-radius: 2px; }
QSlider::handle:horizontal:focus { border: 2px solid %pencil; }
QScrollBar { background: transparent; border: none; }
QScrollBar:vertical { width: 11px; }
QScrollBar:horizontal { height: 11px; }
QScrollBar::handle { background: %handle; border-radius: 4px; margin: 2px; min-height: 28px;
  min-width: 28px; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QToolTip { background: %slip; color: %pencil; border: 1px solid %faint; padding: 4px; }
)";

/// The usual style, but for the one picture a row of menus asks for: to find it among its own, Qt
/// first loads all it has to read pictures of any kind, before the desk is seen.
class DeskStyle : public QProxyStyle {
 public:
  DeskStyle() : QProxyStyle(QStyleFactory::create(QStringLiteral("fusion"))) {}

  QIcon standardIcon(StandardPixmap which, const QStyleOption* option,
                     const QWidget* widget) const override {
    if (which != SP_ToolBarHorizontalExtensionButton) {
      return QProxyStyle::standardIcon(which, option, widget);
    }
    QPixmap picture(16, 16);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(Look::now().pencil, kFirmLine));
    painter.drawPolyline(QPolygonF({QPointF(5, 3), QPointF(10, 8), QPointF(5, 13)}));
    return QIcon(picture);
  }
};

/// What one takes hold of, on paper as on the table.
QColor handleOf(const Look& look) {
  return look.dark ? QColor(0x93, 0x80, 0x62) : look.faint;
}

QString rules(const Look& look) {
  QString text = QString::fromUtf8(kRules);
  const std::pair<const char*, QColor> inks[] = {
      {"%desk", look.desk},     {"%slip", look.slip},        {"%pencil", look.pencil},
      {"%faint", look.faint},   {"%blue", look.blue},        {"%wash", look.wash},
      {"%ondesk", look.onDesk}, {"%handle", handleOf(look)}, {"%base", look.sheet}};
  for (const auto& [name, colour] : inks) text.replace(QLatin1String(name), inkOf(colour));
  return text;
}

}  // namespace

void dressApplication(QApplication& application) {
  // The faces that come with the program stand in where the system has none of that name.
  if (loadFaces().ok()) {
    QFont::insertSubstitution(QStringLiteral("B612"), faceFamily(Typeface::regular));
    QFont::insertSubstitution(QStringLiteral("B612 Mono"), faceFamily(Typeface::mono));
  }
  application.setStyle(new DeskStyle);
  application.setPalette(Look::now().palette());
  application.setFont(deskFont());
  application.setStyleSheet(rules(Look::now()));
  keepSlipsOnScreen(application);
}

}  // namespace inchwright::app
