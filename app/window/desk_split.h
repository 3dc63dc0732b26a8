#pragma once

#include <QSplitter>

namespace inchwright::app {

/// The two sheets side by side with a strip of bare desk between them that can be moved.
class DeskSplit : public QSplitter {
  Q_OBJECT

 public:
  explicit DeskSplit(QWidget* parent = nullptr);

 protected:
  QSplitterHandle* createHandle() override;
};

}  // namespace inchwright::app
