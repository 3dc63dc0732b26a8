#include "app/canvas/print_view.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QClipboard>
#include <QGuiApplication>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QPointingDevice>
#include <QTest>
#include <QWheelEvent>
#include <tuple>

#include "app/canvas/drawn_places.h"
#include "app/session/picture_edits.h"
#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {
namespace {

/// A white sheet with a black rectangle of 300 by 200 pixels, 100 from the left and 80 from the
/// top.
QImage drawnSheet() {
  QImage image(600, 400, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.fillRect(100, 80, 300, 200, Qt::black);
  return image;
}

class PrintViewTest : public ::testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    Job job;
    Part part;
    part.name = "Plate";
    job.parts.push_back(part);
    desk.take(job, {});
    view = std::make_unique<PrintView>(work);
    view->resize(700, 500);
    view->show();
  }

  void type(std::initializer_list<const char*> lines) {
    for (const char* line : lines) EXPECT_TRUE(work.enter(QString::fromUtf8(line))) << line;
  }

  void plate() {
    type({"edge L left", "edge R right", "edge F front", "edge K back", "hole A 1/4", "hole B 1/4",
          "L A 3/8", "A B 1 3/16", "B R 7/16", "F A 3/4", "A K 3/4", "in line y A B"});
    view->fit();
  }

  void click(QPointF at) { QTest::mouseClick(view.get(), Qt::LeftButton, {}, at.toPoint()); }

  void freely(QPointF at) {
    QTest::mouseClick(view.get(), Qt::LeftButton, Qt::ControlModifier, at.toPoint());
  }

  Desk desk;
  Work work{desk};
  std::unique_ptr<PrintView> view;
};

TEST_F(PrintViewTest, AClickChoosesWhatLiesThere) {
  plate();
  click(*view->whereIs("A"));
  EXPECT_EQ(desk.selection().places, (std::vector<Id>{"A"}));
  click(view->map().toWidget(QPointF(-20, -20)));
  EXPECT_TRUE(desk.selection().empty());
}

TEST_F(PrintViewTest, AChainIsReadByTheMouse) {
  plate();
  type({"delete r2"});
  work.read();
  click(*view->whereIs("A"));
  click(*view->whereIs("B"));
  EXPECT_EQ(work.chosen(), (std::vector<Id>{"A", "B"}));
  type({"1 3/16"});
  EXPECT_EQ(desk.part().readings.back().from, "A");
  EXPECT_EQ(desk.part().readings.back().to, "B");
}

TEST_F(PrintViewTest, ADragMovesTheTraceInOneStep) {
  work.trace(FeatureKind::hole);
  const QPoint start(300, 200);
  click(start);
  type({"A 1/4"});
  work.look();
  const Job before = desk.job();
  const QPoint from = view->whereIs("A")->toPoint();
  QTest::mousePress(view.get(), Qt::LeftButton, {}, from);
  for (int i = 1; i <= 6; ++i) {
    QTest::mouseMove(view.get(), from + QPoint(10 * i, 5 * i));
  }
  QTest::mouseRelease(view.get(), Qt::LeftButton, {}, from + QPoint(60, 30));
  EXPECT_NE(desk.job(), before);
  desk.undo();
  EXPECT_EQ(desk.job(), before);
}

TEST_F(PrintViewTest, TheWheelZoomsAboutThePointer) {
  plate();
  const QPointF at = *view->whereIs("A");
  const QPointF inches = view->map().toInches(at);
  const qreal before = view->map().scale();
  QWheelEvent wheel(at, view->mapToGlobal(at), {}, QPoint(0, 120), Qt::NoButton, {},
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(view.get(), &wheel);
  EXPECT_GT(view->map().scale(), before);
  EXPECT_NEAR(view->map().toWidget(inches).x(), at.x(), 1e-6);
  EXPECT_NEAR(view->map().toWidget(inches).y(), at.y(), 1e-6);
}

TEST_F(PrintViewTest, APinchOnATouchpadZoomsAboutThePointer) {
  plate();
  const QPointF at = *view->whereIs("B"), inches = view->map().toInches(at);
  const qreal before = view->map().scale();
  const auto pinch = [&](qreal by) {
    QNativeGestureEvent event(Qt::ZoomNativeGesture, QPointingDevice::primaryPointingDevice(), 2,
                              at, at, view->mapToGlobal(at), by, {});
    QApplication::sendEvent(view.get(), &event);
    EXPECT_TRUE(event.isAccepted());
  };
  pinch(0.25);
  EXPECT_NEAR(view->map().scale(), 1.25 * before, 1e-6);
  EXPECT_NEAR(view->map().toWidget(inches).x(), at.x(), 1e-6);
  EXPECT_NEAR(view->map().toWidget(inches).y(), at.y(), 1e-6);
  pinch(-0.2);
  EXPECT_NEAR(view->map().scale(), before, 1e-6);
}

TEST_F(PrintViewTest, TwoFingersOnAScreenZoomAndPutNothingDown) {
  plate();
  work.trace(FeatureKind::point);
  const std::unique_ptr<QPointingDevice> screen(QTest::createTouchDevice());
  const qreal before = view->map().scale();
  const QPoint middle = view->rect().center();
  const auto fingers = [&](int apart) {
    return std::pair(middle - QPoint(apart / 2, 0), middle + QPoint(apart / 2, 0));
  };
  const auto [left, right] = fingers(80);
  // No hand puts two fingers down at once.
  QTest::touchEvent(view.get(), screen.get()).press(0, left);
  QTest::touchEvent(view.get(), screen.get()).move(0, left).press(1, right);
  for (int apart = 90; apart <= 240; apart += 10) {
    const auto [a, b] = fingers(apart);
    QTest::touchEvent(view.get(), screen.get()).move(0, a).move(1, b);
  }
  const auto [a, b] = fingers(240);
  QTest::touchEvent(view.get(), screen.get()).release(0, a).release(1, b);
  EXPECT_NEAR(view->map().scale(), 3 * before, 1e-6);
  EXPECT_FALSE(work.pending().has_value());
}

TEST_F(PrintViewTest, OneFingerPointsAndDragsAsTheMouseDoes) {
  plate();
  const std::unique_ptr<QPointingDevice> screen(QTest::createTouchDevice());
  const QPoint hole = view->whereIs("A")->toPoint();
  QTest::touchEvent(view.get(), screen.get()).press(0, hole);
  QTest::touchEvent(view.get(), screen.get()).release(0, hole);
  EXPECT_EQ(desk.selection().places, std::vector<Id>{"A"});
  const Job before = desk.job();
  const QPointF middle = view->map().toWidget(QPointF(0, 0));
  const QPoint paper(20, 20);
  QTest::touchEvent(view.get(), screen.get()).press(0, paper);
  QTest::touchEvent(view.get(), screen.get()).move(0, paper + QPoint(15, 0));
  QTest::touchEvent(view.get(), screen.get()).move(0, paper + QPoint(30, 10));
  QTest::touchEvent(view.get(), screen.get()).release(0, paper + QPoint(30, 10));
  EXPECT_EQ(view->map().toWidget(QPointF(0, 0)), middle + QPointF(30, 10));
  EXPECT_EQ(desk.job(), before);
}

TEST_F(PrintViewTest, HoweverManyReadingsThePrintKeepsMostOfTheSheet) {
  plate();
  const qreal few = view->map().scale();
  for (int i = 0; i < 60; ++i) {
    const std::string id = "P" + std::to_string(i);
    type({("point " + id).c_str(),
          ("x L " + id + " " + std::to_string(i % 30 + 1) + "/16").c_str()});
  }
  view->fit();
  EXPECT_GT(view->map().scale(), 0.5 * few);
  // A reading whose line has no room any more comes into sight when it is chosen.
  const auto inkOf = [&](const Id& reading) {
    desk.select({});
    const QImage without = view->grab().toImage();
    desk.select({{}, {reading}});
    return view->grab().toImage() != without;
  };
  for (const Reading& reading : desk.part().readings) EXPECT_TRUE(inkOf(reading.id)) << reading.id;
}

TEST_F(PrintViewTest, FiguresStandAboveTheirLinesAndNeverOnOneAnother) {
  plate();
  std::vector<QRectF> boxes;
  for (int i = 0; i < view->thingCount(); ++i) {
    const auto thing = view->thing(i);
    if (!thing.reading) continue;
    EXPECT_TRUE(QRectF(view->rect()).contains(thing.box)) << qPrintable(thing.name);
    for (const QRectF& other : boxes) EXPECT_FALSE(other.intersects(thing.box));
    boxes.push_back(thing.box);
  }
  EXPECT_EQ(boxes.size(), 5u);
}

TEST_F(PrintViewTest, ALittlePartIsDrawnAsLargeAsItIs) {
  type({"edge L left", "edge R right", "edge F front", "edge K back", "L R 1", "F K 3/8"});
  QRectF drawn = drawFace(desk.part(), desk.solution(), Face::top, false).bounds;
  EXPECT_DOUBLE_EQ(drawn.width(), 1);
  EXPECT_DOUBLE_EQ(drawn.height(), 3.0 / 8);
  // With one side alone there is still paper to click into.
  type({"delete R", "delete K"});
  drawn = drawFace(desk.part(), desk.solution(), Face::top, false).bounds;
  EXPECT_GE(std::min(drawn.width(), drawn.height()), 1);
}

TEST_F(PrintViewTest, LettersGoToTheStrip) {
  QString typed;
  QObject::connect(view.get(), &PrintView::typed,
                   [&](QKeyEvent* event) { typed += event->text(); });
  view->setFocus();
  QTest::keyClicks(view.get(), "3/8");
  EXPECT_EQ(typed, "3/8");
}

TEST_F(PrintViewTest, PageKeysWalkTheFeatures) {
  plate();
  QTest::keyClick(view.get(), Qt::Key_PageDown);
  const Selection first = desk.selection();
  QTest::keyClick(view.get(), Qt::Key_PageDown);
  EXPECT_EQ(first.places.size(), 1u);
  EXPECT_NE(desk.selection(), first);
  QTest::keyClick(view.get(), Qt::Key_PageUp);
  EXPECT_EQ(desk.selection(), first);
}

TEST_F(PrintViewTest, APastedPictureIsSquaredUpAndLiesUnderTheTraces) {
  QGuiApplication::clipboard()->setImage(drawnSheet());
  ASSERT_TRUE(view->picture().paste());
  ASSERT_EQ(work.doing(), Doing::squaring);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().bounds().isNull(); }));
  const auto pixel = [&](double x, double y) {
    return view->map().toWidget(QPointF(x / 100, -y / 100));
  };
  // With Ctrl a click stays where it fell: the rectangle is solid and has no lines.
  freely(pixel(100, 280));
  type({"0, 0"});
  freely(pixel(400, 80));
  type({"3, 2", ""});
  ASSERT_EQ(work.doing(), Doing::looking);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().bounds().isNull(); }));
  const QRectF bounds = view->picture().bounds();
  // A click falls on a whole pixel of the widget: within two of the picture's.
  EXPECT_NEAR(bounds.left(), -1, 0.03);
  EXPECT_NEAR(bounds.width(), 6, 0.05);
  const QImage seen = view->grab().toImage();
  const auto darkAt = [&](double x, double y) {
    return qGray(seen.pixel(view->map().toWidget(QPointF(x, y)).toPoint())) < 100;
  };
  EXPECT_TRUE(darkAt(0.1, 0.1));
  EXPECT_TRUE(darkAt(2.9, 1.9));
  EXPECT_FALSE(darkAt(-0.1, 1));
  EXPECT_FALSE(darkAt(3.1, 1));
  EXPECT_FALSE(darkAt(1, 2.1));
}

TEST_F(PrintViewTest, APrintPhotographedSidewaysComesUpright) {
  for (const int turn : {90, 180, 270}) {
    for (const std::size_t count : {2u, 4u}) {
      SCOPED_TRACE(testing::Message() << turn << " degrees, " << count << " points");
      const QImage upright = drawnSheet();
      const QTransform map = QImage::trueMatrix(QTransform().rotate(turn), 600, 400);
      QByteArray bytes;
      QBuffer buffer(&bytes);
      buffer.open(QIODevice::WriteOnly);
      upright.transformed(QTransform().rotate(turn)).save(&buffer, "PNG");
      const auto known = [&](double x, double y, const char* across, const char* up) {
        const QPointF pixel = map.map(QPointF(x, y));
        return SquaringPoint{pixel.x(), pixel.y(), *readLength(across), *readLength(up)};
      };
      std::vector<SquaringPoint> points{known(100, 280, "0", "0"), known(400, 80, "3", "2"),
                                        known(400, 280, "3", "0"), known(100, 80, "0", "2")};
      points.resize(count);
      const Job bare = liftPicture(desk.job(), 0, Face::top);
      const Job laid = *layPicture(bare, 0, Face::top, "sheet", bytes);
      desk.apply(*setPicturePoints(laid, laid.pictures.front().name, points), "square up");
      ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().progress(); }));
      view->fit();
      const QRectF bounds = view->picture().bounds();
      EXPECT_NEAR(bounds.left(), -1, 0.02);
      EXPECT_NEAR(bounds.width(), 6, 0.02);
      EXPECT_NEAR(bounds.height(), 4, 0.02);
      const QImage seen = view->grab().toImage();
      const auto darkAt = [&](double x, double y) {
        return qGray(seen.pixel(view->map().toWidget(QPointF(x, y)).toPoint())) < 100;
      };
      EXPECT_TRUE(darkAt(0.1, 0.1) && darkAt(2.9, 1.9));
      EXPECT_FALSE(darkAt(-0.1, 1) || darkAt(3.1, 1) || darkAt(1, 2.1) || darkAt(1, -0.1));
    }
  }
}

TEST_F(PrintViewTest, APictureZoomedInAHurryIsSoonAsSharpAsAtLeisure) {
  QGuiApplication::clipboard()->setImage(drawnSheet());
  view->resize(2600, 1800);
  ASSERT_TRUE(view->picture().paste());
  ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().bounds().isNull(); }));
  view->grab();
  QImage first;
  for (int i = 0; i < 5; ++i) {
    view->zoomBy(1.07);
    first = view->grab().toImage();
    // Even the first frame shows the picture, though it may be coarse.
    const QPointF black = view->map().toWidget(QPointF(2.5, -1.8));
    EXPECT_LT(qGray(first.pixel(black.toPoint())), 100);
  }
  // It gets sharp tile by tile; quick machines are as sharp as they will be with the first frame.
  QImage later;
  int alike = 0;
  std::ignore = QTest::qWaitFor(
      [&] {
        const QImage now = view->grab().toImage();
        alike = now == later ? alike + 1 : 0;
        later = now;
        return alike >= 40;
      },
      5000);
  PictureTone tone;
  tone.brightness = 1;
  view->picture().setTone(tone);
  view->picture().setTone({});
  EXPECT_EQ(later, view->grab().toImage());
}

TEST_F(PrintViewTest, APrintThatIsSquaredUpStaysWhereItWas) {
  QGuiApplication::clipboard()->setImage(drawnSheet());
  ASSERT_TRUE(view->picture().paste());
  ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().bounds().isNull(); }));
  view->zoomBy(1.4);
  const auto pixel = [&](double x, double y) {
    return view->map().toWidget(QPointF(x / 100, -y / 100));
  };
  const QPointF corner = pixel(100, 280), far = pixel(400, 80);
  freely(corner);
  type({"0, 0"});
  freely(far);
  type({"3, 2", ""});
  ASSERT_TRUE(QTest::qWaitFor([&] { return !view->picture().bounds().isNull(); }));
  const QPointF now = view->map().toWidget(QPointF(0, 0)),
                then = view->map().toWidget(QPointF(3, 2));
  // A click falls on a whole pixel.
  EXPECT_NEAR(now.x(), corner.x(), 2);
  EXPECT_NEAR(now.y(), corner.y(), 2);
  EXPECT_NEAR(then.x(), far.x(), 2);
  EXPECT_NEAR(then.y(), far.y(), 2);
}

TEST_F(PrintViewTest, OneKeyHidesAllThatIsMine) {
  plate();
  const QImage with = view->grab().toImage();
  view->hideMine(true);
  const QImage without = view->grab().toImage();
  EXPECT_NE(with, without);
  view->hideMine(false);
  EXPECT_EQ(with, view->grab().toImage());
}

TEST_F(PrintViewTest, AFigureIsDraggedOntoThePrintsOwn) {
  plate();
  const auto reading = [&] {
    for (int i = 0; i < view->thingCount(); ++i) {
      if (view->thing(i).reading && view->thing(i).id == "r1") return view->thing(i).box.center();
    }
    return QPointF();
  };
  const QPoint from = reading().toPoint(), to = from + QPoint(60, -90);
  QTest::mousePress(view.get(), Qt::LeftButton, {}, from);
  for (int i = 1; i <= 6; ++i) QTest::mouseMove(view.get(), from + (to - from) * i / 6);
  QTest::mouseRelease(view.get(), Qt::LeftButton, {}, to);
  EXPECT_EQ(desk.part().reading("r1")->place.size(), 2u);
  EXPECT_NEAR(reading().x(), to.x(), 2);
  EXPECT_NEAR(reading().y(), to.y(), 2);
  desk.undo();
  EXPECT_TRUE(desk.part().reading("r1")->place.empty());
}

TEST_F(PrintViewTest, ADoubleClickAsksToPutRightWhatLiesThere) {
  plate();
  int asked = 0;
  QObject::connect(view.get(), &PrintView::amendWanted, [&] { ++asked; });
  QTest::mouseDClick(view.get(), Qt::LeftButton, {}, view->whereIs("B")->toPoint());
  EXPECT_EQ(asked, 1);
  EXPECT_EQ(desk.selection().places, std::vector<Id>{"B"});
  QTest::mouseDClick(view.get(), Qt::LeftButton, {}, QPoint(3, 3));
  EXPECT_EQ(asked, 1);
}

TEST_F(PrintViewTest, ABlindReadingShowsNoFigures) {
  plate();
  view->grab();
  const QImage open = view->grab().toImage();
  work.reread();
  const QImage blind = view->grab().toImage();
  EXPECT_NE(open, blind);
}

}  // namespace
}  // namespace inchwright::app
