#include "app/base/qt_remarks.h"

#include <QCoreApplication>
#include <QString>
#include <QtGlobal>
#include <cstdio>
#include <cstdlib>

namespace inchwright::app {
namespace {

constexpr int kCannotGoOn = 2;

void takeRemark(QtMsgType kind, const QMessageLogContext&, const QString& text) {
  if (kind == QtFatalMsg) {
    // Before there is an application, all that Qt gives up over is the display.
    if (QCoreApplication::instance() == nullptr ||
        text.contains(QStringLiteral("platform plugin"))) {
      std::fputs(
          "inchwright: no window can be opened here: there is no display, or QT_QPA_PLATFORM names "
          "none; inchwright --help lists what works without one\n",
          stderr);
    } else {
      std::fprintf(stderr, "inchwright: %s\n", qUtf8Printable(text.simplified()));
    }
    std::fflush(stderr);
    std::_Exit(kCannotGoOn);
  }
  if (qEnvironmentVariableIsSet("QT_LOGGING_RULES") ||
      qEnvironmentVariableIsSet("QT_DEBUG_PLUGINS")) {
    std::fprintf(stderr, "%s\n", qUtf8Printable(text));
  }
}

}  // namespace

void quietQt() {
  qInstallMessageHandler(takeRemark);
}

}  // namespace inchwright::app
