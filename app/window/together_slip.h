#pragma once

#include <QDialog>
#include <array>
#include <functional>
#include <string>

#include "app/session/desk.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace inchwright::app {

/// What goes together in the job: its mates and gaps, each with how it stands, as drawn and as
/// made. One line says a mate or gap in words; what is clicked above it is written into that line,
/// so both ways say the same. Beside it stands what would come of it; nothing is kept before it is
/// written down, a step of undo each.
class TogetherSlip : public QDialog {
  Q_OBJECT

 public:
  explicit TogetherSlip(Desk& desk, QWidget* parent = nullptr);

 private:
  QLayout* choices();
  void addMateChoices(QGridLayout& grid);
  void addGapChoices(QGridLayout& grid);
  QPushButton* button(const QString& words, const std::function<void()>& act);
  void showNow();
  void fillPlaces();
  void chooseFrom(const Selection& selection);
  void putRight();
  void takeAway();
  void writeDown();
  void showEcho();
  void say(const QString& words);
  /// The mate (or gap) that the line says so far is changed and said anew. Refused where the line
  /// says something else, or can't be read.
  template <class Thing>
  void change(const std::function<void(Thing&)>& edit);
  void takeSide(bool hole);
  void takeClearance();
  void takeMember(int sign);
  PartPlace here() const;

  Desk& desk_;
  QListWidget* list_;
  QComboBox* part_;
  QComboBox* place_;
  QComboBox* to_;
  QComboBox* axis_;
  QComboBox* fit_;
  std::array<QLineEdit*, 2> limits_;  ///< least, greatest
  QLineEdit* line_;
  QString loaded_;  ///< what was put into the line to be put right
  QLabel* said_;
};

}  // namespace inchwright::app
