#pragma once

#include <QDialog>

class QLabel;
class QListWidget;
class QPushButton;

namespace inchwright::app {

class Desk;

/// What is understood of the part though no figure says so: in line, midway, equal … Each in
/// words, to be looked at on the print and taken away.
class UnderstoodSlip : public QDialog {
  Q_OBJECT

 public:
  explicit UnderstoodSlip(Desk& desk, QWidget* parent = nullptr);

 private:
  void fill();
  void light();
  void remove();

  Desk& desk_;
  QListWidget* list_;
  QPushButton* remove_;
  QLabel* said_;
};

}  // namespace inchwright::app
