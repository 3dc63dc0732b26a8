#pragma once

#include <QWidget>

#include "app/session/desk.h"

class QLabel;
class QPushButton;

namespace inchwright::app {

/// At the lathe: first what to mind and how the readout counts, then one cut at a time, in figures
/// to be read from across the shop.
///
/// Space ticks the cut and goes on; arrows, and a click on the left or right half of the figures,
/// go back and on. Ticks are kept in the document at the figures they were made at: a cut that has
/// other figures now is not done. It opens at the first cut that is not done.
class LatheView : public QWidget {
  Q_OBJECT

 public:
  /// Requires: the setup on the desk is of the lathe.
  explicit LatheView(Desk& desk, QWidget* parent = nullptr);

  /// The cut in sight; −1 for what comes first.
  int cut() const { return cut_; }
  void go(int cut);
  /// Ticks the cut in sight and goes on to the next.
  void tickNext();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;

 private:
  void layOut();
  void follow();
  int cutCount() const;
  const Cut* current() const;
  int whereLeftOff() const;
  QStringList firstLines() const;
  QStringList noteLines(const Cut& cut) const;
  void showMade();
  QRectF figuresBox() const;
  void paintFirst(QPainter& painter) const;
  void paintCut(QPainter& painter, const Cut& cut) const;

  Desk& desk_;
  int cut_ = -1;
  QLabel* head_;
  QLabel* said_;
  QPushButton* tick_;
  QPushButton* made_;
  QPushButton* back_;
  QPushButton* next_;
  QPushButton* leave_;
};

}  // namespace inchwright::app
