#pragma once

namespace inchwright::app {

/// Keeps Qt's own remarks off standard error, which is for our one line; QT_LOGGING_RULES or
/// QT_DEBUG_PLUGINS in the surroundings let them through. Where Qt can't go on, as without a
/// display, the program says so in that one line and ends with status 2; it never aborts.
void quietQt();

}  // namespace inchwright::app
