#pragma once

#include <QByteArray>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <vector>

#include "app/session/desk.h"

namespace inchwright::app {

/// Unsaved work that a process left behind when it died. While this lives, nobody else is offered
/// it.
struct LeftWork {
  QString journal;   ///< the file that holds it
  QString file;      ///< the document it belongs to; empty: never saved
  QByteArray known;  ///< what that document held when it was last seen, see Journal::noteKnown
  Job job;
  std::shared_ptr<QLockFile> lock;
};

/// Keeps unsaved work on the disk so that at most a second of it can be lost.
///
/// Within a second of an edit the document goes to a file of this process in the user's data
/// folder, whole or not at all (atomic_file.h), in the background; where that fails it is tried
/// again every few seconds. The file goes away when the work is saved or given up, never before. A
/// lock beside it says whether its process still lives.
class Journal : public QObject {
  Q_OBJECT

 public:
  explicit Journal(Desk& desk, QObject* parent = nullptr);
  /// Waits for a write under way. The journal stays when there is unsaved work: whoever closes the
  /// desk on purpose calls `drop` first.
  ~Journal() override;

  /// Writes what is due now and waits for it.
  void flush();
  void drop();
  QString path() const { return path_; }

  /// A mark of what the desk's document held when it was last read or written, kept beside the
  /// journal, so that whoever goes on with it can tell whether the document changed since.
  void noteKnown(const QByteArray& mark) { known_ = mark; }

  /// What processes that live no more have left, the newest first.
  std::vector<LeftWork> leftWork();
  /// Goes on with what was left, in its own file: it is there until what follows takes its place.
  /// Where it can't be locked it stays as it is besides. Requires: nothing unsaved on the desk.
  void adopt(LeftWork work);
  /// Puts what was left aside, to be found later, and says where; empty when that failed and it
  /// stays where it was.
  static QString putAside(const LeftWork& work);
  /// Removes what is elsewhere as well.
  static void forget(const LeftWork& work);

 signals:
  void failed(const QString& why);

 private:
  struct Writer;

  void note();
  void write();
  void wasWritten(const QString& trouble);

  Desk& desk_;
  QString path_;
  QByteArray known_;
  std::shared_ptr<QLockFile> lock_;
  QTimer due_;
  QString trouble_;  ///< of the last write, which was told
  std::shared_ptr<Writer> writer_;
};

}  // namespace inchwright::app
