#pragma once

#include <QWidget>
#include <array>

#include "core/part/picture.h"

class QSlider;

namespace inchwright::app {

class Desk;

/// How the picture under the face is shown: brightness, contrast and fade, on a slip of paper over
/// the print. What is moved is seen at once and kept with the picture in the document; all that is
/// done between the slip's coming and going is one step of undo.
class ToneSlip : public QWidget {
  Q_OBJECT

 public:
  explicit ToneSlip(Desk& desk, QWidget* print);

  /// False, with the reason told by the desk, when there is no picture under the face.
  bool open();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void mousePressEvent(QMouseEvent*) override {}  // nothing goes through to the print

 private:
  void build();  ///< what is on it, when it is first opened
  void follow();
  void take(const PictureTone& tone);
  void leave();

  Desk& desk_;
  std::array<QSlider*, 3> sliders_{};  ///< brightness, contrast, fade
  bool filling_ = false;
};

}  // namespace inchwright::app
