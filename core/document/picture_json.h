#pragma once

#include <string>

#include "core/document/object_reader.h"
#include "core/part/picture.h"

namespace inchwright {

/// One entry of the document's `pictures`:
///
///     {"name": "front", "file": "front.jpg",
///      "points": [{"pixel": [118, 902], "inches": ["0", "0"]}]}
Picture readPicture(const JsonValue& value, const Where& where, Trouble& trouble);
/// Appends it, on one line.
void writePicture(std::string& out, const Picture& picture);

/// One entry of a part's `views`.
PictureView readPictureView(const JsonValue& value, const Where& where, Trouble& trouble);
void writePictureView(std::string& out, const PictureView& view);

}  // namespace inchwright
