#pragma once

#include <filesystem>
#include <string_view>

#include "core/base/result.h"

namespace inchwright::app {

/// Whether a PDF, SVG or PNG bears the mark that this program leaves in what it draws: the PDF's
/// creator, the SVG's description, the PNG's `Software` text.
bool bearsOurMark(std::string_view content);

/// Writes a drawn page or document atomically. Unless `force`, a file that is there already and
/// does not bear our mark is left alone. Errors: `fileTrouble` with the file in `place`.
Result<Done> writeSheetFile(const std::filesystem::path& file, std::string_view content,
                            bool force);

}  // namespace inchwright::app
