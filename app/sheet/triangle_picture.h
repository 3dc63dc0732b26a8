#pragma once

#include <QWidget>

#include "app/session/sum_behind.h"

namespace inchwright::app {

/// A small picture of how a place is held by centre distances and angles: the places it is measured
/// from, the distances and directions to it, and in broken line where else the same readings would
/// put it.
class TrianglePicture : public QWidget {
 public:
  explicit TrianglePicture(QWidget* parent);

  void show(const HeldTriangle& triangle);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  HeldTriangle triangle_;
};

}  // namespace inchwright::app
