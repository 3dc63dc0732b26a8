#pragma once

#include <QObject>
#include <QString>
#include <functional>

#include "app/session/desk.h"
#include "app/session/file_guard.h"
#include "app/session/journal.h"
#include "app/window/outputs.h"

class QWidget;

namespace inchwright::app {

/// How the desk asks its user; the window puts dialogs behind it, a test its answers.
struct Asking {
  enum class Answer { save, leave, stay };

  /// A question with its answers, each a few words. Enter gives the answer `usual`, Escape and
  /// closing the question the answer `escape`, so neither may be one that loses anything.
  struct Question {
    QString text;
    QStringList answers;
    int usual = 0;
    int escape = 0;
  };

  std::function<QString()> fileToOpen;                          ///< empty: none chosen
  std::function<QString()> pictureToOpen;                       ///< empty: none chosen
  std::function<QString(const QString& suggested)> fileToSave;  ///< empty: none chosen
  /// Where my sheet goes; the suggestion's ending says as what. Empty: none chosen.
  std::function<QString(const QString& suggested)> fileForSheet;
  std::function<Answer(const QString& name)> unsavedWork;
  std::function<int(const Question& question)> choose;
  std::function<void(const QString& what)> tell;
};

/// Opening, saving, recovering: everything that happens between the desk and the disk.
///
/// The name that is written to is the name that was asked about; nothing is replaced unasked but
/// what this desk itself read or wrote and nobody changed since.
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
  /// True when the desk may be left: nothing unsaved, or saved now, or to be given up. What is to
  /// be given up is still there and still kept until something else takes its place.
  bool mayLeave();
  /// Asks where to and writes my sheet as `ending` says (see outputs.h).
  bool writeSheet(const QString& ending);

  /// Asks where to and writes paper for the whole job.
  bool writePaper(const std::vector<PageKind>& kinds);

  /// Offers what earlier processes left behind. What is wanted goes onto this desk, each further
  /// piece onto one that `another` gives. True when any was taken over. What is not wanted is put
  /// aside, and what is not answered stays for the next start.
  bool recover(const std::function<DeskFiles*()>& another);

  /// Whether a picture of the user's own may be laid under what is on the desk. Under the sample
  /// it asks whether it begins a job of its own, and begins one.
  bool mayLayPicture();
  /// Asks which picture is to lie under the print; empty: none.
  QString pictureToLay() const { return asking_.pictureToOpen(); }

  Journal& journal() { return journal_; }
  QString shownName() const;  ///< of the document, for the title of the window

 signals:
  void wrote(const QStringList& files);  ///< my sheet, by these names
  void remarked(const QString& text);    ///< what the user has to know, and need not answer

 private:
  bool saveTo(const QString& path);
  bool mayReplace(const QString& path);
  /// Asks once for all the files that are there.
  MayReplace mayReplaceSheets();
  bool tellWritten(const Result<QStringList>& written);
  /// Where to save instead of over what somebody else changed; empty: nowhere.
  QString placeAfterChange();
  /// What to call my sheet, without an ending: by the file, and where there are several by part and
  /// setup.
  QString sheetName() const;
  void opened(Job job, const QString& file, const QByteArray& mark);
  void goOnWith(LeftWork work);
  void bringLinkedPictures(const QString& path);
  bool isOwn(const QString& path) const;

  Desk& desk_;
  Asking asking_;
  Journal journal_;
  FileGuard guard_;
  QByteArray known_;       ///< what the file held when it was last read or written, as a mark
  bool sample_ = false;    ///< the sample is on the desk
  bool onlyLook_ = false;  ///< another window has it open
};

/// A job with one empty part, for the user's own machine.
Job emptyJob();

}  // namespace inchwright::app
