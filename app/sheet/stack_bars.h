#pragma once

#include <QWidget>
#include <optional>

#include "app/session/stacked.h"

namespace inchwright::app {

/// A stack as a drawing: each member a bar as wide as it may stray, about the length as lettered;
/// below them what they come to together, at worst, by root sum square and as simulated, all on one
/// scale; then the same as made from zero. What is required stands across the sums.
class StackBars : public QWidget {
  Q_OBJECT

 public:
  explicit StackBars(QWidget* parent = nullptr);

  void show(std::optional<Stacked> stacked);

  bool hasHeightForWidth() const override { return true; }
  int heightForWidth(int width) const override;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<Stacked> stacked_;
};

}  // namespace inchwright::app
