#pragma once

#include <QDialog>

#include "core/base/result.h"
#include "core/part/job.h"

class QLabel;
class QPlainTextEdit;

namespace inchwright::app {

/// How a job begins: with a picture of the print, the sample, a saved job, blank
/// paper, or a table of readings.
class StartSlip : public QDialog {
  Q_OBJECT

 public:
  enum class Choice { picture, sample, open, blank, readings };

  explicit StartSlip(QWidget* parent = nullptr);

  Choice choice() const { return choice_; }
  /// The part the pasted readings make, on an empty one. Errors: as `applyLines`.
  Result<Part> pastedPart() const;

 private:
  void choose(Choice choice);
  void takeReadings();

  Choice choice_ = Choice::blank;
  QPlainTextEdit* readings_;
  QLabel* said_;
};

}  // namespace inchwright::app
