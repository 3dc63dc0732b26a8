#pragma once

#include <QObject>
#include <QString>
#include <functional>

#include "app/session/desk.h"
#include "app/session/file_guard.h"
#include "app/session/journal.h"

class QWidget;

namespace inchwright::app {

/// How the desk asks its user; the window puts dialogs behind it, a test its answers.
struct Asking {
  enum class Answer { save, leave, stay };

  std::function<QString()> fileToOpen;                          ///< empty: none chosen
  std::function<QString()> pictureToOpen;                       ///< empty: none chosen
  std::function<QString(const QString& suggested)> fileToSave;  ///< empty: none chosen
  std::function<Answer(const QString& name)> unsavedWork;
  std::function<bool(const QString& question)> yes;
  std::function<void(const QString& what)> tell;
};

/// Opening, saving, recovering: everything that happens between the desk and the disk.
class DeskFiles : public QObject {
  Q_OBJECT

 public:
  DeskFiles(Desk& desk, Asking asking, QObject* parent = nullptr);

  /// Each returns whether it was done; what went wrong has been told.
  bool open(const QString& file);  ///< asks for unsaved work first
  bool openChosen();
  bool save();
  bool saveAs();
  bool newJob();
  /// The front plate that comes with the program, with its print.
  bool openSample();
  /// True when the desk may be left: nothing unsaved, or saved now, or given up on purpose.
  bool mayLeave();
  /// Offers what an earlier process left behind. True when it was taken over.
  bool recover();

  /// Asks which picture is to lie under the print; empty: none.
  QString pictureToLay() const { return asking_.pictureToOpen(); }

  Journal& journal() { return journal_; }
  QString shownName() const;  ///< of the document, for the title of the window

 private:
  bool saveTo(const QString& file);
  void opened(Job job, const QString& file);

  Desk& desk_;
  Asking asking_;
  Journal journal_;
  FileGuard guard_;
};

/// A job with one empty part, for the user's own machine.
Job emptyJob();

}  // namespace inchwright::app
