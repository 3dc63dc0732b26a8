#pragma once

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QPushButton>
#include <QString>
#include <QTest>
#include <QWidget>

namespace inchwright::app {

/// The widget that a screen reader calls so; a failure and none where there is no such.
template <class Widget>
Widget* calledIn(const QWidget& in, const QString& name) {
  for (Widget* widget : in.findChildren<Widget*>()) {
    if (widget->accessibleName() == name) return widget;
  }
  ADD_FAILURE() << "nothing is called " << qPrintable(name);
  return nullptr;
}

/// Types over what a field holds, key by key.
inline void typeOver(QLineEdit& field, const QString& text) {
  field.setFocus();
  field.selectAll();
  QTest::keyClick(&field, Qt::Key_Delete);
  QTest::keyClicks(&field, text);
}

/// Clicks the button that says so.
inline void pressIn(const QWidget& in, const QString& text) {
  for (auto* button : in.findChildren<QPushButton*>()) {
    if (button->text().remove(QLatin1Char('&')) != text) continue;
    QTest::mouseClick(button, Qt::LeftButton);
    return;
  }
  ADD_FAILURE() << "no button says " << qPrintable(text);
}

}  // namespace inchwright::app
