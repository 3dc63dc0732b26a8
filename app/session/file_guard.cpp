#include "app/session/file_guard.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>

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
  return file.isEmpty()  ? QString()
         : info.exists() ? info.canonicalFilePath()
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
    if (lock->error() == QLockFile::LockFailedError) return false;
    lock.reset();
  }
  lock_ = std::move(lock);
  file_ = path;
  return true;
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
