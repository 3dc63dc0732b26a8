#pragma once

#include <QWidget>

namespace inchwright::app {

/// A piece of paper lying on the desk: what is on it, with a soft shadow around.
class PaperFrame : public QWidget {
  Q_OBJECT

 public:
  /// Takes `content` as its child.
  explicit PaperFrame(QWidget* content, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QWidget* content_;
};

}  // namespace inchwright::app
