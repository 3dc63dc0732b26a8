#pragma once

#include <QByteArray>
#include <QFont>
#include <QString>

#include "core/base/result.h"
#include "core/sheet/draw_list.h"

namespace inchwright::app {

/// Makes the faces that come with the program known to Qt, once. Nothing need be installed.
/// Requires: a QGuiApplication. Errors: `fileTrouble` when Qt takes one of them for no font.
Result<Done> loadFaces();

/// The pixel size of the fonts `faceFont` gives; painters scale from there.
inline constexpr int kFacePixels = 1000;

/// The face without kerning, shaping and hinting, so that its text is as wide as the sheet's
/// layout reckoned.
QFont faceFont(Typeface face);

/// The font file of a face as Qt knows it: under a family name of its own.
QByteArray faceFile(Typeface face);

/// That family name.
QString faceFamily(Typeface face);

}  // namespace inchwright::app
