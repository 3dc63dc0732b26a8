// The desk from its start to the first paint of both sheets with the sample open, or with --photo
// until a photo of 24 megapixels lies squared up underneath; ends there, so that a benchmark can
// time whole processes.

#include <unistd.h>

#include <QAbstractScrollArea>
#include <QApplication>
#include <cstring>

#include "app/base/look.h"
#include "app/session/preferences.h"
#include "app/window/asking.h"
#include "app/window/desk_style.h"
#include "tests/support/photo_on_desk.h"

namespace inchwright::app {
namespace {

class FirstPaint : public QObject {
 public:
  explicit FirstPaint(QWidget* watched) { watched->installEventFilter(this); }
  bool seen = false;

 protected:
  bool eventFilter(QObject*, QEvent* event) override {
    seen = seen || event->type() == QEvent::Paint;
    return false;
  }
};

Asking unattended() {
  Asking asking;
  asking.unsavedWork = [](const QString&) { return Asking::Answer::leave; };
  asking.choose = [](const Asking::Question& question) { return question.escape; };
  asking.tell = [](const QString&) { _exit(1); };
  return asking;
}

int openPhoto(DeskWindow& window, const QString& file) {
  PrintView* print = squareUpPhoto(window, file);
  if (print == nullptr) return 1;
  for (int i = 0; i < 20; ++i) {
    print->zoomBy(1.2);
    print->repaint();
  }
  return 0;
}

/// Ends the process: what is cleared up afterwards is no part of a start.
[[noreturn]] void start(int argc, char** argv) {
  const bool photo = argc > 1 && std::strcmp(argv[1], "--photo") == 0;
  if (argc > 2 && std::strcmp(argv[1], "--paint") == 0) {
    // By a process of its own, so that its memory does not count.
    _exit(paintPhoto(QString::fromLocal8Bit(argv[2])) ? 0 : 1);
  }
  QApplication application(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("Inchwright"));
  Look::choose(Preferences::look());
  dressApplication(application);
  DeskWindow window(unattended());
  window.resize(1280, 720);
  const FirstPaint print(window.findChild<QWidget*>(QStringLiteral("print")));
  const FirstPaint sheet(
      window.findChild<QAbstractScrollArea*>(QStringLiteral("sheet"))->viewport());
  if (!photo && !window.files().openSample()) _exit(1);
  window.show();
  while (!print.seen || !sheet.seen) application.processEvents(QEventLoop::WaitForMoreEvents);
  _exit(photo ? openPhoto(window, QString::fromLocal8Bit(argv[2])) : 0);
}

}  // namespace
}  // namespace inchwright::app

int main(int argc, char** argv) {
  inchwright::app::start(argc, argv);
}
