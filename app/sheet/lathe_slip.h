#pragma once

#include <QDialog>
#include <functional>
#include <optional>

#include "app/session/desk.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace inchwright::app {

/// How a turned part is held in the setup on the desk, where its zero is, what it is parted off
/// with, and how the lathe's readout counts. Each figure is taken as its field is left, one step of
/// undo; what can't be read changes nothing and is said.
class LatheSlip : public QDialog {
  Q_OBJECT

 public:
  /// Requires: the desk has a turned part.
  explicit LatheSlip(Desk& desk, QWidget* parent = nullptr);
  ~LatheSlip() override;

 private:
  QWidget* holdingFields();
  QWidget* latheFields();
  QLineEdit* line(const QString& name, const std::function<void()>& taken);
  QComboBox* choice(const QString& name, const QStringList& words,
                    const std::function<void()>& taken);
  void showNow();
  void takeSetup();
  void takeLathe();
  /// What a field says: as before where it can't be read, and that is said.
  std::optional<Lettered> figureOf(QLineEdit* field, const std::optional<Lettered>& before,
                                   Unit unit);

  Desk& desk_;
  bool filling_ = false;
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
  QLabel* said_ = nullptr;
};

}  // namespace inchwright::app
