#pragma once

#include <QLockFile>
#include <QString>
#include <functional>
#include <memory>

namespace inchwright::app {

/// Says which document this window has open, so that a second window on the same file is noticed.
/// The note lies in the user's own data folder, never beside the document, and falls with the
/// process that made it, however it ended.
class FileGuard {
 public:
  /// Takes this file and lets go of the last one; empty takes none. False when another window of
  /// this user has it open: the last one is then still held. Where no note can be kept, as on a
  /// full disk, nothing is known of other windows and the file counts as free.
  bool take(const QString& file);

  /// Removes what processes that were killed have left of their notes. Once a start is enough.
  static void clear();

 private:
  std::unique_ptr<QLockFile> lock_;
  QString file_;
};

/// After `tryLock` failed: whether a process that lives holds the lock. What a dead one left can't
/// be taken away on a full disk, and says nothing of another window.
bool isHeldByAnother(const QLockFile& lock);

/// The name of a file as it is told from others: one document under two names is one document.
QString ownName(const QString& file);

/// Removes the locks in a folder, `*.lock`, whose processes live no more. What else such a process
/// left is cleared by `whileHeld`, called with the name of the lock while nobody else can take it.
void clearLocks(const QString& folder, const std::function<void(const QString& lock)>& whileHeld);

}  // namespace inchwright::app
