#include "app/window/desk_files.h"

#include <QCryptographicHash>
#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <utility>

#include "app/picture/picture_decoder.h"
#include "app/session/job_difference.h"
#include "app/session/picture_edits.h"
#include "app/session/preferences.h"
#include "app/window/outputs.h"
#include "core/document/atomic_file.h"
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

QByteArray markOf(std::string_view text) {
  return QCryptographicHash::hash({text.data(), static_cast<qsizetype>(text.size())},
                                  QCryptographicHash::Sha256)
      .toHex();
}

/// A document as it was read, with the mark of what the file held.
struct Opened {
  Job job;
  QByteArray mark;
};

Result<Opened> openedFrom(const QString& path) {
  const auto text = readWholeFile(path.toStdString(), kLargestDocument);
  if (!text.ok()) return text.error();
  auto job = readDocument(*text);
  if (!job.ok()) return job.error();
  return Opened{std::move(job).value(), markOf(*text)};
}

QString nameOf(const QString& file) {
  return QFileInfo(file).fileName();
}

QString freeNameBeside(const QString& file) {
  const QFileInfo info(file);
  for (int number = 2;; ++number) {
    QString name =
        QStringLiteral("%1/%2 (%3)").arg(info.path(), info.completeBaseName()).arg(number);
    if (!info.suffix().isEmpty()) name += QLatin1Char('.') + info.suffix();
    if (!QFileInfo::exists(name)) return name;
  }
}

QString ageOf(const QString& file) {
  return QLocale().toString(QFileInfo(file).lastModified(), QLocale::ShortFormat);
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
    emit remarked(tr("The copy against a crash could not be written, so save often: %1").arg(why));
  });
}

QString DeskFiles::shownName() const {
  if (desk_.file().isEmpty()) return tr("not saved yet");
  return onlyLook_ ? tr("%1 (only looked at)").arg(nameOf(desk_.file())) : nameOf(desk_.file());
}

bool DeskFiles::isOwn(const QString& path) const {
  return !desk_.file().isEmpty() && ownName(path) == ownName(desk_.file());
}

/// Requires: the guard holds the file, or it is only looked at.
void DeskFiles::opened(Job job, const QString& file, const QByteArray& mark) {
  sample_ = false;
  journal_.drop();
  known_ = mark;
  journal_.noteKnown(mark);
  desk_.take(std::move(job), file);
}

bool DeskFiles::open(const QString& file) {
  const QString path = QFileInfo(file).absoluteFilePath();
  auto found = openedFrom(path);
  if (!found.ok()) {
    asking_.tell(tr("%1 can't be opened.\n%2").arg(nameOf(file), wordsOf(found.error())));
    return false;
  }
  if (!mayLeave()) return false;
  // Saving it just now may have been what changed the file.
  if (isOwn(path)) found = openedFrom(path);
  if (!found.ok()) return false;
  const bool free = guard_.take(path);
  if (!free) {
    const int answer = asking_.choose(
        {tr("%1 is open in another window of yours. Here it can be looked at, and what is changed "
            "here can only be saved under another name.")
             .arg(nameOf(path)),
         {tr("Only &look"), tr("&Don't open it")},
         0,
         1});
    if (answer != 0) return false;
    guard_.take({});
  }
  onlyLook_ = !free;
  opened(std::move(found->job), path, found->mark);
  Preferences::noteRecentFile(path);
  return true;
}

bool DeskFiles::openChosen() {
  const QString file = asking_.fileToOpen();
  return !file.isEmpty() && open(file);
}

/// Requires: leave to replace what lies there.
bool DeskFiles::saveTo(const QString& path) {
  const bool held = isOwn(path) && !onlyLook_;
  FileGuard there;
  // Also of its own file: perhaps it could not be noted when it was opened, as on a full disk.
  if (!(held ? guard_ : there).take(path)) {
    asking_.tell(tr("Not saved.\n%1 is open in another window of yours: save under another name.")
                     .arg(nameOf(path)));
    return false;
  }
  if (!isOwn(path)) bringLinkedPictures(path);
  const auto text = savableDocument(desk_.job());
  const auto done = text.ok() ? replaceFile(path.toStdString(), *text) : text.error();
  if (!done.ok()) {
    const QString why = tr("Not saved.\n%1").arg(wordsOf(done.error()));
    if (done.error().code == ErrorCode::fileTrouble) {
      return asking_.choose({why, {tr("&Save it elsewhere …"), tr("Not &now")}, 0, 1}) == 0 &&
             saveAs();
    }
    asking_.tell(why);
    return false;
  }
  if (!held) guard_ = std::move(there);
  onlyLook_ = false;
  known_ = markOf(*text);
  journal_.noteKnown(known_);
  desk_.markSaved(path);
  Preferences::noteRecentFile(path);
  return true;
}

/// Pictures that are linked from the document's folder would not be found from another: they come
/// along inside.
void DeskFiles::bringLinkedPictures(const QString& path) {
  if (desk_.file().isEmpty() ||
      QFileInfo(desk_.file()).absoluteDir() == QFileInfo(path).absoluteDir()) {
    return;
  }
  Job job = desk_.job();
  for (Picture& picture : job.pictures) {
    if (picture.file.empty()) continue;
    const QString linked = linkedFile(desk_.file(), picture);
    const auto bytes = readWholeFile(linked.toStdString(), kLargestPictureFile);
    if (!bytes.ok() || bytes->empty()) continue;  // it is missing here as well
    auto inside = keptInside(picture, QByteArray::fromStdString(*bytes));
    if (inside.ok()) {
      picture = std::move(inside).value();
    } else {
      emit remarked(tr("%1 could not be brought along: %2")
                        .arg(nameOf(linked), coreWords(inside.error().text)));
    }
  }
  desk_.apply(std::move(job), tr("Bring the pictures along"));
}

bool DeskFiles::mayReplace(const QString& path) {
  return asking_.choose(
             {tr("%1 is there already, of %2. Saving replaces it.").arg(nameOf(path), ageOf(path)),
              {tr("&Replace it"), tr("&Leave it")},
              1,
              1}) == 0;
}

QString DeskFiles::placeAfterChange() {
  const QString path = desk_.file();
  const auto there = readWholeFile(path.toStdString(), kLargestDocument);
  // One that was moved away is simply written again.
  if (!QFileInfo::exists(path) || (there.ok() && markOf(*there) == known_)) return path;
  QStringList differs;
  const auto job = there.ok() ? readDocument(*there) : there.error();
  if (job.ok()) {
    differs = jobDifference(*job, desk_.job());
  } else {
    differs << tr("it can't be read: %1").arg(wordsOf(job.error()));
  }
  const QString beside = freeNameBeside(path);
  const int answer = asking_.choose(
      {tr("%1 was changed on the disk since it was opened here (%2). What differs:\n%3")
           .arg(nameOf(path), ageOf(path), differs.join(QLatin1Char('\n'))),
       {tr("&Keep both: save this one as %1").arg(nameOf(beside)), tr("&Replace that one"),
        tr("Don't &save now")},
       0,
       2});
  return answer == 0 ? beside : answer == 1 ? path : QString();
}

bool DeskFiles::save() {
  if (desk_.file().isEmpty()) return saveAs();
  if (onlyLook_) {
    asking_.tell(tr("%1 is open in another window of yours: save this one under another name.")
                     .arg(nameOf(desk_.file())));
    return saveAs();
  }
  const QString path = placeAfterChange();
  return !path.isEmpty() && saveTo(path);
}

bool DeskFiles::saveAs() {
  QString suggested = desk_.file();
  if (suggested.isEmpty()) {
    QString name = QString::fromStdString(desk_.job().title).simplified();
    name.replace(QLatin1Char('/'), QLatin1Char('-'));
    if (name.isEmpty()) name = tr("my part");
    suggested = QDir::home().filePath(name + QStringLiteral(".inchwright"));
  } else if (onlyLook_) {
    suggested = freeNameBeside(suggested);
  }
  const QString file = asking_.fileToSave(suggested);
  if (file.isEmpty()) return false;
  const QString path = QFileInfo(withEnding(file)).absoluteFilePath();
  if (isOwn(path) && !onlyLook_) return save();
  return (!QFileInfo::exists(path) || mayReplace(path)) && saveTo(path);
}

bool DeskFiles::newJob() {
  if (!mayLeave()) return false;
  guard_.take({});
  onlyLook_ = false;
  opened(emptyJob(), {}, {});
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
  guard_.take({});
  onlyLook_ = false;
  opened(std::move(job).value(), {}, {});
  sample_ = true;
  return true;
}

bool DeskFiles::mayLayPicture() {
  if (!sample_ || !desk_.file().isEmpty()) return true;
  const int answer = asking_.choose(
      {tr("The sample is on the desk. Does this picture begin a job of your own?"),
       {tr("Begin a &new job with it"), tr("Lay it under the &sample"), tr("&Leave it")},
       0,
       2});
  return answer == 0 ? newJob() : answer == 1;
}

bool DeskFiles::mayLeave() {
  if (!desk_.unsaved()) return true;
  switch (asking_.unsavedWork(shownName())) {
    case Asking::Answer::save:
      return save();
    case Asking::Answer::leave:
      return true;
    case Asking::Answer::stay:
      break;
  }
  return false;
}

QString DeskFiles::sheetName() const {
  const bool saved = !desk_.file().isEmpty();
  QStringList words;
  if (saved) words << QFileInfo(desk_.file()).completeBaseName();
  // Each part and setup has a sheet of its own, and none is to take the place of another.
  if (desk_.hasPart() && (!saved || desk_.job().parts.size() > 1)) {
    words << QString::fromStdString(desk_.part().name);
  }
  if (desk_.hasPart() && desk_.part().setups.size() > 1) {
    words << tr("setup %1").arg(QString::fromStdString(desk_.setup().name));
  }
  if (words.isEmpty()) return QStringLiteral("sheet");
  return words.join(QStringLiteral(", ")).replace(QLatin1Char('/'), QLatin1Char('-'));
}

bool DeskFiles::writeSheet(const QString& ending) {
  const bool saved = !desk_.file().isEmpty();
  const QString name = sheetName();
  const QString folder = saved ? QFileInfo(desk_.file()).path() : QDir::homePath();
  QString file = asking_.fileForSheet(folder + QLatin1Char('/') + name + QLatin1Char('.') + ending);
  if (file.isEmpty()) return false;
  if (QFileInfo(file).suffix().isEmpty()) file += QLatin1Char('.') + ending;
  return tellWritten(exportSheet(desk_, file, mayReplaceSheets()));
}

bool DeskFiles::writePaper(const std::vector<PageKind>& kinds) {
  const bool saved = !desk_.file().isEmpty();
  const QString folder = saved ? QFileInfo(desk_.file()).path() : QDir::homePath();
  const QString name = saved ? QFileInfo(desk_.file()).completeBaseName() : tr("job");
  QString file = asking_.fileForSheet(folder + QLatin1Char('/') + tr("%1, paper.pdf").arg(name));
  if (file.isEmpty()) return false;
  if (QFileInfo(file).suffix().isEmpty()) file += QStringLiteral(".pdf");
  return tellWritten(exportPaper(desk_, kinds, file, mayReplaceSheets()));
}

MayReplace DeskFiles::mayReplaceSheets() {
  return [this](const QStringList& there) {
    QStringList named;
    for (const QString& one : there) {
      named << tr("%1, of %2, %3")
                   .arg(nameOf(one), ageOf(one),
                        isOurSheet(one) ? tr("a sheet of yours") : tr("not made by Inchwright"));
    }
    return asking_.choose({tr("There already:\n%1").arg(named.join(QLatin1Char('\n'))),
                           {tr("&Replace it"), tr("&Leave it")},
                           1,
                           1}) == 0;
  };
}

bool DeskFiles::tellWritten(const Result<QStringList>& written) {
  if (!written.ok()) asking_.tell(tr("Not written.\n%1").arg(wordsOf(written.error())));
  if (!written.ok() || written->isEmpty()) return false;
  emit wrote(*written);
  return true;
}

void DeskFiles::goOnWith(LeftWork work) {
  // What the file holds comes first, so that undo leads back to it.
  Job before = emptyJob();
  if (!work.file.isEmpty()) {
    auto there = openedFrom(work.file);
    if (there.ok()) before = std::move(there->job);
  }
  onlyLook_ = !work.file.isEmpty() && !guard_.take(work.file);
  if (work.file.isEmpty() || onlyLook_) guard_.take({});
  const Job left = work.job;
  const QString file = work.file;
  const QByteArray known = work.known;
  opened(std::move(before), file, known);
  journal_.adopt(std::move(work));
  desk_.apply(left, tr("Recover"));
}

bool DeskFiles::recover(const std::function<DeskFiles*()>& another) {
  FileGuard::clear();
  DeskFiles* onto = this;
  for (LeftWork& work : journal_.leftWork()) {
    if (!work.file.isEmpty()) {
      // Saved, and only its copy was still there.
      const auto there = openedFrom(work.file);
      if (there.ok() && there->job == work.job) {
        Journal::forget(work);
        continue;
      }
    }
    const QString name = work.file.isEmpty() ? tr("a job that was never saved") : nameOf(work.file);
    const QString title = QString::fromStdString(work.job.title);
    const int answer =
        asking_.choose({tr("Last time the program ended before your work was saved: %1 (%2).")
                            .arg(name, title.isEmpty() ? tr("without a title") : title),
                        {tr("&Go on with it"), tr("&Put it aside"), tr("&Later")},
                        0,
                        2});
    if (answer == 1) {
      const QString aside = Journal::putAside(work);
      if (aside.isEmpty()) continue;
      Preferences::noteRecentFile(aside);
      asking_.tell(tr("It is put aside, under “Open again”, as\n%1").arg(aside));
    } else if (answer == 0) {
      if (onto == nullptr) onto = another();
      onto->goOnWith(std::move(work));
      onto = nullptr;
    }
  }
  return onto != this;
}

}  // namespace inchwright::app

#include "moc_desk_files.cpp"
