#pragma once

#include <QWidget>

#include "app/session/work.h"

class QLabel;
class QLineEdit;

namespace inchwright::app {

/// The one strip to type into: what is asked, the line, and what was understood.
///
/// It shows what Work says and hands it what is typed; it knows nothing of what is being done.
class Strip : public QWidget {
  Q_OBJECT

 public:
  explicit Strip(Work& work, QWidget* parent = nullptr);

  /// Keys typed anywhere on the desk land here.
  QLineEdit* line() const { return line_; }

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void follow();
  void showEcho();
  void refuse(const QString& why);
  void takeLine();
  void restyle();
  void fitEcho();
  /// Whether a key that the line could use means more on the desk: undo, for one.
  static bool isStrayShortcut(const QKeyEvent& key);
  bool leavesToDesk(const QKeyEvent& key) const;

  Work& work_;
  QLabel* prompt_;
  QLineEdit* line_;
  QLabel* echo_;
  QString refusal_;
  bool taking_ = false;  ///< the line is on its way into the job
};

}  // namespace inchwright::app
