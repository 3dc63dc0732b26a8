#pragma once

class QGuiApplication;

namespace inchwright::app {

/// The application object for work without a display, made at the first call and kept to the end.
/// An application that exists already is returned as it is. Sets the offscreen platform unless
/// QT_QPA_PLATFORM says otherwise (without either, Qt ends the program where there is no display),
/// and fixes the seed of Qt's hashes so that files come out the same each time.
/// Cost: some tens of milliseconds the first time.
QGuiApplication& headlessApplication();

}  // namespace inchwright::app
