#pragma once

#include <QByteArray>
#include <QStandardPaths>
#include <QTemporaryDir>

namespace inchwright::app {

/// Gives this process a home of its own for data and settings, so that tests run side by side
/// neither meet one another's journals nor touch the user's. Call it before Qt looks either up.
inline void usePrivateHome() {
  static const QTemporaryDir home;
  QStandardPaths::setTestModeEnabled(false);
  qputenv("XDG_DATA_HOME", home.path().toUtf8());
  qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
}

}  // namespace inchwright::app
