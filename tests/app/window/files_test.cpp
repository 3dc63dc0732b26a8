// Between the desk and the disk: nothing is lost, and nothing is replaced unasked.

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QImage>
#include <QTemporaryDir>

#include "app/session/file_guard.h"
#include "app/session/journal.h"
#include "app/window/outputs.h"
#include "core/document/atomic_file.h"
#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class FilesTest : public WindowTest {
 protected:
  QString at(const char* name) const { return folder.filePath(QString::fromLatin1(name)); }

  static QByteArray bytesOf(const QString& file) {
    QFile from(file);
    return from.open(QIODevice::ReadOnly) ? from.readAll() : QByteArray();
  }

  static void put(const QString& file, const QByteArray& bytes) {
    QFile to(file);
    ASSERT_TRUE(to.open(QIODevice::WriteOnly));
    to.write(bytes);
  }

  /// A job of one point, as somebody else may have saved it.
  static Job jobWithPoint(const char* id) {
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    Feature point;
    point.id = id;
    job.parts[0].features.push_back(point);
    return job;
  }

  /// Work on a document that a process left behind when it was killed.
  void leaveBehind(const Job& before, const QString& file, const char* point) {
    Desk other;
    other.take(before, file);
    Journal died(other);
    Feature more;
    more.id = point;
    ASSERT_TRUE(other.applyPart(addFeature(other.part(), more), QStringLiteral("point")));
    died.flush();
  }

  std::vector<LeftWork> stillLeft() {
    Desk other;
    return Journal(other).leftWork();
  }

  QTemporaryDir folder;
};

TEST_F(FilesTest, SaveAsAsksAboutTheNameThatWillBeWritten) {
  put(at("plate.inchwright"), "somebody's");
  ASSERT_TRUE(window->files().openSample());
  toSave = at("plate");
  EXPECT_FALSE(window->files().saveAs());
  ASSERT_EQ(questions.size(), 1);
  EXPECT_TRUE(questions[0].contains(QStringLiteral("plate.inchwright")));
  EXPECT_EQ(bytesOf(at("plate.inchwright")), "somebody's");
  EXPECT_TRUE(window->desk().file().isEmpty());
  pick = QStringLiteral("Replace");
  EXPECT_TRUE(window->files().saveAs());
  EXPECT_TRUE(loadDocument(at("plate.inchwright").toStdString()).ok());
}

TEST_F(FilesTest, AFileWithoutAnEndingIsSavedUnderItsOwnName) {
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), at("plate").toStdString()).ok());
  ASSERT_TRUE(window->files().open(at("plate")));
  type(QStringLiteral("point B"));
  ASSERT_TRUE(window->files().save());
  EXPECT_FALSE(QFile::exists(at("plate.inchwright")));
  EXPECT_EQ(*loadDocument(at("plate").toStdString()), window->desk().job());
  EXPECT_TRUE(questions.isEmpty());
}

TEST_F(FilesTest, NoOutputReplacesAnythingUnasked) {
  ASSERT_TRUE(window->files().openSample());
  for (const char* ending : {"pdf", "csv", "svg", "png"}) {
    SCOPED_TRACE(ending);
    const QString plain = at("s.") + QString::fromLatin1(ending);
    const QString first = at("s-1.") + QString::fromLatin1(ending);
    put(plain, "somebody's");
    put(first, "somebody's");
    questions.clear();
    pick.clear();
    toWrite = at("s");
    EXPECT_FALSE(window->files().writeSheet(QString::fromLatin1(ending)));
    ASSERT_EQ(questions.size(), 1);
    EXPECT_TRUE(questions[0].contains(QStringLiteral("not made by Inchwright")));
    EXPECT_EQ(bytesOf(plain), "somebody's");
    EXPECT_EQ(bytesOf(first), "somebody's");
    pick = QStringLiteral("Replace");
    EXPECT_TRUE(window->files().writeSheet(QString::fromLatin1(ending)));
    const bool numbered =
        window->desk().sheet()->pageCount() > 1 && ending[1] != 'd' && ending[1] != 's';
    EXPECT_EQ(bytesOf(numbered ? plain : first), "somebody's") << "not asked about";
    EXPECT_NE(bytesOf(numbered ? first : plain), "somebody's");
  }
}

TEST_F(FilesTest, EachPartAndSetupHasASheetOfItsOwnName) {
  const auto suggested = [&] {
    toWrite.clear();
    EXPECT_FALSE(window->files().writeSheet(QStringLiteral("pdf")));
    return QFileInfo(suggestedSheet).fileName();
  };
  ASSERT_TRUE(QFile::copy(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright"),
                          at("kit.inchwright")));
  ASSERT_TRUE(window->files().open(at("kit.inchwright")));
  Desk& desk = window->desk();
  EXPECT_EQ(suggested(), QStringLiteral("kit, Click plate.pdf"));
  desk.choosePart(1);
  EXPECT_EQ(suggested(), QStringLiteral("kit, Front click.pdf"));
  Job job = desk.job();
  job.parts.erase(job.parts.begin() + 1, job.parts.end());
  job.mates.clear();
  job.gaps.clear();
  desk.apply(job, QStringLiteral("one part"));
  EXPECT_EQ(suggested(), QStringLiteral("kit.pdf"));
  job.parts[0].setups.push_back(job.parts[0].setups[0]);
  job.parts[0].setups[1].name = "2/b";
  desk.apply(job, QStringLiteral("two setups"));
  desk.chooseSetup(1);
  EXPECT_EQ(suggested(), QStringLiteral("kit, setup 2-b.pdf"));
  desk.markSaved(desk.file());
}

TEST_F(FilesTest, PaperForTheWholeJobAndAPageForATabletAreWritten) {
  ASSERT_TRUE(QFile::copy(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright"),
                          at("kit.inchwright")));
  ASSERT_TRUE(window->files().open(at("kit.inchwright")));
  toWrite = at("paper.pdf");
  ASSERT_TRUE(window->files().writePaper({PageKind::cover, PageKind::stock}));
  EXPECT_TRUE(bytesOf(toWrite).startsWith("%PDF"));
  EXPECT_FALSE(window->desk().unsaved()) << "no sheet is noted by it";
  EXPECT_EQ(QFileInfo(suggestedSheet).fileName(), QStringLiteral("kit, paper.pdf"));
  // There already, and left alone.
  put(toWrite, "somebody else's");
  EXPECT_FALSE(window->files().writePaper({PageKind::cover}));
  EXPECT_EQ(bytesOf(toWrite), "somebody else's");

  toWrite = at("plate.html");
  ASSERT_TRUE(window->files().writeSheet(QStringLiteral("html")));
  const QByteArray page = bytesOf(toWrite);
  EXPECT_TRUE(page.contains("Click plate, setup 1"));
  EXPECT_FALSE(page.contains("Bush, setup")) << "of what lies on the desk alone";
  EXPECT_TRUE(window->desk().unsaved()) << "the edition is noted";
  window->desk().markSaved(window->desk().file());
}

TEST_F(FilesTest, WhereNothingCanBeWrittenTheWorkIsSavedElsewhere) {
  window->desk().take(jobWithPoint("A"), at("nowhere/plate.inchwright"));
  Part more = window->desk().part();
  more.material = "brass";
  ASSERT_TRUE(window->desk().applyPart(more, QStringLiteral("material")));
  EXPECT_FALSE(window->files().save()) << "left for now";
  ASSERT_EQ(questions.size(), 1);
  EXPECT_TRUE(questions[0].startsWith(QStringLiteral("Not saved.")));
  EXPECT_TRUE(window->desk().unsaved());
  pick = QStringLiteral("Save it elsewhere");
  toSave = at("plate.inchwright");
  EXPECT_TRUE(window->files().save());
  EXPECT_FALSE(window->desk().unsaved());
  const auto saved = loadDocument(toSave.toStdString());
  ASSERT_TRUE(saved.ok());
  EXPECT_EQ(saved->parts[0].material, "brass");
}

TEST_F(FilesTest, WhatCannotBeOpenedAgainIsNotSaved) {
  toSave = at("plate.inchwright");
  ASSERT_TRUE(window->files().openSample());
  ASSERT_TRUE(window->files().saveAs());
  const QByteArray before = bytesOf(toSave);
  Job job = window->desk().job();
  job.pictures[0].data = PictureBytes(std::string(kLargestDocument, 'x'));
  window->desk().apply(job, QStringLiteral("a huge picture"));
  EXPECT_FALSE(window->files().save());
  ASSERT_EQ(told.size(), 1);
  EXPECT_TRUE(told[0].contains(QStringLiteral("100 MB"))) << qPrintable(told[0]);
  EXPECT_EQ(bytesOf(toSave), before);
  EXPECT_TRUE(window->desk().unsaved());
}

TEST_F(FilesTest, AFileChangedOnTheDiskIsLookedAtBeforeItIsReplaced) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  ASSERT_TRUE(window->files().open(file));
  type(QStringLiteral("point B"));
  ASSERT_TRUE(saveDocument(jobWithPoint("THEIRS"), file.toStdString()).ok());
  // Escape: nothing happens.
  EXPECT_FALSE(window->files().save());
  ASSERT_EQ(questions.size(), 1);
  EXPECT_TRUE(questions[0].contains(QStringLiteral("THEIRS is only there")))
      << qPrintable(questions[0]);
  EXPECT_TRUE(questions[0].contains(QStringLiteral("B is only here")));
  EXPECT_EQ(*loadDocument(file.toStdString()), jobWithPoint("THEIRS"));
  // Both are kept.
  pick = QStringLiteral("Keep both");
  EXPECT_TRUE(window->files().save());
  EXPECT_EQ(*loadDocument(file.toStdString()), jobWithPoint("THEIRS"));
  EXPECT_EQ(window->desk().file(), at("plate (2).inchwright"));
  EXPECT_EQ(*loadDocument(at("plate (2).inchwright").toStdString()), window->desk().job());
  // It is this window's own from then on.
  questions.clear();
  type(QStringLiteral("point C"));
  EXPECT_TRUE(window->files().save());
  EXPECT_TRUE(questions.isEmpty());
}

TEST_F(FilesTest, AChangeThatKeepsSizeAndTimeIsSeenAsWell) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  ASSERT_TRUE(window->files().open(file));
  type(QStringLiteral("point B"));
  struct stat was {};
  ASSERT_EQ(::stat(file.toUtf8().constData(), &was), 0);
  put(file, bytesOf(file).replace("\"A\"", "\"Z\""));
  const timespec times[2] = {was.st_atim, was.st_mtim};
  ASSERT_EQ(::utimensat(AT_FDCWD, file.toUtf8().constData(), times, 0), 0);
  EXPECT_FALSE(window->files().save());
  EXPECT_EQ(questions.size(), 1);
}

TEST_F(FilesTest, TouchedButTheSameIsSavedWithoutAQuestion) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  ASSERT_TRUE(window->files().open(file));
  type(QStringLiteral("point B"));
  put(file, bytesOf(file));
  EXPECT_TRUE(window->files().save());
  EXPECT_TRUE(questions.isEmpty());
}

TEST_F(FilesTest, OneThatWasMovedAwayIsWrittenAgain) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  ASSERT_TRUE(window->files().open(file));
  ASSERT_TRUE(QFile::rename(file, at("moved.inchwright")));
  type(QStringLiteral("point B"));
  EXPECT_TRUE(window->files().save());
  EXPECT_EQ(*loadDocument(file.toStdString()), window->desk().job());
}

TEST_F(FilesTest, ASecondWindowOnlyLooksAndSavesUnderAnotherName) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  ASSERT_TRUE(window->files().open(file));
  DeskWindow second(answers());
  EXPECT_FALSE(second.files().open(file)) << "Escape leaves it closed";
  ASSERT_EQ(questions.size(), 1);
  EXPECT_TRUE(questions[0].contains(QStringLiteral("another window")));
  pick = QStringLiteral("Only look");
  ASSERT_TRUE(second.files().open(file));
  EXPECT_TRUE(second.windowTitle().contains(QStringLiteral("only looked at")));
  ASSERT_TRUE(second.desk().applyPart(
      addFeature(second.desk().part(), jobWithPoint("B").parts[0].features[0]),
      QStringLiteral("point")));
  toSave = file;
  EXPECT_FALSE(second.files().save()) << "not even by its own name";
  EXPECT_EQ(*loadDocument(file.toStdString()), jobWithPoint("A"));
  toSave = at("mine.inchwright");
  EXPECT_TRUE(second.files().save());
  EXPECT_FALSE(second.windowTitle().contains(QStringLiteral("only looked at")));
  // The first still has its own.
  type(QStringLiteral("point C"));
  EXPECT_TRUE(window->files().save());
}

TEST_F(FilesTest, SavingOverWhatAnotherWindowHasOpenIsRefused) {
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), at("a.inchwright").toStdString()).ok());
  ASSERT_TRUE(window->files().open(at("a.inchwright")));
  DeskWindow second(answers());
  ASSERT_TRUE(second.files().openSample());
  pick = QStringLiteral("Replace");
  toSave = at("a.inchwright");
  EXPECT_FALSE(second.files().saveAs());
  EXPECT_EQ(*loadDocument(at("a.inchwright").toStdString()), jobWithPoint("A"));
}

TEST_F(FilesTest, EscapeAfterACrashIsLater) {
  leaveBehind(jobWithPoint("A"), {}, "NEW");
  EXPECT_FALSE(window->recover());
  EXPECT_EQ(questions.size(), 1);
  ASSERT_EQ(stillLeft().size(), 1u);
  pick = QStringLiteral("Go on");
  EXPECT_TRUE(window->recover());
  EXPECT_NE(window->desk().part().feature("NEW"), nullptr);
}

TEST_F(FilesTest, WhatIsDeclinedAfterACrashIsKeptAside) {
  leaveBehind(jobWithPoint("A"), at("plate.inchwright"), "NEW");
  pick = QStringLiteral("Put it aside");
  EXPECT_FALSE(window->recover());
  EXPECT_TRUE(stillLeft().empty());
  const QString aside = Preferences::recentFiles().value(0);
  ASSERT_EQ(told.size(), 1);
  EXPECT_TRUE(told[0].contains(aside));
  const auto kept = loadDocument(aside.toStdString());
  ASSERT_TRUE(kept.ok()) << qPrintable(aside);
  EXPECT_NE(kept->parts[0].feature("NEW"), nullptr);
}

TEST_F(FilesTest, WhatIsGoneOnWithStaysOnTheDiskUntilItIsSaved) {
  leaveBehind(jobWithPoint("A"), {}, "NEW");
  pick = QStringLiteral("Go on");
  ASSERT_TRUE(window->recover());
  const QString journal = window->files().journal().path();
  ASSERT_TRUE(QFile::exists(journal)) << "before anything could be written";
  const auto kept = loadDocument(journal.toStdString());
  ASSERT_TRUE(kept.ok());
  EXPECT_NE(kept->parts[0].feature("NEW"), nullptr);
  toSave = at("plate.inchwright");
  ASSERT_TRUE(window->files().save());
  EXPECT_FALSE(QFile::exists(journal));
}

TEST_F(FilesTest, AfterACrashAFileChangedMeanwhileIsNotReplacedUnasked) {
  const QString file = at("plate.inchwright");
  ASSERT_TRUE(saveDocument(jobWithPoint("A"), file.toStdString()).ok());
  {
    DeskWindow killed(answers());
    ASSERT_TRUE(killed.files().open(file));
    ASSERT_TRUE(killed.desk().applyPart(
        addFeature(killed.desk().part(), jobWithPoint("B").parts[0].features[0]),
        QStringLiteral("point")));
    killed.files().journal().flush();
  }
  ASSERT_TRUE(saveDocument(jobWithPoint("THEIRS"), file.toStdString()).ok());
  pick = QStringLiteral("Go on");
  ASSERT_TRUE(window->recover());
  questions.clear();
  pick.clear();
  EXPECT_FALSE(window->files().save());
  EXPECT_EQ(questions.size(), 1);
  EXPECT_EQ(*loadDocument(file.toStdString()), jobWithPoint("THEIRS"));
}

TEST_F(FilesTest, ACopyOfWhatWasSavedIsNothingToAskAbout) {
  const QString file = at("plate.inchwright");
  leaveBehind(jobWithPoint("A"), file, "NEW");
  Job job = jobWithPoint("A");
  job.parts[0] = *addFeature(job.parts[0], jobWithPoint("NEW").parts[0].features[0]);
  ASSERT_TRUE(saveDocument(job, file.toStdString()).ok());
  EXPECT_FALSE(window->recover());
  EXPECT_TRUE(questions.isEmpty());
  EXPECT_TRUE(stillLeft().empty());
}

TEST_F(FilesTest, EachPieceLeftBehindComesOntoADeskOfItsOwn) {
  leaveBehind(jobWithPoint("A"), {}, "FIRST");
  leaveBehind(jobWithPoint("A"), {}, "SECOND");
  pick = QStringLiteral("Go on");
  DeskWindow second(answers());
  int more = 0;
  EXPECT_TRUE(window->files().recover([&] {
    ++more;
    return &second.files();
  }));
  EXPECT_EQ(more, 1);
  const auto has = [](DeskWindow& one, const char* id) {
    return one.desk().part().feature(id) != nullptr;
  };
  EXPECT_TRUE(has(*window, "FIRST") != has(*window, "SECOND"));
  EXPECT_TRUE(has(second, "FIRST") != has(second, "SECOND"));
  EXPECT_NE(has(*window, "FIRST"), has(second, "FIRST"));
}

TEST_F(FilesTest, WhatCannotBeOpenedLeavesTheWorkAndItsCopy) {
  ASSERT_TRUE(window->files().newJob());
  type(QStringLiteral("point P"));
  window->files().journal().flush();
  put(at("broken.inchwright"), "{");
  answer = Asking::Answer::leave;
  EXPECT_FALSE(window->files().open(at("broken.inchwright")));
  EXPECT_NE(window->desk().part().feature("P"), nullptr);
  EXPECT_TRUE(QFile::exists(window->files().journal().path()));
}

TEST_F(FilesTest, LinkedPicturesComeAlongIntoAnotherFolder) {
  ASSERT_TRUE(window->files().open(
      QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/front_plate.inchwright")));
  ASSERT_FALSE(window->desk().job().pictures[0].file.empty());
  toSave = at("plate.inchwright");
  ASSERT_TRUE(window->files().saveAs());
  const auto saved = loadDocument(toSave.toStdString());
  ASSERT_TRUE(saved.ok());
  EXPECT_TRUE(saved->pictures[0].file.empty());
  EXPECT_EQ(QByteArray::fromStdString(saved->pictures[0].data.get()),
            bytesOf(QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/prints/front_plate.png")));
}

// Of 48 megapixels it is kept with fewer.
TEST_F(FilesTest, ALargePictureThatComesAlongStaysSquaredUp) {
  ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("from")));
  QImage scan(8000, 6000, QImage::Format_Grayscale8);
  scan.fill(Qt::white);
  ASSERT_TRUE(scan.save(at("from/print.bmp")));
  Job job = jobWithPoint("A");
  Picture print;
  print.name = "print";
  print.file = "print.bmp";
  print.points = {{800, 600, *readLength("0"), *readLength("0")},
                  {7200, 600, *readLength("8"), *readLength("0")}};
  job.pictures.push_back(print);
  job.parts[0].views.push_back({Face::top, "print", {}, 0, {}});
  ASSERT_TRUE(saveDocument(job, at("from/plate.inchwright").toStdString()).ok());
  ASSERT_TRUE(window->files().open(at("from/plate.inchwright")));
  toSave = at("plate.inchwright");
  ASSERT_TRUE(window->files().saveAs());
  const auto saved = loadDocument(toSave.toStdString());
  ASSERT_TRUE(saved.ok()) << saved.error().text;
  const Picture& kept = saved->pictures[0];
  EXPECT_TRUE(kept.file.empty());
  const auto image = QImage::fromData(QByteArray::fromStdString(kept.data.get()));
  ASSERT_FALSE(image.isNull());
  ASSERT_LT(image.width(), 8000);
  ASSERT_EQ(kept.points.size(), 2U);
  EXPECT_NEAR(kept.points[0].pixelX / image.width(), 0.1, 1e-9);
  EXPECT_NEAR(kept.points[0].pixelY / image.height(), 0.1, 1e-9);
  EXPECT_NEAR(kept.points[1].pixelX / image.width(), 0.9, 1e-9);
}

// A folder that is reached by a link, and a file that is not there yet.
TEST_F(FilesTest, ANewFileInALinkedFolderIsHeldUnderItsOneName) {
  ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("real")));
  ASSERT_TRUE(QFile::link(at("real"), at("link")));
  ASSERT_TRUE(window->files().newJob());
  type(QStringLiteral("point P"));
  toSave = at("link/plate.inchwright");
  ASSERT_TRUE(window->files().saveAs());
  FileGuard another;
  EXPECT_FALSE(another.take(at("real/plate.inchwright")));
  EXPECT_FALSE(another.take(at("link/plate.inchwright")));
}

TEST_F(FilesTest, APictureThatIsAPipeOrADeviceIsRefusedAtOnce) {
  ASSERT_TRUE(window->files().newJob());
  ASSERT_EQ(::mkfifo(at("pipe.png").toUtf8().constData(), 0600), 0);
  for (const QString& file : {at("pipe.png"), QStringLiteral("/dev/zero")}) {
    pictureToOpen = file;
    window->layPicture();
    EXPECT_TRUE(window->desk().job().pictures.empty()) << qPrintable(file);
  }
}

}  // namespace
}  // namespace inchwright::app
