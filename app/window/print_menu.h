#pragma once

#include <QPoint>

#include "app/session/work.h"

class QMenu;

namespace inchwright::app {

class DeskWindow;

/// What can be done with the thing under the pointer on their print, as a list of words: a place, a
/// figure, or the paper itself. Fills `menu`.
void fillPrintMenu(QMenu& menu, DeskWindow& window, const Pointed& under);

/// The words that would put a chosen thing as it is now, to be typed over: the figure of a reading,
/// the size of a hole. Empty where there is no such thing.
QString wordsOfChosen(const Part& part, const Selection& chosen);

}  // namespace inchwright::app
