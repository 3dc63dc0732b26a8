#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/part/job.h"

namespace inchwright {

/// Limits of what is read at all, and so of what is written; beyond them a file is refused before
/// it is parsed, or before it replaces anything.
inline constexpr std::size_t kLargestDocument = 100u * 1024 * 1024;  ///< bytes
inline constexpr int kDeepestDocument = 64;                          ///< levels of JSON nesting

/// Reads a document from its JSON text. Errors: `badDocument`, `newerFormat`, `tooLarge`; `place`
/// is a JSON pointer (RFC 6901) or `line L, column C` where the JSON itself is broken.
Result<Job> readDocument(std::string_view json);

/// The document as JSON: two-space indent, keys in a fixed order, unknown members kept, a newline
/// at the end. read(write(job)) is job, and write(read(text)) keeps text's meaning.
std::string writeDocument(const Job& job);

/// Reads a file. Errors as above and `fileTrouble`; the file is left as it was.
Result<Job> loadDocument(const std::filesystem::path& file);

/// The document as it may be saved: as `writeDocument`, and read back to be sure that it opens
/// again as the same job. Errors: `tooLarge`, `badDocument`, saying what stands in the way. Costs a
/// reading more than writing.
Result<std::string> savableDocument(const Job& job);

/// Writes a file atomically: a new file beside it is written, flushed to the disk and renamed over
/// it. Whenever the process dies, the old or the new content is there whole. What could not be
/// opened again is not written. Errors: as `savableDocument`, and `fileTrouble`.
Result<Done> saveDocument(const Job& job, const std::filesystem::path& file);

}  // namespace inchwright
