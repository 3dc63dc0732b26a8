#include "app/session/journal.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QLockFile>
#include <csignal>

#include "app/base/headless.h"
#include "app/session/file_guard.h"
#include "app/session/preferences.h"
#include "core/document/document.h"
#include "core/part/edit.h"
#include "tests/support/private_home.h"

namespace inchwright::app {
namespace {

class JournalTest : public testing::Test {
 protected:
  void SetUp() override {
    usePrivateHome();
    headlessApplication();
    QDir(dataFolder(QStringLiteral("journal"))).removeRecursively();
    Job job;
    job.parts.emplace_back();
    job.parts[0].name = "Plate";
    desk.take(job, {});
  }

  void addPoint(const char* id) {
    Feature point;
    point.id = id;
    ASSERT_TRUE(desk.applyPart(addFeature(desk.part(), point), QStringLiteral("point")));
  }

  Desk desk;
};

TEST_F(JournalTest, HoldsWhatIsUnsavedAndGoesWhenSaved) {
  Journal journal(desk);
  EXPECT_FALSE(QFile::exists(journal.path()));
  addPoint("P");
  journal.flush();
  EXPECT_TRUE(QFile::exists(journal.path()));
  desk.markSaved(QStringLiteral("plate.inchwright"));
  EXPECT_FALSE(QFile::exists(journal.path()));
}

TEST_F(JournalTest, UndoBackToTheFileDropsIt) {
  Journal journal(desk);
  addPoint("P");
  journal.flush();
  desk.undo();
  EXPECT_FALSE(QFile::exists(journal.path()));
}

TEST_F(JournalTest, LeftWorkIsOfferedOnceItsProcessIsGone) {
  {
    Journal died(desk);
    addPoint("P");
    died.flush();
    Desk other;
    EXPECT_TRUE(Journal(other).leftWork().empty()) << "its owner still lives";
  }
  Desk other;
  Journal next(other);
  const auto left = next.leftWork();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].job, desk.job());
  EXPECT_TRUE(next.leftWork().empty()) << "offered once only";
  next.forget(left[0]);
  EXPECT_FALSE(QFile::exists(left[0].journal));
}

TEST_F(JournalTest, LeftWorkIsGoneOnWithInItsOwnFile) {
  QString path;
  {
    Journal died(desk);
    addPoint("P");
    died.flush();
    path = died.path();
  }
  Desk other;
  Journal next(other);
  auto left = next.leftWork();
  ASSERT_EQ(left.size(), 1u);
  next.adopt(std::move(left[0]));
  EXPECT_EQ(next.path(), path);
  EXPECT_TRUE(QFile::exists(path)) << "until what follows takes its place";
  Desk third;
  EXPECT_TRUE(Journal(third).leftWork().empty()) << "it has an owner again";
  next.drop();
  EXPECT_FALSE(QFile::exists(path));
}

TEST_F(JournalTest, WhatIsTooLargeToBeOfferedAgainDoesNotReplaceWhatCanBe) {
  QStringList trouble;
  {
    Journal died(desk);
    QObject::connect(&died, &Journal::failed, [&](const QString& why) { trouble << why; });
    addPoint("P");
    died.flush();
    Job grown = desk.job();
    grown.notes = std::string(kLargestDocument, 'x');
    desk.apply(std::move(grown), QStringLiteral("notes"));
    died.flush();
    QCoreApplication::processEvents();
  }
  ASSERT_EQ(trouble.size(), 1);
  EXPECT_TRUE(trouble[0].contains(QStringLiteral("100 MB"))) << qPrintable(trouble[0]);
  Desk other;
  const auto left = Journal(other).leftWork();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_NE(left[0].job.parts[0].feature("P"), nullptr);
  EXPECT_TRUE(left[0].job.notes.empty());
}

TEST_F(JournalTest, SpoiltJournalIsPassedOverAndKept) {
  const QString file = dataFolder(QStringLiteral("journal")) + QStringLiteral("/x.inchwright");
  QFile spoilt(file);
  ASSERT_TRUE(spoilt.open(QIODevice::WriteOnly));
  spoilt.write("{");
  spoilt.close();
  Journal journal(desk);
  EXPECT_TRUE(journal.leftWork().empty());
  EXPECT_TRUE(QFile::exists(file));
}

/// Leaves a lock as a killed process does: QLockFile notes its number, program and machine.
void leaveLockOfTheDead(const QString& lock) {
  const pid_t child = fork();
  if (child == 0) {
    QLockFile held(lock);
    _exit(held.tryLock(0) ? 0 : 1);
  }
  int status = 0;
  ASSERT_EQ(waitpid(child, &status, 0), child);
  ASSERT_EQ(status, 0);
  ASSERT_TRUE(QFile::exists(lock));
}

QStringList filesIn(const QString& folder) {
  return QDir(folder).entryList(QDir::Files | QDir::Hidden, QDir::Name);
}

TEST_F(JournalTest, LocksOfTheDeadGoAndThoseOfTheLivingStay) {
  const QString folder = dataFolder(QStringLiteral("journal"));
  Journal living(desk);
  const QStringList before = filesIn(folder);
  const QString dead = folder + QStringLiteral("/dead.inchwright");
  leaveLockOfTheDead(dead + QStringLiteral(".lock"));
  for (const char* other : {"/dead.inchwright.file", "/.dead.inchwright.saving"}) {
    QFile left(folder + QLatin1String(other));
    ASSERT_TRUE(left.open(QIODevice::WriteOnly));
  }
  Desk other;
  {
    Journal next(other);
    EXPECT_TRUE(next.leftWork().empty());
  }
  EXPECT_EQ(filesIn(folder), before);
}

TEST_F(JournalTest, LeftWorkBesideALockOfTheDeadIsStillFound) {
  QString path;
  {
    Journal died(desk);
    addPoint("P");
    died.flush();
    path = died.path();
  }
  leaveLockOfTheDead(path + QStringLiteral(".lock"));
  Desk other;
  Journal next(other);
  const auto left = next.leftWork();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].journal, path);
}

TEST_F(JournalTest, NotesOfOpenFilesGoWithTheDeadOnly) {
  const QString folder = dataFolder(QStringLiteral("open"));
  FileGuard living, second;
  const QString file = QDir::temp().filePath(QStringLiteral("living.inchwright"));
  ASSERT_TRUE(living.take(file));
  const QStringList before = filesIn(folder);
  leaveLockOfTheDead(folder + QStringLiteral("/0123456789abcdef.lock"));
  FileGuard::clear();
  EXPECT_EQ(filesIn(folder), before);
  EXPECT_FALSE(second.take(file)) << "the living window still has it";
}

/// While it lives nothing can be written to a file: the disk is full.
class FullDisk {
 public:
  FullDisk() {
    std::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit few{0, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &few);
  }
  ~FullDisk() { ::setrlimit(RLIMIT_FSIZE, &before_); }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

 private:
  rlimit before_{};
};

TEST_F(JournalTest, AFullDiskIsNoOtherWindow) {
  const QString file = QDir::temp().filePath(QStringLiteral("full.inchwright"));
  const FullDisk full;
  FileGuard guard;
  EXPECT_TRUE(guard.take(file));
  EXPECT_TRUE(guard.take(file)) << "nor is it one later";
}

// The locks of a window that was killed can't be taken away there, and are nobody's all the same.
TEST_F(JournalTest, OnAFullDiskTheDeadHoldNothing) {
  const QString file = QDir::temp().filePath(QStringLiteral("dead.inchwright"));
  QString path;
  {
    Journal died(desk);
    addPoint("P");
    died.flush();
    path = died.path();
  }
  leaveLockOfTheDead(path + QStringLiteral(".lock"));
  const QString folder = dataFolder(QStringLiteral("open"));
  const QStringList before = filesIn(folder);
  QString lock;
  {
    FileGuard living;
    ASSERT_TRUE(living.take(file));
    for (const QString& one : filesIn(folder)) {
      if (!before.contains(one)) lock = folder + QLatin1Char('/') + QFileInfo(one).fileName();
    }
  }
  ASSERT_FALSE(lock.isEmpty());
  leaveLockOfTheDead(lock);
  Desk other;
  Journal next(other);
  const FullDisk full;
  FileGuard guard;
  EXPECT_TRUE(guard.take(file));
  auto left = next.leftWork();
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].journal, path);
  // Others may take it too, so it stays besides what is made of it here.
  next.adopt(std::move(left[0]));
  EXPECT_NE(next.path(), path);
  next.drop();
  EXPECT_TRUE(QFile::exists(path));
}

TEST_F(JournalTest, AWriteThatFailsIsToldOnceAndTriedAgain) {
  Journal journal(desk);
  QStringList told;
  QObject::connect(&journal, &Journal::failed, &desk, [&](const QString& why) { told << why; });
  addPoint("P");
  for (int i = 0; i < 2; ++i) {
    const FullDisk full;
    journal.flush();
    QCoreApplication::sendPostedEvents();
  }
  EXPECT_EQ(told.size(), 1);
  EXPECT_FALSE(QFile::exists(journal.path()));
  // Without another edit: what could not be written is still due.
  journal.flush();
  EXPECT_TRUE(QFile::exists(journal.path()));
}

TEST_F(JournalTest, SecondWindowOnAFileIsNoticed) {
  FileGuard first, second;
  const QString file = QDir::temp().filePath(QStringLiteral("plate.inchwright"));
  EXPECT_TRUE(first.take(file));
  EXPECT_FALSE(second.take(file));
  EXPECT_TRUE(first.take({}));
  EXPECT_TRUE(second.take(QDir::temp().filePath(QStringLiteral("other.inchwright"))));
  EXPECT_TRUE(second.take(file));
}

}  // namespace
}  // namespace inchwright::app
