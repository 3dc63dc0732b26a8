#pragma once

#include <filesystem>
#include <string_view>

#include "core/base/result.h"

namespace inchwright::app {

/// Whether a PDF, SVG or PNG bears the mark that this program leaves in what it draws: the PDF's
/// creator, the SVG's description, the PNG's `Software` text, the page's generator.
bool bearsOurMark(std::string_view content);

/// Whether a sheet may go to a file: it is not there yet, or bears our mark, or `force` is given.
/// Errors: `fileTrouble` with the file in `place`.
Result<Done> mayReplace(const std::filesystem::path& file, bool force);

}  // namespace inchwright::app
