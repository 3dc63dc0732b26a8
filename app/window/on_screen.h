#pragma once

class QApplication;

namespace inchwright::app {

/// Sees to it that no slip is larger than the screen it opens on: what does not fit is scrolled,
/// the row of buttons at its foot stays in sight, and the whole of it lies within the screen. Asked
/// for once; a second time changes nothing.
void keepSlipsOnScreen(QApplication& application);

}  // namespace inchwright::app
