#pragma once

#include <QByteArray>
#include <QSizeF>

#include "core/base/result.h"

namespace inchwright::app {

/// The most bytes a picture takes in a document; larger ones are drawn again more sparingly.
inline constexpr qsizetype kMostKeptPicture = 6 * 1024 * 1024;

/// A picture in the form in which it is kept in a document.
struct KeptPicture {
  QByteArray bytes;
  int page = 1;        ///< the one wanted, in these bytes
  QSizeF scale{1, 1};  ///< kept pixels for one of the picture's own, across and down
};

/// The picture's own bytes while they are few, else a JPEG of all pixels of the page wanted, so
/// that lettering stays as sharp as it was; only what is still too large then gets fewer pixels. A
/// scan of 24 megapixels stays below `kMostKeptPicture`, whatever it was kept as. Errors: as
/// decodePicture. Cost: about a second for 24 megapixels, when it is drawn again.
Result<KeptPicture> keptPicture(const QByteArray& bytes, int page = 1);

}  // namespace inchwright::app
