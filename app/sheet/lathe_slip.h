#pragma once

#include "app/sheet/field_slip.h"

namespace inchwright::app {

/// How a turned part is held in the setup on the desk, where its zero is, what it is parted off
/// with, and how the lathe's readout counts.
class LatheSlip : public FieldSlip {
  Q_OBJECT

 public:
  /// Requires: the desk has a turned part.
  explicit LatheSlip(Desk& desk, QWidget* parent = nullptr);
  ~LatheSlip() override;

 private:
  QWidget* holdingFields();
  QWidget* latheFields();
  void showNow() override;
  void takeSetup();
  void takeLathe();

  QLineEdit* name_ = nullptr;
  QComboBox* held_ = nullptr;
  QLineEdit* standsOut_ = nullptr;
  QComboBox* zero_ = nullptr;
  QLineEdit* offset_ = nullptr;
  QLineEdit* partingTool_ = nullptr;
  QComboBox* corner_ = nullptr;
  QComboBox* unit_ = nullptr;
  QLineEdit* step_ = nullptr;
  QComboBox* carriageCounts_ = nullptr;
  QComboBox* crossCounts_ = nullptr;
  QLineEdit* carriageLetter_ = nullptr;
  QLineEdit* crossLetter_ = nullptr;
  QLineEdit* roughLeaves_ = nullptr;
};

}  // namespace inchwright::app
