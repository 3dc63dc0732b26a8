#pragma once

namespace inchwright::app {

class PrintView;

/// Lets those who do not see the print walk it: every place and every reading on it is an object of
/// its own with a name, how it stands, where it is, and a press that does what a click there would.
/// Once for the program; calling it again does nothing.
void speakPrints();

/// Tells who listens that what is chosen on the print has changed. Free when nobody listens.
void announceChosen(PrintView& view);

}  // namespace inchwright::app
