#pragma once

#include "app/machine/stepwise_view.h"

class QLabel;
class QPushButton;

namespace inchwright::app {

/// At the lathe: first what to mind and how the readout counts, then one cut at a time, in figures
/// to be read from across the shop.
///
/// Space ticks the cut and goes on; arrows, and a click on the left or right half of the figures,
/// go back and on. Ticks are kept in the document at the figures they were made at: a cut that has
/// other figures now is not done. It opens at the first cut that is not done.
class LatheView : public StepwiseView {
  Q_OBJECT

 public:
  /// Requires: the setup on the desk is of the lathe.
  explicit LatheView(Desk& desk, QWidget* parent = nullptr);

  /// The cut in sight; −1 for what comes first.
  int cut() const { return cut_; }
  void go(int cut) override;
  /// Ticks the cut in sight and goes on to the next.
  void tickNext() override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  int step() const override { return cut_; }
  int firstStep() const override { return -1; }
  void showMade() override;

 private:
  void follow();
  int cutCount() const;
  const Cut* current() const;
  int whereLeftOff() const;
  QStringList firstLines() const;
  QStringList noteLines(const Cut& cut) const;
  void paintFirst(QPainter& painter) const;
  void paintCut(QPainter& painter, const Cut& cut) const;

  int cut_ = -1;
  QPushButton* tick_;
};

}  // namespace inchwright::app
