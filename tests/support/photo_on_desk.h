#pragma once

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <vector>

#include "app/canvas/print_view.h"
#include "app/session/picture_edits.h"
#include "app/window/desk_files.h"
#include "app/window/desk_window.h"

namespace inchwright::app {

/// A photo as a phone makes it: 24 megapixels, 6000 by 4000, JPEG. False when it can't be written.
inline bool paintPhoto(const QString& file) {
  QImage photo(6000, 4000, QImage::Format_RGB32);
  photo.fill(QColor(236, 232, 222));
  QPainter painter(&photo);
  painter.setPen(QPen(Qt::black, 6));
  for (int i = 0; i < 40; ++i) {
    painter.drawEllipse(QPoint(300 + 140 * i, 400 + 80 * i), 40 + 2 * i, 40 + 2 * i);
    painter.drawLine(200, 300 + 90 * i, 5800, 350 + 88 * i);
  }
  painter.end();
  return photo.save(file, "JPEG", 90);
}

/// Begins a job with the photo under its print, squared up from four corners, and waits until it is
/// there; null when that fails.
inline PrintView* squareUpPhoto(DeskWindow& window, const QString& file) {
  auto* print = window.findChild<PrintView*>(QStringLiteral("print"));
  if (!window.files().newJob() || !print->picture().takeFile(file)) return nullptr;
  const auto finish = [&] {
    while (window.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    print->repaint();
  };
  finish();
  window.work().look();
  const auto known = [](double x, double y, const char* across, const char* up) {
    return SquaringPoint{x, y, *readLength(across), *readLength(up)};
  };
  const std::vector<SquaringPoint> corners{known(500, 3700, "0", "0"), known(5600, 3600, "10", "0"),
                                           known(5400, 300, "10", "6 1/2"),
                                           known(620, 260, "0", "6 1/2")};
  Desk& desk = window.desk();
  auto squared = setPicturePoints(desk.job(), desk.job().pictures.front().name, corners);
  if (!squared.ok()) return nullptr;
  desk.apply(*std::move(squared), QStringLiteral("square up"));
  finish();
  return print->picture().bounds().isNull() ? nullptr : print;
}

}  // namespace inchwright::app
