#pragma once

#include <QWidget>

namespace inchwright::app {

/// A piece of paper lying on the desk: what is on it, with a soft shadow around.
class PaperFrame : public QWidget {
  Q_OBJECT

 public:
  explicit PaperFrame(QWidget* parent) : QWidget(parent) {}

  /// Shows what was made as its child: a widget that is given another parent is dressed twice, with
  /// all that is in it.
  void hold(QWidget* content);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QWidget* content_ = nullptr;
};

}  // namespace inchwright::app
