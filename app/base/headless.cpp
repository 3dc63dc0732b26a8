#include "app/base/headless.h"

#include <QGuiApplication>
#include <QHashSeed>

namespace inchwright::app {

QGuiApplication& headlessApplication() {
  if (auto* existing = qobject_cast<QGuiApplication*>(QCoreApplication::instance())) {
    return *existing;
  }
  QHashSeed::setDeterministicGlobalSeed();
  // Whatever the surroundings say: nothing is to be shown.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  // Qt keeps references to these for as long as the application lives.
  static int argc = 1;
  static char name[] = "inchwright";
  static char* argv[] = {name, nullptr};
  // Never deleted: at the end of the program its fonts would go after Qt's own statics.
  static auto* const application = new QGuiApplication(argc, argv);
  return *application;
}

}  // namespace inchwright::app
