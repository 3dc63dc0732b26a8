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

bool FileGuard::take(const QString& file) {
  // One document under two names is one document.
  const QString path = file.isEmpty()
                           ? QString()
                           : (QFileInfo::exists(file) ? QFileInfo(file).canonicalFilePath()
                                                      : QFileInfo(file).absoluteFilePath());
  if (path == file_) return path.isEmpty() || lock_ != nullptr;
  lock_.reset();
  file_ = path;
  if (path.isEmpty()) return true;
  const QByteArray name =
      QCryptographicHash::hash(path.toUtf8(), QCryptographicHash::Sha256).toHex().left(32);
  auto lock = std::make_unique<QLockFile>(openFolder() + QLatin1Char('/') +
                                          QString::fromLatin1(name) + QStringLiteral(".lock"));
  lock->setStaleLockTime(0);  // only the death of its process frees it
  if (!lock->tryLock(kWait)) return lock->error() != QLockFile::LockFailedError;
  lock_ = std::move(lock);
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
