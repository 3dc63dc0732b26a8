#pragma once

#include <vector>

#include "app/sheet/field_slip.h"

class QCheckBox;
class QSpinBox;

namespace inchwright::app {

/// How the part lies and where zero is, the machine, and the paper. What is changed here is on my
/// sheet in the same moment, one step of undo each.
class SetupSlip : public FieldSlip {
  Q_OBJECT

 public:
  explicit SetupSlip(Desk& desk, QWidget* parent = nullptr);
  ~SetupSlip() override;

 signals:
  /// The machine is to be the one new jobs begin with.
  void machineKept(const Machine& machine);
  void sheetChosen(const SheetOptions& options);

 private:
  /// Zero along one axis, as chosen.
  struct ZeroFields {
    Axis axis = Axis::x;
    QComboBox* first = nullptr;
    QComboBox* second = nullptr;  ///< its first entry: none, so that zero is on the first
    QComboBox* of = nullptr;
    QLineEdit* offset = nullptr;
  };

  QWidget* layingFields();
  QWidget* zeroFields();
  QWidget* stockFields();
  QWidget* machineFields();
  QWidget* paperFields();
  QComboBox* sideChoice(const QString& name);

  void showNow() override;
  void showZero(const ZeroFields& fields);
  void takeSetup();
  void takeMachine();
  void takePaper();

  QLineEdit* name_ = nullptr;
  QComboBox* face_ = nullptr;
  QComboBox* turn_ = nullptr;
  QComboBox* jaw_ = nullptr;
  QComboBox* stop_ = nullptr;
  QLineEdit* parallels_ = nullptr;
  QLineEdit* pieces_ = nullptr;
  std::vector<ZeroFields> zeros_;
  std::vector<QLineEdit*> stock_;
  QComboBox* unit_ = nullptr;
  QLineEdit* step_ = nullptr;
  QComboBox* xCounts_ = nullptr;
  QComboBox* yCounts_ = nullptr;
  QLineEdit* finder_ = nullptr;
  QComboBox* paper_ = nullptr;
  QSpinBox* distance_ = nullptr;
  QCheckBox* rounding_ = nullptr;
};

}  // namespace inchwright::app
