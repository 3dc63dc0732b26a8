#pragma once

#include <QWidget>
#include <vector>

#include "app/canvas/turned_part.h"
#include "core/part/projection.h"

class QPushButton;
class QVBoxLayout;

namespace inchwright::app {

class Desk;
class ViewWord;

/// Which view of the part is this? A small slip in the low left corner of the print, which says it
/// in words beside a small picture of the part turned so that the face is seen. Opened, it asks:
/// six words to choose from, each with how much is drawn there, and how the print lays out its
/// views. An edge that is chosen lights in every picture.
class ViewSlip : public QWidget {
  Q_OBJECT

 public:
  explicit ViewSlip(Desk& desk, QWidget* print);

  void toggle();  ///< away, or back again
  bool isOpen() const { return open_; }
  void setOpen(bool open);

 signals:
  void toggled(bool shown);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the print

 private:
  void makeChoice();
  void follow();
  void followChoice();
  void light();
  void stay();
  void turnAngle();

  Desk& desk_;
  ViewWord* now_;  ///< the view that is looked at
  QWidget* choice_;
  std::vector<ViewWord*> views_;  ///< in the order of Face; none until it is first opened
  QPushButton* angle_ = nullptr;  ///< and this
  bool open_ = false;
};

}  // namespace inchwright::app
