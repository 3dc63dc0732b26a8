#include "app/words/sheet_file.h"

#include <string>

#include "core/document/atomic_file.h"

namespace inchwright::app {
namespace {

constexpr std::size_t kLargestSheet = 64u * 1024 * 1024;  // bytes; ours are below 1 MB a page

bool has(std::string_view content, std::string_view mark) {
  return content.find(mark) != std::string_view::npos;
}

}  // namespace

bool bearsOurMark(std::string_view content) {
  using namespace std::string_view_literals;
  if (content.substr(0, 5) == "%PDF-") {
    // A PDF writes its creator in two bytes a character, or as XMP.
    return has(content, "\0I\0n\0c\0h\0w\0r\0i\0g\0h\0t\0 "sv) ||
           has(content, "<xmp:CreatorTool>Inchwright ");
  }
  if (content.substr(0, 8) == "\x89PNG\r\n\x1a\n"sv) {
    return has(content, "tEXtSoftware\0Inchwright "sv);
  }
  if (content.substr(0, 15) == "<!DOCTYPE html>") {
    return has(content, "<meta name=\"generator\" content=\"Inchwright ");
  }
  return has(content, "<svg") && has(content, "<desc>Inchwright ");
}

Result<Done> mayReplace(const std::filesystem::path& file, bool force) {
  std::error_code fault;
  if (force || !std::filesystem::exists(file, fault)) return Done{};
  const Result<std::string> there = readWholeFile(file, kLargestSheet);
  if (there && bearsOurMark(*there)) return Done{};
  return Error{ErrorCode::fileTrouble,
               "is there already and was not made by Inchwright; --force replaces it",
               file.string()};
}

}  // namespace inchwright::app
