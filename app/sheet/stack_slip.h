#pragma once

#include <QWidget>

#include "app/session/work.h"

class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace inchwright::app {

class StackBars;

/// The stack on a slip of paper over my sheet, there as long as one is stacking: what to choose
/// (with the job's gaps to take by name), then the drawing and what it means in words.
class StackSlip : public QWidget {
  Q_OBJECT

 public:
  /// Lies on `sheet` and follows its size.
  StackSlip(Work& work, QWidget* sheet);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the sheet
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void follow();
  void showGaps();
  void lie();

  Work& work_;
  QLabel* title_;
  QWidget* gaps_;
  QVBoxLayout* gapColumn_;
  QScrollArea* scroll_;
  QWidget* content_;
  StackBars* bars_;
  QLabel* words_;
};

}  // namespace inchwright::app
