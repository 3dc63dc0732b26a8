#pragma once

class QGuiApplication;

namespace inchwright::app {

/// The application object for work without a display, made at the first call and kept to the end.
/// An application that exists already is returned as it is. Takes the offscreen platform
/// whatever QT_QPA_PLATFORM says, so that no display is needed, and fixes the seed of Qt's hashes
/// so that files come out the same each time. Cost: some tens of milliseconds the first time.
QGuiApplication& headlessApplication();

}  // namespace inchwright::app
