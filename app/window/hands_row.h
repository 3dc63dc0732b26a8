#pragma once

#include <QWidget>
#include <vector>

#include "app/session/work.h"

class QHBoxLayout;
class QPushButton;

namespace inchwright::app {

/// What the hands can do, as a row of words; Alt with the underlined letter does the same.
class HandsRow : public QWidget {
  Q_OBJECT

 public:
  explicit HandsRow(Work& work, QWidget* parent = nullptr);

 signals:
  void chosen();  ///< the strip should take what is typed next

 private:
  QPushButton* word(const QString& text, const QString& hint);
  void addTrace();
  void follow();

  struct Named {
    QPushButton* button;
    Doing doing;
    UnderstandingKind relation;
  };

  Work& work_;
  QHBoxLayout* row_;
  std::vector<Named> named_;
  QPushButton* trace_ = nullptr;
  QPushButton* axis_ = nullptr;
  QPushButton* fromFirst_ = nullptr;
  UnderstandingKind relation_ = UnderstandingKind::inLine;
};

}  // namespace inchwright::app
