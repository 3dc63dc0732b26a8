#pragma once

#include <QHash>
#include <QWidget>
#include <vector>

class QLabel;
class QPushButton;

namespace inchwright::app {

/// A tour of one minute: six steps on a slip of paper that lies beside what it speaks of, with a
/// pencil line around that.
class TourSlip : public QWidget {
  Q_OBJECT

 public:
  explicit TourSlip(QWidget* ground);

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
  };

  void settle();

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
