#pragma once

#include <QByteArray>
#include <QImage>

#include "core/base/result.h"

namespace inchwright::app {

/// The largest file that is read as a picture at all, bytes.
inline constexpr std::size_t kLargestPictureFile = 512u * 1024 * 1024;

/// A picture from the bytes of its file, upright (a phone's note of how it was held is honoured),
/// with four bytes a pixel on white. PNG, JPEG, TIFF, WebP as Qt's plugins read them; a page of a
/// PDF at 200 dots an inch, or fewer where the page is large.
/// Errors: `fileTrouble`, saying what was wrong. May run in any thread.
Result<QImage> decodePicture(const QByteArray& bytes, int page = 1);

/// Whether decodePicture will take these bytes, by their beginning: fast however large the picture.
/// A picture cut short is only found out when it is decoded. Errors: as decodePicture.
Result<Done> checkPicture(const QByteArray& bytes);

/// Whether a file's ending says that it is a picture or PDF this can read.
bool looksLikePicture(const QString& file);

}  // namespace inchwright::app
