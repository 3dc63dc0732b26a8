#pragma once

#include <QWidget>
#include <vector>

#include "app/session/work.h"

class QHBoxLayout;
class QPushButton;
class QShortcut;

namespace inchwright::app {

/// What the hands can do, as a row of words; Alt with the underlined letter does the same. Where
/// the desk is narrow, the words for what the print shows without a figure fold into one.
class HandsRow : public QWidget {
  Q_OBJECT

 public:
  explicit HandsRow(Work& work, QWidget* parent = nullptr);

  QSize minimumSizeHint() const override;

 signals:
  void chosen();  ///< the strip should take what is typed next

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QPushButton* word(const QString& text, const QString& hint);
  void addTrace();
  void addShown();
  int widthOf(bool folded) const;
  void fold(bool folded);
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
  QPushButton* shown_ = nullptr;  ///< what the print shows without a figure, folded
  std::vector<QShortcut*> foldedKeys_;
  QPushButton* axis_ = nullptr;
  QPushButton* fromFirst_ = nullptr;
  UnderstandingKind relation_ = UnderstandingKind::inLine;
};

}  // namespace inchwright::app
