#pragma once

#include <QString>
#include <optional>

#include "app/session/activity.h"

namespace inchwright::app {

/// What a text puts right at the one thing that is chosen.
struct ChosenEdit {
  Part part;
  QString title;
  Echo echo;
};

/// A chosen reading takes a new figure: `1 1/8`. A chosen feature takes a new size, `3/16 ream`,
/// another kind, `slot x 1/4 by 1`, or another name, `B2`; where it lies stays as it is. Empty
/// where not exactly one thing is chosen, or the text is none of these: it may then be a line of
/// its own.
std::optional<ChosenEdit> editOfChosen(const Hands& hands, const QString& text);

}  // namespace inchwright::app
