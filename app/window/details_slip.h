#pragma once

#include <QDialog>

#include "app/session/desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QSpinBox;

namespace inchwright::app {

/// What the title block says: job, print, part. Taken together as one step of undo.
class DetailsSlip : public QDialog {
  Q_OBJECT

 public:
  /// Requires: desk.hasPart().
  explicit DetailsSlip(Desk& desk, QWidget* parent = nullptr);

  void accept() override;

 private:
  QLineEdit* field(const std::string& text);
  void refuse(QWidget* field, const Error& why);

  Desk& desk_;
  QLineEdit* title_;
  QLineEdit* print_;
  QComboBox* unit_;
  QLineEdit* part_;
  QSpinBox* quantity_;
  QLineEdit* material_;
  QLineEdit* fractions_;
  QLineEdit* twoPlaces_;
  QLineEdit* threePlaces_;
  QLineEdit* angles_;
  QComboBox* hand_;
  QLabel* said_;
  QPlainTextEdit* notes_;
};

}  // namespace inchwright::app
