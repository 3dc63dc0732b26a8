#include "app/session/file_guard.h"

#include <QCryptographicHash>
#include <QFileInfo>

#include "app/session/preferences.h"

namespace inchwright::app {

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
  auto lock = std::make_unique<QLockFile>(dataFolder(QStringLiteral("open")) + QLatin1Char('/') +
                                          QString::fromLatin1(name) + QStringLiteral(".lock"));
  lock->setStaleLockTime(0);  // only the death of its process frees it
  if (!lock->tryLock(0)) return lock->error() != QLockFile::LockFailedError;
  lock_ = std::move(lock);
  return true;
}

}  // namespace inchwright::app
