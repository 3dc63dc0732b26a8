#pragma once

#include <QWidget>
#include <vector>

#include "core/part/projection.h"

class QGridLayout;
class QPushButton;

namespace inchwright::app {

class Desk;
class FaceButton;

/// The part as a box unfolded, in the corner of the print: how the print's views map to the part's
/// faces. Each face says how many features it has; the one that is looked at is framed; an edge
/// that is chosen lights in every view that shows it. A click or an arrow key turns to a face; the
/// word below says whether the print is in first or third angle, and changes it.
class FaceBox : public QWidget {
  Q_OBJECT

 public:
  explicit FaceBox(Desk& desk, QWidget* print);

  void toggle();  ///< away, or back again

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the print

 private:
  void follow();
  void light();
  void stay();
  void turnAngle();
  Projection projection() const;

  Desk& desk_;
  QGridLayout* grid_;
  std::vector<FaceButton*> faces_;  ///< in the order of Face
  QPushButton* angle_;
};

}  // namespace inchwright::app
