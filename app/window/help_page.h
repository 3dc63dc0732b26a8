#pragma once

#include <QDialog>
#include <QString>
#include <utility>
#include <vector>

class QMenuBar;

namespace inchwright::app {

/// Every key on one page: those of the menus, read from them, what the mouse does, and what can
/// be typed.
class HelpPage : public QDialog {
  Q_OBJECT

 public:
  explicit HelpPage(const QMenuBar* menus, QWidget* parent = nullptr);

  using Rows = std::vector<std::pair<QString, QString>>;
  /// The lines that can be typed, each an example that works beside places L R F K A B C.
  static Rows lines();

 private:
  static Rows hands();
  static Rows pointing();
  static Rows completed();
  static Rows machine();
  QString keysOfMenus(const QMenuBar* menus) const;
  QString whatCanBeTyped() const;
};

}  // namespace inchwright::app
