#pragma once

#include <QCheckBox>

namespace inchwright::app {

/// A box to tick with a pencil, large enough for a thumb.
class TickBox : public QCheckBox {
 public:
  using QCheckBox::QCheckBox;

  QSize sizeHint() const override;

 protected:
  bool hitButton(const QPoint& at) const override { return rect().contains(at); }
  void paintEvent(QPaintEvent* event) override;
};

}  // namespace inchwright::app
