// Every state of the desk: nothing on it may be cut off. With INCHWRIGHT_PICTURES naming a folder,
// each is drawn into it as well, to be looked at.

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDir>
#include <QFontMetrics>
#include <QLabel>
#include <QMenuBar>
#include <QPushButton>
#include <QToolButton>

#include "app/canvas/print_view.h"
#include "app/canvas/tone_slip.h"
#include "app/machine/machine_view.h"
#include "app/sheet/setup_slip.h"
#include "app/window/cover_slip.h"
#include "app/window/details_slip.h"
#include "app/window/help_page.h"
#include "app/window/paper_slip.h"
#include "app/window/start_slip.h"
#include "app/window/together_slip.h"
#include "tests/app/window/window_fixture.h"

namespace inchwright::app {
namespace {

class PicturesTest : public WindowTest {
 protected:
  void TearDown() override {
    window.reset();
    Look::choose(Look::Choice::day);
    QApplication::setFont(usual_);
    dressApplication(deskApplication());
  }

  void openSample() {
    ASSERT_TRUE(window->files().openSample());
    ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 20000));
  }

  /// Checks the state and draws it.
  void keep(QWidget* widget, const QString& name) {
    QCoreApplication::processEvents();
    for (const QWidget* one : widget->findChildren<QWidget*>()) {
      if (one->isVisible()) checkRoom(one, name);
    }
    const QString folder = qEnvironmentVariable("INCHWRIGHT_PICTURES");
    if (folder.isEmpty()) return;
    EXPECT_TRUE(widget->grab().save(QDir(folder).filePath(name + QStringLiteral(".png"))));
  }

  void size(int width, int height) {
    window->resize(width, height);
    QCoreApplication::processEvents();
    EXPECT_LE(window->width(), width) << "the desk does not fit";
    EXPECT_LE(window->height(), height) << "the desk does not fit";
  }

 private:
  static void checkRoom(const QWidget* widget, const QString& state) {
    if (const auto* label = qobject_cast<const QLabel*>(widget)) {
      const bool wraps = label->wordWrap();
      const int wide = wraps ? 0 : label->sizeHint().width();
      EXPECT_LE(wide, label->width() + 1) << qPrintable(state + ": " + label->text());
      const int high = wraps ? label->heightForWidth(label->width()) : label->sizeHint().height();
      EXPECT_LE(high, label->height() + 1) << qPrintable(state + ": " + label->text());
    }
    if (const auto* button = qobject_cast<const QPushButton*>(widget)) {
      EXPECT_LE(button->fontMetrics().size(Qt::TextShowMnemonic, button->text()).width(),
                button->width())
          << qPrintable(state + ": " + button->text());
    }
    if (const auto* button = qobject_cast<const QToolButton*>(widget)) {
      EXPECT_LE(button->fontMetrics().size(Qt::TextShowMnemonic, button->text()).width(),
                button->width())
          << qPrintable(state + ": " + button->text());
    }
    if (const auto* box = qobject_cast<const QComboBox*>(widget)) {
      EXPECT_LE(box->fontMetrics().horizontalAdvance(box->currentText()), box->width())
          << qPrintable(state + ": " + box->currentText());
    }
    const QWidget* parent = widget->parentWidget();
    const bool scrolled = parent != nullptr && (parent->inherits("QAbstractScrollArea") ||
                                                parent->parentWidget() == nullptr);
    if (parent == nullptr || scrolled || widget->isWindow()) return;
    if (parent->inherits("QComboBox") || parent->inherits("QWidget") == false) return;
    if (parent->objectName() == QStringLiteral("qt_scrollarea_viewport")) return;
    EXPECT_TRUE(parent->rect().adjusted(-2, -2, 2, 2).contains(widget->geometry()))
        << qPrintable(state) << ' ' << widget->metaObject()->className() << ' '
        << qPrintable(widget->accessibleName()) << " sticks out of "
        << parent->metaObject()->className();
  }

  QFont usual_ = QApplication::font();
};

TEST_F(PicturesTest, Empty) {
  ASSERT_TRUE(window->files().newJob());
  keep(window.get(), QStringLiteral("empty"));
}

TEST_F(PicturesTest, Tracing) {
  openSample();
  window->work().trace(FeatureKind::hole);
  auto* print = window->findChild<PrintView*>();
  QTest::mouseClick(print, Qt::LeftButton, {}, print->rect().center() + QPoint(40, 30));
  QTest::keyClicks(line(), QStringLiteral("Q 5/16 ream"));
  keep(window.get(), QStringLiteral("tracing"));
}

TEST_F(PicturesTest, Reading) {
  openSample();
  window->work().read();
  QTest::keyClicks(line(), QStringLiteral("A"));
  QTest::keyClick(line(), Qt::Key_Return);
  QTest::keyClicks(line(), QStringLiteral("B 1 5/8"));
  keep(window.get(), QStringLiteral("reading"));
}

TEST_F(PicturesTest, Clash) {
  openSample();
  type(QStringLiteral("x A B 1 5/16"));
  auto* doubts = window->findChild<QWidget*>(QStringLiteral("doubts"));
  ASSERT_NE(doubts, nullptr);
  QTest::keyClick(line(), Qt::Key_4, Qt::ControlModifier);
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Home);
  keep(window.get(), QStringLiteral("clash"));
}

TEST_F(PicturesTest, DoneByDayAndByLamplight) {
  openSample();
  keep(window.get(), QStringLiteral("done"));
  Look::choose(Look::Choice::lamplight);
  dressApplication(deskApplication());
  emit window->desk().viewChanged();
  keep(window.get(), QStringLiteral("lamplight"));
}

TEST_F(PicturesTest, ScreensLargeAndSmall) {
  openSample();
  size(3840, 2160);
  keep(window.get(), QStringLiteral("screen_4k"));
  size(1280, 720);
  keep(window.get(), QStringLiteral("screen_1280x720"));
}

TEST_F(PicturesTest, BothSheetsAlone) {
  openSample();
  window->fill(DeskWindow::Filling::theirs);
  keep(window.get(), QStringLiteral("their_print_alone"));
  window->fill(DeskWindow::Filling::mine);
  keep(window.get(), QStringLiteral("my_sheet_alone"));
}

TEST_F(PicturesTest, LargeSystemFont) {
  QFont large = QApplication::font();
  large.setPointSizeF(large.pointSizeF() * 1.8);
  QApplication::setFont(large);
  dressApplication(deskApplication());
  window = std::make_unique<DeskWindow>(answers());
  window->show();
  openSample();
  size(1920, 1080);
  keep(window.get(), QStringLiteral("large_font"));
  SetupSlip setup(window->desk());
  setup.show();
  keep(&setup, QStringLiteral("large_font_setup"));
}

TEST_F(PicturesTest, SecondReadingAndSquaring) {
  openSample();
  window->work().reread();
  keep(window.get(), QStringLiteral("second_reading"));
  window->work().look();
  window->work().squareUp();
  ASSERT_TRUE(QTest::qWaitFor([this] { return !window->busy(); }, 20000));
  keep(window.get(), QStringLiteral("squaring_up"));
}

TEST_F(PicturesTest, Slips) {
  openSample();
  window->findChild<ToneSlip*>()->open();
  keep(window.get(), QStringLiteral("tone"));
  window->findChild<ToneSlip*>()->hide();
  window->startTour();
  keep(window.get(), QStringLiteral("tour"));
  SetupSlip setup(window->desk());
  setup.show();
  keep(&setup, QStringLiteral("setup"));
  DetailsSlip details(window->desk());
  details.show();
  keep(&details, QStringLiteral("details"));
  StartSlip start;
  start.show();
  keep(&start, QStringLiteral("start"));
  TogetherSlip together(window->desk());
  together.show();
  keep(&together, QStringLiteral("together"));
  CoverSlip cover(window->desk());
  cover.show();
  keep(&cover, QStringLiteral("cover"));
  PaperSlip paper;
  paper.show();
  keep(&paper, QStringLiteral("paper"));
  HelpPage help(window->menuBar());
  help.show();
  keep(&help, QStringLiteral("every_key"));
}

TEST_F(PicturesTest, AtTheMachine) {
  openSample();
  MachineView atMachine(window->desk());
  atMachine.resize(1280, 720);
  atMachine.show();
  atMachine.tickNext();
  keep(&atMachine, QStringLiteral("at_the_machine"));
  Look::choose(Look::Choice::lamplight);
  dressApplication(deskApplication());
  keep(&atMachine, QStringLiteral("at_the_machine_lamplight"));
}

}  // namespace
}  // namespace inchwright::app
