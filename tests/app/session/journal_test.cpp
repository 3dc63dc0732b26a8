#include "app/session/journal.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>

#include "app/base/headless.h"
#include "app/session/file_guard.h"
#include "app/session/preferences.h"
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
