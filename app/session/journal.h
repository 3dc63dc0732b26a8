#pragma once

#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <vector>

#include "app/session/desk.h"

namespace inchwright::app {

/// Unsaved work that a process left behind when it died.
struct LeftWork {
  QString journal;  ///< the file that holds it
  QString file;     ///< the document it belongs to; empty: never saved
  Job job;
};

/// Keeps unsaved work on the disk so that at most a second of it can be lost.
///
/// Within a second of an edit the document goes to a file of this process in the user's data
/// folder, whole or not at all (atomic_file.h), in the background. The file goes away when the work
/// is saved or given up. A lock beside it says whether its process still lives.
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

  /// What processes that live no more have left, the newest first. It is this process's from now
  /// on: nobody else is offered it while the process lives.
  std::vector<LeftWork> leftWork();
  /// Removes what was taken over or turned down.
  void forget(const LeftWork& work);

 signals:
  void failed(const QString& why);

 private:
  struct Writer;

  void note();
  void write();

  Desk& desk_;
  QString path_;
  QLockFile lock_;
  QTimer due_;
  std::shared_ptr<Writer> writer_;
  std::vector<std::unique_ptr<QLockFile>> adopted_;
};

}  // namespace inchwright::app
