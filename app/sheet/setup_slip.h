#pragma once

#include <QDialog>
#include <functional>
#include <optional>
#include <vector>

#include "app/session/desk.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace inchwright::app {

/// How the part lies and where zero is, the machine, and the paper. What is changed here is on my
/// sheet in the same moment, one step of undo each.
class SetupSlip : public QDialog {
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
  QLineEdit* line(const QString& name, const std::function<void()>& taken);
  QComboBox* choice(const QString& name, const QStringList& words,
                    const std::function<void()>& taken);
  QComboBox* sideChoice(const QString& name);

  void showNow();
  void showZero(const ZeroFields& fields);
  void takeSetup();
  void takeMachine();
  void takePaper();
  void apply(const Setup& setup);
  std::optional<Lettered> figureOf(QLineEdit* field, const std::optional<Lettered>& before,
                                   Unit unit);
  void refuse(QLineEdit* field, const QString& why);

  Desk& desk_;
  bool filling_ = false;
  QLineEdit* name_ = nullptr;
  QComboBox* face_ = nullptr;
  QComboBox* turn_ = nullptr;
  QComboBox* jaw_ = nullptr;
  QComboBox* stop_ = nullptr;
  QLineEdit* parallels_ = nullptr;
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
  QLabel* said_ = nullptr;
};

}  // namespace inchwright::app
