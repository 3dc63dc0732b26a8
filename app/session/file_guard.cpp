#include "app/session/file_guard.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>
#include <QSysInfo>
#include <cerrno>
#include <csignal>

#include "app/session/preferences.h"

namespace inchwright::app {
namespace {

constexpr int kWait = 50;  // milliseconds: clearLocks of another window holds a lock for a moment

QString openFolder() {
  return dataFolder(QStringLiteral("open"));
}

}  // namespace

QString ownName(const QString& file) {
  const QFileInfo info(file);
  if (file.isEmpty()) return {};
  if (info.exists()) return info.canonicalFilePath();
  // Not there yet: its folder may still be reached by a link.
  const QFileInfo folder(info.absolutePath());
  return folder.exists() ? QDir(folder.canonicalFilePath()).filePath(info.fileName())
                         : info.absoluteFilePath();
}

bool FileGuard::take(const QString& file) {
  const QString path = ownName(file);
  if (path.isEmpty()) {
    lock_.reset();
    file_.clear();
    return true;
  }
  if (path == file_ && lock_ != nullptr) return true;
  const QByteArray name =
      QCryptographicHash::hash(path.toUtf8(), QCryptographicHash::Sha256).toHex().left(32);
  auto lock = std::make_unique<QLockFile>(openFolder() + QLatin1Char('/') +
                                          QString::fromLatin1(name) + QStringLiteral(".lock"));
  lock->setStaleLockTime(0);  // only the death of its process frees it
  if (!lock->tryLock(kWait)) {
    // Only a lock that is held speaks of another window; anything else is trouble with the disk.
    if (isHeldByAnother(*lock)) return false;
    lock.reset();
  }
  lock_ = std::move(lock);
  file_ = path;
  return true;
}

bool isHeldByAnother(const QLockFile& lock) {
  if (lock.error() != QLockFile::LockFailedError) return false;
  qint64 process = 0;
  QString host, program;
  if (!lock.getLockInfo(&process, &host, &program)) return true;
  if (!host.isEmpty() && host != QSysInfo::machineHostName()) return true;
#ifdef Q_OS_UNIX
  return ::kill(static_cast<pid_t>(process), 0) == 0 || errno != ESRCH;
#else
  return true;
#endif
}

void FileGuard::clear() {
  clearLocks(openFolder(), [](const QString&) {});
}

void clearLocks(const QString& folder, const std::function<void(const QString& lock)>& whileHeld) {
  const auto entries = QDir(folder).entryInfoList({QStringLiteral("*.lock")}, QDir::Files);
  for (const QFileInfo& entry : entries) {
    QLockFile lock(entry.absoluteFilePath());
    lock.setStaleLockTime(0);
    if (lock.tryLock(0)) whileHeld(entry.absoluteFilePath());
  }
}

}  // namespace inchwright::app
