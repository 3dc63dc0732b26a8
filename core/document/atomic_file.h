#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace inchwright {

/// Replaces the content of a file so that, whenever the process or the machine dies, either the old
/// or the new content is there whole.
///
/// The content goes to `.NAME.saving` in the same folder, is flushed to the disk and renamed over
/// the file; then the folder is flushed. A symbolic link stays, and its target is replaced; the
/// permissions of the old file are kept. A `.NAME.saving` left by a process that died is taken over
/// by the next save. Two savers of one file wait for each other, up to five seconds.
///
/// Errors: `fileTrouble` with the file in `place`; the old file is then as it was (but when only
/// flushing the folder failed, which the text says). Costs one wait for the disk.
Result<Done> replaceFile(const std::filesystem::path& file, std::string_view content);

/// The whole content of a regular file, never of a pipe or device, and without waiting for anybody.
/// Errors: `fileTrouble`; `tooLarge` beyond `most` bytes, without reading it.
Result<std::string> readWholeFile(const std::filesystem::path& file, std::size_t most);

/// What one of the system's error numbers means, in words: ENOSPC is `the disk is full`.
std::string systemWords(int error);

}  // namespace inchwright
