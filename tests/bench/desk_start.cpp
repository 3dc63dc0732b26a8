// The desk from its start to the first paint of both sheets with the sample open, or with --photo
// until a photo of 24 megapixels lies squared up underneath; ends there, so that a benchmark can
// time whole processes.

#include <unistd.h>

#include <QAbstractScrollArea>
#include <QApplication>
#include <QBuffer>
#include <QFile>
#include <QPainter>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <cstring>

#include "app/base/look.h"
#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "app/session/preferences.h"
#include "app/window/asking.h"
#include "app/window/desk_files.h"
#include "app/window/desk_style.h"
#include "app/window/desk_window.h"

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
  asking.yes = [](const QString&) { return false; };
  asking.tell = [](const QString&) { _exit(1); };
  return asking;
}

/// A photo as a phone makes it: 6000 by 4000, JPEG. Painted by a process of its own, so that its
/// memory does not count.
void paintPhoto(const QString& file) {
  QImage photo(6000, 4000, QImage::Format_RGB32);
  photo.fill(QColor(236, 232, 222));
  QPainter painter(&photo);
  painter.setPen(QPen(Qt::black, 6));
  for (int i = 0; i < 40; ++i) {
    painter.drawEllipse(QPoint(300 + 140 * i, 400 + 80 * i), 40 + 2 * i, 40 + 2 * i);
    painter.drawLine(200, 300 + 90 * i, 5800, 350 + 88 * i);
  }
  painter.end();
  if (!photo.save(file, "JPEG", 90)) _exit(1);
}

SquaringPoint known(double x, double y, const char* across, const char* up) {
  return {x, y, *readLength(across), *readLength(up)};
}

int openPhoto(QApplication& application, DeskWindow& window, const QString& file) {
  auto* print = window.findChild<PrintView*>(QStringLiteral("print"));
  if (!window.files().newJob() || !print->takePicture(file)) return 1;
  const auto finish = [&] {
    while (window.busy()) application.processEvents(QEventLoop::WaitForMoreEvents);
    print->repaint();
  };
  finish();
  window.work().look();
  Desk& desk = window.desk();
  const std::vector<SquaringPoint> corners{known(500, 3700, "0", "0"), known(5600, 3600, "10", "0"),
                                           known(5400, 300, "10", "6 1/2"),
                                           known(620, 260, "0", "6 1/2")};
  auto squared = setPicturePoints(desk.job(), desk.job().pictures.front().name, corners);
  if (!squared.ok()) return 1;
  desk.apply(*std::move(squared), QStringLiteral("square up"));
  finish();
  for (int i = 0; i < 20; ++i) {
    print->zoomBy(1.2);
    print->repaint();
  }
  return print->picture().bounds().isNull() ? 1 : 0;
}

int start(int argc, char** argv) {
  const bool photo = argc > 1 && std::strcmp(argv[1], "--photo") == 0;
  if (argc > 2 && std::strcmp(argv[1], "--paint") == 0) {
    paintPhoto(QString::fromLocal8Bit(argv[2]));
    return 0;
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
  if (!photo && !window.files().openSample()) return 1;
  window.show();
  while (!print.seen || !sheet.seen) application.processEvents(QEventLoop::WaitForMoreEvents);
  return photo ? openPhoto(application, window, QString::fromLocal8Bit(argv[2])) : 0;
}

}  // namespace
}  // namespace inchwright::app

int main(int argc, char** argv) {
  // What is cleared up afterwards is no part of a start.
  _exit(inchwright::app::start(argc, argv));
}
