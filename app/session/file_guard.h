#pragma once

#include <QLockFile>
#include <QString>
#include <memory>

namespace inchwright::app {

/// Says which document this window has open, so that a second window on the same file is noticed.
/// The note lies in the user's own data folder, never beside the document, and falls with the
/// process that made it, however it ended.
class FileGuard {
 public:
  /// Lets go of the last file and takes this one; empty takes none. False when another window of
  /// this user has it open.
  bool take(const QString& file);

 private:
  std::unique_ptr<QLockFile> lock_;
  QString file_;
};

}  // namespace inchwright::app
