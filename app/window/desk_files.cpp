#include "app/window/desk_files.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <utility>

#include "app/session/preferences.h"
#include "core/document/document.h"

// Outside any namespace, as Qt asks: the resource lies in a static library and must be named once.
static void initialiseSample() {
  Q_INIT_RESOURCE(sample);
}

namespace inchwright::app {
namespace {

QByteArray resource(const QString& name) {
  initialiseSample();
  QFile file(QStringLiteral(":/sample/") + name);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString withEnding(const QString& file) {
  return QFileInfo(file).suffix().isEmpty() ? file + QStringLiteral(".inchwright") : file;
}

QString wordsOf(const Error& error) {
  const QString place = QString::fromStdString(error.place);
  const QString text = coreWords(error.text);
  return place.isEmpty() ? text : place + QStringLiteral(": ") + text;
}

}  // namespace

Job emptyJob() {
  Job job;
  job.machine = Preferences::machine();
  job.unit = job.machine.unit;
  job.parts.emplace_back();
  job.parts.back().name = DeskFiles::tr("Part 1").toStdString();
  return job;
}

DeskFiles::DeskFiles(Desk& desk, Asking asking, QObject* parent)
    : QObject(parent), desk_(desk), asking_(std::move(asking)), journal_(desk) {
  connect(&journal_, &Journal::failed, this, [this](const QString& why) {
    emit desk_.refused(tr("the copy against a crash could not be written: %1").arg(why));
  });
}

QString DeskFiles::shownName() const {
  return desk_.file().isEmpty() ? tr("not saved yet") : QFileInfo(desk_.file()).fileName();
}

void DeskFiles::opened(Job job, const QString& file) {
  journal_.drop();
  if (!guard_.take(file)) {
    asking_.tell(tr("%1 is open in another window of yours. Whoever saves last wins; close one of "
                    "them.")
                     .arg(QFileInfo(file).fileName()));
  }
  desk_.take(std::move(job), file);
}

bool DeskFiles::open(const QString& file) {
  if (!mayLeave()) return false;
  auto job = loadDocument(QFileInfo(file).absoluteFilePath().toStdString());
  if (!job.ok()) {
    asking_.tell(
        tr("%1 can't be opened.\n%2").arg(QFileInfo(file).fileName(), wordsOf(job.error())));
    return false;
  }
  const QString path = QFileInfo(file).absoluteFilePath();
  opened(std::move(job).value(), path);
  Preferences::noteRecentFile(path);
  return true;
}

bool DeskFiles::openChosen() {
  const QString file = asking_.fileToOpen();
  return !file.isEmpty() && open(file);
}

bool DeskFiles::saveTo(const QString& file) {
  const QString path = QFileInfo(withEnding(file)).absoluteFilePath();
  const auto done = saveDocument(desk_.job(), path.toStdString());
  if (!done.ok()) {
    asking_.tell(tr("Not saved.\n%1").arg(wordsOf(done.error())));
    return false;
  }
  desk_.markSaved(path);
  journal_.drop();
  if (!guard_.take(path)) {
    asking_.tell(tr("%1 is open in another window of yours as well.").arg(shownName()));
  }
  Preferences::noteRecentFile(path);
  return true;
}

bool DeskFiles::save() {
  return desk_.file().isEmpty() ? saveAs() : saveTo(desk_.file());
}

bool DeskFiles::saveAs() {
  QString suggested = desk_.file();
  if (suggested.isEmpty()) {
    QString name = QString::fromStdString(desk_.job().title).simplified();
    name.replace(QLatin1Char('/'), QLatin1Char('-'));
    if (name.isEmpty()) name = tr("my part");
    suggested = QDir::home().filePath(name + QStringLiteral(".inchwright"));
  }
  const QString file = asking_.fileToSave(suggested);
  return !file.isEmpty() && saveTo(file);
}

bool DeskFiles::newJob() {
  if (!mayLeave()) return false;
  opened(emptyJob(), {});
  return true;
}

bool DeskFiles::openSample() {
  if (!mayLeave()) return false;
  const QByteArray text = resource(QStringLiteral("front_plate.inchwright"));
  auto job = readDocument({text.constData(), static_cast<std::size_t>(text.size())});
  if (!job.ok()) {
    asking_.tell(wordsOf(job.error()));
    return false;
  }
  // The sample has no folder that its print could lie in, so the print comes along inside.
  for (Picture& picture : job->pictures) {
    if (picture.file.empty()) continue;
    const QString name = QFileInfo(QString::fromStdString(picture.file)).fileName();
    picture.data = PictureBytes(resource(name).toStdString());
    picture.file.clear();
  }
  opened(std::move(job).value(), {});
  return true;
}

bool DeskFiles::mayLeave() {
  if (!desk_.unsaved()) return true;
  switch (asking_.unsavedWork(shownName())) {
    case Asking::Answer::save:
      return save();
    case Asking::Answer::leave:
      journal_.drop();
      return true;
    case Asking::Answer::stay:
      break;
  }
  return false;
}

bool DeskFiles::recover() {
  FileGuard::clear();
  for (LeftWork& work : journal_.leftWork()) {
    const QString name =
        work.file.isEmpty() ? tr("a job that was never saved") : QFileInfo(work.file).fileName();
    const QString title = QString::fromStdString(work.job.title);
    const bool wanted =
        asking_.yes(tr("Last time the program ended before your work was saved: %1 (%2). "
                       "Go on with it? No throws it away.")
                        .arg(name, title.isEmpty() ? tr("without a title") : title));
    if (wanted) {
      // What the file holds comes first, so that undo leads back to it.
      auto before =
          work.file.isEmpty() ? Result<Job>(emptyJob()) : loadDocument(work.file.toStdString());
      opened(before.ok() ? *before : emptyJob(), work.file);
      desk_.apply(work.job, tr("Recover"));
      journal_.flush();
      journal_.forget(work);
      return true;
    }
    journal_.forget(work);
  }
  return false;
}

}  // namespace inchwright::app

#include "moc_desk_files.cpp"
