#pragma once

#include <QDialog>

#include "core/base/result.h"
#include "core/part/job.h"

class QLabel;
class QPlainTextEdit;

namespace inchwright::app {

/// How a job begins: with a picture of the print, blank paper, a saved job or the sample, four
/// papers of the same weight; or with a table of readings. A picture dropped on it begins one.
class StartSlip : public QDialog {
  Q_OBJECT

 public:
  enum class Choice { picture, sample, open, blank, readings };

  explicit StartSlip(QWidget* parent = nullptr);

  Choice choice() const { return choice_; }
  /// The picture that was dropped; empty when none was.
  const QString& picture() const { return dropped_; }
  /// The part the pasted readings make, on an empty one. Errors: as `applyLines`.
  Result<Part> pastedPart() const;

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void choose(Choice choice);
  void takeReadings();

  Choice choice_ = Choice::blank;
  QString dropped_;
  QPlainTextEdit* readings_;
  QLabel* said_;
};

}  // namespace inchwright::app
