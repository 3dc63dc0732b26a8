#pragma once

#include <QApplication>
#include <QByteArray>

#include "app/base/look.h"
#include "tests/support/private_home.h"

namespace inchwright::app {

/// The application for tests of widgets: without a display, with nothing of the user's.
inline QApplication& deskApplication() {
  static int argc = 1;
  static char name[] = "desk_test";
  static char* argv[] = {name, nullptr};
  static QApplication* application = [] {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    usePrivateHome();
    Look::choose(Look::Choice::day);
    return new QApplication(argc, argv);
  }();
  return *application;
}

}  // namespace inchwright::app
