#pragma once

#include <QWidget>

class QPushButton;

namespace inchwright::app {

/// How large a sheet is shown, on a small slip in its low right corner: farther, the percentage of
/// its size on paper, nearer. A click on the percentage shows all of it.
class ZoomSlip : public QWidget {
  Q_OBJECT

 public:
  /// Lies on `sheet` and follows its size.
  explicit ZoomSlip(QWidget* sheet);

  /// 100 is as large as on paper.
  void show(int percent);

 signals:
  void zoomed(qreal factor);
  void allWanted();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the sheet
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void stay();

  QPushButton* percent_;
};

/// The percentage at which so many device-independent pixels an inch are shown on a widget's
/// screen.
int percentOfPaper(qreal pixelsPerInch, const QWidget& widget);

}  // namespace inchwright::app
