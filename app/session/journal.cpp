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

constexpr int kDueAfter = 600;  // milliseconds from the first edit not yet written
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
/// Names the document the journal belongs to.
QString noteOf(const QString& journal) {
  return journal + QStringLiteral(".file");
}

/// What atomic_file.h writes before it takes the name; a process killed meanwhile leaves it.
QString savingOf(const QString& file) {
  const QFileInfo info(file);
  return info.path() + QStringLiteral("/.") + info.fileName() + QStringLiteral(".saving");
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
      lock_(lockOf(path_)),
      writer_(std::make_shared<Writer>()) {
  lock_.setStaleLockTime(0);
  lock_.tryLock(0);
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
  } else if (!due_.isActive()) {
    due_.start();
  }
}

void Journal::write() {
  if (!desk_.unsaved()) return;
  writer_->threads.start([this, job = desk_.job(), path = path_.toStdString(),
                          note = noteOf(path_).toStdString(), file = desk_.file().toStdString()] {
    auto done = replaceFile(note, file);
    if (done.ok()) done = replaceFile(path, writeDocument(job));
    if (!done.ok()) emit failed(QString::fromStdString(done.error().text));
  });
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
    auto lock = std::make_unique<QLockFile>(lockOf(journal));
    lock->setStaleLockTime(0);
    if (journal == path_ || !lock->tryLock(0)) continue;
    LeftWork work{journal, {}, {}};
    const auto file = readWholeFile(noteOf(journal).toStdString(), kLongestName);
    if (file.ok()) work.file = QString::fromStdString(*file);
    auto job = loadDocument(journal.toStdString());
    if (!job.ok()) continue;  // stays where it is, for somebody to look at
    work.job = std::move(job).value();
    found.push_back(std::move(work));
    adopted_.push_back(std::move(lock));
  }
  return found;
}

void Journal::forget(const LeftWork& work) {
  removeJournal(work.journal);
}

}  // namespace inchwright::app

#include "moc_journal.cpp"
