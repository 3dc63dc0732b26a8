#pragma once

#include <QApplication>
#include <QElapsedTimer>
#include <QMimeData>
#include <QTest>
#include <QTimer>
#include <QUrl>
#include <functional>
#include <random>

#include "app/canvas/print_view.h"
#include "app/window/asking.h"
#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {

/// A hand at the desk: presses real buttons and keys on the real window, and counts them. A key
/// together with Shift, Ctrl or Alt is one key; a file dropped is one click.
class Hand {
 public:
  Hand() {
    dressApplication(deskApplication());
    qputenv("HOME", home_.path().toUtf8());
    Asking asking;
    asking.unsavedWork = [](const QString&) { return Asking::Answer::leave; };
    asking.choose = [](const Asking::Question& question) { return question.escape; };
    // The dialog itself: its keys are counted too.
    asking.fileForSheet = askingByDialogs(nullptr).fileForSheet;
    asking.tell = [this](const QString& what) { told << what; };
    window = std::make_unique<DeskWindow>(std::move(asking));
    window->resize(1920, 1060);
    window->show();
    window->work().setClock([this] { return now_; });
    print = window->findChild<PrintView*>(QStringLiteral("print"));
    QObject::connect(&window->desk(), &Desk::refused, &window->desk(),
                     [this](const QString& why) { told << why; });
    window->files().newJob();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    const QWidget* at = QApplication::focusWidget();
    EXPECT_TRUE(at != nullptr && at->objectName() == QStringLiteral("line"))
        << "keys go to " << (at == nullptr ? "nothing" : at->metaObject()->className());
  }

  /// Where on the widget an eye sees a place of the view, in inches; a hand that points at it is
  /// up to two pixels off.
  void click(QPointF inches, Qt::KeyboardModifiers with = {}) {
    std::uniform_int_distribution<int> off(-2, 2);
    const QPointF at = print->map().toWidget(inches) + QPointF(off(random_), off(random_));
    QTest::mouseClick(print, Qt::LeftButton, with, at.toPoint());
    ++clicks;
  }

  void drop(const QString& file) {
    QMimeData mime;
    mime.setUrls({QUrl::fromLocalFile(file)});
    const QPoint middle = print->rect().center();
    QDragEnterEvent enter(middle, Qt::CopyAction, &mime, Qt::LeftButton, {});
    QApplication::sendEvent(print, &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(middle, Qt::CopyAction, &mime, Qt::LeftButton, {});
    QApplication::sendEvent(print, &drop);
    ++clicks;
  }

  void key(Qt::Key key, Qt::KeyboardModifiers with = {}) {
    QTest::keyClick(focus(), key, with);
    ++keys;
  }

  void type(const QString& text) {
    typed += static_cast<int>(text.size());
    for (const QChar one : text) {
      QKeyEvent down(QEvent::KeyPress, 0, {}, one), up(QEvent::KeyRelease, 0, {}, one);
      QWidget* to = focus();
      QApplication::sendEvent(to, &down);
      QApplication::sendEvent(focus(), &up);
      ++keys;
    }
  }

  /// A line and Enter, which has to be taken.
  void line(const char* text) {
    told.clear();
    type(QString::fromUtf8(text));
    key(Qt::Key_Return);
    EXPECT_TRUE(told.isEmpty()) << '"' << text << "\": " << told.join(u'|').toStdString() << " at "
                                << window->work().prompt().toStdString();
  }

  /// Runs `begin`, which opens a dialog, and `inside` once it is open.
  void inDialog(const std::function<void()>& begin, const std::function<void()>& inside) {
    bool was = false;
    QTimer wait;
    wait.setInterval(20);
    QObject::connect(&wait, &QTimer::timeout, [&] {
      const QWidget* dialog = QApplication::activeModalWidget();
      if (dialog == nullptr || QApplication::activeWindow() != dialog) return;
      wait.stop();
      was = true;
      inside();
    });
    wait.start();
    begin();
    EXPECT_TRUE(was) << "no dialog opened";
    window->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }

  void waitForPicture() {
    EXPECT_TRUE(QTest::qWaitFor([&] { return !window->busy(); }, 20'000));
    EXPECT_FALSE(print->picture().bounds().isNull());
  }

  /// Looks at what has just been offered for as long as Enter is deaf to it; nobody waits for that
  /// here.
  void reads() {
    now_ += seen::kDeaf;
    QCoreApplication::processEvents();
  }

  QString homeFile(const QString& name) const { return home_.filePath(name); }
  int count() const { return clicks + keys; }

  std::unique_ptr<DeskWindow> window;
  PrintView* print = nullptr;
  QStringList told;
  int clicks = 0;
  int keys = 0;
  int typed = 0;  ///< of the keys: characters

 private:
  QWidget* focus() {
    QWidget* on = QApplication::activeModalWidget();
    if (on == nullptr) on = window.get();
    return on->focusWidget() != nullptr ? on->focusWidget() : on;
  }

  QTemporaryDir home_;
  seen::Offered::Time now_{1000};
  std::mt19937 random_{20'261'125};
};

}  // namespace inchwright::app
