#include "app/session/journal.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <QThreadPool>
#include <QUuid>
#include <algorithm>

#include "app/session/file_guard.h"
#include "app/session/preferences.h"
#include "core/document/atomic_file.h"
#include "core/document/document.h"

namespace inchwright::app {
namespace {

constexpr int kDueAfter = 600;    // milliseconds from the first edit not yet written
constexpr int kTryAgain = 5'000;  // milliseconds from a write that failed
constexpr int kMarkLength = 64;   // characters of a mark of what a file held
constexpr std::size_t kLongestName = 16 * 1024;

QString folder() {
  return dataFolder(QStringLiteral("journal"));
}

QString freshPath() {
  return folder() + QLatin1Char('/') + QUuid::createUuid().toString(QUuid::WithoutBraces) +
         QStringLiteral(".inchwright");
}

QString lockOf(const QString& journal) {
  return journal + QStringLiteral(".lock");
}
/// A line with the mark of what the document held, then its name.
QString noteOf(const QString& journal) {
  return journal + QStringLiteral(".file");
}

/// What atomic_file.h writes before it takes the name; a process killed meanwhile leaves it.
QString savingOf(const QString& file) {
  const QFileInfo info(file);
  return info.path() + QStringLiteral("/.") + info.fileName() + QStringLiteral(".saving");
}

/// The note of an earlier edition of this program is the name alone.
void readNote(LeftWork& work) {
  const auto note = readWholeFile(noteOf(work.journal).toStdString(), kLongestName);
  if (!note.ok()) return;
  const auto end = note->find('\n');
  const bool marked = end == 0 || end == kMarkLength;
  if (marked) work.known = QByteArray::fromStdString(note->substr(0, end));
  work.file = QString::fromStdString(marked ? note->substr(end + 1) : *note);
}

void removeJournal(const QString& journal) {
  for (const QString& file : {journal, noteOf(journal)}) {
    QFile::remove(file);
    QFile::remove(savingOf(file));
  }
}

}  // namespace

/// Does the writing on a thread of its own; one version at a time and always in order.
struct Journal::Writer {
  QThreadPool threads;

  Writer() { threads.setMaxThreadCount(1); }
};

Journal::Journal(Desk& desk, QObject* parent)
    : QObject(parent),
      desk_(desk),
      path_(freshPath()),
      lock_(std::make_shared<QLockFile>(lockOf(path_))),
      writer_(std::make_shared<Writer>()) {
  lock_->setStaleLockTime(0);
  lock_->tryLock(0);
  due_.setSingleShot(true);
  due_.setInterval(kDueAfter);
  connect(&due_, &QTimer::timeout, this, &Journal::write);
  connect(&desk, &Desk::edited, this, &Journal::note);
  connect(&desk, &Desk::savedChanged, this, &Journal::note);
}

Journal::~Journal() {
  flush();
}

void Journal::note() {
  if (!desk_.unsaved()) {
    drop();
  } else if (!due_.isActive() || due_.interval() != kDueAfter) {
    due_.start(kDueAfter);
  }
}

void Journal::write() {
  if (!desk_.unsaved()) return;
  // Perhaps the disk was full when it was first wanted.
  if (!lock_->isLocked()) lock_->tryLock(0);
  writer_->threads.start([this, job = desk_.job(), path = path_.toStdString(),
                          note = noteOf(path_).toStdString(),
                          about = (known_ + '\n').toStdString() + desk_.file().toStdString()] {
    // What could not be offered again must not take the place of what can.
    const auto text = savableDocument(job);
    auto done = text.ok() ? replaceFile(note, about) : text.error();
    if (done.ok()) done = replaceFile(path, *text);
    const QString trouble = done.ok() ? QString() : QString::fromStdString(done.error().text);
    // The journal outlives its threads, which its destructor waits for.
    QMetaObject::invokeMethod(
        this, [this, trouble] { wasWritten(trouble); }, Qt::QueuedConnection);
  });
}

void Journal::wasWritten(const QString& trouble) {
  if (!trouble.isEmpty() && !due_.isActive()) due_.start(kTryAgain);
  // Said once, not every time that it is tried again.
  if (std::exchange(trouble_, trouble) != trouble && !trouble.isEmpty()) emit failed(trouble);
}

void Journal::flush() {
  if (due_.isActive()) {
    due_.stop();
    write();
  }
  writer_->threads.waitForDone();
}

void Journal::drop() {
  due_.stop();
  writer_->threads.waitForDone();
  removeJournal(path_);
}

std::vector<LeftWork> Journal::leftWork() {
  std::vector<LeftWork> found;
  QDir place(folder());
  // Processes that had nothing unsaved when they were killed.
  clearLocks(place.path(), [](const QString& lock) {
    const QString journal = lock.chopped(lockOf({}).size());
    if (!QFile::exists(journal)) removeJournal(journal);
  });
  const auto entries =
      place.entryInfoList({QStringLiteral("*.inchwright")}, QDir::Files, QDir::Time);
  for (const QFileInfo& entry : entries) {
    const QString journal = entry.absoluteFilePath();
    auto lock = std::make_shared<QLockFile>(lockOf(journal));
    lock->setStaleLockTime(0);
    // On a full disk no lock can be written, and a dead process's not be taken away.
    const bool free = lock->tryLock(0) || !isHeldByAnother(*lock);
    if (journal == path_ || !free) continue;
    LeftWork work{journal, {}, {}, {}, std::move(lock)};
    readNote(work);
    auto job = loadDocument(journal.toStdString());
    if (!job.ok()) continue;  // stays where it is, for somebody to look at
    work.job = std::move(job).value();
    found.push_back(std::move(work));
  }
  return found;
}

void Journal::adopt(LeftWork work) {
  // Unlocked, as on a full disk, it stays where it is for the next start: others may take it too.
  if (!work.lock->isLocked()) return;
  drop();
  path_ = work.journal;
  lock_ = std::move(work.lock);
  known_ = work.known;
}

QString Journal::putAside(const LeftWork& work) {
  const QString name =
      work.file.isEmpty() ? QStringLiteral("unnamed") : QFileInfo(work.file).completeBaseName();
  const QString moment =
      QFileInfo(work.journal).lastModified().toString(QStringLiteral("yyyy-MM-dd HH.mm.ss"));
  const QString place = dataFolder(QStringLiteral("aside"));
  for (int number = 1; number < 1000; ++number) {
    const QString more = number == 1 ? QString() : QStringLiteral(" (%1)").arg(number);
    const QString to = QStringLiteral("%1/%2 %3%4.inchwright").arg(place, name, moment, more);
    if (QFile::exists(to)) continue;
    // A new name for the same bytes: it needs no room on the disk.
    if (!QFile::rename(work.journal, to)) return {};
    removeJournal(work.journal);
    return to;
  }
  return {};
}

void Journal::forget(const LeftWork& work) {
  removeJournal(work.journal);
}

}  // namespace inchwright::app

#include "moc_journal.cpp"
