#pragma once

#include <QDialog>

class QMenuBar;

namespace inchwright::app {

/// Every key on one page: those of the menus, read from them, and what can be typed.
class HelpPage : public QDialog {
  Q_OBJECT

 public:
  explicit HelpPage(const QMenuBar* menus, QWidget* parent = nullptr);

 private:
  QString keysOfMenus(const QMenuBar* menus) const;
  QString whatCanBeTyped() const;
};

}  // namespace inchwright::app
