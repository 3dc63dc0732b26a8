#pragma once

#include <algorithm>
#include <vector>

#include "app/machine/first_steps.h"
#include "app/machine/stepwise_view.h"

class QCheckBox;
class QLineEdit;
class QGridLayout;
class QHBoxLayout;

namespace inchwright::app {

/// At the machine: first how the readout has to be set and how zero is found, then one place at a
/// time, in figures to be read from across the shop.
///
/// Space ticks the next tool and goes on behind the last; arrows, and a click on the left or right
/// half of the figures, go back and on. What was measured can be typed in, and how far it is off
/// stands beside it. Ticks and measures are kept in the document, and with them where one left off:
/// it opens at the first place that is not done. A place that was ticked at other figures than it
/// has now is not done.
class MachineView : public StepwiseView {
  Q_OBJECT

 public:
  explicit MachineView(Desk& desk, QWidget* parent = nullptr);
  ~MachineView() override;

  /// The place in sight, as an index into the rows of the table; negative for what comes first,
  /// beyond them for what is milled.
  int row() const { return row_; }
  void go(int row) override;
  /// Ticks the first open tool of this place; goes on when none is left.
  void tickNext() override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  int step() const override { return row_; }
  int firstStep() const override { return -firstCount(); }
  void showMade() override;

 private:
  void addMeasured(QHBoxLayout& low);
  void follow();
  void followFirst(const FirstStep& step);
  void followPlace(const TableRow& row);
  void placeTicks();
  void addTicks(const TableRow& row, const MadePlace& made);
  void setTick(int step, bool on);
  /// Takes what was typed. False while a question about it stands.
  bool takeMeasured();
  void sayDifference(const TableRow& row, const MadePlace& made);
  int whereLeftOff() const;
  int rowCount() const;
  int firstCount() const { return static_cast<int>(first_.size()); }
  int lastOf() const { return std::max(0, rowCount() + static_cast<int>(milled_.size()) - 1); }
  void readSteps();
  const TableRow* current() const;
  QString sizeOf(const TableRow& row) const;
  const FirstStep* currentFirst() const;

  void paintFirst(QPainter& painter, const FirstStep& step) const;
  void paintPlace(QPainter& painter, const TableRow& row) const;
  void paintFigures(QPainter& painter, const QRectF& box, const TableRow& row) const;

  std::vector<FirstStep> first_;
  std::vector<FirstStep> milled_;
  int row_ = 0;
  bool filling_ = false;
  bool mayAsk_ = true;
  bool asking_ = false;
  QString questioned_;  ///< what was typed when its sign was asked about
  QWidget* tools_;
  QGridLayout* toolGrid_;
  std::vector<QCheckBox*> ticks_;
  QLineEdit* measuredX_;
  QLineEdit* measuredY_;
};

}  // namespace inchwright::app
