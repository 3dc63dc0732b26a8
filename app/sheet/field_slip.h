#pragma once

#include <QDialog>
#include <functional>
#include <optional>

#include "app/session/desk.h"

class QComboBox;
class QLabel;
class QLayout;
class QLineEdit;

namespace inchwright::app {

/// A slip of fields about the setup on the desk and its machine. Each is taken as it is left, one
/// step of undo; what can't be read changes nothing and is said at the foot.
class FieldSlip : public QDialog {
  Q_OBJECT

 protected:
  FieldSlip(Desk& desk, QWidget* parent);

  /// Fills all fields from the desk, between two settings of `filling_`.
  virtual void showNow() = 0;

  void fill();

  /// The columns above, what is said and the button below; follows the desk from now on.
  void layOut(QLayout* columns);
  QLineEdit* line(const QString& name, const std::function<void()>& taken);
  QComboBox* choice(const QString& name, const QStringList& words,
                    const std::function<void()>& taken);

  /// What a field says: as before where it can't be read, and that is said.
  std::optional<Lettered> figureOf(QLineEdit* field, const std::optional<Lettered>& before,
                                   Unit unit);
  void refuse(QLineEdit* field, const QString& why);
  /// Puts it in place of the setup on the desk.
  void apply(const Setup& setup);

  Desk& desk_;
  bool filling_ = false;  ///< what changes in a field is not the user's doing
  QLabel* said_;
};

}  // namespace inchwright::app
