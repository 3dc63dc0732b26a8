#pragma once

#include <QString>
#include <QWidget>
#include <functional>

#include "app/session/desk.h"

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace inchwright::app {

/// What a view at the mill and at the lathe share: one step at a time in figures to be read from
/// across the shop, what is said below them, and the ways back, on and out.
///
/// Space ticks and goes on behind the last; arrows, and a click on the left or right half of the
/// figures, go back and on; Home goes to what comes first, Escape leaves. A step is counted from 0;
/// what comes before the first is negative.
class StepwiseView : public QWidget {
  Q_OBJECT

 public:
  virtual void go(int step) = 0;
  /// Ticks what is open here; goes on when nothing is.
  virtual void tickNext() = 0;

 protected:
  StepwiseView(Desk& desk, const QString& title, QWidget* parent);

  /// Lays everything out: `above` the words where it is not null, and in the low row what `between`
  /// puts there between the ways back and on.
  void layOut(QWidget* above, const std::function<void(QHBoxLayout&)>& between);
  virtual int step() const = 0;       ///< in sight
  virtual int firstStep() const = 0;  ///< what comes first of all
  virtual void showMade() = 0;        ///< the slip with sizes, pins and ways out

  /// Where the figures are painted.
  QRectF figuresBox() const;

  void keyPressEvent(QKeyEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

  Desk& desk_;
  QLabel* head_;
  QLabel* said_;
  QWidget* low_;  ///< the row at the foot
  QPushButton* made_;
  QPushButton* back_;
  QPushButton* next_;

 private:
  QPushButton* leave_;
  QWidget* above_ = nullptr;
};

}  // namespace inchwright::app
