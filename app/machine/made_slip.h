#pragma once

#include <QDialog>
#include <array>
#include <optional>
#include <vector>

#include "app/session/desk.h"
#include "core/kit/ways_out.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace inchwright::app {

/// What one place came out as: its size, or the pins that went in and did not, with what it was
/// measured and on which piece; wanted beside found. Below, the ways out of a hole that came out
/// wrong, with their figures and what each costs; the one chosen is written down with its reason.
///
/// Each figure is taken as its field is left, one step of undo. What can't be read changes nothing
/// and stays in its field.
class MadeSlip : public QDialog {
  Q_OBJECT

 public:
  /// Requires: the desk has a part with this place, made in the setup on the desk.
  MadeSlip(Desk& desk, Id place, QWidget* parent = nullptr);
  ~MadeSlip() override;

 private:
  struct PinFields {
    QLineEdit* size = nullptr;
    QComboBox* pinClass = nullptr;
    QComboBox* sign = nullptr;
  };

  QWidget* fields();
  QWidget* pinRow(PinFields& pin, const QString& name);
  QLineEdit* line(const QString& name, int letters);
  void take();
  void showNow();
  void showPin(const PinFields& pin, const std::optional<TriedPin>& tried);
  void showWays();
  bool takePin(const PinFields& pin, std::optional<TriedPin>& tried);
  bool takeFigure(QLineEdit* field, std::optional<Lettered>& figure);
  void choose();
  std::string piece() const;
  MadePlace made() const;

  Desk& desk_;
  Id place_;
  bool filling_ = false;
  QLineEdit* piece_;
  QLineEdit* size_;
  PinFields go_;
  PinFields noGo_;
  QLineEdit* instrument_;
  QLineEdit* error_;
  QLabel* found_;
  QLabel* said_;
  QListWidget* list_;
  QLineEdit* reason_;
  QPushButton* choose_;
  std::vector<Way> ways_;
};

}  // namespace inchwright::app
