#pragma once

#include <QWidget>
#include <vector>

#include "app/session/desk.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QHBoxLayout;
class QPushButton;

namespace inchwright::app {

/// At the machine: one place at a time, in figures to be read from across the shop.
///
/// Space ticks the next tool and goes on behind the last; arrows, and a click on the left or right
/// half of the figures, go back and on. What was measured can be typed in. Ticks and measures are
/// kept in the document.
class MachineView : public QWidget {
  Q_OBJECT

 public:
  explicit MachineView(Desk& desk, QWidget* parent = nullptr);
  ~MachineView() override;

  int row() const { return row_; }
  void go(int row);
  /// Ticks the first open tool of this place; goes on when none is left.
  void tickNext();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void follow();
  void setTick(int step, bool on);
  void takeMeasured();
  QRectF figuresBox() const;
  const TableRow* current() const;
  QString sizeOf(const TableRow& row) const;

  Desk& desk_;
  int row_ = 0;
  bool filling_ = false;
  QLabel* head_;
  QWidget* tools_;
  QHBoxLayout* toolRow_;
  std::vector<QCheckBox*> ticks_;
  QLineEdit* measuredX_;
  QLineEdit* measuredY_;
  QPushButton* back_;
  QPushButton* next_;
  QPushButton* leave_;
};

}  // namespace inchwright::app
