#pragma once

#include <QWidget>

#include "app/session/sum_behind.h"
#include "app/session/work.h"

class QLabel;
class QListWidget;

namespace inchwright::app {

class TrianglePicture;

/// The sum behind a coordinate, on a slip of paper over my sheet: reading by reading with what it
/// makes so far. A line that is chosen lights its figure and its places on the print.
class SumSlip : public QWidget {
  Q_OBJECT

 public:
  /// Lies on `sheet` and follows its size.
  SumSlip(Work& work, QWidget* sheet);

  /// Opens it; what can't be summed up is told by the desk.
  void open(const Id& place, MachineAxis axis);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the sheet
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void follow();
  void light();
  void lie();

  Work& work_;
  Id place_;
  MachineAxis axis_ = MachineAxis::x;
  SumBehind sum_;
  QLabel* title_;
  QLabel* zero_;
  QListWidget* list_;
  QWidget* held_;  ///< of the first place that is held by a triangle: its picture and its words
  TrianglePicture* triangle_;
  QLabel* heldWords_;
  QLabel* remark_;
};

}  // namespace inchwright::app
