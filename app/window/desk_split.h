#pragma once

#include <QSplitter>

namespace inchwright::app {

/// What lies on the desk side by side, or one above the other, with a strip of bare desk between
/// that can be moved.
class DeskSplit : public QSplitter {
  Q_OBJECT

 public:
  explicit DeskSplit(Qt::Orientation way, QWidget* parent = nullptr);

 protected:
  QSplitterHandle* createHandle() override;
};

}  // namespace inchwright::app
