#include "app/base/headless.h"

#include <QGuiApplication>
#include <QHashSeed>
#include <QLoggingCategory>

namespace inchwright::app {

QGuiApplication& headlessApplication() {
  if (auto* existing = qobject_cast<QGuiApplication*>(QCoreApplication::instance())) {
    return *existing;
  }
  QHashSeed::setDeterministicGlobalSeed();
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  // Standard error is for our own one line; Qt would remark on a missing XDG_RUNTIME_DIR there.
  // QT_LOGGING_RULES brings its remarks back.
  QLoggingCategory::setFilterRules(QStringLiteral("default.warning=false"));
  // Qt keeps references to these for as long as the application lives.
  static int argc = 1;
  static char name[] = "inchwright";
  static char* argv[] = {name, nullptr};
  // Never deleted: at the end of the program its fonts would go after Qt's own statics.
  static auto* const application = new QGuiApplication(argc, argv);
  return *application;
}

}  // namespace inchwright::app
