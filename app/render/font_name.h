#pragma once

#include <QByteArray>

namespace inchwright::app {

/// A copy of an OpenType font that calls its family `family`, so that Qt can't take another face
/// for it: the mono faces that come with the program also go by the name of the others, and a
/// system may have any of them installed. Only the family in the name table changes (OpenType 1.9,
/// `name`). Requires: `family` is ASCII and not longer than the names it replaces. A font that
/// can't be read comes back as it was.
QByteArray withFamily(QByteArray font, const QByteArray& family);

}  // namespace inchwright::app
