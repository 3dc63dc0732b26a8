// A print over two photos: each squared up by itself, traced and read across by hand, saved and
// opened again.

#include <gtest/gtest.h>

#include <QPainter>
#include <QTemporaryDir>

#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "core/document/document.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

constexpr int kPixels = 200;                // an inch
constexpr double kTaken = kPixels / 100.0;  // inches as taken, an inch of the print

/// A bar of 8 by 2 inches from 0, 0 with holes at 1, 1 and 4, 1/2 and 4, 1 1/2 and 7, 1, as far as
/// it lies between two places along it.
QImage photo(double from, double to) {
  QImage image(static_cast<int>((to - from) * kPixels), 3 * kPixels, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(kPixels, -kPixels);
  painter.translate(-from, -2.5);
  painter.setPen(QPen(Qt::black, 0.03));
  painter.drawRect(QRectF(0, 0, 8, 2));
  for (const QPointF hole : {QPointF(1, 1), QPointF(4, 0.5), QPointF(4, 1.5), QPointF(7, 1)}) {
    painter.drawEllipse(hole, 0.125, 0.125);
  }
  return image;
}

class TwoPicturesTest : public WindowTest {
 protected:
  void SetUp() override {
    WindowTest::SetUp();
    print = window->findChild<PrintView*>();
    ASSERT_TRUE(window->files().newJob());
    QObject::connect(&window->desk(), &Desk::refused, print,
                     [this](const QString& why) { refused = why; });
    ASSERT_TRUE(photo(-0.5, 4.5).save(folder.filePath("left.png")));
    ASSERT_TRUE(photo(3.5, 8.5).save(folder.filePath("right.png")));
  }

  void lay(const char* file) {
    pictureToOpen = folder.filePath(QString::fromUtf8(file));
    QTest::keyClick(window.get(), Qt::Key_L, Qt::ControlModifier);
    ready();
  }

  void ready() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 20000));
  }

  /// A click exactly there, in inches of what is shown, and what is typed about it.
  void put(double x, double y, const char* text) {
    const QPoint at = print->map().toWidget(QPointF(x, y)).toPoint();
    ASSERT_TRUE(print->rect().contains(at)) << x << " " << y;
    QTest::mouseClick(print, Qt::LeftButton, Qt::ControlModifier, at);
    type(QString::fromUtf8(text));
    EXPECT_TRUE(refused.isEmpty()) << qPrintable(refused);
  }

  void trace(double x, double y, const char* text) {
    window->work().trace(FeatureKind::hole);
    put(x, y, text);
    window->work().look();
  }

  void layBoth() {
    lay("left.png");
    put(0.5 * kTaken, -2.5 * kTaken, "0, 0");
    put(4.5 * kTaken, -1 * kTaken, "4, 1 1/2");
    type({});
    EXPECT_TRUE(refused.isEmpty()) << qPrintable(refused);
    ready();
    window->work().look();
    trace(1, 1, "A 1/4");
    trace(4, 0.5, "B 1/4");
    trace(4, 1.5, "C 1/4");
    lay("right.png");
    put(0.5 * kTaken, -2 * kTaken, "B");
    put(0.5 * kTaken, -1 * kTaken, "C");
    put(4.5 * kTaken, -2.5 * kTaken, "8, 0");
    type({});
    ready();
    window->work().look();
  }

  bool dark(double x, double y) {
    const QImage seen = print->grab().toImage();
    const QPoint at = print->map().toWidget(QPointF(x, y)).toPoint();
    int least = 255;
    for (int dx = -2; dx <= 2; ++dx) {
      for (int dy = -2; dy <= 2; ++dy) {
        least = std::min(least, qGray(seen.pixel(at + QPoint(dx, dy))));
      }
    }
    return least < 130;
  }

  const Part& part() { return window->desk().part(); }

  QTemporaryDir folder;
  PrintView* print = nullptr;
  QString refused;
};

TEST_F(TwoPicturesTest, BothAreSeenTracedAndReadAcross) {
  layBoth();
  ASSERT_EQ(viewsOf(part(), Face::top).size(), 2u);
  ASSERT_TRUE(QTest::qWaitFor([this] { return print->picture().bounds().width() > 8.9; }, 20000));
  print->fit();
  print->hideMine(true);
  EXPECT_TRUE(dark(0, 1)) << "the left side, on the first photo";
  EXPECT_TRUE(dark(8, 1)) << "the right side, on the second";
  EXPECT_FALSE(dark(6, 1));
  print->hideMine(false);
  trace(7, 1, "D 1/4");
  // 6 in from a hole of the first photo to one of the second; the tracing speaks against a slip.
  window->work().read();
  window->work().setAxis(Axis::x);
  QTest::keyClicks(line(), "A D 5");
  EXPECT_TRUE(window->work().echo(line()->text()).doubtful) << "the tracing says about 6";
  line()->clear();
  type("A D 6");
  ASSERT_EQ(part().readings.size(), 1u);
  EXPECT_EQ(part().readings[0].from, "A");
  EXPECT_EQ(part().readings[0].to, "D");
}

TEST_F(TwoPicturesTest, NothingOfTheFirstIsLostByUndoNorByTheFile) {
  layBoth();
  const Job both = window->desk().job();
  QTest::keyClick(window.get(), Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(pictureUnder(window->desk().job(), part(), Face::top)->name, "left");
  ready();
  QTest::keyClick(window.get(), Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(window->desk().job(), both);
  // Saved and opened again both are there.
  const QString file = folder.filePath("bar.inchwright");
  ASSERT_TRUE(saveDocument(both, file.toStdString()).ok());
  const auto opened = loadDocument(file.toStdString());
  ASSERT_TRUE(opened.ok());
  EXPECT_EQ(*opened, both);
  // Taking the one in front away leaves the first and all that is traced.
  QTest::keyClick(window.get(), Qt::Key_L, Qt::ControlModifier | Qt::ShiftModifier);
  ASSERT_EQ(viewsOf(part(), Face::top).size(), 1u);
  EXPECT_EQ(pictureUnder(window->desk().job(), part(), Face::top)->points.size(), 2u);
  EXPECT_EQ(part().features.size(), both.parts[0].features.size());
  while (window->desk().canUndo()) window->desk().undo();
  while (window->desk().canRedo()) window->desk().redo();
  EXPECT_EQ(part().views.size(), 1u);
}

TEST_F(TwoPicturesTest, ATurnedPhotoIsReadTurnedAndSquaredUpUpright) {
  const QImage sideways = photo(-0.5, 4.5).transformed(QTransform().rotate(90));
  ASSERT_TRUE(sideways.save(folder.filePath("left.png")));
  lay("left.png");
  EXPECT_LT(print->picture().bounds().width(), print->picture().bounds().height());
  QTest::keyClick(window.get(), Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
  ready();
  const QRectF shown = print->picture().bounds();
  EXPECT_NEAR(shown.width(), 5 * kTaken, 0.01);
  EXPECT_NEAR(shown.height(), 3 * kTaken, 0.01);
  print->fit();
  // As it was drawn: its corner 0, 0 lies half an inch from the low left corner of the photo.
  put(shown.left() + 0.5 * kTaken, shown.top() + 0.5 * kTaken, "0, 0");
  put(shown.left() + 4.5 * kTaken, shown.top() + 2 * kTaken, "4, 1 1/2");
  type({});
  ready();
  EXPECT_NEAR(print->picture().bounds().left(), -0.5, 0.03);
  EXPECT_NEAR(print->picture().bounds().width(), 5, 0.05);
  print->fit();
  EXPECT_TRUE(dark(0, 1));
  EXPECT_FALSE(dark(2, 1));
}

}  // namespace
}  // namespace inchwright::app
