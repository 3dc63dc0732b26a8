#pragma once

#include <QTimer>
#include <QWidget>

#include "core/base/result.h"

class QLabel;
class QPushButton;

namespace inchwright::app {

/// Says what was done where it can't be seen otherwise: what was written and where, or that
/// something was copied. A slip of paper at the upper edge of the desk that goes by itself.
class NoteSlip : public QWidget {
  Q_OBJECT

 public:
  explicit NoteSlip(QWidget* ground);

  void say(const QString& text);
  /// What could not be done, and where.
  void sayTrouble(const Error& error);
  /// What was written; the slip offers to open it and its folder.
  void sayWritten(const QStringList& files);
  QString text() const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void show(const QString& text, const QString& file);
  void lie();

  QLabel* words_;
  QPushButton* open_;
  QPushButton* folder_;
  QPushButton* away_;
  QString file_;
  QTimer leave_;
};

}  // namespace inchwright::app
