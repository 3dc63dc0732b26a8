#pragma once

class QApplication;

namespace inchwright::app {

/// Gives the application the look of the desk: its own typefaces, palette and the few rules that
/// take the ordinary greys away. Again after Look::choose or a change of the system's palette.
void dressApplication(QApplication& application);

}  // namespace inchwright::app
