#pragma once

#include <QHash>
#include <QWidget>
#include <functional>
#include <vector>

#include "app/session/work.h"

class QLabel;
class QPushButton;

namespace inchwright::app {

/// A tour of one minute on the sample, by doing: six steps on a slip of paper that lies beside what
/// it speaks of, with a pencil line around that. A step that asks for something goes on by itself
/// once it is done; the keys and buttons go on without it.
class TourSlip : public QWidget {
  Q_OBJECT

 public:
  TourSlip(Work& work, QWidget* ground);

  using Places = QHash<QString, QWidget*>;
  void begin(const Places& places);
  int step() const { return step_; }
  void go(int step);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Step {
    QString place;
    QString text;
    std::function<bool()> done = {};  ///< what it asks for has been done; empty: it asks nothing
  };
  /// What is on the desk, as the steps ask for changes of it.
  struct Counts {
    std::size_t features = 0, readings = 0, clashes = 0;
    std::vector<ZeroAlong> zero;
  };

  std::vector<Step> makeSteps() const;
  Counts countNow() const;
  void follow();
  void settle();

  Work& work_;
  Counts before_;  ///< as the step began
  std::vector<Step> steps_;
  Places places_;
  int step_ = 0;
  QWidget* ring_;
  QLabel* count_;
  QLabel* text_;
  QPushButton* back_;
  QPushButton* next_;
  QPushButton* skip_;
};

}  // namespace inchwright::app
