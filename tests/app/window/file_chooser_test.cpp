// The dialogs that ask for a file show what is in it.

#include "app/window/file_chooser.h"

#include <gtest/gtest.h>

#include <QFileDialog>
#include <QLabel>
#include <QListView>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "app/window/small_picture.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

const QString kSamples = QStringLiteral(INCHWRIGHT_SOURCE_DIR "/samples/");

TEST(SmallPicture, IsOfPicturesAndJobs) {
  deskApplication();
  const QSize size(120, 90);
  const QPixmap print = smallPicture(kSamples + "prints/front_plate.png", size, 2);
  ASSERT_FALSE(print.isNull());
  EXPECT_EQ(print.height(), 180);
  EXPECT_LE(print.width(), 240);
  const QPixmap job = smallPicture(kSamples + "front_plate.inchwright", size, 1);
  ASSERT_FALSE(job.isNull());
  EXPECT_EQ(job.size(), size);
  // Something is drawn of it.
  const QImage drawn = job.toImage();
  int other = 0;
  for (int x = 0; x < drawn.width(); ++x) other += drawn.pixel(x, 45) != drawn.pixel(0, 0);
  EXPECT_GT(other, 0);
  EXPECT_TRUE(smallPicture(kSamples + "draw_prints", size, 1).isNull());
  EXPECT_TRUE(smallPicture(kSamples, size, 1).isNull());
  EXPECT_TRUE(smallPicture(kSamples + "no such.png", size, 1).isNull());
}

TEST(FileChooser, ShowsWhatIsChosen) {
  deskApplication();
  bool shown = false;
  QTimer::singleShot(0, [&] {
    auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
    ASSERT_NE(dialog, nullptr);
    QTimer::singleShot(15'000, dialog, &QDialog::reject);  // whatever fails below
    const auto* beside = dialog->findChild<QLabel*>(QStringLiteral("beside"));
    ASSERT_NE(beside, nullptr);
    auto* list = dialog->findChild<QListView*>(QStringLiteral("listView"));
    ASSERT_NE(list, nullptr);
    QModelIndex file;
    ASSERT_TRUE(QTest::qWaitFor([&] {
      const QModelIndex folder = list->rootIndex();
      for (int row = 0; row < list->model()->rowCount(folder); ++row) {
        const QModelIndex one = list->model()->index(row, 0, folder);
        if (one.data().toString() == QStringLiteral("front_plate.png")) file = one;
      }
      return file.isValid();
    }));
    list->scrollTo(file);
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(file).center());
    shown = QTest::qWaitFor([&] { return !beside->pixmap(Qt::ReturnByValue).isNull(); }, 5000);
    dialog->reject();
  });
  EXPECT_EQ(chooseFile(nullptr, QStringLiteral("A picture"), kSamples + "prints",
                       QStringLiteral("All files (*)")),
            QString());
  EXPECT_TRUE(shown);
}

}  // namespace
}  // namespace inchwright::app
